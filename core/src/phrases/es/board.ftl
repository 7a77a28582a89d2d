# board: cada clave empieza por board-.
board-title = { $wall }, hilada { $course }
board-title-attached = Tabla suelta para { $wall }
board-title-loose = Tabla suelta
board-differs-from-cut = Esto difiere de lo que se cortó. La tabla conserva los números con que se cortó.
board-habit = Su sierra y sus manos, en { $cuts } cortes medidos: de { $least } a { $most } más allá de la línea.
board-habit-learning = Su sierra y sus manos: { $cuts } de 3 cortes medidos. Hasta entonces vale la regla: de { $least } a { $most }.
board-misfit = Esta tabla ya no ajusta con la casa como está ahora. Planee las tablas de nuevo antes de cortarla.
board-cut-misfit = Esta tabla se cortó para la casa como estaba y ya no ajusta. Mida su lugar antes de ponerla.
board-already-attached = Esta tabla ya está en una pared.
board-not-cut = Solo una tabla cortada o puesta puede echarse a perder.
board-left-range = Lo que queda debe pasar de cero y no ser más largo que la tabla.
board-spoiled-note = Echada a perder
board-bevel-left = Punta izquierda: el borde superior empieza { $by } { $way ->
    [right] a la derecha del borde inferior
   *[left] a la izquierda del borde inferior
}. El largo se mide entre los dos puntos más lejanos.
board-bevel-right = Punta derecha: el borde superior termina { $by } { $way ->
    [right] a la derecha del borde inferior
   *[left] a la izquierda del borde inferior
}. El largo se mide entre los dos puntos más lejanos.
board-help = La forma real de cada tabla de una hilada a nivel: lo que queda dentro del contorno menos sus holguras y fuera de todo lo que rodea, partido en las juntas. Las formas y los cortes se ven de cara, desde la esquina inferior izquierda del recuadro de cada tabla. Las partes que solo se tocan en un punto son dos tablas.
board-outline-few = Un contorno tiene por lo menos tres esquinas alrededor de un área.
board-outline-twice = La esquina { $corner } está donde está la anterior. Dé cada esquina una sola vez, y no repita la primera al final.
board-outline-crosses = El contorno se cruza o se toca a sí mismo: los lados que empiezan en las esquinas { $one } y { $other } comparten un punto. Las esquinas deben dar una sola vuelta a la pared.
board-gaps = Con estas holguras un lado del contorno desaparecería o se voltearía, o el contorno se cruzaría o se tocaría. Reduzca las holguras.
board-too-many = Esto da más de { $limit } tablas, esquinas o agujeros.
board-thin-leg = Una pata de esta tabla mide menos de { $least }. El fibrocemento es frágil: ponga una junta en la muesca, o mueva lo que rodea.
board-thin-strip = Esta tabla es una franja de solo { $height }, menos de { $least }.
board-short-piece = Esta tabla mide solo { $length } de largo, menos de { $least }.
board-cut-length = Córtela a escuadra a { $length }, la cinta en la punta { $end ->
    [right] derecha
   *[left] izquierda
}.
board-cut-length-edges = Córtela a { $length } de punta a punta: { $bottom } por el borde inferior, { $top } por el borde superior. La cinta en la punta { $end ->
    [right] derecha
   *[left] izquierda
}.
board-cut-rip-top = Córtele { $by } a todo lo largo por el borde superior: quedan { $height } de alto. Deje el borde de fábrica abajo.
board-cut-rip-bottom = Córtele { $by } a todo lo largo por el borde inferior: quedan { $height } de alto. Deje el borde de fábrica arriba.
board-cut-strip = Sáquela de la tira que sale de otra pieza de la tabla { $number }. Dele media vuelta a la tira, punta por punta, siempre con la cara hacia afuera: el borde de fábrica queda abajo.
board-cut-strip-kept = Sáquela de la tira que se guardó, número { $number } de la lista de cortes. Gire la tira hasta que la cara quede hacia afuera y el borde de fábrica abajo.
board-cut-rip-strip = Corte la tira a todo lo largo, a { $height } de alto. Deje el borde de fábrica abajo.
board-cut-taper-top = Corte el borde superior en cuña: quite { $left } en la punta izquierda y { $right } en la derecha. Deje el borde de fábrica abajo.
board-cut-taper-bottom = Corte el borde inferior en cuña: quite { $left } en la punta izquierda y { $right } en la derecha. Deje el borde de fábrica arriba.
board-cut-bevel = Punta { $end ->
    [right] derecha
   *[left] izquierda
}: córtela { $degrees } fuera de escuadra, el borde { $edge ->
    [top] superior
   *[bottom] inferior
} { $by } más corto.
board-cut-clip = Punta { $end ->
    [right] derecha
   *[left] izquierda
}: corte la esquina { $edge ->
    [top] de arriba
   *[bottom] de abajo
}, { $along } por el borde y { $up } por la punta.
board-cut-step = Punta { $end ->
    [right] derecha
   *[left] izquierda
}: saque a escuadra la esquina { $edge ->
    [top] de arriba
   *[bottom] de abajo
}, { $along } por el borde y { $up } de alto. Pare la sierra antes de la esquina.
board-cut-notch = Haga una muesca en { $side ->
    [left] la punta izquierda
    [right] la punta derecha
    [top] el borde superior
   *[bottom] el borde inferior
} de { $from } a { $to }, { $depth } de hondo. Pare la sierra antes de las esquinas.
board-cut-hole = Corte el agujero mientras la tabla tiene toda su fuerza.
board-cut-hole-round = Corte el agujero para { $what } en sus marcas, mientras la tabla tiene toda su fuerza.
board-cut-round = Corte alrededor de { $what } en sus marcas.
board-cut-contour = Marque el contorno del dibujo y córtelo.
board-cut-pieces = { $what } la atraviesa: { $count } piezas, de { $lengths } de largo.
board-next = Sigue: hilada { $course }, { $length }
board-check-cut = Cortada
board-check-primed = Con primario
board-check-up = Puesta
board-check-done = Esto ya está marcado.
board-check-open = De esto todavía no hay nada marcado.
