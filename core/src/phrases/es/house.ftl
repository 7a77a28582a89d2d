# Casa: qué sigue y qué está abierto a la intemperie.
house-never-copied = Nunca se copió fuera de este aparato
house-copied-today = Copiado hoy
house-copied-days = { $days ->
    [one] La última copia tiene un día
   *[other] La última copia tiene { $days } días
}
house-patch-not-lapped = { $wall }, { $what }: parche sin cerrar
house-edge-not-primed = { $wall }, { $what }: borde cortado sin primario
house-bead-missing = { $wall }, { $what }: falta el cordón de sellador
house-boards-missing = { $wall }, { $what }: no hay tablas puestas alrededor
house-boards-not-primed = { $count ->
    [one] { $wall }: una tabla de la hilada { $course } tiene un borde cortado sin primario
   *[other] { $wall }: { $count } tablas tienen un borde cortado sin primario, la más baja en la hilada { $course }
}
house-next-stock = Agregue un largo de tabla
house-next-wall = Agregue una pared
house-next-measure = { $wall }: { $question }
house-next-pole = Trace la vara de hiladas
house-next-plan = { $wall }: planee las tablas
house-next-tight = { $what }: { $step }
house-next-cut = { $wall }: corte una tabla de la hilada { $course }
house-next-fix = { $wall }: ponga la tabla cortada de la hilada { $course }
house-next-nothing = No queda nada por hacer.
house-wall-not-measured = Sin medir todavía
house-wall-boards = { $fixed } de { $all } tablas puestas, { $cut } cortadas
house-wall-no-boards = Sin tablas planeadas
house-wall-tight = { $penetrations ->
    [one] 1 paso por la pared
   *[other] { $penetrations } pasos por la pared
}, { $open ->
    [0] todo sellado
   *[other] { $open } por sellar
}
house-wall-details = { $details ->
    [one] 1 detalle
   *[other] { $details } detalles
}, { $open ->
    [0] todos hechos
    [one] 1 pendiente
   *[other] { $open } pendientes
}
house-stock-any = { $length }, las que hagan falta
house-stock = { $length }, { $count ->
    [one] { $count } tabla
   *[other] { $count } tablas
}
house-boards-up = Puestas: { $up } de { $all }
