package lapwright.shell.parts

import androidx.compose.foundation.border
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.rememberScrollState
import androidx.compose.foundation.text.BasicTextField
import androidx.compose.foundation.text.KeyboardActions
import androidx.compose.foundation.text.KeyboardOptions
import androidx.compose.foundation.verticalScroll
import androidx.compose.runtime.Composable
import androidx.compose.runtime.key
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.SolidColor
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.input.ImeAction
import androidx.compose.ui.unit.dp
import lapwright.screens.Action
import lapwright.screens.AnswerKind
import lapwright.screens.Choice
import lapwright.screens.Question
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes
import lapwright.shell.look.Target

/** A question in hand, and the actions that keep its keys and give its answer. */
class Asking(val question: Question, val keep: (String) -> Action, val answer: (String) -> Action)

/** The question: above, where it is read. */
@Composable
fun QuestionHead(app: App, asking: Asking) {
    val shown = app.shown ?: return
    val (question, frame) = asking.question to shown.frame
    // Where texts are large the whole question matters more than a large first line of it.
    val size = if (LocalDensity.current.fontScale > 1.3f) Sizes.body else Sizes.title
    Column(Modifier.fillMaxWidth()) {
        // The way out stays in sight where a long question goes on below.
        Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp), Alignment.Top) {
            Column(Modifier.weight(1f)) {
                val whose = listOf(question.about, question.nth).filter { it.isNotEmpty() }
                if (whose.isNotEmpty()) Say(whose.joinToString(" · "), size = Sizes.small)
                Say(question.title, size = size, bold = true)
                if (question.hint.isNotEmpty()) Say(question.hint, size = Sizes.small)
            }
            GlyphButton(Glyph.CLOSE, frame.words.close) { app.putAway(question) }
        }
        val trouble = app.trouble
        if (trouble != null) TroublePanel(trouble.text)
    }
}

/** Where the answer is given: below, where the thumb is. */
@Composable
fun QuestionEntry(app: App, asking: Asking) {
    val shown = app.shown ?: return
    val question = asking.question
    val text = app.typing.of(question)
    // What is typed is read at the tap: the next key may come before the last one was drawn.
    // Lambdas, not local functions: references to a local function are equal whatever they captured, so that the keypad
    // would be left as it is and its keys would go to the question before.
    val edit: ((String) -> String) -> Unit = edit@{ change ->
        if (app.pending) return@edit
        val typed = change(app.typing.of(question))
        app.typing.put(question, typed)
        app.keep(asking.keep(typed))
    }
    val accept: () -> Unit = { if (!app.pending) app.act(asking.answer(app.typing.of(question))) }
    key(question.subject, question.field) {
        when (question.kind) {
            AnswerKind.LENGTH_KIND, AnswerKind.WHOLE_KIND -> {
                Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(6.dp), Alignment.CenterVertically) {
                    if (app.listening) {
                        Say(shown.frame.words.listening, Modifier.weight(1f).testTag("listening"), Sizes.title, bold = true)
                    } else {
                        Typed(question, text, shown.frame.unit, Modifier.weight(1f))
                    }
                    if (app.services.listening.available) {
                        GlyphButton(Glyph.LISTEN, shown.frame.words.listenSign, Modifier.testTag("listen"), shown.frame.words.listen) {
                            app.listen { heard -> edit { heard } }
                        }
                    }
                }
                Keypad(shown.frame, text, question.kind == AnswerKind.LENGTH_KIND, edit, accept)
            }
            AnswerKind.CHOICE_KIND -> Choices(question.choices, question.answer) { app.act(asking.answer(it.code)) }
            AnswerKind.TEXT_KIND -> TextEntry(question.title, text, shown.frame.words.accept, { typed -> edit { typed } }, accept)
        }
    }
}

/** The number that is being typed; before the first key the one that stands, in grey. */
@Composable
private fun Typed(question: Question, text: String, unit: String, modifier: Modifier) {
    val inks = LocalLook.current.inks
    val shown = text.ifEmpty { question.answer.ifEmpty { "–" } }
    val own = if (text.isEmpty() || question.kind == AnswerKind.WHOLE_KIND) "" else unit
    Answer(shown, own, modifier.testTag("typed"), if (text.isEmpty()) inks.planned else inks.chalk)
}

/** What a question and the corner under its answers take of the glass. */
private val ASKED = 240.dp

/** A few answers, one of them to tap. */
@Composable
fun Choices(choices: List<Choice>, answer: String, onTap: (Choice) -> Unit) {
    val inks = LocalLook.current.inks
    Column(
        Modifier.fillMaxWidth().heightIn(max = (LocalRoom.current - ASKED).coerceAtLeast(200.dp)).verticalScroll(rememberScrollState()),
        Arrangement.spacedBy(6.dp),
    ) {
        for (choice in choices) {
            Line({ onTap(choice) }) {
                Say(choice.label, Modifier.weight(1f), bold = choice.label == answer)
                if (choice.label == answer) Icon(Glyph.TICK, inks.done)
            }
        }
    }
}

/** A line of text from the phone's own keyboard. */
@Composable
fun TextEntry(name: String, text: String, accept: String, onText: (String) -> Unit, onAccept: () -> Unit) {
    val inks = LocalLook.current.inks
    Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(6.dp), Alignment.CenterVertically) {
        BasicTextField(
            text,
            onText,
            Modifier.weight(1f).testTag("text").semantics { contentDescription = name },
            textStyle = face(Sizes.title).copy(color = inks.ink),
            singleLine = true,
            keyboardOptions = KeyboardOptions(imeAction = ImeAction.Done),
            keyboardActions = KeyboardActions(onDone = { onAccept() }),
            cursorBrush = SolidColor(inks.chalk),
            decorationBox = { field ->
                Box(Modifier.heightIn(min = Target).border(1.5.dp, inks.ink).padding(12.dp), Alignment.CenterStart) { field() }
            },
        )
        NextAction(accept, Modifier.testTag("accept"), onTap = onAccept)
    }
}
