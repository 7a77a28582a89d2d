package lapwright.screens.services

/** Hands something to another program, which the person picks. */
interface Share {
    /** Hands on the file at this absolute [path], of this media [type]. */
    fun file(path: String, type: String)

    /** Hands on plain text. */
    fun text(text: String)
}
