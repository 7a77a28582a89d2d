package lapwright.shell.parts

import androidx.compose.foundation.border
import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.RowScope
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.size
import androidx.compose.foundation.layout.sizeIn
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.semantics.stateDescription
import androidx.compose.ui.unit.dp
import lapwright.screens.PhotoPlace
import lapwright.screens.StepHow
import lapwright.screens.StepLine
import lapwright.screens.StepSaid
import lapwright.screens.StepState
import lapwright.screens.Words
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes
import lapwright.shell.look.Target

/** What a tap says of a step, and nothing else. */
fun said(how: StepHow, note: String = "", photo: String? = null) = StepSaid(how, note, "", photo)

/** A tick, with the photo that was taken for it. */
fun tick(step: StepLine) = said(StepHow.TICK, photo = newPhoto(step)?.photo)

private fun newPhoto(step: StepLine) = step.photo?.takeIf { it.place == PhotoPlace.HERE && !it.signed }

/** Whether the camera stands beside a step: a photo is asked for, and none is there. */
fun wantsPhoto(step: StepLine) = step.photoAsked && step.state == StepState.OPEN && step.photo?.place != PhotoPlace.HERE

/** The steps in their order; a tap on the box ticks one, a tap on the words opens its reason, its sizes and its cautions. */
@Composable
fun StepList(app: App, steps: List<StepLine>, sign: (StepLine, StepSaid) -> Unit) {
    val words = app.shown?.frame?.words ?: return
    Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp)) {
        for (step in steps) {
            StepRow(app, step, sign) { app.open(step.code) }
            if (step.code == app.openStep) {
                if (step.reason.isNotEmpty()) Say(step.reason)
                SizeLines(app, step.sizes)
                CautionPanel(words.caution, step.cautions)
                StepChoices(app, step, sign)
            }
        }
    }
}

@Composable
private fun StepRow(app: App, step: StepLine, sign: (StepLine, StepSaid) -> Unit, onOpen: () -> Unit) {
    val words = app.shown?.frame?.words ?: return
    val camera = wantsPhoto(step)
    val large = LocalDensity.current.fontScale > 1.3f
    val box = @Composable {
        TickBox("tick ${step.code}", step.text, step.state, words) {
            when {
                step.state != StepState.OPEN -> sign(step, said(StepHow.TAKE_BACK))
                // What there is to mind is read before its step is signed.
                !step.cautionsRead && step.code != app.openStep -> app.open(step.code)
                else -> sign(step, tick(step))
            }
        }
    }
    InThumbsReach(box) {
        Line(onOpen, Modifier.weight(1f)) {
            Column(Modifier.weight(1f)) {
                Say(step.text, bold = step.state == StepState.OPEN)
                if (step.state != StepState.OPEN) Say("${stateOf(step.state, words)}: ${step.said}", size = Sizes.small)
                if (step.differs) Warning(words.differs)
            }
        }
        // A photo that is asked for is one tap away, and the tick takes it in with the next.
        if (camera && !large) {
            GlyphButton(Glyph.CAMERA, words.photo, Modifier.testTag("photo ${step.code}"), "${words.photo}: ${step.text}") {
                app.takePhoto(step.code)
            }
        }
        step.photo?.let { Thumbnail(app, it, step.text) }
    }
    if (camera && large) {
        OtherAction(words.photo, Modifier.fillMaxWidth().testTag("photo ${step.code}"), Glyph.CAMERA) { app.takePhoto(step.code) }
    }
}

private fun stateOf(state: StepState, words: Words) = when (state) {
    StepState.OPEN -> words.open
    StepState.DONE -> words.done
    StepState.SKIPPED -> words.leftOut
}

/** A row whose `box` stands on the side of the hand that taps it. */
@Composable
fun InThumbsReach(box: @Composable () -> Unit, content: @Composable RowScope.() -> Unit) {
    val leftHanded = LocalLook.current.leftHanded
    Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp), Alignment.CenterVertically) {
        if (leftHanded) box()
        content()
        if (!leftHanded) box()
    }
}

/** The box of a step or a check. */
@Composable
fun TickBox(tag: String, name: String, state: StepState, words: Words, onTap: () -> Unit) {
    val inks = LocalLook.current.inks
    Box(
        Modifier.sizeIn(minWidth = Target, minHeight = Target).clickable(role = Role.Checkbox, onClick = onTap).testTag(tag)
            .semantics {
                contentDescription = name
                stateDescription = stateOf(state, words)
            },
        Alignment.Center,
    ) {
        Box(Modifier.size(34.dp).border(2.dp, inks.ink), Alignment.Center) {
            when (state) {
                StepState.OPEN -> {}
                StepState.DONE -> Icon(Glyph.TICK, inks.done)
                StepState.SKIPPED -> Icon(Glyph.FARTHER, inks.planned)
            }
        }
    }
}

/** How many times larger than usual the texts are at most that must stay in sight over what is tapped. */
const val IN_SIGHT = 1.6f

/** The step that is to be done now: what to do, why, and the sizes that it needs. */
@Composable
fun StepInHand(app: App, step: StepLine) {
    val large = LocalDensity.current.fontScale > 1.3f
    val size = if (large) Sizes.body.atMost(IN_SIGHT) else Sizes.title
    Say(step.text, Modifier.testTag("step in hand"), size = size, bold = true)
    if (step.reason.isNotEmpty()) Say(step.reason, size = Sizes.small.atMost(IN_SIGHT))
    SizeLines(app, step.sizes)
}

@Composable
private fun StepChoices(app: App, step: StepLine, sign: (StepLine, StepSaid) -> Unit) {
    val words = app.shown?.frame?.words ?: return
    val here = step.photo?.takeIf { it.place == PhotoPlace.HERE }
    if (here != null) {
        OtherAction(words.sharePhoto, Modifier.fillMaxWidth().testTag("share photo"), Glyph.SHARE) { app.sharePhoto(here.photo, step.text) }
    }
    if (step.state != StepState.OPEN) {
        OtherAction(words.takeBack, Modifier.fillMaxWidth()) { sign(step, said(StepHow.TAKE_BACK)) }
        return
    }
    if (!step.photoAsked || here != null) OtherAction(words.photo, Modifier.fillMaxWidth(), Glyph.CAMERA) { app.takePhoto(step.code) }
    for (asks in step.asks.dropLast(1)) {
        OtherAction(asks.title, Modifier.fillMaxWidth().testTag("ask ${asks.field}")) { app.ask(asks) }
    }
    step.asks.lastOrNull()?.let { asks ->
        OtherAction(words.leaveOut, Modifier.fillMaxWidth().testTag("leave out")) { app.ask(asks) }
    }
}
