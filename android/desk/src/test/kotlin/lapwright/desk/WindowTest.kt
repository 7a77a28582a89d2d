package lapwright.desk

import lapwright.screens.Action
import lapwright.screens.BoardAction
import lapwright.screens.NextWork
import lapwright.screens.Place
import lapwright.screens.View
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import java.io.File
import java.nio.file.Files
import java.util.concurrent.TimeUnit

/** The window itself, on a display of its own: clicked with a mouse from the list of jobs to a drawn notch. */
class WindowTest {
    @Test
    fun clickedFromTheJobsToADrawnNotch() {
        val folder = Files.createTempDirectory("lapwright").toFile()
        val (clicked, rehearsed) = listOf("clicked", "rehearsed").map { File(folder, "$it.lapwright") }
        Desk(clicked, Noon).use { desk ->
            upToANotch(desk, Planned(desk))
            desk.app().go(Place.Jobs)
        }
        clicked.copyTo(rehearsed)
        val (board, answers) = rehearse(rehearsed)
        val picture = File("target/window.png")
        display { display ->
            val mouse = jvm("lapwright.desk.MouseKt", clicked.path, picture.path, *answers.toTypedArray())
            val process = mouse.apply { environment()["DISPLAY"] = display }.start()
            val printed = process.inputReader().readText()
            assertTrue("it ended", process.waitFor(60, TimeUnit.SECONDS))
            assertEquals(printed, 0, process.exitValue())
        }
        val drawn = Desk(clicked, Noon).use { desk ->
            val view = (desk.view(Place.Board(board)) as View.BoardKind).view
            view.notches.first { it.taped }.cutText
        }
        assertEquals("the same as without a window", answers.last(), drawn)
    }

    /** The next board's readings to the whole inch, answered without a window; and what is to be cut then. */
    private fun rehearse(book: File): Pair<String, List<String>> = Desk(book, Noon).use { desk ->
        val job = (desk.view(Place.Jobs) as View.JobsKind).view.jobs.single().job
        val next = (desk.view(Place.House(job)) as View.HouseKind).view.next
        val board = (next as NextWork.HangBoard).board
        val answers = mutableListOf<String>()
        fun view() = (desk.view(Place.Board(board)) as View.BoardKind).view
        while (true) {
            val view = view()
            val asked = view.asked ?: break
            val question = (view.questions + view.notches.flatMap { it.questions }).first {
                it.field == asked.field &&
                    it.subject == asked.subject
            }
            val inches = question.reading!!.nm / 25_400_000
            answers += "${maxOf(inches, 0)}"
            desk.act(Action.BoardKind(BoardAction.AnswerNotch(board, question.subject, question.field, answers.last())))
        }
        board to answers + view().notches.first { it.taped }.cutText
    }
}

/** Works with a display that nobody sees. */
private fun <T> display(work: (String) -> T): T {
    val server = ProcessBuilder("Xvfb", "-displayfd", "1", "-screen", "0", "800x1000x24", "-nolisten", "tcp")
        .redirectError(ProcessBuilder.Redirect.DISCARD).start()
    try {
        val number = server.inputReader().readLine() ?: error("Xvfb opened no display")
        return work(":$number")
    } finally {
        server.destroy()
        server.waitFor(10, TimeUnit.SECONDS)
    }
}
