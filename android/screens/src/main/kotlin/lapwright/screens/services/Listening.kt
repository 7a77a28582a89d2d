package lapwright.screens.services

/** What came of listening. */
sealed interface Heard {
    /** These words. */
    data class Words(val text: String) : Heard

    /** No words: nothing was said, or the phone was disturbed. */
    data object Nothing : Heard

    /** The microphone may not be used. */
    data object Refused : Heard

    /** This device does not hear the language by itself. */
    data object LanguageNotHere : Heard
}

/** Hears a few words. */
interface Listening {
    /** Whether this device can; without it no key is shown for it. */
    val available: Boolean

    /** Listens once for words in [language] (`en` or `es`); [done] gets what came of it on the thread that draws. */
    fun listen(language: String, done: (Heard) -> Unit)
}
