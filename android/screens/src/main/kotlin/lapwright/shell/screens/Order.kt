package lapwright.shell.screens

import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import lapwright.screens.OrderLine
import lapwright.screens.OrderView
import lapwright.screens.Place
import lapwright.shell.App
import lapwright.shell.look.Sizes
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Line
import lapwright.shell.parts.Next
import lapwright.shell.parts.Notes
import lapwright.shell.parts.OtherAction
import lapwright.shell.parts.Say

/** What to buy: amounts with packs, waste and what is at hand, to be shared. */
@Composable
fun Order(app: App, view: OrderView) {
    val words = app.shown?.frame?.words ?: return
    val title = "${view.name}: ${words.order}"
    fun share(text: String) = app.services.share.text(title, text)
    Frame(app, words.order, view.job, next = Next(words.shareText) { share(view.text) }) {
        Notes(view.notes)
        for (line in view.lines) Material(app, line)
        OtherAction(words.shareCsv, Modifier.fillMaxWidth().testTag("csv")) { share(view.csv) }
        OtherAction(words.shareJson, Modifier.fillMaxWidth().testTag("json")) { share(view.json) }
        OtherAction(words.sawList, Modifier.fillMaxWidth()) { app.go(Place.SawList(view.job)) }
    }
}

/** A material, how much of it to buy, and what that was computed from. A tap says it aloud. */
@Composable
private fun Material(app: App, line: OrderLine) {
    val shown = app.shown ?: return
    val say = { app.services.speech.say("${line.name}: ${line.said}", shown.remembered.language) }
    Line(say, Modifier.testTag("material ${line.code}")) {
        Column(Modifier.weight(1f)) {
            Say(line.name, bold = true)
            if (line.buy > 0) Say("${line.buy} × ${line.pack}", size = Sizes.title, bold = true)
            Say(line.said)
            Say(line.from, size = Sizes.small)
        }
    }
}
