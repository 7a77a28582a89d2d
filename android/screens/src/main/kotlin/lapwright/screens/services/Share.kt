package lapwright.screens.services

/** Hands something to another program, which the person picks. */
interface Share {
    /** The absolute path at which a file called [name] is made before it is handed on; nothing is there yet. */
    fun place(name: String): String

    /** Hands on the file that was made at [path], a path of [place], under a [title]. */
    fun file(title: String, path: String)

    /** Hands on plain text under a [title]. */
    fun text(title: String, text: String)
}
