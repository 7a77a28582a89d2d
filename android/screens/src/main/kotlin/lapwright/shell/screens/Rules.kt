package lapwright.shell.screens

import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import lapwright.screens.Action
import lapwright.screens.RuleLine
import lapwright.screens.RulesAction
import lapwright.screens.RulesView
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes
import lapwright.shell.parts.Asking
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Glyph
import lapwright.shell.parts.Icon
import lapwright.shell.parts.Line
import lapwright.shell.parts.OtherAction
import lapwright.shell.parts.Say
import lapwright.shell.parts.Warning

/** Which numbers apply. A tap on one opens where it comes from, and the ways to change it. */
@Composable
fun Rules(app: App, view: RulesView) {
    val words = app.shown?.frame?.words ?: return
    val asking = app.asked(view.rules.flatMap { it.asks }, view.asked)?.let { asked ->
        Asking(
            asked,
            keep = { Action.RulesKind(RulesAction.KeepDraft(view.job, asked.field, it)) },
            answer = { Action.RulesKind(RulesAction.Answer(view.job, asked.field, it)) },
        )
    }
    var open by rememberSaveable { mutableStateOf("") }
    Frame(app, words.rules, view.job, asking) {
        Say(view.family, bold = true)
        Warning(view.whoWins)
        for (rule in view.rules) {
            Rule(rule) { open = if (open == rule.key) "" else rule.key }
            if (open == rule.key) Opened(app, view, rule)
        }
    }
}

@Composable
private fun Rule(rule: RuleLine, onTap: () -> Unit) {
    val inks = LocalLook.current.inks
    Line(onTap, Modifier.testTag("rule ${rule.key}")) {
        Column(Modifier.weight(1f)) {
            Say(rule.name)
            Say(rule.value, size = Sizes.title, bold = true)
            Say(rule.said, size = Sizes.small)
        }
        if (rule.notVerified) Icon(Glyph.WARNING, inks.warning)
    }
}

@Composable
private fun Opened(app: App, view: RulesView, rule: RuleLine) {
    val words = app.shown?.frame?.words ?: return
    if (rule.notVerified) Warning(rule.status)
    val value = rule.asks.firstOrNull()
    if (value != null) {
        Say(rule.bounds)
        OtherAction(words.change, Modifier.fillMaxWidth().testTag("change")) { app.ask(value) }
    }
    if (rule.changed != null) {
        OtherAction(words.backToDefault, Modifier.fillMaxWidth().testTag("default")) {
            app.act(Action.RulesKind(RulesAction.BackToDefault(view.job, rule.key)))
        }
    }
}
