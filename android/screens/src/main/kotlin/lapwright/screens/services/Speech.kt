package lapwright.screens.services

/** Says a text aloud. */
interface Speech {
    /** Says [text], which is in [language] (`en` or `es`), and stops what was being said. */
    fun say(text: String, language: String)

    /** Stops what is being said. */
    fun hush()
}
