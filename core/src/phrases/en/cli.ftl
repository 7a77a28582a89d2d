# cli: every key starts with cli-.
cli-draft = Typed and not yet accepted: { $draft }
cli-differs = This has changed since it was checked off.
cli-out = What was to be printed could not all be written: { $why }
cli-in = Standard input could not be read: { $why }
cli-file = { $path }: { $why }
cli-no-folder = There is no folder for your data on this machine. Name a book with --book FILE.
cli-nothing-drawn = Nothing of “{ $thing }” can be drawn yet, or it has no such drawing. lapwright next says what is to be measured or answered first.
cli-unknown = Nothing is called “{ $text }”. There is: { $known }.
cli-board-told = { $length }, from { $from }
cli-several = “{ $text }” is the name of several things: { $known }. Say which by the id in brackets.
cli-unknown-none = Nothing is called “{ $text }”. { $none }
cli-answer-as-name = “{ $text }” is an answer. What it is about is named before it.
cli-none-house = There is no house yet: lapwright new-job "Lot 7" makes one.
cli-none-wall = There is no wall yet: lapwright add-wall "Lot 7" North makes one.
cli-none-board = There is no board yet: lapwright plan North plans those of a wall, lapwright loose makes one without a wall.
cli-none-penetration = Nothing goes through a wall yet: lapwright add North penetration what=hose-bib width=1in from-left=5ft from-base=20in adds it.
cli-none-thing = There is no board and no penetration yet: lapwright plan North plans the boards of a wall.
cli-none-part = The wall has no parts yet: lapwright add North opening what=window from-left=4ft width=38in from-base=30in height=50in adds one.
cli-none-notch = The board has no notch: lapwright board "North 3" shows it.
cli-none-stock = There is no stock length yet: lapwright stock "Lot 7" 12ft adds one.
cli-none-offcut = There is no offcut yet: lapwright saw "Lot 7" --offcut 40in adds one.
cli-none-entry = No course was said to hang yet: lapwright pole "Lot 7" --as-built North course=2 left=7in right=7in says it.
cli-none-number = No board is planned yet: lapwright saw "Lot 7" --plan plans them.
cli-none-drop-signer = Nobody has signed here yet: lapwright settings signer="NAME" names who does.
cli-none-group = Nothing was answered yet.
cli-first-notch = A notch now, without any house: lapwright loose 118.5in height=7.25in lap=1.25in left=52in right=60in bottom-left=-1.5in top-left=4in
cli-no-jobs = No houses yet. lapwright new-job "NAME" makes one; lapwright demo shows one.
cli-walls = { $count ->
    [one] { $count } wall
   *[other] { $count } walls
}
cli-archived = (archived)
cli-depends = { $count ->
    [0] Nothing later depends on it.
    [one] One later answer depends on it. Say --yes to take it back all the same:
   *[other] { $count } later answers depend on it. Say --yes to take it back all the same:
}
cli-reopened = Open again: { $question } (it was { $answer })
cli-undone = (taken back)
cli-nothing-to-undo = There is nothing to take back.
cli-copied = Copied and checked: { $path }
cli-check-good = The data is sound.
cli-check-bad = The data is not sound: { $why } lapwright repair puts it right, and keeps the file as it is.
cli-check-told = What was lost has not been acknowledged: see above. lapwright acknowledge clears the notice.
cli-account = lapwright acknowledge clears this notice.
cli-acknowledged = Acknowledged.
cli-repaired-nothing = The data is sound. There was nothing to repair.
cli-kept = Kept.
cli-rule-changed = Instead of { $default }, by { $signer }: { $reason }
cli-open-to-weather = Open to the weather now
cli-house-walls = Walls
cli-house-boards = Boards and rules
cli-stock = Stock: { $length }, { $count ->
    [-1] as many as needed
    [one] { $count } board
   *[other] { $count } boards
}
cli-next-answer = Next: { $question }
cli-next-stock = Next: add a stock length
cli-next-wall = Next: add a wall
cli-next-measure = Next, { $wall }: { $question }
cli-next-pole = Next: lay out the story pole
cli-next-plan = Next, { $wall }: plan the boards
cli-next-tight = Next, { $what }: { $step }
cli-next-cut = Next, { $wall }: cut a board of course { $course }
cli-next-fix = Next, { $wall }: hang the cut board of course { $course }
cli-next-nothing = Nothing is left to do.
cli-steps = Steps
cli-layers = Layers, from the wall outward
cli-patch = Membrane patch
cli-block = Mounting block
cli-block-trim = Trim all round
cli-block-split = Mounting block, split on a slope
cli-pole-lines = Lines for the stick, top end first
cli-pole-line = course { $course }, shows { $reveal }
cli-pole-end = end
cli-pole-marks = Heights to meet or stay clear of
cli-mark-land = line on { $name }, { $at }
cli-mark-clear = clear of { $name }, { $at }
cli-mark-missed = off by { $miss }
cli-pole-kept = This layout is kept. The walls are planned from it.
cli-pole-differs = The kept layout is another one. --lay-out keeps this one instead.
cli-pole-not-kept = Not kept yet. --lay-out keeps it.
cli-pole-proved = No other layout misses these heights by less.
cli-exported = Written: { $path }
cli-wall-legend = : no board  · planned  - cut  ═ up  | joint
cli-wall-boards = Boards, the highest course first
cli-notched = notched
cli-board-size = Cut to { $length }, { $height } high
cli-board-stock = From a stock length of { $length }
cli-notch-gap = Marks { $offset } outside the block. Expect a gap of { $least } to { $most }.
cli-level-bottom = Up from the bottom edge: { $left } on the left, { $right } on the right
cli-level-top = Down from the top edge: { $left } on the left, { $right } on the right
cli-level-bottom-even = Up from the bottom edge: { $at }
cli-level-top-even = Down from the top edge: { $at }
cli-notch-gap-on-block = Marks on the block's own edges. Expect a gap of { $least } to { $most }.
cli-demo-signer = Juno
cli-demo-begins = An invented house to try the work on. It is kept in { $path }.
cli-demo-goes-on = Going on where the last run stopped.
cli-demo-keys = Enter takes the answer in brackets, q leaves. What you answered is kept.
cli-demo-other-book = This book holds other houses and no demo house. Name a new file with --book FILE.
cli-demo-go-on = Enter: go on, q: leave
cli-demo-cut-it = Enter: cut, prime and hang it, q: leave
cli-demo-board-up = ═ { $board }: cut to { $length }, primed, up
cli-demo-again = The notched board is up. Run lapwright again to go on with the next one.
cli-demo-left = Everything answered is kept. Run lapwright again to go on.
cli-demo-nothing-left = Nothing is left to do on the demo house. lapwright demo --anew puts its book aside and begins again.
cli-demo-aside = The demo's book was put aside as { $path }.
cli-pole-as-built = { $wall }, course { $course } hangs at { $left } left, { $middle } middle, { $right } right
cli-pole-changed = course { $course }: { $left } left, { $middle } middle, { $right } right (pole { $planned })
cli-shed = Does it shed water?
cli-head = Head flashing
cli-drawn = Drawn: { $path }
cli-offcuts = Offcuts on hand
cli-offcut = (offcut)
cli-saw-more = { $count ->
    [one] … and 1 more board: lapwright saw
   *[other] … and { $count } more boards: lapwright saw
}
cli-block-advice = Better: a block { $width } × { $height }, the hole { $hole } above its bottom. { $gain } (penetration … --advised takes it)
cli-block-size = Mounting block { $width } × { $height }
cli-yes = Nothing was changed. The same with --yes does it.
cli-photo-one-step = A photo is of one step. Tick that one by itself.
cli-no-backups = No copy is kept yet. One is made before a copy is put back or a colleague's file is taken in; lapwright backup lot-7.zip makes one by hand.
cli-signer = lapwright settings signer="NAME" says it for good, --signer "NAME" for one command.
