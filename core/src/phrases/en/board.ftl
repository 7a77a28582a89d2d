# board: every key starts with board-.
board-title = { $wall }, course { $course }
board-title-attached = Loose board for { $wall }
board-title-loose = Loose board
board-differs-from-cut = This differs from what was cut. The board keeps the numbers that it was cut with.
board-habit = Your saw and hands, from { $cuts } cuts: { $least } to { $most } over the line.
board-habit-learning = Your saw and hands: { $cuts } of 3 cuts measured. Until then the rule applies: { $least } to { $most }.
board-misfit = This board no longer fits the house as it is now. Plan the boards again before you cut it.
board-cut-misfit = This board was cut for the house as it was and no longer fits. Measure its place before it goes up.
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
board-thin-leg = A leg of this board is thinner than { $least }. Fiber cement is brittle: set a joint through the notch, or move what it goes around.
board-thin-strip = This board is a strip of only { $height }, less than { $least }.
board-short-piece = This board is only { $length } long, less than { $least }.
board-cut-length = Cut it square to { $length }, tape on the { $end ->
    [right] right
   *[left] left
} end.
board-cut-length-edges = Cut it to { $length } from farthest point to farthest point: { $bottom } along the bottom edge, { $top } along the top edge. Tape on the { $end ->
    [right] right
   *[left] left
} end.
board-cut-rip-top = Rip { $by } off the top edge, the whole length of the board. It ends up { $height } high. Keep the factory edge at the bottom.
board-cut-rip-bottom = Rip { $by } off the bottom edge, the whole length of the board. It ends up { $height } high. Keep the factory edge at the top.
board-cut-strip = Take it out of the strip that is ripped off another piece of board { $number }. Turn the strip end for end with its face out: the factory edge goes to the bottom.
board-cut-strip-kept = Take it out of the strip that was kept, number { $number } of the saw list. Turn the strip so that its face is out and its factory edge at the bottom.
board-cut-rip-strip = Rip the strip down to { $height } along its whole length. Keep the factory edge at the bottom.
board-cut-taper-top = Rip the top edge to a taper: { $left } off at the left end, { $right } off at the right end. Keep the factory edge at the bottom.
board-cut-taper-bottom = Rip the bottom edge to a taper: { $left } off at the left end, { $right } off at the right end. Keep the factory edge at the top.
board-cut-bevel = { $end ->
    [right] Right
   *[left] Left
} end: cut it { $degrees } out of square, the { $edge ->
    [top] top
   *[bottom] bottom
} edge { $by } shorter.
board-cut-clip = { $end ->
    [right] Right
   *[left] Left
} end: cut the { $edge ->
    [top] top
   *[bottom] bottom
} corner off, { $along } along the edge and { $up } along the end.
board-cut-step = { $end ->
    [right] Right
   *[left] Left
} end: take the { $edge ->
    [top] top
   *[bottom] bottom
} corner out square, { $along } along the edge and { $up } high. Stop the saw short of the corner.
board-cut-notch = Notch the { $side ->
    [left] left end
    [right] right end
    [top] top edge
   *[bottom] bottom edge
} from { $from } to { $to }, { $depth } deep. Stop the saw short of the corners.
board-cut-hole = Cut the hole while the board has its full strength.
board-cut-hole-round = Cut the hole for { $what } at its marks, while the board has its full strength.
board-cut-round = Cut around { $what } at its marks.
board-cut-contour = Mark the outline from the drawing and cut along it.
board-cut-pieces = { $what } goes clear through: { $count } pieces, { $lengths } long.
board-next = Next: course { $course }, { $length }
board-check-cut = Cut
board-check-primed = Primed
board-check-up = Up
board-check-done = This is checked already.
board-check-open = Nothing of this is checked yet.
