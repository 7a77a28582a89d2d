# cli: cada clave empieza por cli-.
cli-draft = Tecleado y aún no aceptado: { $draft }
cli-differs = Esto cambió desde que se marcó.
cli-file = { $path }: { $why }
cli-no-folder = En esta máquina no hay carpeta para sus datos. Nombre un libro con --book ARCHIVO.
cli-unknown = Nada, o más de una cosa, se llama «{ $text }». Hay: { $known }.
