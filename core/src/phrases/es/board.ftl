# board: cada clave empieza por board-.
