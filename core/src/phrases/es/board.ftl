# board: cada clave empieza por board-.
board-title = { $wall }, hilada { $course }
board-title-attached = Tabla suelta para { $wall }
board-title-loose = Tabla suelta
board-differs-from-cut = Esto difiere de lo que se cortó. La tabla conserva los números con que se cortó.
board-habit = Su sierra y sus manos, en { $cuts } cortes medidos: de { $least } a { $most } más allá de la línea.
board-habit-learning = Su sierra y sus manos: { $cuts } de 3 cortes medidos. Hasta entonces vale la regla: de { $least } a { $most }.
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
