package lapwright.shell.screens

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.selected
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import lapwright.screens.Action
import lapwright.screens.SettingsAction
import lapwright.screens.SettingsView
import lapwright.screens.SignerLine
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.parts.Answers
import lapwright.shell.parts.Asking
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Glyph
import lapwright.shell.parts.GlyphButton
import lapwright.shell.parts.Heading
import lapwright.shell.parts.Icon
import lapwright.shell.parts.Line
import lapwright.shell.parts.OtherAction
import lapwright.shell.parts.Say

/** Who holds this phone, and how it speaks. */
@Composable
fun Settings(app: App, view: SettingsView) {
    val words = app.shown?.frame?.words ?: return
    val asking = app.asked(view.settings + view.newSigner, view.asked)?.let { asked ->
        Asking(
            asked,
            keep = { Action.SettingsKind(SettingsAction.KeepDraft(asked.field, it)) },
            answer = {
                val isSigner = asked.field == view.newSigner.field
                Action.SettingsKind(if (isSigner) SettingsAction.TakePhone(it) else SettingsAction.Answer(asked.field, it))
            },
        )
    }
    Frame(app, words.settings, null, asking) {
        Heading(words.signers)
        for (signer in view.signers) Signer(app, signer)
        OtherAction(words.newSigner, Modifier.fillMaxWidth()) { app.ask(view.newSigner) }
        Answers(app, view.settings)
    }
}

/** One tap takes the phone; each finds their own place again. */
@Composable
private fun Signer(app: App, signer: SignerLine) {
    val words = app.shown?.frame?.words ?: return
    fun tap(action: SettingsAction) = app.act(Action.SettingsKind(action))
    Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp), Alignment.CenterVertically) {
        val line = Modifier.weight(1f).testTag("signer ${signer.name}").semantics { selected = signer.current }
        Line({ tap(SettingsAction.TakePhone(signer.name)) }, line) {
            Say(signer.name, Modifier.weight(1f), bold = signer.current)
            if (signer.current) Icon(Glyph.TICK, LocalLook.current.inks.done)
        }
        GlyphButton(Glyph.REMOVE, words.remove, spoken = "${words.remove}: ${signer.name}") { tap(SettingsAction.DropSigner(signer.name)) }
    }
}
