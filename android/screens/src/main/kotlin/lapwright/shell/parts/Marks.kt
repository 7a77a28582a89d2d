package lapwright.shell.parts

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.padding
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.rememberTextMeasurer
import androidx.compose.ui.unit.TextUnit
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.em
import androidx.compose.ui.unit.sp
import lapwright.screens.MarksView
import lapwright.screens.Reading
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes

/** The marks to transfer to one side of a board, to be read from where the saw stands. */
@Composable
fun Marks(app: App, marks: MarksView) {
    val words = app.shown?.frame?.words ?: return
    Column(Modifier.fillMaxWidth()) {
        Mark(words.fromLeft, marks.uprights)
        for (level in marks.levels) {
            val label = if (level.from == "top") words.fromTop else words.fromBottom
            Mark(label, if (level.left.text == level.right.text) listOf(level.left) else listOf(level.left, level.right))
        }
    }
}

/** What is measured along one edge: its name, and the numbers in one row where they have room. */
@Composable
private fun Mark(label: String, readings: List<Reading>) {
    Say(label, size = Sizes.small)
    BoxWithConstraints(Modifier.fillMaxWidth()) {
        val measurer = rememberTextMeasurer()
        val density = LocalDensity.current
        // Never under 44 dp, and no larger where texts are large already than its line allows.
        val least: TextUnit = (Sizes.answerLeast.value / density.fontScale).sp
        val style = face(Sizes.answerLeast, bold = true).copy(lineHeight = 1.1.em)
        val fits = remember(readings, constraints.maxWidth, density, style) {
            fun wide(size: TextUnit) = readings.map { measurer.measure(it.text, style.copy(fontSize = size), softWrap = false).size.width }
            val room = constraints.maxWidth - with(density) { 24.dp.toPx() } * (readings.size - 1)
            val whole = wide(Sizes.answerLeast)
            when {
                whole.sum() <= room -> Sizes.answerLeast to true
                whole.max() <= constraints.maxWidth -> Sizes.answerLeast to false
                else -> least to (wide(least).sum() <= room)
            }
        }
        val (size, inRow) = fits
        val mark: @Composable (Reading) -> Unit = { reading ->
            Text(
                reading.text,
                Modifier.testTag("mark").semantics { contentDescription = "$label: ${reading.spoken}" },
                color = LocalLook.current.inks.chalk,
                style = style.copy(fontSize = size),
            )
        }
        if (inRow) {
            Row(Modifier.padding(bottom = 2.dp), Arrangement.spacedBy(24.dp)) { for (reading in readings) mark(reading) }
        } else {
            Column { for (reading in readings) mark(reading) }
        }
    }
}
