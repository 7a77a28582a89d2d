# store: cada clave empieza por store-.
store-newer = Este libro lo escribió una versión más nueva del programa. Esta lee hasta el formato { $reads }; el libro necesita el { $needs }.
store-not-a-book = { $path } no es un libro. Se dejó como está.
store-set-aside = { $path } se apartó como se encontró y así se guarda. Lo que se pudo leer está en { $book }: abra ese.
store-damaged = El libro está dañado: { $why }
store-damaged-file = { $path } está dañado, o alguien lo cambió. No se tomó nada de él.
store-busy = Otro programa tiene abierto el libro o está escribiendo en él. Inténtelo otra vez.
store-full = Ya no hay espacio en este aparato. No se escribió nada.
store-disk = No se pudo leer o escribir el disco: { $why }
store-read-only = El libro solo se puede leer: su archivo o su carpeta no se pueden escribir.
store-in-the-way = { $path } estorba. Nunca se escribe encima de un libro; de las copias, solo encima de una más vieja del mismo libro.
store-exists = { $path } ya existe. Se dejó como está.
store-no-photo = Esta foto no está en este aparato.
store-no-folder = Este libro no tiene carpeta para fotos ni copias: solo está en la memoria, o se abrió sin ella.
store-cannot-undo = Esto no se puede deshacer: no está en el libro, o ya se deshizo.
store-file = { $path }: { $why }.
store-other = El libro no pudo hacerlo: { $why }
store-found-damaged = El libro estaba dañado. Se volvió a armar con lo que se pudo leer.
store-found-missing = El libro no estaba en su lugar.
store-found-older = El libro era más viejo que el que dejó este aparato: le faltaban respuestas ya aceptadas.
store-found-another = Hay otro libro donde estaba el libro de este aparato.
store-kept = El archivo que se encontró se guardó: { $path }
store-taken-from = { $count ->
    [one] Una respuesta se tomó de { $path }.
   *[other] { $count } respuestas se tomaron de { $path }.
}
store-saved = { $count ->
    [0] Entonces no había ninguna respuesta en el libro.
    [one] Entonces había una respuesta en el libro, del { $when } por { $who }.
   *[other] Entonces había { $count } respuestas en el libro, la más reciente del { $when } por { $who }.
}
store-untaken = { $count ->
    [one] Hay otra respuesta en { $path }. No se tomó: nada dice que estuviera en el libro.
   *[other] Hay otras { $count } respuestas en { $path }. No se tomaron: nada dice que estuvieran en el libro.
}
store-lost-none = No se sabe de ninguna respuesta aceptada que falte.
store-lost-unknown = Si algo se aceptó después de la más reciente, no está en el libro.
store-lost = { $count ->
    [one] Se perdió una respuesta aceptada
   *[other] Se perdieron { $count } respuestas aceptadas
}{ $from ->
    [none] {""}
   *[other] , después de la del { $from } de { $fromwho }
}{ $to ->
    [none] {""}
   *[other] , antes de la del { $to } de { $towho }
}. Mida y responda otra vez antes de cortar.
store-lost-read = { $count ->
    [one] Era del { $when }, de { $who }.
   *[other] Una de ellas era del { $when }, de { $who }.
}
store-typed-lost = No se pudo guardar todo lo escrito que aún no se había aceptado, o ajustes de este aparato.
store-somebody = alguien
store-other-book = { $path } es copia de otro libro. No puede ocupar el lugar de este.
store-itself = { $path } es el propio libro. Nombre una copia de él.
store-untrusted = Aquí nadie ha comparado todavía las palabras del aparato «{ $words }». No se recibió nada.
store-bad-entry = Trae una respuesta que no es la que se hizo: { $why }. No se recibió nada.
store-ahead = Trae una respuesta con fecha { $when }: uno de los dos relojes anda mal. No se recibió nada.
store-altered = la cambiaron después
store-forged = no se hizo en el aparato que dice
store-unsigned = no va firmada, y su aparato firma lo que hace
store-unchained = no cuadra con las otras respuestas de su aparato
store-clock = su reloj cuenta más de lo que cuenta ningún reloj
store-refused = { $what ->
    [sign-off] La firma
   *[other] La respuesta
} del { $when } de { $who } no es de fiar: { $why }.
store-offer-new = { $count ->
    [0] No trae nada que este libro no tenga.
    [one] Trae una respuesta que no está en este libro.
   *[other] Trae { $count } respuestas que no están en este libro.
}
store-offer-known = { $count ->
    [one] Una ya está aquí.
   *[other] { $count } ya están aquí.
}
store-sender = { $count ->
    [one] Una
   *[other] { $count }
} de { $who }, en el aparato «{ $words }»{ $trusted ->
    [yes] .
   *[other] {": "}compare estas cuatro palabras con las que el otro aparato muestra como suyas.
}{ $signs ->
    [yes] {""}
   *[other] {" "}Ese aparato no firma lo que hace.
}
store-offer-changed = { $count ->
    [0] No cambiaría ninguna respuesta de este libro.
    [one] Cambiaría una respuesta de este libro.
   *[other] Cambiarían { $count } respuestas de este libro.
}
store-offer-clashes = { $count ->
    [0] En ninguna parte se respondió lo mismo en los dos.
    [one] En un lugar los dos respondieron distinto; vale la última y la otra se muestra.
   *[other] En { $count } lugares los dos respondieron distinto; vale la última y la otra se muestra.
}
store-offer-sign-offs = { $count ->
    [0] No trae firmas.
    [one] Trae una firma.
   *[other] Trae { $count } firmas.
}
store-offer-ahead = La respuesta del { $when } de { $who } trae fecha adelantada: uno de los dos relojes anda mal.
store-taken-in = { $count ->
    [0] No había nada nuevo. Copia del libro como estaba: { $path }
    [one] Se recibió una respuesta. Copia del libro como estaba: { $path }
   *[other] Se recibieron { $count } respuestas. Copia del libro como estaba: { $path }
}
store-standing-unknown = Dele al otro teléfono una copia de este libro, para que los dos tengan lo mismo.
store-standing-same = Los dos teléfonos ya tienen lo mismo de esta casa.
store-standing-other-lacks = Al otro teléfono le faltan respuestas de esta casa: pásele la casa.
store-standing-this-lacks = El archivo no traía todas las respuestas de esta casa: pida que se la pasen completa.
store-handed-over = { $count ->
    [one] Se escribió una respuesta en { $path }
   *[other] Se escribieron { $count } respuestas en { $path }
}
store-words = Las palabras de este aparato: { $words }
store-trusted = Desde ahora se recibe lo que firme el aparato «{ $words }».
store-restore-holds = { $count ->
    [0] La copia no tiene respuestas.
    [one] La copia tiene una respuesta, del { $when } de { $who }.
   *[other] La copia tiene { $count } respuestas, la más reciente del { $when } de { $who }.
}
store-restore-gained = { $count ->
    [0] Ninguna de ellas falta ahora en el libro.
    [one] Una de ellas no está ahora en el libro y vuelve.
   *[other] { $count } de ellas no están ahora en el libro y vuelven.
}
store-restore-dropped = { $count ->
    [0] No se va ninguna respuesta posterior.
    [one] Se va una respuesta posterior, del { $when } de { $who }. Queda en una copia que se hace antes.
   *[other] Se van { $count } respuestas posteriores, la más reciente del { $when } de { $who }. Quedan en una copia que se hace antes.
}
store-restore-carried = { $count ->
    [0] No hay firmas posteriores que guardar.
    [one] Una respuesta posterior se queda: una firma, o aquello en que se apoya.
   *[other] { $count } respuestas posteriores se quedan: firmas, y aquello en que se apoyan.
}
store-restore-photos = { $count ->
    [one] Viene con ella una foto.
   *[other] Vienen con ella { $count } fotos.
}
store-restored = La copia ya es el libro. El libro como estaba: { $path }
store-packed = Revisado: { $answers ->
    [one] una respuesta
   *[other] { $answers } respuestas
}, { $photos ->
    [one] una foto
   *[other] { $photos } fotos
}.{ $missing ->
    [0] {""}
    [one] {" "}Una foto no está en este aparato.
   *[other] {" "}{ $missing } fotos no están en este aparato.
}
