package lapwright.shell.parts

import androidx.compose.foundation.background
import androidx.compose.foundation.border
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.RowScope
import androidx.compose.foundation.layout.Spacer
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.safeDrawingPadding
import androidx.compose.foundation.rememberScrollState
import androidx.compose.foundation.verticalScroll
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.SideEffect
import androidx.compose.runtime.compositionLocalOf
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import kotlinx.coroutines.delay
import lapwright.screens.AnswerKind
import lapwright.screens.Note
import lapwright.screens.Place
import lapwright.screens.Subject
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes

/** The one next action of a screen; where it wants a photo, what opens the camera stands beside it. */
class Next(val text: String, val glyph: Glyph? = null, val camera: (() -> Unit)? = null, val onTap: () -> Unit)

/**
 * The frame of every screen: what is read above, what is tapped below in the thumb's half; back and the done list in
 * the corner of the other hand.
 *
 * `cautions` stand right over the next action and do not scroll away: they are read before it. While a question is asked its
 * entry stands below. Above it `strip` keeps a narrow piece of the drawing in sight; a screen without one shows where the tape
 * is put. A phone that lies on its side has the entry beside the question; one that is small, or set to large texts, has no room
 * for a question over its keys and scrolls both.
 */
@Composable
fun Frame(
    app: App,
    title: String,
    job: String? = null,
    asking: Asking? = null,
    next: Next? = null,
    strip: (@Composable () -> Unit)? = null,
    cautions: List<Note> = emptyList(),
    above: @Composable ColumnScope.() -> Unit,
) {
    val shown = app.shown ?: return
    val inks = LocalLook.current.inks
    SideEffect { app.stands(asking?.question) }
    app.done?.let { done ->
        LaunchedEffect(done) {
            delay(SEEN_MS)
            app.forget(done)
        }
    }
    val large = LocalDensity.current.fontScale > 1.3f
    val read: @Composable ColumnScope.() -> Unit = {
        if (app.restored) Say(shown.frame.words.cameBack, color = inks.chalk, bold = true)
        if (asking != null) {
            QuestionHead(app, asking)
            val picture = asking.question.picture
            if (strip != null) {
                strip()
            } else if (picture.isNotEmpty()) {
                Drawn(app, Subject.TapePlace(picture), 0, 130.dp)
            }
        } else {
            app.trouble?.let { TroublePanel(it.text) }
            val size = if (large) Sizes.body.atMost(IN_SIGHT) else Sizes.title
            Say(title, Modifier.semantics { heading() }, size = size, bold = true)
            above()
        }
    }
    // Nothing that is read or tapped lies under the system's bars, a notch of the glass or the keyboard.
    BoxWithConstraints(Modifier.fillMaxSize().background(inks.ground).safeDrawingPadding().padding(8.dp)) {
        // A line of text needs little room, and its keyboard takes much: the question scrolls over it as on a large screen.
        val writes = asking?.question?.kind == AnswerKind.TEXT_KIND
        val low = !writes && !app.locked && maxHeight < (if (large) 760.dp else 600.dp)
        CompositionLocalProvider(LocalRoom provides maxHeight) {
            when {
                low && maxWidth >= 600.dp -> Lying(app, job, asking, next, cautions, read)
                low && asking != null -> Scrolled(Modifier.fillMaxSize()) {
                    read()
                    QuestionEntry(app, asking)
                    Corner(app, job, null)
                }
                else -> Column(Modifier.fillMaxSize(), Arrangement.spacedBy(6.dp)) {
                    Scrolled(Modifier.weight(1f).deafWhile(app.locked), read)
                    if (app.locked) {
                        HoldToUnlock(app)
                    } else {
                        DoneBar(app)
                        if (asking != null) {
                            QuestionEntry(app, asking)
                        } else if (cautions.isNotEmpty()) {
                            // What was done stands over them for some seconds, and takes of their room.
                            val room = LocalRoom.current
                            val share = when {
                                large -> 0.35f
                                room < 700.dp -> 0.4f
                                else -> 0.45f
                            }
                            val most = room * (if (app.done == null) share else share - 0.1f)
                            Cautions(app, cautions, Modifier.heightIn(max = most))
                        }
                        Corner(app, job, next.takeIf { asking == null })
                    }
                }
            }
        }
    }
}

/** A screen on a phone that lies on its side: what is read in one column, what is tapped in the other, on the thumb's side. */
@Composable
private fun Lying(
    app: App,
    job: String?,
    asking: Asking?,
    next: Next?,
    cautions: List<Note>,
    read: @Composable ColumnScope.() -> Unit,
) {
    val large = LocalDensity.current.fontScale > 1.3f
    val columns = listOf<@Composable RowScope.() -> Unit>(
        {
            Column(Modifier.weight(1f).fillMaxHeight(), Arrangement.spacedBy(6.dp)) {
                Scrolled(Modifier.weight(1f)) {
                    read()
                    if (asking != null && large) QuestionNumber(app, asking)
                }
                if (asking != null) {
                    if (!large) QuestionNumber(app, asking)
                    Corner(app, job, null)
                }
            }
        },
        {
            Column(Modifier.weight(if (asking == null) 0.6f else 1f).fillMaxHeight(), Arrangement.spacedBy(6.dp, Alignment.Bottom)) {
                if (asking != null) {
                    Scrolled(Modifier) { QuestionKeys(app, asking, alone = true) }
                } else {
                    DoneBar(app)
                    if (cautions.isNotEmpty()) Cautions(app, cautions, Modifier.weight(1f, fill = false))
                    next?.let { NextWithCamera(app, it, Modifier.fillMaxWidth()) }
                    Corner(app, job, null)
                }
            }
        },
    )
    Row(Modifier.fillMaxSize(), Arrangement.spacedBy(8.dp)) {
        for (column in if (LocalLook.current.leftHanded) columns.reversed() else columns) column()
    }
}

/** What there is to mind, and a sign that there is more of it below. */
@Composable
private fun Cautions(app: App, cautions: List<Note>, modifier: Modifier) {
    val words = app.shown?.frame?.words ?: return
    val inks = LocalLook.current.inks
    val scroll = rememberScrollState()
    Column(modifier) {
        Column(Modifier.weight(1f, fill = false).verticalScroll(scroll)) { CautionPanel(words.caution, cautions) }
        if (scroll.canScrollForward) {
            Box(Modifier.fillMaxWidth().border(1.5.dp, inks.warning).testTag("more below"), Alignment.Center) {
                Icon(Glyph.UNFOLD, inks.warning, 20.dp)
            }
        }
    }
}

/** How long what was done stands there with its undo. */
const val SEEN_MS = 8_000L

/** What was done last, with its undo, for some seconds. */
@Composable
private fun DoneBar(app: App) {
    val done = app.done ?: return
    val words = app.shown?.frame?.words ?: return
    val inks = LocalLook.current.inks
    Row(
        Modifier.fillMaxWidth().border(1.5.dp, inks.done).padding(start = 10.dp).testTag("done")
            .semantics { liveRegion = LiveRegionMode.Polite },
        Arrangement.spacedBy(8.dp),
        Alignment.CenterVertically,
    ) {
        Icon(Glyph.TICK, inks.done, 24.dp)
        Scrolled(Modifier.weight(1f).heightIn(max = (LocalRoom.current * 0.16f).coerceAtLeast(64.dp))) {
            Say("${words.done}: ${done.said}", size = Sizes.small, color = inks.done)
        }
        GlyphButton(Glyph.UNDO, words.undo, Modifier.testTag("undo"), "${words.undo}: ${done.said}") { app.undo() }
    }
}

/** The height that the screen has, less what lies under the system's bars and the keyboard. */
val LocalRoom = compositionLocalOf { Dp.Infinity }

@Composable
private fun Scrolled(modifier: Modifier, content: @Composable ColumnScope.() -> Unit) =
    Column(modifier.fillMaxWidth().verticalScroll(rememberScrollState()), Arrangement.spacedBy(6.dp), content = content)

/**
 * Back and the done list in one corner, the next action in the thumb's: beside them, or over them where texts are large or
 * the lock stands there, too.
 */
@Composable
private fun Corner(app: App, job: String?, next: Next?) {
    val words = app.shown?.frame?.words ?: return
    val leftHanded = LocalLook.current.leftHanded
    val long = next != null && next.text.length > WORDY
    val large = LocalDensity.current.fontScale > 1.3f || app.lockable || long
    if (large && next != null) NextWithCamera(app, next, Modifier.fillMaxWidth())
    val buttons: List<@Composable () -> Unit> = listOfNotNull(
        { if (app.canGoBack) GlyphButton(Glyph.BACK, words.back) { app.back() } },
        { GlyphButton(Glyph.DONE_LIST, words.doneList) { app.go(Place.DoneList(job)) } },
        { if (app.lockable) GlyphButton(Glyph.LOCK, words.lockSign, Modifier.testTag("lock"), words.lock) { app.lock(true) } },
    )
    Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(6.dp), Alignment.CenterVertically) {
        val action: @Composable (Modifier) -> Unit = { space ->
            if (next == null || large) Spacer(space) else NextWithCamera(app, next, space)
        }
        if (leftHanded) action(Modifier.weight(1f))
        for (button in if (leftHanded) buttons.reversed() else buttons) button()
        if (!leftHanded) action(Modifier.weight(1f))
    }
}

/** An action with more letters than this has no room beside the corner. */
private const val WORDY = 48

/** The next action, and beside it the camera where it wants a photo. */
@Composable
private fun NextWithCamera(app: App, next: Next, space: Modifier) {
    val words = app.shown?.frame?.words ?: return
    Row(space, Arrangement.spacedBy(6.dp), Alignment.CenterVertically) {
        NextAction(next.text, Modifier.weight(1f).testTag("next"), next.glyph, next.onTap)
        next.camera?.let { take ->
            GlyphButton(Glyph.CAMERA, words.photo, Modifier.testTag("camera"), "${words.photo}: ${next.text}", take)
        }
    }
}
