# saw: cada clave empieza por saw-.
saw-help = Las juntas de los tramos largos y los cortes de todas las piezas, planeados en conjunto: el menor costo, y una cota por debajo de la cual no hay plan. Donde el desfase entre juntas obliga a más juntas, los menos tramos posibles llevan una más de las permitidas. La longitud de una pieza, redondeada hacia abajo, es la que debe caber en una tabla y llegar a piece_min. Los tramos que solo se tocan no necesitan desfase. Los costos se toman a la milmillonésima más cercana, hasta un millón por tabla. Un paso de effort es un millón de operaciones pequeñas, unas milésimas de segundo.
saw-too-many-pieces = Estos tramos dan más de 10,000 piezas. Planee menos a la vez, o use tablas más largas.
saw-run-short = Este tramo no es más largo que las dos holguras de sus puntas. Hágalo más largo, o la holgura menor.
saw-no-board = No hay tabla de la cual cortar. Dé tablas nuevas o sobrantes.
saw-too-long = Este tramo es más largo que cualquier tabla y no se permiten juntas. Dé una tabla más larga, o permita juntas.
saw-no-stud = { $run } es más largo que cualquier tabla, y dentro no hay montante donde pueda ir una junta. Dé los montantes, o una tabla más larga.
saw-no-joints = Este tramo no se puede dividir: entre los montantes, las zonas que se evitan y la pieza mínima no queda lugar para juntas. Dé una tabla más larga, o una piece_min menor.
saw-no-stagger = Las juntas de { $run } y de sus vecinos no pueden guardar este desfase, ni con una junta más en cada uno. Dé un stagger menor, o permita extra_joints.
saw-not-enough = Las tablas no alcanzan para todas las piezas. Dé más.
saw-plan-proved = { $boards ->
    [one] { $boards } tabla, { $used }: ningún plan usa menos.
   *[other] { $boards } tablas, { $used }: ningún plan usa menos.
}
saw-plan-open = { $boards ->
    [one] { $boards } tabla, { $used }. Ningún plan usa menos de { $least }.
   *[other] { $boards } tablas, { $used }. Ningún plan usa menos de { $least }.
}
saw-plan-stale = El libro cambió desde que se empezó este plan. Planee de nuevo y acéptelo después.
saw-not-planned = Todavía no hay lista de cortes.
saw-progress = { $cut } de { $all } tablas cortadas
saw-rest = Sobra { $rest }
saw-rest-keep = Sobra { $rest }: guarde { $kept }
saw-spoiled = Echado a perder: { $spoiled }
saw-piece-goes = { $wall }, hilada { $course }, a { $from } de la esquina izquierda
saw-piece-strip = { $goes }; de la tira que sale del corte a lo largo
saw-cuts-strips = { $cuts }; de la tira: { $strips }
saw-stock-open = { $length }: { $used } por cortar
saw-stock = { $length }: { $used } de { $have } en uso
saw-stock-short = { $length }: hacen falta { $used }, hay { $have }: compre { $short }
saw-unlisted = { $count ->
    [one] Hay 1 tabla planeada que no está en esta lista. Planee la lista otra vez.
   *[other] Hay { $count } tablas planeadas que no están en esta lista. Planee la lista otra vez.
}
saw-no-better = No se encontró un plan mejor. La lista queda como está.
saw-already-cut = Esta tabla ya está cortada.
saw-strips-keep = Tiras que salen: guarde { $kept }
saw-low = { $length } por { $height } de alto
saw-offcut-gone = Este sobrante ya está cortado.
saw-against-boards = { $boards ->
    [one] { $boards } tabla. Ningún plan usa menos de { $least }.
   *[other] { $boards } tablas. Ningún plan usa menos de { $least }.
}
saw-boards-cut = { $cut } ya cortadas
saw-ticket = { $house }: tabla { $number }, { $length }
saw-piece-notched = con muesca
