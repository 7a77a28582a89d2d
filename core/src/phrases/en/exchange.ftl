# Copies of the book, and what colleagues hand over to each other.
backups-size = { $kb } KB
backups-kept = A copy was made and checked.
backups-failed = When the app was last left no copy of the book could be kept: { $why }
backups-too-large = Together the copies have { $size }. Some phones take no more than 25 MB of an app into their cloud, and then nothing: share everything as one file now and then.
restore-done = The copy is the book now. The book as it was is among the copies: { $when }
restore-the-copy = the copy “{ $name }”
restore-damaged = The copy “{ $name }” is damaged or was changed: it does not pass its check. The book is as it was. Choose another copy.
exchange-file-gone = “{ $name }” is not there any more. The book is as it was.
hand-over-words = The first time, your colleague's phone shows four words. They must be these: { $words }
hand-over-book = A copy of the whole book was made and checked.
hand-over-house = { $count ->
    [one] One answer of the house is in the file.
   *[other] { $count } answers of the house are in the file.
}
hand-over-nothing = Nothing was answered in this house since it was handed over last. All of it can be shared again.
take-in-damaged = The file “{ $name }” is damaged or was changed on the way. The book is as it was. Have it sent again.
take-in-done = { $count ->
    [0] Nothing was new. The book as it was is among the copies: { $when }
    [one] One answer was taken in. The book as it was is among the copies: { $when }. Going back to it takes the answer back.
   *[other] { $count } answers were taken in. The book as it was is among the copies: { $when }. Going back to it takes them back.
}
differences-said = { $count ->
    [one] One thing was answered differently on two phones
   *[other] { $count } things were answered differently on two phones
}
differences-stands = Stands: { $answer }
differences-other = The other: { $answer }
differences-none = nothing
differences-no-more = Nothing was answered differently.
