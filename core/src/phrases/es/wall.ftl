# Lo que hay en una pared, por los códigos estables de las clases.
wall-kind-hose-bib = Llave de manguera
wall-kind-pipe = Tubo
wall-kind-conduit = Tubo conduit
wall-kind-cable = Cable
wall-kind-electrical-box = Caja eléctrica
wall-kind-light = Lámpara
wall-kind-vent-hood = Campana de ventilación
wall-kind-meter-base = Base del medidor
wall-kind-line-set = Líneas de refrigerante
wall-finish-block = Bloque de montaje
wall-finish-collar = Collarín sellado
wall-finish-trim = Moldura por los cuatro lados
wall-mounting-slip-over = El accesorio se quita, la pieza entra entera
wall-mounting-split = El accesorio no se quita, pieza partida
wall-opening-window = Ventana
wall-opening-door = Puerta
wall-abutment-ground = Suelo
wall-abutment-paving = Pavimento
wall-abutment-roof = Techo
wall-abutment-deck = Terraza (deck)
wall-abutment-ledge = Repisa de piedra o mampostería
wall-outline-trouble = Estas medidas no forman una pared: { $why }.
wall-outline-flat = no queda nada entre sus bordes
wall-outline-many = tiene demasiadas esquinas
wall-outline-repeated = dos de sus esquinas caen en el mismo lugar
wall-outline-crossing = dos de sus bordes se cruzan
wall-outline-nothing = una de ellas no es mayor que cero
wall-pole-missing = Trace la vara para ver las hiladas.
wall-thin-under-sill = Debajo del antepecho ({ $what }) se ven solo { $strip }.
wall-thin-over-head = Arriba del dintel ({ $what }) se ven solo { $strip }.
wall-no-joints = Ningún montante está libre para las juntas de la hilada { $course }. Servirían tablas más largas, otro primer montante o menos desfase entre juntas.
wall-plan-trouble = No se pueden planear las tablas: { $why }.
wall-nothing-to-plan = En esta pared no hay hiladas. Revise su línea base y la vara.
wall-part-base-step = Escalón de la línea base
wall-part-stud = Montante
wall-part-opening = Vano
wall-part-abutment = Encuentro
wall-too-near = { $what }: las tablas deben terminar { $clearance } arriba y quedan { $short } demasiado cerca. Deciden el código local y el fabricante.
wall-peak-trouble = La cumbrera debe quedar más alta que ambos extremos de la pared, y entre ellos.
wall-plan-changed = Planeado de nuevo. Tablas nuevas o cambiadas: { $new }, sin cambio: { $same }. Hiladas que cambiaron: { $courses }. Lo cortado o puesto se queda.
wall-gaps-trouble = Las holguras no dejan pared que revestir: un lado de su contorno es más corto que las holguras en sus extremos. Revise las medidas y los escalones de la pared, y la regla de la holgura en la moldura.
wall-shapes-trouble = La pared tiene más esquinas, o medidas más grandes, de lo que se puede calcular.
# Tablas que ya no ajustan con la casa como está ahora.
wall-misfit = ya no ajusta
wall-courses = { $wall }, hiladas { $courses }
wall-misfits = { $count ->
    [one] 1 tabla ya no ajusta con la casa como está ahora ({ $boards }). Planee las tablas de nuevo.
   *[other] { $count } tablas ya no ajustan con la casa como está ahora ({ $boards }). Planee las tablas de nuevo.
}
wall-cut-misfits = { $count ->
    [one] 1 tabla cortada ya no ajusta con la casa como está ahora ({ $boards }). Se queda como se cortó: mida su lugar antes de ponerla.
   *[other] { $count } tablas cortadas ya no ajustan con la casa como está ahora ({ $boards }). Se quedan como se cortaron: mida sus lugares antes de ponerlas.
}
wall-bare = { $count ->
    [one] En 1 tramo de una hilada no hay tabla planeada. Planee las tablas de nuevo.
   *[other] En { $count } tramos de las hiladas no hay tabla planeada. Planee las tablas de nuevo.
}
wall-misfits-short = { $count ->
    [one] 1 tabla ya no ajusta: planee de nuevo
   *[other] { $count } tablas ya no ajustan: planee de nuevo
}
wall-bare-short = { $count ->
    [one] 1 tramo sin tabla: planee de nuevo
   *[other] { $count } tramos sin tabla: planee de nuevo
}
wall-cut-misfits-short = { $count ->
    [one] 1 tabla cortada ya no ajusta
   *[other] { $count } tablas cortadas ya no ajustan
}
wall-moves-more = Una tabla de { $length } se mueve { $change }, más de lo que toman sus dos holguras de las puntas, { $gaps } juntas. Agrande la regla de la holgura en la moldura, o pregunte al fabricante.
wall-nails-apart = Los montantes están a { $spacing }; las tablas no se clavan a más de { $most }. Ponga refuerzos entre ellos, o pregunte al fabricante.
wall-wind-design = Con { $speed } mph de viento no alcanza aquí el clavado del código (IRC 2018 R703.3.2): hay que calcularlo, o usar el del fabricante para este viento. Pregunte antes de empezar.
wall-wind-height = Con { $speed } mph de viento el clavado del código alcanza para un techo de hasta { $feet } pies de altura media (IRC 2018 R703.3.2). Diga qué altura tiene este.
wall-wind-too-high = Con { $speed } mph de viento el clavado del código alcanza para un techo de hasta { $feet } pies de altura media (IRC 2018 R703.3.2), y este es más alto: hay que calcularlo, o usar el del fabricante para este viento.
