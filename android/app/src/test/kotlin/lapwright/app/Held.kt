package lapwright.app

import android.graphics.Bitmap
import android.graphics.Canvas
import android.graphics.Insets
import android.os.Bundle
import android.view.View
import android.view.ViewGroup
import android.view.WindowInsets
import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.platform.ViewRootForTest
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.text.AnnotatedString
import java.io.File
import java.util.concurrent.TimeUnit
import lapwright.screens.Place
import lapwright.shell.App
import org.robolectric.Robolectric
import org.robolectric.android.controller.ActivityController
import org.robolectric.shadows.ShadowLooper
import org.robolectric.shadows.ShadowSystemProperties
import org.robolectric.util.ReflectionHelpers
import org.robolectric.util.ReflectionHelpers.ClassParameter

/** Waits for what the app does on its other threads. */
fun await(what: String, done: () -> Boolean) {
    val end = System.nanoTime() + 20_000_000_000L
    while (!done()) {
        check(System.nanoTime() < end) { "$what did not happen" }
        ShadowLooper.idleMainLooper()
        Thread.sleep(5)
    }
}

/** Lays a status bar and one of Robolectric's navigation bars over the window; its class is hidden, its names are not. */
private fun layBars(navigation: String) {
    val bars = Class.forName("org.robolectric.shadows.SystemUi")
    fun behavior(kind: String, name: String) =
        ClassParameter(Class.forName("${bars.name}$$kind"), ReflectionHelpers.getStaticField<Any>(bars, name))
    ReflectionHelpers.callInstanceMethod<Unit>(
        bars,
        ReflectionHelpers.callStaticMethod(bars, "systemUiForDefaultDisplay"),
        "setBehavior",
        behavior("StatusBarBehavior", "STANDARD_STATUS_BAR"),
        behavior("NavigationBarBehavior", navigation),
    )
}

/** The app as one, held in a hand: the activity, its composed screens, a real book and the bars of the phone. */
class Held(gestures: Boolean = false, state: Bundle? = null) {
    private val controller: ActivityController<MainActivity>
    val activity: MainActivity
    val app: App get() = activity.app!!

    init {
        // On a phone Android decides this by the version that the app is made for.
        ShadowSystemProperties.override("persist.wm.debug.default_e2e_since_sdk", "35")
        layBars(if (gestures) "GESTURAL_NAVIGATION" else "THREE_BUTTON_NAVIGATION")
        controller = Robolectric.buildActivity(MainActivity::class.java)
        activity = controller.get()
        if (state == null) controller.setup() else controller.setup(state)
        held += this
        await("opening") { activity.app?.shown != null }
        await("drawing") { nodes().size > 3 }
    }

    /** What is on the glass, as a screen reader finds it. */
    fun nodes(): List<SemanticsNode> = roots(activity.window.decorView).flatMap { all(it.semanticsOwner.rootSemanticsNode) }

    fun texts(): List<String> = nodes().flatMap { it.texts() }

    /** What can be tapped, by what it says. */
    fun targets(): List<SemanticsNode> = nodes().filter { it.config.contains(SemanticsActions.OnClick) }

    fun tagged(tag: String): SemanticsNode? = nodes().find { it.config.getOrNull(SemanticsProperties.TestTag) == tag }

    fun named(name: String): SemanticsNode? = targets().find { name in it.texts() }

    fun tap(what: String) {
        await("$what to tap") { (tagged(what) ?: named(what)) != null }
        (tagged(what) ?: named(what))!!.config[SemanticsActions.OnClick].action!!()
        settle()
    }

    fun go(place: Place) {
        app.go(place)
        await("going to $place") { app.shown!!.place == place }
        settle()
    }

    fun settle() {
        await("an answer") { !app.pending }
        repeat(5) { ShadowLooper.idleMainLooper(); Thread.sleep(10) }
    }

    fun back() {
        activity.onBackPressedDispatcher.onBackPressed()
        settle()
    }

    /** What the system lays over the edges of the window, in pixels. */
    fun bars(): Insets = activity.window.decorView.rootWindowInsets.getInsets(WindowInsets.Type.systemBars())

    /** The keyboard comes up over the bottom of the window. */
    fun keyboard(dp: Int) {
        val view = activity.window.decorView
        val bottom = (dp * view.resources.displayMetrics.density).toInt()
        val insets = WindowInsets.Builder(view.rootWindowInsets)
            .setInsets(WindowInsets.Type.ime(), Insets.of(0, 0, 0, bottom)).setVisible(WindowInsets.Type.ime(), true).build()
        view.dispatchApplyWindowInsets(insets)
        settle()
    }

    fun heightPx(): Int = activity.window.decorView.height

    /** The side of a target in dp. */
    fun dp(px: Float): Float = px / activity.resources.displayMetrics.density

    /** The phone ends the process; what it kept is handed to the next. */
    fun kill(): Bundle {
        val state = Bundle().also { controller.pause().saveInstanceState(it) }
        controller.stop().destroy()
        held -= this
        return state
    }

    fun rotate(qualifiers: String) {
        org.robolectric.RuntimeEnvironment.setQualifiers(qualifiers)
        controller.configurationChange(activity.resources.configuration)
        settle()
    }

    /** Some frames, and the window as it looks then: what moved is where it was until it is drawn. */
    fun draw(ms: Long): Bitmap {
        ShadowLooper.idleMainLooper(ms, TimeUnit.MILLISECONDS)
        val view = activity.window.decorView
        val bitmap = Bitmap.createBitmap(view.width, view.height, Bitmap.Config.ARGB_8888)
        view.draw(Canvas(bitmap))
        return bitmap
    }

    /** The window as it looks, kept where `lapwright.pictures` names a folder. */
    fun picture(name: String) {
        val folder = System.getProperty("lapwright.pictures")?.let(::File)?.apply { mkdirs() } ?: return
        val bitmap = draw(0)
        File(folder, "$name.png").outputStream().use { bitmap.compress(Bitmap.CompressFormat.PNG, 90, it) }
    }

    companion object {
        private val held = mutableSetOf<Held>()

        /** Puts every phone down. Compose keeps one dispatcher a process: what still waits in it would deafen the next test. */
        fun putDown() {
            held.toList().forEach { it.kill() }
            // Frames wait for their time, too.
            repeat(10) { ShadowLooper.idleMainLooper(50, TimeUnit.MILLISECONDS); Thread.sleep(10) }
        }
    }

    private fun all(node: SemanticsNode): List<SemanticsNode> = listOf(node) + node.children.flatMap(::all)

    private fun roots(view: View): List<ViewRootForTest> = when (view) {
        is ViewRootForTest -> listOf(view)
        is ViewGroup -> (0 until view.childCount).flatMap { roots(view.getChildAt(it)) }
        else -> emptyList()
    }
}

/** What a screen reader says of a node. */
fun SemanticsNode.texts(): List<String> =
    config.getOrNull(SemanticsProperties.Text).orEmpty().map(AnnotatedString::text) +
        config.getOrNull(SemanticsProperties.ContentDescription).orEmpty()

/** Whether all of a node lies within the glass that the system leaves. */
fun Held.isClear(node: SemanticsNode, bars: Insets, keyboardPx: Int = 0): Boolean {
    val (box, width) = node.boundsInWindow to activity.window.decorView.width
    return box.inside(Rect(bars.left.toFloat(), bars.top.toFloat(), (width - bars.right).toFloat(), (heightPx() - maxOf(bars.bottom, keyboardPx)).toFloat()))
}

private fun Rect.inside(outer: Rect) =
    left >= outer.left && top >= outer.top && right <= outer.right && bottom <= outer.bottom
