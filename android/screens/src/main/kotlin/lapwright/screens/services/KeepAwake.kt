package lapwright.screens.services

/** Keeps the display lit on the screens that are read with both hands full; it goes out by itself after a while. */
interface KeepAwake {
    /** Keeps the display lit from now on, for a limited time: called again on every tap. */
    fun keep()

    /** Lets the display go dark as it always does. */
    fun release()
}
