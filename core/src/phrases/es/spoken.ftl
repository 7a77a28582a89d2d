# Medidas en voz alta. $words es el número en palabras, $count el número mismo.
spoken-minus = menos { $rest }
spoken-inches = { $count ->
    [one] { $words } pulgada
   *[other] { $words } pulgadas
}
spoken-feet = { $count ->
    [one] { $words } pie
   *[other] { $words } pies
}
spoken-feet-and-part = { $feet } y { $fraction }
spoken-mixed = { $count ->
   *[other] { $words } y { $fraction }
}
spoken-mixed-inches = { $count ->
    [one] { $words } pulgada y { $fraction }
   *[other] { $words } pulgadas y { $fraction }
}
spoken-half-inch = media pulgada
spoken-part-of-inch = { $fraction } de pulgada
spoken-half = media
spoken-quarter = un cuarto
spoken-quarters = { $count ->
   *[other] { $words } cuartos
}
spoken-eighths = { $count ->
    [one] { $words } octavo
   *[other] { $words } octavos
}
spoken-sixteenths = { $count ->
    [one] { $words } dieciseisavo
   *[other] { $words } dieciseisavos
}
spoken-thirty-seconds = { $count ->
    [one] { $words } treintaidosavo
   *[other] { $words } treintaidosavos
}
spoken-sixty-fourths = { $count ->
    [one] { $words } sesentaicuatroavo
   *[other] { $words } sesentaicuatroavos
}
spoken-millimetres = { $count ->
    [one] { $words } milímetro
   *[other] { $words } milímetros
}
spoken-millimetres-and-half = { $count ->
    [one] { $words } milímetro y medio
   *[other] { $words } milímetros y medio
}
spoken-half-millimetre = medio milímetro
