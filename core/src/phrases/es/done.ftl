# Renglones de la lista de hechos: lo que se hizo, un mensaje por clase de respuesta.
done-answered = { $a } { $b }
done-cleared = { $a } (se quitó)
done-undo = Deshecho: { $a }
done-removed = Se quitó: { $a }
done-job-created = Casa nueva: { $a }
done-job-archived = Archivada: { $a }
done-job-brought-back = De vuelta: { $a }
