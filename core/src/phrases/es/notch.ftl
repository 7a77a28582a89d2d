# notch: cada clave empieza por notch-.
notch-gap-tight = La holgura puede quedar en { $least }, menos que los { $wanted } deseados. Siempre se puede quitar material, nunca reponerlo.
notch-gap-near = El bloque queda a { $least } de la tabla, más cerca que los { $wanted } deseados, aunque no entra en ella.
notch-gap-wide = La holgura puede llegar a { $most }, más que los { $wanted } deseados.
notch-thin-leg = El resto que queda aquí mide solo { $width }, menos de { $least }. El fibrocemento es frágil: ponga una junta en el rebaje, o mueva el bloque.
notch-out-of-level = Los dos extremos de este borde difieren { $by } en altura. Revise el nivel del bloque y de la tabla, y marque ambos lados.
notch-cross-check = Las profundidades de las dos tablas sobre este bloque no cierran por { $by }. Mida las dos otra vez.
notch-lap = El traslape debe ser menor que la altura de la tabla.
notch-help = El rebaje para la tabla en mano, vista de cara. Un bloque que solo toca la tabla, o queda al lado, no lleva corte. El lado más hondo de un borde inclinado decide la clase de corte; un borde que se abre queda abierto en todo el ancho. Las alturas de los lados del bloque valen en las marcas, también donde un lado pasa del extremo de la tabla. Un bloque que cruza ambos extremos y deja una tira arriba y otra abajo es un rip-top.
