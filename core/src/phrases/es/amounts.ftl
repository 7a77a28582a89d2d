# amounts: cada clave empieza por amounts-.
