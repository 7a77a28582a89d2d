# Errores: qué está mal, dónde, y qué se permite.
error-rule-unknown = No existe la regla «{ $rule }».
error-rule-kind = La regla «{ $rule }» guarda otro tipo de valor.
error-rule-unit = { $found } no sirve para la regla «{ $rule }»: dé un valor como { $like }.
error-rule-range = { $found } está fuera de rango para la regla «{ $rule }»: se permite de { $least } a { $most }.
error-rule-order = «{ $lower }» no puede ser mayor que «{ $upper }».
error-rule-reason = Diga por qué cambia la regla «{ $rule }».
error-rule-signer = Diga quién cambia la regla «{ $rule }».
error-step-unknown = Aquí no hay ningún paso «{ $step }». Hay: { $known }.
error-step-signer = Diga quién firma este paso: { $step }
error-step-skip-reason = Este paso no se omite sin un motivo: { $step }
error-step-earlier-open = Esto va primero y sigue pendiente: { $open } Hágalo, o dé un motivo.
error-step-already = Este paso ya está firmado. Primero deshágalo: { $step }
error-step-nothing-to-undo = Este paso está pendiente; no hay nada que deshacer: { $step }
