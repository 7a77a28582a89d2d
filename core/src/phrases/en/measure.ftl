# Measuring a wall.
measure-opening-outside = A window or door would then lie outside the wall. Check this size, or move the opening.
measure-outside = This lies beyond the wall, which is { $width } wide.
measure-over-top = This reaches over the top of the wall.
measure-impossible = With this size the wall would cross itself. Check it against the other sizes.
measure-left-higher = The left end is { $by } higher than the right one. Check the base line with a level.
measure-right-higher = The right end is { $by } higher than the left one. Check the base line with a level.
measure-leans-right = Out of square: the top stands { $by } to the right of the base.
measure-leans-left = Out of square: the top stands { $by } to the left of the base.
measure-under-base = This reaches below the base line there, where it steps up.
measure-head-range = A side leans by an inch a foot at most, and stays on the wall: from { $least } to { $most } here.
measure-pitch-title = Roof pitch
measure-pitch = “{ $text }” is no pitch of this gable. Write the rise over the run, such as 6/12 or 6 in 12; both rakes must meet over the wall.
