package lapwright.shell

import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onNodeWithContentDescription
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import lapwright.core.Book
import lapwright.core.UniffiWithHandle
import lapwright.screens.Action
import lapwright.screens.BoardAction
import lapwright.screens.BoardView
import lapwright.screens.Context
import lapwright.screens.DoneListAction
import lapwright.screens.Drawing
import lapwright.screens.Frame
import lapwright.screens.FrameView
import lapwright.screens.Given
import lapwright.screens.Outcome
import lapwright.screens.Place
import lapwright.screens.Remembered
import lapwright.screens.SettingsAction
import lapwright.screens.Subject
import lapwright.screens.View
import lapwright.screens.WallAction
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test

/** The same book, writing down each call that the screens make. */
private class CountedBook(book: Book) : Book(UniffiWithHandle, book.uniffiCloneHandle()) {
    private val made = mutableListOf<String>()

    /** The calls since the last look. */
    fun made(): List<String> = made.toList().also { made.clear() }

    override fun remembered(): Remembered = super.remembered().also { made += "remembered" }

    override fun frame(context: Context): FrameView = super.frame(context).also { made += "frame" }

    override fun view(context: Context, place: Place): View = super.view(context, place).also { made += "view" }

    override fun go(context: Context, place: Place): View = super.go(context, place).also { made += "go" }

    override fun act(context: Context, action: Action): Outcome = super.act(context, action).also { made += "act" }

    override fun drawing(context: Context, subject: Subject, frame: Frame): Drawing =
        super.drawing(context, subject, frame).also { made += "drawing" }
}

/** A call of the book costs a crossing: one for a tap, and one for each drawing that the tap changed. */
class CallsTest {
    @get:Rule
    val rule = createComposeRule()

    private fun App.board(): BoardView = (shown!!.view as View.BoardKind).view

    /** What work calls of the book until the screen is still. */
    private fun CountedBook.during(work: () -> Unit): List<String> {
        rule.waitForIdle()
        made()
        work()
        rule.waitForIdle()
        return made()
    }

    private fun tapped(work: (Fixture, CountedBook, App) -> Unit) = Fixture().use { fixture ->
        fixture.sign("Ines")
        CountedBook(fixture.book).use { book ->
            val app = App(
                book, fixture.services, fixture.clock, fixture.entropy,
                CoroutineScope(Dispatchers.Unconfined), Dispatchers.Unconfined,
            ).apply { start() }
            assertEquals(listOf("remembered", "frame", "view"), book.made())
            rule.setContent { Screens(app, Face) }
            work(fixture, book, app)
            assertEquals(null, app.trouble)
        }
    }

    @Test
    fun aBoardIsMadeMeasuredAndTakenBackWithOneCallATap() = tapped { fixture, book, app ->
        val (_, wall) = fixture.laidOut()
        val planned = fixture.act(Action.WallKind(WallAction.PlanBoards(wall))).view as View.WallKind
        val (board, question) = planned.view.boards.filter { it.notched }.firstNotNullOf { line ->
            (fixture.view(Place.Board(line.board)) as View.BoardKind).view.asked?.let { line.board to it }
        }
        val arrived = book.during { app.go(Place.Board(board)) }
        assertEquals("a place: $arrived", 1, arrived.count { it != "drawing" })
        assertEquals("go", arrived.first())
        assertEquals(question.field, app.board().asked!!.field)

        // What the plan says, to the whole inch: anything else is asked about.
        for (key in "${question.reading!!.nm / 25_400_000}") {
            assertEquals(listOf("act"), book.during { rule.onNodeWithTag("key $key").performClick() })
        }
        val answered = book.during { rule.onNodeWithTag("accept").performClick() }
        assertEquals("an answer: $answered", listOf("act"), answered.filter { it != "drawing" })
        assertTrue(app.board().asked!!.field != question.field)
        app.board().asked?.let { asked -> rule.runOnIdle { app.putAway(asked) } }

        val list = Place.DoneList(null)
        assertEquals(listOf("go"), book.during { app.go(list) })
        val group = (app.shown!!.view as View.DoneListKind).view.lines.first().group
        assertEquals(listOf("act"), book.during { app.act(Action.DoneListKind(DoneListAction.Undo(null, group))) })
        assertEquals(listOf("go"), book.during { app.back() }.filter { it != "drawing" })
        assertEquals("the answer was taken back", question.field, app.board().asked!!.field)
    }

    @Test
    fun aDrawingIsAskedForOnceAndNotForBeingLookedAtCloser() = tapped { fixture, book, app ->
        val (_, wall) = fixture.laidOut()
        assertEquals(listOf("go", "drawing"), book.during { app.go(Place.Wall(wall)) })
        val closer = app.shown!!.frame.words.zoomIn
        assertEquals(
            "drawn nearer by the screen alone", listOf<String>(),
            book.during {
                rule.onNodeWithContentDescription(closer).performScrollTo().performClick()
            },
        )
        rule.runOnIdle { app.go(Place.DoneList(null)) }
        assertEquals("again on coming back", listOf("go", "drawing"), book.during { app.back() })
    }

    @Test
    fun onlyASettingThatChangesAllWordsAsksForThem() = tapped { _, book, app ->
        assertEquals(listOf("go"), book.during { app.go(Place.Settings) })
        val saw = Action.SettingsKind(SettingsAction.Answer("saw", "table saw"))
        assertEquals("what is remembered is the same", listOf("act", "remembered"), book.during { app.act(saw) })
        val language = Action.SettingsKind(SettingsAction.Answer("language", "es"))
        assertEquals(listOf("act", "remembered", "frame", "view"), book.during { app.act(language) })
    }

    @Test
    fun whoeverComesBackFindsThePlaceThatATapLedTo() = tapped { fixture, book, app ->
        val job = fixture.demo()
        app.go(Place.House(job))
        val making = BoardAction.CreateLoose(job, listOf(Given("length", "31")))
        assertEquals(listOf("act"), book.during { app.act(Action.BoardKind(making)) }.filter { it != "drawing" })
        assertEquals("by an action", app.shown!!.place, fixture.app().shown!!.place)
        assertTrue(app.shown!!.place is Place.Board)
        app.back()
        assertEquals("by going", Place.House(job), fixture.app().shown!!.place)
    }
}
