package lapwright.shell

import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onAllNodesWithText
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import lapwright.screens.Action
import lapwright.screens.Place
import lapwright.screens.PoleAction
import lapwright.screens.PoleView
import lapwright.screens.Source
import lapwright.screens.View
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test

/** A course that hangs is taped from the pole, and the pole says what that changes. */
class PoleTest {
    @get:Rule
    val rule = createComposeRule()

    private fun App.pole(): PoleView = (shown!!.view as View.PoleKind).view

    @Test
    fun aCourseIsTapedAsItHangsAndThePoleSaysWhatItChanges() = Fixture().use { fixture ->
        val job = fixture.demo()
        val app = fixture.app()
        app.go(Place.Pole(job))
        assertTrue("nothing hangs before the pole is laid out", app.pole().walls.isEmpty())
        app.act(Action.PoleKind(PoleAction.LayOut(job)))
        rule.setContent { Screens(app, Face) }
        val wall = app.pole().walls.first()
        rule.onNodeWithTag("tape ${wall.wall}").performScrollTo().performClick()
        for (reading in listOf("2", "7", "6", "6")) {
            for (key in reading) rule.onNodeWithTag("key $key").performClick()
            rule.onNodeWithTag("accept").performClick()
            assertNull(app.trouble)
        }
        assertEquals(Place.Pole(job), app.shown!!.place)
        val built = app.pole().asBuilt.single()
        assertEquals(wall.name to 2L, built.wallName to built.course)
        assertEquals(Source.TAPED, built.left.source)
        assertEquals("1\"", built.outOfLevel.text)
        for (note in built.notes) rule.onAllNodesWithText(note.text).onFirst().performScrollTo().assertIsDisplayed()
        assertTrue("it says something", built.notes.isNotEmpty())
        rule.onNodeWithTag("remove ${built.asBuilt}").performScrollTo().performClick()
        assertTrue(app.pole().asBuilt.isEmpty())
    }
}
