package lapwright.screens.services

/** Hears a few words. */
interface Listening {
    /** Whether this device can; without it no key is shown for it. */
    val available: Boolean

    /** Listens once for words in [language] (`en` or `es`); [done] gets them, or nothing, on the thread that draws. */
    fun listen(language: String, done: (String?) -> Unit)
}
