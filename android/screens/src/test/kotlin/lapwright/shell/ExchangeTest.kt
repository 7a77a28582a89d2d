package lapwright.shell

import androidx.compose.runtime.mutableStateOf
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onAllNodesWithText
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import lapwright.core.Refusal
import lapwright.screens.Action
import lapwright.screens.HouseAction
import lapwright.screens.Place
import lapwright.screens.RestoreAction
import lapwright.screens.View
import lapwright.screens.services.Picked
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import java.io.File

/** Copies of the book, and what two colleagues hand over to each other, on real books. */
class ExchangeTest {
    @get:Rule
    val rule = createComposeRule()

    private fun tap(tag: String) = rule.onNodeWithTag(tag).performScrollTo().performClick()

    private fun next() = rule.onNodeWithTag("next").performClick()

    private fun App.backups() = (shown!!.view as View.BackupsKind).view

    private fun App.takeIn() = (shown!!.view as View.TakeInKind).view

    private fun App.differences() = (shown!!.view as View.DifferencesKind).view

    private fun Fixture.jobs() = (view(Place.Jobs) as View.JobsKind).view

    private fun Fixture.lap(job: String) =
        (view(Place.House(job)) as View.HouseKind).view.questions.first { it.field == "lap" }.answer

    private fun Fixture.answerLap(job: String, text: String) {
        act(Action.HouseKind(HouseAction.Answer(job, "lap", text)))
    }

    /** Hands a house over on the screen, and gives the file. */
    private fun Fixture.handOver(app: App, job: String, next: Boolean): String {
        rule.runOnIdle { app.go(Place.HandOver(job)) }
        if (next) next() else tap("share all")
        assertNull(app.trouble)
        val (title, path) = shared.last()
        assertTrue(title, title.contains("Plover Cottage"))
        // Another phone has it under a path of its own.
        return File.createTempFile("theirs", ".lapwright-house").apply { writeBytes(File(path).readBytes()) }.path
    }

    @Test
    fun aCopyIsKeptByHandGoneBackToAndGoneBackOn(): Unit = Fixture().use { fixture ->
        val job = fixture.demo()
        val app = fixture.app()
        app.go(Place.Jobs)
        rule.setContent { Screens(app, Face) }
        tap("backups")
        assertEquals(Place.Backups, app.shown!!.place)
        rule.onNodeWithText(app.shown!!.frame.words.noCopies).assertExists()
        tap("keep copy")
        val copy = app.backups().copies.single()
        val before = fixture.lap(job)
        fixture.answerLap(job, "1 1/2")
        assertFalse(before == fixture.lap(job))

        tap("copy ${copy.copy}")
        val preview = (app.shown!!.view as View.RestoreKind).view
        for (line in preview.lines) rule.onAllNodesWithText(line).onFirst().assertExists()
        assertEquals("1 1/2\"", fixture.lap(job))
        next()
        assertNull(app.trouble)
        assertEquals(before, fixture.lap(job))
        val done = app.backups().done.single()
        rule.onNodeWithText(done).assertIsDisplayed()

        val was = app.backups().copies.first { done.contains(it.said) }
        tap("copy ${was.copy}")
        next()
        assertEquals("1 1/2\"", fixture.lap(job))
        rule.runOnIdle { app.back() }
        assertEquals(Place.Jobs, app.shown!!.place)
    }

    @Test
    fun everythingGoesIntoOneFileThatANewPhoneGoesBackTo(): Unit = Fixture().use { fixture ->
        val job = fixture.demo()
        val app = fixture.app()
        app.go(Place.Backups)
        rule.setContent { Screens(app, Face) }
        next()
        assertNull(app.trouble)
        val (_, path) = fixture.shared.single()
        assertEquals("Copied today", app.backups().copied)

        Fixture().use { other ->
            val theirs = other.app()
            other.picks = path
            rule.runOnIdle {
                theirs.go(Place.Backups)
                theirs.pickFile()
            }
            assertEquals(Place.Restore(path), theirs.shown!!.place)
            val preview = (theirs.shown!!.view as View.RestoreKind).view
            rule.runOnIdle { theirs.act(Action.RestoreKind(RestoreAction.Restore(preview.copy))) }
            assertNull(theirs.trouble)
            assertEquals(listOf(job), other.jobs().jobs.map { it.job })
        }
    }

    @Test
    fun aHouseGoesToAColleagueAndDifferencesAreShownUntilLookedAt(): Unit = Fixture().use { one ->
        Fixture().use { two ->
            one.sign("Ines")
            two.sign("Teo")
            val job = one.demo()
            val (mine, theirs) = one.app() to two.app()
            val shown = mutableStateOf(mine)
            rule.setContent { Screens(shown.value, Face) }
            val file = one.handOver(mine, job, next = true)
            val words = (mine.shown!!.view as View.HandOverKind).view.said

            rule.runOnIdle { shown.value = theirs }
            two.picks = file
            tap("pick file")
            val sender = theirs.takeIn().senders.single()
            assertTrue(words, words.contains(sender.words))
            assertFalse("nothing comes in before the words were compared", theirs.takeIn().ready)
            rule.onNodeWithTag("next").assertDoesNotExist()
            rule.onNodeWithText(sender.words).assertExists()
            tap("same words")
            next()
            assertNull(theirs.trouble)
            assertTrue(theirs.differences().differences.isEmpty())
            assertEquals(listOf(job), two.jobs().jobs.map { it.job })
            rule.runOnIdle { theirs.back() }
            assertEquals("not to the file that is taken in", Place.Jobs, theirs.shown!!.place)

            two.answerLap(job, "1 1/2")
            // The later answer stands: this phone's clock goes on by a quarter of an hour.
            repeat(900) { one.entropy.draw() }
            one.answerLap(job, "1 3/8")
            rule.runOnIdle { shown.value = mine }
            val later = one.handOver(mine, job, next = true)
            rule.runOnIdle { shown.value = theirs }
            two.picks = later
            rule.runOnIdle {
                theirs.go(Place.Jobs)
                theirs.pickFile()
            }
            next()
            val line = theirs.differences().differences.single()
            for (text in listOf(line.title, line.stands, line.other)) rule.onNodeWithText(text).assertExists()
            rule.runOnIdle { theirs.go(Place.Jobs) }
            tap("differences")
            next()
            assertEquals(Place.Jobs, theirs.shown!!.place)
            rule.onNodeWithTag("differences").assertDoesNotExist()
            assertEquals("", two.jobs().differences)
            assertEquals(one.lap(job), two.lap(job))
        }
    }

    @Test
    fun aFileThatIsNoneOfOursSaysSoAndChangesNothing(): Unit = Fixture().use { fixture ->
        fixture.demo()
        val app = fixture.app()
        app.go(Place.Jobs)
        rule.setContent { Screens(app, Face) }
        fixture.picks = File.createTempFile("holiday", ".txt").apply { writeText("not ours") }.path
        tap("pick file")
        assertEquals(Place.Jobs, app.shown!!.place)
        assertTrue(app.trouble!!.text, app.trouble!!.text.contains("is not a book"))
        rule.runOnIdle { app.picked(Picked.Unreadable) }
        assertEquals(app.shown!!.frame.words.fileUnreadable, app.trouble!!.text)
    }

    @Test
    fun aCopyThatCouldNotBeKeptIsToldOnTheHouses(): Unit = Fixture().use { fixture ->
        fixture.demo()
        val blocked = File.createTempFile("blocked", "")
        val refused = runCatching { fixture.book.keepCopy(blocked.path, fixture.clock.nowMs()) }.exceptionOrNull()
        assertTrue("$refused", refused is Refusal.Refused)
        val app = fixture.app()
        app.go(Place.Jobs)
        rule.setContent { Screens(app, Face) }
        rule.onNodeWithText(fixture.jobs().copyFailed).assertIsDisplayed()
    }
}
