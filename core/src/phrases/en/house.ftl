# House: what is next, and what is open to the weather.
house-never-copied = Never copied off this device
house-copied-today = Copied today
house-copied-days = { $days ->
    [one] Last copy one day old
   *[other] Last copy { $days } days old
}
house-patch-not-lapped = { $wall }, { $what }: patch not closed
house-edge-not-primed = { $wall }, { $what }: cut edge not primed
house-bead-missing = { $wall }, { $what }: bead missing
house-boards-missing = { $wall }, { $what }: no boards up around it
house-boards-not-primed = { $count ->
    [one] { $wall }: a board in course { $course } has a cut edge not primed
   *[other] { $wall }: { $count } boards have a cut edge not primed, the lowest in course { $course }
}
house-next-stock = Add a stock length
house-next-wall = Add a wall
house-next-measure = { $wall }: { $question }
house-next-pole = Lay out the story pole
house-next-plan = { $wall }: plan the boards
house-next-tight = { $what }: { $step }
house-next-cut = { $wall }: cut a board of course { $course }
house-next-fix = { $wall }: hang the cut board of course { $course }
house-next-nothing = Nothing is left to do.
house-wall-not-measured = Not measured yet
house-wall-boards = { $fixed } of { $all } boards up, { $cut } cut
house-wall-no-boards = No boards planned
house-wall-tight = { $penetrations ->
    [one] 1 penetration
   *[other] { $penetrations } penetrations
}, { $open ->
    [0] all tight
   *[other] { $open } to make tight
}
house-wall-details = { $details ->
    [one] 1 detail
   *[other] { $details } details
}, { $open ->
    [0] all done
   *[other] { $open } open
}
house-stock-any = { $length }, as many as needed
house-stock = { $length }, { $count ->
    [one] { $count } board
   *[other] { $count } boards
}
house-boards-up = Up: { $up } of { $all }
