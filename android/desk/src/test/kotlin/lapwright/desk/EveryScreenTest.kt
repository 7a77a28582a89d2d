package lapwright.desk

import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.foundation.layout.requiredSize
import androidx.compose.foundation.layout.Box
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.onRoot
import androidx.compose.ui.test.runComposeUiTest
import androidx.compose.ui.text.TextLayoutResult
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.dp
import java.awt.image.BufferedImage
import java.io.ByteArrayInputStream
import javax.imageio.ImageIO
import kotlin.math.pow
import lapwright.shell.Screens
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test

/** The reference phone: 360 x 800 dp, one pixel to the dp. */
private const val WIDTH = 360
private const val HEIGHT = 800
private val MANNERS = listOf(
    Manner("en", "light", "right", 1f),
    Manner("es", "dark", "left", 1f),
    Manner("en", "dark", "left", 2f),
    Manner("es", "light", "right", 2f),
    Manner("en", "light", "right", 1f, gloves = true),
)

/** What holds for every screen in both languages, at 100 % and at 200 %. */
@OptIn(ExperimentalTestApi::class)
class EveryScreenTest {
    @Test
    fun everyTargetIsLargeEnoughAndLabelled() = everywhere { where, nodes ->
        for (node in nodes.filter { it.config.contains(SemanticsActions.OnClick) }) {
            val least = if (node.isKey() && where.endsWith("gloves")) 113 else 64
            val (width, height) = node.size.width to node.size.height
            // A text field is as high as its frame round it, which is drawn by its decoration.
            assertTrue("$where: ${node.says()} is $width x $height dp", width >= least - 1 && height >= least - 1)
        }
        for (node in nodes.filter { it.config.contains(SemanticsActions.OnClick) }) {
            assertTrue("$where: a control without a name at ${node.boundsInRoot}", node.says().isNotBlank())
        }
    }

    @Test
    fun noTextIsCutOffShortenedOrUnderAnother() = everywhere { where, nodes ->
        val texts = nodes.filter { it.children.isEmpty() && it.config.contains(SemanticsProperties.Text) }
        for (node in texts) {
            val layouts = mutableListOf<TextLayoutResult>()
            node.config.getOrNull(SemanticsActions.GetTextLayoutResult)?.action?.invoke(layouts)
            for (layout in layouts) {
                val says = node.says()
                assertTrue("$where: $says is cut off", !layout.hasVisualOverflow)
                assertTrue("$where: $says is shortened", (0 until layout.lineCount).none(layout::isLineEllipsized))
            }
        }
        val seen = texts.map { it to it.boundsInRoot }.filter { (_, at) -> at.width > 0 && at.height > 0 }
        for ((n, one) in seen.withIndex()) for (other in seen.drop(n + 1)) {
            val both = one.second.intersect(other.second)
            assertTrue("$where: ${one.first.says()} over ${other.first.says()}", both.width <= 0 || both.height <= 0)
        }
        for ((node, at) in seen) {
            assertTrue("$where: ${node.says()} reaches past the side", at.left >= 0 && at.right <= WIDTH)
        }
    }

    @Test
    fun everyTextStandsOutFromItsGround() {
        var texts = 0
        everywhere { where, nodes ->
            val picture = picture(where)
            for (node in nodes.filter { it.children.isEmpty() && it.config.contains(SemanticsProperties.Text) }) {
                val at = node.boundsInRoot
                // What is scrolled away, or half so, has no whole letters to look at.
                if (at.height < node.size.height - 0.5f || at.width < 1f || node.says().none(Char::isLetterOrDigit)) continue
                val ratio = contrast(picture, at)
                assertTrue("$where: ${node.says()} has a contrast of $ratio", ratio >= 7.0)
                texts += 1
            }
        }
        assertTrue("only $texts texts were looked at", texts > 200)
    }

    private val pictures = mutableMapOf<String, BufferedImage>()

    private fun picture(where: String): BufferedImage = pictures.getValue(where)

    private fun everywhere(check: (String, List<SemanticsNode>) -> Unit) = demo { desk, planned ->
        val sights = sights(planned)
        assertTrue(sights.size >= 10)
        for (manner in MANNERS) {
            desk.set(manner.settings())
            for (sight in sights) {
                val where = "${sight.name} ${manner.name}${if (manner.gloves) " gloves" else ""}"
                val app = desk.app()
                sight.open(app)
                pictures[where] = ImageIO.read(ByteArrayInputStream(png(manner.scale) { Screens(app, Face) }))
                runComposeUiTest {
                    setContent {
                        CompositionLocalProvider(LocalDensity provides Density(1f, manner.scale)) {
                            Box(Modifier.requiredSize(WIDTH.dp, HEIGHT.dp)) { Screens(app, Face) }
                        }
                    }
                    waitForIdle()
                    val root = onRoot(useUnmergedTree = false).fetchSemanticsNode()
                    val whole = onRoot(useUnmergedTree = true).fetchSemanticsNode()
                    val origin = root.boundsInRoot
                    assertEquals(where, 0f, origin.left)
                    check(where, all(root).filter { it.config.contains(SemanticsActions.OnClick) } + all(whole))
                }
                pictures.remove(where)
            }
        }
    }
}

private fun all(node: SemanticsNode): List<SemanticsNode> = listOf(node) + node.children.flatMap(::all)

private fun SemanticsNode.isKey() = config.getOrNull(SemanticsProperties.TestTag)?.startsWith("key ") == true

private fun SemanticsNode.says(): String {
    val own = config.getOrNull(SemanticsProperties.Text).orEmpty().joinToString(" ") { it.text }
    val said = config.getOrNull(SemanticsProperties.ContentDescription).orEmpty().joinToString(" ")
    val inside = if (own.isEmpty() && said.isEmpty()) children.joinToString(" ") { it.says() } else ""
    return listOf(own, said, inside).filter { it.isNotEmpty() }.joinToString(" ")
}

/** The contrast of WCAG 2.2, success criterion 1.4.3, between the commonest colour and the one farthest from it. */
private fun contrast(picture: BufferedImage, at: Rect): Double {
    val pixels = buildList {
        for (y in (2 * at.top).toInt() until (2 * at.bottom).toInt().coerceAtMost(picture.height))
            for (x in (2 * at.left).toInt().coerceAtLeast(0) until (2 * at.right).toInt().coerceAtMost(picture.width))
                add(picture.getRGB(x, y))
    }
    val ground = luminance(pixels.groupingBy { it }.eachCount().maxBy { it.value }.key)
    return pixels.distinct().maxOf { pixel ->
        val (dark, light) = listOf(luminance(pixel), ground).sorted()
        (light + 0.05) / (dark + 0.05)
    }
}

/** Relative luminance of an sRGB colour, by the same standard. */
private fun luminance(pixel: Int): Double {
    val (red, green, blue) = listOf(16, 8, 0).map { shift ->
        val share = (pixel shr shift and 0xFF) / 255.0
        if (share <= 0.04045) share / 12.92 else ((share + 0.055) / 1.055).pow(2.4)
    }
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}
