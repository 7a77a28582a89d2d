package lapwright.app

import androidx.compose.ui.semantics.SemanticsActions
import lapwright.core.Book
import lapwright.screens.Action
import lapwright.screens.JobsAction
import lapwright.screens.NewThing
import lapwright.screens.Place
import lapwright.screens.PoleAction
import lapwright.screens.SettingsAction
import lapwright.screens.View
import lapwright.screens.WallAction
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** The app as one on a phone made for Android 15: nothing under its bars or its keyboard, and nothing lost by its ways. */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(qualifiers = "w360dp-h640dp-420dpi")
class InTheHandTest {
    @After
    fun putDown() = Held.putDown()

    private fun book(work: (Book) -> Unit = {}) = openBook(Folders(RuntimeEnvironment.getApplication())).use(work)

    private fun settings(vararg answers: Pair<String, String>) = book { book ->
        for ((field, text) in answers) book.act(context(), Action.SettingsKind(SettingsAction.Answer(field, text)))
    }

    /** The places of a bench of screens: of the demo house, with the next board that has a notch. */
    private fun demo(): List<Place> {
        val places = mutableListOf<Place>()
        book { book ->
            val house = book.act(context(), Action.JobsKind(JobsAction.OpenDemo)).place as Place.House
            book.act(context(), Action.PoleKind(PoleAction.LayOut(house.job)))
            val view = (book.view(context(), house) as View.HouseKind).view
            val wall = view.walls.first { it.measured }.wall
            book.act(context(), Action.WallKind(WallAction.PlanBoards(wall)))
            val walls = (book.view(context(), Place.Wall(wall)) as View.WallKind).view
            val notched = walls.boards.map { Place.Board(it.board) }
                .first { (book.view(context(), it) as View.BoardKind).view.notches.isNotEmpty() }
            places += listOf(notched, Place.Penetration(walls.penetrations.first().penetration))
            places += listOf(house, Place.Wall(wall), Place.Measure(wall), Place.Pole(house.job), Place.SawList(house.job))
            places += listOf(Place.Order(house.job), Place.Rules(house.job), Place.DoneList(house.job), Place.Settings, Place.Jobs)
            places += Place.New(NewThing.WALL, house.job)
        }
        return places
    }

    private fun under(gestures: Boolean) {
        val places = demo()
        val held = Held(gestures)
        val bars = held.bars()
        assertTrue("the phone has bars: $bars", bars.top > 0 && bars.bottom > 0)
        for (place in places) {
            held.go(place)
            for (asked in listOf(true, false)) {
                if (!asked) held.app.run { standing?.let(::putAway) }
                held.settle()
                held.draw(100)
                fun fixed() = held.targets().filter { it.boundsInWindow.height > 0 && it.boundsInWindow.width > 0 }
                await("targets of $place") { fixed().isNotEmpty() }
                for (target in fixed()) assertTrue("${target.texts()} of $place at ${target.boundsInWindow}, bars $bars", held.isClear(target, bars))
                if (asked) continue
                val corner = held.named(held.app.shown!!.frame.words.doneList)!!
                assertTrue("a whole target", held.dp(corner.boundsInWindow.height) >= 63.9f)
            }
        }
        held.picture(if (gestures) "bars-gestures" else "bars-buttons")
    }

    @Test
    fun nothingLiesUnderThreeButtons() = under(gestures = false)

    @Test
    @Config(qualifiers = "w800dp-h360dp-land-420dpi")
    fun nothingLiesUnderTheBarsInLandscape() = under(gestures = true)

    @Test
    fun theFieldIsInSightOverTheKeyboard() {
        val house = demo()[2] as Place.House
        val held = Held()
        held.go(Place.New(NewThing.WALL, house.job))
        await("the field") { held.tagged("text") != null }
        held.keyboard(280)
        val px = (280 * held.activity.resources.displayMetrics.density).toInt()
        val title = held.nodes().first { (held.app.standing!!.title) in it.texts() }
        val field = held.tagged("text")!!
        for (node in listOf(title, field, held.tagged("accept")!!)) assertTrue(node.texts().toString(), held.isClear(node, held.bars(), px))
        assertTrue("the field stands under its question", field.boundsInWindow.top >= title.boundsInWindow.bottom)
        held.picture("keyboard-up")
    }

    /** Asks what a board asks for: its question is whole, and every key is reached. */
    private fun questionInSight(board: Place, picture: String) {
        val held = Held()
        held.go(board)
        val question = (held.app.shown!!.view as View.BoardKind).view.asked!!
        await("the question") { question.title in held.texts() }
        val head = held.nodes().first { question.title in it.texts() }
        assertTrue("the question is whole: ${head.boundsInWindow}", held.isClear(head, held.bars()))
        for (tag in listOf("key 0", "accept")) reached(held, tag)
        held.picture(picture)
    }

    @Test
    @Config(qualifiers = "w800dp-h360dp-land-420dpi")
    fun lyingOnItsSideTheQuestionIsInSightAndEveryKeyIsReached() {
        questionInSight(demo().first(), "landscape-question")
    }

    @Test
    fun inGlovesOnASmallPhoneTheQuestionIsInSight() {
        settings("gloves" to "yes")
        questionInSight(demo().first(), "gloves-small")
    }

    @Test
    fun atTwiceTheSizeOfTextEveryKeyIsReached() {
        RuntimeEnvironment.setFontScale(2f)
        val board = demo().first()
        val held = Held()
        held.go(board)
        await("the keys") { held.tagged("key 0") != null }
        for (tag in listOf("key 0", "accept")) reached(held, tag)
        held.picture("large-question")
    }

    /** A key is in sight, or comes into sight by a scroll of what it stands in. */
    private fun reached(held: Held, tag: String) {
        fun clear() = held.isClear(held.tagged(tag)!!, held.bars()) && held.tagged(tag)!!.boundsInWindow.height >= 60
        if (clear()) return
        await("$tag in sight") {
            // A drawing that comes late makes the way longer.
            val scrolls = held.nodes().filter { it.config.contains(SemanticsActions.ScrollBy) }
            for (scroll in scrolls) scroll.config[SemanticsActions.ScrollBy].action!!(0f, 10_000f)
            held.draw(100)
            clear()
        }
    }

    @Test
    fun keysOutliveARotationAndTheEndOfTheProcess() {
        val board = demo().first()
        val held = Held()
        held.go(board)
        await("the keys") { held.tagged("key 4") != null }
        held.tap("key 4")
        held.tap("key 2")
        held.rotate("w640dp-h360dp-land-420dpi")
        await("the number") { held.texts().any { it.startsWith("42") } }
        val place = held.app.shown!!.place
        val state = held.kill()

        val next = Held(state = state)
        assertEquals(place, next.app.shown!!.place)
        await("the number again") { next.texts().any { it.startsWith("42") } }
        assertTrue("it says that it came back", next.app.shown!!.frame.words.cameBack in next.texts())
    }

    @Test
    fun backPutsAQuestionAwayBeforeItLeavesTheScreen() {
        val board = demo().first()
        val held = Held()
        held.go(board)
        await("the keys") { held.tagged("keypad") != null }
        held.back()
        assertEquals(board, held.app.shown!!.place)
        await("no keys") { held.tagged("keypad") == null }
        held.back()
        await("the screen before") { held.app.shown!!.place == Place.Jobs }
    }

    @Test
    @Config(qualifiers = "es-rMX-w360dp-h640dp-420dpi")
    fun aSpanishPhoneStartsInSpanish() {
        val held = Held()
        assertEquals("es", held.app.shown!!.remembered.language)
        assertNotNull(held.texts().toString(), held.named("Casa nueva"))
    }

    @Test
    fun withoutACameraTheTapSaysSo() {
        val bib = openBook(Folders(RuntimeEnvironment.getApplication())).use { it.withHoseBib() }
        org.robolectric.Shadows.shadowOf(RuntimeEnvironment.getApplication()).checkActivities(true)
        val held = Held()
        held.go(Place.Penetration(bib))
        held.app.takePhoto(STEP)
        await("telling") { held.app.trouble?.text == held.app.shown!!.frame.words.noCamera }
        assertNull("no photo is waited for", photo(held.app.shown!!.view)?.takeIf { it.place == lapwright.screens.PhotoPlace.WAITING })
    }

    @Test
    fun theSignsOfTheBarsFollowTheThemeOfTheApp() {
        val held = Held()
        fun light() = held.activity.window.insetsController!!.systemBarsAppearance and
            android.view.WindowInsetsController.APPEARANCE_LIGHT_STATUS_BARS != 0
        await("dark signs on the pale ground") { light() }
        held.app.act(Action.SettingsKind(SettingsAction.Answer("theme", "dark")))
        await("light signs on the dark ground") { !light() }
    }
}
