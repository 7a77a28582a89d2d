# siding: every key starts with siding-.
siding-pole-help = Lays out a story pole. "equal": the fewest courses under reveal_max, all alike. "fixed": one reveal from the bottom, the last course is what is left. "fit": the proven best reveals within the limits for the marks. Lines stand above "from", each rounded on its own.
siding-pole-no-height = The end must be above the start: "to" over "from".
siding-pole-reveal-order = The least reveal must not be over the greatest, reveal_max.
siding-pole-lap-order = The least lap must be less than board_height.
siding-pole-under-least = { $courses } equal courses of { $reveal } each fall under the least reveal. Lower reveal_min or raise reveal_max.
siding-pole-no-layout = No reveals within the limits add up to this height. Widen reveal_min, reveal_max or change_max, or move the start.
siding-pole-too-many-courses = This makes more than { $limit } courses. Raise the reveal or lower the height.
siding-pole-too-large = There are too many heights and reveals to choose from. Use a coarser division, or bring reveal_min and reveal_max closer together.
siding-pole-cost-too-big = These marks miss by more than can be added up. Bring them nearer to the pole or lower their weights.
siding-pole-lap-short = A reveal of { $reveal } leaves less than the least lap. At most { $most } may show.
siding-pole-thin-strip = The last course shows only { $strip }, less than { $least }.
siding-gable-help = Cuts for a symmetric gable on a level line. Every rake cut has the same angle. "step" is by how much each course is shorter on each side; "edge_difference" is that between a board's bottom and top edge. Give either "reveal" or "bottoms". Lengths of boards are rounded down.
siding-gable-either = Give either reveal or bottoms, not both.
siding-gable-ascending = Each bottom must be above the one before.
siding-gable-too-many-courses = This makes more than { $limit } courses. Raise the reveal.
siding-gable-too-large = With this pitch a length passes the limit of 1,000 km.
