# La vara de hiladas.
pole-mark-sill = Antepecho ({ $what }), { $wall }
pole-mark-head = Dintel ({ $what }), { $wall }
pole-mark-bottom = Bloque, borde inferior ({ $what }), { $wall }
pole-mark-top = Bloque, borde superior ({ $what }), { $wall }
pole-boards-are-up = Hay tablas puestas hasta la hilada { $course }. Sus líneas y las de abajo se quedan como están.
pole-thin-strip = La última hilada muestra solo { $strip }.
pole-lap-short = Una vista de { $reveal } deja menos que el traslape mínimo. A lo más { $most }.
pole-no-height = El final debe quedar arriba del principio.
pole-under-least = Las hiladas iguales quedan bajo la vista mínima. Permita una menor, u otra altura.
pole-no-layout = Ninguna vista dentro de estos límites suma la altura. Permita más entre mínima y máxima, o más cambio.
pole-reveal-order = La vista mínima pasa de la máxima.
pole-too-large = Hay demasiadas alturas para elegir. Use una marca más gruesa o una vara más corta.
pole-as-built-level = La hilada { $course } está a nivel.
pole-as-built-back = La hilada { $course } está { $out } fuera de nivel. De nuevo a nivel después de { $courses ->
    [one] una hilada
   *[other] { $courses } hiladas
}, a lo más { $change } por hilada.
pole-as-built-differs = Las líneas de arriba van donde las pone la cinta, no donde las tenía la vara.
pole-as-built-missed = { $name }: no se alcanza por { $miss }.
pole-as-built-lap-short = La hilada { $course } solo traslapa { $lap } sobre la de abajo. El traslape mínimo es { $least }.
pole-as-built-no-lap = La hilada { $course } no traslapa sobre la de abajo: ahí la pared queda abierta. El traslape mínimo es { $least }.
pole-as-built-none = Desde la hilada { $course } ninguna línea dentro de los límites vuelve a nivel: arriba quedan las líneas de la vara.
pole-as-built-need-change = Bastaría quitar { $change } por hilada (regla: desnivel que se quita en una hilada).
pole-as-built-need-reveals = Bastarían vistas de { $least } a { $most }.
pole-as-built-need-more = No basta con más cambio por hilada ni con otras vistas: trace la vara de nuevo desde aquí.
pole-as-built-course = La vara tiene las hiladas 1 a { $most }.
pole-as-built-far = La hilada { $course } no puede estar ahí: su borde inferior queda entre { $least } y { $most }.
pole-as-built-cut = Las tablas cortadas o puestas conservan sus números.
pole-line = Hilada { $course }, se ven { $reveal }
pole-end = Final
pole-land = Una línea debe tocarla.
pole-clear = Las líneas deben quedar lejos de ella.
pole-met = Se cumple.
pole-missed = Falla por { $miss }.
pole-kept = Estas líneas están guardadas. Las paredes se planean con ellas.
pole-differs = Estas líneas son nuevas: las paredes tienen todavía las de antes.
pole-not-kept = Estas líneas aún no están guardadas.
pole-proved = Ninguna otra división queda más cerca de estas alturas.
