# notch: cada clave empieza por notch-.
