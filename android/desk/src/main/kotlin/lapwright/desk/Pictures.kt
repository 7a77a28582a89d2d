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
    }
}

/** Works on the demo house in a book that is gone afterwards. */
fun <T> demo(work: (Desk, Planned) -> T): T {
    val folder = Files.createTempDirectory("lapwright").toFile()
    try {
        return Desk(File(folder, "demo.lapwright"), Noon).use { desk -> work(desk, Planned(desk)) }
    } finally {
        folder.deleteRecursively()
    }
}

/** A screen as a PNG of two pixels to the dp. */
fun png(desk: Desk, screenshot: Screenshot, manner: Manner): ByteArray {
    val app = desk.app(services = screenshot.services)
    screenshot.open(app)
    return png(manner.scale) { Screens(app, Face) }
}

/** What is drawn on the reference phone, as a PNG of two pixels to the dp. */
fun png(scale: Float, content: @Composable () -> Unit): ByteArray {
    val scene = ImageComposeScene(720, 1600, Density(2f, scale), content = content)
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
