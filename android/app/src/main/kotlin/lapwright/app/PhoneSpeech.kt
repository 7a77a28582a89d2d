package lapwright.app

import android.content.Context
import android.speech.tts.TextToSpeech
import java.util.Locale
import lapwright.screens.services.Speech

/** Says texts with the phone's own voice, which is started with the first of them. */
class PhoneSpeech(private val context: Context) : Speech {
    private var voice: TextToSpeech? = null
    private var ready = false
    private var held: Pair<String, String>? = null

    override fun say(text: String, language: String) {
        held = text to language
        if (voice == null) {
            voice = TextToSpeech(context) { status ->
                ready = status == TextToSpeech.SUCCESS
                sayHeld()
            }
        }
        sayHeld()
    }

    override fun hush() {
        held = null
        voice?.stop()
    }

    /** Gives the voice back to the phone. */
    fun close() {
        hush()
        voice?.shutdown()
        voice = null
        ready = false
    }

    private fun sayHeld() {
        val (text, language) = held ?: return
        val voice = voice?.takeIf { ready } ?: return
        held = null
        // A phone without this language says nothing rather than sizes that nobody understands.
        if (voice.setLanguage(Locale.forLanguageTag(language)) >= TextToSpeech.LANG_AVAILABLE) {
            voice.speak(text, TextToSpeech.QUEUE_FLUSH, null, "reading")
        }
    }
}
