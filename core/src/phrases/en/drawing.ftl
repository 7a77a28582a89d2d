# drawing: every key starts with drawing-.
drawing-board-spoken = { $side }, { $length } long, { $cuts ->
    [0] no cut
    [one] one cut
   *[other] { $cuts } cuts
}.
drawing-planned = planned
drawing-cut = cut to size
drawing-up = up
drawing-wall-spoken = { $name }, { $width } wide. Boards: { $boards }, up: { $up }. Penetrations: { $penetrations }.
drawing-wall-board = Course { $course }, { $length }
drawing-pole-spoken = Story pole. Lines: { $lines }, up to { $top }. Marks: { $marks }, missed: { $missed }.
drawing-pole-line = { $course }:  { $height }
drawing-pole-missed = { $miss } off: { $name }
drawing-pole-near = { $miss } too close: { $name }
drawing-pole-datum = datum
drawing-wall = WALL
drawing-side-view = SIDE
drawing-layers-spoken = Layers from the wall outward. { $layers }.
drawing-layer-base = Flashing under the first course
drawing-layer-other = Another layer
drawing-wall-small-spoken = { $name }: { $up } of { $boards } boards up
drawing-hook = hook
drawing-read = read
drawing-tape-spoken = Where to put the tape. { $question }
drawing-not-to-scale = depth not to scale
