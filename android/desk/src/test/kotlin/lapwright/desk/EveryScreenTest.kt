package lapwright.desk

import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.getValue
import androidx.compose.runtime.key
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.PixelMap
import androidx.compose.ui.graphics.luminance
import androidx.compose.ui.graphics.toPixelMap
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.captureToImage
import androidx.compose.ui.test.onRoot
import androidx.compose.ui.test.runSkikoComposeUiTest
import androidx.compose.ui.text.TextLayoutResult
import androidx.compose.ui.unit.Density
import lapwright.shell.Screens
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test

/** Two pixels to the dp. */
private const val DENSITY = 2f

/** The reference phone stands on a glass of 360 x 800 dp. */
private val STANDING = 360 to 800

/** What holds on the reference phone, and on others for those screens that matter most there. */
private val OTHERS = listOf(360 to 640, 800 to 360)
private val MOST_USED =
    setOf("board", "board-measure", "board-plain", "penetration", "detail", "house", "jobs", "new-penetration", "saw-list")
private const val TARGET = 64 * DENSITY

/** 18 mm at 160 dp to the inch. */
private const val GLOVE_KEY = 18 / 25.4f * 160 * DENSITY

/** A path, an id, a value or an error as a program writes it, words of the language of databases. */
private val RAW = Regex("""/(tmp|data|home|var)/|[0-9a-f]{16}|[{}]|\w\(\w+:|NotFound|Some\(|\b(SQL|SELECT|UNIQUE|null)\b""")

private val MANNERS = listOf(
    Manner("en", "light", "right", 1f),
    Manner("es", "dark", "left", 1f),
    Manner("en", "dark", "left", 2f),
    Manner("es", "light", "right", 2f),
    Manner("en", "light", "right", 1f, gloves = true),
    Manner("es", "dark", "left", 2f, gloves = true),
)

/** What holds for every screen in both languages, at 100 % and at 200 %, with and without a question's panel. */
@OptIn(ExperimentalTestApi::class)
class EveryScreenTest {
    private val wrong = mutableListOf<String>()
    private var controls = 0
    private var keys = 0
    private var texts = 0
    private var actions = 0
    private var questions = 0
    private var steps = 0

    @Test
    fun everyControlIsLargeAndNamedAndEveryTextWholeAndClear() {
        demo { desk, planned ->
            for (glass in listOf(STANDING) + OTHERS) {
                runSkikoComposeUiTest(Size(glass.first * DENSITY, glass.second * DENSITY), Density(DENSITY)) {
                    var at by mutableStateOf(0 to desk.app())
                    var scale by mutableStateOf(1f)
                    setContent {
                        CompositionLocalProvider(LocalDensity provides Density(DENSITY, scale)) {
                            key(at.first) { Screens(at.second, Face) }
                        }
                    }
                    for (manner in MANNERS.filter { glass == STANDING || it.scale == 1f }) {
                        desk.set(manner.settings())
                        for (screenshot in screenshots(planned).filter { glass == STANDING || it.name in MOST_USED }) {
                            val app = desk.app(services = screenshot.services).also(screenshot.open)
                            runOnIdle { scale = manner.scale; at = at.first + 1 to app }
                            waitForIdle()
                            assertEquals(screenshot.name, null, app.trouble)
                            val where = "${screenshot.name} ${manner.name}${if (manner.gloves) " gloves" else ""} $glass"
                            val merged = all(onRoot().fetchSemanticsNode())
                            look(where, merged, manner.gloves, glass)
                            val picture = onRoot().captureToImage().toPixelMap()
                            assertEquals(glass, picture.width / 2 to picture.height / 2)
                            val unmerged = all(onRoot(useUnmergedTree = true).fetchSemanticsNode())
                            read(where, unmerged, picture)
                            reach(where, unmerged, glass)
                        }
                    }
                }
            }
        }
        assertTrue(wrong.joinToString("\n", "${wrong.size} wrong:\n"), wrong.isEmpty())
        assertTrue("$controls controls, $keys keys, $texts texts", controls > 500 && keys > 50 && texts > 500)
        assertTrue("$actions first actions, $questions questions, $steps steps", actions > 300 && questions > 60 && steps > 40)
    }

    /** The one next action lies in the thumb's half; what is asked, and the step that is signed, are in sight as a whole. */
    private fun reach(where: String, nodes: List<SemanticsNode>, glass: Pair<Int, Int>) {
        fun tagged(vararg tags: String) = nodes.filter { it.config.getOrNull(SemanticsProperties.TestTag) in tags }
        // On a glass that is too low the keys scroll with their question.
        for (node in tagged("next", "accept", "camera").filter { glass == STANDING || !it.scrolls() }) {
            actions += 1
            if (node.boundsInRoot.center.y < glass.second * DENSITY / 2) wrong += "$where: ${node.says()} is out of the thumb's reach"
        }
        for (node in tagged("question")) {
            questions += 1
            if (!node.isWhole()) wrong += "$where: the question is not whole: ${node.says()}"
        }
        for (node in tagged("step in hand")) {
            steps += 1
            if (!node.isWhole()) wrong += "$where: the step in hand is not whole: ${node.says()}"
        }
    }

    /** WCAG 2.2, success criteria 2.5.5 and 4.1.2, with the sizes that gloves need. */
    private fun look(where: String, nodes: List<SemanticsNode>, gloves: Boolean, glass: Pair<Int, Int>) {
        for (node in nodes.filter { it.config.contains(SemanticsActions.OnClick) }) {
            controls += 1
            val key = parents(node).any { it.config.getOrNull(SemanticsProperties.TestTag) == "keypad" }
            if (key && gloves) keys += 1
            // On a smaller phone keys of 18 mm would leave no room for the question.
            val least = if (key && gloves && glass == STANDING) GLOVE_KEY else TARGET
            if (node.size.width < least || node.size.height < least) {
                wrong += "$where: ${node.says()} is ${node.size.width / DENSITY} x ${node.size.height / DENSITY} dp"
            }
            if (node.says().none { !it.isWhitespace() }) wrong += "$where: a control without a name at ${node.boundsInRoot}"
            if (!node.scrolls() && !node.isWhole()) wrong += "$where: ${node.says()} is cut off by the edge of the screen"
        }
    }

    private fun read(where: String, nodes: List<SemanticsNode>, picture: PixelMap) {
        val seen = nodes.filter { it.children.isEmpty() && it.config.contains(SemanticsProperties.Text) }
        for (node in seen) {
            val layouts = mutableListOf<TextLayoutResult>()
            node.config.getOrNull(SemanticsActions.GetTextLayoutResult)?.action?.invoke(layouts)
            if (RAW.containsMatchIn(node.says())) wrong += "$where: the text ${node.says()} is nothing that a person says"
            if (layouts.any { it.isCut() }) wrong += "$where: the text ${node.says()} is cut"
            if (!node.scrolls() && !node.isWhole()) wrong += "$where: the text ${node.says()} is cut off by the edge of the screen"
            // What is scrolled away, or half so, has no whole letters to look at.
            if (!node.isWhole() || node.says().none(Char::isLetterOrDigit)) continue
            texts += 1
            val ratio = contrast(picture, node.boundsInRoot)
            if (ratio < 7) wrong += "$where: the text ${node.says()} has a contrast of $ratio"
        }
        for ((n, one) in seen.withIndex()) {
            for (other in seen.drop(n + 1)) {
                val both = one.boundsInRoot.intersect(other.boundsInRoot)
                // A bound is rounded to a pixel.
                if (both.width > 1 && both.height > 1) wrong += "$where: ${one.says()} is over ${other.says()}"
            }
        }
    }
}

internal fun all(node: SemanticsNode): List<SemanticsNode> = listOf(node) + node.children.flatMap(::all)

private fun parents(node: SemanticsNode): Sequence<SemanticsNode> = generateSequence(node.parent) { it.parent }

private fun SemanticsNode.scrolls() = parents(this).any { it.config.contains(SemanticsProperties.VerticalScrollAxisRange) }

private fun SemanticsNode.isWhole(): Boolean =
    boundsInRoot.width > size.width - 1 && boundsInRoot.height > size.height - 1 && size.width > 0

private fun SemanticsNode.says(): String {
    val own = config.getOrNull(SemanticsProperties.Text).orEmpty().map { it.text }
    return (config.getOrNull(SemanticsProperties.ContentDescription).orEmpty() + own).joinToString(" ")
}

/** A line may come out a fraction of a pixel wider than its box, which is rounded. */
private fun TextLayoutResult.isCut(): Boolean =
    didOverflowHeight || (0 until lineCount).any { isLineEllipsized(it) || getLineRight(it) - getLineLeft(it) > size.width + 1f }

/** The contrast of WCAG 2.2, success criterion 1.4.6, between the commonest colour and the one farthest from it. */
private fun contrast(picture: PixelMap, at: Rect): Float {
    val pixels = buildList {
        for (y in at.top.toInt() until at.bottom.toInt()) for (x in at.left.toInt() until at.right.toInt()) add(picture[x, y])
    }
    val counts = pixels.groupingBy { it }.eachCount()
    val ground = counts.maxBy { it.value }.key.luminance()
    return counts.keys.maxOf { colour ->
        val (dark, light) = listOf(colour.luminance(), ground).sorted()
        (light + 0.05f) / (dark + 0.05f)
    }
}
