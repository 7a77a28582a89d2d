# cli: cada clave empieza por cli-.
cli-draft = Escrito y aún no aceptado: { $draft }
cli-differs = Esto cambió desde que se marcó.
cli-out = No se pudo escribir todo lo que se iba a imprimir: { $why }
cli-in = No se pudo leer la entrada estándar: { $why }
cli-file = { $path }: { $why }
cli-no-folder = En esta máquina no hay carpeta para sus datos. Nombre un libro con --book ARCHIVO.
cli-nothing-drawn = De «{ $thing }» aún no se puede dibujar nada, o no tiene ese dibujo. lapwright next dice qué hay que medir o contestar primero.
cli-unknown = Nada se llama «{ $text }». Hay: { $known }.
cli-board-told = { $length }, desde { $from }
cli-several = «{ $text }» es el nombre de varias cosas: { $known }. Diga cuál con el id entre paréntesis.
cli-unknown-none = Nada se llama «{ $text }». { $none }
cli-answer-as-name = «{ $text }» es una respuesta. Antes va el nombre de aquello de lo que se trata.
cli-none-house = Aún no hay casas: lapwright new-job "Lote 7" crea una.
cli-none-wall = Aún no hay paredes: lapwright add-wall "Lote 7" Norte agrega una.
cli-none-board = Aún no hay tablas: lapwright plan Norte planea las de una pared, lapwright loose hace una sin pared.
cli-none-penetration = Aún nada atraviesa una pared: lapwright add Norte penetration what=hose-bib width=1in from-left=5ft from-base=20in lo agrega.
cli-none-thing = Aún no hay tablas ni pasos por la pared: lapwright plan Norte planea las tablas de una pared.
cli-none-part = La pared aún no tiene partes: lapwright add Norte opening what=window from-left=4ft width=38in from-base=30in height=50in agrega una.
cli-none-notch = La tabla no tiene muesca: lapwright board "Norte 3" la muestra.
cli-none-stock = Aún no hay ningún largo de tabla: lapwright stock "Lote 7" 12ft agrega uno.
cli-none-offcut = Aún no hay sobrantes: lapwright saw "Lote 7" --offcut 40in agrega uno.
cli-none-entry = De ninguna hilada se dijo aún que esté puesta: lapwright pole "Lote 7" --as-built Norte course=2 left=7in right=7in lo dice.
cli-none-number = Aún no hay ninguna tabla planeada: lapwright saw "Lote 7" --plan las planea.
cli-none-drop-signer = Aquí aún no firma nadie: lapwright settings signer="NOMBRE" dice quién.
cli-none-group = Aún no se contestó nada.
cli-first-notch = Una muesca ahora, sin ninguna casa: lapwright loose 118.5in height=7.25in lap=1.25in left=52in right=60in bottom-left=-1.5in top-left=4in
cli-no-jobs = Aún no hay casas. lapwright new-job "NOMBRE" crea una; lapwright demo muestra una.
cli-walls = { $count ->
    [one] { $count } pared
   *[other] { $count } paredes
}
cli-archived = (archivada)
cli-depends = { $count ->
    [0] Nada posterior depende de esto.
    [one] Una respuesta posterior depende de esto. Diga --yes para deshacerla de todos modos:
   *[other] { $count } respuestas posteriores dependen de esto. Diga --yes para deshacerla de todos modos:
}
cli-reopened = Abierta otra vez: { $question } (era { $answer })
cli-undone = (deshecho)
cli-nothing-to-undo = No hay nada que deshacer.
cli-copied = Copiado y revisado: { $path }
cli-check-good = Los datos están bien.
cli-check-bad = Los datos no están bien: { $why } lapwright repair los arregla y guarda el archivo como está.
cli-check-told = Nadie se ha dado por enterado de lo que se perdió: vea arriba. lapwright acknowledge quita el aviso.
cli-account = lapwright acknowledge quita este aviso.
cli-acknowledged = Enterado.
cli-repaired-nothing = Los datos están bien. No había nada que arreglar.
cli-kept = Guardado.
cli-rule-changed = En lugar de { $default }, por { $signer }: { $reason }
cli-open-to-weather = Abierto a la intemperie ahora
cli-house-walls = Paredes
cli-house-boards = Tablas y reglas
cli-stock = Existencias: { $length }, { $count ->
    [-1] las que hagan falta
    [one] { $count } tabla
   *[other] { $count } tablas
}
cli-next-answer = Sigue: { $question }
cli-next-stock = Sigue: agregar un largo de tabla
cli-next-wall = Sigue: agregar una pared
cli-next-measure = Sigue, { $wall }: { $question }
cli-next-pole = Sigue: trazar la vara de hiladas
cli-next-plan = Sigue, { $wall }: planear las tablas
cli-next-tight = Sigue, { $what }: { $step }
cli-next-cut = Sigue, { $wall }: cortar una tabla de la hilada { $course }
cli-next-fix = Sigue, { $wall }: poner la tabla cortada de la hilada { $course }
cli-next-nothing = No queda nada por hacer.
cli-steps = Pasos
cli-layers = Capas, de la pared hacia afuera
cli-patch = Parche de membrana
cli-block = Bloque de montaje
cli-block-trim = Moldura por los cuatro lados
cli-block-split = Bloque de montaje, partido en pendiente
cli-pole-lines = Líneas para la vara, primero la punta de arriba
cli-pole-line = hilada { $course }, se ven { $reveal }
cli-pole-end = final
cli-pole-marks = Alturas que tocar o evitar
cli-mark-land = línea en: { $name }, { $at }
cli-mark-clear = libre: { $name }, { $at }
cli-mark-missed = falla por { $miss }
cli-pole-kept = Este trazo está guardado. Las paredes se planean con él.
cli-pole-differs = El trazo guardado es otro. --lay-out guarda este en su lugar.
cli-pole-not-kept = Aún no está guardado. --lay-out lo guarda.
cli-pole-proved = Ningún otro trazo queda más cerca de estas alturas.
cli-exported = Escrito: { $path }
cli-wall-legend = : sin tabla  · planeada  - cortada  ═ puesta  | junta
cli-wall-boards = Tablas, primero la hilada más alta
cli-notched = con muesca
cli-board-size = Cortar a { $length }, alto { $height }
cli-board-stock = De una tabla de { $length }
cli-notch-gap = Marcas a { $offset } por fuera del bloque. Se espera una holgura de { $least } a { $most }.
cli-level-bottom = Desde el borde de abajo: { $left } a la izquierda, { $right } a la derecha
cli-level-top = Desde el borde de arriba: { $left } a la izquierda, { $right } a la derecha
cli-level-bottom-even = Desde el borde de abajo: { $at }
cli-level-top-even = Desde el borde de arriba: { $at }
cli-notch-gap-on-block = Marcas en los bordes mismos del bloque. Se espera una holgura de { $least } a { $most }.
cli-demo-signer = Juno
cli-demo-begins = Una casa inventada para probar el trabajo. Se guarda en { $path }.
cli-demo-goes-on = Se sigue donde se quedó la vez pasada.
cli-demo-keys = Enter acepta la respuesta entre corchetes, q sale. Lo contestado queda guardado.
cli-demo-other-book = Este libro tiene otras casas y ninguna de muestra. Nombre un archivo nuevo con --book ARCHIVO.
cli-demo-go-on = Enter: seguir, q: salir
cli-demo-cut-it = Enter: cortar, dar primario y poner, q: salir
cli-demo-board-up = ═ { $board }: cortada a { $length }, con primario, puesta
cli-demo-again = La tabla con muesca está puesta. Ejecute lapwright otra vez para seguir con la próxima.
cli-demo-left = Todo lo contestado queda guardado. Ejecute lapwright otra vez para seguir.
cli-demo-nothing-left = No queda nada por hacer en la casa de muestra. lapwright demo --anew aparta su libro y empieza de nuevo.
cli-demo-aside = El libro de la muestra se apartó como { $path }.
cli-pole-as-built = { $wall }, hilada { $course } puesta a { $left } izquierda, { $middle } en medio, { $right } derecha
cli-pole-changed = hilada { $course }: { $left } izquierda, { $middle } en medio, { $right } derecha (vara { $planned })
cli-shed = ¿Escurre el agua?
cli-head = Tapajuntas de cabezal
cli-drawn = Dibujado: { $path }
cli-offcuts = Sobrantes disponibles
cli-offcut = (sobrante)
cli-saw-more = { $count ->
    [one] … y 1 tabla más: lapwright saw
   *[other] … y { $count } tablas más: lapwright saw
}
cli-block-advice = Mejor: un bloque de { $width } × { $height }, el agujero a { $hole } de su borde inferior. { $gain } (penetration … --advised lo toma)
cli-block-size = Bloque de montaje { $width } × { $height }
cli-yes = No se cambió nada. Lo mismo con --yes lo hace.
cli-photo-one-step = Una foto es de un solo paso. Marque ese por separado.
cli-no-backups = Aún no se guarda ninguna copia. Se hace una antes de volver a una copia o de incorporar el archivo de un compañero; lapwright backup lote-7.zip hace una a mano.
cli-signer = lapwright settings signer="NOMBRE" lo dice para siempre, --signer "NOMBRE" para una sola orden.
