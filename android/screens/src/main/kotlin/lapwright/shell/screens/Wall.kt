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
import lapwright.screens.PenetrationLine
import lapwright.screens.Place
import lapwright.screens.Subject
import lapwright.screens.WallAction
import lapwright.screens.WallView
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes
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
import lapwright.shell.parts.ReadingLine
import lapwright.shell.parts.Say

/** What is where on a wall. */
@Composable
fun Wall(app: App, view: WallView) {
    val words = app.shown?.frame?.words ?: return
    val add = { app.go(Place.New(NewThing.PENETRATION, view.wall)); Unit }
    val plan = { app.act(Action.WallKind(WallAction.PlanBoards(view.wall))); Unit }
    val next = if (view.boards.isEmpty()) Next(words.planBoards, onTap = plan) else Next(words.newPenetration, onTap = add)
    Frame(app, view.name, view.job, next = next) {
        Drawn(app, Subject.Elevation(view.wall), view.revision, 420.dp, zooms = true)
        Notes(view.notes)
        Heading(words.penetrations)
        for (line in view.penetrations) Hole(app, view, line)
        if (view.boards.isEmpty()) OtherAction(words.newPenetration, Modifier.fillMaxWidth(), onTap = add)
        if (view.penetrations.isNotEmpty()) {
            OtherAction(words.sameAsLast, Modifier.fillMaxWidth()) {
                app.go(Place.New(NewThing.SAME_PENETRATION, view.wall))
            }
        }
        if (view.details.isNotEmpty()) Heading(words.details)
        for (line in view.details) Line(line.name, line.said) { app.go(Place.Penetration(line.detail)) }
        OtherAction(words.measure, Modifier.fillMaxWidth()) { app.go(Place.Measure(view.wall)) }
        if (view.boards.isNotEmpty()) {
            OtherAction(words.planBoards, Modifier.fillMaxWidth(), onTap = plan)
            Fold(app, words.boards, "boards") {
                for (board in view.boards) {
                    ReadingLine(app, board.said, board.length) { app.go(Place.Board(board.board)) }
                }
            }
        }
    }
}

/** What goes through the wall; it can be taken off again. */
@Composable
private fun Hole(app: App, view: WallView, line: PenetrationLine) {
    val words = app.shown?.frame?.words ?: return
    Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp), Alignment.CenterVertically) {
        Line({ app.go(Place.Penetration(line.penetration)) }, Modifier.weight(1f)) {
            Column(Modifier.weight(1f)) {
                Say("${line.letter} · ${line.name}", bold = !line.done)
                Say(line.said, size = Sizes.small)
            }
            if (line.done) Icon(Glyph.TICK, LocalLook.current.inks.done)
        }
        GlyphButton(Glyph.REMOVE, words.remove, Modifier.testTag("remove ${line.penetration}"), "${words.remove}: ${line.name}") {
            app.act(Action.WallKind(WallAction.RemovePenetration(view.wall, line.penetration)))
        }
    }
}
