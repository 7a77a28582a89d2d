package lapwright.shell

import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.platform.Font
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import lapwright.core.Book
import lapwright.screens.Action
import lapwright.screens.Context
import lapwright.screens.JobsAction
import lapwright.screens.Outcome
import lapwright.screens.Place
import lapwright.screens.PoleAction
import lapwright.screens.SettingsAction
import lapwright.screens.View
import lapwright.screens.services.Camera
import lapwright.screens.services.FilePicker
import lapwright.screens.services.Haptics
import lapwright.screens.services.Heard
import lapwright.screens.services.KeepAwake
import lapwright.screens.services.Listening
import lapwright.screens.services.PhotoWanted
import lapwright.screens.services.Picked
import lapwright.screens.services.Services
import lapwright.screens.services.Share
import lapwright.screens.services.Speech
import java.io.File
import java.nio.file.Files

/** A real book on a real file, with the services of a phone played by what a test can read. */
class Fixture(val file: File = File(Files.createTempDirectory("lapwright").toFile(), "book.lapwright")) : AutoCloseable {
    val book: Book = Book.open(file.path, File(file.parentFile, "copies").path)
    val said = mutableListOf<String>()
    val felt = mutableListOf<String>()
    val shared = mutableListOf<Pair<String, String>>()
    val photos = mutableListOf<PhotoWanted>()
    var awake = false
    var heard: String? = null
    var picks: String? = null
    private var draws = 0

    val services = Services(
        speech = object : Speech {
            override fun say(text: String, language: String) { said += text }
            override fun hush() = Unit
        },
        haptics = object : Haptics {
            override fun taken() { felt += "taken" }
            override fun refused() { felt += "refused" }
        },
        share = object : Share {
            override fun place(name: String) = File(file.parentFile, "out").apply { mkdirs() }.resolve(name).path
            override fun file(title: String, path: String) { shared += title to path }
            override fun text(title: String, text: String) { shared += title to text }
        },
        camera = object : Camera {
            override fun take(photo: PhotoWanted) = photos.add(photo)
        },
        keepAwake = object : KeepAwake {
            override fun keep() { awake = true }
            override fun release() { awake = false }
        },
        listening = object : Listening {
            override val available get() = heard != null
            override fun listen(language: String, done: (Heard) -> Unit) = done(heard?.let(Heard::Words) ?: Heard.Refused)
        },
        files = object : FilePicker {
            override fun pick(done: (Picked) -> Unit) = done(picks?.let(Picked::File) ?: Picked.Nothing)
        },
    )

    /** The time where it stands; else a second goes by with each look at the clock, so that no tap comes at once after another. */
    var stands: Long? = null
    private var looks = 0

    val clock = object : Clock {
        override fun nowMs() = stands ?: (1_777_896_000_000L + (draws + looks++) * 1000L)
        override fun utcOffsetMinutes() = -360
    }
    private val random = java.security.SecureRandom()
    val entropy = Entropy {
        draws += 1
        ByteArray(16).also(random::nextBytes)
    }

    /** An app that does everything at once, so that a test need not wait. */
    fun app(): App = App(book, services, clock, entropy, CoroutineScope(Dispatchers.Unconfined), Dispatchers.Unconfined).apply { start() }

    fun act(action: Action): Outcome = book.act(context(), action)

    fun view(place: Place): View = book.view(context(), place)

    /** The demo house, and its place. */
    fun demo(): String = (act(Action.JobsKind(JobsAction.OpenDemo)).place as Place.House).job

    /** The demo house with its pole laid out, and its first wall. */
    fun laidOut(): Pair<String, String> {
        val job = demo()
        act(Action.PoleKind(PoleAction.LayOut(job)))
        return job to (view(Place.House(job)) as View.HouseKind).view.walls.first().wall
    }

    fun set(vararg settings: Pair<String, String>) {
        for ((field, text) in settings) act(Action.SettingsKind(SettingsAction.Answer(field, text)))
    }

    fun sign(name: String) {
        act(Action.SettingsKind(SettingsAction.TakePhone(name)))
    }

    fun context(): Context = book.remembered().context(clock, entropy)

    override fun close() = book.close()
}

/** The shortest file that has the frame of a JPEG. */
val Jpeg: ByteArray = byteArrayOf(-1, -40, -1, -37, 0, 3, 0, -1, -38, 0, 3, 0, 18, -1, -39)

/** The bundled face, as a device has it. */
val Face: FontFamily by lazy {
    val files = File("target/generated/resources/font").listFiles().orEmpty().filter { it.extension == "ttf" }
    check(files.isNotEmpty()) { "no font in target/generated/resources/font: run cargo xtask bindings" }
    FontFamily(
        files.map { file ->
            val weight = if (file.name == "bold.ttf") FontWeight.Bold else FontWeight.Normal
            Font(file.name, file.readBytes(), weight)
        },
    )
}
