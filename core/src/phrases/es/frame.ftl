# El marco de todas las pantallas: botones y títulos.
frame-unit-inches = pulg
frame-unit-millimeters = mm
frame-taped-letter = M
frame-planned-letter = P
frame-rule-letter = R
frame-came-back = Está de vuelta donde se quedó.
frame-accept = OK
frame-rub-out = Borrar
frame-space = Espacio
frame-tape = Toque la marca que lee en la cinta
frame-say-it = Decirlo
frame-caution = Cuidado
frame-open = Pendiente
frame-done = Hecho
frame-left-out = Omitido
frame-leave-out = Omitir
frame-take-back = Retirar
frame-photo = Foto
frame-lock = Bloquear pantalla (lluvia)
frame-unlock = Desbloquear: mantenga presionado
frame-more = Más
frame-close = Cerrar
frame-answers = Respuestas
frame-remove = Quitar
frame-archive = Archivar
frame-bring-back = Traer de vuelta
frame-archived = Archivada
frame-same-as-last = Igual que el último
frame-new-house = Casa nueva
frame-house-like = Casa nueva con las mismas tablas
frame-open-demo = Probar la casa de muestra
frame-no-houses = Aún no hay casas. Empiece una o pruebe la de muestra.
frame-new-wall = Pared nueva
frame-new-stock = Largo de tabla nuevo
frame-stock = Existencias
frame-blocks = Bloques disponibles
frame-new-block = Medida de bloque nueva
frame-walls = Paredes
frame-open-to-weather = Abierto a la intemperie
frame-plan-boards = Planear las tablas
frame-new-penetration = Nuevo paso por la pared
frame-new-notch = Muesca nueva
frame-loose-board = Tabla suelta
frame-notch-now = Una muesca ahora, sin casa
frame-gap = Holgura que resulta
frame-offset = Marque fuera del bloque
frame-legs = Lo que queda
frame-steps = Pasos
frame-layers = De la pared hacia afuera
frame-patch = Parche
frame-block = Bloque
frame-lay-out = Repartir las hiladas
frame-new-mark = Altura nueva
frame-back-to-default = Volver al valor inicial
frame-change = Cambiar
frame-older = Anteriores
frame-new-signer = Nombre nuevo
frame-zoom-in = Más cerca
frame-zoom-out = Más lejos
jobs-walls = { $count ->
    [one] Una pared
   *[other] { $count } paredes
}
frame-gap-least = Al menos
frame-gap-most = A lo más
frame-board = Hilada { $course }, { $state ->
    [cut] cortada
    [fixed] puesta
   *[planned] planeada
}{ $notched ->
    [yes] , con muesca
   *[no] {""}
}
frame-heights = Alturas que tocar o evitar
frame-signers = Quién tiene el teléfono
frame-taken-back = Deshecho
frame-depends = Contestado después y basado en ello
frame-reopened = Abierto otra vez, con lo escrito
frame-nothing-done = Todavía no se hizo nada.
frame-improve = Buscar un plan mejor
frame-offcuts = Sobrantes
frame-new-offcut = Agregar un sobrante
frame-throw-away = Desechar
frame-thrown-away = No disponible: desechado o cortado
frame-keep-it = Guardarlo de todos modos
frame-all-cut = Todo cortado
frame-as-built = Medir una hilada como quedó
frame-as-built-at = Hiladas como quedaron
frame-share-text = Compartir como texto
frame-share-csv = Compartir como tabla (CSV)
frame-share-json = Compartir como datos (JSON)
frame-advice = Un bloque que queda mejor
frame-take-advice = Usar este bloque
frame-spoiled = Esta tabla se echó a perder
frame-attach = Poner en la pared
frame-forget-habit = Olvidar lo aprendido de esta sierra
frame-same-board = Tabla suelta, igual que la última
frame-penetrations = Pasos por la pared
frame-details = Esquinas, vanos, orillas
frame-boards = Tablas
frame-share-copy = Compartir una copia del libro
frame-share-photo = Compartir la foto
frame-listen = Decir el número
frame-locked = Pantalla bloqueada por la lluvia. Mantenga presionado el botón un segundo.
frame-account-read = Ya lo leí
frame-listening = Escuchando …
frame-heard-nothing = No se oyó nada. Toque y dígalo otra vez, o escríbalo.
frame-microphone-refused = El micrófono no está permitido. Permítalo en los ajustes del teléfono, o escriba.
frame-language-not-here = Este teléfono no oye este idioma sin la red. En sus ajustes se puede bajar; mientras tanto, escriba.
frame-no-camera = En este teléfono no se abre ninguna cámara. Marque el paso sin foto.
