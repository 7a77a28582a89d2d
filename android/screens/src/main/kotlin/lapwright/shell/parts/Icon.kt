package lapwright.shell.parts

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.size
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp

/** Glyphs that are drawn with a few strokes of a pencil; each stands in a control that says its name. */
enum class Glyph {
    BACK,
    DONE_LIST,
    RUB_OUT,
    CLOSE,
    REMOVE,
    SPEAK,
    LISTEN,
    GEAR,
    TICK,
    STOP,
    WARNING,
    KNOW,
    CAMERA,
    LOCK,
    CLOSER,
    FARTHER,
    FLIP,
    UNDO,
    UNFOLD,
    FOLD,
    SHARE,
    SPACE,
}

/** A glyph in an ink. */
@Composable
fun Icon(glyph: Glyph, color: Color, size: Dp = 28.dp) {
    Canvas(Modifier.size(size)) { draw(glyph, color) }
}

private fun DrawScope.draw(glyph: Glyph, color: Color) {
    val pen = 2.6.dp.toPx()
    fun at(x: Int, y: Int) = Offset(size.width * x / 24f, size.height * y / 24f)
    fun line(vararg points: Pair<Int, Int>) = points.toList().zipWithNext { (x, y), (nextX, nextY) ->
        drawLine(color, at(x, y), at(nextX, nextY), pen, StrokeCap.Round)
    }
    fun ring(x: Int, y: Int, radius: Int) =
        drawCircle(color, size.width * radius / 24f, at(x, y), style = androidx.compose.ui.graphics.drawscope.Stroke(pen))
    when (glyph) {
        Glyph.BACK -> { line(21 to 12, 4 to 12); line(11 to 5, 4 to 12, 11 to 19) }
        // A clock: steps have ticks of their own.
        Glyph.DONE_LIST -> { ring(12, 12, 9); line(12 to 6, 12 to 12, 16 to 14) }
        Glyph.RUB_OUT -> {
            line(2 to 12, 8 to 5, 22 to 5, 22 to 19, 8 to 19, 2 to 12)
            line(11 to 9, 17 to 15); line(17 to 9, 11 to 15)
        }
        Glyph.CLOSE -> { line(5 to 5, 19 to 19); line(19 to 5, 5 to 19) }
        Glyph.REMOVE -> { line(4 to 7, 20 to 7); line(9 to 7, 9 to 4, 15 to 4, 15 to 7); line(6 to 7, 7 to 21, 17 to 21, 18 to 7) }
        Glyph.LISTEN -> {
            line(9 to 5, 9 to 12, 12 to 14, 15 to 12, 15 to 5, 12 to 3, 9 to 5)
            line(5 to 11, 7 to 16, 12 to 18, 17 to 16, 19 to 11); line(12 to 18, 12 to 22)
        }
        Glyph.SPEAK -> {
            line(3 to 9, 7 to 9, 12 to 4, 12 to 20, 7 to 15, 3 to 15, 3 to 9)
            line(16 to 9, 17 to 12, 16 to 15); line(19 to 6, 21 to 12, 19 to 18)
        }
        Glyph.GEAR -> {
            for ((y, x) in listOf(6 to 8, 12 to 16, 18 to 10)) { line(2 to y, 22 to y); ring(x, y, 2) }
        }
        Glyph.TICK -> line(4 to 13, 10 to 19, 20 to 5)
        Glyph.STOP -> {
            line(8 to 2, 16 to 2, 22 to 8, 22 to 16, 16 to 22, 8 to 22, 2 to 16, 2 to 8, 8 to 2)
            line(12 to 7, 12 to 13); line(12 to 17, 12 to 17)
        }
        Glyph.KNOW -> { ring(12, 12, 9); line(12 to 11, 12 to 17); line(12 to 7, 12 to 7) }
        Glyph.UNDO -> { line(8 to 4, 3 to 9, 8 to 14); line(3 to 9, 15 to 9, 20 to 13, 20 to 17, 16 to 20, 10 to 20) }
        Glyph.UNFOLD -> line(5 to 9, 12 to 16, 19 to 9)
        Glyph.FOLD -> line(5 to 15, 12 to 8, 19 to 15)
        Glyph.SHARE -> { line(12 to 15, 12 to 3); line(7 to 8, 12 to 3, 17 to 8); line(5 to 12, 5 to 21, 19 to 21, 19 to 12) }
        Glyph.WARNING -> { line(12 to 3, 22 to 21, 2 to 21, 12 to 3); line(12 to 10, 12 to 14); line(12 to 18, 12 to 18) }
        Glyph.CAMERA -> {
            line(2 to 7, 7 to 7, 9 to 4, 15 to 4, 17 to 7, 22 to 7, 22 to 20, 2 to 20, 2 to 7); ring(12, 13, 4)
        }
        Glyph.LOCK -> { line(5 to 11, 19 to 11, 19 to 21, 5 to 21, 5 to 11); line(8 to 11, 8 to 6, 10 to 3, 14 to 3, 16 to 6, 16 to 11) }
        Glyph.CLOSER -> { line(4 to 12, 20 to 12); line(12 to 4, 12 to 20) }
        Glyph.FARTHER -> line(4 to 12, 20 to 12)
        Glyph.FLIP -> { line(3 to 8, 20 to 8); line(15 to 3, 20 to 8); line(21 to 16, 4 to 16); line(9 to 21, 4 to 16) }
        Glyph.SPACE -> line(3 to 14, 3 to 19, 21 to 19, 21 to 14)
    }
}
