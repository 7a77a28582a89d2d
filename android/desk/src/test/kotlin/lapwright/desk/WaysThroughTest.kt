package lapwright.desk

import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.test.performSemanticsAction
import lapwright.screens.Action
import lapwright.screens.BoardView
import lapwright.screens.PenetrationAction
import lapwright.screens.Place
import lapwright.screens.StepState
import lapwright.screens.View
import lapwright.screens.services.Camera
import lapwright.screens.services.PhotoWanted
import lapwright.screens.services.Services
import lapwright.shell.App
import lapwright.shell.Clock
import lapwright.shell.Screens
import lapwright.shell.parts.tick
import lapwright.shell.parts.wantsPhoto
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNotEquals
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import java.io.File
import java.nio.file.Files

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
        assertTrue(notch.cutText, rule.onAllNodes(hasText(notch.cutText, substring = true)).fetchSemanticsNodes().isNotEmpty())
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
    fun tickingAStepIsOneTapAndOneMoreWhereThereIsSomethingToMind() = demo(Moving) { desk, planned ->
        val app = desk.app()
        app.go(Place.Penetration(planned.penetration))
        rule.setContent { Screens(app, Face) }
        fun step() = (app.shown!!.view as View.PenetrationKind).view.steps.first { it.state == StepState.OPEN }
        while (step().cautionsRead) {
            val before = step().code
            taps = 0
            tap(hasTestTag("next"))
            assertEquals("nothing to mind", 1, taps)
            assertNotEquals(before, step().code)
        }
        val first = step().code
        taps = 0
        tap(hasTestTag("next"))
        assertEquals("read, not signed", first, step().code)
        tap(hasTestTag("next"))
        assertEquals(2, taps)
        assertNotEquals(first, step().code)
        // Undo: one tap on the bar. What was read today is not read again.
        tap(hasTestTag("undo"))
        assertEquals(first, step().code)
        tap(hasTestTag("next"))
        assertNotEquals(first, step().code)
        assertEquals(4, taps)
    }

    /** A loose board without any house: its sizes, then the four readings of its notch, and the marks are there. */
    @Test
    fun aNotchWithoutAnyHouse() = demo { desk, _ ->
        val app = desk.app()
        app.go(Place.Jobs)
        rule.setContent { Screens(app, Face) }
        taps = 0
        tap(hasText(app.shown!!.frame.words.notchNow))
        var readings = 0
        // Its length, its height and the lap.
        for ((whole, mark) in listOf("96" to "", "8" to "1/4", "1" to "1/4")) {
            answer(app, whole, mark)
            assertEquals(null, app.trouble)
            readings += 1
        }
        val begun = taps
        tap(hasTestTag("new notch"))
        assertEquals("to the notch", 1, taps - begun)
        for (whole in listOf("40", "46", "0", "3")) {
            answer(app, whole)
            readings += 1
        }
        assertEquals(null, app.trouble)
        assertTrue(board(app).notches.single().face != null)
        assertEquals(7, readings)
    }

    /** A loose board of a house, whose boards' height and lap are known: three taps, its length and the four readings. */
    @Test
    fun aLooseBoardOfAHouse() = demo { desk, planned ->
        val app = desk.app()
        app.go(Place.Jobs)
        rule.setContent { Screens(app, Face) }
        taps = 0
        tap(hasText("Demo: Plover Cottage"))
        tap(hasText(app.shown!!.frame.words.looseBoard))
        val begun = taps
        answer(app, "96")
        val typed = taps - begun
        tap(hasTestTag("new notch"))
        assertEquals("taps beside the keys", 3, taps - typed)
        for (whole in listOf("40", "46", "0", "3")) answer(app, whole)
        assertEquals(null, app.trouble)
        assertTrue(board(app).notches.single().face != null)
        assertEquals("it is the house's", planned.job, board(app).job)
    }

    /** The camera beside the tick, its shutter, the tick: three taps, and none of them after a scroll. */
    @Test
    fun aStepWithItsPhotoIsThreeTaps() {
        val wanted = mutableListOf<PhotoWanted>()
        val camera = object : Camera {
            override fun take(photo: PhotoWanted) = wanted.add(photo)
        }
        demo(Moving) { desk, planned ->
            val app = desk.app(services = Services(camera = camera))
            val here = planned.penetration
            app.go(Place.Penetration(here))
            fun steps() = (app.shown!!.view as View.PenetrationKind).view.steps
            fun step() = steps().first { it.state == StepState.OPEN }
            while (!wantsPhoto(step()) || step().opens != null) {
                app.act(Action.PenetrationKind(PenetrationAction.SignStep(here, step().code, tick(step()))))
                assertEquals(null, app.trouble)
            }
            app.read(step().code)
            rule.setContent { Screens(app, Face) }
            val code = step().code
            for (tag in listOf("camera", "next")) rule.onNode(hasTestTag(tag)).assertIsDisplayed()
            taps = 0
            tap(hasTestTag("camera"))
            File(wanted.single().file).writeBytes(photo())
            rule.runOnIdle { app.photoBack(wanted.single()) }
            taps += 1
            tap(hasTestTag("next"))
            assertEquals(3, taps)
            assertTrue("the tick holds the photo", steps().single { it.code == code }.photo!!.signed)
        }
    }

    @Test
    fun aFirstTimeUserReachesEachWithTheDemo() {
        val book = File(Files.createTempDirectory("lapwright").toFile(), "first.lapwright")
        Desk(book, Noon).use { desk ->
            val app = desk.app()
            rule.setContent { Screens(app, Face) }
            tap(hasText(app.shown!!.frame.words.openDemo))
            assertTrue(app.shown!!.view is View.HouseKind)
            tap(hasText("Street gable"))
            assertTrue(app.shown!!.view is View.WallKind)
            tap(hasText("A · Light"))
            assertTrue(app.shown!!.view is View.PenetrationKind)
            tap(SemanticsMatcher.expectValue(SemanticsProperties.ContentDescription, listOf(app.shown!!.frame.words.back)))
            assertTrue(app.shown!!.view is View.WallKind)
        }
    }
}

/** A clock on which a second goes by between two taps. */
private object Moving : Clock {
    private var looks = 0L

    override fun nowMs(): Long = Noon.nowMs() + 1_000 * looks++

    override fun utcOffsetMinutes() = Noon.utcOffsetMinutes()
}
