package lapwright.shell.parts

import androidx.compose.foundation.background
import androidx.compose.foundation.border
import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.clip
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import lapwright.screens.FrameView
import lapwright.shell.look.GloveKey
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes
import lapwright.shell.look.Target
import lapwright.shell.rubbedOut
import lapwright.shell.withMark

private val corner = RoundedCornerShape(6.dp)

/** What a question, its number, the tape and the corner take of the glass. */
private val QUESTION = 320.dp

/** Three rows of digits, and what else a length is written with. */
private val bare = listOf(listOf("1", "2", "3", "'"), listOf("4", "5", "6", "."), listOf("7", "8", "9", "-"))

/** The drawn piece of tape, on which the fraction of a length is tapped. */
@Composable
fun Fractions(frame: FrameView, text: String, onEdit: ((String) -> String) -> Unit) {
    val last = text.substringAfterLast(' ')
    val tapped = frame.tape.lastOrNull { last.endsWith(it.text) }?.text.orEmpty()
    Tape(frame.tape, tapped, frame.words.tape) { mark -> onEdit { withMark(it, mark.text) } }
}

/**
 * The keys for a length or a number, `signed` where it is written with more than digits: three columns of 18 mm keys in gloves,
 * else four of at least 64 dp. In gloves the signs and the rubber lie on a second page. `beside` is the height of what stands
 * over or under them.
 */
@Composable
fun Keypad(
    frame: FrameView,
    signed: Boolean,
    onEdit: ((String) -> String) -> Unit,
    onAccept: () -> Unit,
    beside: Dp = QUESTION,
) {
    val gloves = LocalLook.current.gloves
    val words = frame.words
    // On a small phone the keys for gloves leave room for the question.
    val side = if (gloves) ((LocalRoom.current - beside) / 4).coerceIn(Target, GloveKey) else Target
    val gap = if (gloves) 1.5.dp else 6.dp
    val paged = gloves && signed
    var signs by remember(paged) { mutableStateOf(false) }
    Column(Modifier.fillMaxWidth().testTag("keypad"), Arrangement.spacedBy(gap)) {
        if (signs) {
            // A sign is followed by digits, so their page comes back by itself.
            KeyRow(side, gap) { for (key in bare.map { it.last() }) Key(key, side) { onEdit { it + key }; signs = false } }
            KeyRow(side, gap) {
                GlyphKey(Glyph.SPACE, words.space, side) { onEdit { "$it " }; signs = false }
                GlyphKey(Glyph.RUB_OUT, words.rubOut, side) { onEdit(::rubbedOut) }
            }
        } else {
            for (row in bare) {
                KeyRow(side, gap) {
                    for (key in if (gloves || !signed) row.take(3) else row) Key(key, side) { onEdit { it + key } }
                }
            }
        }
        KeyRow(side, gap) {
            if (paged) {
                PageKey(if (signs) "123" else "'.-", words.more, side) { signs = !signs }
            } else {
                GlyphKey(Glyph.RUB_OUT, words.rubOut, side) { onEdit(::rubbedOut) }
            }
            Key("0", side) { onEdit { it + "0" }; signs = false }
            if (!gloves && signed) GlyphKey(Glyph.SPACE, words.space, side) { onEdit { "$it " } }
            AcceptKey(words.accept, side, onAccept)
        }
    }
}

@Composable
private fun KeyRow(side: Dp, gap: Dp, keys: @Composable KeyRowScope.() -> Unit) {
    Row(Modifier.fillMaxWidth().height(side), Arrangement.spacedBy(gap)) {
        val row = this
        KeyRowScope { weight -> with(row) { Modifier.weight(weight) } }.keys()
    }
}

@Composable
private fun keySize() = if (LocalLook.current.gloves) Sizes.gloveKey else Sizes.key

private fun interface KeyRowScope {
    fun weight(weight: Float): Modifier
}

@Composable
private fun KeyRowScope.Key(text: String, side: Dp, onTap: () -> Unit) {
    val inks = LocalLook.current.inks
    Box(
        weight(1f).height(side).clip(corner).background(inks.board).border(1.dp, inks.planned, corner)
            .clickable(role = Role.Button, onClick = onTap).testTag("key $text"),
        Alignment.Center,
    ) { Say(text, size = keySize(), bold = true) }
}

/** Turns to the other page of keys; it shows what lies there. */
@Composable
private fun KeyRowScope.PageKey(shows: String, name: String, side: Dp, onTap: () -> Unit) {
    val inks = LocalLook.current.inks
    Box(
        weight(1f).height(side).clip(corner).border(1.dp, inks.planned, corner)
            .clickable(role = Role.Button, onClick = onTap).testTag("page").semantics { contentDescription = name },
        Alignment.Center,
    ) { Say(shows, size = Sizes.key, bold = true) }
}

@Composable
private fun KeyRowScope.GlyphKey(glyph: Glyph, name: String, side: Dp, onTap: () -> Unit) {
    val inks = LocalLook.current.inks
    Box(
        weight(1f).height(side).clip(corner).background(inks.board).border(1.dp, inks.planned, corner)
            .clickable(role = Role.Button, onClick = onTap).semantics { contentDescription = name },
        Alignment.Center,
    ) { Icon(glyph, inks.ink) }
}

@Composable
private fun KeyRowScope.AcceptKey(text: String, side: Dp, onTap: () -> Unit) {
    val inks = LocalLook.current.inks
    Box(
        weight(1f).height(side).clip(corner).background(inks.chalk).clickable(role = Role.Button, onClick = onTap)
            .testTag("accept"),
        Alignment.Center,
    ) { Say(text, size = keySize(), color = inks.ground, bold = true) }
}
