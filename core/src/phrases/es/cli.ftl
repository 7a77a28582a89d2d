# cli: cada clave empieza por cli-.
