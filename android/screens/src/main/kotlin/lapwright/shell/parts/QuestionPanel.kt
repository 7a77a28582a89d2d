package lapwright.shell.parts

import androidx.compose.foundation.border
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.Spacer
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
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.sp
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
    // Where texts are large, or the glass is low, the whole question matters more than a large first line of it.
    val large = LocalDensity.current.fontScale > 1.3f
    val size = when {
        LocalLook.current.gloves -> Sizes.body.atMost(if (question.title.length > LONG) 1f else 1.4f)
        large || LocalRoom.current < LOW -> Sizes.body.atMost(IN_SIGHT)
        else -> Sizes.title
    }
    val small = Sizes.small.atMost(if (LocalLook.current.gloves) 1f else 1.4f)
    Column(Modifier.fillMaxWidth()) {
        // The way out stays in sight where a long question goes on below.
        Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp), Alignment.Top) {
            Column(Modifier.weight(1f)) {
                val whose = listOf(question.about, question.nth).filter { it.isNotEmpty() }
                if (whose.isNotEmpty()) Say(whose.joinToString(" · "), size = small)
                Say(question.title, Modifier.testTag("question"), size = size, bold = true)
                if (question.hint.isNotEmpty()) Say(question.hint, size = small)
            }
            GlyphButton(Glyph.CLOSE, frame.words.close) { app.putAway(question) }
        }
        val trouble = app.trouble
        if (trouble != null) TroublePanel(trouble.text)
        question.offer?.let { offer ->
            OtherAction(offer.said, Modifier.fillMaxWidth().testTag("offer")) {
                if (!app.pending) app.act(asking.answer(offer.text))
            }
        }
    }
}

/** A question with more letters than this has little room over keys for gloves. */
private const val LONG = 60

/** A glass that is lower than this has little room for a question. */
private val LOW = 660.dp

/** What the keys of a question do. */
private class Keys(val edit: ((String) -> String) -> Unit, val accept: () -> Unit)

private fun keys(app: App, asking: Asking): Keys {
    val question = asking.question
    // What is typed is read at the tap: the next key may come before the last one was drawn.
    // Lambdas, not local functions: references to a local function are equal whatever they captured, so that the keypad
    // would be left as it is and its keys would go to the question before.
    val edit: ((String) -> String) -> Unit = edit@{ change ->
        if (app.pending) return@edit
        val typed = change(app.typing.of(question))
        app.typing.put(question, typed)
        app.keep(asking.keep(typed))
    }
    return Keys(edit) { if (!app.pending) app.act(asking.answer(app.typing.of(question))) }
}

/** Where the answer is given: below, where the thumb is. */
@Composable
fun QuestionEntry(app: App, asking: Asking) {
    val shown = app.shown ?: return
    val question = asking.question
    val text = app.typing.of(question)
    val keys = keys(app, asking)
    key(question.subject, question.field) {
        when (question.kind) {
            AnswerKind.TEXT_KIND ->
                TextEntry(question.title, text, shown.frame.words.accept, { typed -> keys.edit { typed } }, keys.accept)
            else -> Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(6.dp)) {
                QuestionNumber(app, asking)
                QuestionKeys(app, asking)
            }
        }
    }
}

/** The number that is typed, the phone's ear beside it, and under it the tape where it is a length. */
@Composable
fun QuestionNumber(app: App, asking: Asking) {
    val shown = app.shown ?: return
    val question = asking.question
    if (question.kind == AnswerKind.CHOICE_KIND) return
    val text = app.typing.of(question)
    val keys = keys(app, asking)
    Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(6.dp), Alignment.CenterVertically) {
        if (app.listening) {
            Say(shown.frame.words.listening, Modifier.weight(1f).testTag("listening"), Sizes.title, bold = true)
        } else {
            Typed(question, text, shown.frame.unit, Modifier.weight(1f))
        }
        if (app.services.listening.available) {
            GlyphButton(Glyph.LISTEN, shown.frame.words.listenSign, Modifier.testTag("listen"), shown.frame.words.listen) {
                app.listen { heard -> keys.edit { heard } }
            }
        }
    }
    if (question.kind == AnswerKind.LENGTH_KIND) Fractions(shown.frame, text, keys.edit)
}

/** The keys of a number, or the answers to choose from; they stand over the corner, or `alone` in a column of their own. */
@Composable
fun QuestionKeys(app: App, asking: Asking, alone: Boolean = false) {
    val shown = app.shown ?: return
    val question = asking.question
    val keys = keys(app, asking)
    key(question.subject, question.field) {
        if (question.kind == AnswerKind.CHOICE_KIND) {
            val most = if (alone) LocalRoom.current else LocalRoom.current - ASKED
            Choices(question.choices, question.answer, most.coerceAtLeast(200.dp)) { app.act(asking.answer(it.code)) }
        } else {
            val signed = question.kind != AnswerKind.WHOLE_KIND
            if (alone) {
                Keypad(shown.frame, signed, keys.edit, keys.accept, beside = 6.dp)
            } else {
                Keypad(shown.frame, signed, keys.edit, keys.accept)
            }
        }
    }
}

/** The number that is being typed; before the first key the one that stands, in grey. */
@Composable
private fun Typed(question: Question, text: String, unit: String, modifier: Modifier) {
    val inks = LocalLook.current.inks
    val shown = text.ifEmpty { question.answer.ifEmpty { "–" } }
    val own = if (text.isEmpty() || question.kind != AnswerKind.LENGTH_KIND) "" else unit
    // Its question is to stay whole over it.
    val scale = LocalDensity.current.fontScale
    val most = when {
        LocalLook.current.gloves || LocalRoom.current < LOW -> Sizes.answerLeast.atMost(1f)
        scale > 1.3f -> NUMBER.atMost(1f)
        else -> Sizes.answerMost
    }
    Answer(shown, own, modifier.testTag("typed"), if (text.isEmpty()) inks.planned else inks.chalk, most)
}

/** The size of a typed number where texts are large. */
private val NUMBER = 54.sp

/** What a question and the corner under its answers take of the glass. */
private val ASKED = 240.dp

/** A few answers, one of them to tap; many stand in two columns, so that all are in sight. */
@Composable
fun Choices(choices: List<Choice>, answer: String, most: Dp, onTap: (Choice) -> Unit) {
    val inks = LocalLook.current.inks
    val columns = if (choices.size > MANY && LocalDensity.current.fontScale <= 1.3f) 2 else 1
    Column(
        Modifier.fillMaxWidth().heightIn(max = most).verticalScroll(rememberScrollState()).testTag("choices"),
        Arrangement.spacedBy(6.dp),
    ) {
        for (beside in choices.chunked(columns)) {
            Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(6.dp)) {
                for (choice in beside) {
                    Line({ onTap(choice) }, Modifier.weight(1f)) {
                        Say(choice.label, Modifier.weight(1f), bold = choice.label == answer)
                        if (choice.label == answer) Icon(Glyph.TICK, inks.done)
                    }
                }
                repeat(columns - beside.size) { Spacer(Modifier.weight(1f)) }
            }
        }
    }
}

/** More answers than this do not stand under each other on every phone. */
private const val MANY = 6

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
