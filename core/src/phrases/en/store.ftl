# store: every key starts with store-.
store-newer = This book was written by a newer version of the program. This one reads up to format { $reads }; the book needs { $needs }.
store-not-a-book = { $path } is not a book. It was left as it is.
store-set-aside = { $path } was set aside as it was found and is kept so. What could be read of it is in { $book }: open that.
store-damaged = The book is damaged: { $why }
store-damaged-file = { $path } is damaged, or somebody changed it. Nothing was taken from it.
store-busy = Another program has the book open or is writing in it. Try again.
store-full = There is no room left on this device. Nothing was written.
store-disk = The disk could not be read or written: { $why }
store-read-only = The book can only be read: its file or its folder may not be written.
store-in-the-way = { $path } is in the way. A book is never written over; of copies, only an older one of the same book is.
store-exists = { $path } is there already. It was left as it is.
store-no-photo = This photo is not on this device.
store-no-folder = This book has no folder for photos or copies: it is in memory only, or was opened without one.
store-cannot-undo = This cannot be taken back: it is not in the book, or was taken back already.
store-file = { $path }: { $why }.
store-other = The book could not do this: { $why }
store-found-damaged = The book was damaged. It was put together again from what could be read.
store-found-missing = The book was not in its place.
store-found-older = The book was an older one than this device had left: answers that had been accepted were not in it.
store-found-another = Another book lies where the book of this device was.
store-kept = The file that was found was kept: { $path }
store-taken-from = { $count ->
    [one] One answer was taken from { $path }.
   *[other] { $count } answers were taken from { $path }.
}
store-saved = { $count ->
    [0] No answer was in the book then.
    [one] One answer was in the book then, of { $when } by { $who }.
   *[other] { $count } answers were in the book then, the newest of { $when } by { $who }.
}
store-untaken = { $count ->
    [one] One further answer lies in { $path }. It was not taken: nothing says that it was in the book.
   *[other] { $count } further answers lie in { $path }. They were not taken: nothing says that they were in the book.
}
store-lost-none = No accepted answer is known to be lost.
store-lost-unknown = If anything was accepted after the newest one, it is not in the book.
store-lost = { $count ->
    [one] One accepted answer is lost
   *[other] { $count } accepted answers are lost
}{ $from ->
    [none] {""}
   *[other] , made after { $from } by { $fromwho }
}{ $to ->
    [none] {""}
   *[other] , before { $to } by { $towho }
}. Measure and answer again before you cut.
store-lost-read = { $count ->
    [one] It was of { $when } by { $who }.
   *[other] One of them was of { $when } by { $who }.
}
store-typed-lost = What was typed and not yet accepted, or settings of this device, could not all be saved.
store-somebody = somebody
store-other-book = { $path } is a copy of another book. It cannot take this one's place.
store-itself = { $path } is the book itself. Name a copy of it.
store-untrusted = Nobody here has compared the words of the device “{ $words }” yet. Nothing was taken in.
store-bad-entry = An answer in it is not what was made: { $why }. Nothing was taken in.
store-ahead = An answer in it is dated { $when }: one of the two clocks is wrong. Nothing was taken in.
store-altered = it was changed later
store-forged = it was not made on the device that it names
store-unsigned = it is not signed, and its device signs what it makes
store-unchained = it does not fit the other answers of its device
store-clock = its clock counts further than any clock does
store-refused = { $what ->
    [sign-off] The sign-off
   *[other] The answer
} of { $when } by { $who } is not to be trusted: { $why }.
store-offer-new = { $count ->
    [0] There is nothing in it that this book does not hold.
    [one] One answer in it is not in this book.
   *[other] { $count } answers in it are not in this book.
}
store-offer-known = { $count ->
    [one] One is here already.
   *[other] { $count } are here already.
}
store-sender = { $count ->
    [one] One
   *[other] { $count }
} by { $who }, on the device “{ $words }”{ $trusted ->
    [yes] .
   *[other] {": "}compare these four words with those that the other device shows of itself.
}{ $signs ->
    [yes] {""}
   *[other] {" "}That device does not sign what it makes.
}
store-offer-changed = { $count ->
    [0] No answer of this book would change.
    [one] One answer of this book would change.
   *[other] { $count } answers of this book would change.
}
store-offer-clashes = { $count ->
    [0] Nowhere was the same thing answered on both.
    [one] In one place both were answered differently; the later stands and the other is shown.
   *[other] In { $count } places both were answered differently; the later stands and the other is shown.
}
store-offer-sign-offs = { $count ->
    [0] There are no sign-offs in it.
    [one] One sign-off is in it.
   *[other] { $count } sign-offs are in it.
}
store-offer-ahead = The answer of { $when } by { $who } is dated ahead: one of the two clocks is wrong.
store-taken-in = { $count ->
    [0] Nothing was new. A copy of the book as it was: { $path }
    [one] One answer was taken in. A copy of the book as it was: { $path }
   *[other] { $count } answers were taken in. A copy of the book as it was: { $path }
}
store-standing-unknown = Give the other phone a copy of this book, so that both hold the same.
store-standing-same = Both phones now hold the same of this house.
store-standing-other-lacks = The other phone lacks answers of this house: hand the house over to it.
store-standing-this-lacks = Answers of this house were not in the file: have all of the house handed over.
store-handed-over = { $count ->
    [one] One answer was written to { $path }
   *[other] { $count } answers were written to { $path }
}
store-words = The words of this device: { $words }
store-trusted = From now on what the device “{ $words }” signs is taken in.
store-restore-holds = { $count ->
    [0] The copy holds no answers.
    [one] The copy holds one answer, of { $when } by { $who }.
   *[other] The copy holds { $count } answers, the newest of { $when } by { $who }.
}
store-restore-gained = { $count ->
    [0] None of them is missing in the book now.
    [one] One of them is not in the book now and comes back.
   *[other] { $count } of them are not in the book now and come back.
}
store-restore-dropped = { $count ->
    [0] No later answer goes.
    [one] One later answer goes, of { $when } by { $who }. It stays in a copy that is made before.
   *[other] { $count } later answers go, the newest of { $when } by { $who }. They stay in a copy that is made before.
}
store-restore-carried = { $count ->
    [0] There are no later sign-offs to keep.
    [one] One later answer stays: a sign-off, or what it stands on.
   *[other] { $count } later answers stay: sign-offs, and what they stand on.
}
store-restore-photos = { $count ->
    [one] One photo comes with it.
   *[other] { $count } photos come with it.
}
store-restored = The copy is the book now. The book as it was: { $path }
store-packed = Checked: { $answers ->
    [one] one answer
   *[other] { $answers } answers
}, { $photos ->
    [one] one photo
   *[other] { $photos } photos
}.{ $missing ->
    [0] {""}
    [one] {" "}One photo is not on this device.
   *[other] {" "}{ $missing } photos are not on this device.
}
