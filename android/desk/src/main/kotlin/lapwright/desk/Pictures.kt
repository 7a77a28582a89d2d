package lapwright.desk

import androidx.compose.runtime.Composable
import androidx.compose.ui.ImageComposeScene
import androidx.compose.ui.unit.Density
import lapwright.shell.Clock
import lapwright.shell.Screens
import org.jetbrains.skia.EncodedImageFormat
import java.io.File
import java.nio.file.Files

/** A way of showing the screens. */
data class Manner(val language: String, val theme: String, val hand: String, val scale: Float, val gloves: Boolean = false) {
    val name: String get() = "$language-$theme-$hand-${(scale * 100).toInt()}"

    fun settings() = mapOf(
        "language" to language,
        "theme" to theme,
        "hand" to hand,
        "gloves" to if (gloves) "yes" else "no",
    )
}

/** Both languages, both themes, both hands, at 100 % and at 200 %. */
val Manners: List<Manner> = buildList {
    for (language in listOf("en", "es")) {
        for (theme in listOf("light", "dark")) {
            for (hand in listOf("right", "left")) {
                for (scale in listOf(1f, 2f)) add(Manner(language, theme, hand, scale))
            }
        }
    }
}

/** A screen as it is seen otherwise than on the reference phone: by whom, and on how large a glass. */
class Sight(val name: String, val of: String, val manner: Manner, val width: Int = 360, val height: Int = 800)

private val PLAIN = Manner("en", "light", "right", 1f)

/** In gloves, on a small phone, on one that lies on its side, over the phone's own keyboard, and down to the end. */
val Sights: List<Sight> = listOf(
    Sight("gloves", "board-measure", PLAIN.copy(gloves = true)),
    Sight("gloves-small", "board-measure", PLAIN.copy(gloves = true), height = 640),
    Sight("landscape", "board-measure", PLAIN, width = 800, height = 360),
    Sight("landscape-board", "board", PLAIN, width = 800, height = 360),
    Sight("small-board", "board", PLAIN, height = 640),
    Sight("small-penetration", "penetration", PLAIN, height = 640),
    Sight("landscape-penetration", "penetration", PLAIN, width = 800, height = 360),
    Sight("landscape-photos", "photos-compared", PLAIN, width = 800, height = 360),
    Sight("keyboard-up", "new-house", PLAIN, height = 520),
    // When what there is to mind was read today.
    Sight("board-in-hand", "board", PLAIN),
    Sight("penetration-in-hand", "penetration-ticked", PLAIN),
    // Down to what is seldom scrolled to.
    Sight("whole-house", "house-unfolded", PLAIN, height = 2_400),
    Sight("whole-wall", "wall-boards", PLAIN, height = 2_400),
    Sight("whole-board", "board-answers", PLAIN, height = 2_400),
    Sight("whole-penetration", "penetration-layers", PLAIN, height = 4_000),
    Sight("whole-detail", "detail-unfolded", PLAIN, height = 2_400),
    Sight("whole-photographed", "penetration-photo", PLAIN, height = 2_800),
    Sight("whole-order", "order", PLAIN, height = 2_800),
)

/** Writes every screen in every manner into a folder, or those named in [only], from a demo house of its own. */
fun pictures(folder: File, only: Set<String> = emptySet()) {
    folder.mkdirs()
    demo { desk, planned ->
        val screenshots = screenshots(planned).filter { only.isEmpty() || it.name in only }
        for (manner in Manners) {
            desk.set(manner.settings())
            for (screenshot in screenshots) File(folder, "${screenshot.name}-${manner.name}.png").writeBytes(png(desk, screenshot, manner))
            println("$folder/*-${manner.name}.png: ${screenshots.size}")
        }
        val all = screenshots(planned).associateBy { it.name }
        for (sight in Sights.filter { only.isEmpty() || it.name in only }) {
            desk.set(sight.manner.settings())
            val drawn = png(desk, all.getValue(sight.of), sight.manner, sight.width, sight.height)
            File(folder, "${sight.name}.png").writeBytes(drawn)
        }
    }
    if (only.isEmpty() || "first-start" in only) firstStart(folder)
}

/** The very first start, of an empty book. */
private fun firstStart(folder: File) {
    val empty = Files.createTempDirectory("lapwright").toFile()
    try {
        Desk(File(empty, "empty.lapwright"), Noon).use { desk ->
            File(folder, "first-start.png").writeBytes(png(desk, Screenshot("first-start") {}, PLAIN))
        }
    } finally {
        empty.deleteRecursively()
    }
}

/** Works on the demo house in a book that is gone afterwards. */
fun <T> demo(clock: Clock = Noon, work: (Desk, Planned) -> T): T {
    val folder = Files.createTempDirectory("lapwright").toFile()
    try {
        return Desk(File(folder, "demo.lapwright"), clock).use { desk -> work(desk, Planned(desk)) }
    } finally {
        folder.deleteRecursively()
    }
}

/** A screen as a PNG of two pixels to the dp. */
fun png(desk: Desk, screenshot: Screenshot, manner: Manner, width: Int = 360, height: Int = 800): ByteArray {
    val app = desk.app(services = screenshot.services)
    screenshot.open(app)
    return png(manner.scale, width, height) { Screens(app, Face) }
}

/** What is drawn on a phone of so many dp, as a PNG of two pixels to the dp. */
fun png(scale: Float, width: Int = 360, height: Int = 800, content: @Composable () -> Unit): ByteArray {
    val scene = ImageComposeScene(2 * width, 2 * height, Density(2f, scale), content = content)
    try {
        // What a drawing asks for comes in the frames after the first.
        for (frame in 0L..2L) scene.render(frame * SECOND)
        return scene.render(3 * SECOND).encodeToData(EncodedImageFormat.PNG)?.bytes ?: error("no picture was made")
    } finally {
        scene.close()
    }
}

private const val SECOND = 1_000_000_000L

/** Noon of a spring day, so that pictures do not change with the clock, nor with what was asked of it before. */
object Noon : Clock {
    override fun nowMs(): Long = 1_777_896_000_000L

    override fun utcOffsetMinutes() = -360
}
