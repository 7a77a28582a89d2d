package lapwright.shell

import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.graphics.ImageBitmap
import kotlinx.coroutines.CoroutineDispatcher
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Job
import kotlinx.coroutines.launch
import kotlinx.coroutines.withContext
import lapwright.core.BookInterface
import lapwright.core.Refusal
import lapwright.screens.Action
import lapwright.screens.BoardAction
import lapwright.screens.Context
import lapwright.screens.DoneListAction
import lapwright.screens.FrameView
import lapwright.screens.PenetrationAction
import lapwright.screens.PhotoPlace
import lapwright.screens.Place
import lapwright.screens.Question
import lapwright.screens.Remembered
import lapwright.screens.StepLine
import lapwright.screens.StepPhoto
import lapwright.screens.View
import lapwright.screens.services.Heard
import lapwright.screens.services.PhotoWanted
import lapwright.screens.services.Picked
import lapwright.screens.services.Services

/** Why something was not done, in the reader's language. */
data class Trouble(val field: String, val text: String)

/** What was done last, in the reader's language, and the answer to undo it by. */
data class Done(val said: String, val group: String)

/** Everything that a screen is drawn from; replaced as a whole. */
data class Shown(
    val remembered: Remembered,
    val frame: FrameView,
    val place: Place,
    val view: View,
)

/**
 * Holds what is shown and hands on what is tapped: one call of the book for a tap, on the book's own thread.
 *
 * Nothing of the trade is decided here. `scope` is the thread that draws, `bookThread` a single other one.
 */
class App(
    private val book: BookInterface,
    val services: Services,
    private val clock: Clock,
    private val entropy: Entropy,
    private val scope: CoroutineScope,
    private val bookThread: CoroutineDispatcher,
) {
    /** What is shown; `null` until the book answered for the first time. */
    var shown: Shown? by mutableStateOf(null)
        private set

    /** Why the last tap did nothing. */
    var trouble: Trouble? by mutableStateOf(null)
        private set

    /** What was done last, for some seconds. */
    var done: Done? by mutableStateOf(null)
        private set

    /** Whether an answer is on its way; drafts do not count. */
    var pending: Boolean by mutableStateOf(false)
        private set

    /** Whether the app came back to where its signer had left off. */
    var restored: Boolean by mutableStateOf(false)
        private set

    /** The question that was opened by hand; else the view says which one is asked. */
    var opened: Question? by mutableStateOf(null)
        private set

    /** The question whose panel was put away, by subject and field. */
    var putAway: Pair<String, String>? by mutableStateOf(null)
        private set

    /** The step that was opened for more than its tick, by its code. */
    var openStep: String by mutableStateOf("")
        private set

    /** Whether the glass is deaf to drops: only a finger that rests on it unlocks it. */
    var locked: Boolean by mutableStateOf(false)
        private set

    /** Whether the glass can be locked here: where both hands are full and the phone lies open. */
    val lockable: Boolean get() = shown?.place is Place.Board || shown?.place is Place.Penetration

    /** Whether the phone listens for a length. */
    var listening: Boolean by mutableStateOf(false)
        private set

    /** The question that stands on the screen. */
    var standing: Question? by mutableStateOf(null)
        private set

    /** Says which question stands on the screen, if any. */
    fun stands(question: Question?) {
        standing = question
    }

    /** What is unfolded on this screen, by its tag. */
    var unfolded: Set<String> by mutableStateOf(emptySet())
        private set

    /** Unfolds something, or folds it again. */
    fun unfold(tag: String) {
        unfolded = if (tag in unfolded) unfolded - tag else unfolded + tag
    }

    /** Opens a step, or closes the one that is open. */
    fun open(step: String) {
        openStep = if (openStep == step) "" else step
    }

    /** The photo that is looked at, as large as the glass. */
    var looked: StepPhoto? by mutableStateOf(null)
        private set

    /** Looks at a photo, or puts it away. */
    fun look(photo: StepPhoto?) {
        looked = photo
        comparing = false
    }

    /** Whether the photo before the one that is looked at stands beside it. */
    var comparing: Boolean by mutableStateOf(false)
        private set

    /** Sets the photo before it beside the one that is looked at, or takes it away again. */
    fun compare(comparing: Boolean) {
        this.comparing = comparing
    }

    /** The steps whose photo is looked at, in the order of the work: the one before it first, where there is one. */
    val lookedSteps: List<StepLine>
        get() {
            val taken = shown?.let { steps(it.view) }.orEmpty().filter { it.photo?.place == PhotoPlace.HERE }
            val at = taken.indexOfFirst { it.photo?.photo == looked?.photo }
            return if (at < 0) emptyList() else taken.subList(maxOf(at - 1, 0), at + 1)
        }

    /** A photo as it can be drawn; `null` where it cannot be read. */
    suspend fun picture(photo: StepPhoto, most: Int): ImageBitmap? =
        withContext(bookThread) { services.pictures.photo(photo.file, most) }

    /** Locks the glass, or unlocks it. */
    fun lock(locked: Boolean) {
        this.locked = locked
    }

    /** What is being typed. */
    val typing = Typing()

    private val visited = ArrayDeque<Place>()
    private var last = 0
    private var signedMs: Long? = null

    /** Whether there is a screen to go back to. */
    val canGoBack: Boolean get() = visited.isNotEmpty() || shown?.place != Place.Jobs

    /** Opens the book where its signer left off. */
    fun start(): Job = ask(pends = true) {
        val remembered = book.remembered()
        val frame = book.frame(context(remembered))
        val (place, view) = open(remembered, remembered.place)
        Answer(Shown(remembered, frame, place, withPhotos(remembered, place, view)), restored = place != Place.Jobs)
    }

    /** Goes to a screen. */
    fun go(place: Place): Job = move(place) { from -> visited.addLast(from) }

    /** Goes back to the screen before, or up to the houses. */
    fun back(): Job = if (locked) scope.launch {} else move(visited.lastOrNull() ?: Place.Jobs) { visited.removeLastOrNull() }

    /** Whether the phone's own way back leads anywhere in here. */
    val canStepBack: Boolean get() = canGoBack || standing != null || looked != null

    /** The phone's own way back: a question that stands on the screen is put away first. */
    fun stepBack() {
        val question = standing
        when {
            looked != null && !locked -> look(null)
            question == null || locked -> back()
            else -> putAway(question)
        }
    }

    /** Carries out what was tapped, and shows what it led to. */
    fun act(action: Action): Job = call(pends = true) { now ->
        val outcome = book.act(context(now.remembered), action)
        val done = Done(outcome.said, outcome.group).takeIf { it.said.isNotEmpty() && action !is Action.DoneListKind }
        val answer = Answer(now.copy(place = outcome.place, view = outcome.view), accepted = true, done = done)
        when (action) {
            is Action.SettingsKind -> settled(now, answer)
            // What was looked at before may be in the book no more.
            is Action.RestoreKind -> answer.copy(forgets = true)
            else -> answer
        }
    }

    /**
     * Carries out a tap that signs. What it signs stands in its place at once with the next thing to sign, so for a moment
     * after it there is no other: the second tap of two in a row is none.
     */
    fun sign(action: Action): Job {
        val since = signedMs?.let { clock.nowMs() - it }
        if (pending || since in 0L..<DEAD_MS) return scope.launch {}
        return act(action).also { job -> job.invokeOnCompletion { signedMs = clock.nowMs() } }
    }

    /** Takes back what was done last, and stays where that can be shown. */
    fun undo(): Job {
        val done = done ?: return scope.launch {}
        return call(pends = true) { now ->
            book.act(context(now.remembered), Action.DoneListKind(DoneListAction.Undo(null, done.group)))
            val (place, view) = goOr(now, now.place)
            Answer(now.copy(place = place, view = view), accepted = true)
        }
    }

    /** What was done last was seen for long enough. */
    fun forget(done: Done) {
        if (this.done == done) this.done = null
    }

    /** What was made and is taken back has no place any more. */
    private fun goOr(now: Shown, place: Place): Pair<Place, View> = try {
        place to book.go(context(now.remembered), place)
    } catch (_: Refusal.Refused) {
        val before = visited.lastOrNull { it != place } ?: Place.Jobs
        try {
            before to book.go(context(now.remembered), before)
        } catch (_: Refusal.Refused) {
            Place.Jobs to book.go(context(now.remembered), Place.Jobs)
        }
    }

    /** What there is to mind at a step or a check was read. */
    fun read(step: String): Job = when (val place = shown?.place) {
        is Place.Board -> act(Action.BoardKind(BoardAction.ReadCautions(place.board, step)))
        is Place.Penetration -> act(Action.PenetrationKind(PenetrationAction.ReadCautions(place.penetration, step)))
        else -> scope.launch {}
    }

    /** Keeps keys that were typed and not yet accepted. */
    fun keep(action: Action): Job = call(pends = false) { now ->
        val outcome = book.act(context(now.remembered), action)
        Answer(now.copy(place = outcome.place, view = outcome.view), isDraft = true)
    }

    /** Opens the camera for a step: the book names the file first, so that a photo outlives the end of the program. */
    fun takePhoto(step: String): Job = call(pends = true) { now ->
        val outcome = book.act(context(now.remembered), beginningPhoto(now.place, step))
        val file = steps(outcome.view).find { it.code == step }?.photo?.file
        Answer(now.copy(place = outcome.place, view = outcome.view), moved = {
            if (file != null) open(PhotoWanted(now.place, step, file))
        })
    }

    /** Without a camera no photo is waited for. */
    private fun open(photo: PhotoWanted) {
        if (services.camera.take(photo)) return
        scope.launch {
            photoBack(photo).join()
            shown?.let { tell(it.frame.words.noCamera) }
        }
    }

    /** Takes in what the camera left for a photo; [closed] where it is known to be closed. */
    fun photoBack(photo: PhotoWanted, closed: Boolean = true): Job =
        act(takingPhotoIn(photo.of, photo.step, closed))

    /** The view after what a camera left while the program was gone was taken in. */
    private fun withPhotos(remembered: Remembered, place: Place, view: View): View {
        val waited = steps(view).filter { it.photo?.place == PhotoPlace.WAITING }
        return waited.fold(view) { _, step -> book.act(context(remembered), takingPhotoIn(place, step.code, closed = false)).view }
    }

    private fun beginningPhoto(of: Place, step: String): Action = when (of) {
        is Place.Board -> Action.BoardKind(BoardAction.BeginPhoto(of.board, step))
        is Place.Penetration -> Action.PenetrationKind(PenetrationAction.BeginPhoto(of.penetration, step))
        else -> error("$of has no steps")
    }

    private fun takingPhotoIn(of: Place, step: String, closed: Boolean): Action = when (of) {
        is Place.Board -> Action.BoardKind(BoardAction.TakePhotoIn(of.board, step, closed))
        is Place.Penetration -> Action.PenetrationKind(PenetrationAction.TakePhotoIn(of.penetration, step, closed))
        else -> error("$of has no steps")
    }

    private fun steps(view: View): List<StepLine> = when (view) {
        is View.BoardKind -> view.view.steps
        is View.PenetrationKind -> view.view.steps
        else -> emptyList()
    }

    /** Carries out what makes a file called [name], and hands the file on under a [title]. */
    fun share(title: String, name: String, making: (path: String) -> Action): Job = call(pends = true) { now ->
        val path = services.share.place(name)
        val outcome = book.act(context(now.remembered), making(path))
        Answer(now.copy(place = outcome.place, view = outcome.view), moved = { services.share.file(title, path) })
    }

    /** Lets the person pick a file. */
    fun pickFile() = services.files.pick(::picked)

    /** A file was picked: where the copies are shown it is one to go back to, anywhere else what a colleague handed over. */
    fun picked(file: Picked) {
        val shown = shown ?: return
        when (file) {
            is Picked.File -> go(if (shown.place == Place.Backups) Place.Restore(file.path) else Place.TakeIn(file.path))
            Picked.Nothing -> {}
            Picked.Unreadable -> tell(shown.frame.words.fileUnreadable)
        }
    }

    /** Hands on a photo under a title, without the place where it was taken. */
    fun sharePhoto(photo: String, title: String): Job = call(pends = true) { now ->
        val path = services.share.place("photo.jpg")
        book.exportPhoto(photo, path)
        Answer(now, moved = { services.share.file(title, path) })
    }

    /** Opens a question by hand, with what was typed of it before. */
    fun ask(question: Question) {
        opened = question
        putAway = null
        trouble = null
    }

    /** Puts the panel of a question away; a tap on its answer brings it back. */
    fun putAway(question: Question) {
        opened = null
        standing = null
        putAway = question.subject to question.field
        trouble = null
    }

    /** The question to ask now: the opened one as the view has it, else the asked one unless it was put away. */
    fun asked(all: List<Question>, asked: Question?): Question? {
        val opened = opened?.let { one -> all.find { it.subject == one.subject && it.field == one.field } }
        return opened ?: asked?.takeIf { (it.subject to it.field) != putAway }
    }

    /** Takes a length from the phone's ear and types it, to be looked at before it is accepted. */
    fun listen(type: (String) -> Unit) {
        val (language, words) = shown?.let { it.remembered.language to it.frame.words } ?: return
        trouble = null
        listening = true
        services.listening.listen(language) { heard ->
            listening = false
            when (heard) {
                is Heard.Words -> hear(heard.text, type)
                Heard.Nothing -> tell(words.heardNothing)
                Heard.Refused -> tell(words.microphoneRefused)
                Heard.LanguageNotHere -> tell(words.languageNotHere)
            }
        }
    }

    /** Says what the phone itself could not do. */
    fun tell(text: String) {
        trouble = Trouble("", text)
        services.haptics.refused()
    }

    private fun hear(text: String, type: (String) -> Unit) {
        val remembered = shown?.remembered ?: return
        scope.launch {
            try {
                val typed = withContext(bookThread) { book.heard(context(remembered), text) }
                trouble = null
                type(typed)
            } catch (refused: Refusal.Refused) {
                trouble = Trouble(refused.field, refused.text)
                services.haptics.refused()
            }
        }
    }

    /** The trouble was read. */
    fun understood() {
        trouble = null
        restored = false
    }

    /** The call of the book that a drawing is made by. */
    suspend fun <T> read(work: (BookInterface, Context) -> T): T? {
        val remembered = shown?.remembered ?: return null
        return withContext(bookThread) {
            try {
                work(book, context(remembered))
            } catch (_: Refusal.Refused) {
                null
            }
        }
    }

    private fun move(place: Place, visit: (Place) -> Unit): Job = call(pends = true) { now ->
        Answer(now.copy(place = place, view = book.go(context(now.remembered), place)), moved = { visit(now.place) })
    }

    /** A setting may change the language, the unit, or who holds the phone and thereby the place. */
    private fun settled(before: Shown, answer: Answer): Answer {
        val remembered = book.remembered()
        if (remembered.copy(place = before.remembered.place) == before.remembered) return answer
        val frame = book.frame(context(remembered))
        val place = if (remembered.signer == before.remembered.signer) answer.shown.place else remembered.place
        val (here, view) = open(remembered, place)
        return answer.copy(shown = Shown(remembered, frame, here, view))
    }

    /** A remembered place may name what is no longer there. */
    private fun open(remembered: Remembered, place: Place): Pair<Place, View> = try {
        place to book.view(context(remembered), place)
    } catch (_: Refusal.Refused) {
        Place.Jobs to book.view(context(remembered), Place.Jobs)
    }

    private fun context(remembered: Remembered) = remembered.context(clock, entropy)

    private data class Answer(
        val shown: Shown,
        val accepted: Boolean = false,
        val isDraft: Boolean = false,
        val restored: Boolean = false,
        val done: Done? = null,
        val forgets: Boolean = false,
        val moved: () -> Unit = {},
    )

    private fun call(pends: Boolean, work: (Shown) -> Answer): Job {
        val nothing = shown ?: return scope.launch {}
        return ask(pends) { work(shown ?: nothing) }
    }

    /** Calls follow each other on the book's thread; what an older one shows is not shown over a newer one's. */
    private fun ask(pends: Boolean, work: () -> Answer): Job {
        last += 1
        val number = last
        if (pends) pending = true
        return scope.launch {
            try {
                val answer = withContext(bookThread) { work() }
                if (number == last || !answer.isDraft) take(answer)
                if (pends) trouble = null
            } catch (refused: Refusal.Refused) {
                trouble = Trouble(refused.field, refused.text)
                services.haptics.refused()
                if (refused.code == IN_DOUBT) doubt()
            } finally {
                if (pends) pending = false
            }
        }
    }

    /** What was typed is in doubt: its question comes back with the answers to choose from. */
    private suspend fun doubt() {
        val now = shown ?: return
        val view = read { book, context -> book.view(context, now.place) } ?: return
        if (shown === now) {
            shown = now.copy(view = view)
            typing.close()
        }
    }

    private fun take(answer: Answer) {
        val before = shown
        answer.moved()
        if (before != null && answer.accepted) onward(before.place, answer.shown.place)
        if (answer.forgets) visited.clear()
        shown = answer.shown
        if (answer.isDraft) return
        restored = answer.restored
        done = answer.done
        opened = null
        if (before?.place != answer.shown.place) {
            putAway = null
            openStep = ""
            unfolded = emptySet()
            locked = false
            looked = null
        }
        typing.close()
        if (answer.accepted) services.haptics.taken()
    }

    private companion object {
        /** The code of a refusal that is a question: the same answer once more is the yes. */
        const val IN_DOUBT = "unlikely"

        /** How long after a tap that signs no other does. */
        const val DEAD_MS = 700L
    }

    /** A new thing that was made, or left, is nowhere to go back to; nor is a colleague's file that was taken in. */
    private fun onward(from: Place, to: Place) {
        if (from == to) return
        if (from !is Place.New && from !is Place.TakeIn) visited.addLast(from)
        if (visited.lastOrNull() == to) visited.removeLast()
    }
}
