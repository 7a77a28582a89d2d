# The story pole.
pole-mark-sill = { $what } sill, { $wall }
pole-mark-head = { $what } head, { $wall }
pole-mark-bottom = Block bottom at { $what }, { $wall }
pole-mark-top = Block top at { $what }, { $wall }
pole-boards-are-up = Boards are up to course { $course }. Lines at or below them stay as they are.
pole-thin-strip = The last course shows only { $strip }.
pole-lap-short = A reveal of { $reveal } leaves less than the least lap. At most { $most }.
pole-no-height = The end must be above the start.
pole-under-least = Equal courses come out under the least reveal. Allow a smaller one, or another height.
pole-no-layout = No reveals within these limits add up to the height. Allow more between least and greatest, or more change.
pole-reveal-order = The least reveal is over the greatest.
pole-too-large = There are too many heights to choose from. Use a coarser mark or a shorter pole.
pole-as-built-level = Course { $course } hangs level.
pole-as-built-back = Course { $course } hangs { $out } out of level. Level again after { $courses ->
    [one] one course
   *[other] { $courses } courses
}, at most { $change } a course.
pole-as-built-differs = The lines above it lie where the tape puts them, not where the pole had them.
pole-as-built-missed = { $name }: missed by { $miss }.
pole-as-built-lap-short = Course { $course } laps only { $lap } over the course below. The least lap is { $least }.
pole-as-built-no-lap = Course { $course } does not lap over the course below: the wall is open there. The least lap is { $least }.
pole-as-built-none = From course { $course } no lines within the limits lead back to level: the pole’s lines stay above it.
pole-as-built-need-change = Taking out { $change } a course would do (rule: out of level taken out in one course).
pole-as-built-need-reveals = Reveals from { $least } to { $most } would do.
pole-as-built-need-more = Neither more change a course nor other reveals alone will do: lay out the pole again from here.
pole-as-built-course = The pole has courses 1 to { $most }.
pole-as-built-far = Course { $course } cannot hang there: its bottom edge lies between { $least } and { $most }.
pole-as-built-cut = Boards that are cut or up keep their numbers.
pole-line = Course { $course }, shows { $reveal }
pole-end = End
pole-land = A line should meet it.
pole-clear = Lines should stay clear of it.
pole-met = It works out.
pole-missed = Off by { $miss }.
pole-kept = These lines are kept. The walls are planned from them.
pole-differs = These lines are new: the walls still have the old ones.
pole-not-kept = These lines are not kept yet.
pole-proved = No other lines miss these heights by less.
