# siding: cada clave empieza por siding-.
