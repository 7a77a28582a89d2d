# Names of the screens and words that all of them share.
screen-jobs = Jobs
screen-settings = Settings
screen-house = House
screen-wall = Wall
screen-measure = Measure
screen-pole = Story pole
screen-saw-list = Saw list
screen-order = Order
screen-rules = Rules
screen-done-list = Done list
screen-backups = Copies of the book
screen-restore = Go back to a copy
screen-hand-over = Hand over to a colleague
screen-take-in = A colleague's file
screen-differences = Answered differently
screen-back = Back
screen-undo-what = Undo: { $what }
screen-cancel = Cancel
screen-face = FACE
screen-behind = BACK
screen-cut = cut
screen-taped = taped
screen-planned = planned
screen-by-rule = by rule
screen-taped-by = taped by { $who }, { $when }
screen-note = Note
screen-reason = Reason
screen-came-back = You are back where you left off: { $where }
screen-boards = { $count ->
    [one] { $count } board
   *[other] { $count } boards
}
screen-penetrations = { $count ->
    [one] { $count } penetration
   *[other] { $count } penetrations
}
screen-local-code = Local code and the licensed trades decide. This program informs; it replaces neither.
screen-yes = Yes
screen-no = No
screen-unknown = There is no such thing in this book.
screen-removed = This was removed.
screen-not-an-answer = “{ $field }” is not asked here. The questions are: { $fields }.
screen-not-an-answer-near = “{ $field }” is not asked here. Did you mean { $near }? The questions are: { $fields }.
screen-first = First: { $what }
screen-whole = A whole number from { $least } to { $most } belongs here.
screen-pick = Pick one of: { $choices }.
screen-control = Only what can be printed belongs in a text; this one has a character that moves or hides others.
screen-empty = An answer is needed here.
screen-book-trouble = The book could not do this: { $why } Nothing was changed.
screen-not-heard = Heard “{ $heard }”, which is no length. Say, for example: six and one sixteenth.
