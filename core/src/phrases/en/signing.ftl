# Signing steps off.
signing-nothing-to-measure = Nothing is measured at this step: leave “{ $text }” out, or write it as a note.
signing-angle = “{ $text }” is no angle: give degrees from 0 to 90, such as 45 or 22.5.
signing-photo-not-here = There is no photo of that name on this phone: take one, or check it off without one.
signing-photo-not-whole = The photo is not whole, or is no JPEG: take it again.
signing-sheet = Sign-off sheet: { $house }
signing-sheet-made = Made { $when }
signing-sheet-inspected = Inspected by: ________________________   Date: ____________
