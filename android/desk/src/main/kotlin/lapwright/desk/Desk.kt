package lapwright.desk

import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.platform.Font
import kotlinx.coroutines.CoroutineDispatcher
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import lapwright.core.Book
import lapwright.core.BookInterface
import lapwright.screens.Action
import lapwright.screens.Context
import lapwright.screens.Outcome
import lapwright.screens.Place
import lapwright.screens.SettingsAction
import lapwright.screens.View
import lapwright.screens.services.Services
import lapwright.shell.App
import lapwright.shell.Clock
import lapwright.shell.Entropy
import lapwright.shell.context
import java.io.File
import java.security.SecureRandom
import java.util.TimeZone

/** A book on this computer, and who speaks to it. */
class Desk(file: File, private val clock: Clock = Now) : AutoCloseable {
    val book: Book

    init {
        file.absoluteFile.parentFile.mkdirs()
        // The command keeps the copies of a book beside it under the same name.
        book = Book.open(file.path, File(file.absoluteFile.parentFile, "${file.nameWithoutExtension}.copies").path)
    }

    private val entropy = Entropy { ByteArray(16).also(SecureRandom()::nextBytes) }

    /** An app on this book; without a thread of the book's own it does everything at once. */
    fun app(
        scope: CoroutineScope = CoroutineScope(Dispatchers.Unconfined),
        bookThread: CoroutineDispatcher = Dispatchers.Unconfined,
        services: Services = Services(),
        book: BookInterface = this.book,
    ): App = App(book, services, clock, entropy, scope, bookThread).apply { start() }

    /** Carries out an action past the screens. */
    fun act(action: Action): Outcome = book.act(context(), action)

    /** What a screen shows. */
    fun view(place: Place): View = book.view(context(), place)

    /** Answers settings, by field and code. */
    fun set(settings: Map<String, String>) {
        for ((field, text) in settings) act(Action.SettingsKind(SettingsAction.Answer(field, text)))
    }

    private fun context(): Context = book.remembered().context(clock, entropy)

    override fun close() = book.close()
}

private object Now : Clock {
    override fun nowMs() = System.currentTimeMillis()

    override fun utcOffsetMinutes() = TimeZone.getDefault().getOffset(nowMs()) / 60_000
}

/** The bundled face. */
val Face: FontFamily by lazy {
    fun read(name: String): ByteArray =
        Desk::class.java.getResourceAsStream("/$name.ttf")?.use { it.readBytes() }
            ?: Desk::class.java.getResourceAsStream("/font/$name.ttf")?.use { it.readBytes() }
            ?: error("the face $name is missing: run cargo xtask bindings")
    FontFamily(Font("regular", read("regular"), FontWeight.Normal), Font("bold", read("bold"), FontWeight.Bold))
}
