# flashing: cada clave empieza por flashing-.
