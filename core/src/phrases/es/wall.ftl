# Lo que hay en una pared, por los códigos estables de las clases.
wall-kind-hose-bib = Llave de manguera
wall-kind-pipe = Tubo
wall-kind-conduit = Conducto eléctrico
wall-kind-cable = Cable
wall-kind-electrical-box = Caja eléctrica
wall-kind-light = Lámpara
wall-kind-vent-hood = Campana de ventilación
wall-kind-meter-base = Base del medidor
wall-kind-line-set = Líneas de refrigerante
wall-finish-block = Bloque de montaje
wall-finish-collar = Collar sellado
wall-finish-trim = Moldura por los cuatro lados
wall-mounting-slip-over = El aparato se quita, la pieza entra entera
wall-mounting-split = El aparato no se quita, pieza partida
