# amounts: every key starts with amounts-.
amounts-boards = Boards { $length }
amounts-boards-from = Saw list: { $boards ->
    [one] 1 board
   *[other] { $boards } boards
} for { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
}, cutting waste counted in. The allowance is for breakage.
amounts-barrier = Water barrier
amounts-barrier-from = { $courses ->
    [one] 1 course
   *[other] { $courses } courses
} with their laps, lapped around the corners; openings are cut out of it
amounts-barrier-tape = Tape for the barrier’s seams
amounts-barrier-tape-from = { $seams ->
    [one] 1 upright seam
   *[other] { $seams } upright seams
}
amounts-starter = Starter strip
amounts-starter-from = Bottom edges of { $walls ->
    [one] 1 wall
   *[other] { $walls } walls
}, from trim to trim, doors left out
amounts-backing = Flashing strips behind joints, { $width } × { $height }
amounts-backing-from = { $joints ->
    [one] One at 1 joint
   *[other] One at each of { $joints } joints
}
amounts-trim = Trim, { $width } wide
amounts-trim-from = Wall ends: { $ends }, windows and doors: { $openings }, fixtures: { $fixtures }
amounts-top-trim = Frieze and rake trim, { $width } wide
amounts-top-trim-from = Top edges of the walls: { $count }
amounts-soffit = Soffit, { $width } wide
amounts-soffit-from = Top edges of the walls: { $count }
amounts-block = Mounting block { $width } × { $height }, { $thickness } thick
amounts-block-from = Fixtures that come off: { $count }
amounts-block-split = Mounting block to split, { $width } × { $height }, { $thickness } thick
amounts-block-split-from = Fixtures that cannot come off: { $count }. The blank is taller by the saw cut.
amounts-collar = Sealed collar
amounts-collar-from = Fixtures finished with a collar: { $count }
amounts-extension-ring = Extension rings for boxes
amounts-extension-ring-from = Boxes and lights: { $count }. A ring goes on where the box lies behind the finished face: ask the electrician which.
amounts-membrane = Self-adhered membrane
amounts-membrane-from = Patch and slit cover at { $count ->
    [one] 1 fixture
   *[other] { $count } fixtures
}
amounts-flashing = Head flashing
amounts-flashing-from = Windows and doors: { $openings }, blocks: { $blocks }; each end turned up { $dam }
amounts-wall-flashing = Flashing along roofs, ledgers and ledges
amounts-wall-flashing-from = Where a roof, a deck or a ledge lies level against a wall: { $count }
amounts-base-flashing = Flashing along the base line
amounts-base-flashing-from = Bottom edges of { $count ->
    [one] 1 wall
   *[other] { $count } walls
}, doors left out
amounts-step-flashing = Step flashing
amounts-step-flashing-from = One piece a course of roofing, { $each } of slope each
amounts-kick-out = Kick-out flashing
amounts-kick-out-from = Roofs that run down along a wall: { $count }
amounts-furring = Furring strips
amounts-furring-from = One over each stud, as high as its wall: { $count }
amounts-vent-strip = Vent strip
amounts-vent-strip-from = Along the foot and the top of furred walls: { $count }
amounts-sealant = Sealant
amounts-sealant-from = { $length } of joint by its volume: { $trim } wide at the trim, { $block } at blocks and fixtures, { $depth } deep at most; open above flashings
amounts-primer = Primer for cut edges
amounts-primer-from = { $edge } of cut edge, { $thickness } thick, at { $coverage }
amounts-paint = Paint
amounts-paint-from = { $area } of wall without openings, coats: { $coats }, at { $coverage }. None where boards come painted.
amounts-touch-up = Touch-up kit in the boards’ own color
amounts-touch-up-from = { $area } of wall without openings, boards that come painted
amounts-nails = Siding nails, { $length } or longer
amounts-nails-from = Boards over studs: { $studs }, joints: { $joints }{ $face ->
    [0] {""}
   *[other] ; through the face: { $face }
}
amounts-trim-nails = Trim nails
amounts-trim-nails-from = { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
} of trim, nails every { $spacing }
amounts-screws = Screws for blocks
amounts-screws-from = Blocks: { $blocks }, screws in each: { $each }
amounts-pack-board = board
amounts-pack-piece = piece
amounts-pack-strip = strip of { $length }
amounts-pack-length = length of { $length }
amounts-pack-roll = roll { $width } × { $length }
amounts-pack-roll-of = roll of { $length }
amounts-pack-cartridge = cartridge of { $size }
amounts-pack-kit = kit for { $area }
amounts-pack-can = can of { $size }
amounts-pack-box = box of { $count }
amounts-help = Everything to order for a house: what goes on it, the allowance for waste and the packs, rounded up. Boards are counted on the job document's own saw list, or on one planned here; all else on its walls, openings and fixtures. amount = net + waste; a pack's size, a coverage and an allowance are rules, which the document may change. Lengths, areas and volumes are in feet and gallons, with "show" in mm in meters and liters. packs may be more than amount asks for where pieces cannot be cut from offcuts. Paint none where boards come painted: set the rule paint.coats to 0. effort limits the planner's steps where there is no saw list.
amounts-trouble = The amounts cannot be told: { $why }
order-name = Material
order-net = Net
order-waste = Waste
order-amount = Amount
order-packs = Packs
order-pack = Pack
order-have = On hand
order-buy = Buy
order-from = Computed from
order-line = Buy { $buy } × { $pack }: { $net } and { $waste } for waste
order-line-have = Buy { $buy } × { $pack }: { $net } and { $waste } for waste make { $packs }, { $have } are there
order-line-enough = Nothing to buy: { $net } and { $waste } for waste make { $packs } × { $pack }, { $have } are there
order-check = Pack sizes and coverages are rules of this house: check them against the labels before you order.
