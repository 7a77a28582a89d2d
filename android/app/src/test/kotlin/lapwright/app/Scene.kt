package lapwright.app

import android.app.Activity
import android.os.Bundle
import java.util.concurrent.atomic.AtomicInteger
import lapwright.core.Book
import lapwright.screens.Action
import lapwright.screens.Context
import lapwright.screens.Given
import lapwright.screens.HouseAction
import lapwright.screens.JobsAction
import lapwright.screens.Outcome
import lapwright.screens.PenetrationAction
import lapwright.screens.PenetrationView
import lapwright.screens.Place
import lapwright.screens.StepPhoto
import lapwright.screens.View
import lapwright.screens.WallAction
import lapwright.screens.services.PhotoWanted

/** A start of the app without its screens: the phone's services over a book, and their hand-over from start to start. */
class Start : Activity() {
    lateinit var phone: Phone

    override fun onCreate(state: Bundle?) {
        super.onCreate(state)
        phone = Phone(this, state)
    }

    override fun onSaveInstanceState(state: Bundle) {
        super.onSaveInstanceState(state)
        phone.save(state)
    }

    override fun onDestroy() {
        phone.close()
        super.onDestroy()
    }
}

private val throws = AtomicInteger()

fun context(language: String = "en"): Context {
    val n = throws.incrementAndGet()
    val entropy = ByteArray(16) { (n shr (8 * (it % 4))).toByte() }
    return Context(1_777_896_000_000L + n * 1_000L, -420, "Ines", language, "in/16", "1/16\"", entropy)
}

/** A book with a house, a wall and a hose bib in it; gives the hose bib. */
fun Book.withHoseBib(): String {
    val house = act(context(), Action.JobsKind(JobsAction.Create("Lot 12", null))).place as Place.House
    for ((field, text) in listOf("board-height" to "8 1/4", "board-thickness" to "5/16", "lap" to "1 1/4")) {
        act(context(), Action.HouseKind(HouseAction.Answer(house.job, field, text)))
    }
    val wall = act(context(), Action.HouseKind(HouseAction.AddWall(house.job, "South"))).place as Place.Measure
    val answers = listOf("what" to "hose-bib", "width" to "1 1/16", "from-left" to "60", "from-base" to "24")
    val given = answers.map { (field, text) -> Given(field, text) }
    val added = act(context(), Action.WallKind(WallAction.AddPenetration(wall.wall, given)))
    return (added.place as Place.Penetration).penetration
}

const val STEP = "look-over"

/** Begins a photo of the hose bib's last step. */
fun Book.beginPhoto(bib: String): PhotoWanted {
    val outcome = act(context(), Action.PenetrationKind(PenetrationAction.BeginPhoto(bib, STEP)))
    return PhotoWanted(Place.Penetration(bib), STEP, photo(outcome.view)!!.file)
}

/** Takes in what the camera left, as the screens do. */
fun Book.takeIn(photo: PhotoWanted, context: Context): Outcome =
    act(context, Action.PenetrationKind(PenetrationAction.TakePhotoIn((photo.of as Place.Penetration).penetration, photo.step, true)))

fun photo(view: View): StepPhoto? = penetration(view).steps.single { it.code == STEP }.photo

fun penetration(view: View): PenetrationView = (view as View.PenetrationKind).view
