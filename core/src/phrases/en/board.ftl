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
