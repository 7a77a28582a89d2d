package lapwright.shell

import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import lapwright.screens.Question

/** The keys of the question in hand, ahead of the book by as long as keeping a draft takes. */
class Typing {
    private var key: Pair<String, String>? by mutableStateOf(null)
    private var typed: String by mutableStateOf("")

    /** What is typed of a question: here, else as the book kept it. */
    fun of(question: Question): String = if (key == keyOf(question)) typed else question.draft

    /** Further keys of a question. */
    fun put(question: Question, text: String) {
        key = keyOf(question)
        typed = text
    }

    /** The answer was taken: what the book says holds again. */
    fun close() {
        key = null
    }

    private fun keyOf(question: Question) = question.subject to question.field
}

/** The text with a tapped mark of the tape behind its whole number, in place of the mark tapped before. */
fun withMark(text: String, mark: String): String {
    val point = mark.first()
    if (!point.isDigit()) return text.substringBefore('.').substringBefore(',').trimEnd() + mark
    val whole = text.trimEnd().split(' ').filterNot { it.isEmpty() || '/' in it }
    return (whole + mark).joinToString(" ")
}

/** The text without its last key; a mark of the tape goes as a whole. */
fun rubbedOut(text: String): String {
    val last = text.substringAfterLast(' ')
    return if ('/' in last) text.removeSuffix(last).trimEnd() else text.dropLast(1).trimEnd()
}
