package lapwright.shell

import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.platform.Font
import java.io.File
import java.nio.file.Files
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import lapwright.core.Book
import lapwright.screens.Action
import lapwright.screens.JobsAction
import lapwright.screens.Outcome
import lapwright.screens.Context
import lapwright.screens.Place
import lapwright.screens.SettingsAction

/** A real book on a real file, with the services of a phone played by what a test can read. */
class Fixture(val file: File = File(Files.createTempDirectory("lapwright").toFile(), "book.lapwright")) : AutoCloseable {
    val book: Book = Book.open(file.path, null)
    val said = mutableListOf<String>()
    val felt = mutableListOf<String>()
    val shared = mutableListOf<String>()
    var awake = false
    var photo: String? = null
    private var rolls = 0

    val services = Services(
        speech = { text, _ -> said += text },
        haptics = object : Haptics {
            override fun taken() { felt += "taken" }
            override fun refused() { felt += "refused" }
        },
        share = object : Share {
            override fun text(title: String, text: String) { shared += text }
            override fun file(title: String, path: String) { shared += path }
        },
        camera = { then -> then(photo) },
        keepAwake = { awake = it },
        clock = object : Clock {
            override fun nowMs() = 1_777_896_000_000L + file.length() % 7 + rolls * 1000L
            override fun utcOffsetMinutes() = -360
        },
        dice = {
            rolls += 1
            java.util.Random(rolls.toLong() + System.nanoTime()).let { random -> ByteArray(16).also(random::nextBytes) }
        },
    )

    /** An app that does everything at once, so that a test need not wait. */
    fun app(): App = App(book, services, CoroutineScope(Dispatchers.Unconfined), Dispatchers.Unconfined).apply { start() }

    fun act(action: Action): Outcome = book.act(context(), action)

    /** The demo house, and its place. */
    fun demo(): String = (act(Action.JobsKind(JobsAction.OpenDemo)).place as Place.House).job

    fun set(vararg settings: Pair<String, String>) {
        for ((field, text) in settings) act(Action.SettingsKind(SettingsAction.Answer(field, text)))
    }

    fun sign(name: String) {
        act(Action.SettingsKind(SettingsAction.TakePhone(name)))
    }

    fun context(): Context = book.remembered().let { remembered ->
        Context(
            nowMs = services.clock.nowMs(),
            utcOffsetMinutes = services.clock.utcOffsetMinutes(),
            signer = remembered.signer,
            language = remembered.language,
            show = remembered.show,
            division = remembered.division,
            dice = services.dice.roll(),
        )
    }

    override fun close() = book.close()
}

/** The bundled face, as a device has it. */
val Face: FontFamily by lazy {
    val files = File("target/generated/resources/font").listFiles().orEmpty().filter { it.extension == "ttf" }
    check(files.isNotEmpty()) { "no font in target/generated/resources/font: run cargo xtask bindings" }
    FontFamily(
        files.map { file ->
            val weight = if ("Bold" in file.name) FontWeight.Bold else FontWeight.Normal
            Font(file.name, file.readBytes(), weight)
        },
    )
}
