package lapwright.shell.parts

import androidx.compose.foundation.border
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.padding
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import lapwright.screens.Note
import lapwright.screens.NoteLevel
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes

/** What needs attention, the worst first: a stop is boxed, a check has a triangle, what is good to know is grey with an i. */
@Composable
fun Notes(notes: List<Note>) {
    if (notes.isEmpty()) return
    Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(6.dp)) {
        for (note in notes) {
            when (note.level) {
                NoteLevel.STOP -> Stop(note.text)
                NoteLevel.CHECK -> Warning(note.text)
                NoteLevel.KNOW -> Know(note.text)
            }
        }
    }
}

/** Whoever goes on does harm. */
@Composable
fun Stop(text: String, modifier: Modifier = Modifier) {
    val inks = LocalLook.current.inks
    Row(modifier.fillMaxWidth().border(2.5.dp, inks.warning).padding(8.dp), Arrangement.spacedBy(8.dp)) {
        Icon(Glyph.STOP, inks.warning, 24.dp)
        Say(text, Modifier.weight(1f), color = inks.warning, bold = true)
    }
}

/** Good to know: nothing is wrong. */
@Composable
fun Know(text: String, modifier: Modifier = Modifier) {
    val inks = LocalLook.current.inks
    Row(modifier.fillMaxWidth().padding(vertical = 2.dp), Arrangement.spacedBy(8.dp)) {
        Icon(Glyph.KNOW, inks.planned, 24.dp)
        Say(text, Modifier.weight(1f), size = Sizes.small, color = inks.planned)
    }
}

/** One thing that needs attention. */
@Composable
fun Warning(text: String, modifier: Modifier = Modifier) {
    val inks = LocalLook.current.inks
    Row(modifier.fillMaxWidth().padding(vertical = 2.dp), Arrangement.spacedBy(8.dp)) {
        Icon(Glyph.WARNING, inks.warning, 24.dp)
        Say(text, Modifier.weight(1f), color = inks.warning)
    }
}

/** Why the last tap did nothing; a screen reader says it at once. */
@Composable
fun TroublePanel(text: String) {
    val inks = LocalLook.current.inks
    Warning(
        text,
        Modifier.border(1.5.dp, inks.warning).padding(6.dp).semantics { liveRegion = LiveRegionMode.Assertive },
    )
}

/** A caution at the step where it matters. */
@Composable
fun CautionPanel(heading: String, cautions: List<Note>) {
    if (cautions.isEmpty()) return
    val inks = LocalLook.current.inks
    Column(Modifier.fillMaxWidth().border(1.5.dp, inks.warning).padding(8.dp), Arrangement.spacedBy(6.dp)) {
        Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(8.dp)) {
            Icon(Glyph.WARNING, inks.warning, 24.dp)
            Say(heading, color = inks.warning, bold = true)
        }
        for (caution in cautions) Say(caution.text)
    }
}
