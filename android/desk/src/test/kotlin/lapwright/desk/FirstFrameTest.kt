package lapwright.desk

import androidx.compose.ui.ImageComposeScene
import androidx.compose.ui.unit.Density
import kotlinx.coroutines.asCoroutineDispatcher
import org.jetbrains.skia.Bitmap
import org.jetbrains.skia.Image
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import java.io.File
import java.nio.file.Files
import java.util.concurrent.Executors
import java.util.concurrent.TimeUnit

/** What is seen first is there before the library is loaded: in a process of its own, where nothing has loaded it yet. */
class FirstFrameTest {
    @Test
    fun theGroundAndTheNameAreShownBeforeTheLibraryIsLoaded() {
        val file = File(Files.createTempDirectory("lapwright").toFile(), "book.lapwright")
        val process = jvm("lapwright.desk.FirstFrameTestKt", file.path).start()
        val printed = process.inputReader().readLines()
        assertTrue("it ended", process.waitFor(60, TimeUnit.SECONDS))
        assertEquals(printed.joinToString("\n"), 0, process.exitValue())
        assertEquals(listOf("ground and name: library false, book false", "screens: library true, book true"), printed)
    }
}

/** Whether the core's library is among the files that this process has mapped. */
private fun libraryIsLoaded() = File("/proc/self/maps").readLines().any { "lapwright_ffi" in it }

private fun Image.colours(): List<Int> {
    val bitmap = Bitmap.makeFromImage(this)
    return (0 until height step 2).flatMap { y -> (0 until width).map { x -> bitmap.getColor(x, y) } }
}

/** `BOOK`: draws frames of the opening window until the screens stand in it, and says what was loaded at the first and then. */
fun main(args: Array<String>) {
    val file = File(args[0])
    val bookThread = Executors.newSingleThreadExecutor { work -> Thread(work, "book").apply { isDaemon = true } }
    val scene = ImageComposeScene(360, 800, Density(1f)) {
        Opening(bookThread.asCoroutineDispatcher()) { Desk(file, Noon) }
    }
    val first = scene.render(0).colours()
    val ground = first.groupingBy { it }.eachCount().maxBy { it.value }.key
    check(ground == 0xFFFAF8F3.toInt()) { "the ground is ${Integer.toHexString(ground)}" }
    check(first.toSet().size > 4) { "no name stands on the ground" }
    println("ground and name: library ${libraryIsLoaded()}, book ${file.exists()}")
    for (frame in 1L..1000L) {
        val now = scene.render(frame * 16_000_000L).colours()
        if (now != first) break
        Thread.sleep(10)
    }
    println("screens: library ${libraryIsLoaded()}, book ${file.exists()}")
    kotlin.system.exitProcess(0)
}
