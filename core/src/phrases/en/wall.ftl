# What sits in a wall, by the stable codes of the kinds.
wall-kind-hose-bib = Hose bib
wall-kind-pipe = Pipe
wall-kind-conduit = Conduit
wall-kind-cable = Cable
wall-kind-electrical-box = Electrical box
wall-kind-light = Light
wall-kind-vent-hood = Vent hood
wall-kind-meter-base = Meter base
wall-kind-line-set = Line set
wall-finish-block = Mounting block
wall-finish-collar = Sealed collar
wall-finish-trim = Trim all around
wall-mounting-slip-over = Fixture comes off, one piece slips over
wall-mounting-split = Fixture stays on, split piece
wall-opening-window = Window
wall-opening-door = Door
wall-abutment-ground = Ground
wall-abutment-paving = Paving
wall-abutment-roof = Roof
wall-abutment-deck = Deck
wall-abutment-ledge = Ledge of stone or masonry
wall-outline-trouble = These sizes do not make a wall: { $why }.
wall-outline-flat = nothing is left between its edges
wall-outline-many = it has too many corners
wall-outline-repeated = two of its corners lie on each other
wall-outline-crossing = two of its edges cross each other
wall-outline-nothing = one of them is not more than zero
wall-pole-missing = Lay out the story pole to see the courses.
wall-thin-under-sill = Only { $strip } shows under the sill of the { $what }.
wall-thin-over-head = Only { $strip } shows over the head of the { $what }.
wall-no-joints = No stud is free for the joints of course { $course }. Longer stock, another first stud or less stagger would do.
wall-plan-trouble = The boards cannot be planned: { $why }.
wall-nothing-to-plan = There is no course on this wall. Check its base line and the pole.
wall-part-base-step = Step of the base line
wall-part-stud = Stud
wall-part-opening = Opening
wall-part-abutment = Abutment
wall-too-near = { $what }: the siding must end { $clearance } above it and is { $short } too close. Local code and the maker decide.
wall-peak-trouble = The peak must stand above both ends of the wall, and between them.
wall-plan-changed = Planned again. New or changed boards: { $new }, unchanged: { $same }. Courses that changed: { $courses }. What is cut or up stays.
wall-gaps-trouble = The gaps leave no wall to clad: an edge of its outline is shorter than the gaps at its ends. Check the wall's sizes and base steps, and the rule for the gap at the trim.
wall-shapes-trouble = The wall has more corners, or larger sizes, than boards can be worked out for.
# Boards that no longer fit the house as it is now.
wall-misfit = no longer fits
wall-courses = { $wall }, courses { $courses }
wall-misfits = { $count ->
    [one] 1 board no longer fits the house as it is now ({ $boards }). Plan the boards again.
   *[other] { $count } boards no longer fit the house as it is now ({ $boards }). Plan the boards again.
}
wall-cut-misfits = { $count ->
    [one] 1 cut board no longer fits the house as it is now ({ $boards }). It stays as it was cut: measure its place before it goes up.
   *[other] { $count } cut boards no longer fit the house as it is now ({ $boards }). They stay as they were cut: measure their places before they go up.
}
wall-bare = { $count ->
    [one] On 1 stretch of a course no board is planned. Plan the boards again.
   *[other] On { $count } stretches of courses no board is planned. Plan the boards again.
}
wall-misfits-short = { $count ->
    [one] 1 board no longer fits: plan again
   *[other] { $count } boards no longer fit: plan again
}
wall-bare-short = { $count ->
    [one] 1 stretch without a board: plan again
   *[other] { $count } stretches without a board: plan again
}
wall-cut-misfits-short = { $count ->
    [one] 1 cut board no longer fits
   *[other] { $count } cut boards no longer fit
}
wall-moves-more = A board { $length } long moves by { $change }, more than its two end gaps of { $gaps } together take up. Widen the rule for the gap at the trim, or ask the maker.
wall-nails-apart = The studs stand { $spacing } apart; boards may be nailed no further apart than { $most }. Put blocking between, or ask the maker.
wall-wind-design = At { $speed } mph the code's own nailing does not hold here (IRC 2018 R703.3.2): the nailing must be designed, or be the maker's for this wind. Ask before you start.
wall-wind-height = At { $speed } mph the code's own nailing holds for a roof up to { $feet } ft high on the average (IRC 2018 R703.3.2). Say how high this one is.
wall-wind-too-high = At { $speed } mph the code's own nailing holds for a roof up to { $feet } ft high on the average (IRC 2018 R703.3.2), and this one is higher: the nailing must be designed, or be the maker's for this wind.
