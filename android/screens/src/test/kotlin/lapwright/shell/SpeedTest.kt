package lapwright.shell

import lapwright.screens.Action
import lapwright.screens.BoardAction
import lapwright.screens.BoardView
import lapwright.screens.Given
import lapwright.screens.HouseAction
import lapwright.screens.JobsAction
import lapwright.screens.MeasureAction
import lapwright.screens.Place
import lapwright.screens.PoleAction
import lapwright.screens.View
import lapwright.screens.WallAction
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test

/**
 * From a tap to the new state of the Board screen, on a large house: the goal is 8 ms with the library as it is shipped.
 *
 * The suites run on a library that is built for finding faults and shares its processor, so the limit here is only what a
 * hand still takes for at once; the measured times are printed.
 */
class SpeedTest {
    private fun given(vararg answers: Pair<String, String>) = answers.map { (field, text) -> Given(field, text) }

    /** A house of 40 walls and 300 penetrations, and a board of its last wall that a block is cut into. */
    private fun Fixture.largeHouse(): String {
        sign("Ines")
        val job = (act(Action.JobsKind(JobsAction.Create("Large house", null))).place as Place.House).job
        val house = mapOf("board-height" to "8 1/4", "board-thickness" to "5/16", "lap" to "1 1/4", "nail-line" to "3/4")
        for ((field, text) in house) act(Action.HouseKind(HouseAction.Answer(job, field, text)))
        act(Action.HouseKind(HouseAction.AddStock(job, "144", "")))
        val walls = (0 until 40).map { wall(job, it) }
        val pole = mapOf("from" to "0", "to" to "108", "mode" to "equal", "reveal-max" to "7", "reveal-min" to "5")
        for ((field, text) in pole) act(Action.PoleKind(PoleAction.Answer(job, field, text)))
        act(Action.PoleKind(PoleAction.LayOut(job)))
        val planned = walls.map { (act(Action.WallKind(WallAction.PlanBoards(it))).view as View.WallKind).view }
        val (boards, penetrations) = planned.sumOf { it.boards.size } to planned.sumOf { it.penetrations.size }
        println("large house: ${planned.size} walls, $boards boards, $penetrations penetrations")
        assertTrue("$boards boards", boards >= 2_500)
        assertEquals(300, penetrations)
        return planned.last().boards.first { it.notched && board(it.board).asked != null }.board
    }

    private fun Fixture.wall(job: String, number: Int): String {
        val made = act(Action.HouseKind(HouseAction.AddWall(job, "Wall $number")))
        val wall = when (val place = made.place) {
            is Place.Measure -> place.wall
            is Place.Wall -> place.wall
            else -> error("$place")
        }
        val sizes = mapOf(
            "width" to "480", "left-height" to "108", "right-height" to "108", "base" to "0",
            "first-stud" to "0", "stud-spacing" to "16", "trim-left" to "0", "trim-right" to "0",
        )
        for ((field, text) in sizes) act(Action.MeasureKind(MeasureAction.Answer(wall, field, text)))
        // 20 walls with eight and 20 with seven make 300.
        for (at in 0 until 7 + number % 2) {
            val tap = given(
                "what" to "hose-bib", "width" to "1", "from-left" to "${40 + 52 * at}", "from-base" to "${16 + 9 * at}",
            )
            act(Action.WallKind(WallAction.AddPenetration(wall, tap)))
        }
        return wall
    }

    private fun Fixture.board(board: String): BoardView = (view(Place.Board(board)) as View.BoardKind).view

    @Test
    fun aTapOnALargeHouseIsAnsweredAtOnce() = Fixture().use { fixture ->
        val board = fixture.largeHouse()
        val app = fixture.app()
        val question = fixture.board(board).asked!!

        // The first reading makes the notch a taped one, under a name of its own.
        fun notch() =
            (app.shown!!.view as View.BoardKind).view.notches
                .flatMap { it.questions }.first { it.field == question.field }.subject
        val arriving = times({ app.go(Place.Jobs) }) { app.go(Place.Board(board)) }
        assertEquals(Place.Board(board), app.shown!!.place)
        // A little to both sides of what the plan says: anything farther off is asked about.
        fun typed(key: Int) = "${question.reading!!.nm / 25_400_000 + key % 2}"
        var keys = 0
        val typing = times {
            keys += 1
            app.keep(Action.BoardKind(BoardAction.KeepDraft(board, notch(), question.field, typed(keys))))
        }
        val answering = times {
            keys += 1
            app.act(Action.BoardKind(BoardAction.AnswerNotch(board, notch(), question.field, typed(keys))))
        }
        assertEquals(null, app.trouble)
        assertTrue(fixture.board(board).asked?.field != question.field)
        for ((what, times) in listOf("to the board" to arriving, "a key" to typing, "an answer" to answering)) {
            val (median, late) = times[times.size / 2] to times[times.size * 95 / 100]
            println("board of a large house, $what: median %.2f ms, p95 %.2f ms".format(median, late))
            assertTrue("$what takes $median ms", median < LIMIT)
        }
    }

    /** Milliseconds of one tap each, the shortest first; the first ones are not counted. */
    private fun times(before: () -> Unit = {}, tap: () -> Unit): List<Double> = (0 until WARM + COUNTED).map {
        before()
        val start = System.nanoTime()
        tap()
        (System.nanoTime() - start) / 1e6
    }.drop(WARM).sorted()

    private companion object {
        const val WARM = 30
        const val COUNTED = 200

        /** Milliseconds. */
        const val LIMIT = 100.0
    }
}
