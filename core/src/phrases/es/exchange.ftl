# Copias del libro, y lo que se pasan los compañeros.
backups-size = { $kb } KB
backups-kept = Se hizo una copia y se revisó.
backups-failed = Al salir de la aplicación la última vez no se pudo guardar copia del libro: { $why }
backups-too-large = Las copias juntas tienen { $size }. Algunos teléfonos no llevan más de 25 MB de una aplicación a su nube, y entonces no llevan nada: comparta todo en un archivo de vez en cuando.
restore-done = La copia ya es el libro. El libro como estaba queda entre las copias: { $when }
restore-the-copy = la copia «{ $name }»
restore-damaged = La copia «{ $name }» está dañada o la cambiaron: no pasa la revisión. El libro quedó como estaba. Elija otra copia.
exchange-file-gone = «{ $name }» ya no está. El libro quedó como estaba.
hand-over-words = La primera vez, el teléfono de su compañero muestra cuatro palabras. Deben ser estas: { $words }
hand-over-book = Se hizo una copia de todo el libro y se revisó.
hand-over-house = { $count ->
    [one] En el archivo va una respuesta de la casa.
   *[other] En el archivo van { $count } respuestas de la casa.
}
hand-over-nothing = En esta casa no se contestó nada desde que se pasó la última vez. Se puede compartir toda otra vez.
take-in-damaged = El archivo «{ $name }» está dañado o cambió en el camino. El libro quedó como estaba. Pida que se lo manden otra vez.
take-in-done = { $count ->
    [0] No había nada nuevo. El libro como estaba queda entre las copias: { $when }
    [one] Se recibió una respuesta. El libro como estaba queda entre las copias: { $when }. Al volver a ella se quita la respuesta.
   *[other] Se recibieron { $count } respuestas. El libro como estaba queda entre las copias: { $when }. Al volver a ella se quitan.
}
differences-said = { $count ->
    [one] Una cosa se contestó distinto en dos teléfonos
   *[other] { $count } cosas se contestaron distinto en dos teléfonos
}
differences-stands = Vale: { $answer }
differences-other = La otra: { $answer }
differences-none = nada
differences-no-more = No se contestó nada distinto.
