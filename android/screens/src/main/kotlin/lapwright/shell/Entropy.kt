package lapwright.shell

import lapwright.screens.Context
import lapwright.screens.Remembered

/** What time it is. */
interface Clock {
    /** Milliseconds since 1970-01-01 UTC. */
    fun nowMs(): Long

    /** Minutes that the local time is ahead of UTC. */
    fun utcOffsetMinutes(): Int
}

/** Sixteen random bytes, new for every action. */
fun interface Entropy {
    fun draw(): ByteArray
}

/** What a call of the book needs to know: who speaks and how, when, and new chance. */
fun Remembered.context(clock: Clock, entropy: Entropy) = Context(
    nowMs = clock.nowMs(),
    utcOffsetMinutes = clock.utcOffsetMinutes(),
    signer = signer,
    language = language,
    show = show,
    division = division,
    entropy = entropy.draw(),
)
