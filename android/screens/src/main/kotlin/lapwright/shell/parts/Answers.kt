package lapwright.shell.parts

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.unit.dp
import lapwright.screens.Question
import lapwright.screens.Reading
import lapwright.screens.Size
import lapwright.screens.Source
import lapwright.shell.App
import lapwright.shell.look.Sizes

/** Questions with their answers, each to be opened again by a tap. */
@Composable
fun Answers(app: App, questions: List<Question>) {
    val usual = usual(questions.mapNotNull { it.reading })
    Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp)) {
        for (question in questions) {
            Line({ app.ask(question) }) {
                Column(Modifier.weight(1f)) {
                    Say(question.title, size = Sizes.small)
                    Say(question.draft.ifEmpty { question.answer.ifEmpty { "–" } }, bold = true)
                    question.reading?.let { From(app, it, usual) }
                }
            }
        }
    }
}

/** Named lengths. */
@Composable
fun SizeLines(app: App, sizes: List<Size>) {
    val usual = usual(sizes.map { it.reading })
    Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp)) {
        for (size in sizes) ReadingLine(app, size.label, size.reading, usual)
    }
}

/** A named length; a tap says it aloud, where it leads nowhere else. Large texts stand under each other. */
@Composable
fun ReadingLine(app: App, label: String, reading: Reading, usual: Source = Source.PLANNED, onTap: (() -> Unit)? = null) {
    val shown = app.shown ?: return
    val aloud = { app.services.speech.say("$label: ${reading.spoken}", shown.remembered.language) }
    Line(onTap ?: aloud) {
        if (LocalDensity.current.fontScale > 1.3f) {
            Column(Modifier.weight(1f)) {
                Say(label)
                Say(reading.text, size = Sizes.title, bold = true)
                From(app, reading, usual)
            }
        } else {
            Column(Modifier.weight(1f)) {
                Say(label)
                From(app, reading, usual)
            }
            Say(reading.text, size = Sizes.title, bold = true)
        }
    }
}

/** Where most of some readings come from: that goes without saying. */
private fun usual(readings: List<Reading>): Source =
    readings.groupingBy { it.source }.eachCount().maxByOrNull { it.value }?.key ?: Source.PLANNED

/** Who read a number off the tape, and when; else where it comes from, where that is not where its neighbours do. */
@Composable
fun From(app: App, reading: Reading, usual: Source) {
    val words = app.shown?.frame?.words ?: return
    val word = when (reading.source) {
        Source.TAPED -> words.taped
        Source.PLANNED -> words.planned
        Source.RULED -> words.byRule
    }
    if (reading.said.isNotEmpty()) {
        Say(reading.said, size = Sizes.small)
    } else if (reading.source == Source.TAPED || reading.source != usual) {
        Say(word, size = Sizes.small)
    }
}
