package lapwright.shell.parts

import androidx.compose.foundation.background
import androidx.compose.foundation.gestures.awaitEachGesture
import androidx.compose.foundation.gestures.awaitFirstDown
import androidx.compose.foundation.gestures.waitForUpOrCancellation
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.input.pointer.PointerEventPass
import androidx.compose.ui.input.pointer.PointerEventTimeoutCancellationException
import androidx.compose.ui.input.pointer.pointerInput
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.onClick
import androidx.compose.ui.semantics.role
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.dp
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes
import lapwright.shell.look.Target

/** How long a finger must rest: a drop that runs down the glass does not. */
const val HOLD_MS = 1_000L

/** While the glass is locked no touch comes through to what is under this; it can still be read, and read aloud. */
fun Modifier.deafWhile(locked: Boolean): Modifier = if (!locked) {
    this
} else {
    pointerInput(Unit) {
        awaitPointerEventScope {
            while (true) awaitPointerEvent(PointerEventPass.Initial).changes.forEach { it.consume() }
        }
    }
}

/** What unlocks the glass: a finger that rests on it. A screen reader's tap is no drop and does it at once. */
@Composable
fun HoldToUnlock(app: App) {
    val words = app.shown?.frame?.words ?: return
    val inks = LocalLook.current.inks
    Say(words.locked, size = Sizes.small)
    Row(
        Modifier.fillMaxWidth().heightIn(min = Target).background(inks.chalk).testTag("unlock")
            .semantics(mergeDescendants = true) {
                role = Role.Button
                onClick { app.lock(false); true }
            }
            .pointerInput(Unit) {
                awaitEachGesture {
                    awaitFirstDown()
                    try {
                        withTimeout(HOLD_MS) { waitForUpOrCancellation() }
                    } catch (_: PointerEventTimeoutCancellationException) {
                        app.lock(false)
                    }
                }
            }
            .padding(horizontal = 12.dp, vertical = 8.dp),
        Arrangement.spacedBy(8.dp, Alignment.CenterHorizontally),
        Alignment.CenterVertically,
    ) {
        Icon(Glyph.LOCK, inks.ground)
        Box(Modifier.weight(1f, fill = false)) {
            Say(words.unlock, size = Sizes.title, color = inks.ground, bold = true, align = TextAlign.Center)
        }
    }
}
