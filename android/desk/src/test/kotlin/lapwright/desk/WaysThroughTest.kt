package lapwright.desk

import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.test.performSemanticsAction
import lapwright.screens.BoardView
import lapwright.screens.Place
import lapwright.screens.StepState
import lapwright.screens.View
import lapwright.shell.App
import lapwright.shell.Screens
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test

/** The ways through, with the taps counted. */
class WaysThroughTest {
    @get:Rule
    val rule = createComposeRule()

    private var taps = 0

    private fun tap(matcher: SemanticsMatcher) {
        val node = rule.onAllNodes(matcher and hasClickAction()).onFirst()
        if (node.fetchSemanticsNode().config.getOrNull(SemanticsProperties.TestTag) != "next") runCatching { node.performScrollTo() }
        node.performSemanticsAction(SemanticsActions.OnClick)
        rule.waitForIdle()
        taps += 1
    }

    /** A number by the keypad, the drawn inch for its fraction. */
    private fun answer(app: App, whole: String, mark: String = "") {
        for (key in whole) tap(hasTestTag("key $key"))
        if (mark.isNotEmpty()) {
            val spoken = app.shown!!.frame.tape.first { it.text == mark }.spoken
            val said = listOf(app.shown!!.frame.words.tape)
            val tape = rule.onNode(SemanticsMatcher.expectValue(SemanticsProperties.ContentDescription, said))
            val actions = tape.fetchSemanticsNode().config[SemanticsActions.CustomActions]
            rule.runOnIdle { actions.first { it.label == spoken }.action() }
            taps += 1
        }
        tap(hasTestTag("accept"))
    }

    private fun board(app: App): BoardView = (app.shown!!.view as View.BoardKind).view

    @Test
    fun fromTheOpenedAppToTheNotchOfTheNextBoard() = demo { desk, planned ->
        upToANotch(desk, planned)
        val app = desk.app()
        app.go(Place.Jobs)
        rule.setContent { Screens(app, Face) }
        taps = 0
        tap(hasText("Demo: Plover Cottage"))
        tap(hasTestTag("next"))
        assertEquals("taps to the board", 2, taps)
        val fields = mutableListOf<String>()
        while (board(app).asked != null) {
            val asked = board(app).asked!!
            fields += asked.field
            // What the plan expects, read again: nanometres to sixteenths, for the test alone.
            val sixteenths = (asked.reading!!.nm * 16 + 12_700_000) / 25_400_000
            val (whole, rest) = sixteenths / 16 to sixteenths % 16
            val mark = app.shown!!.frame.tape.firstOrNull { it.at.toLong() == rest * 1000 / 16 }?.text.orEmpty()
            answer(app, if (whole < 0) "0" else "$whole", mark)
        }
        assertEquals(listOf("left", "right", "bottom-left", "top-left"), fields.take(4))
        val notch = board(app).notches.first { it.taped }
        assertNotNull("the answer is there at once", notch.offset)
        assertTrue(notch.cutText, rule.onAllNodes(hasText(notch.cutText)).fetchSemanticsNodes().isNotEmpty())
    }

    @Test
    fun aNewPenetrationFromTheWall() = demo { desk, planned ->
        val app = desk.app()
        app.go(Place.Wall(planned.walls[1]))
        rule.setContent { Screens(app, Face) }
        val before = planned.wall(1).penetrations.size
        taps = 0
        tap(hasTestTag("next"))
        tap(hasText("Hose bib"))
        answer(app, "1")
        answer(app, "65")
        answer(app, "30")
        assertEquals(null, app.trouble)
        val view = (app.shown!!.view as View.PenetrationKind).view
        assertEquals("hose-bib", view.what)
        assertTrue("all its sizes", view.patch.isNotEmpty())
        assertEquals(before + 1, planned.wall(1).penetrations.size)
        // The kind, three numbers of at most two keys and their OK, and the button that began it.
        assertEquals(1 + 1 + 2 + 3 + 3, taps)
    }

    @Test
    fun tickingAStepIsOneTap() = demo { desk, planned ->
        val app = desk.app()
        app.go(Place.Penetration(planned.penetration))
        rule.setContent { Screens(app, Face) }
        fun steps() = (app.shown!!.view as View.PenetrationKind).view.steps
        val first = steps().first().code
        taps = 0
        tap(hasTestTag("next"))
        assertEquals(1, taps)
        assertEquals(StepState.DONE, steps().first { it.code == first }.state)
        assertEquals("Rosa", steps().first { it.code == first }.signer)
    }

    @Test
    fun aFirstTimeUserReachesEachWithTheDemo() = demo { desk, _ ->
        val app = desk.app()
        app.go(Place.Jobs)
        rule.setContent { Screens(app, Face) }
        tap(hasText(app.shown!!.frame.words.openDemo))
        assertTrue(app.shown!!.view is View.HouseKind)
        tap(hasText("Street gable"))
        assertTrue(app.shown!!.view is View.WallKind)
        tap(hasText("Light"))
        assertTrue(app.shown!!.view is View.PenetrationKind)
        tap(SemanticsMatcher.expectValue(SemanticsProperties.ContentDescription, listOf(app.shown!!.frame.words.back)))
        assertTrue(app.shown!!.view is View.WallKind)
    }
}
