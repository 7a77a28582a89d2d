# Cautions.
