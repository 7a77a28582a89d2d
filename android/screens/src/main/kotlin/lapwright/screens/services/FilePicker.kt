package lapwright.screens.services

/** What came of picking a file. */
sealed interface Picked {
    /** A file that can be read at [path], for as long as the screen is on it. */
    data class File(val path: String) : Picked

    /** None. */
    data object Nothing : Picked

    /** One that cannot be read. */
    data object Unreadable : Picked
}

/** Lets the person pick a file that another program or device left. */
interface FilePicker {
    /** Opens the phone's own list of files; [done] gets what came of it on the thread that draws. */
    fun pick(done: (Picked) -> Unit)
}
