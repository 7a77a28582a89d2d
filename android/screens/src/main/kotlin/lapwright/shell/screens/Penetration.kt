package lapwright.shell.screens

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.unit.dp
import lapwright.screens.Action
import lapwright.screens.BlockAdvice
import lapwright.screens.PenetrationAction
import lapwright.screens.PenetrationView
import lapwright.screens.StepSaid
import lapwright.screens.StepState
import lapwright.screens.Subject
import lapwright.shell.App
import lapwright.shell.parts.Answers
import lapwright.shell.parts.Asking
import lapwright.shell.parts.Drawn
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Glyph
import lapwright.shell.parts.Heading
import lapwright.shell.parts.InHand
import lapwright.shell.parts.Next
import lapwright.shell.parts.Notes
import lapwright.shell.parts.OtherAction
import lapwright.shell.parts.ReadingLine
import lapwright.shell.parts.Say
import lapwright.shell.parts.SizeLines
import lapwright.shell.parts.StepList
import lapwright.shell.parts.Warning
import lapwright.shell.parts.tick
import lapwright.shell.parts.withTexts

/** One penetration, made weathertight. */
@Composable
fun Penetration(app: App, view: PenetrationView) {
    val words = app.shown?.frame?.words ?: return
    InHand(app)
    val sign = { step: String, what: StepSaid ->
        app.act(Action.PenetrationKind(PenetrationAction.SignStep(view.penetration, step, what)))
    }
    val asking = app.asked(view.questions + view.steps.flatMap { it.asks }, view.asked)?.let { asked ->
        Asking(
            asked,
            keep = { Action.PenetrationKind(PenetrationAction.KeepDraft(view.penetration, asked.field, it)) },
            answer = { Action.PenetrationKind(PenetrationAction.Answer(view.penetration, asked.field, it)) },
        )
    }
    val next = view.steps.firstOrNull { it.state == StepState.OPEN }
        ?.let { open -> Next(open.text, Glyph.TICK) { sign(open.code, tick(open)) } }
    Frame(app, view.name, view.job, asking, next) {
        Notes(view.notes)
        // What is advised changes everything below it.
        view.advice?.let { Advice(app, view, it) }
        Drawn(app, Subject.LayersFront(view.penetration), view.revision, 320.dp)
        if (view.patch.isNotEmpty()) {
            Heading(words.patch)
            if (view.patchEnds.isNotEmpty()) Say(view.patchEnds)
            SizeLines(app, view.patch)
        }
        if (view.block.isNotEmpty()) {
            Heading(words.block)
            Drawn(app, Subject.BlockSplit(view.penetration), view.revision, 420.dp.withTexts())
            SizeLines(app, view.block)
        }
        SizeLines(app, view.head)
        SizeLines(app, view.sizes)
        Heading(words.layers)
        Drawn(app, Subject.LayersSection(view.penetration), view.revision, 320.dp)
        Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp)) {
            for (layer in view.layers) Say(layer.text)
            view.shedding?.let { shedding ->
                for (line in shedding.lines) if (shedding.sheds) Say(line.text) else Warning(line.text)
            }
        }
        Heading(words.steps)
        StepList(app, view.steps) { line, what -> sign(line.code, what) }
        if (view.questions.isNotEmpty()) Heading(words.answers)
        Answers(app, view.questions)
    }
}

/** A block that sits better between the courses: its sizes, what it gains, and the tap that takes it. */
@Composable
private fun Advice(app: App, view: PenetrationView, advice: BlockAdvice) {
    val words = app.shown?.frame?.words ?: return
    fun title(field: String) = view.questions.find { it.field == field }?.title.orEmpty()
    Heading(words.advice)
    Say(advice.gain)
    ReadingLine(app, title("block-width"), advice.width)
    ReadingLine(app, title("block-height"), advice.height)
    ReadingLine(app, title("hole-from-bottom"), advice.holeFromBottom)
    OtherAction(words.takeAdvice, Modifier.fillMaxWidth().testTag("take advice")) {
        app.act(Action.PenetrationKind(PenetrationAction.TakeAdvice(view.penetration)))
    }
}
