package lapwright.app

import android.content.Context
import java.io.File

/** Where the app keeps things: all inside its own storage. */
class Folders(context: Context) {
    /** The book. The core keeps its photos beside it. */
    val book = File(context.filesDir, "book.lapwright")

    /** The book's own copies; the backup rules name this folder. */
    val copies = File(context.filesDir, "copies")

    /** What a camera is to fill. */
    val incoming = File(context.filesDir, "book.lapwright.photos/incoming")

    /** The file that was picked last. */
    val picked = File(context.cacheDir, "picked")

    /** What is handed on to other programs, for a day. */
    val out = File(context.cacheDir, "out")
}
