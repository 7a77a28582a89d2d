package lapwright.shell.screens

import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import lapwright.screens.Action
import lapwright.screens.BackupsAction
import lapwright.screens.BackupsView
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

/** The copies that the book keeps of itself, and one file of everything. A tap on a copy says what going back to it would do. */
@Composable
fun Backups(app: App, view: BackupsView) {
    val words = app.shown?.frame?.words ?: return
    val next = Next(words.shareBackup) {
        app.share(words.shareBackup, "backup.zip") { Action.BackupsKind(BackupsAction.Share(it)) }
    }
    Frame(app, words.backups, next = next) {
        for (line in view.done) Say(line, bold = true)
        for (note in view.notes) Warning(note)
        Say(view.copied)
        Heading(words.copiesHere)
        if (view.copies.isEmpty()) Say(words.noCopies)
        for (copy in view.copies) {
            Line({ app.go(Place.Restore(copy.copy)) }, Modifier.testTag("copy ${copy.copy}")) {
                Column(Modifier.weight(1f)) {
                    Say(copy.said, bold = true)
                    Say(copy.size, size = Sizes.small)
                }
            }
        }
        OtherAction(words.keepCopy, Modifier.fillMaxWidth().testTag("keep copy")) {
            app.act(Action.BackupsKind(BackupsAction.Keep))
        }
        OtherAction(words.pickCopy, Modifier.fillMaxWidth().testTag("pick copy")) { app.pickFile() }
    }
}
