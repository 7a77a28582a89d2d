package lapwright.shell.screens

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.unit.dp
import lapwright.screens.Action
import lapwright.screens.NewThing
import lapwright.screens.OffcutLine
import lapwright.screens.Place
import lapwright.screens.SawBoardLine
import lapwright.screens.SawListAction
import lapwright.screens.SawListView
import lapwright.screens.Subject
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes
import lapwright.shell.parts.Asking
import lapwright.shell.parts.Drawn
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Glyph
import lapwright.shell.parts.GlyphButton
import lapwright.shell.parts.Heading
import lapwright.shell.parts.Icon
import lapwright.shell.parts.Line
import lapwright.shell.parts.Next
import lapwright.shell.parts.Notes
import lapwright.shell.parts.OtherAction
import lapwright.shell.parts.ReadingLine
import lapwright.shell.parts.Say
import lapwright.shell.parts.withTexts

/** What to cut from what: the boards in cutting order, and the stock and offcuts that they come from. */
@Composable
fun SawList(app: App, view: SawListView) {
    val words = app.shown?.frame?.words ?: return
    fun tap(action: SawListAction) = app.act(Action.SawListKind(action))
    val asking = app.asked(view.stock.map { it.asks }, view.asked)?.let { asked ->
        Asking(
            asked,
            keep = { Action.SawListKind(SawListAction.KeepDraft(view.job, asked.subject, it)) },
            answer = { Action.SawListKind(SawListAction.SayStock(view.job, asked.subject, it)) },
        )
    }
    val number = view.next
    val next = when {
        !view.planned -> Next(words.planBoards) { tap(SawListAction.Plan(view.job)) }
        number != null -> Next("$number: ${words.allCut}", Glyph.TICK) { tap(SawListAction.MarkCut(view.job, number)) }
        else -> Next(words.house) { app.go(Place.House(view.job)) }
    }
    Frame(app, words.sawList, view.job, asking, next) {
        Say(view.text, bold = true)
        if (view.planned) Say(view.progress)
        Notes(view.notes)
        for (board in view.boards) CutBoard(app, view.job, board)
        if (view.planned) {
            if (!view.proved) {
                OtherAction(words.improve, Modifier.fillMaxWidth().testTag("improve")) { tap(SawListAction.Improve(view.job)) }
            }
            OtherAction(words.planBoards, Modifier.fillMaxWidth().testTag("plan")) { tap(SawListAction.Plan(view.job)) }
        }
        Heading(words.stock)
        for (stock in view.stock) {
            Line({ app.ask(stock.asks) }, Modifier.testTag("stock ${stock.stock}")) { Say(stock.said, Modifier.weight(1f)) }
        }
        Heading(words.offcuts)
        for (offcut in view.offcuts) Offcut(app, view.job, offcut)
        OtherAction(words.newOffcut, Modifier.fillMaxWidth()) { app.go(Place.New(NewThing.OFFCUT, view.job)) }
        OtherAction(words.order, Modifier.fillMaxWidth()) { app.go(Place.Order(view.job)) }
    }
}

/** A board, its drawn cuts, and where each piece goes. */
@Composable
private fun CutBoard(app: App, job: String, board: SawBoardLine) {
    val shown = app.shown ?: return
    val said = listOf(board.cuts, board.restSaid).filter { it.isNotEmpty() }.joinToString(". ")
    val aloud = (board.pieces.map { it.length.spoken } + board.restSaid).joinToString(". ")
    Line({ app.services.speech.say("${board.number}: $aloud", shown.remembered.language) }, Modifier.testTag("board ${board.number}")) {
        Column(Modifier.weight(1f)) {
            Say("${board.number} · ${board.length.text}", size = Sizes.title, bold = true)
            Say(said, size = Sizes.small)
            if (board.cut) Say(shown.frame.words.allCut, size = Sizes.small)
        }
        if (board.cut) Icon(Glyph.TICK, LocalLook.current.inks.done)
    }
    if (board.cut) return
    Drawn(app, Subject.SawPattern(job, board.number), board.revision, 160.dp.withTexts())
    for (piece in board.pieces) ReadingLine(app, piece.said, piece.length) { app.go(Place.Board(piece.board)) }
}

/** A piece left over, to throw away or to keep after all. */
@Composable
private fun Offcut(app: App, job: String, offcut: OffcutLine) {
    val words = app.shown?.frame?.words ?: return
    fun tap(action: SawListAction) = app.act(Action.SawListKind(action))
    Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp), Alignment.CenterVertically) {
        Column(Modifier.weight(1f)) {
            Say(offcut.length.text, size = Sizes.title, bold = true)
            if (!offcut.atHand) Say(words.thrownAway, size = Sizes.small)
        }
        if (offcut.atHand) {
            GlyphButton(Glyph.CLOSE, "${words.throwAway}: ${offcut.length.spoken}", Modifier.testTag("drop ${offcut.offcut}")) {
                tap(SawListAction.DropOffcut(job, offcut.offcut))
            }
        } else {
            GlyphButton(Glyph.CLOSER, "${words.keepIt}: ${offcut.length.spoken}", Modifier.testTag("keep ${offcut.offcut}")) {
                tap(SawListAction.KeepOffcut(job, offcut.offcut))
            }
        }
    }
}
