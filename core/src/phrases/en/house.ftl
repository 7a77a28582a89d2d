# House: what is next, and what is open to the weather.
house-never-copied = Never copied off this phone
house-copied-today = Copied today
house-copied-days = { $days ->
    [one] Last copy one day old
   *[other] Last copy { $days } days old
}
house-board-of-course = Board in course { $course }
house-patch-not-lapped = { $wall }, { $what }: patch not closed
house-edge-not-primed = { $wall }, { $what }: cut edge not primed
house-bead-missing = { $wall }, { $what }: bead missing
