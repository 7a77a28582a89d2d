package lapwright.shell

import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.test.assertHeightIsAtLeast
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onAllNodesWithTag
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.onRoot
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performSemanticsAction
import androidx.compose.ui.test.performTouchInput
import lapwright.screens.Place
import lapwright.screens.View
import lapwright.shell.look.Target
import lapwright.shell.parts.HOLD_MS
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test

/** Drops on the glass: while it is locked they do nothing. */
class LockTest {
    @get:Rule
    val rule = createComposeRule()

    private fun atAPenetration(fixture: Fixture): App {
        fixture.sign("Ines")
        val (_, wall) = fixture.laidOut()
        val line = (fixture.view(Place.Wall(wall)) as View.WallKind).view.penetrations.first()
        val app = fixture.app()
        app.go(Place.Penetration(line.penetration))
        rule.setContent { Screens(app, Face) }
        return app
    }

    @Test
    fun whileLockedNoTapDoesAnythingAndAHoldUnlocks() = Fixture().use { fixture ->
        val app = atAPenetration(fixture)
        rule.onNodeWithTag("lock").performClick()
        assertTrue(app.locked)
        val before = app.shown
        rule.onNodeWithTag("unlock").assertHeightIsAtLeast(Target)
        // Drops all over the glass, the control that unlocks among them.
        for (row in 0..30) {
            for (column in 0..8) {
                rule.onRoot().performTouchInput {
                    down(percentOffset(0.02f + column * 0.12f, 0.01f + row * 0.0326f))
                    advanceEventTime(60)
                    up()
                }
            }
        }
        rule.waitForIdle()
        assertTrue(app.locked)
        assertEquals(before, app.shown)
        assertEquals(emptyList<String>(), fixture.said)
        rule.onNodeWithTag("unlock").performTouchInput { down(center) }
        rule.mainClock.advanceTimeBy(HOLD_MS - 100)
        assertTrue("not before the second is over", app.locked)
        rule.mainClock.advanceTimeBy(200)
        assertFalse(app.locked)
        assertEquals(before, app.shown)
    }

    @Test
    fun unlockedAgainTheSameTapTicks() = Fixture().use { fixture ->
        val app = atAPenetration(fixture)
        val before = app.shown
        rule.onNodeWithTag("lock").performClick()
        rule.onNodeWithTag("unlock").performSemanticsAction(SemanticsActions.OnClick)
        assertFalse("a screen reader's tap is no drop", app.locked)
        rule.onNodeWithTag("next").performClick()
        rule.waitForIdle()
        assertFalse(before == app.shown)
    }

    @Test
    fun theWayBackIsLockedToo() = Fixture().use { fixture ->
        val app = atAPenetration(fixture)
        rule.runOnIdle { app.lock(true) }
        app.back()
        assertTrue(app.shown!!.place is Place.Penetration)
        rule.runOnIdle { app.lock(false) }
        app.back()
        rule.waitForIdle()
        assertFalse(app.shown!!.place is Place.Penetration)
        rule.onAllNodesWithTag("lock").fetchSemanticsNodes().let { assertEquals(0, it.size) }
    }
}
