package lapwright.shell

import lapwright.shell.parts.NoDrawing
import lapwright.shell.parts.Stroke
import lapwright.shell.parts.strokes
import org.junit.Assert.assertEquals
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Test
import java.io.File

/** The decoder on the golden bytes of `fixtures/drawings`. */
class StrokesTest {
    private val folder = File(System.getProperty("lapwright.fixtures"), "drawings")

    @Test
    fun everyGoldenDrawingIsReadAsItsJsonSays() {
        val names = folder.listFiles().orEmpty().filter { it.extension == "bin" }.map { it.nameWithoutExtension }
        assertTrue(names.size >= 4)
        for (name in names) {
            val wanted = json(File(folder, "$name.json").readText()) as Map<*, *>
            val texts = (wanted["texts"] as List<*>).map { it as String }
            val own = strokes(File(folder, "$name.bin").readBytes(), texts)
            assertEquals(name, (wanted["strokes"] as List<*>).map { told(it as Map<*, *>) }, own.map(::told))
        }
    }

    @Test
    fun bytesThatAreNoDrawingAreRefused() {
        val whole = File(folder, "every-stroke.bin").readBytes()
        val texts = List(10) { "" }
        assertThrows(NoDrawing::class.java) { strokes(byteArrayOf(), texts) }
        assertThrows(NoDrawing::class.java) { strokes(byteArrayOf(2), texts) }
        assertThrows(NoDrawing::class.java) { strokes(byteArrayOf(1, 9, 0), texts) }
        assertThrows(NoDrawing::class.java) { strokes(byteArrayOf(1, 1, 10, 0, 0), texts) }
        assertThrows(NoDrawing::class.java) { strokes(whole, emptyList()) }
        // Wherever the bytes end within a stroke they are refused; at the end of one they are a shorter drawing.
        val wholes = (1..whole.size).count { end -> runCatching { strokes(whole.copyOf(end), texts) }.isSuccess }
        assertEquals(strokes(whole, texts).size + 1, wholes)
    }

    private fun told(stroke: Stroke): List<Any> = when (stroke) {
        is Stroke.Fill -> listOf("fill", word(stroke.role), stroke.points)
        is Stroke.Line ->
            listOf("line", word(stroke.role), word(stroke.pattern), stroke.closed, stroke.thickness, stroke.points)
        is Stroke.Hatch -> listOf("hatch", word(stroke.role), stroke.spacing, stroke.thickness, stroke.points)
        is Stroke.Text -> listOf(
            "text", word(stroke.role), if (stroke.bold) "bold" else "regular", word(stroke.anchor),
            stroke.x, stroke.y, stroke.em, stroke.turn, stroke.width, stroke.text,
        )
    }

    private fun told(stroke: Map<*, *>): List<Any> {
        fun of(field: String) = stroke[field]!!
        fun float(field: String) = (of(field) as Double).toFloat()
        val points = (stroke["points"] as List<*>?).orEmpty().flatMap { point -> (point as List<*>).map { (it as Double).toFloat() } }
        return when (val kind = of("kind")) {
            "fill" -> listOf(kind, of("role"), points)
            "line" -> listOf(kind, of("role"), of("pattern"), of("closed"), float("thickness"), points)
            "hatch" -> listOf(kind, of("role"), float("spacing"), float("thickness"), points)
            else -> listOf(
                kind, of("role"), of("weight"), of("anchor"),
                float("x"), float("y"), float("em"), float("turn"), float("width"), of("text"),
            )
        }
    }

    private fun word(one: Enum<*>) = one.name.lowercase()
}

/** A small reader of JSON: maps, lists, texts, numbers as doubles, and booleans. */
private fun json(text: String): Any {
    var at = 0
    fun blank() { while (text[at].isWhitespace()) at += 1 }
    fun value(): Any {
        blank()
        return when (text[at]) {
            '{' -> buildMap {
                at += 1; blank()
                while (text[at] != '}') {
                    val key = value() as String
                    blank(); at += 1
                    put(key, value())
                    blank(); if (text[at] == ',') { at += 1; blank() }
                }
                at += 1
            }
            '[' -> buildList {
                at += 1; blank()
                while (text[at] != ']') { add(value()); blank(); if (text[at] == ',') { at += 1; blank() } }
                at += 1
            }
            '"' -> buildString {
                at += 1
                while (text[at] != '"') {
                    if (text[at] == '\\') {
                        at += 1
                        if (text[at] == 'u') { append(text.substring(at + 1, at + 5).toInt(16).toChar()); at += 4 } else append(text[at])
                    } else {
                        append(text[at])
                    }
                    at += 1
                }
                at += 1
            }
            't' -> true.also { at += 4 }
            'f' -> false.also { at += 5 }
            else -> text.drop(at).takeWhile { it in "+-.eE0123456789" }.also { at += it.length }.toDouble()
        }
    }
    return value()
}
