# Errors: what is wrong, where, and what is allowed.
error-rule-unknown = There is no rule “{ $rule }”.
error-rule-kind = The rule “{ $rule }” holds another kind of value.
error-rule-unit = { $found } does not fit the rule “{ $rule }”: give a value like { $like }.
error-rule-range = { $found } is out of range for the rule “{ $rule }”: { $least } to { $most } is allowed.
error-rule-order = “{ $lower }” may not be more than “{ $upper }”.
error-rule-reason = Say why you change the rule “{ $rule }”.
error-rule-signer = Say who changes the rule “{ $rule }”.
error-step-unknown = There is no step “{ $step }” here. There are: { $known }.
error-step-signer = Say who signs this step: { $step }
error-step-skip-reason = This step is not left out without a reason: { $step }
error-step-earlier-open = These come first and are still open: { $open } Do them, or give a reason.
error-step-already = This step is signed already. Undo it first: { $step }
error-step-nothing-to-undo = This step is open; there is nothing to undo: { $step }
