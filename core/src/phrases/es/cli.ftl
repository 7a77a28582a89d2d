# cli: cada clave empieza por cli-.
cli-draft = Tecleado y aún no aceptado: { $draft }
cli-differs = Esto cambió desde que se marcó.
cli-file = { $path }: { $why }
cli-no-folder = En esta máquina no hay carpeta para sus datos. Nombre un libro con --book ARCHIVO.
cli-unknown = Nada, o más de una cosa, se llama «{ $text }». Hay: { $known }.
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
cli-check-bad = Los datos no están bien: { $why }
cli-set-aside = El libro estaba dañado. Se apartó como { $path }.
cli-restored = En su lugar se tomó la copia buena más reciente: { $path }
cli-kept = Guardado.
cli-rule-changed = En lugar de { $default }, por { $signer }: { $reason }
