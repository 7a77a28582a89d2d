package lapwright.desk

import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.offset
import androidx.compose.runtime.Composable
import androidx.compose.ui.ImageComposeScene
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.input.pointer.PointerEventType
import androidx.compose.ui.input.pointer.PointerType
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import lapwright.core.BookInterface
import lapwright.screens.Action
import lapwright.screens.BackupsAction
import lapwright.screens.Context
import lapwright.screens.HouseAction
import lapwright.screens.JobsAction
import lapwright.screens.Place
import lapwright.screens.SenderLine
import lapwright.screens.SettingsAction
import lapwright.screens.View
import lapwright.shell.Clock
import lapwright.shell.Screens
import lapwright.shell.look.InLook
import lapwright.shell.look.Look
import lapwright.shell.look.Sun
import lapwright.shell.parts.Glyph
import lapwright.shell.parts.GlyphButton
import org.jetbrains.skia.Bitmap
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import java.awt.image.BufferedImage
import java.awt.image.IndexColorModel
import java.io.File
import java.io.RandomAccessFile
import java.nio.file.Files
import javax.imageio.IIOImage
import javax.imageio.ImageIO
import javax.imageio.ImageWriteParam
import kotlin.math.abs

/** The screenshots that are compared, in the order in which they are opened: what one changes, the next ones show. */
private val REFERENCES = listOf(
    "settings", "settings-choice", "rules", "pole", "wall", "board", "board-measure", "saw-list", "penetration-advice",
    "board-cut", "board-spoiled", "pole-as-built", "house", "meter-base", "detail", "restore", "board-offered", "photos-compared",
)

/** The sights that are compared, too. */
private val REFERENCE_SIGHTS = setOf(
    "gloves", "gloves-small", "landscape", "landscape-board", "small-board", "small-penetration", "keyboard-up", "whole-penetration",
)

/** Each language, theme, hand and size of text at least once. */
private val REFERENCE_MANNERS = listOf(
    Manner("en", "light", "right", 1f),
    Manner("es", "dark", "left", 1f),
    Manner("es", "light", "right", 2f),
)

/** How many pages an account has at the largest text. */
private val PAGES = mapOf("account" to 3, "lost" to 4)

/** How far a channel may be off, of 255. */
private const val NEAR = 24

/** The share of pixels that may be farther off. */
private const val MOST = 0.0005

/** Pictures are kept in this many steps a channel. */
private const val STEPS = 15

/**
 * The screens look as they did when somebody last looked at them: `src/test/pictures` holds how.
 *
 * The face is bundled and all is drawn by software, so one machine gives the same picture each time. Another processor may
 * round the edges of letters otherwise, and the kept pictures have [STEPS] steps a channel, half of one being 9: hence
 * [NEAR]. One pixel in two thousand may be farther off, 144 of them: the smallest glyph that moves by 2 dp is more.
 *
 * With `LAPWRIGHT_WRITE=1` the pictures are written anew; look at them.
 */
class ReferenceTest {
    @Test
    fun theScreensLookAsTheyDid() {
        val folder = File("src/test/pictures")
        val writes = System.getenv("LAPWRIGHT_WRITE") == "1"
        val wrong = mutableListOf<String>()
        val names = mutableSetOf<String>()
        fun compare(name: String, now: BufferedImage) {
            val kept = File(folder, "$name.png").also { names += it.name }
            if (writes) write(now, kept)
            val share = if (kept.exists()) differing(now, ImageIO.read(kept)) else 1.0
            if (share <= MOST) return
            val seen = File("target/pictures/${kept.name}").also { write(now, it) }
            wrong += "${kept.name}: ${"%.2f".format(100 * share)} % of its pixels differ from $seen"
        }
        fun Desk.shows(screenshot: Screenshot): @Composable () -> Unit {
            val app = app(services = screenshot.services).also(screenshot.open)
            return { Screens(app, Face) }
        }
        demo { desk, planned ->
            val screenshots = screenshots(planned).associateBy { it.name }
            for (manner in REFERENCE_MANNERS) {
                desk.set(manner.settings())
                for (name in REFERENCES) {
                    compare("$name-${manner.name}", picture(manner.scale, content = desk.shows(screenshots.getValue(name))))
                }
            }
            for (sight in Sights.filter { it.name in REFERENCE_SIGHTS }) {
                desk.set(sight.manner.settings())
                val content = desk.shows(screenshots.getValue(sight.of))
                compare(sight.name, picture(sight.manner.scale, sight.width, sight.height, content = content))
            }
        }
        Desk(File(Files.createTempDirectory("lapwright").toFile(), "first.lapwright"), Noon).use { desk ->
            compare("first-start", picture(1f, content = desk.shows(Screenshot("first-start") {})))
        }
        for ((what, book) in listOf("account" to damaged(), "lost" to shortOfAnswers())) {
            book.use { desk ->
                for (manner in REFERENCE_MANNERS) {
                    desk.set(manner.settings())
                    // What does not fit on one glass is seen page by page, down to what is tapped when it was read.
                    for (page in 1..if (manner.scale > 1f) PAGES.getValue(what) else 1) {
                        val content = desk.shows(Screenshot(what) {})
                        val name = if (page == 1) "$what-${manner.name}" else "$what-${manner.name}-page-$page"
                        compare(name, picture(manner.scale, page = page, content = content))
                    }
                }
            }
        }
        exchanging { desk, screenshots ->
            for (manner in REFERENCE_MANNERS.filter { it.scale == 1f }) {
                desk.set(manner.settings())
                for (screenshot in screenshots) {
                    val app = desk.app(book = Worded(desk.book)).also(screenshot.open)
                    compare("${screenshot.name}-${manner.name}", picture(manner.scale) { Screens(app, Face) })
                }
            }
        }
        val same = folder.listFiles().orEmpty().groupBy { it.readBytes().toList() }.values.filter { it.size > 1 }
        assertTrue("two pictures of the same: $same", same.isEmpty())
        assertTrue(wrong.joinToString("\n", "${wrong.size} look different; LAPWRIGHT_WRITE=1 writes them anew\n"), wrong.isEmpty())
        assertEquals("no picture is left over", names, folder.list().orEmpty().toSet())
        val size = folder.listFiles().orEmpty().sumOf { it.length() }
        assertTrue("the pictures take $size bytes", size < 2_000_000)
    }

    /** The demo house in a book that is opened again with some of its pages blank: it was put together anew, and says so. */
    private fun damaged(): Desk {
        // What is told names the file.
        val file = File("target/damaged/book.lapwright").also { it.parentFile.deleteRecursively() }
        Desk(file, Noon).use { Planned(it) }
        RandomAccessFile(file, "rw").use { book ->
            book.seek(4096L)
            book.write(ByteArray(4 * 4096))
        }
        return Desk(file, Noon)
    }

    /**
     * The demo house in a book of which two answers are hurt, one of them the last: between them and before them others are
     * whole. Of those that are hurt it can still be read when they were given, and by whom.
     */
    private fun shortOfAnswers(): Desk {
        val file = File("target/short/book.lapwright").also { it.parentFile.deleteRecursively() }
        val clock = Hand()
        Desk(file, clock).use { desk ->
            val planned = Planned(desk)
            val answers = listOf(
                "Teo" to Action.JobsKind(JobsAction.Rename(planned.job, HURT[0])),
                "Rosa" to Action.HouseKind(HouseAction.Answer(planned.job, "lap", "1 1/2")),
                "Teo" to Action.JobsKind(JobsAction.Rename(planned.job, HURT[1])),
            )
            for ((who, answer) in answers) {
                clock.ms += 45 * MINUTE
                desk.act(Action.SettingsKind(SettingsAction.TakePhone(who)))
                desk.act(answer)
            }
        }
        val text = file.readBytes().toString(Charsets.ISO_8859_1)
        val hurt = HURT.fold(text) { all, name -> all.replace(name, name.uppercase()) }
        assertTrue("nothing is hurt", hurt != text)
        file.writeBytes(hurt.toByteArray(Charsets.ISO_8859_1))
        return Desk(file, clock)
    }

    /** The demo house with copies of three days, what a colleague handed over, and what both answered differently. */
    private fun exchanging(work: (Desk, List<Screenshot>) -> Unit) {
        val clock = Hand()
        demo(clock) { desk, planned ->
            clock.ms -= 3 * 24 * 60 * MINUTE
            repeat(2) {
                clock.ms += 24 * 60 * MINUTE
                desk.act(Action.BackupsKind(BackupsAction.Keep))
            }
            clock.ms = Noon.nowMs()
            planned.differing
            val names = listOf("backups", "hand-over", "hand-over-book", "take-in", "differences")
            val all = screenshots(planned).associateBy { it.name }
            work(desk, names.map(all::getValue))
        }
    }

    @Test
    fun aSignThatMovesOrChangesIsSeen() {
        fun drawn(glyph: Glyph, left: Dp) = picture(1f) {
            InLook(Look(Sun, Face, leftHanded = false, gloves = false)) {
                Box(Modifier.fillMaxSize().background(Sun.ground)) { Box(Modifier.offset(left)) { GlyphButton(glyph, "glyph") {} } }
            }
        }
        val there = drawn(Glyph.DONE_LIST, 20.dp)
        assertEquals("the same", 0.0, differing(there, drawn(Glyph.DONE_LIST, 20.dp)), 0.0)
        for ((what, other) in listOf("moved" to drawn(Glyph.DONE_LIST, 22.dp), "another" to drawn(Glyph.CLOSE, 20.dp))) {
            val share = differing(there, other)
            assertTrue("$what: $share", share > MOST)
        }
    }

    /** The reference phone, of one pixel to the dp. */
    private fun picture(
        scale: Float,
        width: Int = 360,
        height: Int = 800,
        page: Int = 1,
        content: @Composable () -> Unit,
    ): BufferedImage {
        val scene = ImageComposeScene(width, height, Density(1f, scale), content = content)
        try {
            // What a drawing asks for comes in the frames after the first.
            for (frame in 0L..2L) scene.render(frame * 1_000_000_000L)
            repeat(page - 1) { scene.drawUp(2_000L + 5_000L * it) }
            val drawn = Bitmap.makeFromImage(scene.render((3L + 5L * page) * 1_000_000_000L))
            return BufferedImage(drawn.width, drawn.height, BufferedImage.TYPE_INT_RGB).apply {
                for (y in 0 until height) for (x in 0 until width) setRGB(x, y, drawn.getColor(x, y))
            }
        } finally {
            scene.close()
        }
    }

    /** A finger draws what stands on the glass up by most of its height, and rests before it is lifted. */
    private fun ImageComposeScene.drawUp(fromMs: Long) {
        var ms = fromMs
        fun touch(what: PointerEventType, y: Float) {
            ms += 20
            sendPointerEvent(what, Offset(180f, y), timeMillis = ms, type = PointerType.Touch)
            render(ms * 1_000_000L)
        }
        touch(PointerEventType.Press, 600f)
        for (y in 590 downTo 60 step 10) touch(PointerEventType.Move, y.toFloat())
        repeat(20) { touch(PointerEventType.Move, 60f) }
        touch(PointerEventType.Release, 60f)
    }

    /** The share of pixels with a channel that is off by more than [NEAR]. */
    private fun differing(one: BufferedImage, other: BufferedImage): Double {
        if (one.width != other.width || one.height != other.height) return 1.0
        var count = 0
        for (y in 0 until one.height) {
            for (x in 0 until one.width) {
                val (a, b) = one.getRGB(x, y) to other.getRGB(x, y)
                if (a != b && SHIFTS.any { abs((a ushr it and 255) - (b ushr it and 255)) > NEAR }) count += 1
            }
        }
        return count.toDouble() / (one.width * one.height)
    }

    /** A small PNG: few colours, by number where there are no more than 256, packed as tightly as it goes. */
    private fun write(picture: BufferedImage, file: File) {
        fun coarse(colour: Int) = SHIFTS.fold(0) { all, shift ->
            val step = ((colour ushr shift and 255) * STEPS + 127) / 255
            all or (step * 255 / STEPS shl shift)
        }
        val colours = (0 until picture.height)
            .flatMap { y -> (0 until picture.width).map { x -> coarse(picture.getRGB(x, y)) } }.distinct().sorted()
        val small = if (colours.size > 256) {
            BufferedImage(picture.width, picture.height, BufferedImage.TYPE_INT_RGB)
        } else {
            val bytes = SHIFTS.map { shift -> ByteArray(colours.size) { (colours[it] ushr shift).toByte() } }
            val model = IndexColorModel(8, colours.size, bytes[0], bytes[1], bytes[2])
            BufferedImage(picture.width, picture.height, BufferedImage.TYPE_BYTE_INDEXED, model)
        }
        for (y in 0 until small.height) {
            for (x in 0 until small.width) {
                small.setRGB(x, y, coarse(picture.getRGB(x, y)) or (255 shl 24))
            }
        }
        file.parentFile.mkdirs()
        file.delete()
        val writer = ImageIO.getImageWritersByFormatName("png").next()
        ImageIO.createImageOutputStream(file).use { out ->
            writer.output = out
            val tightly = writer.defaultWriteParam.apply {
                compressionMode = ImageWriteParam.MODE_EXPLICIT
                compressionQuality = 0f
            }
            writer.write(null, IIOImage(small, null, null), tightly)
        }
        writer.dispose()
    }

    private companion object {
        /** Red, green, blue. */
        val SHIFTS = listOf(16, 8, 0)

        const val MINUTE = 60_000L

        /** Names that no other text of a book has in it. */
        val HURT = listOf("Quokka Cottage", "Numbat Cottage")
    }
}

/** Noon, from which somebody moves the hand. */
private class Hand(var ms: Long = Noon.nowMs()) : Clock {
    override fun nowMs() = ms

    override fun utcOffsetMinutes() = Noon.utcOffsetMinutes()
}

/** A book whose devices have words that stay: those of a key are drawn with it. */
private class Worded(private val book: BookInterface) : BookInterface by book {
    override fun act(context: Context, action: Action) = book.act(context, action).let { it.copy(view = worded(it.view)) }

    override fun go(context: Context, place: Place) = worded(book.go(context, place))

    override fun view(context: Context, place: Place) = worded(book.view(context, place))

    private fun worded(view: View): View = when (view) {
        is View.HandOverKind -> view.copy(view = view.view.let { it.copy(said = it.said.replace(FOUR_WORDS, OURS)) })
        is View.TakeInKind -> view.copy(view = view.view.let { shown -> shown.copy(senders = shown.senders.map(::worded)) })
        else -> view
    }

    private fun worded(sender: SenderLine) = sender.copy(words = THEIRS, said = sender.said.replace(sender.words, THEIRS))

    private companion object {
        const val OURS = "lusab babad gutih tugad"
        const val THEIRS = "gutuk bisog mudof sakat"

        /** Four words of five letters at the end. */
        val FOUR_WORDS = Regex("[a-z]{5}( [a-z]{5}){3}$")
    }
}
