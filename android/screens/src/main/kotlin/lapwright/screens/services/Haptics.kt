package lapwright.screens.services

/** Felt through a glove; never the only sign. */
interface Haptics {
    /** A key or a button was taken. */
    fun taken()

    /** The answer was refused. */
    fun refused()
}
