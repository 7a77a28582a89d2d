package lapwright.shell.screens

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
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
import lapwright.screens.BoardAction
import lapwright.screens.BoardView
import lapwright.screens.NewThing
import lapwright.screens.NotchView
import lapwright.screens.Place
import lapwright.screens.Question
import lapwright.screens.StepState
import lapwright.screens.Subject
import lapwright.shell.App
import lapwright.shell.look.Sizes
import lapwright.shell.parts.Answer
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
import lapwright.shell.parts.tick
import lapwright.shell.parts.withTexts

/** The board in hand: measure, mark, cut, prime, fix. */
@Composable
fun Board(app: App, view: BoardView) {
    val words = app.shown?.frame?.words ?: return
    InHand(app)
    var back by remember(view.board) { mutableStateOf(false) }
    val face = Subject.BoardFace(view.board)
    val questions = view.questions + view.notches.flatMap { it.questions } + view.steps.flatMap { it.asks }
    val asking = app.asked(questions, view.asked)?.let { asking(view, it) }
    val step = view.steps.firstOrNull { it.state == StepState.OPEN }
    val next = step?.let { open ->
        Next(open.text, Glyph.TICK) { app.act(Action.BoardKind(BoardAction.SignStep(view.board, open.code, tick(open)))) }
    }
    Frame(app, view.title, view.job.ifEmpty { null }, asking, next, strip = { Drawn(app, face, view.revision, 150.dp) }) {
        view.length?.let { Answer(it.text, "") }
        if (view.length != null) {
            Drawn(app, if (back) Subject.BoardBack(view.board) else face, view.revision, 420.dp.withTexts())
            if (view.notches.any { it.back != null } || view.instructions.size > 1) {
                OtherAction(if (back) words.face else words.behind, Modifier.fillMaxWidth(), Glyph.FLIP) { back = !back }
                OtherAction(words.sayIt, Modifier.fillMaxWidth().testTag("say it"), Glyph.SPEAK) {
                    app.services.speech.say(marks(view, back), app.shown?.remembered?.language.orEmpty())
                }
            }
        }
        Notes(view.notes)
        // A board that is cut to length alone needs no list.
        if (view.instructions.size > 1) {
            for ((at, line) in view.instructions.withIndex()) Say("${at + 1}. ${line.text}")
        }
        for (notch in view.notches) Notch(app, notch)
        OtherAction(words.newNotch, Modifier.fillMaxWidth()) { app.go(Place.New(NewThing.NOTCH, view.board)) }
        Heading(words.steps)
        StepList(app, view.steps) { line, said ->
            app.act(Action.BoardKind(BoardAction.SignStep(view.board, line.code, said)))
        }
        Heading(words.answers)
        Answers(app, view.questions)
        view.stock?.let { ReadingLine(app, words.stock, it) }
        if (view.state != "planned") {
            OtherAction(words.spoiled, Modifier.fillMaxWidth().testTag("spoiled")) {
                app.go(Place.New(NewThing.SPOILED, view.board))
            }
        }
        for (wall in view.walls) {
            OtherAction("${words.attach}: ${wall.name}", Modifier.fillMaxWidth().testTag("attach ${wall.wall}")) {
                app.act(Action.BoardKind(BoardAction.Attach(view.board, wall.wall)))
            }
        }
        if (view.gapsKnown > 0u) {
            OtherAction(words.forgetHabit, Modifier.fillMaxWidth().testTag("forget habit")) {
                app.act(Action.BoardKind(BoardAction.ForgetHabit(view.board)))
            }
        }
        if (view.wall.isEmpty()) {
            OtherAction(words.sameBoard, Modifier.fillMaxWidth().testTag("same board")) {
                app.act(Action.BoardKind(BoardAction.CreateSameAsLast(view.job.ifEmpty { null })))
            }
        }
    }
}

/** What is read aloud: the length, then every mark of the side that is up. */
private fun marks(view: BoardView, back: Boolean): String {
    val marks = view.notches.mapNotNull { if (back) it.back else it.face }
    val readings = listOfNotNull(view.length) + marks.flatMap { side -> side.uprights + side.levels.flatMap { listOf(it.left, it.right) } }
    return readings.joinToString(". ") { it.spoken }
}

@Composable
private fun Notch(app: App, notch: NotchView) {
    val words = app.shown?.frame?.words ?: return
    Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp)) {
        Say(notch.name, size = Sizes.title, bold = true)
        if (notch.cutText.isNotEmpty()) Say(notch.cutText)
        notch.offset?.let { ReadingLine(app, words.offset, it) }
        val (least, most) = notch.gapLeast to notch.gapMost
        if (least != null && most != null) {
            Heading(words.gap)
            ReadingLine(app, words.gapLeast, least)
            ReadingLine(app, words.gapMost, most)
        }
        Notes(notch.notes)
        if (notch.legs.isNotEmpty()) Heading(words.legs)
        SizeLines(app, notch.legs)
        Heading(words.answers)
        Answers(app, notch.questions)
    }
}

/** An answer goes to the board or the notch that the question belongs to. */
private fun asking(view: BoardView, question: Question) = Asking(
    question,
    keep = { Action.BoardKind(BoardAction.KeepDraft(view.board, question.subject, question.field, it)) },
    answer = {
        val isOwn = question.subject == view.board
        Action.BoardKind(
            if (isOwn) {
                BoardAction.Answer(view.board, question.field, it)
            } else {
                BoardAction.AnswerNotch(view.board, question.subject, question.field, it)
            },
        )
    },
)
