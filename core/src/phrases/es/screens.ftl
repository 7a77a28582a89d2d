# Nombres de las pantallas y palabras que todas comparten.
screen-jobs = Trabajos
screen-settings = Ajustes
screen-house = Casa
screen-wall = Pared
screen-measure = Medir
screen-pole = Vara de hiladas
screen-saw-list = Lista de cortes
screen-order = Pedido
screen-rules = Reglas
screen-done-list = Lo hecho
screen-backups = Copias del libro
screen-restore = Volver a una copia
screen-hand-over = Pasar a un compañero
screen-take-in = Archivo de un compañero
screen-differences = Contestado distinto
screen-back = Atrás
screen-undo-what = Deshacer: { $what }
screen-cancel = Cancelar
screen-face = CARA
screen-behind = REVERSO
screen-cut = cortar
screen-taped = medido
screen-planned = planeado
screen-by-rule = por regla
screen-taped-by = medido por { $who }, { $when }
screen-note = Nota
screen-reason = Motivo
screen-came-back = Está de vuelta donde se quedó: { $where }
screen-boards = { $count ->
    [one] { $count } tabla
   *[other] { $count } tablas
}
screen-penetrations = { $count ->
    [one] { $count } paso por la pared
   *[other] { $count } pasos por la pared
}
screen-local-code = Mandan el código local y los contratistas con licencia. Este programa informa; no los sustituye.
screen-yes = Sí
screen-no = No
screen-unknown = No hay tal cosa en este libro.
screen-removed = Esto se quitó.
screen-not-an-answer = «{ $field }» no se pregunta aquí. Las preguntas son: { $fields }.
screen-not-an-answer-near = «{ $field }» no se pregunta aquí. ¿Quiso decir { $near }? Las preguntas son: { $fields }.
screen-first = Primero: { $what }
screen-whole = Aquí va un número entero de { $least } a { $most }.
screen-pick = Elija uno de: { $choices }.
screen-control = En un texto solo va lo que se puede imprimir; este trae un carácter que mueve o esconde otros.
screen-empty = Aquí hace falta una respuesta.
screen-book-trouble = El libro no pudo hacerlo: { $why } No se cambió nada.
screen-not-heard = Se oyó «{ $heard }», que no es una medida. Diga, por ejemplo: seis y un dieciseisavo.
