package lapwright.shell.look

import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.darkColorScheme
import androidx.compose.material3.lightColorScheme
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.Immutable
import androidx.compose.runtime.staticCompositionLocalOf
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.sp

/** The few colours, each by what it stands for; none stands without a pattern, a word or a letter. */
@Immutable
data class Inks(
    val ground: Color,
    val board: Color,
    val ink: Color,
    val chalk: Color,
    val warning: Color,
    val done: Color,
    val planned: Color,
    val rule: Color,
)

/** For the sun: dark on pale. */
val Sun = Inks(
    ground = Color(0xFFFAF8F3),
    board = Color(0xFFE9E4D8),
    ink = Color(0xFF161A1D),
    chalk = Color(0xFF0A4A86),
    warning = Color(0xFF8A2B0E),
    done = Color(0xFF1F5A33),
    planned = Color(0xFF4A5157),
    rule = Color(0xFF6B4A00),
)

/** For indoors and the evening. */
val Indoors = Inks(
    ground = Color(0xFF15191C),
    board = Color(0xFF262C31),
    ink = Color(0xFFF1EEE6),
    chalk = Color(0xFF9CC7F2),
    warning = Color(0xFFFFB199),
    done = Color(0xFFA6DDB4),
    planned = Color(0xFFB9C0C5),
    rule = Color(0xFFF2CE7B),
)

/** Sizes of text; nothing is smaller than the last. */
object Sizes {
    val answerLeast = 44.sp
    val length = 28.sp
    val answerMost = 72.sp
    val key = 26.sp
    val gloveKey = 36.sp
    val title = 22.sp
    val body = 18.sp
    val small = 16.sp
}

/** The least side of anything that is tapped. */
val Target: Dp = 64.dp

/** The side of a key for gloves: 18 mm at 160 dp to the inch. */
val GloveKey: Dp = 113.4.dp

/** How the screens look and lie on this phone. */
@Immutable
data class Look(val inks: Inks, val font: FontFamily, val leftHanded: Boolean, val gloves: Boolean)

val LocalLook = staticCompositionLocalOf<Look> { error("a screen stands outside of the look") }

/** Draws what is inside in a look. */
@Composable
fun InLook(look: Look, content: @Composable () -> Unit) {
    val inks = look.inks
    val colors = (if (inks == Indoors) darkColorScheme() else lightColorScheme()).copy(
        primary = inks.chalk,
        onPrimary = inks.ground,
        background = inks.ground,
        onBackground = inks.ink,
        surface = inks.ground,
        onSurface = inks.ink,
        surfaceVariant = inks.board,
        onSurfaceVariant = inks.ink,
        error = inks.warning,
        onError = inks.ground,
        outline = inks.ink,
    )
    CompositionLocalProvider(LocalLook provides look) {
        MaterialTheme(colorScheme = colors, content = content)
    }
}
