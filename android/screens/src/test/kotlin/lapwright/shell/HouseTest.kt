package lapwright.shell

import androidx.compose.ui.test.assert
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.click
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onAllNodesWithTag
import androidx.compose.ui.test.onAllNodesWithText
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.test.performTextInput
import androidx.compose.ui.test.performTouchInput
import lapwright.screens.Place
import lapwright.screens.View
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test

/** Jobs and House on a real book. */
class HouseTest {
    @get:Rule
    val rule = createComposeRule()

    private fun unfold(what: String) {
        rule.onNodeWithTag("fold $what").performScrollTo().performClick()
    }

    /** What goes through the walls stands in one list with how far each is, and leads there. */
    @Test
    fun everyPenetrationIsListedWithItsState() = Fixture().use { fixture ->
        val (job, _) = fixture.laidOut()
        val app = fixture.app()
        app.go(Place.House(job))
        rule.setContent { Screens(app, Face) }
        val lines = (app.shown!!.view as View.HouseKind).view.penetrations
        assertTrue(lines.isNotEmpty())
        unfold("penetrations")
        for (line in lines) {
            rule.onNodeWithTag("penetration ${line.penetration}").assert(hasText("${line.wall} · ${line.said}"))
        }
        rule.onNodeWithTag("penetration ${lines.last().penetration}").performScrollTo().performClick()
        assertEquals(Place.Penetration(lines.last().penetration), app.shown!!.place)
    }

    @Test
    fun theDemoIsOpenedFromJobsAndSaysWhatComesNext() = Fixture().use { fixture ->
        val app = fixture.app()
        rule.setContent { Screens(app, Face) }
        rule.onNodeWithText(app.shown!!.frame.words.openDemo).performClick()
        rule.onAllNodesWithText("Demo: Plover Cottage").onFirst().assertIsDisplayed()
        val view = (app.shown!!.view as View.HouseKind).view
        rule.onNodeWithTag("next").assertIsDisplayed()
        rule.onNodeWithText(view.nextSaid).performClick()
        assertEquals(Place.Pole(view.job), app.shown!!.place)
    }

    @Test
    fun aSharedCopyOpensAtAnotherPhoneAndTheHouseSaysThatItIsOfToday() = Fixture().use { fixture ->
        val job = fixture.demo()
        val app = fixture.app()
        app.go(Place.House(job))
        val copied = { (fixture.view(Place.House(job)) as View.HouseKind).view.copied }
        assertEquals("Never copied off this device", copied())
        app.go(Place.Jobs)
        rule.setContent { Screens(app, Face) }
        rule.onNodeWithTag("hand over").performScrollTo().performClick()
        rule.onNodeWithTag("next").performClick()
        rule.onNodeWithText("Copied today").assertIsDisplayed()
        assertEquals("Copied today", copied())
        val (_, path) = fixture.shared.single()
        Fixture(java.io.File(path)).use { theirs ->
            assertEquals(listOf(job), (theirs.view(Place.Jobs) as View.JobsKind).view.jobs.map { it.job })
            assertEquals("Never copied off this device", (theirs.view(Place.House(job)) as View.HouseKind).view.copied)
        }
    }

    @Test
    fun whatWasSavedOfADamagedBookIsShownUntilSomebodyHasReadIt() {
        val first = Fixture()
        val job = first.demo()
        first.book.go(first.context(), Place.House(job))
        first.close()
        java.io.RandomAccessFile(first.file, "rw").use { file ->
            file.seek(4096L)
            file.write(ByteArray(4 * 4096))
        }
        Fixture(first.file).use { fixture ->
            val app = fixture.app()
            assertEquals("read before the work goes on", Place.Jobs, app.shown!!.place)
            rule.setContent { Screens(app, Face) }
            val account = (app.shown!!.view as View.JobsKind).view.account
            assertTrue(account.size > 2)
            for (line in account) rule.onAllNodesWithText(line).onFirst().assertExists()
            rule.onNodeWithTag("account read").performScrollTo().performClick()
            rule.onNodeWithTag("account read").assertDoesNotExist()
            assertTrue((fixture.view(Place.Jobs) as View.JobsKind).view.account.isEmpty())
        }
    }

    @Test
    fun aTapOnAWallDrawnSmallOpensIt() = Fixture().use { fixture ->
        val (job, wall) = fixture.laidOut()
        val app = fixture.app()
        app.go(Place.House(job))
        rule.setContent { Screens(app, Face) }
        rule.waitForIdle()
        val walls = (app.shown!!.view as View.HouseKind).view.walls
        val drawn = rule.onAllNodesWithTag("drawing", useUnmergedTree = true)
        assertEquals(walls.count { it.revision != 0L }, drawn.fetchSemanticsNodes().size)
        assertTrue(walls.first().revision != 0L)
        drawn.onFirst().performScrollTo().performTouchInput { click(center) }
        rule.waitForIdle()
        assertEquals(Place.Wall(wall), app.shown!!.place)
    }

    @Test
    fun aLengthThatWasHeardIsTypedAndOneThatWasNotIsRefused() = Fixture().use { fixture ->
        val job = fixture.demo()
        val app = fixture.app()
        app.go(Place.House(job))
        rule.setContent { Screens(app, Face) }
        fun question() = (app.shown!!.view as View.HouseKind).view.questions.first { it.field == "board-height" }
        rule.runOnIdle { app.ask(question()) }
        assertEquals("no ear, no key", 0, rule.onAllNodesWithTag("listen").fetchSemanticsNodes().size)
        fixture.heard = "eight and a quarter"
        rule.runOnIdle { app.putAway(question()) }
        rule.runOnIdle { app.ask(question()) }
        rule.onNodeWithTag("listen").performClick()
        rule.waitForIdle()
        assertEquals("8 1/4\"", app.typing.of(question()))
        assertEquals("kept like any key", "8 1/4\"", question().draft)
        fixture.heard = "hello there"
        rule.onNodeWithTag("listen").performClick()
        rule.waitForIdle()
        assertTrue(app.trouble!!.text.contains("hello there"))
        assertEquals("8 1/4\"", app.typing.of(question()))
    }

    @Test
    fun everyKeyIsKeptAndAnAnswerIsTakenOnce() = Fixture().use { fixture ->
        val job = fixture.demo()
        val app = fixture.app()
        app.go(Place.House(job))
        rule.setContent { Screens(app, Face) }
        fun question() = (app.shown!!.view as View.HouseKind).view.questions.first { it.field == "board-height" }
        rule.runOnIdle { app.ask(question()) }
        rule.onNodeWithTag("key 8").performClick()
        assertEquals("8", question().draft)
        Fixture(fixture.file).use { again ->
            val other = again.app()
            other.go(Place.House(job))
            assertEquals("8", (other.shown!!.view as View.HouseKind).view.questions.first { it.field == "board-height" }.draft)
        }
        rule.onNodeWithTag("accept").performClick()
        assertEquals("8\"", question().answer)
        assertEquals("", question().draft)
        assertEquals(listOf("taken"), fixture.felt.takeLast(1))
    }

    @Test
    fun aRefusedAnswerSaysWhyAndKeepsWhatWasTyped() = Fixture().use { fixture ->
        val job = fixture.demo()
        val app = fixture.app()
        app.go(Place.House(job))
        rule.setContent { Screens(app, Face) }
        fun question() = (app.shown!!.view as View.HouseKind).view.questions.first { it.field == "board-height" }
        val before = question().answer
        rule.runOnIdle { app.ask(question()) }
        rule.onNodeWithTag("key 0").performClick()
        rule.onNodeWithTag("accept").performClick()
        assertTrue(rule.onAllNodesWithText(app.trouble!!.text).fetchSemanticsNodes().isNotEmpty())
        assertEquals(before, question().answer)
        assertEquals("0", app.typing.of(question()))
    }

    @Test
    fun inGlovesTheSignsLieOnASecondPageThatGoesBackByItself() = Fixture().use { fixture ->
        val job = fixture.demo()
        fixture.set("gloves" to "yes")
        val app = fixture.app()
        app.go(Place.House(job))
        rule.setContent { Screens(app, Face) }
        fun question() = (app.shown!!.view as View.HouseKind).view.questions.first { it.field == "board-height" }
        rule.runOnIdle { app.ask(question()) }
        for (sign in listOf("'", ".", "-")) {
            rule.onNodeWithTag("page").performClick()
            rule.onNodeWithTag("key $sign").performClick()
            rule.onNodeWithTag("key 1").performClick()
        }
        assertEquals("'1.1-1", app.typing.of(question()))
    }

    @Test
    fun aSizeOfBlockIsTypedAndTakenOffAgain() = Fixture().use { fixture ->
        val app = fixture.app()
        app.go(Place.House(fixture.demo()))
        rule.setContent { Screens(app, Face) }
        fun sizes() = (app.shown!!.view as View.HouseKind).view.blockSizes
        val before = sizes()
        unfold("stock")
        rule.onNodeWithTag("new block").performScrollTo().performClick()
        for (size in listOf("11", "9")) {
            for (key in size) rule.onNodeWithTag("key $key").performClick()
            rule.onNodeWithTag("accept").performClick()
        }
        assertNull(app.trouble)
        val made = (sizes() - before.toSet()).single()
        assertEquals("11\" × 9\"", made.said)
        unfold("stock")
        rule.onNodeWithTag("remove ${made.blockSize}").performScrollTo().performClick()
        assertEquals(before, sizes())
    }

    @Test
    fun aHouseIsPutAwayAndBroughtBackAndAnotherIsMadeLikeIt() = Fixture().use { fixture ->
        val job = fixture.demo()
        val app = fixture.app()
        app.go(Place.House(job))
        rule.setContent { Screens(app, Face) }
        fun jobs() = (fixture.view(Place.Jobs) as View.JobsKind).view.jobs
        unfold("more")
        rule.onNodeWithTag("archive").performScrollTo().performClick()
        assertEquals(Place.Jobs, app.shown!!.place)
        assertTrue(jobs().single().archived)
        rule.runOnIdle { app.go(Place.House(job)) }
        unfold("more")
        rule.onNodeWithTag("archive").performScrollTo().performClick()
        assertFalse(jobs().single().archived)
        rule.runOnIdle { app.go(Place.House(job)) }
        val stock = (app.shown!!.view as View.HouseKind).view.stock
        unfold("more")
        rule.onNodeWithTag("house like").performScrollTo().performClick()
        rule.onNodeWithTag("text").performTextInput("Lot 9")
        rule.onNodeWithTag("accept").performClick()
        val made = (app.shown!!.view as View.HouseKind).view
        assertEquals("Lot 9" to stock.map { it.length.nm }, made.name to made.stock.map { it.length.nm })
        assertTrue("what lies at hand at one house does not at another", made.stock.all { it.count == null })
        unfold("stock")
        rule.onNodeWithTag("remove ${made.stock[0].stock}").performScrollTo().performClick()
        assertEquals(stock.drop(1).map { it.length.nm }, (app.shown!!.view as View.HouseKind).view.stock.map { it.length.nm })
    }

    @Test
    fun whatGoesThroughAWallIsTakenOffInOneTapAndComesBackInAnother() = Fixture().use { fixture ->
        val (_, wall) = fixture.laidOut()
        val app = fixture.app()
        app.go(Place.Wall(wall))
        rule.setContent { Screens(app, Face) }
        fun holes() = (app.shown!!.view as View.WallKind).view.penetrations
        val before = holes()
        rule.onNodeWithTag("remove ${before[0].penetration}").performScrollTo().performClick()
        assertEquals(before.drop(1).map { it.penetration }, holes().map { it.penetration })
        rule.onNodeWithTag("undo").performClick()
        assertNull(app.trouble)
        assertEquals(before, holes())
    }
}
