# Lo que la orden dice de sí misma. command-NOMBRE es una orden y command-NOMBRE-ARGUMENTO lo que lleva; command-arg-ARGUMENTO
# es un argumento que significa lo mismo en todas, command-value-PALABRA la palabra que está por un valor, y
# command-call-NOMBRE una llamada correcta de una orden, como se escribe después de lapwright.
command-about = Tablas traslapadas en los pasos por la pared: medir, cortar muescas, sellar, marcar lo hecho.
command-more = Sin ninguna orden abre la casa de muestra y recorre el trabajo principal. CASA, PARED, TABLA y PASO-POR-LA-PARED son nombres, o el principio de un id.
command-usage = Uso
command-commands = Órdenes
command-arguments = Argumentos
command-options = Opciones
command-word = ORDEN
command-options-word = OPCIONES
command-for-example = Ejemplo
command-allowed = Una de: { $values }.
command-left-out = Si no se pone: { $value }.
command-man-name = NOMBRE
command-man-synopsis = SINOPSIS
command-man-description = DESCRIPCIÓN
command-man-version = VERSIÓN

command-jobs = Las casas del libro.
command-new-job = Una casa nueva, también con las tablas, las reglas y las medidas de bloque de otra.
command-new-job-name = Cómo se va a llamar la casa.
command-new-job-like = La casa de la que se toman tablas, reglas y medidas de bloque.
command-rename = Otro nombre para una casa.
command-rename-name = Cómo se va a llamar.
command-archive = Guardar una casa que ya no se usa; sus datos quedan.
command-bring-back = Traer de vuelta una casa archivada.
command-house = Cómo va una casa y qué sigue; las respuestas dicen sus tablas.
command-stock = Agregar a una casa un largo de tabla.
command-stock-length = Una tabla entera, de punta a punta.
command-stock-count = Cuántas hay; nada si se pueden conseguir más.
command-add-wall = Agregar una pared a una casa.
command-add-wall-name = Cómo le dice la cuadrilla a la pared.
command-wall = Qué hay y dónde en una pared.
command-measure = Formar una pared con sus medidas.
command-add = Agregar a una pared: un vano, un encuentro, un escalón de la línea base, un montante o un paso por la pared.
command-add-kind = Qué se agrega.
command-change = Cambiar una parte de una pared, como el ancho de una ventana; sin respuestas muestra las preguntas de la pared.
command-remove = Quitar una parte de una pared; queda en la lista de lo hecho.
command-plan = Planear las tablas de una pared según la vara.
command-pole = La vara de hiladas de una casa; las respuestas la cambian.
command-pole-lay-out = Guardar las líneas como están repartidas.
command-pole-as-built = Una hilada está puesta en esta pared: course=, left=, right= y, si se midió, middle= dicen dónde.
command-pole-not-built = Lo que se dijo de una hilada puesta ya no vale.
command-mark = Agregar una altura que las líneas deben tocar o evitar.
command-next = Qué sigue en una casa: la tabla en mano y su muesca, o el próximo paso del trabajo en lo que atraviesa la pared.
command-loose = Una tabla suelta: left, right, bottom-left y top-left dan la muesca; no hace falta ninguna casa.
command-loose-length = Qué largo tiene la tabla.
command-loose-house = La casa cuyas reglas valen.
command-board = La tabla en mano, sus marcas en la cara y en el reverso; las respuestas corrigen una lectura de su muesca.
command-board-notch = Para cuál muesca son las respuestas, si hay más de una.
command-attach = Poner una tabla suelta en una pared.
command-gap = Una holgura medida con la tabla puesta: de ella se aprende cuánto se pasan la sierra y las manos.
command-gap-gap = La holgura en su parte más ancha, pero no sobre un tapajuntas de cabezal.
command-gap-notch = En cuál muesca se midió, si hay más de una.
command-same-board = Una tabla suelta como la última, con sus bloques.
command-same-board-house = La casa de cuyas tablas sueltas se trata; si no, las que no son de ninguna.
command-spoiled = Una tabla cortada se echó a perder: se planea otra vez.
command-spoiled-left = Qué largo tiene el pedazo que todavía sirve, entre puntas a escuadra.
command-block-size = Agregar a una casa una medida de bloque de montaje: el consejo escoge entre ellas.
command-block-size-width = El ancho del bloque, de lado a lado.
command-block-size-height = El alto del bloque, cerrado.
command-penetration = Un paso por la pared: sus capas, medidas y pasos; las respuestas lo cambian.
command-penetration-advised = Usar el bloque aconsejado.
command-tick = Marcar pasos de una tabla o de un paso por la pared, uno tras otro.
command-tick-steps = Los pasos, por el código que llevan entre paréntesis; de una tabla también cut, primed y up, cada uno por todos sus pasos.
command-tick-measured = Lo que se midió en este paso.
command-tick-photo = Una foto de este paso, en un archivo JPEG: el libro guarda una copia.
command-skip = Omitir un paso, con su motivo.
command-skip-reason = Por qué se omite.
command-untick = Retirar una marca: el paso queda otra vez pendiente.
command-saw = La lista de cortes de una casa: qué se corta de qué, contra lo menos posible.
command-saw-plan = Planear todo lo que no está cortado.
command-saw-improve = Buscar más tiempo un plan mejor.
command-saw-cut = Marcar una tabla como cortada, por su número.
command-saw-offcut = Un sobrante que está a la mano.
command-saw-drop = Desechar un sobrante.
command-saw-keep = Guardar un sobrante de todos modos.
command-saw-have = Cuántas tablas hay de un largo; nada después del signo para las que hagan falta.
command-order = Qué comprar para una casa: cantidades, desperdicio y presentaciones.
command-order-csv = Valores separados por comas.
command-order-text = Un mensaje para enviar.
command-rules = Las reglas de una casa.
command-rule = Cambiar una regla, con su motivo.
command-rule-value = El valor, con su unidad.
command-rule-reason = Por qué: la hoja del fabricante, la sección del código, la palabra del inspector.
command-rule-default = Volver al valor inicial de una regla.
command-done = Qué se hizo, primero lo último.
command-done-house = Una sola casa.
command-done-count = Cuántos renglones.
command-undo = Deshacer una respuesta; primero muestra qué depende de ella.
command-undo-group = La respuesta, como la nombra la lista de lo hecho; si no, la última.
command-undo-yes = Hacerlo aunque respuestas posteriores dependan de ella.
command-settings = Quién tiene este aparato y cómo habla.
command-copy = Una copia revisada del libro.
command-backup = El libro y sus fotos en un solo archivo, revisado.
command-backups = Las copias que el libro guarda de sí mismo, primero la última.
command-restore = Qué pasaría al volver a una copia o un respaldo; con --yes se hace. Las firmas posteriores quedan.
command-restore-file = La copia o el respaldo.
command-restore-yes = Hacerlo; antes se copia el libro como está.
command-words = Las cuatro palabras de este aparato, para que un compañero las compare.
command-hand-over = Escribir las respuestas de una casa para el teléfono de un compañero. Las fotos van aparte.
command-hand-over-new = Solo lo que llegó desde el último archivo así de esta casa.
command-take-in = Qué pasaría al recibir el archivo de un compañero, una copia de un libro o una casa; con --yes se hace.
command-take-in-file = El archivo del compañero.
command-take-in-house = Solo una de sus casas: una casa de este libro, o un id.
command-take-in-yes = Hacerlo; sin esto solo se mira.
command-take-in-trust = Las cuatro palabras que el otro aparato muestra como suyas: son las del archivo.
command-take-in-even-ahead = Recibir como están las respuestas cuyo reloj va más de un día adelantado.
command-differences = Lo que se contestó distinto en dos teléfonos y aquí nadie ha visto todavía.
command-differences-looked-at = Ya se vieron: no mostrarlas más.
command-check = Revisar los datos.
command-repair = Revisar los datos y arreglarlos con el registro del libro y sus copias; el archivo como estaba se guarda.
command-acknowledge = Quitar el aviso de lo que se salvó y lo que se perdió.
command-export = Una casa como documento de trabajo, en un archivo o en la salida estándar.
command-sheet = Las firmas de una casa para el inspector: cada paso de cada tubo, caja y detalle, con quién, cuándo y qué. En un archivo o en la salida estándar.
command-import = Traer un documento de trabajo.
command-import-file = El documento de trabajo.
command-draw = Un dibujo de una tabla, una pared, una vara o un paso por la pared, en SVG.
command-draw-what = Qué se dibuja.
command-draw-thing = Una tabla para face y back, una pared para wall, una casa para pole, un paso por la pared para block, layers y section.
command-draw-svg = El archivo; si no, la salida estándar.
command-draw-width = Qué ancho, en pixeles.
command-draw-dark = Líneas claras sobre fondo oscuro.
command-figure = Contestar una sola pregunta: entra un objeto JSON por la entrada estándar y sale otro. Con --help después de PREGUNTA la muestra con un ejemplo.
command-figure-question = La pregunta, como la nombra --list.
command-figure-list = Nombrar las preguntas.
command-completions = Con qué completa una terminal órdenes y opciones: para cargarlo, o ponerlo donde ella lo busca.
command-completions-shell = La terminal.
command-man = La página de manual, para man.
command-demo = La casa de muestra y su recorrido por el trabajo principal.
command-demo-anew = Apartar el libro de la muestra y empezar de nuevo.

command-arg-book = El libro; si no, el del usuario.
command-arg-json = Contestar en JSON.
command-arg-language = El idioma; si no, el recordado; si no, el del sistema.
command-arg-show = Cómo se muestran las medidas: in/16, in/32, in/64, ft-in/16, mm o mm/0.5.
command-arg-division = La marca más chica a la que se corta, como 1/16".
command-arg-signer = Quién firma.
command-arg-help = Mostrar esta ayuda.
command-arg-version = Mostrar la versión.
command-arg-house = La casa: su nombre, o el principio de su id.
command-arg-wall = La pared: su nombre, o el principio de su id.
command-arg-board = La tabla: pared e hilada, como "Norte 3", o el principio de su id.
command-arg-penetration = El paso por la pared: qué es, también después del nombre de su pared, o el principio de su id.
command-arg-thing = La tabla o el paso por la pared al que pertenecen los pasos.
command-arg-part = El vano, encuentro, escalón o montante: su clase si hay uno solo, si no el principio de su id.
command-arg-step = El paso, por el código que lleva entre paréntesis.
command-arg-note = Qué más hay que decir.
command-arg-key = La regla, por su clave: vea lapwright rules CASA.
command-arg-file = El archivo.
command-arg-force = Escribir encima de un archivo que ya existe. Nunca se escribe encima de un libro.
command-arg-given = Respuestas, como width="31' 4\"" o mode=fit.

command-value-house = CASA
command-value-wall = PARED
command-value-board = TABLA
command-value-penetration = PASO-POR-LA-PARED
command-value-thing = COSA
command-value-part = PARTE
command-value-kind = CLASE
command-value-name = NOMBRE
command-value-length = LARGO
command-value-count = CANTIDAD
command-value-width = ANCHO
command-value-height = ALTO
command-value-gap = HOLGURA
command-value-left = RESTO
command-value-notch = MUESCA
command-value-entry = RENGLÓN
command-value-step = PASO
command-value-reason = MOTIVO
command-value-note = NOTA
command-value-measured = MEDIDA
command-value-number = NÚMERO
command-value-offcut = SOBRANTE
command-value-stock-count = LARGO=CANTIDAD
command-value-key = CLAVE
command-value-value = VALOR
command-value-group = RESPUESTA
command-value-file = ARCHIVO
command-value-words = PALABRAS
command-value-what = QUÉ
command-value-pixels = PIXELES
command-value-shell = TERMINAL
command-value-question = PREGUNTA
command-value-language = IDIOMA
command-value-unit = UNIDAD
command-value-field-answer = CAMPO=RESPUESTA

command-call = jobs
command-call-jobs = jobs
command-call-new-job = new-job "Lote 7"
command-call-rename = rename "Lote 7" "Casa Reyezuelo"
command-call-archive = archive "Lote 7"
command-call-bring-back = bring-back "Lote 7"
command-call-house = house "Lote 7" board-height=8.25in lap=1.25in
command-call-stock = stock "Lote 7" 12ft 140
command-call-add-wall = add-wall "Lote 7" Norte
command-call-wall = wall Norte
command-call-measure = measure Norte width=24ft left-height=9ft right-height=9ft
command-call-add = add Norte opening what=window from-left=4ft width=38in from-base=30in height=50in
command-call-change = change Norte opening width=38in
command-call-remove = remove Norte opening
command-call-plan = plan Norte
command-call-pole = pole "Lote 7" from=0in to=9ft mode=fit reveal-max=7in reveal-min=6in
command-call-mark = mark "Lote 7" name=Viga at=80in want=land
command-call-next = next "Lote 7"
command-call-loose = loose 118.5in height=7.25in lap=1.25in left=52in right=60in bottom-left=-1.5in top-left=4in
command-call-board = board "Norte 3" left=52in
command-call-attach = attach 3f2a Norte
command-call-gap = gap "Norte 3" 1/8in
command-call-same-board = same-board
command-call-spoiled = spoiled "Norte 3" 40in
command-call-block-size = block-size "Lote 7" 8in 10in
command-call-penetration = penetration "Norte Llave de manguera" painted=no
command-call-tick = tick "Norte 3" board-measure board-mark
command-call-tick-note = tick "Norte 3" board-notch --note "marcada ayer"
command-call-tick-photo = tick "Norte Llave de manguera" look-over --photo llave.jpg
command-call-skip = skip "Norte 3" board-mark --reason "la marcó el de la sierra"
command-call-untick = untick "Norte 3" board-mark --note "demasiado pronto"
command-call-saw = saw "Lote 7" --plan
command-call-order = order "Lote 7" --csv
command-call-rules = rules "Lote 7"
command-call-rule = rule "Lote 7" gap.trim 3/16in --reason "la hoja del fabricante"
command-call-rule-default = rule-default "Lote 7" gap.trim
command-call-done = done "Lote 7" --count 50
command-call-undo = undo
command-call-settings = settings signer=Wren language=es
command-call-copy = copy lote-7.lapwright
command-call-backup = backup lote-7.zip
command-call-backups = backups
command-call-restore = restore lote-7.zip --yes
command-call-words = words
command-call-hand-over = hand-over "Lote 7" lote-7.exchange
command-call-take-in = take-in lote-7.exchange --yes
command-call-differences = differences --looked-at
command-call-check = check
command-call-repair = repair
command-call-acknowledge = acknowledge
command-call-export = export "Lote 7" lote-7.json
command-call-sheet = sheet "Lote 7" lote-7.txt
command-call-import = import lote-7.json
command-call-add-penetration = add Norte penetration what=hose-bib width=1in from-left=5ft from-base=20in
command-call-add-abutment = add Norte abutment what=deck from-left=2ft width=8ft top=6in
command-call-add-base-step = add Norte base-step from-left=10ft rise=8in
command-call-add-stud = add Norte stud at=33in
command-call-pole-as-built = pole "Lote 7" --as-built Norte course=2 left=7in right=7.0625in
command-call-pole-lay-out = pole "Lote 7" --lay-out
command-call-saw-have = saw "Lote 7" --have 12ft=140
command-call-saw-cut = saw "Lote 7" --cut 1
command-call-saw-offcut = saw "Lote 7" --offcut 40in
command-call-draw = draw wall Norte --svg norte.svg
command-call-figure = figure length
command-call-completions = completions bash
command-call-man = man
command-call-demo = demo

command-error-example = Ejemplo: lapwright { $call }
command-error-near = Parecido: { $near }.
command-error-command = No hay ninguna orden «{ $text }». lapwright --help las nombra.
command-error-option = Aquí no hay ninguna opción «{ $text }». Hay: { $known }.
command-error-extra = «{ $text }» es una palabra de más. Un texto de varias palabras va entre comillas.
command-error-missing = Aquí falta: { $missing }.
command-error-value = «{ $text }» no sirve para { $argument }. Sirven: { $known }.
command-error-no-value = { $argument } necesita un valor detrás.
command-error-no-value-allowed = { $argument } no lleva valor; «{ $text }» es uno.
command-error-pair = «{ $text }» no es un campo con su respuesta: escriba { $argument }, como width=24ft o base=-14in. Una medida con un espacio adentro va entre comillas: "left=25 15/16in".
command-error-stock = «{ $text }» no es un largo con su cantidad: escriba { $argument }, como 12ft=140.
command-error-whole = «{ $text }» no sirve para { $argument }: un número entero de { $least } a { $most } sí.
command-error-together = { $argument } y { $other } no van juntas.
command-error-option-twice = { $argument } está dos veces. Póngala una vez.
command-error-field-twice = «{ $field }» se contesta dos veces: { $answers }. Dé una sola respuesta.
command-error-not-text = Una palabra de esta llamada no es texto en UTF-8.
command-error-other = No se pudo leer esta llamada.
