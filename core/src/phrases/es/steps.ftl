# Pasos.
