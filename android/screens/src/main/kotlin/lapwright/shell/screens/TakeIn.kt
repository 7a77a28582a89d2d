package lapwright.shell.screens

import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import lapwright.screens.Action
import lapwright.screens.Place
import lapwright.screens.TakeInAction
import lapwright.screens.TakeInView
import lapwright.shell.App
import lapwright.shell.look.Sizes
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Next
import lapwright.shell.parts.OtherAction
import lapwright.shell.parts.Say
import lapwright.shell.parts.Warning

/** What taking in a colleague's file would do, before it is done; the words of a new device are compared here. */
@Composable
fun TakeIn(app: App, view: TakeInView) {
    val words = app.shown?.frame?.words ?: return
    val ahead = view.ahead.isNotEmpty()
    val text = if (!ahead) words.takeInNow else words.takeInAhead
    val next = if (!view.ready) null else Next(text) { app.act(Action.TakeInKind(TakeInAction.TakeIn(view.file, ahead))) }
    Frame(app, words.takeIn, next = next) {
        for (refused in view.refused) Warning(refused)
        if (ahead) Warning(view.ahead)
        for (line in view.lines) Say(line)
        for (sender in view.senders) {
            Say(sender.said)
            if (!sender.trusted) {
                Say(sender.words, size = Sizes.title, bold = true)
                OtherAction(words.sameWords, Modifier.fillMaxWidth().testTag("same words")) {
                    app.act(Action.TakeInKind(TakeInAction.Trust(view.file, sender.device)))
                }
            }
        }
        OtherAction(words.cancel, Modifier.fillMaxWidth()) { app.go(Place.Jobs) }
    }
}
