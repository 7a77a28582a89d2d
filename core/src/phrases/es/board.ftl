# board: cada clave empieza por board-.
board-title = { $wall }, hilada { $course }
board-title-attached = Tabla suelta para { $wall }
board-title-loose = Tabla suelta
board-differs-from-cut = Esto difiere de lo que se cortó. La tabla conserva los números con que se cortó.
board-habit = Su sierra y sus manos, de { $cuts } cortes: de { $least } a { $most } más allá de la línea.
board-habit-learning = Su sierra y sus manos: { $cuts } de 3 cortes medidos. Hasta entonces vale la regla: de { $least } a { $most }.
board-already-attached = Esta tabla ya está en una pared.
board-not-cut = Solo una tabla cortada o puesta puede echarse a perder.
board-left-range = Lo que queda debe pasar de cero y no ser más largo que la tabla.
board-spoiled-note = Echada a perder
board-bevel-left = Extremo izquierdo: el canto superior empieza { $by } { $way ->
    [right] a la derecha del canto inferior
   *[left] a la izquierda del canto inferior
}. El largo va de punta a punta.
board-bevel-right = Extremo derecho: el canto superior termina { $by } { $way ->
    [right] a la derecha del canto inferior
   *[left] a la izquierda del canto inferior
}. El largo va de punta a punta.
