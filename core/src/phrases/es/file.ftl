# Por qué no se pudo leer o escribir un archivo, después de su ruta.
file-not-found = no hay tal archivo ni carpeta
file-permission = no tiene permiso para hacer esto ahí
file-exists = ya existe
file-folder = es una carpeta; aquí va un archivo
file-no-folder = una parte de esta ruta es un archivo y no una carpeta
file-folder-full = la carpeta no está vacía
file-full = ya no hay espacio en este disco
file-too-large = es demasiado grande para este disco
file-read-only = este disco solo se puede leer
file-name = esto no sirve de nombre para un archivo: es demasiado largo, o trae un carácter que ningún nombre lleva
file-not-text = lo que trae no es texto
file-ends = termina antes de lo debido
file-busy = otro programa lo está usando
file-memory = no hay memoria suficiente
file-taken-no-more = el otro lado ya no recibe
file-other = el sistema dice: { $why }
