# drawing: cada clave empieza por drawing-.
drawing-board-spoken = { $side }, { $length } de largo, { $cuts ->
    [0] sin cortes
    [one] un corte
   *[other] { $cuts } cortes
}.
drawing-planned = planeada
drawing-cut = cortada
drawing-up = puesta
drawing-wall-spoken = { $name }, { $width } de ancho. Tablas: { $boards }, puestas: { $up }. Pasos por la pared: { $penetrations }.
drawing-wall-board = Hilada { $course }, { $length }
drawing-pole-spoken = Vara de hiladas. Líneas: { $lines }, hasta { $top }. Marcas: { $marks }, falladas: { $missed }.
drawing-pole-line = { $course }:  { $height }
drawing-pole-missed = falla por { $miss }: { $name }
drawing-pole-near = demasiado cerca por { $miss }: { $name }
drawing-pole-datum = referencia
drawing-wall = PARED
drawing-side-view = COSTADO
drawing-layers-spoken = Capas desde la pared hacia afuera. { $layers }.
drawing-layer-base = Tapajuntas bajo la primera hilada
drawing-layer-other = Otra capa
drawing-wall-small-spoken = { $name }: { $up } de { $boards } tablas puestas
drawing-hook = gancho
drawing-read = leer
drawing-tape-spoken = Dónde poner la cinta. { $question }
drawing-not-to-scale = profundidad sin escala
