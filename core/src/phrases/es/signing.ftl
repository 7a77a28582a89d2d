# Firmar los pasos.
signing-nothing-to-measure = En este paso no se mide nada: quite «{ $text }» o escríbalo como nota.
signing-angle = «{ $text }» no es un ángulo: dé grados de 0 a 90, como 45 o 22.5.
signing-photo-not-here = En este teléfono no hay ninguna foto con ese nombre: tome una o marque sin ella.
signing-photo-not-whole = La foto no está completa, o no es JPEG: tómela otra vez.
signing-sheet = Hoja de firmas: { $house }
signing-sheet-made = Hecha el { $when }
signing-sheet-inspected = Inspeccionó: ________________________   Fecha: ____________
