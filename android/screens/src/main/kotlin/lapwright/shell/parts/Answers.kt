package lapwright.shell.parts

import androidx.compose.foundation.border
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.widthIn
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.clearAndSetSemantics
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.unit.dp
import lapwright.screens.Question
import lapwright.screens.Reading
import lapwright.screens.Size
import lapwright.screens.Source
import lapwright.screens.Words
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes

/** Questions with their answers, each to be opened again by a tap. */
@Composable
fun Answers(app: App, questions: List<Question>) {
    val words = app.shown?.frame?.words ?: return
    Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp)) {
        for (question in questions) {
            Line({ app.ask(question) }) {
                Column(Modifier.weight(1f)) {
                    Say(question.title, size = Sizes.small)
                    Say(question.draft.ifEmpty { question.answer.ifEmpty { "–" } }, bold = true)
                    question.reading?.let { ReadBy(it) }
                }
                question.reading?.let { SourceBox(it.source, words) }
            }
        }
    }
}

/** Named lengths. */
@Composable
fun SizeLines(app: App, sizes: List<Size>) {
    Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp)) {
        for (size in sizes) ReadingLine(app, size.label, size.reading)
    }
}

/** A named length; a tap says it aloud, where it leads nowhere else. Large texts stand under each other. */
@Composable
fun ReadingLine(app: App, label: String, reading: Reading, onTap: (() -> Unit)? = null) {
    val shown = app.shown ?: return
    val aloud = { app.services.speech.say("$label: ${reading.spoken}", shown.remembered.language) }
    Line(onTap ?: aloud) {
        if (LocalDensity.current.fontScale > 1.3f) {
            Column(Modifier.weight(1f)) {
                Say(label)
                Say(reading.text, size = Sizes.title, bold = true)
                ReadBy(reading)
            }
        } else {
            Column(Modifier.weight(1f)) {
                Say(label)
                ReadBy(reading)
            }
            Say(reading.text, size = Sizes.title, bold = true)
        }
        SourceBox(reading.source, shown.frame.words)
    }
}

/** Who read a number off the tape, and when. */
@Composable
private fun ReadBy(reading: Reading) {
    if (reading.said.isNotEmpty()) Say(reading.said, size = Sizes.small)
}

/** Where a number comes from: a letter in a small box. */
@Composable
fun SourceBox(source: Source, words: Words) {
    val inks = LocalLook.current.inks
    val (letter, word) = when (source) {
        Source.TAPED -> words.tapedLetter to words.taped
        Source.PLANNED -> words.plannedLetter to words.planned
        Source.RULED -> words.ruleLetter to words.byRule
    }
    val color: Color = inks.ink
    Box(
        Modifier.widthIn(min = 28.dp).border(1.5.dp, color).padding(horizontal = 6.dp, vertical = 2.dp)
            .clearAndSetSemantics { contentDescription = word },
        Alignment.Center,
    ) { Say(letter, size = Sizes.small, color = color, bold = true) }
}
