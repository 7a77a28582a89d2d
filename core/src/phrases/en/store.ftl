# store: every key starts with store-.
store-newer = This book was written by a newer version of the program. This one reads up to format { $reads }; the book needs { $needs }.
store-not-a-book = { $path } is not a book. It was left as it is.
store-damaged = The book is damaged: { $why }
store-busy = Another program has the book open or is writing in it. Try again.
store-full = There is no room left on this device. Nothing was written.
store-disk = The disk could not be read or written: { $why }
store-read-only = The book can only be read: its file or its folder may not be written.
store-in-the-way = { $path } is in the way. A book is never written over; of copies, only an older one of the same book is.
store-exists = { $path } is there already. It was left as it is.
store-other = The book could not do this: { $why }
store-found-damaged = The book was damaged. It was put together again from what could be read.
store-found-missing = The book was not in its place.
store-found-older = The book was an older one than this device had left: answers that had been accepted were not in it.
store-found-another = Another book lies where the book of this device was.
store-kept = The file that was found was kept: { $path }
store-from-copy = { $count ->
    [0] The newest good copy, { $path }, had no further answers.
    [one] One answer was taken from copies, the newest of them { $path }.
   *[other] { $count } answers were taken from copies, the newest of them { $path }.
}
store-saved = { $count ->
    [0] No answer is in the book now.
    [one] One answer is in the book now, of { $when } by { $who }.
   *[other] { $count } answers are in the book now, the newest of { $when } by { $who }.
}
store-lost-none = No accepted answer is known to be lost.
store-lost-unknown = Answers that were accepted after the newest one are not in it.
store-lost = { $count ->
    [one] One accepted answer is lost
   *[other] { $count } accepted answers are lost
}{ $from ->
    [none] {""}
   *[other] , made after { $from } by { $fromwho }
}{ $to ->
    [none] {""}
   *[other] , before { $to } by { $towho }
}. Measure and answer again before you cut by them.
store-lost-read = One of them was of { $when } by { $who }.
store-typed-lost = What was typed and not yet accepted, or settings of this device, could not all be saved.
store-somebody = somebody
