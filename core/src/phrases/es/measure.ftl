# La toma de medidas de una pared.
measure-opening-outside = Entonces una ventana o puerta quedaría fuera de la pared. Revise esta medida o mueva el vano.
measure-outside = Esto queda más allá de la pared, que tiene { $width } de ancho.
measure-over-top = Esto pasa de la parte de arriba de la pared.
measure-impossible = Con esta medida la pared se cruzaría a sí misma. Compárela con las demás.
measure-left-higher = El extremo izquierdo queda { $by } más alto que el derecho. Revise la línea base con un nivel.
measure-right-higher = El extremo derecho queda { $by } más alto que el izquierdo. Revise la línea base con un nivel.
measure-leans-right = Fuera de escuadra: la parte de arriba queda { $by } a la derecha de la base.
measure-leans-left = Fuera de escuadra: la parte de arriba queda { $by } a la izquierda de la base.
measure-under-base = Esto queda por debajo de la línea base en ese lugar, donde sube un escalón.
measure-head-range = Un lado se inclina una pulgada por pie como máximo y no sale de la pared: aquí de { $least } a { $most }.
measure-pitch-title = Pendiente del techo
measure-pitch = «{ $text }» no es una pendiente para este gablete. Escriba la subida sobre el avance, como 6/12 o 6 en 12; las dos pendientes deben encontrarse sobre la pared.
