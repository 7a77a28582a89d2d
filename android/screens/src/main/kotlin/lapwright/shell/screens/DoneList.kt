package lapwright.shell.screens

import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import lapwright.screens.Action
import lapwright.screens.DoneLine
import lapwright.screens.DoneListAction
import lapwright.screens.DoneListView
import lapwright.screens.Place
import lapwright.shell.App
import lapwright.shell.look.Sizes
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Heading
import lapwright.shell.parts.Line
import lapwright.shell.parts.Next
import lapwright.shell.parts.OtherAction
import lapwright.shell.parts.Say
import lapwright.shell.parts.Warning

/** What happened, newest first. A tap on a line shows what is built on it, before it is taken back. */
@Composable
fun DoneList(app: App, view: DoneListView) {
    val words = app.shown?.frame?.words ?: return
    fun tap(action: DoneListAction) = app.act(Action.DoneListKind(action))
    val looked = view.lookedAt
    val undo = looked?.takeIf { !it.undone }?.let { line ->
        Next(words.takeBack) { tap(DoneListAction.Undo(view.job, line.group)) }
    }
    Frame(app, words.doneList, view.job, next = undo) {
        if (looked != null) {
            Day(app, listOf(looked)) {}
            if (view.depends.isNotEmpty()) {
                Warning(words.depends)
                Day(app, view.depends) {}
            }
            OtherAction(words.close, Modifier.fillMaxWidth()) { app.go(Place.DoneList(view.job)) }
        }
        if (view.reopened.isNotEmpty()) {
            Heading(words.reopened)
            for (answer in view.reopened) Line(answer.title, answer.text) { app.go(answer.place) }
        }
        if (looked == null) {
            if (view.lines.isEmpty()) Say(words.nothingDone)
            for ((day, lines) in view.lines.groupBy { it.day }) {
                Heading(day)
                Day(app, lines) { tap(DoneListAction.LookAt(view.job, it.group)) }
            }
            val older = view.older
            if (older != null) {
                OtherAction(words.older, Modifier.fillMaxWidth()) { tap(DoneListAction.Older(view.job, older)) }
            }
        }
    }
}

@Composable
private fun Day(app: App, lines: List<DoneLine>, onTap: (DoneLine) -> Unit) {
    val words = app.shown?.frame?.words ?: return
    for (line in lines) {
        Line({ onTap(line) }, Modifier.testTag("done ${line.group}")) {
            Column(Modifier.weight(1f)) {
                Say(line.text, bold = !line.undone)
                val state = if (line.undone) words.takenBack else ""
                Say(listOf(line.time, line.signer, state).filter { it.isNotEmpty() }.joinToString(" · "), size = Sizes.small)
            }
        }
    }
}
