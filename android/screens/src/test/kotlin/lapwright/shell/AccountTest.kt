package lapwright.shell

import androidx.compose.runtime.mutableStateOf
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import lapwright.screens.Action
import lapwright.screens.BackupsAction
import lapwright.screens.CopyLine
import lapwright.screens.HouseAction
import lapwright.screens.JobsAction
import lapwright.screens.Place
import lapwright.screens.RestoreAction
import lapwright.screens.View
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import java.io.File
import java.time.Instant
import java.time.ZoneOffset
import java.time.format.DateTimeFormatter

/** A book that is not found as it was left: what the houses say of it, until somebody has read it. */
class AccountTest {
    @get:Rule
    val rule = createComposeRule()

    private val shown = mutableStateOf<App?>(null)

    private fun show(app: App) {
        rule.runOnIdle { shown.value = app }
        rule.waitForIdle()
    }

    private fun Fixture.account() = (view(Place.Jobs) as View.JobsKind).view.account

    private fun Fixture.lap(job: String) =
        (view(Place.House(job)) as View.HouseKind).view.questions.first { it.field == "lap" }.answer

    private fun Fixture.answerLap(job: String, text: String) {
        act(Action.HouseKind(HouseAction.Answer(job, "lap", text)))
    }

    /** A house that one answer makes. */
    private fun Fixture.house(name: String): String =
        (act(Action.JobsKind(JobsAction.Create(name, null))).place as Place.House).job

    private fun Fixture.named() = (view(Place.Jobs) as View.JobsKind).view.jobs.single().name

    /** One more copy that the book keeps of itself, as the screen of the copies lists it. */
    private fun Fixture.keepCopy(): CopyLine =
        (act(Action.BackupsKind(BackupsAction.Keep)).view as View.BackupsKind).view.copies.first()

    /** What the houses say when the app is opened. It stands there until it is acknowledged, and never again. */
    private fun accountOf(file: File): List<String> {
        rule.setContent { shown.value?.let { Screens(it, Face) } }
        val told = Fixture(file).use { fixture ->
            val app = fixture.app()
            assertEquals("read before the work goes on", Place.Jobs, app.shown!!.place)
            show(app)
            for (line in fixture.account()) {
                rule.onNodeWithText(line).performScrollTo().assertExists()
                assertFalse("$line: the folders of a phone tell nobody anything", line.contains(file.parent))
            }
            fixture.account()
        }
        assertFalse("something is told", told.isEmpty())
        Fixture(file).use { fixture ->
            val app = fixture.app()
            assertEquals("told until somebody has read it", told, fixture.account())
            show(app)
            rule.onNodeWithTag("account read").performScrollTo().performClick()
            assertNull(app.trouble)
            rule.onNodeWithTag("account read").assertDoesNotExist()
            for (line in told) rule.onNodeWithText(line).assertDoesNotExist()
        }
        Fixture(file).use { fixture ->
            show(fixture.app())
            rule.onNodeWithTag("account read").assertDoesNotExist()
            assertEquals("not told any more", emptyList<String>(), fixture.account())
        }
        return told
    }

    @Test
    fun aBookThatIsGoneComesFromItsCopies() {
        val first = Fixture()
        first.sign("Ines")
        val job = first.house("Lot 12")
        first.answerLap(job, "1 3/8")
        first.answerLap(job, "1 1/2")
        val copy = first.keepCopy()
        first.close()
        assertTrue(first.file.delete())
        val told = accountOf(first.file).joinToString("\n")
        tells(
            told,
            "The book was not in its place.",
            "3 answers were taken from the copy “${copy.said}”.",
            "3 answers were in the book then",
            "by Ines",
        )
        Fixture(first.file).use { assertEquals("1 1/2\"", it.lap(job)) }
    }

    @Test
    fun anOlderBookInThePlaceOfTheNewestIsToldOfWithWhatIsLost() {
        val (first, older, job) = olderBook()
        first.sign("Teo")
        first.answerLap(job, "1 3/8")
        first.answerLap(job, "1 1/2")
        first.close()
        first.file.writeBytes(older)
        val told = accountOf(first.file).joinToString("\n")
        tells(
            told,
            "an older one",
            "2 answers were in the book then",
            "2 accepted answers are lost, made after ${told(AT)} by Ines.",
        )
        assertFalse("nothing came from copies: $told", told.contains("taken from"))
        Fixture(first.file).use { assertEquals("1 3/4\"", it.lap(job)) }
    }

    @Test
    fun whatAnOlderBookLacksComesFromTheCopies() {
        val (first, older, job) = olderBook()
        first.answerLap(job, "1 3/8")
        first.answerLap(job, "1 1/2")
        val copy = first.keepCopy()
        first.close()
        first.file.writeBytes(older)
        val told = accountOf(first.file).joinToString("\n")
        tells(
            told,
            "an older one",
            "2 answers were taken from the copy “${copy.said}”.",
            "4 answers were in the book then",
            "No accepted answer is known to be lost.",
        )
        Fixture(first.file).use { assertEquals("1 1/2\"", it.lap(job)) }
    }

    /** A book, its file as it was after two answers of Ines at [AT], and its house. */
    private fun olderBook(): Triple<Fixture, ByteArray, String> {
        val before = Fixture().apply { stands = AT }
        before.sign("Ines")
        val job = before.house("Lot 12")
        before.answerLap(job, "1 3/4")
        before.close()
        return Triple(Fixture(before.file), before.file.readBytes(), job)
    }

    /** Two answers around it are whole; of the one that was hurt its time and its signer can still be read. */
    @Test
    fun anAnswerThatIsLostIsToldOfByWhenAndByWhom() {
        val first = Fixture()
        first.sign("Ines")
        val job = first.house("Lot 12")
        first.stands = AT
        first.answerLap(job, "1 3/8")
        first.sign("Teo")
        first.stands = AT + 90 * 60_000L
        first.act(Action.JobsKind(JobsAction.Rename(job, NAME)))
        first.close()
        val bytes = first.file.readBytes()
        val places = placesOf(NAME, bytes)
        assertTrue("in the log and in the tables: $places", places.size > 1)
        for (at in places) bytes[at] = 'P'.code.toByte()
        first.file.writeBytes(bytes)
        val told = accountOf(first.file)
        val lost = told.single { it.contains("lost") }
        assertTrue(lost, lost.startsWith("One accepted answer is lost, made after ${told(AT)} by Ines."))
        assertTrue("$told", told.contains("It was of ${told(AT + 90 * 60_000L)} by Teo."))
        assertTrue("$told", told.contains("The file that was found was kept: ${first.file.name}.damaged-1"))
        Fixture(first.file).use { assertEquals("1 3/8\"", it.lap(job)) }
    }

    /** One letter of a name that was typed, in the log or in a table: nothing else of the copy is hurt. */
    @Test
    fun anAlteredCopyIsRefusedByItsNameAndTheBookIsAsItWas(): Unit = Fixture().use { fixture ->
        val job = fixture.house(NAME)
        val copy = fixture.keepCopy()
        fixture.answerLap(job, "1 1/2")
        val bytes = File(copy.copy).readBytes()
        rule.setContent { shown.value?.let { Screens(it, Face) } }
        val app = fixture.app()
        show(app)
        fun look() {
            rule.runOnIdle { app.go(Place.Backups) }
            rule.onNodeWithTag("copy ${copy.copy}").performScrollTo().performClick()
            rule.waitForIdle()
        }
        fun isRefused(at: Int) {
            val text = app.trouble!!.text
            assertTrue("byte $at: $text", text.startsWith("The copy “${copy.said}” is damaged or was changed"))
            rule.onNodeWithText(text).assertExists()
            assertEquals("byte $at", NAME to "1 1/2\"", fixture.named() to fixture.lap(job))
        }
        look()
        val whole = app.shown!!.view
        var refused = 0
        for (at in placesOf(NAME, bytes)) {
            File(copy.copy).writeBytes(bytes.copyOf().also { it[at] = 'P'.code.toByte() })
            look()
            if (app.shown!!.place == Place.Restore(copy.copy)) {
                assertEquals("what a page has left over is no value", whole, app.shown!!.view)
                continue
            }
            isRefused(at)
            // It may have been looked at while it was whole.
            rule.runOnIdle { app.act(Action.RestoreKind(RestoreAction.Restore(copy.copy))) }
            rule.waitForIdle()
            isRefused(at)
            refused += 1
        }
        assertTrue("in the log and in the tables: $refused", refused > 1)
        File(copy.copy).writeBytes(bytes)
        look()
        assertEquals("as it was made it is one to go back to", Place.Restore(copy.copy), app.shown!!.place)
        assertNull(app.trouble)
    }

    private fun tells(told: String, vararg all: String) {
        for (said in all) assertTrue("$said: $told", told.contains(said))
    }

    private companion object {
        /** A name that no other text of a book has in it. */
        const val NAME = "Quokka Cottage"

        const val AT = 1_777_910_400_000L

        fun placesOf(text: String, bytes: ByteArray): List<Int> {
            val wanted = text.toByteArray()
            return (0..bytes.size - wanted.size).filter { at -> wanted.indices.all { bytes[at + it] == wanted[it] } }
        }

        /** A moment as it is told where it happened. */
        fun told(ms: Long): String =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm").withZone(ZoneOffset.ofHours(-6)).format(Instant.ofEpochMilli(ms))
    }
}
