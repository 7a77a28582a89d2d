package lapwright.shell

import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onAllNodesWithTag
import androidx.compose.ui.test.onAllNodesWithText
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.test.performTextInput
import lapwright.screens.Action
import lapwright.screens.BoardAction
import lapwright.screens.BoardView
import lapwright.screens.HouseView
import lapwright.screens.NewThing
import lapwright.screens.Place
import lapwright.screens.StepHow
import lapwright.screens.StepState
import lapwright.screens.View
import lapwright.screens.WallAction
import lapwright.shell.parts.said
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test

/** A board once more, tapped on a real book: one that is spoiled, and one like the last. */
class BoardTest {
    @get:Rule
    val rule = createComposeRule()

    private fun App.board(): BoardView = (shown!!.view as View.BoardKind).view

    private fun type(text: String) {
        for (key in text) rule.onNodeWithTag("key $key").performClick()
        rule.onNodeWithTag("accept").performClick()
    }

    private fun unfold(what: String) {
        rule.onNodeWithTag("fold $what").performScrollTo().performClick()
    }

    @Test
    fun aSpoiledBoardIsPlannedAgainAndWhatIsLeftIsKept() = Fixture().use { fixture ->
        fixture.sign("Ines")
        val (job, wall) = fixture.laidOut()
        val planned = fixture.act(Action.WallKind(WallAction.PlanBoards(wall))).view as View.WallKind
        val app = fixture.app()
        app.go(Place.Board(planned.view.boards.first().board))
        rule.setContent { Screens(app, Face) }
        val here = app.board().board
        assertTrue("a board that is not cut cannot be spoiled", rule.onAllNodesWithTag("spoiled").fetchSemanticsNodes().isEmpty())
        val cut = app.board().steps.map { it.code }.takeWhile { app.board().state == "planned" }
        for (step in cut) {
            if (app.board().state == "planned") app.act(Action.BoardKind(BoardAction.SignStep(here, step, said(StepHow.TICK))))
        }
        assertEquals("cut", app.board().state)
        app.board().asked?.let { rule.runOnIdle { app.putAway(it) } }
        unfold("more")
        rule.onNodeWithTag("spoiled").performScrollTo().performClick()
        type("60")
        assertNull(app.trouble)
        assertEquals("planned", app.board().state)
        assertTrue(app.board().steps.all { it.state == StepState.OPEN })
        val kept = (fixture.view(Place.SawList(job)) as View.SawListKind).view.offcuts
        assertTrue("$kept", kept.any { "60" in it.toString() })
    }

    @Test
    fun aLooseBoardIsMadeOnceMoreInOneTap() = Fixture().use { fixture ->
        val app = fixture.app()
        val job = fixture.demo()
        app.go(Place.House(job))
        rule.setContent { Screens(app, Face) }
        fun house(): HouseView = (app.shown!!.view as View.HouseKind).view
        assertFalse(house().hasLooseBoard)
        assertTrue(rule.onAllNodesWithTag("same board").fetchSemanticsNodes().isEmpty())
        rule.runOnIdle { app.go(Place.New(NewThing.LOOSE_BOARD, job)) }
        type("31")
        val first = app.board()
        rule.runOnIdle { app.go(Place.House(job)) }
        rule.onNodeWithTag("same board").performScrollTo().performClick()
        val second = app.board()
        assertNotEquals(first.board, second.board)
        assertEquals(first.length!!.nm, second.length!!.nm)
        second.asked?.let { rule.runOnIdle { app.putAway(it) } }
        unfold("more")
        rule.onNodeWithTag("same board").performScrollTo().performClick()
        assertNotEquals(second.board, app.board().board)
        assertNull(app.trouble)
    }

    /** Killed in the middle of a reason, the next start asks it on; the step is left out for it. */
    @Test
    fun theReasonWhyAStepIsLeftOutOutlivesAStop() = Fixture().use { fixture ->
        fixture.sign("Ines")
        val job = fixture.demo()
        val app = fixture.app()
        app.go(Place.New(NewThing.LOOSE_BOARD, job))
        rule.setContent { Screens(app, Face) }
        type("31")
        val step = app.board().steps.first()
        rule.runOnIdle { app.ask(step.asks.last()) }
        rule.onNodeWithTag("text").performTextInput("no time")
        Fixture(fixture.file).use { again ->
            val asked = again.app().board().asked!!
            assertEquals(step.asks.last().field to "no time", asked.field to asked.draft)
        }
        rule.onNodeWithTag("accept").performClick()
        assertNull(app.trouble)
        val left = app.board().steps.first()
        assertEquals(StepState.SKIPPED to "no time", left.state to left.note)
    }

    /** What was measured at a step is typed like any reading, and ticks it; who, when and what then stand there. */
    @Test
    fun whatWasMeasuredAtAStepTicksIt() = Fixture().use { fixture ->
        fixture.sign("Ines")
        val app = fixture.app()
        app.go(Place.New(NewThing.LOOSE_BOARD, fixture.demo()))
        rule.setContent { Screens(app, Face) }
        type("31")
        fun cut() = app.board().steps.first { it.code == "board-cut" }
        while (true) {
            val open = app.board().steps.first { it.state == StepState.OPEN }.code.takeIf { it != "board-cut" } ?: break
            rule.runOnIdle { app.act(Action.BoardKind(BoardAction.SignStep(app.board().board, open, said(StepHow.TICK)))) }
        }
        unfold("steps")
        rule.onAllNodesWithText(cut().text, useUnmergedTree = true).onFirst().performScrollTo().performClick()
        rule.onNodeWithTag("ask board-cut/measured").performScrollTo().performClick()
        type("31")
        assertNull(app.trouble)
        assertEquals(StepState.DONE to "31\"", cut().state to cut().measured!!.text)
        rule.onNodeWithText(cut().said, substring = true, useUnmergedTree = true).performScrollTo().assertIsDisplayed()
        assertTrue(cut().said, cut().said.startsWith("Ines, "))
    }

    @Test
    fun theMarksAreReadAloudTheGapIsSaidAndWhatWasLearnedIsForgotten() = Fixture().use { fixture ->
        fixture.sign("Ines")
        val (_, wall) = fixture.laidOut()
        val planned = fixture.act(Action.WallKind(WallAction.PlanBoards(wall))).view as View.WallKind
        val app = fixture.app()
        val notched = planned.view.boards.map { it.board }.first { board ->
            (fixture.view(Place.Board(board)) as View.BoardKind).view.notches.any { it.face != null }
        }
        app.go(Place.Board(notched))
        rule.setContent { Screens(app, Face) }
        app.board().asked?.let { rule.runOnIdle { app.putAway(it) } }
        rule.onNodeWithTag("say it").performScrollTo().performClick()
        val marks = app.board().notches.first { it.face != null }.face!!
        assertTrue(marks.uprights.all { it.spoken in fixture.said.last() })
        while (app.board().state == "planned") {
            val step = app.board().steps.first { it.state == StepState.OPEN }.code
            rule.runOnIdle { app.act(Action.BoardKind(BoardAction.SignStep(notched, step, said(StepHow.TICK)))) }
        }
        fun gap() = app.board().notches.first { it.face != null }.questions.single { it.field == "gap" }
        assertTrue(rule.onAllNodesWithTag("forget habit").fetchSemanticsNodes().isEmpty())
        rule.runOnIdle { app.ask(gap()) }
        type(".125")
        assertNull(app.trouble)
        assertEquals("1/8\"", gap().answer)
        assertEquals(1u, app.board().gapsKnown)
        unfold("more")
        rule.onNodeWithTag("forget habit").performScrollTo().performClick()
        assertEquals(0u, app.board().gapsKnown)
    }

    @Test
    fun aLooseBoardIsAttachedToAWallInOneTap() = Fixture().use { fixture ->
        val job = fixture.demo()
        val app = fixture.app()
        app.go(Place.New(NewThing.LOOSE_BOARD, job))
        rule.setContent { Screens(app, Face) }
        type("31")
        val walls = app.board().walls
        assertEquals(2, walls.size)
        unfold("more")
        rule.onNodeWithTag("attach ${walls[1].wall}").performScrollTo().performClick()
        assertEquals(walls[1].wall, app.board().wall)
        assertTrue(app.board().walls.isEmpty())
    }
}
