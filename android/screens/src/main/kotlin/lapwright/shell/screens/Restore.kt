package lapwright.shell.screens

import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import lapwright.screens.Action
import lapwright.screens.Place
import lapwright.screens.RestoreAction
import lapwright.screens.RestoreView
import lapwright.shell.App
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Heading
import lapwright.shell.parts.Next
import lapwright.shell.parts.OtherAction
import lapwright.shell.parts.Say

/** What going back to a copy would do, before it is done. */
@Composable
fun Restore(app: App, view: RestoreView) {
    val words = app.shown?.frame?.words ?: return
    val next = Next(words.restoreNow) { app.act(Action.RestoreKind(RestoreAction.Restore(view.copy))) }
    Frame(app, words.restore, next = next) {
        Heading(view.name)
        for (line in view.lines) Say(line)
        OtherAction(words.cancel, Modifier.fillMaxWidth()) { app.go(Place.Backups) }
    }
}
