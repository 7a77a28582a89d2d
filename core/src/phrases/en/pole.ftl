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
