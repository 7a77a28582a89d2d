# Firmar los pasos.
signing-nothing-to-measure = En este paso no se mide nada: quite «{ $text }» o escríbalo como nota.
signing-angle = «{ $text }» no es un ángulo: dé grados de 0 a 90, como 45 o 22,5.
