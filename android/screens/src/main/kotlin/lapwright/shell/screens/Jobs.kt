package lapwright.shell.screens

import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.unit.dp
import lapwright.screens.Action
import lapwright.screens.JobsAction
import lapwright.screens.JobsView
import lapwright.screens.NewThing
import lapwright.screens.Place
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Glyph
import lapwright.shell.parts.Icon
import lapwright.shell.parts.Line
import lapwright.shell.parts.Next
import lapwright.shell.parts.OtherAction
import lapwright.shell.parts.Say
import lapwright.shell.parts.Warning

/** Which house. */
@Composable
fun Jobs(app: App, view: JobsView) {
    val words = app.shown?.frame?.words ?: return
    val next = Next(words.newHouse) { app.go(Place.New(NewThing.HOUSE, "")) }
    Frame(app, words.jobs, next = next) {
        if (view.copyFailed.isNotEmpty()) Warning(view.copyFailed)
        if (view.differences.isNotEmpty()) {
            // The ink of a warning is too pale on the ground of a line.
            Line({ app.go(Place.Differences) }, Modifier.testTag("differences")) {
                Icon(Glyph.WARNING, LocalLook.current.inks.warning, 24.dp)
                Say(view.differences, Modifier.weight(1f), bold = true)
            }
        }
        for (line in view.account) Warning(line)
        if (view.account.isNotEmpty()) {
            OtherAction(words.accountRead, Modifier.fillMaxWidth().testTag("account read")) {
                app.act(Action.JobsKind(JobsAction.Acknowledge))
            }
        }
        if (view.jobs.isEmpty()) Say(words.noHouses)
        OtherAction(words.notchNow, Modifier.fillMaxWidth()) { app.go(Place.New(NewThing.LOOSE_BOARD, "")) }
        for (job in view.jobs) {
            val said = if (job.archived) "${job.said} · ${words.archived}" else job.said
            Line(job.name, said) { app.go(Place.House(job.job)) }
        }
        if (!view.hasDemo) OtherAction(words.openDemo, Modifier.fillMaxWidth()) { app.act(Action.JobsKind(JobsAction.OpenDemo)) }
        if (view.jobs.isNotEmpty()) {
            Say(view.copied)
            OtherAction(words.handOver, Modifier.fillMaxWidth().testTag("hand over")) { app.go(Place.HandOver(null)) }
        }
        OtherAction(words.pickFile, Modifier.fillMaxWidth().testTag("pick file")) { app.pickFile() }
        OtherAction(words.backups, Modifier.fillMaxWidth().testTag("backups")) { app.go(Place.Backups) }
        OtherAction(words.settings, Modifier.fillMaxWidth(), Glyph.GEAR) { app.go(Place.Settings) }
    }
}
