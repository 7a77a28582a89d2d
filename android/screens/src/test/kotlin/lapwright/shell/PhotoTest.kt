package lapwright.shell

import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onAllNodesWithTag
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import lapwright.screens.Action
import lapwright.screens.PenetrationAction
import lapwright.screens.PhotoPlace
import lapwright.screens.Place
import lapwright.screens.StepHow
import lapwright.screens.StepPhoto
import lapwright.screens.StepState
import lapwright.screens.View
import lapwright.screens.WallAction
import lapwright.shell.parts.said
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Rule
import org.junit.Test
import java.io.File

/** A photo of a step, from the tap to the tick, with the camera played by the test. */
class PhotoTest {
    @get:Rule
    val rule = createComposeRule()

    private val step = "look-over"

    private fun penetration(fixture: Fixture): String {
        val house = fixture.book.view(fixture.context(), Place.House(fixture.demo())) as View.HouseKind
        val walls = house.view.walls.map { fixture.book.view(fixture.context(), Place.Wall(it.wall)) as View.WallKind }
        return walls.firstNotNullOf { it.view.penetrations.firstOrNull() }.penetration
    }

    /** The camera takes one photo and comes back. */
    private fun Fixture.shoot(app: App, step: String) {
        app.takePhoto(step)
        File(photos.single().file).writeBytes(Jpeg)
        app.photoBack(photos.single())
    }

    private fun photo(app: App): StepPhoto? =
        (app.shown!!.view as View.PenetrationKind).view.steps.single { it.code == step }.photo

    @Test
    fun aPhotoGoesIntoTheTickOfItsStep() = Fixture().use { fixture ->
        fixture.sign("Ines")
        val here = penetration(fixture)
        val app = fixture.app()
        app.go(Place.Penetration(here))
        app.takePhoto(step)
        val wanted = fixture.photos.single()
        assertEquals(PhotoPlace.WAITING, photo(app)!!.place)
        File(wanted.file).writeBytes(Jpeg)
        app.photoBack(wanted)
        val photo = photo(app)!!
        assertEquals(PhotoPlace.HERE, photo.place)
        val tick = said(StepHow.TICK, "seen by Lea", photo.photo)
        app.act(Action.PenetrationKind(PenetrationAction.SignStep(here, step, tick)))
        assertNull(app.trouble)
        assertEquals(photo.copy(signed = true), photo(app))
    }

    @Test
    fun theNextActionTicksItsStepWithThePhotoThatWasTaken() = Fixture().use { fixture ->
        fixture.sign("Ines")
        val here = penetration(fixture)
        val app = fixture.app()
        app.go(Place.Penetration(here))
        fun open() = (app.shown!!.view as View.PenetrationKind).view.steps.first { it.state == StepState.OPEN }.code
        val first = open()
        fixture.shoot(app, first)
        rule.setContent { Screens(app, Face) }
        // What there is to mind at it is read first.
        rule.onNodeWithTag("next").performClick()
        rule.onNodeWithTag("next").performClick()
        rule.waitForIdle()
        val ticked = (app.shown!!.view as View.PenetrationKind).view.steps.single { it.code == first }
        assertEquals(StepState.DONE, ticked.state)
        assertEquals(true, ticked.photo!!.signed)
    }

    @Test
    fun aPhotoIsHandedOnWithoutThePlaceWhereItWasTaken() = Fixture().use { fixture ->
        val here = penetration(fixture)
        val app = fixture.app()
        app.go(Place.Penetration(here))
        fixture.shoot(app, step)
        rule.setContent { Screens(app, Face) }
        val text = (app.shown!!.view as View.PenetrationKind).view.steps.single { it.code == step }.text
        rule.onAllNodes(hasText(text) and hasClickAction()).onFirst().performScrollTo().performClick()
        rule.onNodeWithTag("share photo").performScrollTo().performClick()
        assertNull(app.trouble)
        val (title, path) = fixture.shared.single()
        assertEquals(text, title)
        assertEquals(Jpeg.toList(), File(path).readBytes().toList())
    }

    @Test
    fun aPhotoStandsBesideTheOneBeforeIt() = Fixture().use { fixture ->
        val here = penetration(fixture)
        val app = fixture.app()
        app.go(Place.Penetration(here))
        fun steps() = (app.shown!!.view as View.PenetrationKind).view.steps
        val before = steps().first().code
        // The same photo twice would be one.
        for ((code, scan) in listOf(step to 18, before to 19)) {
            app.takePhoto(code)
            File(fixture.photos.last().file).writeBytes(Jpeg.copyOf().also { it[12] = scan.toByte() })
            app.photoBack(fixture.photos.last())
        }
        val (first, last) = listOf(before, step).map { code -> steps().single { it.code == code } }
        assertEquals(listOf(PhotoPlace.HERE, PhotoPlace.HERE), listOf(first, last).map { it.photo!!.place })
        rule.setContent { Screens(app, Face) }
        rule.runOnIdle { app.look(first.photo) }
        // There is none before the first.
        assertEquals(0, rule.onAllNodesWithTag("compare").fetchSemanticsNodes().size)
        rule.runOnIdle { app.look(last.photo) }
        assertEquals(listOf(before, step), app.lookedSteps.map { it.code })
        assertEquals(1, rule.onAllNodesWithTag("large photo").fetchSemanticsNodes().size)
        rule.onNodeWithTag("compare").performClick()
        val boxes = rule.onAllNodesWithTag("large photo").fetchSemanticsNodes().map { it.boundsInRoot }
        assertEquals("both are whole and as large as each other", 2, boxes.size)
        assertEquals(boxes[0].size, boxes[1].size)
        for (said in listOf(first.text, last.text)) rule.onNodeWithText(said).assertIsDisplayed()
        rule.onNodeWithTag("compare").performClick()
        rule.onNodeWithText(first.text).assertDoesNotExist()
        rule.onNodeWithTag("close photo").performClick()
        assertNull(app.looked)
    }

    @Test
    fun aStepOfABoardHasItsPhotoToo() = Fixture().use { fixture ->
        fixture.sign("Ines")
        val (_, wall) = fixture.laidOut()
        val planned = fixture.act(Action.WallKind(WallAction.PlanBoards(wall))).view as View.WallKind
        val app = fixture.app()
        fun board() = (app.shown!!.view as View.BoardKind).view
        val asked = planned.view.boards.firstNotNullOf { line ->
            app.go(Place.Board(line.board))
            board().steps.find { it.photoAsked }
        }.code
        fixture.shoot(app, asked)
        assertEquals(PhotoPlace.HERE, board().steps.single { it.code == asked }.photo!!.place)
        assertEquals(Place.Board(board().board), fixture.photos.single().of)
    }

    @Test
    fun aNewStartTakesInWhatTheCameraLeft() = Fixture().use { fixture ->
        val here = penetration(fixture)
        val app = fixture.app()
        app.go(Place.Penetration(here))
        app.takePhoto(step)
        File(fixture.photos.single().file).writeBytes(Jpeg)
        Fixture(fixture.file).use { again -> assertEquals(PhotoPlace.HERE, photo(again.app())!!.place) }
    }
}
