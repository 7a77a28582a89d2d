package lapwright.shell.screens

import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import lapwright.screens.Action
import lapwright.screens.NewAction
import lapwright.screens.NewView
import lapwright.shell.App
import lapwright.shell.parts.Answers
import lapwright.shell.parts.Asking
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Next
import lapwright.shell.parts.OtherAction

/** A new thing in the making, one question at a time. */
@Composable
fun New(app: App, view: NewView) {
    val words = app.shown?.frame?.words ?: return
    val asking = app.asked(view.questions, view.asked)?.let { asked ->
        Asking(
            asked,
            keep = { Action.NewKind(NewAction.KeepDraft(view.what, view.parent, asked.field, it)) },
            answer = { Action.NewKind(NewAction.Answer(view.what, view.parent, asked.field, it)) },
        )
    }
    val next = view.asked?.let { asked -> Next(asked.title) { app.ask(asked) } }
    Frame(app, view.title, view.job, asking, next) {
        Answers(app, view.questions)
        OtherAction(words.cancel, Modifier.fillMaxWidth()) {
            app.act(Action.NewKind(NewAction.Leave(view.what, view.parent)))
        }
    }
}
