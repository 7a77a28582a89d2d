# saw: cada clave empieza por saw-.
