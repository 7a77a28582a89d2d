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
board-help = The true shape of every board of one level course: what of it lies inside the outline less its gaps and outside everything it goes round, parted at joints. Shapes and cuts are seen from the face, from the lower left corner of each board's box. Parts that touch in a point only are two boards.
board-outline-few = An outline has at least three corners round an area.
board-outline-twice = Corner { $corner } stands where the one before it stands. Give each corner once, and the first one not again at the end.
board-outline-crosses = The outline crosses or touches itself: the sides that begin at corners { $one } and { $other } share a point. Its corners must go once round the wall.
board-gaps = With these gaps an edge of the outline would vanish or turn round, or the outline would cross or touch itself. Lower the gaps.
board-too-many = This makes more than { $limit } boards, corners or holes.
board-thin-leg = A leg of this board is thinner than { $least }. Fiber cement is brittle: set a joint through the notch, or move what it goes round.
board-thin-strip = This board is a strip of only { $height }, less than { $least }.
board-short-piece = This board is only { $length } long, less than { $least }.
