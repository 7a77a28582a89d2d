package lapwright.desk

import lapwright.screens.Action
import lapwright.screens.AnswerKind
import lapwright.screens.BackupsAction
import lapwright.screens.BoardAction
import lapwright.screens.BoardView
import lapwright.screens.Given
import lapwright.screens.HandOverAction
import lapwright.screens.HouseAction
import lapwright.screens.JobsAction
import lapwright.screens.NewThing
import lapwright.screens.PenetrationAction
import lapwright.screens.Place
import lapwright.screens.PoleAction
import lapwright.screens.Question
import lapwright.screens.SawListAction
import lapwright.screens.SettingsAction
import lapwright.screens.StepHow
import lapwright.screens.StepLine
import lapwright.screens.StepSaid
import lapwright.screens.StepState
import lapwright.screens.TakeInAction
import lapwright.screens.View
import lapwright.screens.WallAction
import lapwright.screens.WallView
import lapwright.screens.services.Heard
import lapwright.screens.services.Listening
import lapwright.screens.services.Services
import lapwright.shell.App
import lapwright.shell.Clock
import java.awt.image.BufferedImage
import java.io.ByteArrayOutputStream
import java.io.File
import javax.imageio.ImageIO
import kotlin.io.path.createTempDirectory

/** The demo house, laid out and planned, with a signer. */
class Planned(private val desk: Desk) {
    val job: String
    val walls: List<String>

    init {
        desk.act(Action.SettingsKind(SettingsAction.TakePhone("Rosa")))
        job = (desk.act(Action.JobsKind(JobsAction.OpenDemo)).place as Place.House).job
        desk.act(Action.PoleKind(PoleAction.LayOut(job)))
        walls = (desk.view(Place.House(job)) as View.HouseKind).view.walls.map { it.wall }
        for (wall in walls) desk.act(Action.WallKind(WallAction.PlanBoards(wall)))
    }

    /** A house with its pole and nothing planned. */
    val bare: String by lazy {
        val job = (desk.act(Action.JobsKind(JobsAction.OpenDemo)).place as Place.House).job
        desk.act(Action.PoleKind(PoleAction.LayOut(job)))
        job
    }

    /** The house whose saw list is planned. */
    val listed: String by lazy { job.also { desk.act(Action.SawListKind(SawListAction.Plan(it))) } }

    fun wall(at: Int = 0): WallView = (desk.view(Place.Wall(walls[at])) as View.WallKind).view

    fun board(board: String): BoardView = (desk.view(Place.Board(board)) as View.BoardKind).view

    /** A board that is to be cut round a window; a plan that is made anew has another in its place. */
    val notched: String
        get() = walls.indices.firstNotNullOf { at ->
            val openings = wall(at).openings.map { it.opening }
            wall(at).boards.firstOrNull { line ->
                line.notched && board(line.board).notches.any { it.questions.isNotEmpty() && !it.taped && it.notch in openings }
            }
        }.board

    val penetration: String by lazy { wall().penetrations.first().penetration }

    /** One of a kind that goes through a wall. */
    fun penetration(kind: String): String = walls.indices.firstNotNullOf { at ->
        wall(at).penetrations.map { it.penetration }.firstOrNull { one ->
            (desk.view(Place.Penetration(one)) as View.PenetrationKind).view.what == kind
        }
    }

    /** A detail of a wall, by its place. */
    fun detail(place: String): String =
        walls.indices.firstNotNullOf { at -> wall(at).details.firstOrNull { it.detail.endsWith("/$place") } }.detail

    /** A tap whose block sits badly on its line: heights are tried until the core advises another block. */
    val advised: String by lazy {
        (30..60).firstNotNullOf { height ->
            val sizes = listOf("width" to "1", "from-left" to "40", "from-base" to "$height", "block-width" to "6", "block-height" to "6")
            val given = (listOf("what" to "hose-bib", "mounting" to "slip-over", "hole-from-bottom" to "3") + sizes)
                .map { (field, text) -> Given(field, text) }
            val outcome = desk.act(Action.WallKind(WallAction.AddPenetration(walls[0], given)))
            (outcome.view as View.PenetrationKind).view.takeIf { it.advice != null }?.penetration
        }
    }

    /** A penetration of the other wall, with photos of its first and its last step. */
    val photographed: String by lazy {
        val here = wall(1).penetrations.first().penetration
        val steps = (desk.view(Place.Penetration(here)) as View.PenetrationKind).view.steps
        for ((step, courses) in listOf(steps.first().code to 0, LOOKED_OVER to 8)) {
            val begun = desk.act(Action.PenetrationKind(PenetrationAction.BeginPhoto(here, step))).view as View.PenetrationKind
            val file = begun.view.steps.first { it.code == step }.photo?.file ?: error("the photo has no file")
            File(file).writeBytes(photo(courses))
            desk.act(Action.PenetrationKind(PenetrationAction.TakePhotoIn(here, step, closed = true)))
        }
        here
    }

    /** A penetration of which a step is signed for each picture. */
    val worked: String by lazy { wall(1).penetrations.last().penetration }

    /** A board that is cut to length alone. */
    val plain: String
        get() = walls.indices.firstNotNullOf { at ->
            wall(at).boards.firstOrNull { line -> board(line.board).checks.map { it.code } == listOf("cut", "primed", "up") }
        }.board

    /** A loose board of the house that is cut. */
    val cut: String by lazy {
        val made = desk.act(Action.BoardKind(BoardAction.CreateLoose(job, listOf(Given("length", "31")))))
        var view = (made.view as View.BoardKind).view
        while (view.state == "planned") {
            val step = view.steps.first { it.state == StepState.OPEN }.code
            val said = StepSaid(StepHow.TICK, "", "", null)
            view = (desk.act(Action.BoardKind(BoardAction.SignStep(view.board, step, said))).view as View.BoardKind).view
        }
        view.board
    }

    /** A copy of the book that is kept. */
    val copy: String by lazy {
        val kept = desk.act(Action.BackupsKind(BackupsAction.Keep)).view as View.BackupsKind
        kept.view.copies.first().copy
    }

    /** What a colleague handed over. */
    val handed: String by lazy { colleague(Later()) { _, house, handOver -> handOver(house) } }

    /** What a colleague and the crew here answered differently, of a house that was handed over before. */
    val differing: Place by lazy {
        val clock = Later()
        colleague(clock) { theirs, house, handOver ->
            val first = handOver(house)
            val shown = (desk.view(Place.TakeIn(first)) as View.TakeInKind).view
            for (sender in shown.senders) desk.act(Action.TakeInKind(TakeInAction.Trust(first, sender.device)))
            desk.act(Action.TakeInKind(TakeInAction.TakeIn(first, evenAhead = false)))
            // Of two answers in one moment chance would tell which stands.
            clock.minutes += 30
            for ((field, ours, other) in DIFFERING) {
                desk.act(Action.HouseKind(HouseAction.Answer(house, field, ours)))
                theirs.act(Action.HouseKind(HouseAction.Answer(house, field, other)))
            }
            handOver(house).also { desk.act(Action.TakeInKind(TakeInAction.TakeIn(it, evenAhead = false))) }
        }
        Place.Differences
    }

    /** What a colleague's phone does with the demo house; gives the file that it hands over last. */
    private fun colleague(clock: Clock, work: (theirs: Desk, house: String, handOver: (String) -> String) -> String): String {
        val folder = createTempDirectory("lapwright").toFile()
        val file = File(folder, "house.lapwright-house").path
        return Desk(File(folder, "book.lapwright"), clock).use { theirs ->
            theirs.act(Action.SettingsKind(SettingsAction.TakePhone("Teo")))
            val house = (theirs.act(Action.JobsKind(JobsAction.OpenDemo)).place as Place.House).job
            work(theirs, house) { job ->
                theirs.act(Action.HandOverKind(HandOverAction.House(job, all = true, path = file)))
                file
            }
        }
    }

    /** The pole, with a course of a wall as it hangs. */
    val hung: Place by lazy {
        val given = listOf("course" to "2", "left" to "7", "right" to "6").map { (field, text) -> Given(field, text) }
        desk.act(Action.PoleKind(PoleAction.SayAsBuilt(walls[1], given))).place
    }
}

/** Fields of a house, what the crew here answers and what the colleague does. */
private val DIFFERING = listOf(Triple("lap", "1 1/2", "1 3/8"), Triple("name", "Cottage at the back", "Cottage at the street"))

/** A clock that stands so many minutes after noon. */
private class Later(var minutes: Long = 60) : Clock {
    override fun nowMs() = Noon.nowMs() + 60_000L * minutes

    override fun utcOffsetMinutes() = Noon.utcOffsetMinutes()
}

/** The last step of every penetration. */
private const val LOOKED_OVER = "look-over"

/** A photo as a camera would leave it, of so many boards round a block. */
internal fun photo(courses: Int = 8): ByteArray {
    val picture = BufferedImage(600, 800, BufferedImage.TYPE_INT_RGB)
    val pen = picture.createGraphics()
    pen.color = java.awt.Color(0xB9, 0xB4, 0xA6)
    pen.fillRect(0, 0, 600, 800)
    pen.color = java.awt.Color(0x6E, 0x6A, 0x60)
    for (course in 0 until courses) pen.fillRect(0, 92 + 100 * course, 600, 8)
    pen.color = java.awt.Color(0xE4, 0xE0, 0xD4)
    pen.fillRect(200, 260, 200, 220)
    pen.color = java.awt.Color(0x3A, 0x3A, 0x3A)
    pen.fillOval(270, 340, 60, 60)
    pen.dispose()
    return ByteArrayOutputStream().also { ImageIO.write(picture, "jpg", it) }.toByteArray()
}

/** A screen to look at, how an app comes there, and what its device can do. */
class Screenshot(val name: String, val services: Services = Services(), val open: (App) -> Unit)

/** Every screen, with each kind of entry that it has. */
fun screenshots(planned: Planned): List<Screenshot> = listOf(
    Screenshot("jobs") { it.go(Place.Jobs) },
    Screenshot("settings") { it.go(Place.Settings) },
    Screenshot("backups") { app -> planned.copy; app.go(Place.Backups) },
    Screenshot("restore") { it.go(Place.Restore(planned.copy)) },
    Screenshot("hand-over") { it.go(Place.HandOver(planned.job)) },
    Screenshot("hand-over-book") { it.go(Place.HandOver(null)) },
    Screenshot("take-in") { it.go(Place.TakeIn(planned.handed)) },
    Screenshot("differences") { it.go(planned.differing) },
    Screenshot("done-list") { it.go(Place.DoneList(planned.job)) },
    Screenshot("rules") { it.go(Place.Rules(planned.job)) },
    Screenshot("pole") { it.go(Place.Pole(planned.bare)) },
    Screenshot("saw-list") { it.go(Place.SawList(planned.listed)) },
    Screenshot("saw-list-unplanned") { it.go(Place.SawList(planned.bare)) },
    Screenshot("order") { it.go(Place.Order(planned.listed)) },
    Screenshot("measure") { it.go(Place.Measure(planned.walls[0])) },
    Screenshot("house") { it.go(Place.House(planned.job)) },
    Screenshot("wall") { it.go(Place.Wall(planned.walls[0])) },
    Screenshot("board") { app -> app.go(Place.Board(planned.notched)); putAway(app) },
    Screenshot("board-measure") { app ->
        app.go(Place.Board(planned.notched))
        typed(app, "52 3/8")
    },
    Screenshot("board-plain", open = { it.go(Place.Board(planned.plain)) }),
    Screenshot("board-listen", Services(listening = Ear)) { it.go(Place.Board(planned.notched)) },
    Screenshot("board-step") { app ->
        app.go(Place.Board(planned.notched))
        putAway(app)
        app.unfold("steps")
        (app.shown?.view as? View.BoardKind)?.let { shown -> app.open(shown.view.steps.first { it.asks.size == 3 }.code) }
    },
    Screenshot("penetration") { it.go(Place.Penetration(planned.penetration)) },
    Screenshot("meter-base") { it.go(Place.Penetration(planned.penetration("meter-base"))) },
    Screenshot("detail") { it.go(Place.Penetration(planned.detail("window"))) },
    unfolded("detail-unfolded", "layers", "sizes", "answers") { Place.Penetration(planned.detail("corner-left")) },
    unfolded("board-answers", "answers", "more") { Place.Board(planned.notched) },
    unfolded("penetration-layers", "layers", "sizes", "answers") { Place.Penetration(planned.penetration) },
    unfolded("house-unfolded", "penetrations", "stock", "answers", "more") { Place.House(planned.job) },
    unfolded("wall-boards", "boards") { Place.Wall(planned.walls[0]) },
    unfolded("saw-list-later", "later") { Place.SawList(planned.listed) },
    Screenshot("penetration-locked") { app ->
        app.go(Place.Penetration(planned.penetration))
        app.lock(true)
    },
    Screenshot("penetration-advice") { it.go(Place.Penetration(planned.advised)) },
    Screenshot("penetration-advised") { app ->
        app.go(Place.Penetration(planned.advised))
        app.unfold("advice")
    },
    Screenshot("penetration-ticked") { app ->
        app.go(Place.Penetration(planned.worked))
        (app.shown?.view as? View.PenetrationKind)?.let { shown ->
            val step = shown.view.steps.first { it.state == StepState.OPEN }.code
            app.sign(Action.PenetrationKind(PenetrationAction.SignStep(shown.view.penetration, step, StepSaid(StepHow.TICK, "", "", null))))
        }
    },
    Screenshot("penetration-photo", Services(pictures = DeskPictures)) { app ->
        app.go(Place.Penetration(planned.photographed))
        app.open(LOOKED_OVER)
    },
    Screenshot("photo", Services(pictures = DeskPictures)) { app ->
        app.go(Place.Penetration(planned.photographed))
        (app.shown?.view as? View.PenetrationKind)?.let { shown -> app.look(shown.view.steps.first { it.code == LOOKED_OVER }.photo) }
    },
    Screenshot("photos-compared", Services(pictures = DeskPictures)) { app ->
        app.go(Place.Penetration(planned.photographed))
        (app.shown?.view as? View.PenetrationKind)?.let { shown -> app.look(shown.view.steps.first { it.code == LOOKED_OVER }.photo) }
        app.compare(true)
    },
    Screenshot("board-cut") { it.go(Place.Board(planned.cut)) },
    Screenshot("board-spoiled") { it.go(Place.New(NewThing.SPOILED, planned.cut)) },
    Screenshot("pole-as-built") { it.go(planned.hung) },
    Screenshot("new-as-built") { it.go(Place.New(NewThing.AS_BUILT, planned.walls[0])) },
    Screenshot("new-house") { it.go(Place.New(NewThing.HOUSE, "")) },
    Screenshot("new-stock") { app -> app.go(Place.New(NewThing.STOCK, planned.job)) },
    Screenshot("new-penetration") { it.go(Place.New(NewThing.PENETRATION, planned.walls[0])) },
    asked("settings-signer", Place.Settings) { (it as View.SettingsKind).view.newSigner },
    asked("settings-choice", Place.Settings) { (it as View.SettingsKind).view.settings.first() },
    asked("rules-value", Place.Rules(planned.job)) { shown ->
        (shown as View.RulesKind).view.rules.firstNotNullOf { it.asks.firstOrNull() }
    },
    asked("pole-length", Place.Pole(planned.job)) { (it as View.PoleKind).view.questions.length() },
    asked("rules-number", Place.Rules(planned.job)) { shown ->
        (shown as View.RulesKind).view.rules.flatMap { it.asks.take(1) }.first { it.kind == AnswerKind.NUMBER_KIND }
    },
    Screenshot("board-offered") { app ->
        app.go(Place.New(NewThing.LOOSE_BOARD, ""))
        (app.shown?.view as? View.NewKind)?.let { shown -> app.ask(shown.view.questions.first { it.offer != null }) }
    },
    asked("measure-length", Place.Measure(planned.walls[0])) { (it as View.MeasureKind).view.questions.length() },
    asked("house-length", Place.House(planned.job)) { (it as View.HouseKind).view.questions.length() },
    Screenshot("step-measured") { app ->
        app.go(Place.Board(planned.notched))
        (app.shown?.view as? View.BoardKind)?.let { shown -> app.ask(shown.view.steps.flatMap { it.asks }.length()) }
    },
    asked("step-note", Place.Penetration(planned.penetration)) { (it as View.PenetrationKind).view.steps.note() },
    asked("penetration-length", Place.Penetration(planned.penetration)) {
        (it as View.PenetrationKind).view.questions.length()
    },
)

/** A device that could listen. */
private object Ear : Listening {
    override val available = true
    override fun listen(language: String, done: (Heard) -> Unit) = Unit
}

/** A screen with the panel of one of its questions open. */
private fun asked(name: String, place: Place, question: (View) -> Question) = Screenshot(name) { app ->
    app.go(place)
    app.shown?.view?.let { app.ask(question(it)) }
}

/** A screen with what it keeps folded, and no question over it. */
private fun unfolded(name: String, vararg tags: String, place: () -> Place) = Screenshot(name) { app ->
    app.go(place())
    putAway(app)
    for (tag in tags) app.unfold(tag)
}

private fun List<Question>.length() = first { it.kind == AnswerKind.LENGTH_KIND }

private fun List<StepLine>.note() = flatMap { it.asks }.first { it.kind == AnswerKind.TEXT_KIND }

private fun putAway(app: App) {
    (app.shown?.view as? View.BoardKind)?.view?.asked?.let(app::putAway)
}

private fun typed(app: App, text: String) {
    (app.shown?.view as? View.BoardKind)?.view?.asked?.let { app.typing.put(it, text) }
}
