package lapwright.shell.screens

import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.unit.dp
import lapwright.screens.Action
import lapwright.screens.BlockAdvice
import lapwright.screens.NoteLevel
import lapwright.screens.PenetrationAction
import lapwright.screens.PenetrationView
import lapwright.screens.StepLine
import lapwright.screens.StepSaid
import lapwright.screens.StepState
import lapwright.screens.Subject
import lapwright.shell.App
import lapwright.shell.look.Sizes
import lapwright.shell.parts.Answers
import lapwright.shell.parts.Asking
import lapwright.shell.parts.Drawn
import lapwright.shell.parts.Fold
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Glyph
import lapwright.shell.parts.Heading
import lapwright.shell.parts.IN_SIGHT
import lapwright.shell.parts.InHand
import lapwright.shell.parts.Line
import lapwright.shell.parts.Next
import lapwright.shell.parts.Notes
import lapwright.shell.parts.OtherAction
import lapwright.shell.parts.ReadingLine
import lapwright.shell.parts.Say
import lapwright.shell.parts.SizeLines
import lapwright.shell.parts.StepInHand
import lapwright.shell.parts.StepList
import lapwright.shell.parts.atMost
import lapwright.shell.parts.tick
import lapwright.shell.parts.wantsPhoto
import lapwright.shell.parts.withTexts

/** One penetration, made weathertight: the step in hand first, with its layer drawn, its sizes and what there is to mind. */
@Composable
fun Penetration(app: App, view: PenetrationView) {
    val words = app.shown?.frame?.words ?: return
    InHand(app)
    val sign = { step: String, what: StepSaid ->
        app.sign(Action.PenetrationKind(PenetrationAction.SignStep(view.penetration, step, what)))
    }
    val asking = app.asked(view.questions + view.steps.flatMap { it.asks }, view.asked)?.let { asked ->
        Asking(
            asked,
            keep = { Action.PenetrationKind(PenetrationAction.KeepDraft(view.penetration, asked.field, it)) },
            answer = { Action.PenetrationKind(PenetrationAction.Answer(view.penetration, asked.field, it)) },
        )
    }
    val step = view.steps.firstOrNull { it.state == StepState.OPEN }
    val cautions = step?.takeIf { !it.cautionsRead }?.cautions.orEmpty()
    var touched by remember(view.penetration, step?.code) { mutableStateOf("") }
    val picked = touched.ifEmpty { step?.layer.orEmpty() }
    Frame(app, view.name, view.job, asking, step?.let { next(app, it) { said -> sign(it.code, said) } }, cautions = cautions) {
        Say(view.said, size = Sizes.body.atMost(IN_SIGHT))
        val (stops, notes) = view.notes.partition { it.level == NoteLevel.STOP }
        Notes(stops)
        view.shedding?.takeIf { !it.sheds }?.let { Notes(it.lines) }
        step?.let { StepInHand(app, it) }
        view.advice?.let { advice ->
            Fold(app, "${words.advice}: ${advice.gain}", "advice") { Advice(app, view, advice) }
        }
        Drawn(app, Subject.LayersFront(view.penetration, picked), view.revision, 260.dp)
        view.layers.find { it.code == picked }?.let { Say("${it.number}. ${it.text}", size = Sizes.small) }
        Notes(notes)
        StepList(app, view.steps.filter { it.state == StepState.OPEN }) { line, what -> sign(line.code, what) }
        val done = view.steps.filter { it.state != StepState.OPEN }
        if (done.isNotEmpty()) {
            Fold(app, "${words.done}: ${done.size}", "done") { StepList(app, done) { line, what -> sign(line.code, what) } }
        }
        Fold(app, words.layers, "layers") {
            Drawn(app, Subject.LayersSection(view.penetration, picked), view.revision, 320.dp)
            for (layer in view.layers) {
                Line({ touched = layer.code }, Modifier.testTag("layer ${layer.code}")) {
                    Say("${layer.number}. ${layer.text}", Modifier.weight(1f), bold = layer.code == picked)
                }
            }
            view.shedding?.takeIf { it.sheds }?.let { Notes(it.lines) }
        }
        Fold(app, words.sizes, "sizes") { AllSizes(app, view) }
        if (view.questions.isNotEmpty()) Fold(app, words.answers, "answers") { Answers(app, view.questions) }
    }
}

/** The tick of the step in hand; what there is to mind at it is read first. */
private fun next(app: App, step: StepLine, sign: (StepSaid) -> Unit): Next? {
    val words = app.shown?.frame?.words ?: return null
    if (!step.cautionsRead) return Next(words.readIt) { app.read(step.code) }
    val camera: (() -> Unit)? = if (wantsPhoto(step)) ({ app.takePhoto(step.code) }) else null
    return Next(step.text, Glyph.TICK, camera) { step.opens?.let { app.ask(it) } ?: sign(tick(step)) }
}

/** Every size of the patch, the block and the head flashing, or of a detail that every house has. */
@Composable
private fun AllSizes(app: App, view: PenetrationView) {
    val words = app.shown?.frame?.words ?: return
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
}

/** A block that sits better between the courses: its sizes, what it gains, and the tap that takes it. */
@Composable
private fun Advice(app: App, view: PenetrationView, advice: BlockAdvice) {
    val words = app.shown?.frame?.words ?: return
    fun title(field: String) = view.questions.find { it.field == field }?.title.orEmpty()
    ReadingLine(app, title("block-width"), advice.width)
    ReadingLine(app, title("block-height"), advice.height)
    ReadingLine(app, title("hole-from-bottom"), advice.holeFromBottom)
    OtherAction(words.takeAdvice, Modifier.fillMaxWidth().testTag("take advice")) {
        app.act(Action.PenetrationKind(PenetrationAction.TakeAdvice(view.penetration)))
    }
}
