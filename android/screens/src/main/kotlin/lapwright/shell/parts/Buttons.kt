package lapwright.shell.parts

import androidx.compose.foundation.BorderStroke
import androidx.compose.foundation.background
import androidx.compose.foundation.border
import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.RowScope
import androidx.compose.foundation.layout.defaultMinSize
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.sizeIn
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.clip
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.clearAndSetSemantics
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.dp
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes
import lapwright.shell.look.Target

private val corner = RoundedCornerShape(6.dp)

/** The one next action of a screen; a long one is written smaller. */
@Composable
fun NextAction(text: String, modifier: Modifier = Modifier, glyph: Glyph? = null, onTap: () -> Unit) {
    val inks = LocalLook.current.inks
    Row(
        modifier.sizeIn(minWidth = Target, minHeight = Target).clip(corner).background(inks.chalk)
            .clickable(role = Role.Button, onClick = onTap)
            .padding(horizontal = 12.dp, vertical = 8.dp),
        Arrangement.spacedBy(8.dp, Alignment.CenterHorizontally),
        Alignment.CenterVertically,
    ) {
        if (glyph != null) Icon(glyph, inks.ground)
        // The step that it signs stands over it in full size.
        val size = if (text.length > LONG) Sizes.small.atMost(1.4f) else Sizes.title
        Say(text, size = size, color = inks.ground, bold = true, align = TextAlign.Center)
    }
}

private const val LONG = 24

/** An action beside the next one. */
@Composable
fun OtherAction(text: String, modifier: Modifier = Modifier, glyph: Glyph? = null, onTap: () -> Unit) {
    val inks = LocalLook.current.inks
    Row(
        modifier.heightIn(min = Target).clip(corner).border(BorderStroke(1.5.dp, inks.ink), corner)
            .clickable(role = Role.Button, onClick = onTap).padding(horizontal = 12.dp, vertical = 8.dp),
        Arrangement.spacedBy(10.dp, Alignment.CenterHorizontally),
        Alignment.CenterVertically,
    ) {
        if (glyph != null) Icon(glyph, inks.ink)
        Say(text, align = TextAlign.Center)
    }
}

/** A control that is a sign with its name under it; a screen reader says the longer `spoken`. */
@Composable
fun GlyphButton(glyph: Glyph, name: String, modifier: Modifier = Modifier, spoken: String = name, onTap: () -> Unit) {
    val inks = LocalLook.current.inks
    Column(
        modifier.sizeIn(minWidth = Target, minHeight = Target).clip(corner).clickable(role = Role.Button, onClick = onTap)
            .semantics { contentDescription = spoken }.padding(horizontal = 4.dp, vertical = 4.dp),
        Arrangement.spacedBy(2.dp, Alignment.CenterVertically),
        Alignment.CenterHorizontally,
    ) {
        Icon(glyph, inks.ink)
        // The name is said once: by the control.
        Box(Modifier.clearAndSetSemantics {}) { SignName(name) }
    }
}

/** The name under a sign: as small as the room for signs needs where texts are large, and never under 16 dp. */
@Composable
private fun SignName(name: String) {
    Say(name, size = Sizes.small.atMost(1.4f), align = TextAlign.Center)
}

/** A heading that opens and closes what is under it, by its `tag`, until another screen is shown. */
@Composable
fun Fold(app: App, title: String, tag: String, content: @Composable ColumnScope.() -> Unit) {
    val open = tag in app.unfolded
    val inks = LocalLook.current.inks
    Row(
        Modifier.fillMaxWidth().defaultMinSize(minHeight = Target).clip(corner).border(1.dp, inks.planned, corner)
            .clickable(role = Role.Button) { app.unfold(tag) }.testTag("fold $tag").padding(horizontal = 12.dp, vertical = 8.dp),
        Arrangement.spacedBy(10.dp),
        Alignment.CenterVertically,
    ) {
        Say(title, Modifier.weight(1f), bold = true)
        Icon(if (open) Glyph.FOLD else Glyph.UNFOLD, inks.ink)
    }
    if (open) Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(6.dp), content = content)
}

/** How much of something is done: a bar with its words over it. */
@Composable
fun Bar(said: String, done: UInt, all: UInt) {
    val inks = LocalLook.current.inks
    Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp)) {
        if (said.isNotEmpty()) Say(said, bold = true)
        Box(Modifier.fillMaxWidth().height(14.dp).border(1.5.dp, inks.ink)) {
            val share = if (all == 0u) 0f else done.toFloat() / all.toFloat()
            Box(Modifier.fillMaxWidth(share).fillMaxHeight().background(inks.done))
        }
    }
}

/** A line of a list that leads somewhere. */
@Composable
fun Line(onTap: () -> Unit, modifier: Modifier = Modifier, content: @Composable RowScope.() -> Unit) {
    val inks = LocalLook.current.inks
    Row(
        modifier.fillMaxWidth().defaultMinSize(minHeight = Target).clip(corner).background(inks.board)
            .clickable(role = Role.Button, onClick = onTap).padding(horizontal = 12.dp, vertical = 8.dp),
        Arrangement.spacedBy(10.dp),
        Alignment.CenterVertically,
        content,
    )
}

/** A line with a name and what is said of it. */
@Composable
fun Line(name: String, said: String, onTap: () -> Unit) = Line(onTap) {
    Column(Modifier.weight(1f)) {
        Say(name, bold = true)
        if (said.isNotEmpty()) Say(said, size = Sizes.small)
    }
}

/** A heading over a group of lines. */
@Composable
fun Heading(text: String) = Say(text, Modifier.padding(top = 10.dp, bottom = 2.dp), size = Sizes.small, bold = true)
