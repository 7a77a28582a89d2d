package lapwright.shell.screens

import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import lapwright.screens.Action
import lapwright.screens.HandOverAction
import lapwright.screens.HandOverView
import lapwright.shell.App
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Heading
import lapwright.shell.parts.Next
import lapwright.shell.parts.OtherAction
import lapwright.shell.parts.Say

/** The book, or one house of it, as a file for a colleague, with the words that they compare. */
@Composable
fun HandOver(app: App, view: HandOverView) {
    val words = app.shown?.frame?.words ?: return
    val job = view.job
    val book = {
        app.share(words.shareCopy, "book.lapwright") { Action.HandOverKind(HandOverAction.Book(it)) }
    }
    fun house(all: Boolean) = job?.let { house ->
        app.share(view.name, "house.lapwright-house") { Action.HandOverKind(HandOverAction.House(house, all, it)) }
    }
    val next = if (job == null) Next(words.shareCopy) { book() } else Next(words.shareNew) { house(all = false) }
    Frame(app, words.handOver, job, next = next) {
        for (line in view.done) Say(line, bold = true)
        if (view.name.isNotEmpty()) Heading(view.name)
        if (view.said.isNotEmpty()) Say(view.said)
        if (job == null) {
            Say(view.copied)
        } else {
            OtherAction(words.shareAll, Modifier.fillMaxWidth().testTag("share all")) { house(all = true) }
        }
    }
}
