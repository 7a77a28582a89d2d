package lapwright.shell.screens

import androidx.compose.foundation.layout.Column
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import lapwright.screens.Action
import lapwright.screens.DifferencesAction
import lapwright.screens.DifferencesView
import lapwright.shell.App
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Line
import lapwright.shell.parts.Next
import lapwright.shell.parts.Say

/** What two phones answered differently, until somebody has looked at it. A tap on a line goes to where it is asked. */
@Composable
fun Differences(app: App, view: DifferencesView) {
    val words = app.shown?.frame?.words ?: return
    val next = if (view.differences.isEmpty()) {
        null
    } else {
        Next(words.lookedAt) {
            app.act(Action.DifferencesKind(DifferencesAction.LookedAt(view.differences.map { it.difference })))
        }
    }
    Frame(app, words.differences, next = next) {
        for (line in view.done) Say(line, bold = true)
        for (line in view.differences) {
            Line({ app.go(line.place) }, Modifier.testTag("difference")) {
                Column(Modifier.weight(1f)) {
                    Say(line.title, bold = true)
                    Say(line.stands)
                    Say(line.other)
                }
            }
        }
    }
}
