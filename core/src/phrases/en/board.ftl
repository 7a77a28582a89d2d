# board: every key starts with board-.
board-title = { $wall }, course { $course }
board-title-attached = Loose board for { $wall }
board-title-loose = Loose board
board-differs-from-cut = This differs from what was cut. The board keeps the numbers that it was cut with.
board-habit = Your saw and hands, from { $cuts } cuts: { $least } to { $most } over the line.
board-habit-learning = Your saw and hands: { $cuts } of 3 cuts measured. Until then the rule applies: { $least } to { $most }.
board-already-attached = This board is on a wall already.
board-not-cut = Only a board that is cut or up can be spoiled.
board-left-range = What is left must be over zero and no longer than the board was.
board-spoiled-note = Spoiled
board-bevel-left = Left end: the top edge begins { $by } { $way ->
    [right] to the right of the bottom edge
   *[left] to the left of the bottom edge
}. The length runs from farthest point to farthest point.
board-bevel-right = Right end: the top edge ends { $by } { $way ->
    [right] to the right of the bottom edge
   *[left] to the left of the bottom edge
}. The length runs from farthest point to farthest point.
