# Renglones de la lista de hechos: lo que se hizo, un mensaje por clase de respuesta.
done-answered = { $a } { $b }
done-cleared = { $a } (se quitó)
done-undo = Deshecho: { $a }
done-removed = Se quitó: { $a }
done-job-created = Casa nueva: { $a }
done-job-archived = Archivada: { $a }
done-job-brought-back = De vuelta: { $a }
done-step-done = { $a }: { $b } { $c }
done-step-skipped = { $a }: se dejó sin hacer: { $b } { $c }
done-step-taken-back = { $a }: se retiró: { $b } { $c }
done-newer = Algo que escribió un programa más nuevo ({ $a })
done-already = Esto ya se deshizo.
done-rule-changed = Regla cambiada: { $a }: { $b } ({ $c })
done-rule-default = Regla de vuelta a su valor: { $a }: { $b }
done-stock-added = Largo nuevo en existencia: { $a } { $b }
done-wall-added = Pared nueva: { $a }
done-penetration-same = Mismo remate y bloque que otra
