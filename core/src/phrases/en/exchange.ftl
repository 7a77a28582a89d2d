# Copies of the book, and what colleagues hand over to each other.
backups-size = { $kb } KB
backups-kept = A copy was made and checked.
backups-failed = When the app was last left no copy of the book could be kept: { $why }
backups-too-large = Together the copies have { $size }. Some phones take no more than 25 MB of an app into their cloud, and then nothing: share everything as one file now and then.
restore-done = The copy is the book now. The book as it was is among the copies: { $when }
hand-over-book = A copy of the whole book was made and checked.
hand-over-house = { $count ->
    [one] One answer of the house is in the file.
   *[other] { $count } answers of the house are in the file.
}
hand-over-nothing = Nothing was answered in this house since it was handed over last. All of it can be shared again.
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
