package lapwright.shell

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.requiredSize
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onRoot
import androidx.compose.ui.text.TextLayoutResult
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.dp
import lapwright.screens.Action
import lapwright.screens.Place
import lapwright.screens.PoleAction
import lapwright.screens.SawListAction
import lapwright.screens.View
import lapwright.shell.look.Target
import org.junit.Assert.assertFalse
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test

/** The saw list, the order, Measure, Pole, Rules, Settings and the done list at both text sizes, in both languages. */
class SetUpSightTest {
    @get:Rule
    val rule = createComposeRule()

    private fun places(fixture: Fixture): List<Place> {
        val job = fixture.demo()
        fixture.act(Action.PoleKind(PoleAction.LayOut(job)))
        val house = fixture.book.view(fixture.context(), Place.House(job)) as View.HouseKind
        val wall = house.view.walls.first().wall
        fixture.act(Action.SawListKind(SawListAction.Plan(job)))
        return listOf(Place.SawList(job), Place.Order(job), Place.Measure(wall), Place.Pole(job), Place.Rules(job), Place.Settings, Place.DoneList(job))
    }

    private fun SemanticsNode.all(): List<SemanticsNode> = listOf(this) + children.flatMap { it.all() }

    private fun SemanticsNode.names(): List<String> =
        config.getOrNull(SemanticsProperties.ContentDescription).orEmpty() +
            config.getOrNull(SemanticsProperties.Text).orEmpty().map { it.text }

    /** A line may come out a fraction of a pixel wider than its box, which is rounded. */
    private fun TextLayoutResult.isCut(): Boolean =
        didOverflowHeight || (0 until lineCount).any { getLineRight(it) - getLineLeft(it) > size.width + 1f }

    @Test
    fun everyControlIsLargeAndNamedAndNoTextIsCut() = Fixture().use { fixture ->
        fixture.sign("Ines")
        val places = places(fixture)
        var app by mutableStateOf(fixture.app())
        var scale by mutableStateOf(1f)
        rule.setContent {
            CompositionLocalProvider(LocalDensity provides Density(1f, scale)) {
                Box(Modifier.requiredSize(360.dp, 800.dp)) { Screens(app, Face) }
            }
        }
        var controls = 0
        for (language in listOf("en", "es")) for (size in listOf(1f, 2f)) for (place in places) {
            fixture.set("language" to language)
            rule.runOnIdle {
                scale = size
                app = fixture.app().apply { go(place) }
            }
            val where = "$place in $language at $size"
            val nodes = rule.onRoot().fetchSemanticsNode().all()
            for (node in nodes.filter { hasClickAction().matches(it) }) {
                controls += 1
                val least = Target.value.toInt()
                assertTrue("$where: ${node.names()} is ${node.size}", node.size.width >= least && node.size.height >= least)
                assertTrue("$where: a control has no name", node.names().any { it.isNotBlank() })
            }
            for (text in rule.onRoot(useUnmergedTree = true).fetchSemanticsNode().all()) {
                val laidOut = mutableListOf<TextLayoutResult>()
                text.config.getOrNull(SemanticsActions.GetTextLayoutResult)?.action?.invoke(laidOut)
                for (one in laidOut) assertFalse("$where: ${text.names()} is cut", one.isCut())
            }
        }
        assertTrue("$controls controls", controls > 200)
    }
}
