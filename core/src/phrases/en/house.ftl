# House: what is next, and what is open to the weather.
house-never-copied = Never copied off this phone
house-copied-today = Copied today
house-copied-days = { $days ->
    [one] Last copy one day old
   *[other] Last copy { $days } days old
}
house-patch-not-lapped = { $wall }, { $what }: patch not closed
house-edge-not-primed = { $wall }, { $what }: cut edge not primed
house-bead-missing = { $wall }, { $what }: bead missing
house-boards-not-primed = { $count ->
    [one] { $wall }: a board in course { $course } has a cut edge not primed
   *[other] { $wall }: { $count } boards have a cut edge not primed, the lowest in course { $course }
}
