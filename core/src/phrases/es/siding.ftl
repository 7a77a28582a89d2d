# siding: cada clave empieza por siding-.
siding-pole-help = Traza una vara de hiladas. "equal": las menos hiladas sin pasar de reveal_max, todas iguales. "fixed": una sola vista desde abajo, la última hilada es lo que queda. "fit": las mejores vistas, probadas, dentro de los límites para las marcas. Las líneas se miden desde "from", cada una redondeada por separado.
siding-pole-no-height = El final debe quedar sobre el inicio: "to" mayor que "from".
siding-pole-reveal-order = La vista mínima no puede pasar de la máxima, reveal_max.
siding-pole-lap-order = El traslape mínimo debe ser menor que board_height.
siding-pole-under-least = { $courses } hiladas iguales de { $reveal } quedan bajo la vista mínima. Baje reveal_min o suba reveal_max.
siding-pole-no-layout = Ninguna serie de vistas dentro de los límites suma esta altura. Amplíe reveal_min, reveal_max o change_max, o mueva el inicio.
siding-pole-too-many-courses = Salen más de { $limit } hiladas. Suba la vista o baje la altura.
siding-pole-too-large = Hay demasiadas alturas y vistas entre las cuales elegir. Use una división más gruesa, o acerque reveal_min y reveal_max.
siding-pole-cost-too-big = Estas marcas fallan por más de lo que se puede sumar. Acérquelas a la vara o baje sus pesos.
siding-pole-lap-short = Una vista de { $reveal } deja menos del traslape mínimo. Se pueden ver hasta { $most }.
siding-pole-thin-strip = La última hilada muestra solo { $strip }, menos de { $least }.
siding-gable-help = Cortes para un gablete simétrico sobre una línea a nivel. Todos los cortes de la pendiente tienen el mismo ángulo. "step" es cuánto más corta es cada hilada en cada lado; "edge_difference" es esa diferencia entre el borde inferior y el superior de una tabla. Dé "reveal" o "bottoms". Los largos de las tablas se redondean hacia abajo.
siding-gable-either = Dé reveal o bottoms, no los dos.
siding-gable-ascending = Cada borde inferior debe quedar sobre el anterior.
siding-gable-too-many-courses = Salen más de { $limit } hiladas. Suba la vista.
siding-gable-too-large = Con esta pendiente una medida pasa del límite de 1,000 km.
