# Renglones de la lista de hechos: lo que se hizo, un mensaje por clase de respuesta.
done-answered = { $question } { $answer }
done-cleared = { $question } (se quitó)
done-undo = Deshecho: { $what }
done-removed = Se quitó: { $what }
