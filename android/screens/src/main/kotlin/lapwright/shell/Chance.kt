package lapwright.shell

/** What time it is. */
interface Clock {
    /** Milliseconds since 1970-01-01 UTC. */
    fun nowMs(): Long

    /** Minutes that the local time is ahead of UTC. */
    fun utcOffsetMinutes(): Int
}

/** Sixteen random bytes, new for every action. */
fun interface Dice {
    fun roll(): ByteArray
}
