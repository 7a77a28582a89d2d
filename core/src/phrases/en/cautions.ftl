# Cautions, shown at the step where they matter.
caution-who-decides = Local code and licensed trades decide. This program informs; it replaces neither.
caution-silica = Cutting fiber cement makes silica dust that ruins lungs. Cut outdoors, downwind of others, with shears or with a saw that collects its dust: at least the air flow that the saw’s maker asks for, through a 99 % filter. Wear a respirator where your rules ask for one. Never dry-sweep.
caution-saw = Guard on, glasses and hearing protection on, board held down. Unplug the saw or pull the battery before you touch the blade.
caution-ladder = Ladder base out a quarter of its working length, rails 3 ft above a landing, on firm ground. Keep three points of contact; a scaffold is better for two hands.
caution-fall = From 6 ft up you need a guardrail, a net or a harness; on a scaffold, from 10 ft up. Your rules may say sooner.
caution-power-line = Keep yourself, the ladder and the boards at least 10 ft from power lines. If in doubt, call the utility.
caution-electricity = Dead and tested before anyone touches it. Opening, moving or connecting a box or a power cable is licensed work.
caution-meter = Never break a meter’s seal. The utility decides what may be moved, and when.
caution-gas = If it may be gas: do not cut or drill near it, and do not turn any fitting; that is for the licensed trade. If you smell gas, light nothing and touch no switch, get everyone away, and from there call the gas company or the emergency number.
caution-water-line = Shut the line off and bleed it before you push or pull on the pipe. Changing the pipe is a plumber’s work where your code says so.
caution-refrigerant = Refrigerant is under pressure and freezes skin. Opening the lines is licensed work.
caution-lead = Treat old paint as lead until it is tested. United States, house from before 1978: above 20 sq ft outside in all, and for any demolition of painted parts or change of windows, a certified firm must do the work lead-safe. Elsewhere follow the lead rules of your country.
caution-nailer = Nailer: glasses on, nose on the board before the finger is on the trigger, free hand off the line of the nail; hose or battery off before you clear a jam. Nail into studs only: wires and pipes run between them.
caution-lifting = Two people to a long board, on edge, backs straight. Carried flat, it breaks; carried alone, it hurts your back.
caution-asbestos = Old siding may hold asbestos. Do not cut, break or sand it before it is tested; removing it is licensed work.
caution-wet-surface = Do not stick membrane or run sealant on a wet, dusty or frozen surface. Wait, dry it, or use what its label allows.
caution-label = Read the label: temperature, primer, drying time, gloves, fresh air, what it may touch.
