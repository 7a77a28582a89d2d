# drawing: cada clave empieza por drawing-.
drawing-board-spoken = { $side }, { $length } de largo, { $cuts ->
    [0] sin cortes
    [one] un corte
   *[other] { $cuts } cortes
}.
