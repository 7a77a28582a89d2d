package lapwright.shell.screens

import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import lapwright.screens.Action
import lapwright.screens.MeasureAction
import lapwright.screens.MeasureView
import lapwright.screens.NewThing
import lapwright.screens.Place
import lapwright.shell.App
import lapwright.shell.parts.Answers
import lapwright.shell.parts.Asking
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Heading
import lapwright.shell.parts.Next
import lapwright.shell.parts.Notes
import lapwright.shell.parts.OtherAction

/** Setting up a wall, one question at a time, in the order in which a person with a tape meets them. */
@Composable
fun Measure(app: App, view: MeasureView) {
    val words = app.shown?.frame?.words ?: return
    val all = view.questions + view.parts.flatMap { it.questions }
    val question = app.asked(all, view.asked)
    val asking = question?.let { asked ->
        val (subject, field) = asked.subject to asked.field
        Asking(
            asked,
            keep = { Action.MeasureKind(MeasureAction.KeepDraft(view.wall, subject, field, it)) },
            answer = {
                Action.MeasureKind(
                    if (subject == view.wall) {
                        MeasureAction.Answer(view.wall, field, it)
                    } else {
                        MeasureAction.AnswerPart(view.wall, subject, field, it)
                    },
                )
            },
        )
    }
    val parts = listOf(
        words.opening to NewThing.OPENING,
        words.stud to NewThing.STUD,
        words.baseStep to NewThing.BASE_STEP,
        words.abutment to NewThing.ABUTMENT,
    )
    Frame(app, view.name, view.job, asking, Next("${words.wall}: ${view.name}") { app.go(Place.Wall(view.wall)) }) {
        Notes(view.notes)
        Heading(words.answers)
        Answers(app, view.questions)
        for (part in view.parts) {
            Heading(part.title)
            Answers(app, part.questions)
            OtherAction(words.remove, Modifier.fillMaxWidth().testTag("remove ${part.part}")) {
                app.act(Action.MeasureKind(MeasureAction.RemovePart(view.wall, part.part)))
            }
        }
        Heading(words.more)
        for ((name, what) in parts) {
            OtherAction(name, Modifier.fillMaxWidth()) { app.go(Place.New(what, view.wall)) }
        }
    }
}
