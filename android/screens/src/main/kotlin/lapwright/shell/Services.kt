package lapwright.shell

/** Speaks a text in a language: `en` or `es`. */
fun interface Speech {
    fun say(text: String, language: String)
}

/** Lets the hand feel what the eye in the sun may miss. */
interface Haptics {
    /** A key or an answer was taken. */
    fun taken()

    /** An answer was refused. */
    fun refused()
}

/** Passes on what was made here. */
interface Share {
    fun text(title: String, text: String)

    fun file(title: String, path: String)
}

/** Takes a photo and gives the id that it is kept under, or `null` where none was taken. */
fun interface Camera {
    fun take(then: (String?) -> Unit)
}

/** Keeps the glass lit while a board or a penetration is in hand. */
fun interface KeepAwake {
    fun hold(on: Boolean)
}

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

/** What a device does for the screens. */
class Services(
    val speech: Speech,
    val haptics: Haptics,
    val share: Share,
    val camera: Camera,
    val keepAwake: KeepAwake,
    val clock: Clock,
    val dice: Dice,
)
