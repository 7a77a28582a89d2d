package lapwright.shell

import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onAllNodesWithTag
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import lapwright.screens.Action
import lapwright.screens.HouseAction
import lapwright.screens.Place
import lapwright.screens.PoleAction
import lapwright.screens.SawListAction
import lapwright.screens.SawListView
import lapwright.screens.View
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test

/** The saw list and the order on a real book, tapped. */
class SawListTest {
    @get:Rule
    val rule = createComposeRule()

    private fun App.list(): SawListView = (shown!!.view as View.SawListKind).view

    private fun house(fixture: Fixture): Pair<App, String> {
        val job = fixture.demo()
        fixture.act(Action.PoleKind(PoleAction.LayOut(job)))
        val app = fixture.app()
        app.go(Place.House(job))
        rule.setContent { Screens(app, Face) }
        return app to job
    }

    @Test
    fun theListIsPlannedAndABoardMarkedCut() = Fixture().use { fixture ->
        val (app, job) = house(fixture)
        rule.onNodeWithText(app.shown!!.frame.words.sawList).performScrollTo().performClick()
        assertEquals(Place.SawList(job), app.shown!!.place)
        assertFalse(app.list().planned)
        rule.onNodeWithTag("next").performClick()
        assertNull(app.trouble)
        assertTrue(app.list().planned)
        val first = app.list().next!!
        rule.onNodeWithTag("board $first").performScrollTo().performClick()
        assertTrue(fixture.said.single().startsWith("$first: "))
        rule.onNodeWithTag("next").performClick()
        assertTrue(app.list().boards.single { it.number == first }.cut)
        assertEquals(1u, app.list().boardsCut)
    }

    @Test
    fun aBoardThatIsPlannedAnewIsDrawnAnew() = Fixture().use { fixture ->
        val (app, job) = house(fixture)
        rule.runOnIdle { app.act(Action.HouseKind(HouseAction.AddStock(job, "120", ""))) }
        rule.runOnIdle { app.go(Place.SawList(job)) }
        rule.onNodeWithTag("next").performClick()
        fun drawn() = rule.onAllNodesWithTag("drawing").fetchSemanticsNodes().first()
            .config[SemanticsProperties.ContentDescription].single()
        val (before, length) = drawn() to app.list().boards.first().length
        val stock = app.list().stock.single { length.text in it.said }.stock
        rule.runOnIdle { app.act(Action.SawListKind(SawListAction.SayStock(job, stock, "0"))) }
        rule.runOnIdle { app.act(Action.SawListKind(SawListAction.Plan(job))) }
        assertNull(app.trouble)
        assertTrue(app.list().boards.first().length != length)
        assertTrue(before, drawn() != before)
    }

    @Test
    fun anOffcutIsAddedThrownAwayAndKeptAfterAll() = Fixture().use { fixture ->
        val (app, job) = house(fixture)
        rule.runOnIdle { app.go(Place.SawList(job)) }
        val before = app.list().offcuts.map { it.offcut }.toSet()
        rule.onNodeWithText(app.shown!!.frame.words.newOffcut).performScrollTo().performClick()
        for (key in "50") rule.onNodeWithTag("key $key").performClick()
        rule.onNodeWithTag("accept").performClick()
        assertEquals(Place.SawList(job), app.shown!!.place)
        fun offcut() = app.list().offcuts.single { it.offcut !in before }
        assertEquals("50\"", offcut().length.text)
        rule.onNodeWithTag("drop ${offcut().offcut}").performScrollTo().performClick()
        assertFalse(offcut().atHand)
        rule.onNodeWithTag("keep ${offcut().offcut}").performScrollTo().performClick()
        assertTrue(offcut().atHand)
    }

    @Test
    fun theStockIsCountedAndNoKeyIsLost() = Fixture().use { fixture ->
        val (app, job) = house(fixture)
        rule.runOnIdle { app.go(Place.SawList(job)) }
        val stock = app.list().stock.first().stock
        rule.onNodeWithTag("stock $stock").performScrollTo().performClick()
        for (key in "33") rule.onNodeWithTag("key $key").performClick()
        Fixture(fixture.file).use { again ->
            val other = again.app()
            other.go(Place.SawList(job))
            assertEquals(stock to "33", other.list().asked!!.let { it.subject to it.draft })
        }
        rule.onNodeWithTag("accept").performClick()
        assertEquals(33L, app.list().stock.single { it.stock == stock }.have)
    }

    @Test
    fun theOrderIsSharedInThreeForms() = Fixture().use { fixture ->
        val (app, job) = house(fixture)
        rule.onNodeWithText(app.shown!!.frame.words.order).performScrollTo().performClick()
        assertEquals(Place.Order(job), app.shown!!.place)
        val view = (app.shown!!.view as View.OrderKind).view
        rule.onNodeWithTag("next").performClick()
        rule.onNodeWithTag("csv").performScrollTo().performClick()
        rule.onNodeWithTag("json").performScrollTo().performClick()
        assertEquals(listOf(view.text, view.csv, view.json), fixture.shared.map { it.second })
        for (line in view.lines) {
            rule.onNodeWithTag("material ${line.code}").performScrollTo().performClick()
            assertEquals("${line.name}: ${line.said}", fixture.said.last())
        }
    }
}
