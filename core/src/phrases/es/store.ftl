# store: cada clave empieza por store-.
store-newer = Este libro lo escribió una versión más nueva del programa. Esta lee hasta el formato { $reads }; el libro necesita el { $needs }.
store-not-a-book = { $path } no es un libro. Se dejó como está.
store-damaged = El libro está dañado: { $why }
store-busy = Otro programa tiene abierto el libro o está escribiendo en él. Inténtelo otra vez.
store-full = Ya no hay espacio en este dispositivo. No se escribió nada.
store-disk = No se pudo leer o escribir el disco: { $why }
store-read-only = El libro solo se puede leer: su archivo o su carpeta no se pueden escribir.
store-in-the-way = { $path } estorba. Nunca se escribe encima de un libro; de las copias, solo encima de una más vieja del mismo libro.
store-exists = { $path } ya existe. Se dejó como está.
store-other = El libro no pudo hacerlo: { $why }
store-found-damaged = El libro estaba dañado. Se volvió a armar con lo que se pudo leer.
store-found-missing = El libro no estaba en su lugar.
store-found-older = El libro era más viejo que el que dejó este dispositivo: le faltaban respuestas ya aceptadas.
store-found-another = Hay otro libro donde estaba el libro de este dispositivo.
store-kept = El archivo que se encontró se guardó: { $path }
store-from-copy = { $count ->
    [0] La copia buena más reciente, { $path }, no tenía más respuestas.
    [one] Una respuesta se tomó de las copias; la más reciente es { $path }.
   *[other] { $count } respuestas se tomaron de las copias; la más reciente es { $path }.
}
store-saved = { $count ->
    [0] Ahora no hay ninguna respuesta en el libro.
    [one] Ahora hay una respuesta en el libro, del { $when } por { $who }.
   *[other] Ahora hay { $count } respuestas en el libro, la más reciente del { $when } por { $who }.
}
store-lost-none = No se sabe de ninguna respuesta aceptada que falte.
store-lost-unknown = Las respuestas que se aceptaron después de la más reciente no están.
store-lost = { $count ->
    [one] Se perdió una respuesta aceptada
   *[other] Se perdieron { $count } respuestas aceptadas
}{ $from ->
    [none] {""}
   *[other] , hecha después del { $from } por { $fromwho }
}{ $to ->
    [none] {""}
   *[other] , antes del { $to } por { $towho }
}. Mida y responda otra vez antes de cortar con ellas.
store-lost-read = Una de ellas era del { $when } por { $who }.
store-typed-lost = No se pudo guardar todo lo tecleado que aún no se había aceptado, o ajustes de este dispositivo.
store-somebody = alguien
