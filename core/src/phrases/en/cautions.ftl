# Cautions, shown at the step where they matter.
caution-who-decides = Local code and licensed trades decide. This program informs; it replaces neither.
caution-silica = Cutting fiber cement makes silica dust that ruins lungs. Cut outdoors, downwind of others, with shears or a saw that collects its dust; wear a respirator where your rules ask for one. Never dry-sweep.
caution-saw = Guard on, glasses and hearing protection on, board held down. Unplug the saw or pull the battery before you touch the blade.
caution-ladder = Ladder base out a quarter of its working length, rails 3 ft above a landing, on firm ground. Keep three points of contact; a scaffold is better for two hands.
caution-power-line = Keep yourself, the ladder and the boards at least 10 ft from power lines. If in doubt, call the utility.
caution-electricity = Dead and tested before anyone touches it. Opening, moving or connecting a box or a cable is licensed work.
caution-meter = Never break a meter’s seal. The utility decides what may be moved, and when.
caution-gas = If it may be gas: no cutting, drilling or turning near it without the licensed trade. If you smell gas, get everyone away and call from there.
caution-water-line = Shut the line off and relieve it before you load it. Changing the pipe is a plumber’s work where your code says so.
caution-refrigerant = Refrigerant is under pressure and freezes skin. Opening the lines is licensed work.
caution-lead = House from before 1978: treat the paint as lead until it is tested. Above 20 sq ft outside in all, the lead-safe work rule applies.
caution-asbestos = Old siding may hold asbestos. Do not cut, break or sand it before it is tested; removing it is licensed work.
caution-wet-surface = Do not stick membrane or run sealant on a wet, dusty or frozen surface. Wait, dry it, or use what its label allows.
caution-label = Read the label: temperature, primer, drying time, gloves, fresh air, what it may touch.
