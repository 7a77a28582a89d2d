# amounts: cada clave empieza por amounts-.
amounts-boards = Tablas de { $length }
amounts-boards-from = Lista de cortes: { $boards ->
    [one] 1 tabla
   *[other] { $boards } tablas
} para { $pieces ->
    [one] 1 pieza
   *[other] { $pieces } piezas
}, con el desperdicio de los cortes ya contado. El margen es por roturas.
amounts-barrier = Barrera de agua
amounts-barrier-from = { $courses ->
    [one] 1 tramo
   *[other] { $courses } tramos
} con sus traslapes, que doblan en las esquinas; los vanos se recortan de ella
amounts-barrier-tape = Cinta para las uniones de la barrera
amounts-barrier-tape-from = { $seams ->
    [one] 1 unión vertical
   *[other] { $seams } uniones verticales
}
amounts-starter = Tira de arranque
amounts-starter-from = Bordes inferiores de { $walls ->
    [one] 1 pared
   *[other] { $walls } paredes
}, de moldura a moldura, sin las puertas
amounts-backing = Tiras de tapajuntas tras las juntas, { $width } × { $height }
amounts-backing-from = { $joints ->
    [one] Una en 1 junta
   *[other] Una en cada una de { $joints } juntas
}
amounts-trim = Moldura de { $width } de ancho
amounts-trim-from = Extremos de pared: { $ends }, ventanas y puertas: { $openings }, accesorios: { $fixtures }
amounts-top-trim = Friso y moldura inclinada, { $width } de ancho
amounts-top-trim-from = Bordes superiores de las paredes: { $count }
amounts-soffit = Sofito, { $width } de ancho
amounts-soffit-from = Bordes superiores de las paredes: { $count }
amounts-block = Bloque de montaje { $width } × { $height }, { $thickness } de grueso
amounts-block-from = Accesorios que se quitan: { $count }
amounts-block-split = Bloque de montaje para partir, { $width } × { $height }, { $thickness } de grueso
amounts-block-split-from = Accesorios que no se quitan: { $count }. La pieza en bruto es más alta por el corte de la sierra.
amounts-collar = Collarín sellado
amounts-collar-from = Accesorios con collarín: { $count }
amounts-extension-ring = Anillos de extensión para cajas
amounts-extension-ring-from = Cajas y luces: { $count }. El anillo va donde la caja queda detrás de la cara terminada: pregunte al electricista en cuáles.
amounts-membrane = Membrana autoadhesiva
amounts-membrane-from = Parche y cubierta del corte en { $count ->
    [one] 1 accesorio
   *[other] { $count } accesorios
}
amounts-flashing = Tapajuntas de cabezal
amounts-flashing-from = Ventanas y puertas: { $openings }, bloques: { $blocks }; cada extremo doblado hacia arriba { $dam }
amounts-wall-flashing = Tapajuntas para techos, vigas de terraza y repisas
amounts-wall-flashing-from = Donde un techo, una terraza o una repisa topa a nivel con la pared: { $count }
amounts-base-flashing = Tapajuntas de la línea base
amounts-base-flashing-from = Bordes inferiores de { $count ->
    [one] 1 pared
   *[other] { $count } paredes
}, sin las puertas
amounts-step-flashing = Tapajuntas escalonado
amounts-step-flashing-from = Una pieza por hilera del techado, { $each } de pendiente cada una
amounts-kick-out = Desviador
amounts-kick-out-from = Techos que bajan junto a una pared: { $count }
amounts-furring = Listones
amounts-furring-from = Uno sobre cada montante, de la altura de su pared: { $count }
amounts-vent-strip = Tira de ventilación
amounts-vent-strip-from = Al pie y en lo alto de paredes con listones: { $count }
amounts-sealant = Sellador
amounts-sealant-from = { $length } de junta por su volumen: { $trim } de ancho en la moldura, { $block } en bloques y accesorios, hasta { $depth } de fondo; abierta sobre los tapajuntas
amounts-primer = Primario para bordes cortados
amounts-primer-from = { $edge } de borde cortado, { $thickness } de grueso, con { $coverage }
amounts-paint = Pintura
amounts-paint-from = { $area } de pared sin vanos, manos: { $coats }, con { $coverage }. Ninguna si las tablas vienen pintadas.
amounts-touch-up = Juego de retoque del color de las tablas
amounts-touch-up-from = { $area } de pared sin vanos, tablas que vienen pintadas
amounts-nails = Clavos para tablas, de { $length } o más
amounts-nails-from = Tablas sobre montantes: { $studs }, juntas: { $joints }{ $face ->
    [0] {""}
   *[other] ; por la cara: { $face }
}
amounts-trim-nails = Clavos de moldura
amounts-trim-nails-from = { $pieces ->
    [one] 1 pieza
   *[other] { $pieces } piezas
} de moldura, clavos cada { $spacing }
amounts-screws = Tornillos para bloques
amounts-screws-from = Bloques: { $blocks }, tornillos en cada uno: { $each }
amounts-pack-board = tabla
amounts-pack-piece = pieza
amounts-pack-strip = tira de { $length }
amounts-pack-length = largo de { $length }
amounts-pack-roll = rollo de { $width } × { $length }
amounts-pack-roll-of = rollo de { $length }
amounts-pack-cartridge = cartucho de { $size }
amounts-pack-kit = juego para { $area }
amounts-pack-can = lata de { $size }
amounts-pack-box = caja de { $count }
amounts-help = Todo lo que hay que pedir para una casa: lo que va puesto, el margen de desperdicio y las presentaciones, redondeadas hacia arriba. Las tablas se cuentan en la lista de cortes del documento, o en una planeada aquí; lo demás, en sus paredes, vanos y accesorios. amount = net + waste; el tamaño de una presentación, un rendimiento y un margen son reglas, que el documento puede cambiar. Largos, áreas y volúmenes van en pies y galones; con "show" en mm, en metros y litros. packs puede ser más de lo que pide amount donde las piezas no salen de sobrantes. Sin pintura si las tablas vienen pintadas: ponga la regla paint.coats en 0. effort limita los pasos del planificador donde no hay lista de cortes.
amounts-trouble = No se pueden calcular las cantidades: { $why }
order-name = Artículo
order-net = Neto
order-waste = Desperdicio
order-amount = Cantidad
order-packs = Presentaciones
order-pack = Presentación
order-have = Disponibles
order-buy = Comprar
order-from = Calculado de
order-line = Compre { $buy } × { $pack }: { $net } y { $waste } de desperdicio
order-line-have = Compre { $buy } × { $pack }: { $net } y { $waste } de desperdicio son { $packs }, hay { $have }
order-line-enough = Nada que comprar: { $net } y { $waste } de desperdicio son { $packs } × { $pack }, hay { $have }
order-check = Los tamaños y rendimientos son reglas de esta casa: compárelos con las etiquetas antes de pedir.
