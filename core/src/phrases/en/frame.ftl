# The frame round every screen: buttons and headings.
frame-unit-inches = in
frame-unit-millimeters = mm
frame-taped-letter = T
frame-planned-letter = P
frame-rule-letter = R
frame-came-back = You are back where you left off.
frame-accept = OK
frame-rub-out = Erase
frame-space = Space
frame-tape = Tap the mark that the tape reads
frame-say-it = Say it
frame-caution = Caution
frame-open = Open
frame-done = Done
frame-left-out = Left out
frame-leave-out = Leave it out
frame-take-back = Take it back
frame-photo = Photo
frame-lock = Lock screen (rain)
frame-unlock = Hold to unlock
frame-more = More
frame-close = Close
frame-answers = Answers
frame-remove = Remove
frame-archive = Archive
frame-bring-back = Bring back
frame-archived = Archived
frame-same-as-last = Same as the last one
frame-new-house = New house
frame-house-like = New house with the same boards
frame-open-demo = Try the demo house
frame-no-houses = No house yet. Start one, or try the demo.
frame-new-wall = New wall
frame-new-stock = New stock length
frame-stock = Stock
frame-blocks = Blocks at hand
frame-new-block = New block size
frame-walls = Walls
frame-open-to-weather = Open to the weather
frame-plan-boards = Plan the boards
frame-new-penetration = New penetration
frame-new-notch = New notch
frame-loose-board = Loose board
frame-notch-now = A notch now, without a house
frame-gap = Gap to expect
frame-offset = Mark outside the block
frame-legs = What is left
frame-steps = Steps
frame-layers = From the wall outward
frame-patch = Patch
frame-block = Block
frame-lay-out = Lay out the lines
frame-new-mark = New height
frame-back-to-default = Back to the default
frame-change = Change
frame-older = Older
frame-new-signer = New name
frame-zoom-in = Closer
frame-zoom-out = Farther
jobs-walls = { $count ->
    [one] One wall
   *[other] { $count } walls
}
frame-gap-least = At least
frame-gap-most = At most
frame-board = Course { $course }, { $state ->
    [cut] cut
    [fixed] up
   *[planned] planned
}{ $notched ->
    [yes] , notched
   *[no] {""}
}
frame-heights = Heights to meet or stay clear of
frame-signers = Who holds the phone
frame-taken-back = Taken back
frame-depends = Answered later, and built on it
frame-reopened = Opened again, with what was typed
frame-nothing-done = Nothing was done yet.
frame-improve = Look for a better plan
frame-offcuts = Offcuts
frame-new-offcut = Add an offcut
frame-throw-away = Throw away
frame-thrown-away = Not at hand: thrown away or cut up
frame-keep-it = Keep it after all
frame-all-cut = All cut
frame-as-built = Tape a course as it hangs
frame-as-built-at = Courses as they hang
frame-share-text = Share as text
frame-share-csv = Share as a table (CSV)
frame-share-json = Share as data (JSON)
frame-advice = A block that sits better
frame-take-advice = Take this block
frame-spoiled = This board is spoiled
frame-attach = Attach to
frame-forget-habit = Forget what was learned about this saw
frame-same-board = Loose board, same as the last one
frame-penetrations = Penetrations
frame-details = Corners, openings, edges
frame-boards = Boards
frame-share-copy = Share a copy of the book
frame-share-photo = Share the photo
frame-listen = Say the number
frame-locked = Screen locked for rain. Hold the button for one second.
frame-account-read = I have read this
frame-listening = Listening …
frame-heard-nothing = Nothing was heard. Tap and say it again, or type it.
frame-microphone-refused = The microphone is not allowed. Allow it in the settings of the phone, or type.
frame-language-not-here = This phone cannot hear this language without the network. Its settings can fetch it; until then type.
frame-no-camera = No camera opens on this phone. Tick the step without a photo.
