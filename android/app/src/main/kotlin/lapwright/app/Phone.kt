package lapwright.app

import android.Manifest.permission.RECORD_AUDIO
import android.app.Activity
import android.content.pm.PackageManager
import android.os.Bundle
import java.util.Locale
import java.util.TimeZone
import lapwright.core.Book
import lapwright.shell.Clock
import lapwright.screens.services.PhotoWanted
import lapwright.screens.services.Services

/** What this phone does for the screens, as long as [activity] is there. */
class Phone(private val activity: Activity, state: Bundle?) {
    private val speech = PhoneSpeech(activity.applicationContext)
    private val camera = PhoneCamera(activity).apply { restore(state) }
    private val listening = PhoneListening(activity.applicationContext, ::mayHear)
    val files = PhoneFilePicker(activity)
    private val keepAwake = PhoneKeepAwake(activity.window)
    private var waiting: ((Boolean) -> Unit)? = null

    val services = Services(
        speech = speech,
        haptics = PhoneHaptics { activity.window.decorView },
        share = PhoneShare(activity),
        camera = camera,
        keepAwake = keepAwake,
        listening = listening,
        pictures = PhonePictures,
        files = files,
    )

    /** The photo that came back with the result of this [request], if it is the camera's. */
    fun photoBack(request: Int): PhotoWanted? = camera.back(request)

    /** Keeps what must not be lost over the end of the process. */
    fun save(state: Bundle) = camera.save(state)

    /** Gives everything back to the phone. */
    fun close() {
        keepAwake.release()
        speech.close()
        listening.close()
    }

    /** The person has answered the [request] for a permission. */
    fun answered(request: Int) {
        if (request == MICROPHONE) waiting?.also { waiting = null }?.invoke(isAllowed())
    }

    /** Tells whether the microphone may be used; where nobody has said, the phone asks. */
    private fun mayHear(tell: (Boolean) -> Unit) {
        if (isAllowed()) return tell(true)
        waiting = tell
        activity.requestPermissions(arrayOf(RECORD_AUDIO), MICROPHONE)
    }

    private fun isAllowed() = activity.checkSelfPermission(RECORD_AUDIO) == PackageManager.PERMISSION_GRANTED

    private companion object {
        const val MICROPHONE = 2
    }
}

/** The phone's own time. */
object PhoneClock : Clock {
    override fun nowMs() = System.currentTimeMillis()
    override fun utcOffsetMinutes() = TimeZone.getDefault().getOffset(nowMs()) / 60_000
}

/** Opens the book of this phone, which speaks the phone's language until another is chosen. */
fun openBook(folders: Folders): Book {
    val language = Locale.getDefault().language
    return Book.open(folders.book.path, folders.copies.path, language).apply { speakFirst(language) }
}
