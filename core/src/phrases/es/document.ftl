# El documento del trabajo.
document-too-big = El documento pasa de 64 MB.
document-house-too-big = La casa tiene más cosas de las que caben en un documento: { $limit } paredes, tablas, muescas y demás, o 64 MB. Mejor pásela como archivo para un compañero.
document-too-many = El documento trae más de { $limit } cosas: paredes, tablas, muescas y demás.
document-not-json = El documento no es JSON, o termina antes de lo debido: línea { $line }, carácter { $column }.
document-not-ours = Esto no es un documento de trabajo: debe ser un objeto JSON con "lapwright": 1.
document-house-here = Esta casa ya está en el libro: «{ $name }». Para tenerla otra vez, quite del documento la línea "house".
document-object = Aquí va un objeto entre llaves.
document-list = Aquí va una lista entre corchetes.
document-text = Aquí va un texto entre comillas.
document-length = Aquí va una medida con su unidad, como "12 ft" o "154 mm".
document-lines-order = Las líneas deben subir, cada una sobre la anterior.
document-twice = «{ $name }» está dos veces.
document-unknown = Ese nombre no va aquí. Estos sí: { $names }.
document-lines-threes = Las líneas sobre una hilada puesta van de tres en tres: izquierda, en medio, derecha.
