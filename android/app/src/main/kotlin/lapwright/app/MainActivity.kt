package lapwright.app

import android.content.Intent
import android.graphics.Color
import android.net.Uri
import android.os.Bundle
import android.os.Handler
import android.os.Looper
import android.util.TypedValue
import android.widget.ScrollView
import android.widget.TextView
import androidx.activity.ComponentActivity
import androidx.activity.SystemBarStyle
import androidx.activity.compose.BackHandler
import androidx.activity.compose.setContent
import androidx.activity.enableEdgeToEdge
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.ui.text.font.Font
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import java.security.SecureRandom
import java.util.concurrent.Executor
import java.util.concurrent.Executors
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.asCoroutineDispatcher
import kotlinx.coroutines.cancel
import kotlinx.coroutines.launch
import kotlinx.coroutines.withContext
import lapwright.core.Book
import lapwright.core.Refusal
import lapwright.shell.App
import lapwright.shell.Entropy
import lapwright.screens.services.PhotoWanted
import lapwright.screens.services.Picked
import lapwright.shell.Screens

/** The window of the app: the screens over the phone's book, with the phone's services. */
class MainActivity : ComponentActivity() {
    private val bookThread = Executors.newSingleThreadExecutor()
    private val onBookThread = bookThread.asCoroutineDispatcher()
    private val drawing = CoroutineScope(Executor(Handler(Looper.getMainLooper())::post).asCoroutineDispatcher())
    private val entropy = Entropy { ByteArray(16).also(SecureRandom()::nextBytes) }
    private lateinit var phone: Phone
    private var book: Book? = null
    private var restored: PhotoWanted? = null
    private var picked: Picked? = null

    /** What the screens are drawn from; absent until the book is open. */
    var app: App? = null
        private set

    override fun onCreate(state: Bundle?) {
        super.onCreate(state)
        phone = Phone(this, state)
        val folders = Folders(this)
        drawing.launch {
            try {
                book = withContext(onBookThread) { openBook(folders) }.also(::show)
            } catch (refused: Refusal.Refused) {
                tell("${getString(R.string.book_shut)}\n\n${refused.text}")
            }
        }
    }

    /** What stands there where nothing can be drawn. */
    private fun tell(told: String) {
        val line = TextView(this).apply {
            text = told
            setTextColor(getColor(R.color.ink))
            setTextSize(TypedValue.COMPLEX_UNIT_SP, 18f)
            setTextIsSelectable(true)
        }
        setContentView(ScrollView(this).apply {
            fitsSystemWindows = true
            addView(line)
        })
        drawBehindBars(dark = !resources.getBoolean(R.bool.dark_ink_on_bars))
    }

    /** The ground lies behind the system's bars; their signs are as dark or light as it needs. */
    private fun drawBehindBars(dark: Boolean) {
        val clear = Color.TRANSPARENT
        val style = if (dark) SystemBarStyle.dark(clear) else SystemBarStyle.light(clear, clear)
        enableEdgeToEdge(style, style)
    }

    private fun show(book: Book) {
        val app = App(book, phone.services, PhoneClock, entropy, drawing, onBookThread)
        this.app = app
        drawing.launch {
            app.start().join()
            takeIn()
        }
        val face = FontFamily(
            Font("font/regular.ttf", assets, FontWeight.Normal),
            Font("font/bold.ttf", assets, FontWeight.Bold),
        )
        setContent {
            val dark = app.shown?.remembered?.theme == "dark"
            LaunchedEffect(dark) { drawBehindBars(dark) }
            BackHandler(app.canStepBack) { app.stepBack() }
            Screens(app, face)
        }
    }

    @Deprecated("Its successor keeps what is waited for no better.")
    override fun onActivityResult(request: Int, result: Int, data: Intent?) {
        @Suppress("DEPRECATION")
        super.onActivityResult(request, result, data)
        phone.files.back(request, data)?.let(::fetch)
        restored = phone.photoBack(request) ?: return
        takeIn()
    }

    /** A file was picked: another program may take its time to hand it out. */
    private fun fetch(address: Uri) {
        drawing.launch {
            picked = withContext(onBookThread) { phone.files.fetch(address) }
            takeIn()
        }
    }

    @Deprecated("Its successor asks before the activity is there.")
    override fun onRequestPermissionsResult(request: Int, permissions: Array<String>, results: IntArray) {
        @Suppress("DEPRECATION")
        super.onRequestPermissionsResult(request, permissions, results)
        phone.answered(request)
    }

    /** After a stop the camera, or the list of files, is back before the book is open. */
    private fun takeIn() {
        val ready = app?.takeIf { it.shown != null } ?: return
        restored?.let { ready.photoBack(it) }
        restored = null
        picked?.let(ready::picked)
        picked = null
    }

    override fun onSaveInstanceState(state: Bundle) {
        super.onSaveInstanceState(state)
        phone.save(state)
    }

    override fun onStop() {
        super.onStop()
        val (book, copies) = (book ?: return) to Folders(this).copies.path
        bookThread.execute {
            try {
                book.keepCopy(copies, System.currentTimeMillis())
            } catch (refused: Refusal.Refused) {
                // The next stop tries again; until then it is said to whoever comes back.
                drawing.launch { app?.tell(refused.text) }
            }
        }
    }

    override fun onDestroy() {
        drawing.cancel()
        phone.close()
        bookThread.execute { book?.close() }
        bookThread.shutdown()
        super.onDestroy()
    }
}
