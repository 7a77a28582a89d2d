package lapwright.shell.screens

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.IntrinsicSize
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.unit.dp
import lapwright.screens.Action
import lapwright.screens.AsBuiltLine
import lapwright.screens.MarkLine
import lapwright.screens.NewThing
import lapwright.screens.Place
import lapwright.screens.PoleAction
import lapwright.screens.PoleLine
import lapwright.screens.PoleView
import lapwright.screens.Source
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes
import lapwright.shell.parts.Answers
import lapwright.shell.parts.Asking
import lapwright.shell.parts.Frame
import lapwright.shell.parts.From
import lapwright.shell.parts.Glyph
import lapwright.shell.parts.GlyphButton
import lapwright.shell.parts.Heading
import lapwright.shell.parts.Line
import lapwright.shell.parts.Next
import lapwright.shell.parts.Notes
import lapwright.shell.parts.OtherAction
import lapwright.shell.parts.ReadingLine
import lapwright.shell.parts.Say

/** Where the lines go: the stick with its top end first, and the heights that it meets. */
@Composable
fun Pole(app: App, view: PoleView) {
    val words = app.shown?.frame?.words ?: return
    val asking = app.asked(view.questions, view.asked)?.let { asked ->
        Asking(
            asked,
            keep = { Action.PoleKind(PoleAction.KeepDraft(view.job, asked.field, it)) },
            answer = { Action.PoleKind(PoleAction.Answer(view.job, asked.field, it)) },
        )
    }
    val next = when {
        view.lines.isNotEmpty() && !view.upToDate -> Next(words.layOut) { app.act(Action.PoleKind(PoleAction.LayOut(view.job))) }
        else -> null
    }
    Frame(app, words.pole, view.job, asking, next) {
        Notes(view.notes)
        // A tape on a course that hangs decides the lines above it.
        for (built in view.asBuilt) AsBuilt(app, view, built)
        if (view.lines.isNotEmpty()) {
            Say(view.said)
            Column(Modifier.fillMaxWidth()) { for (line in view.lines.asReversed()) StickLine(app, line) }
        }
        Heading(words.heights)
        for (mark in view.marks) Height(app, view, mark)
        OtherAction(words.newMark, Modifier.fillMaxWidth()) { app.go(Place.New(NewThing.MARK, view.job)) }
        if (view.walls.isNotEmpty()) Heading(words.asBuiltAt)
        for (wall in view.walls) {
            OtherAction("${words.asBuilt}: ${wall.name}", Modifier.fillMaxWidth().testTag("tape ${wall.wall}")) {
                app.go(Place.New(NewThing.AS_BUILT, wall.wall))
            }
        }
        Heading(words.answers)
        Answers(app, view.questions)
    }
}

/** A course as it hangs, with what it changes. */
@Composable
private fun AsBuilt(app: App, view: PoleView, built: AsBuiltLine) {
    val words = app.shown?.frame?.words ?: return
    fun title(field: String) = view.asBuiltQuestions.find { it.field == field }?.title.orEmpty()
    Heading(built.wallName)
    Say("${title("course")} ${built.course}")
    ReadingLine(app, title("left"), built.left)
    ReadingLine(app, title("middle"), built.middle)
    ReadingLine(app, title("right"), built.right)
    Notes(built.notes)
    OtherAction(words.remove, Modifier.fillMaxWidth().testTag("remove ${built.asBuilt}")) {
        app.act(Action.PoleKind(PoleAction.RemoveAsBuilt(built.asBuilt)))
    }
}

/** A line of the stick: its tick, its height, and what the course above it shows. A tap says it aloud. */
@Composable
private fun StickLine(app: App, line: PoleLine) {
    val shown = app.shown ?: return
    val inks = LocalLook.current.inks
    Row(Modifier.fillMaxWidth().height(IntrinsicSize.Min), verticalAlignment = Alignment.CenterVertically) {
        Canvas(Modifier.width(28.dp).fillMaxHeight()) {
            val pen = 2.5.dp.toPx()
            drawLine(inks.ink, Offset(pen, 0f), Offset(pen, size.height), pen)
            drawLine(inks.chalk, Offset(pen, size.height / 2), Offset(size.width - pen, size.height / 2), 1.5f * pen)
        }
        val say = { app.services.speech.say("${line.said}: ${line.height.spoken}", shown.remembered.language) }
        Line(say, Modifier.padding(vertical = 2.dp).testTag("line ${line.course}")) {
            Column(Modifier.weight(1f)) {
                Say(line.height.text, size = Sizes.title, bold = true)
                Say(line.said, size = Sizes.small)
                From(app, line.height, Source.PLANNED)
            }
        }
    }
}

/** A height to meet or stay clear of; one of the job's own can be taken off. */
@Composable
private fun Height(app: App, view: PoleView, mark: MarkLine) {
    val shown = app.shown ?: return
    Row(Modifier.fillMaxWidth(), verticalAlignment = Alignment.CenterVertically) {
        val say = { app.services.speech.say("${mark.name}: ${mark.at.spoken}. ${mark.said}", shown.remembered.language) }
        Line(say, Modifier.weight(1f)) {
            Column(Modifier.weight(1f)) {
                Say(mark.name)
                Say(mark.at.text, size = Sizes.title, bold = true)
                Say(mark.said, size = Sizes.small)
            }
        }
        if (mark.mark.isNotEmpty()) {
            val words = shown.frame.words
            GlyphButton(Glyph.REMOVE, words.remove, Modifier.testTag("remove ${mark.mark}"), "${words.remove}: ${mark.name}") {
                app.act(Action.PoleKind(PoleAction.RemoveMark(view.job, mark.mark)))
            }
        }
    }
}
