# store: cada clave empieza por store-.
