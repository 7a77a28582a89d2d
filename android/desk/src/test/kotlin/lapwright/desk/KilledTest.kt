package lapwright.desk

import lapwright.screens.Action
import lapwright.screens.BoardAction
import lapwright.screens.Place
import lapwright.screens.Question
import lapwright.screens.View
import lapwright.shell.App
import lapwright.shell.parts.Asking
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import java.io.File
import java.nio.file.Files

/** A dropped phone loses nothing: whoever comes back goes on at the same field. */
class KilledTest {
    @Test
    fun everyFieldOfABoardGoesOnWhereItWasLeft() {
        val file = File(Files.createTempDirectory("lapwright").toFile(), "book.lapwright")
        val board = Desk(file, Noon).use { desk -> Planned(desk).notched }
        val asked = mutableListOf<String>()
        repeat(4) {
            val text = Desk(file, Noon).use { desk ->
                val app = desk.app()
                if (asked.isEmpty()) app.go(Place.Board(board))
                val question = question(app)!!
                asked += question.field
                // What the plan says, to the whole inch: anything else is asked about.
                "${question.reading!!.nm / 25_400_000}".also { type(app, board, question, it) }
            }
            Desk(file, Noon).use { desk ->
                val app = desk.app()
                assertTrue("it says that one is back", app.restored)
                assertEquals(Place.Board(board), app.shown!!.place)
                val question = question(app)!!
                assertEquals(asked.last(), question.field)
                assertEquals(text, app.typing.of(question))
                app.act(Action.BoardKind(BoardAction.AnswerNotch(board, question.subject, question.field, text)))
            }
        }
        assertEquals(listOf("left", "right", "bottom-left", "top-left"), asked)
    }

    @Test
    fun anotherProcessThatIsKilledInMidEntryLosesNoKey() {
        val file = File(Files.createTempDirectory("lapwright").toFile(), "book.lapwright")
        val board = Desk(file, Noon).use { desk -> Planned(desk).notched }
        killedOnceItTyped(jvm("lapwright.desk.KilledTestKt", file.path, board))
        Desk(file, Noon).use { desk ->
            val app = desk.app()
            assertEquals(Place.Board(board), app.shown!!.place)
            assertEquals("52 3/8", app.typing.of(question(app)!!))
        }
    }
}

private fun question(app: App): Question? =
    (app.shown!!.view as View.BoardKind).view.let { view ->
        app.asked(view.questions + view.notches.flatMap { it.questions }, view.asked)
    }

private fun type(app: App, board: String, question: Question, text: String) {
    val asking = Asking(question, { Action.BoardKind(BoardAction.KeepDraft(board, question.subject, question.field, it)) }, { error(it) })
    for (end in 1..text.length) {
        app.typing.put(question, text.take(end))
        app.keep(asking.keep(text.take(end)))
    }
}

/** The process that is killed: types, says so, and hangs. */
fun main(args: Array<String>) {
    val desk = Desk(File(args[0]), Noon)
    val app = desk.app()
    app.go(Place.Board(args[1]))
    type(app, args[1], question(app)!!, "52 3/8")
    println("typed")
    Thread.sleep(600_000)
}
