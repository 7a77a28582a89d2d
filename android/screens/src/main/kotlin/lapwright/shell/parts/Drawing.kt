package lapwright.shell.parts

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.gestures.detectTapGestures
import androidx.compose.foundation.gestures.detectTransformGestures
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.clipToBounds
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.drawscope.withTransform
import androidx.compose.ui.input.pointer.pointerInput
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.CustomAccessibilityAction
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.customActions
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.rememberTextMeasurer
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import lapwright.screens.Drawing
import lapwright.screens.Frame
import lapwright.screens.Subject
import lapwright.screens.Target
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes

/** How far a drawing was drawn nearer, and moved: transforms alone, the core is not asked. */
private data class Lens(val scale: Float = 1f, val shift: Offset = Offset.Zero)

/** This height, or as much more as large texts need for their rows. */
@Composable
fun Dp.withTexts(): Dp = this * LocalDensity.current.fontScale.coerceAtLeast(1f)

/**
 * The drawing of a subject, as wide as there is room: asked for when the subject, its revision or the frame changed.
 *
 * A tap leads to what was hit. `zooms` adds pinching, and two buttons for who cannot pinch in gloves.
 */
@Composable
fun Drawn(app: App, subject: Subject, revision: Long, most: Dp, zooms: Boolean = false) {
    val shown = app.shown ?: return
    val look = LocalLook.current
    val scale = LocalDensity.current.fontScale
    BoxWithConstraints(Modifier.fillMaxWidth()) {
        val frame = Frame(
            widthDp = maxWidth.value,
            heightDp = most.value,
            answerDp = Sizes.answerLeast.value * scale,
            labelDp = Sizes.body.value * scale,
            smallDp = Sizes.small.value * scale,
            leftHand = look.leftHanded,
        )
        var drawing by remember(subject) { mutableStateOf<Drawing?>(null) }
        LaunchedEffect(subject, revision, frame, shown.remembered) {
            app.read { book, context -> book.drawing(context, subject, frame) }?.let { drawing = it }
        }
        drawing?.let { Sheet(app, it, zooms) }
    }
}

/** How many times nearer a target must come for a finger to hit it and no other; once it is large enough it is not moved. */
fun nearerBy(target: Target, scale: Float): Float {
    val side = minOf(target.right - target.left, target.bottom - target.top) * scale
    return if (side < HIT || side.isNaN()) COMFORT / side.coerceAtLeast(1f) else 1f
}

/** The side in dp under which a target is brought nearer, and to which. */
private const val HIT = 40f
private const val COMFORT = 64f

@Composable
private fun Sheet(app: App, drawing: Drawing, zooms: Boolean) {
    val look = LocalLook.current
    val words = app.shown?.frame?.words ?: return
    val measurer = rememberTextMeasurer()
    val strokes = remember(drawing) { strokes(drawing.bytes, drawing.texts) }
    val pencil = remember(look, measurer) { Pencil(look.inks, look.font, measurer) }
    var lens by remember { mutableStateOf(Lens()) }
    val density = LocalDensity.current.density
    fun nearer(by: Float, at: Offset, moved: Offset = Offset.Zero) {
        val scale = (lens.scale * by).coerceIn(1f, 12f)
        val shift = if (scale == 1f) Offset.Zero else at - (at - lens.shift) * (scale / lens.scale) + moved
        lens = Lens(scale, shift)
    }
    fun tapped(at: Offset) {
        val (x, y) = (at - lens.shift) / (lens.scale * density)
        val hit = drawing.targets.firstOrNull { x in it.left..it.right && y in it.top..it.bottom } ?: return
        val by = nearerBy(hit, lens.scale).takeIf { zooms } ?: 1f
        if (by > 1f) nearer(by, at) else app.go(hit.place)
    }
    Column(Modifier.fillMaxWidth()) {
        var canvas = Modifier.fillMaxWidth().height(drawing.heightDp.dp).clipToBounds().testTag("drawing").semantics {
            contentDescription = drawing.spoken
            customActions = drawing.targets.map { target ->
                CustomAccessibilityAction(target.spoken) { app.go(target.place); true }
            }
        }
        if (zooms) canvas = canvas.pointerInput(drawing) { detectTransformGestures { at, pan, zoom, _ -> nearer(zoom, at, pan) } }
        if (drawing.targets.isNotEmpty()) canvas = canvas.pointerInput(drawing) { detectTapGestures(onTap = ::tapped) }
        Canvas(canvas) {
            withTransform({
                translate(lens.shift.x, lens.shift.y)
                scale(lens.scale, lens.scale, Offset.Zero)
            }) { with(pencil) { draw(strokes) } }
        }
        if (zooms) {
            val middle = Offset(drawing.widthDp, drawing.heightDp) * (density / 2)
            Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(8.dp), Alignment.CenterVertically) {
                GlyphButton(Glyph.CLOSER, words.zoomIn) { nearer(1.6f, middle) }
                GlyphButton(Glyph.FARTHER, words.zoomOut) { nearer(1 / 1.6f, middle) }
            }
        }
    }
}

private operator fun Offset.component1() = x

private operator fun Offset.component2() = y
