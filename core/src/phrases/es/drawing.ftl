# drawing: cada clave empieza por drawing-.
