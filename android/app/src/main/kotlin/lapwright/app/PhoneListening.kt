package lapwright.app

import android.content.Context
import android.content.Intent
import android.os.Build
import android.os.Bundle
import android.speech.RecognitionListener
import android.speech.RecognizerIntent
import android.speech.SpeechRecognizer
import lapwright.screens.services.Listening

/**
 * Hears with what the phone has built in, and only on the phone itself: where it would have to ask a server, as before
 * Android 12, the key is not shown. `request` asks for the microphone at the first tap, which then hears nothing yet.
 */
class PhoneListening(private val context: Context, private val request: () -> Boolean) : Listening {
    private var ear: SpeechRecognizer? = null

    override val available: Boolean
        get() = Build.VERSION.SDK_INT >= Build.VERSION_CODES.S && SpeechRecognizer.isOnDeviceRecognitionAvailable(context)

    override fun listen(language: String, done: (String?) -> Unit) {
        close()
        if (Build.VERSION.SDK_INT < Build.VERSION_CODES.S || !available || !request()) return done(null)
        val ear = SpeechRecognizer.createOnDeviceSpeechRecognizer(context)
        this.ear = ear
        ear.setRecognitionListener(Once { text ->
            close()
            done(text)
        })
        ear.startListening(
            Intent(RecognizerIntent.ACTION_RECOGNIZE_SPEECH)
                .putExtra(RecognizerIntent.EXTRA_LANGUAGE_MODEL, RecognizerIntent.LANGUAGE_MODEL_FREE_FORM)
                .putExtra(RecognizerIntent.EXTRA_LANGUAGE, language)
                .putExtra(RecognizerIntent.EXTRA_PREFER_OFFLINE, true)
                .putExtra(RecognizerIntent.EXTRA_MAX_RESULTS, 1),
        )
    }

    /** Gives the microphone back to the phone. */
    fun close() {
        ear?.destroy()
        ear = null
    }
}

/** Tells what was heard, or that nothing was: once. */
private class Once(private val tell: (String?) -> Unit) : RecognitionListener {
    private var told = false

    private fun once(text: String?) {
        if (!told) {
            told = true
            tell(text)
        }
    }

    override fun onResults(results: Bundle?) =
        once(results?.getStringArrayList(SpeechRecognizer.RESULTS_RECOGNITION)?.firstOrNull())

    override fun onError(error: Int) = once(null)
    override fun onReadyForSpeech(params: Bundle?) = Unit
    override fun onBeginningOfSpeech() = Unit
    override fun onRmsChanged(rmsdB: Float) = Unit
    override fun onBufferReceived(buffer: ByteArray?) = Unit
    override fun onEndOfSpeech() = Unit
    override fun onPartialResults(partialResults: Bundle?) = Unit
    override fun onEvent(eventType: Int, params: Bundle?) = Unit
}
