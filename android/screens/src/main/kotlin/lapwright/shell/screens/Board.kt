package lapwright.shell.screens

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
import lapwright.screens.CheckLine
import lapwright.screens.NewThing
import lapwright.screens.NotchView
import lapwright.screens.NoteLevel
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
import lapwright.shell.parts.Fold
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Glyph
import lapwright.shell.parts.GlyphButton
import lapwright.shell.parts.Heading
import lapwright.shell.parts.InHand
import lapwright.shell.parts.InThumbsReach
import lapwright.shell.parts.Line
import lapwright.shell.parts.Marks
import lapwright.shell.parts.Next
import lapwright.shell.parts.Notes
import lapwright.shell.parts.OtherAction
import lapwright.shell.parts.ReadingLine
import lapwright.shell.parts.Say
import lapwright.shell.parts.SizeLines
import lapwright.shell.parts.StepList
import lapwright.shell.parts.Thumbnail
import lapwright.shell.parts.TickBox
import lapwright.shell.parts.withTexts

/** The board in hand: its marks first, then how it is drawn, how long it is, and what is checked of it. */
@Composable
fun Board(app: App, view: BoardView) {
    val words = app.shown?.frame?.words ?: return
    InHand(app)
    var back by remember(view.board) { mutableStateOf(false) }
    val face = Subject.BoardFace(view.board)
    val questions = view.questions + view.notches.flatMap { it.questions } + view.steps.flatMap { it.asks }
    val asking = app.asked(questions, view.asked)?.let { asking(view, it) }
    val check = view.checks.firstOrNull { it.state == StepState.OPEN }
    val cautions = check?.takeIf { !it.cautionsRead }?.cautions.orEmpty()
    val strip: @Composable () -> Unit = { Drawn(app, face, view.revision, 150.dp) }
    Frame(app, view.title, view.job.ifEmpty { null }, asking, next(app, view, check), strip, cautions) {
        val (stops, notes) = view.notes.partition { it.level == NoteLevel.STOP }
        if (view.said.isNotEmpty()) Say(view.said)
        Notes(stops)
        for (notch in view.notches) NotchMarks(app, notch, back)
        if (view.notches.none { it.face != null }) view.length?.let { Answer(it.text, "") }
        val length = view.length
        if (length != null) {
            Drawn(app, if (back) Subject.BoardBack(view.board) else face, view.revision, 420.dp.withTexts())
            if (view.notches.any { it.face != null }) Say("${words.length}: ${length.text}", size = Sizes.length, bold = true)
        }
        view.stock?.let { Say("${words.stock}: ${it.text}") }
        for (notch in view.notches) Gap(app, notch)
        Notes(notes)
        if (isNotchAwaited(view)) NewNotch(app, view)
        for (line in view.checks) CheckRow(app, view, line)
        if (length != null) {
            if (view.notches.any { it.back != null } || view.instructions.size > 1) {
                OtherAction(if (back) words.showFace else words.showBack, Modifier.fillMaxWidth(), Glyph.FLIP) { back = !back }
                OtherAction(words.sayIt, Modifier.fillMaxWidth().testTag("say it"), Glyph.SPEAK) {
                    app.services.speech.say(marks(view, back), app.shown?.remembered?.language.orEmpty())
                }
            }
        }
        if (view.nextBoard.isNotEmpty()) {
            Line({ app.go(Place.Board(view.nextBoard)) }, Modifier.testTag("next board")) { Say(view.nextSaid, Modifier.weight(1f)) }
        }
        Fold(app, words.steps, "steps") {
            // A board that is cut to length alone needs no list of its cuts.
            if (view.instructions.size > 1) for ((at, line) in view.instructions.withIndex()) Say("${at + 1}. ${line.text}")
            StepList(app, view.steps) { line, said ->
                app.sign(Action.BoardKind(BoardAction.SignStep(view.board, line.code, said)))
            }
        }
        Fold(app, words.answers, "answers") {
            Answers(app, view.questions)
            for (notch in view.notches) NotchAnswers(app, notch)
        }
        Fold(app, words.more, "more") { More(app, view) }
    }
}

/** The next check, with what there is to mind read before it; on a board that is up the next board. */
private fun next(app: App, view: BoardView, check: CheckLine?): Next? {
    val words = app.shown?.frame?.words ?: return null
    if (check == null) {
        val here = view.nextBoard.ifEmpty { return null }
        return Next(view.nextSaid) { app.go(Place.Board(here)) }
    }
    if (!check.cautionsRead) return Next(words.readIt) { app.read(check.code) }
    val camera = check.camera.ifEmpty { null }?.let { step -> { app.takePhoto(step); Unit } }
    return Next("${check.text}: ${view.title}", Glyph.TICK, camera) { tap(app, view, check) }
}

/** A check is asked for its number where it has one, and read before it is signed. */
private fun tap(app: App, view: BoardView, check: CheckLine) {
    val asks = check.opens
    when {
        check.state != StepState.OPEN -> app.sign(Action.BoardKind(BoardAction.TakeCheckBack(view.board, check.code)))
        asks != null -> app.ask(asks)
        else -> app.sign(Action.BoardKind(BoardAction.TickCheck(view.board, check.code)))
    }
}

/** What is checked of the board: a box, and the camera beside it where a photo is asked for. */
@Composable
private fun CheckRow(app: App, view: BoardView, check: CheckLine) {
    val words = app.shown?.frame?.words ?: return
    val box = @Composable {
        TickBox("check ${check.code}", check.text, check.state, words) {
            if (check.cautionsRead) tap(app, view, check) else app.read(check.code)
        }
    }
    InThumbsReach(box) {
        Column(Modifier.weight(1f)) {
            Say(check.text, bold = check.state == StepState.OPEN)
            if (check.said.isNotEmpty()) Say(check.said, size = Sizes.small)
        }
        if (check.camera.isNotEmpty()) {
            GlyphButton(Glyph.CAMERA, words.photo, Modifier.testTag("photo ${check.camera}"), "${words.photo}: ${check.text}") {
                app.takePhoto(check.camera)
            }
        }
        for (step in view.steps.filter { it.code in check.steps }) step.photo?.let { Thumbnail(app, it, step.text) }
    }
}

/** What is read aloud: the length, then every mark of the side that is up. */
private fun marks(view: BoardView, back: Boolean): String {
    val marks = view.notches.mapNotNull { if (back) it.back else it.face }
    val readings = listOfNotNull(view.length) + marks.flatMap { side -> side.uprights + side.levels.flatMap { listOf(it.left, it.right) } }
    return readings.joinToString(". ") { it.spoken }
}

/** What is cut, and its marks on the side that is up. */
@Composable
private fun NotchMarks(app: App, notch: NotchView, back: Boolean) {
    Say(if (notch.cutText.isEmpty()) notch.name else "${notch.name}: ${notch.cutText}", bold = true)
    Notes(notch.notes)
    (if (back) notch.back else notch.face)?.let { Marks(app, it) }
}

/** The gap to expect at a notch. */
@Composable
private fun Gap(app: App, notch: NotchView) {
    val words = app.shown?.frame?.words ?: return
    val (least, most) = notch.gapLeast to notch.gapMost
    if (least == null || most == null) return
    Heading(words.gap)
    Say(if (least.text == most.text) least.text else "${words.gapLeast} ${least.text} · ${words.gapMost} ${most.text}")
}

/** What was read at a notch, and what follows from it. */
@Composable
private fun NotchAnswers(app: App, notch: NotchView) {
    val words = app.shown?.frame?.words ?: return
    Heading(notch.name)
    notch.offset?.let { ReadingLine(app, words.offset, it) }
    if (notch.legs.isNotEmpty()) Heading(words.legs)
    SizeLines(app, notch.legs)
    Answers(app, notch.questions)
}

/** Whether a notch is what the board was made for: a loose one that has none yet. */
private fun isNotchAwaited(view: BoardView) = view.wall.isEmpty() && view.notches.isEmpty()

@Composable
private fun NewNotch(app: App, view: BoardView) {
    val words = app.shown?.frame?.words ?: return
    OtherAction(words.newNotch, Modifier.fillMaxWidth().testTag("new notch")) { app.go(Place.New(NewThing.NOTCH, view.board)) }
}

/** What is seldom done with a board. */
@Composable
private fun More(app: App, view: BoardView) {
    val words = app.shown?.frame?.words ?: return
    if (!isNotchAwaited(view)) NewNotch(app, view)
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
