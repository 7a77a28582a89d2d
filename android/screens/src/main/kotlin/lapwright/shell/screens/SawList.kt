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
import lapwright.shell.parts.Bar
import lapwright.shell.parts.Drawn
import lapwright.shell.parts.Fold
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Glyph
import lapwright.shell.parts.GlyphButton
import lapwright.shell.parts.Heading
import lapwright.shell.parts.Icon
import lapwright.shell.parts.Line
import lapwright.shell.parts.Next
import lapwright.shell.parts.Notes
import lapwright.shell.parts.OtherAction
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
        number != null -> Next("$number: ${words.allCut}", Glyph.TICK) {
            app.sign(Action.SawListKind(SawListAction.MarkCut(view.job, number)))
        }
        else -> null
    }
    Frame(app, words.sawList, view.job, asking, next) {
        if (view.planned) Bar(view.progress, view.boardsCut, view.boards.size.toUInt())
        Notes(view.notes)
        // The board at hand alone: what its button signs is in sight.
        view.boards.find { it.number == view.next }?.let { AtHand(app, view, it) }
        if (view.boardsCut > 0u) Fold(app, view.cutSaid, "cut") { for (board in view.boards.filter { it.cut }) ListedBoard(app, board) }
        val later = view.boards.filter { !it.cut && it.number != view.next }
        if (later.isNotEmpty()) Fold(app, "${words.boards}: ${later.size}", "later") { for (board in later) ListedBoard(app, board) }
        Say(view.text)
        if (view.planned) {
            if (!view.proved) {
                OtherAction(words.improve, Modifier.fillMaxWidth().testTag("improve")) { tap(SawListAction.Improve(view.job)) }
            }
            OtherAction(words.planBoards, Modifier.fillMaxWidth().testTag("plan")) { tap(SawListAction.Plan(view.job)) }
        }
        Heading(words.stock)
        for (stock in view.stock) {
            Line({ app.ask(stock.asks) }, Modifier.testTag("stock ${stock.stock}")) {
                Column(Modifier.weight(1f)) {
                    if (stock.short > 0) Say("${stock.short} ${words.lacking}", size = Sizes.title, bold = true)
                    Say(stock.said)
                }
            }
        }
        Heading(words.offcuts)
        for (offcut in view.offcuts) Offcut(app, view.job, offcut)
        OtherAction(words.newOffcut, Modifier.fillMaxWidth()) { app.go(Place.New(NewThing.OFFCUT, view.job)) }
        OtherAction(words.order, Modifier.fillMaxWidth()) { app.go(Place.Order(view.job)) }
    }
}

/** The board at hand: its drawn cuts, each piece large with where it goes, and all of it as text for who is at the saw. */
@Composable
private fun AtHand(app: App, view: SawListView, board: SawBoardLine) {
    val words = app.shown?.frame?.words ?: return
    ListedBoard(app, board)
    Drawn(app, Subject.SawPattern(view.job, board.number), board.revision, 160.dp.withTexts())
    for (piece in board.pieces) {
        Line({ app.go(Place.Board(piece.board)) }) {
            Column(Modifier.weight(1f)) {
                Say(piece.length.text, size = Sizes.length, bold = true)
                Say(piece.said, bold = piece.notched)
            }
        }
    }
    OtherAction(words.ticket, Modifier.fillMaxWidth().testTag("ticket"), Glyph.SHARE) {
        app.services.share.text("${view.name}: ${board.number}", board.ticket)
    }
}

/** A board in a line. A tap says it aloud. */
@Composable
private fun ListedBoard(app: App, board: SawBoardLine) {
    val shown = app.shown ?: return
    val said = listOf(board.cuts, board.restSaid).filter { it.isNotEmpty() }.joinToString(". ")
    val aloud = (board.pieces.map { it.length.spoken } + board.restSaid).joinToString(". ")
    Line({ app.services.speech.say("${board.number}: $aloud", shown.remembered.language) }, Modifier.testTag("board ${board.number}")) {
        Column(Modifier.weight(1f)) {
            Say("${board.number} · ${board.length.text}", size = Sizes.title, bold = true)
            Say(said, size = Sizes.small)
        }
        if (board.cut) Icon(Glyph.TICK, LocalLook.current.inks.done)
    }
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
            val spoken = "${words.throwAway}: ${offcut.length.spoken}"
            GlyphButton(Glyph.REMOVE, words.throwAway, Modifier.testTag("drop ${offcut.offcut}"), spoken) {
                tap(SawListAction.DropOffcut(job, offcut.offcut))
            }
        } else {
            val spoken = "${words.keepIt}: ${offcut.length.spoken}"
            GlyphButton(Glyph.UNDO, words.keepIt, Modifier.testTag("keep ${offcut.offcut}"), spoken) {
                tap(SawListAction.KeepOffcut(job, offcut.offcut))
            }
        }
    }
}
