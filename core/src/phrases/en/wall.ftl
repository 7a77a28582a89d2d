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
wall-finish-trim = Trim all round
wall-mounting-slip-over = Fixture comes off, one piece slips over
wall-mounting-split = Fixture stays on, split piece
