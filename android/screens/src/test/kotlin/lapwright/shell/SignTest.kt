package lapwright.shell

import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onAllNodesWithTag
import androidx.compose.ui.test.onAllNodesWithText
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import lapwright.screens.Action
import lapwright.screens.BoardView
import lapwright.screens.PenetrationView
import lapwright.screens.Place
import lapwright.screens.StepState
import lapwright.screens.Target
import lapwright.screens.View
import lapwright.screens.WallAction
import lapwright.shell.parts.SEEN_MS
import lapwright.shell.parts.nearerBy
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNotEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test

/** What a tap signs is in sight, is read first, is signed once, and is undone in one tap. */
class SignTest {
    @get:Rule
    val rule = createComposeRule()

    private fun App.hole(): PenetrationView = (shown!!.view as View.PenetrationKind).view

    private fun App.board(): BoardView = (shown!!.view as View.BoardKind).view

    private fun atAPenetration(fixture: Fixture): App {
        fixture.sign("Ines")
        val (_, wall) = fixture.laidOut()
        val line = (fixture.view(Place.Wall(wall)) as View.WallKind).view.penetrations.first()
        val app = fixture.app()
        app.go(Place.Penetration(line.penetration))
        rule.setContent { Screens(app, Face) }
        return app
    }

    private fun atABoard(fixture: Fixture, of: (BoardView) -> Boolean): App {
        fixture.sign("Ines")
        val (_, wall) = fixture.laidOut()
        val planned = fixture.act(Action.WallKind(WallAction.PlanBoards(wall))).view as View.WallKind
        val app = fixture.app()
        app.go(planned.view.boards.map { Place.Board(it.board) }.first { of((fixture.view(it) as View.BoardKind).view) })
        rule.setContent { Screens(app, Face) }
        return app
    }

    private fun next() {
        rule.onNodeWithTag("next").performClick()
        rule.waitForIdle()
    }

    /** The caution stands over the button, which says that it was read; only the next tap signs. */
    @Test
    fun aCautionIsReadBeforeItsStepIsSigned() = Fixture().use { fixture ->
        val app = atAPenetration(fixture)
        fun step() = app.hole().steps.first { it.state == StepState.OPEN }
        while (step().cautionsRead) next()
        val step = step()
        val caution = rule.onAllNodesWithText(step.cautions.first().text).onFirst().assertIsDisplayed()
        val button = rule.onNodeWithTag("next")
        assertTrue(caution.fetchSemanticsNode().boundsInRoot.bottom <= button.fetchSemanticsNode().boundsInRoot.top)
        rule.onNodeWithTag("step in hand").assertIsDisplayed()
        next()
        assertEquals("read, not signed", step.code, step().code)
        assertTrue(step().cautionsRead)
        next()
        assertNotEquals(step.code, step().code)
    }

    @Test
    fun theSecondOfTwoTapsInARowSignsNothing() = Fixture().use { fixture ->
        val app = atAPenetration(fixture)
        fun done() = app.hole().steps.count { it.state == StepState.DONE }
        app.read(app.hole().steps[0].code)
        app.read(app.hole().steps[1].code)
        fixture.stands = 1_777_896_500_000L
        next()
        assertEquals(1, done())
        next()
        assertEquals("at once", 1, done())
        fixture.stands = 1_777_896_500_699L
        next()
        assertEquals("too soon", 1, done())
        fixture.stands = 1_777_896_500_700L
        next()
        assertEquals("a tap of its own", 2, done())
    }

    @Test
    fun whatWasTickedStandsThereWithItsUndoForSomeSeconds() = Fixture().use { fixture ->
        val app = atAPenetration(fixture)
        app.read(app.hole().steps[0].code)
        next()
        val said = app.done!!.said
        assertTrue(said, app.hole().steps[0].text in said)
        rule.onNodeWithTag("undo").performClick()
        rule.waitForIdle()
        assertNull(app.trouble)
        assertEquals(StepState.OPEN, app.hole().steps[0].state)
        assertNull("what is undone is not undone twice", app.done)
        assertTrue("it stays where it was", app.shown!!.place is Place.Penetration)
        next()
        assertTrue(rule.onAllNodesWithTag("done").fetchSemanticsNodes().isNotEmpty())
        rule.mainClock.advanceTimeBy(SEEN_MS + 1_000)
        rule.waitForIdle()
        assertTrue(rule.onAllNodesWithTag("done").fetchSemanticsNodes().isEmpty())
        assertEquals(StepState.DONE, app.hole().steps[0].state)
    }

    /** Cut, primed, up: three ticks, each with what there is to mind read before it where that is new today. */
    @Test
    fun aPlainBoardIsUpAfterThreeTicks() = Fixture().use { fixture ->
        val app = atABoard(fixture) { it.checks.map { check -> check.code } == listOf("cut", "primed", "up") }
        var ticks = 0
        for (tap in 0 until 20) {
            if (app.board().checks.none { it.state == StepState.OPEN }) break
            val before = app.board().steps.count { it.state == StepState.DONE }
            next()
            if (app.board().steps.count { it.state == StepState.DONE } > before) ticks += 1
        }
        assertEquals("fixed" to 3, app.board().state to ticks)
        // The next board is named, and its button leads there.
        val here = app.shown!!.place
        next()
        assertNotEquals(here, app.shown!!.place)
    }

    /** The marks are the largest on the screen: readable from where the saw stands. */
    @Test
    fun theMarksOfANotchAreLarge() = Fixture().use { fixture ->
        val app = atABoard(fixture) { view -> view.notches.any { it.face != null } }
        app.board().asked?.let { rule.runOnIdle { app.putAway(it) } }
        val marks = rule.onAllNodesWithTag("mark").fetchSemanticsNodes()
        val face = app.board().notches.first { it.face != null }.face!!
        assertTrue("${marks.size} marks", marks.size >= face.uprights.size + face.levels.size)
        for (mark in marks) assertTrue("${mark.size}", mark.size.height >= with(mark.layoutInfo.density) { 44 * density })
    }

    @Test
    fun aPhotoOfACheckIsTakenBesideIt() = Fixture().use { fixture ->
        val app = atABoard(fixture) { it.checks.map { check -> check.code } == listOf("cut", "primed", "up") }
        val camera = app.board().checks.first { it.camera.isNotEmpty() }.camera
        rule.onNodeWithTag("photo $camera").performScrollTo().performClick()
        assertEquals(camera, fixture.photos.single().step)
    }

    @Test
    fun whatIsTooSmallForAFingerIsBroughtNearerOnce() {
        val strip = Target(0f, 100f, 300f, 107f, Place.Jobs, "a board")
        val by = nearerBy(strip, 1f)
        assertEquals(64f, 7f * by, 0.01f)
        assertEquals("large enough by then", 1f, nearerBy(strip, by), 0f)
        assertEquals(1f, nearerBy(Target(0f, 0f, 64f, 64f, Place.Jobs, "a block"), 1f), 0f)
    }
}
