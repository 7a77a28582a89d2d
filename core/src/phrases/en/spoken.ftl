# Lengths read aloud. $words is the number in words, $count the number itself.
spoken-minus = minus { $rest }
spoken-inches = { $count ->
    [one] { $words } inch
   *[other] { $words } inches
}
spoken-feet = { $count ->
    [one] { $words } foot
   *[other] { $words } feet
}
spoken-feet-and-part = { $feet } and { $fraction }
spoken-mixed = { $count ->
   *[other] { $words } and { $fraction }
}
spoken-mixed-inches = { $count ->
   *[other] { $words } and { $fraction } inches
}
spoken-half-inch = half an inch
spoken-part-of-inch = { $fraction } of an inch
spoken-half = a half
spoken-quarter = a quarter
spoken-quarters = { $count ->
   *[other] { $words } quarters
}
spoken-eighths = { $count ->
    [one] { $words } eighth
   *[other] { $words } eighths
}
spoken-sixteenths = { $count ->
    [one] { $words } sixteenth
   *[other] { $words } sixteenths
}
spoken-thirty-seconds = { $count ->
    [one] { $words } thirty-second
   *[other] { $words } thirty-seconds
}
spoken-sixty-fourths = { $count ->
    [one] { $words } sixty-fourth
   *[other] { $words } sixty-fourths
}
spoken-millimetres = { $count ->
    [one] { $words } millimeter
   *[other] { $words } millimeters
}
spoken-millimetres-and-half = { $count ->
   *[other] { $words } and a half millimeters
}
spoken-half-millimetre = half a millimeter
