package lapwright.shell.parts

import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.text.SpanStyle
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.buildAnnotatedString
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.rememberTextMeasurer
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.text.withStyle
import androidx.compose.ui.unit.TextUnit
import androidx.compose.ui.unit.em
import androidx.compose.ui.unit.sp
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes

/** A text in the one face, with digits that stand under each other. */
@Composable
fun Say(
    text: String,
    modifier: Modifier = Modifier,
    size: TextUnit = Sizes.body,
    color: Color = LocalLook.current.inks.ink,
    bold: Boolean = false,
    align: TextAlign = TextAlign.Start,
) {
    Text(text, modifier, color = color, style = face(size, bold), textAlign = align)
}

/** The face at a size. */
@Composable
fun face(size: TextUnit, bold: Boolean = false): TextStyle = TextStyle(
    fontFamily = LocalLook.current.font,
    fontSize = size,
    lineHeight = 1.25.em,
    fontWeight = if (bold) FontWeight.Bold else FontWeight.Normal,
    fontFeatureSettings = "\"tnum\"",
)

/**
 * A size that grows with the phone's texts so many times at most: of what must stay in sight as a whole where texts are at
 * 200 %, a question over its keys or a step over its caution.
 */
@Composable
fun TextUnit.atMost(times: Float): TextUnit {
    val scale = LocalDensity.current.fontScale
    return (value * minOf(scale, times) / scale).sp
}

/**
 * A number to read at arm's length, with its unit half as large: as large as its width allows, so that it stays on one
 * line where texts are large already, and never under 44 dp.
 */
@Composable
fun Answer(
    text: String,
    unit: String,
    modifier: Modifier = Modifier,
    color: Color = LocalLook.current.inks.ink,
    most: TextUnit = Sizes.answerMost,
) {
    BoxWithConstraints(modifier.fillMaxWidth()) {
        val measurer = rememberTextMeasurer()
        val density = LocalDensity.current
        val style = face(most, bold = true)
        val size = remember(text, unit, constraints.maxWidth, density, style) {
            val width = measurer.measure(withUnit(text, unit), style, softWrap = false).size.width
            val fits = most.value * constraints.maxWidth / width.coerceAtLeast(1)
            fits.coerceIn(minOf(Sizes.answerLeast.value / density.fontScale, most.value), most.value).sp
        }
        Text(withUnit(text, unit), color = color, style = style.copy(fontSize = size, lineHeight = 1.1.em))
    }
}

private fun withUnit(text: String, unit: String) = buildAnnotatedString {
    append(text)
    if (unit.isNotEmpty()) withStyle(SpanStyle(fontSize = 0.5.em)) { append(" $unit") }
}
