# Precauciones, en el paso donde importan.
caution-who-decides = El código local y los oficios con licencia deciden. Este programa informa; no reemplaza a ninguno.
caution-silica = Cortar fibrocemento levanta polvo de sílice que daña los pulmones. Corte al aire libre, lejos de los demás, con cizalla o con sierra que recoja el polvo; use respirador donde lo pidan sus reglas. Nunca barra en seco.
caution-saw = Guarda puesta, lentes y protección de oídos, tabla bien sujeta. Desconecte la sierra o quite la batería antes de tocar el disco.
caution-ladder = Base de la escalera afuera un cuarto de su largo útil, largueros 3 pies arriba del descanso, sobre suelo firme. Mantenga tres puntos de apoyo; para usar las dos manos es mejor un andamio.
caution-power-line = Manténgase usted, la escalera y las tablas al menos a 10 pies de las líneas eléctricas. Si tiene dudas, llame a la compañía.
caution-electricity = Sin corriente y comprobado antes de que alguien lo toque. Abrir, mover o conectar una caja o un cable es trabajo con licencia.
caution-meter = Nunca rompa el sello de un medidor. La compañía decide qué se puede mover y cuándo.
caution-gas = Si puede ser gas: no corte, taladre ni gire nada cerca sin el oficio con licencia. Si huele a gas, aleje a todos y llame desde lejos.
caution-water-line = Cierre la línea y quítele la presión antes de forzarla. Cambiar el tubo es trabajo de plomero donde lo diga el código.
caution-refrigerant = El refrigerante está a presión y congela la piel. Abrir las líneas es trabajo con licencia.
caution-lead = Casa anterior a 1978: trate la pintura como si tuviera plomo hasta analizarla. Con más de 20 pies cuadrados en total por fuera se aplica la regla de trabajo seguro con plomo.
caution-asbestos = El revestimiento viejo puede tener asbesto. No lo corte, quiebre ni lije antes de analizarlo; quitarlo es trabajo con licencia.
caution-wet-surface = No pegue membrana ni ponga sellador sobre una superficie mojada, con polvo o helada. Espere, séquela, o use lo que permita la etiqueta.
caution-label = Lea la etiqueta: temperatura, primario, tiempo de secado, guantes, ventilación, con qué puede tener contacto.
