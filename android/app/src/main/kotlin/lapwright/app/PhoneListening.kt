package lapwright.app

import android.content.Context
import android.content.Intent
import android.os.Build
import android.os.Bundle
import android.speech.RecognitionListener
import android.speech.RecognizerIntent
import android.speech.SpeechRecognizer
import java.util.Locale
import lapwright.screens.services.Heard
import lapwright.screens.services.Listening

/**
 * Hears with what the phone has built in, and only on the phone itself: where it would have to ask a server, as before
 * Android 12, the key is not shown. `request` asks for the microphone at the first tap.
 */
class PhoneListening(private val context: Context, private val request: ((Boolean) -> Unit) -> Unit) : Listening {
    private var ear: SpeechRecognizer? = null

    override val available: Boolean
        get() = Build.VERSION.SDK_INT >= Build.VERSION_CODES.S && SpeechRecognizer.isOnDeviceRecognitionAvailable(context)

    override fun listen(language: String, done: (Heard) -> Unit) {
        close()
        if (!available) return done(Heard.LanguageNotHere)
        request { may -> if (may) start(language, done) else done(Heard.Refused) }
    }

    private fun start(language: String, done: (Heard) -> Unit) {
        if (Build.VERSION.SDK_INT < Build.VERSION_CODES.S) return done(Heard.LanguageNotHere)
        val ear = SpeechRecognizer.createOnDeviceSpeechRecognizer(context)
        this.ear = ear
        ear.setRecognitionListener(
            Once { heard ->
                close()
                done(heard)
            },
        )
        ear.startListening(
            Intent(RecognizerIntent.ACTION_RECOGNIZE_SPEECH)
                .putExtra(RecognizerIntent.EXTRA_LANGUAGE_MODEL, RecognizerIntent.LANGUAGE_MODEL_FREE_FORM)
                .putExtra(RecognizerIntent.EXTRA_LANGUAGE, spoken(language))
                .putExtra(RecognizerIntent.EXTRA_PREFER_OFFLINE, true)
                .putExtra(RecognizerIntent.EXTRA_MAX_RESULTS, 1),
        )
    }

    /** The language as it is spoken where the phone is set to; else as most phones have it: without a country few hear it. */
    private fun spoken(language: String): String {
        val own = Locale.getDefault()
        return (if (own.language == language && own.country.isNotEmpty()) own else Locale(language, "US")).toLanguageTag()
    }

    /** Gives the microphone back to the phone. */
    fun close() {
        ear?.destroy()
        ear = null
    }
}

/** Tells what was heard, or that nothing was: once. */
private class Once(private val tell: (Heard) -> Unit) : RecognitionListener {
    private var told = false

    private fun once(heard: Heard) {
        if (!told) {
            told = true
            tell(heard)
        }
    }

    override fun onResults(results: Bundle?) {
        val text = results?.getStringArrayList(SpeechRecognizer.RESULTS_RECOGNITION)?.firstOrNull()
        once(text?.let(Heard::Words) ?: Heard.Nothing)
    }

    override fun onError(error: Int) = once(
        when (error) {
            SpeechRecognizer.ERROR_INSUFFICIENT_PERMISSIONS -> Heard.Refused
            SpeechRecognizer.ERROR_LANGUAGE_NOT_SUPPORTED, SpeechRecognizer.ERROR_LANGUAGE_UNAVAILABLE -> Heard.LanguageNotHere
            else -> Heard.Nothing
        },
    )
    override fun onReadyForSpeech(params: Bundle?) = Unit
    override fun onBeginningOfSpeech() = Unit
    override fun onRmsChanged(rmsdB: Float) = Unit
    override fun onBufferReceived(buffer: ByteArray?) = Unit
    override fun onEndOfSpeech() = Unit
    override fun onPartialResults(partialResults: Bundle?) = Unit
    override fun onEvent(eventType: Int, params: Bundle?) = Unit
}
