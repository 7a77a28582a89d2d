package lapwright.shell.parts

import java.nio.ByteBuffer
import java.nio.ByteOrder

/** What a stroke stands for; the theme gives it its colour. */
enum class Role { GROUND, BOARD, INK, CHALK, CUT, WARNING, DONE, TAPED, PLANNED, RULED }

/** How a line is drawn. */
enum class Pattern { SOLID, DASHED, DOTTED }

/** Which point of its base line a text is put at. */
enum class Anchor { START, MIDDLE, END }

/** One stroke of a drawing, in dp from its left and top edge; points are x and y by turns. */
sealed interface Stroke {
    val role: Role

    data class Fill(override val role: Role, val points: List<Float>) : Stroke

    data class Line(
        override val role: Role,
        val pattern: Pattern,
        val closed: Boolean,
        val thickness: Float,
        val points: List<Float>,
    ) : Stroke

    data class Hatch(override val role: Role, val spacing: Float, val thickness: Float, val points: List<Float>) : Stroke

    data class Text(
        override val role: Role,
        val bold: Boolean,
        val anchor: Anchor,
        val x: Float,
        val y: Float,
        val em: Float,
        val turn: Float,
        val width: Float,
        val text: String,
    ) : Stroke
}

/** The bytes are not a drawing. */
class NoDrawing(why: String) : IllegalArgumentException(why)

/** Reads the bytes of `core/docs/drawing-format.md`; anything that is not listed there is refused. */
fun strokes(bytes: ByteArray, texts: List<String>): List<Stroke> {
    val reader = Reader(ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN))
    val version = reader.byte()
    if (version != 1) throw NoDrawing("version $version")
    return buildList { while (reader.more()) add(reader.stroke(texts)) }
}

private class Reader(private val bytes: ByteBuffer) {
    fun more(): Boolean = bytes.hasRemaining()

    fun byte(): Int = need(1) { bytes.get().toInt() and 0xFF }

    fun stroke(texts: List<String>): Stroke {
        val kind = byte()
        val role = one(Role.entries)
        return when (kind) {
            1 -> Stroke.Fill(role, points())
            2 -> Stroke.Line(role, one(Pattern.entries), one(listOf(false, true)), float(), points())
            3 -> Stroke.Hatch(role, float(), float(), points())
            4 -> Stroke.Text(
                role,
                one(listOf(false, true)),
                one(Anchor.entries),
                float(), float(), float(), float(), float(),
                texts.getOrNull(short()) ?: throw NoDrawing("a text beyond the list"),
            )
            else -> throw NoDrawing("a stroke of kind $kind")
        }
    }

    private fun points(): List<Float> = List(2 * short()) { float() }

    private fun short(): Int = need(2) { bytes.short.toInt() and 0xFFFF }

    private fun float(): Float = need(4) { bytes.float }

    private fun <T> one(all: List<T>): T = byte().let { all.getOrNull(it) ?: throw NoDrawing("$it is none of $all") }

    private fun <T> need(count: Int, read: () -> T): T =
        if (bytes.remaining() < count) throw NoDrawing("bytes that end within a stroke") else read()
}
