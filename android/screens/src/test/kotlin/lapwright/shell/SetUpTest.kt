package lapwright.shell

import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.assertIsSelected
import androidx.compose.ui.test.hasAnyAncestor
import androidx.compose.ui.test.hasTestTag
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
import lapwright.screens.AnswerKind
import lapwright.screens.DoneListView
import lapwright.screens.MeasureView
import lapwright.screens.NewThing
import lapwright.screens.Place
import lapwright.screens.PoleView
import lapwright.screens.Question
import lapwright.screens.RuleLine
import lapwright.screens.RulesView
import lapwright.screens.SettingsView
import lapwright.screens.View
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotEquals
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test

/** Measure, Pole, Rules, Settings and the done list on a real book, tapped. */
class SetUpTest {
    @get:Rule
    val rule = createComposeRule()

    private fun shown(app: App, place: Place) {
        app.go(place)
        rule.setContent { Screens(app, Face) }
    }

    private fun wall(fixture: Fixture, job: String): String =
        (fixture.book.view(fixture.context(), Place.House(job)) as View.HouseKind).view.walls.first().wall

    private fun App.measure(): MeasureView = (shown!!.view as View.MeasureKind).view
    private fun App.pole(): PoleView = (shown!!.view as View.PoleKind).view
    private fun App.rules(): RulesView = (shown!!.view as View.RulesKind).view
    private fun App.settings(): SettingsView = (shown!!.view as View.SettingsKind).view
    private fun App.doneList(): DoneListView = (shown!!.view as View.DoneListKind).view
    private fun List<Question>.of(field: String) = single { it.field == field }

    @Test
    fun aSizeOfAWallIsTypedKeptAtEveryKeyAndAccepted(): Unit = Fixture().use { fixture ->
        val job = fixture.demo()
        val wall = wall(fixture, job)
        val app = fixture.app()
        shown(app, Place.Measure(wall))
        rule.runOnIdle { app.ask(app.measure().questions.of("first-stud")) }
        for (key in "12") rule.onNodeWithTag("key $key").performClick()
        assertEquals("12", app.measure().questions.of("first-stud").draft)
        Fixture(fixture.file).use { again ->
            val other = again.app()
            other.go(Place.Measure(wall))
            assertEquals("first-stud", other.measure().asked!!.field)
        }
        rule.onNodeWithTag("accept").performClick()
        assertNull(app.trouble)
        assertEquals("12\"", app.measure().questions.of("first-stud").answer)
    }

    @Test
    fun aPartIsAnsweredTakenOffAndANewOneBegun(): Unit = Fixture().use { fixture ->
        val wall = wall(fixture, fixture.demo())
        val app = fixture.app()
        shown(app, Place.Measure(wall))
        val part = app.measure().parts.first { it.kind == "opening" }
        rule.onNodeWithTag("remove ${part.part}").performScrollTo().performClick()
        assertTrue(app.measure().parts.none { it.part == part.part })
        rule.onAllNodesWithText(app.shown!!.frame.words.stud).onFirst().performScrollTo().performClick()
        assertEquals(Place.New(NewThing.STUD, wall), app.shown!!.place)
    }

    @Test
    fun thePoleIsLaidOutInOneTapAndAReadingIsSaid(): Unit = Fixture().use { fixture ->
        val job = fixture.demo()
        val app = fixture.app()
        shown(app, Place.Pole(job))
        while (app.pole().asked != null) {
            val asked = app.pole().asked!!
            error("the demo's pole still asks for ${asked.field}")
        }
        assertFalse(app.pole().upToDate)
        rule.onNodeWithTag("next").performClick()
        assertTrue(app.pole().upToDate)
        val line = app.pole().lines.last()
        rule.onNodeWithTag("line ${line.course}").performScrollTo().performClick()
        assertEquals(listOf("${line.said}: ${line.height.spoken}"), fixture.said)
        assertTrue("nothing is left to do here, and no button goes back", rule.onAllNodesWithTag("next").fetchSemanticsNodes().isEmpty())
    }

    @Test
    fun aRuleIsChangedWithAReasonAndTakenBackAndNoKeyIsLost(): Unit = Fixture().use { fixture ->
        fixture.sign("Ines")
        val job = fixture.demo()
        val app = fixture.app()
        shown(app, Place.Rules(job))
        fun lap(of: App = app): RuleLine = of.rules().rules.single { it.key == "lap.least" }
        val before = lap().value
        rule.onNodeWithTag("rule lap.least").performScrollTo().performClick()
        rule.onNodeWithTag("change").performScrollTo().performClick()
        // A length by the keypad, with the value in force over it.
        assertTrue(rule.onAllNodesWithText(before, substring = true, useUnmergedTree = true).fetchSemanticsNodes().isNotEmpty())
        for (key in "1.5") rule.onNodeWithTag("key $key").performClick()
        rule.onNodeWithTag("accept").performClick()
        assertNotNull("the house's own lap is less", app.trouble)
        rule.onNodeWithTag("accept").performClick()
        assertEquals("no value without a reason", before, lap().value)
        rule.onNodeWithTag("text").performTextInput("maker, p. 4")
        Fixture(fixture.file).use { again ->
            val other = again.app()
            other.go(Place.Rules(job))
            assertEquals("lap.least/reason" to "maker, p. 4", other.rules().asked!!.let { it.field to it.draft })
        }
        rule.onNodeWithTag("accept").performClick()
        assertNull(app.trouble)
        assertNotEquals(before, lap().value)
        assertEquals("maker, p. 4", lap().changed!!.reason)
        assertNull(app.rules().asked)
        rule.onNodeWithTag("default").performScrollTo().performClick()
        assertEquals(before, lap().value)
    }

    @Test
    fun aWrongValueForARuleIsRefusedAndStaysTyped(): Unit = Fixture().use { fixture ->
        fixture.sign("Ines")
        val app = fixture.app()
        shown(app, Place.Rules(fixture.demo()))
        val number = app.rules().rules.flatMap { it.asks.take(1) }.first { it.kind == AnswerKind.NUMBER_KIND }
        rule.runOnIdle { app.ask(number) }
        rule.onNode(hasText(number.answer) and hasAnyAncestor(hasTestTag("typed"))).assertIsDisplayed()
        for (key in listOf("9", ".", ".")) rule.onNodeWithTag("key $key").performClick()
        rule.onNodeWithTag("accept").performClick()
        assertNotNull(app.trouble)
        rule.onNodeWithText("9..").assertIsDisplayed()
        Unit
    }

    @Test
    fun thePhoneChangesHandsInOneTapAndSpeaksTheOtherLanguage(): Unit = Fixture().use { fixture ->
        fixture.sign("Ines")
        fixture.sign("Tobias")
        val app = fixture.app()
        shown(app, Place.Settings)
        rule.onNodeWithTag("signer Tobias").assertIsSelected()
        rule.onNodeWithTag("signer Ines").performClick()
        assertEquals("Ines", app.shown!!.remembered.signer)
        app.go(Place.Settings)
        val english = app.shown!!.frame.words.settings
        rule.runOnIdle { app.ask(app.settings().settings.of("language")) }
        rule.onAllNodesWithText("Español").onFirst().performClick()
        assertEquals("es", app.shown!!.remembered.language)
        assertFalse(english == app.shown!!.frame.words.settings)
        rule.onNodeWithText(app.shown!!.frame.words.settings).assertIsDisplayed()
        Unit
    }

    @Test
    fun aNewNameIsKeptAtEveryKey(): Unit = Fixture().use { fixture ->
        val app = fixture.app()
        shown(app, Place.Settings)
        rule.onNodeWithText(app.shown!!.frame.words.newSigner).performClick()
        rule.onNodeWithTag("text").performTextInput("Lea")
        Fixture(fixture.file).use { again ->
            val other = again.app()
            other.go(Place.Settings)
            assertEquals("signer" to "Lea", other.settings().asked!!.let { it.field to it.draft })
        }
        rule.onNodeWithTag("accept").performClick()
        assertEquals("Lea", app.shown!!.remembered.signer)
        app.go(Place.Settings)
        assertNull(app.settings().asked)
    }

    @Test
    fun whatWasDoneIsLookedAtTakenBackAndOpenedAgain(): Unit = Fixture().use { fixture ->
        val job = fixture.demo()
        val app = fixture.app()
        app.go(Place.House(job))
        val house = (app.shown!!.view as View.HouseKind).view.questions.of("board-height")
        app.act(lapwright.screens.Action.HouseKind(lapwright.screens.HouseAction.Answer(job, house.field, "7 1/4")))
        shown(app, Place.DoneList(job))
        val newest = app.doneList().lines.first()
        rule.onNodeWithTag("done ${newest.group}").performClick()
        assertEquals(newest.group, app.doneList().lookedAt!!.group)
        rule.onNodeWithTag("next").performClick()
        assertEquals("7 1/4", app.doneList().reopened.single().text)
        rule.onNodeWithText("7 1/4").performClick()
        assertEquals(Place.House(job), app.shown!!.place)
    }
}
