package lapwright.desk

import androidx.compose.runtime.remember
import androidx.compose.ui.unit.DpSize
import androidx.compose.ui.unit.dp
import androidx.compose.ui.window.Window
import androidx.compose.ui.window.application
import androidx.compose.ui.window.rememberWindowState
import kotlinx.coroutines.asCoroutineDispatcher
import lapwright.screens.Place
import lapwright.screens.View
import lapwright.screens.services.Services
import java.awt.GraphicsEnvironment
import java.io.File
import java.util.concurrent.Executors
import kotlin.system.exitProcess

private const val USAGE = """usage: app [--book FILE] [--demo] [--pictures FOLDER [--only NAME]...]
  --book FILE         the book to open; else the command line's own
  --demo              the demo house, in a book of its own
  --pictures FOLDER   every screen as a picture, without a window
  --only NAME         of the pictures only those of this screen, as jobs or board-cut"""

fun main(args: Array<String>) {
    var (book, demo, pictures) = Triple<File?, Boolean, File?>(null, false, null)
    val only = mutableSetOf<String>()
    val words = args.iterator()
    while (words.hasNext()) {
        when (val word = words.next()) {
            "--book" -> book = File(value(words, word))
            "--demo" -> demo = true
            "--pictures" -> pictures = File(value(words, word))
            "--only" -> only += value(words, word)
            else -> usage("unknown: $word")
        }
    }
    when {
        pictures != null -> pictures(pictures, only)
        GraphicsEnvironment.isHeadless() -> {
            val folder = File("target/pictures").absoluteFile
            println("There is no display here, so no window. The screens as pictures instead, in $folder:")
            pictures(folder, only)
        }
        else -> window(book ?: File(dataFolder(), if (demo) "demo-window.lapwright" else "book.lapwright"), demo)
    }
}

private fun value(words: Iterator<String>, option: String): String =
    if (words.hasNext()) words.next() else usage("$option needs a value")

private fun usage(why: String): Nothing {
    System.err.println("$why\n$USAGE")
    exitProcess(2)
}

/** Where the command line keeps its book. */
private fun dataFolder(): File {
    val home = System.getProperty("user.home")
    val system = System.getProperty("os.name").lowercase()
    val data = when {
        "mac" in system -> "$home/Library/Application Support"
        "windows" in system -> System.getenv("APPDATA") ?: "$home/AppData/Roaming"
        else -> System.getenv("XDG_DATA_HOME")?.ifEmpty { null } ?: "$home/.local/share"
    }
    return File(data, "lapwright")
}

/** The reference phone, 360 x 800 dp. */
internal fun window(file: File, demo: Boolean) {
    val bookThread = Executors.newSingleThreadExecutor { work -> Thread(work, "book").apply { isDaemon = true } }
    // Of the book's thread alone.
    var desk: Desk? = null
    application {
        val state = rememberWindowState(size = DpSize(360.dp, 800.dp))
        Window(
            onCloseRequest = {
                bookThread.submit { desk?.close() }.get()
                exitApplication()
            },
            state = state,
            title = NAME,
        ) {
            val services = remember {
                Services(share = DeskShare(window), pictures = DeskPictures, files = DeskFilePicker(window))
            }
            Opening(remember { bookThread.asCoroutineDispatcher() }, services) { opened(file, demo).also { desk = it } }
        }
    }
}

/** The book of a file; with the demo house where it is asked for and nothing is there yet. */
private fun opened(file: File, demo: Boolean): Desk = Desk(file).also { desk ->
    if (demo && (desk.view(Place.Jobs) as View.JobsKind).view.jobs.isEmpty()) Planned(desk)
}
