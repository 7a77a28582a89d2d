package lapwright.shell

import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onAllNodesWithText
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import lapwright.screens.Action
import lapwright.screens.Given
import lapwright.screens.PenetrationAction
import lapwright.screens.PenetrationView
import lapwright.screens.PhotoPlace
import lapwright.screens.Place
import lapwright.screens.StepHow
import lapwright.screens.StepState
import lapwright.screens.View
import lapwright.screens.WallAction
import lapwright.shell.parts.said
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import java.io.File

/** One penetration on a real book, tapped. */
class PenetrationTest {
    @get:Rule
    val rule = createComposeRule()

    private fun App.hole(): PenetrationView = (shown!!.view as View.PenetrationKind).view

    /** A tap on the first wall whose block sits badly on its line: each height is tried until the core advises another. */
    private fun advised(fixture: Fixture): String {
        val (_, wall) = fixture.laidOut()
        val heights = (30..40).map { "$it" }
        return heights.firstNotNullOf { height ->
            val given = listOf(
                "what" to "hose-bib", "width" to "1", "from-left" to "40", "from-base" to height, "mounting" to "slip-over",
                "block-width" to "6", "block-height" to "6", "hole-from-bottom" to "3",
            ).map { (field, text) -> Given(field, text) }
            val made = fixture.act(Action.WallKind(WallAction.AddPenetration(wall, given))).view as View.PenetrationKind
            made.view.penetration.takeIf { made.view.advice != null }
        }
    }

    @Test
    fun theAdvisedBlockIsTakenInOneTapAndSaysWhatItGains() = Fixture().use { fixture ->
        val here = advised(fixture)
        val app = fixture.app()
        app.go(Place.Penetration(here))
        rule.setContent { Screens(app, Face) }
        val advice = app.hole().advice!!
        rule.onNodeWithText(advice.gain, substring = true).performScrollTo().assertIsDisplayed().performClick()
        rule.onNodeWithTag("take advice").performScrollTo().performClick()
        assertNull(app.trouble)
        assertNull(app.hole().advice)
        val now = app.hole().questions.associate { it.field to it.reading?.nm }
        val advised = listOf(advice.width.nm, advice.height.nm, advice.holeFromBottom.nm)
        assertEquals(advised, listOf("block-width", "block-height", "hole-from-bottom").map { now[it] })
        assertTrue(rule.onAllNodesWithText(advice.gain, substring = true).fetchSemanticsNodes().isEmpty())
    }

    /** Way through 3: one tap opens the camera, one ticks the step with what it took. */
    @Test
    fun aStepIsTickedWithAPhotoInTwoTaps() = Fixture().use { fixture ->
        fixture.sign("Ines")
        val here = advised(fixture)
        val app = fixture.app()
        app.go(Place.Penetration(here))
        rule.setContent { Screens(app, Face) }
        fun open() = app.hole().steps.first { it.state == StepState.OPEN }
        while (!open().photoAsked) {
            rule.runOnIdle {
                app.act(Action.PenetrationKind(PenetrationAction.SignStep(here, open().code, said(StepHow.TICK))))
            }
        }
        val step = open().code
        rule.onNodeWithTag("photo $step").performScrollTo().performClick()
        val wanted = fixture.photos.single()
        File(wanted.file).writeBytes(Jpeg)
        rule.runOnIdle { app.photoBack(wanted) }
        rule.onNodeWithTag("tick $step").performScrollTo().performClick()
        assertNull(app.trouble)
        val ticked = app.hole().steps.single { it.code == step }
        assertEquals(StepState.DONE, ticked.state)
        assertTrue("the tick holds the photo", ticked.photo!!.signed && ticked.photo!!.place == PhotoPlace.HERE)
    }
}
