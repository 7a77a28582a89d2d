# La vara de hiladas.
pole-mark-sill = Alféizar de { $what }, { $wall }
pole-mark-head = Dintel de { $what }, { $wall }
pole-mark-bottom = Abajo del bloque de { $what }, { $wall }
pole-mark-top = Arriba del bloque de { $what }, { $wall }
pole-boards-are-up = Hay tablas puestas hasta la hilada { $course }. Sus líneas y las de abajo se quedan como están.
pole-thin-strip = La última hilada muestra solo { $strip }.
pole-lap-short = Una vista de { $reveal } deja menos que el traslape mínimo. A lo más { $most }.
pole-no-height = El final debe quedar arriba del principio.
pole-under-least = Las hiladas iguales quedan bajo la vista mínima. Permita una menor, u otra altura.
pole-no-layout = Ninguna vista dentro de estos límites suma la altura. Permita más entre mínima y máxima, o más cambio.
pole-reveal-order = La vista mínima pasa de la máxima.
pole-too-large = Hay demasiadas alturas para elegir. Use una marca más gruesa o una vara más corta.
