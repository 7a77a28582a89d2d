# drawing: every key starts with drawing-.
drawing-board-spoken = { $side }, { $length } long, { $cuts ->
    [0] no cut
    [one] one cut
   *[other] { $cuts } cuts
}.
