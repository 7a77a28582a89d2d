# Precauciones.
