package lapwright.shell.parts

import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.PathEffect
import androidx.compose.ui.graphics.StrokeJoin
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.clipPath
import androidx.compose.ui.graphics.drawscope.rotate
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.drawText
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import lapwright.shell.look.Inks
import kotlin.math.ceil
import kotlin.math.floor
import kotlin.math.sqrt
import androidx.compose.ui.graphics.drawscope.Stroke as Pen

/** Draws strokes on a canvas: dp to pixels, roles to inks, and nothing else. */
class Pencil(private val inks: Inks, private val font: FontFamily, private val measurer: TextMeasurer) {
    fun DrawScope.draw(strokes: List<Stroke>) {
        for (stroke in strokes) {
            when (stroke) {
                is Stroke.Fill -> drawPath(path(stroke.points, closed = true), ink(stroke.role))
                is Stroke.Line -> line(stroke)
                is Stroke.Hatch -> hatch(stroke)
                is Stroke.Text -> text(stroke)
            }
        }
    }

    private fun DrawScope.line(line: Stroke.Line) {
        val dashes = when (line.pattern) {
            Pattern.SOLID -> null
            Pattern.DASHED -> floatArrayOf(8 * density, 5 * density)
            Pattern.DOTTED -> floatArrayOf(2 * density, 3 * density)
        }
        val pen = Pen(
            line.thickness * density,
            join = StrokeJoin.Miter,
            pathEffect = dashes?.let { PathEffect.dashPathEffect(it) },
        )
        drawPath(path(line.points, line.closed), ink(line.role), style = pen)
    }

    private fun DrawScope.hatch(hatch: Stroke.Hatch) {
        val (xs, ys) = hatch.points.chunked(2).let { points -> points.map { it[0] } to points.map { it[1] } }
        if (xs.isEmpty()) return
        val sums = xs.zip(ys) { x, y -> x + y }
        val step = hatch.spacing * sqrt(2f)
        clipPath(path(hatch.points, closed = true)) {
            for (n in ceil(sums.min() / step).toInt()..floor(sums.max() / step).toInt()) {
                val (from, to) = Offset(xs.min(), n * step - xs.min()) to Offset(xs.max(), n * step - xs.max())
                drawLine(ink(hatch.role), from * density, to * density, hatch.thickness * density)
            }
        }
    }

    private fun DrawScope.text(text: Stroke.Text) {
        val style = TextStyle(
            color = ink(text.role),
            fontFamily = font,
            fontSize = (text.em * density).toSp(),
            fontWeight = if (text.bold) FontWeight.Bold else FontWeight.Normal,
            fontFeatureSettings = PLAIN,
        )
        val laidOut = measurer.measure(text.text, style, softWrap = false)
        val shift = when (text.anchor) {
            Anchor.START -> 0f
            Anchor.MIDDLE -> laidOut.size.width / 2f
            Anchor.END -> laidOut.size.width.toFloat()
        }
        val at = Offset(text.x, text.y) * density
        rotate(-text.turn, at) { drawText(laidOut, topLeft = Offset(at.x - shift, at.y - laidOut.firstBaseline)) }
    }

    private fun DrawScope.path(points: List<Float>, closed: Boolean) = Path().apply {
        for ((n, point) in points.chunked(2).withIndex()) {
            if (n == 0) moveTo(point[0] * density, point[1] * density) else lineTo(point[0] * density, point[1] * density)
        }
        if (closed) close()
    }

    private fun ink(role: Role): Color = when (role) {
        Role.GROUND -> inks.ground
        Role.BOARD -> inks.board
        Role.INK, Role.CUT, Role.TAPED -> inks.ink
        Role.CHALK -> inks.chalk
        Role.WARNING -> inks.warning
        Role.DONE -> inks.done
        Role.PLANNED -> inks.planned
        Role.RULED -> inks.rule
    }

    private companion object {
        const val PLAIN = "\"kern\" 0, \"liga\" 0"
    }
}
