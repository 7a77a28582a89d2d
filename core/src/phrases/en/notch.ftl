# notch: every key starts with notch-.
notch-gap-tight = The gap may come out as small as { $least }, under the { $wanted } that is wanted. Material can still be removed, never put back.
notch-gap-near = The block lies { $least } from the board, nearer than the { $wanted } that is wanted, though it does not enter it.
notch-gap-wide = The gap may come out as wide as { $most }, over the { $wanted } that is wanted.
notch-thin-leg = The leg left here is only { $width } wide, under { $least }. Fibre cement is brittle: set a joint through the notch, or move the block.
notch-out-of-level = The two ends of this cut edge differ by { $by } in height. Check that block and board are level, and mark both sides.
notch-cross-check = The depths of the two boards over this block miss each other by { $by }. Measure both again.
notch-lap = The lap must be less than the height of the board.
notch-help = The notch for the board in hand, seen from its face. A block that only touches the board, or lies beside it, is no cut. The deeper side of a sloped edge decides the kind of cut; an edge that opens is open along the whole width. The heights at the block's sides hold at the marks, also where a side lies beyond the board's end. A block across both ends that leaves a strip above and below is a rip-top.
