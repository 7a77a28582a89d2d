package lapwright.shell.parts

import androidx.compose.foundation.BorderStroke
import androidx.compose.foundation.background
import androidx.compose.foundation.border
import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.RowScope
import androidx.compose.foundation.layout.defaultMinSize
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.sizeIn
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.clip
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.dp
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
        val size = if (text.length > LONG) Sizes.small else Sizes.title
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

/** A control that is a glyph alone; a screen reader says its name. */
@Composable
fun GlyphButton(glyph: Glyph, name: String, modifier: Modifier = Modifier, onTap: () -> Unit) {
    Box(
        modifier.sizeIn(minWidth = Target, minHeight = Target).clip(corner).clickable(role = Role.Button, onClick = onTap)
            .semantics { contentDescription = name },
        Alignment.Center,
    ) { Icon(glyph, LocalLook.current.inks.ink) }
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
