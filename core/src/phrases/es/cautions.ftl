# Precauciones, en el paso donde importan.
caution-who-decides = Mandan el código local y los contratistas con licencia. Este programa informa; no los sustituye.
caution-silica = Cortar fibrocemento suelta polvo de sílice que arruina los pulmones. Corte afuera, donde el viento se lleve el polvo lejos de los demás, con cizalla o con una sierra que recoja su polvo: por lo menos el flujo de aire que pide el fabricante de la sierra, con filtro del 99 %. Use respirador donde sus reglas lo pidan. Nunca barra en seco.
caution-saw = Guarda puesta, lentes y protección de oídos, tabla bien sujeta. Desconecte la sierra o quite la batería antes de tocar el disco.
caution-ladder = Separe de la pared el pie de la escalera una cuarta parte del largo útil de la escalera, sobre suelo firme y con los largueros 3 pies arriba del descanso. Mantenga tres puntos de apoyo; para usar las dos manos es mejor un andamio.
caution-fall = Desde 6 pies de altura hace falta baranda, red o arnés; en un andamio, desde 10 pies. Las reglas de su lugar pueden pedirlo antes.
caution-power-line = Manténgase usted, la escalera y las tablas al menos a 10 pies de las líneas eléctricas. Si tiene dudas, llame a la compañía eléctrica.
caution-electricity = Sin corriente y comprobado antes de que alguien lo toque. Abrir, mover o conectar una caja o un cable de corriente es trabajo con licencia.
caution-meter = Nunca rompa el sello de un medidor. La compañía eléctrica decide qué se puede mover y cuándo.
caution-gas = Si puede ser gas: no corte ni taladre cerca, ni afloje ninguna conexión; eso es de un técnico con licencia. Si huele a gas, no prenda nada ni toque interruptores, aleje a todos y desde lejos llame a la compañía de gas o al número de emergencias.
caution-water-line = Cierre la línea y quítele la presión antes de mover el tubo. Cambiar el tubo es trabajo de plomero donde su código lo diga.
caution-refrigerant = El refrigerante está a presión y congela la piel. Abrir las líneas es trabajo con licencia.
caution-lead = Trate la pintura vieja como si tuviera plomo hasta que se analice. Estados Unidos, casa anterior a 1978: con más de 20 pies cuadrados por fuera en total, y siempre que se demuelan partes pintadas o se cambien ventanas, el trabajo lo hace una empresa certificada, con prácticas de trabajo seguras con el plomo. En otro país, siga las reglas de ahí sobre el plomo.
caution-nailer = Clavadora: lentes puestos, la punta en la tabla antes de poner el dedo en el gatillo, la mano libre fuera de la línea del clavo; desconecte la manguera o quite la batería antes de destrabarla. Clave solo en montantes: entre ellos pasan cables y tubos.
caution-lifting = Dos personas por tabla larga, de canto y con la espalda derecha. Si se lleva acostada, se quiebra; si la lleva uno solo, se lastima la espalda.
caution-asbestos = El revestimiento viejo puede tener asbesto. No lo corte, ni lo quiebre, ni lo lije antes de que lo analicen; quitarlo es trabajo con licencia.
caution-wet-surface = No pegue membrana ni ponga sellador sobre una superficie mojada, con polvo o helada. Espere, séquela, o use lo que permita la etiqueta.
caution-label = Lea la etiqueta: temperatura, primario, tiempo de secado, guantes, ventilación, con qué puede tener contacto.
