# What the command says of itself. command-NAME is a command and command-NAME-ARGUMENT what it takes; command-arg-ARGUMENT
# is an argument that means the same in every command, command-value-WORD the word that stands for a value, and
# command-call-NAME a right call of a command, as it is typed behind lapwright.
command-about = Lap siding at penetrations: measure, notch, flash, tick off.
command-more = With no command it opens the demo house and walks through the main job. HOUSE, WALL, BOARD and PENETRATION are names, or the beginning of an id.
command-usage = Usage
command-commands = Commands
command-arguments = Arguments
command-options = Options
command-word = COMMAND
command-options-word = OPTIONS
command-for-example = Example
command-allowed = One of: { $values }.
command-left-out = If left out: { $value }.
command-man-name = NAME
command-man-synopsis = SYNOPSIS
command-man-description = DESCRIPTION
command-man-version = VERSION

command-jobs = The houses of the book.
command-new-job = A new house, also with boards, rules and block sizes of another.
command-new-job-name = What the house is to be called.
command-new-job-like = The house to take boards, rules and block sizes from.
command-rename = Another name for a house.
command-rename-name = What it is to be called.
command-archive = Put a house out of the way; its data stays.
command-bring-back = Bring an archived house back.
command-house = How far a house is and what is next; answers set its boards.
command-stock = Add a stock length to a house.
command-stock-length = One full board, end to end.
command-stock-count = How many there are; nothing where more can be bought.
command-add-wall = Add a wall to a house.
command-add-wall-name = What the crew calls the wall.
command-wall = What is where on a wall.
command-measure = Set up a wall from measurements.
command-add = Add to a wall: an opening, an abutment, a step of the base line, a stud or a penetration.
command-add-kind = What is added.
command-change = Change a part of a wall, such as a window's width; without answers, show the wall's questions.
command-remove = Remove a part of a wall; it stays in the done list.
command-plan = Plan the boards of a wall from the pole.
command-pole = The story pole of a house; answers change it.
command-pole-lay-out = Keep the lines as laid out.
command-pole-as-built = A course hangs on this wall: course=, left=, right= and, where it was taped, middle= say where.
command-pole-not-built = What was said of a course as it hangs no longer holds.
command-mark = Add a height that lines should meet or stay clear of.
command-next = What is next on a house: the board in hand and its notch, or the penetration's next step.
command-loose = A loose board: left, right, bottom-left and top-left give the notch; no house is needed.
command-loose-length = How long the board is.
command-loose-house = The house whose rules apply.
command-board = The board in hand, its marks on face and back; answers correct a reading of its notch.
command-board-notch = Which notch the answers are for, where there is more than one.
command-attach = Attach a loose board to a wall.
command-gap = A gap that was measured after fitting: the saw and the hands are learned from it.
command-gap-gap = The gap at its widest place, but not over a head flashing.
command-gap-notch = Which notch it was measured at, where there is more than one.
command-same-board = A loose board like the last loose one, with its blocks.
command-same-board-house = The house whose loose boards are meant; else those of none.
command-spoiled = A board that was cut is spoiled: it is planned again.
command-spoiled-left = How long the piece is that can still be used, between square ends.
command-block-size = Add a size of mounting block to a house: advice chooses among them.
command-block-size-width = The block's width, side to side.
command-block-size-height = The block's height, closed.
command-penetration = A penetration: its layers, sizes and steps; answers change it.
command-penetration-advised = Take the advised block.
command-tick = Tick steps of a board or a penetration, one after the other.
command-tick-steps = The steps, by the codes that stand behind them in brackets; of a board also cut, primed and up, each for all of its steps.
command-tick-measured = What was measured at this step.
command-tick-photo = A photo of this step, as a JPEG file: the book keeps a copy of it.
command-skip = Leave a step out, with a reason.
command-skip-reason = Why it is left out.
command-untick = Take a tick back: the step is open again.
command-saw = The saw list of a house: what to cut from what, against the least possible.
command-saw-plan = Plan everything that is not cut yet.
command-saw-improve = Look longer for a better plan.
command-saw-cut = Mark a board as cut, by its number.
command-saw-offcut = An offcut that lies about.
command-saw-drop = Throw an offcut away.
command-saw-keep = Keep an offcut after all.
command-saw-have = How many boards of a stock length there are; nothing after the sign for as many as are wanted.
command-order = What to buy for a house: amounts, waste and packs.
command-order-csv = Comma-separated values.
command-order-text = A message to send.
command-rules = The rules of a house.
command-rule = Change a rule, with a reason.
command-rule-value = The value, with its unit.
command-rule-reason = Why: the maker's sheet, the section of the code, the inspector's word.
command-rule-default = Back to a rule's default.
command-done = What happened, newest first.
command-done-house = One house alone.
command-done-count = How many lines.
command-undo = Take an answer back; shows first what depends on it.
command-undo-group = The answer, as the done list names it; else the last one.
command-undo-yes = Do it although later answers depend on it.
command-settings = Who holds this device, and how it speaks.
command-copy = A checked copy of the book.
command-backup = The book and its photos as one file, checked.
command-backups = The copies that the book keeps of itself, newest first.
command-restore = What going back to a copy or backup would do; with --yes, do it. Later sign-offs stay.
command-restore-file = The copy or the backup.
command-restore-yes = Do it; a copy of the book as it is is made before.
command-words = The four words of this device, for a colleague to compare.
command-hand-over = Write the answers of a house for a colleague's phone. Photos go apart.
command-hand-over-new = Only what came since the last such file of this house.
command-take-in = What taking in a colleague's file, a copy of a book or a house, would do; with --yes, do it.
command-take-in-file = The colleague's file.
command-take-in-house = Only one house of it: a house of this book, or an id.
command-take-in-yes = Do it; without this it is only looked at.
command-take-in-trust = The four words that the other device shows of itself: they are those of the file.
command-take-in-even-ahead = Take answers in whose clock is more than a day ahead, as they are.
command-differences = What two phones answered differently and nobody here has looked at yet.
command-differences-looked-at = They were looked at: show them no longer.
command-check = Check the data.
command-repair = Check the data and put it right from the book's own log and its copies; the file as it was is kept.
command-acknowledge = Clear the notice of what was saved and what was lost.
command-export = A house as a job document, to a file or standard output.
command-sheet = A house’s sign-offs for the inspector: each penetration and detail, each step with who, when and what. To a file or standard output.
command-import = Take in a job document.
command-import-file = The job document.
command-draw = A drawing of a board, a wall, a pole or a penetration, as SVG.
command-draw-what = What is drawn of it.
command-draw-thing = A board for face and back, a wall for wall, a house for pole, a penetration for block, layers and section.
command-draw-svg = The file; else standard output.
command-draw-width = How wide, in pixels.
command-draw-dark = Pale lines on a dark ground.
command-figure = Answer a single question: one JSON object in on standard input, one out. With --help behind QUESTION, show it with an example.
command-figure-question = The question, as --list names it.
command-figure-list = Name the questions.
command-completions = What a shell completes commands and options by: to be sourced, or put where the shell looks for it.
command-completions-shell = The shell.
command-man = The manual page, for man.
command-demo = The demo house and its walk through the main job.
command-demo-anew = Put the demo's book aside and begin anew.

command-arg-book = The book; else the user's own.
command-arg-json = Answer in JSON.
command-arg-language = The language; else as remembered, else from the locale.
command-arg-show = How lengths are shown: in/16, in/32, in/64, ft-in/16, mm or mm/0.5.
command-arg-division = The smallest mark that cutting uses, such as 1/16".
command-arg-signer = Who signs.
command-arg-help = Print this help.
command-arg-version = Print the version.
command-arg-house = The house: its name, or the beginning of its id.
command-arg-wall = The wall: its name, or the beginning of its id.
command-arg-board = The board: wall and course, such as "North 3", or the beginning of its id.
command-arg-penetration = The penetration: what it is, also behind its wall's name, or the beginning of its id.
command-arg-thing = The board or the penetration whose steps these are.
command-arg-part = The opening, abutment, base step or stud: its kind where there is one alone, else the beginning of its id.
command-arg-step = The step, by the code that stands behind it in brackets.
command-arg-note = What else there is to say.
command-arg-key = The rule, by its key: see lapwright rules HOUSE.
command-arg-file = The file.
command-arg-force = Write over a file that is there. A book is never written over.
command-arg-given = Answers, such as width="31' 4\"" or mode=fit.

command-value-house = HOUSE
command-value-wall = WALL
command-value-board = BOARD
command-value-penetration = PENETRATION
command-value-thing = THING
command-value-part = PART
command-value-kind = KIND
command-value-name = NAME
command-value-length = LENGTH
command-value-count = COUNT
command-value-width = WIDTH
command-value-height = HEIGHT
command-value-gap = GAP
command-value-left = REST
command-value-notch = NOTCH
command-value-entry = ENTRY
command-value-step = STEP
command-value-reason = REASON
command-value-note = NOTE
command-value-measured = MEASURED
command-value-number = NUMBER
command-value-offcut = OFFCUT
command-value-stock-count = STOCK=COUNT
command-value-key = KEY
command-value-value = VALUE
command-value-group = GROUP
command-value-file = FILE
command-value-words = WORDS
command-value-what = WHAT
command-value-pixels = PIXELS
command-value-shell = SHELL
command-value-question = QUESTION
command-value-language = LANGUAGE
command-value-unit = UNIT
command-value-field-answer = FIELD=ANSWER

command-call = jobs
command-call-jobs = jobs
command-call-new-job = new-job "Lot 7"
command-call-rename = rename "Lot 7" "Wren House"
command-call-archive = archive "Lot 7"
command-call-bring-back = bring-back "Lot 7"
command-call-house = house "Lot 7" board-height=8.25in lap=1.25in
command-call-stock = stock "Lot 7" 12ft 140
command-call-add-wall = add-wall "Lot 7" North
command-call-wall = wall North
command-call-measure = measure North width=24ft left-height=9ft right-height=9ft
command-call-add = add North opening what=window from-left=4ft width=38in from-base=30in height=50in
command-call-change = change North opening width=38in
command-call-remove = remove North opening
command-call-plan = plan North
command-call-pole = pole "Lot 7" from=0in to=9ft mode=fit reveal-max=7in reveal-min=6in
command-call-mark = mark "Lot 7" name=Beam at=80in want=land
command-call-next = next "Lot 7"
command-call-loose = loose 118.5in height=7.25in lap=1.25in left=52in right=60in bottom-left=-1.5in top-left=4in
command-call-board = board "North 3" left=52in
command-call-attach = attach 3f2a North
command-call-gap = gap "North 3" 1/8in
command-call-same-board = same-board
command-call-spoiled = spoiled "North 3" 40in
command-call-block-size = block-size "Lot 7" 8in 10in
command-call-penetration = penetration "North Hose bib" painted=no
command-call-tick = tick "North 3" board-measure board-mark
command-call-tick-note = tick "North 3" board-notch --note "marked yesterday"
command-call-tick-photo = tick "North Hose bib" look-over --photo tap.jpg
command-call-skip = skip "North 3" board-mark --reason "marked by the sawyer"
command-call-untick = untick "North 3" board-mark --note "too early"
command-call-saw = saw "Lot 7" --plan
command-call-order = order "Lot 7" --csv
command-call-rules = rules "Lot 7"
command-call-rule = rule "Lot 7" gap.trim 3/16in --reason "the maker's sheet"
command-call-rule-default = rule-default "Lot 7" gap.trim
command-call-done = done "Lot 7" --count 50
command-call-undo = undo
command-call-settings = settings signer=Wren language=en
command-call-copy = copy lot-7.lapwright
command-call-backup = backup lot-7.zip
command-call-backups = backups
command-call-restore = restore lot-7.zip --yes
command-call-words = words
command-call-hand-over = hand-over "Lot 7" lot-7.exchange
command-call-take-in = take-in lot-7.exchange --yes
command-call-differences = differences --looked-at
command-call-check = check
command-call-repair = repair
command-call-acknowledge = acknowledge
command-call-export = export "Lot 7" lot-7.json
command-call-sheet = sheet "Lot 7" lot-7.txt
command-call-import = import lot-7.json
command-call-add-penetration = add North penetration what=hose-bib width=1in from-left=5ft from-base=20in
command-call-add-abutment = add North abutment what=deck from-left=2ft width=8ft top=6in
command-call-add-base-step = add North base-step from-left=10ft rise=8in
command-call-add-stud = add North stud at=33in
command-call-pole-as-built = pole "Lot 7" --as-built North course=2 left=7in right=7.0625in
command-call-pole-lay-out = pole "Lot 7" --lay-out
command-call-saw-have = saw "Lot 7" --have 12ft=140
command-call-saw-cut = saw "Lot 7" --cut 1
command-call-saw-offcut = saw "Lot 7" --offcut 40in
command-call-draw = draw wall North --svg north.svg
command-call-figure = figure length
command-call-completions = completions bash
command-call-man = man
command-call-demo = demo

command-error-example = Example: lapwright { $call }
command-error-near = Near: { $near }.
command-error-command = There is no command “{ $text }”. lapwright --help lists them.
command-error-option = There is no option “{ $text }” here. There are: { $known }.
command-error-extra = “{ $text }” is one word too many. A text of several words stands in quotes.
command-error-missing = Missing here: { $missing }.
command-error-value = “{ $text }” is not possible for { $argument }. Possible: { $known }.
command-error-no-value = { $argument } needs a value behind it.
command-error-no-value-allowed = { $argument } takes no value; “{ $text }” is one.
command-error-pair = “{ $text }” is not a field with its answer: write { $argument }, such as width=24ft or base=-14in. A length with a blank in it stands in quotes: "left=25 15/16in".
command-error-stock = “{ $text }” is not a stock length with its count: write { $argument }, such as 12ft=140.
command-error-whole = “{ $text }” is not possible for { $argument }: a whole number from { $least } to { $most } is.
command-error-together = { $argument } and { $other } do not go together.
command-error-option-twice = { $argument } stands twice. Give it once.
command-error-field-twice = “{ $field }” is answered twice: { $answers }. Give one answer.
command-error-not-text = A word of this call is not text in UTF-8.
command-error-other = This call could not be read.
