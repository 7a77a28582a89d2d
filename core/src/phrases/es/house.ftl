# Casa: qué sigue y qué está abierto a la lluvia.
house-never-copied = Nunca se copió fuera de este teléfono
house-copied-today = Copiado hoy
house-copied-days = { $days ->
    [one] La última copia tiene un día
   *[other] La última copia tiene { $days } días
}
house-patch-not-lapped = { $wall }, { $what }: parche sin cerrar
house-edge-not-primed = { $wall }, { $what }: canto cortado sin imprimar
house-bead-missing = { $wall }, { $what }: falta el cordón de sellador
house-boards-not-primed = { $count ->
    [one] { $wall }: una tabla de la hilada { $course } tiene un canto cortado sin imprimar
   *[other] { $wall }: { $count } tablas tienen un canto cortado sin imprimar, la más baja en la hilada { $course }
}
