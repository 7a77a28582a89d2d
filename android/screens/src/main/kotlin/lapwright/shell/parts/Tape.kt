package lapwright.shell.parts

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.gestures.detectTapGestures
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.runtime.Composable
import androidx.compose.runtime.rememberUpdatedState
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.clipToBounds
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.input.pointer.pointerInput
import androidx.compose.ui.semantics.CustomAccessibilityAction
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.customActions
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.drawText
import androidx.compose.ui.text.rememberTextMeasurer
import androidx.compose.ui.unit.dp
import lapwright.screens.TapeMark
import lapwright.shell.look.Inks
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes
import lapwright.shell.look.Target
import kotlin.math.abs

/** One inch of tape, drawn large: a tap takes the nearest mark. */
@Composable
fun Tape(marks: List<TapeMark>, tapped: String, name: String, onTap: (TapeMark) -> Unit) {
    val inks = LocalLook.current.inks
    val measurer = rememberTextMeasurer()
    val style = face(Sizes.small, bold = true)
    val tap = rememberUpdatedState(onTap)
    BoxWithConstraints(Modifier.fillMaxWidth()) {
        Canvas(
            Modifier.fillMaxWidth().height(Target + 8.dp).clipToBounds()
                .pointerInput(marks) {
                    detectTapGestures { at ->
                        marks.minByOrNull { abs(across(it, size.width.toFloat()) - at.x) }?.let { tap.value(it) }
                    }
                }
                .semantics {
                    contentDescription = name
                    customActions = marks.map { mark ->
                        CustomAccessibilityAction(mark.spoken) { tap.value(mark); true }
                    }
                },
        ) { draw(marks, tapped, inks, measurer, style) }
    }
}

private fun across(mark: TapeMark, width: Float): Float = width * mark.at.toInt() / 1000f

private fun DrawScope.draw(marks: List<TapeMark>, tapped: String, inks: Inks, measurer: TextMeasurer, style: TextStyle) {
    drawRect(inks.board)
    val pen = 2.dp.toPx()
    drawLine(inks.ink, Offset(0f, 0f), Offset(size.width, 0f), pen)
    for (mark in marks) {
        val x = across(mark, size.width)
        val long = size.height * 0.55f * mark.long.toInt() / 1000f
        val own = mark.text == tapped
        drawLine(if (own) inks.chalk else inks.ink, Offset(x, 0f), Offset(x, if (own) size.height else long), if (own) 2.5f * pen else pen)
    }
    // Only the marks that a tape numbers, and the one that was tapped, where they have room.
    val named = marks.filter { it.text == tapped } + marks.filter { it.long.toInt() >= 750 && it.text != tapped }
    var taken = listOf<ClosedFloatingPointRange<Float>>()
    for (mark in named) {
        val own = mark.text == tapped
        val text = measurer.measure(mark.text, style.copy(color = if (own) inks.ground else inks.ink), softWrap = false)
        val (width, height) = text.size.width.toFloat() to text.size.height.toFloat()
        val left = (across(mark, size.width) - width / 2).coerceIn(4f, (size.width - width - 4f).coerceAtLeast(4f))
        if (taken.any { left - 8f < it.endInclusive && it.start < left + width + 8f }) continue
        taken = taken + listOf(left..left + width)
        val top = size.height - height - 2f
        if (own) drawRect(inks.chalk, Offset(left - 6f, top), Size(width + 12f, height))
        drawText(text, topLeft = Offset(left, top))
    }
}
