package lapwright.app

import android.Manifest.permission.RECORD_AUDIO
import android.app.Activity
import android.os.Bundle
import android.speech.RecognizerIntent
import android.speech.SpeechRecognizer
import android.speech.tts.TextToSpeech
import android.view.HapticFeedbackConstants
import android.view.WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON
import java.util.Locale
import java.util.concurrent.TimeUnit
import lapwright.screens.services.Heard
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.shadows.ShadowLooper
import org.robolectric.shadows.ShadowSpeechRecognizer
import org.robolectric.shadows.ShadowTextToSpeech

/** Voice, buzz and light. */
@RunWith(RobolectricTestRunner::class)
class ServicesTest {
    private val controller = Robolectric.buildActivity(Start::class.java).setup()
    private val start: Start = controller.get()

    private fun lit(activity: Activity) = activity.window.attributes.flags and FLAG_KEEP_SCREEN_ON != 0

    private fun pass(ms: Long) = ShadowLooper.idleMainLooper(ms, TimeUnit.MILLISECONDS)

    @Test
    fun theDisplayStaysLitForAWhileAfterTheLastTap() {
        val keepAwake = start.phone.services.keepAwake
        assertFalse(lit(start))
        keepAwake.keep()
        pass(PhoneKeepAwake.LIMIT_MS - 1)
        assertTrue(lit(start))
        keepAwake.keep()
        pass(PhoneKeepAwake.LIMIT_MS - 1)
        assertTrue("a tap starts the time anew", lit(start))
        pass(1)
        assertFalse(lit(start))
        keepAwake.keep()
        keepAwake.release()
        assertFalse(lit(start))
    }

    @Test
    fun theDisplayIsGivenBackWithTheActivity() {
        start.phone.services.keepAwake.keep()
        controller.pause().stop().destroy()
        assertFalse(lit(start))
    }

    @Test
    fun aReadingIsSaidInItsLanguageOnceTheVoiceIsReady() {
        listOf(Locale.forLanguageTag("en"), Locale.forLanguageTag("es")).forEach {
            ShadowTextToSpeech.addLanguageAvailability(it)
        }
        val speech = start.phone.services.speech
        speech.say("five", "en")
        speech.say("seis y un dieciseisavo", "es")
        val voice = shadowOf(ShadowTextToSpeech.getLastTextToSpeechInstance())
        assertNull("the voice is not ready yet", voice.lastSpokenText)
        voice.onInitListener.onInit(TextToSpeech.SUCCESS)
        assertEquals("seis y un dieciseisavo", voice.lastSpokenText)
        assertEquals("es", voice.currentLanguage.language)
        assertEquals(TextToSpeech.QUEUE_FLUSH, voice.queueMode)
        speech.say("six and one sixteenth", "en")
        assertEquals("six and one sixteenth", voice.lastSpokenText)
        speech.say("sechs", "de")
        assertEquals("a voice without the language says nothing", "six and one sixteenth", voice.lastSpokenText)
        controller.pause().stop().destroy()
        assertTrue(voice.isShutdown)
    }

    @Test
    fun aPhoneWithoutAVoiceStaysQuiet() {
        val speech = start.phone.services.speech
        speech.say("five", "en")
        val voice = shadowOf(ShadowTextToSpeech.getLastTextToSpeechInstance())
        voice.onInitListener.onInit(TextToSpeech.ERROR)
        assertNull(voice.lastSpokenText)
    }

    @Test
    fun aLengthIsHeardByThePhoneItselfOnceTheMicrophoneIsAllowed() {
        val listening = start.phone.services.listening
        val heard = mutableListOf<Heard>()
        ShadowSpeechRecognizer.setIsOnDeviceRecognitionAvailable(false)
        assertFalse("a phone that would ask a server has no such key", listening.available)
        ShadowSpeechRecognizer.setIsOnDeviceRecognitionAvailable(true)
        assertTrue(listening.available)
        listening.listen("en") { heard += it }
        assertEquals("the first tap asks for the microphone", RECORD_AUDIO, shadowOf(start).lastRequestedPermission.requestedPermissions.single())
        assertEquals(emptyList<Heard>(), heard)
        start.phone.answered(shadowOf(start).lastRequestedPermission.requestCode)
        assertEquals(listOf<Heard>(Heard.Refused), heard)
        listening.listen("es") { heard += it }
        shadowOf(start.application).grantPermissions(RECORD_AUDIO)
        start.phone.answered(shadowOf(start).lastRequestedPermission.requestCode)
        pass(0)
        val ear = shadowOf(ShadowSpeechRecognizer.getLatestSpeechRecognizer())
        assertEquals("es-US", ear.lastRecognizerIntent.getStringExtra(RecognizerIntent.EXTRA_LANGUAGE))
        assertTrue(ear.lastRecognizerIntent.getBooleanExtra(RecognizerIntent.EXTRA_PREFER_OFFLINE, false))
        val said = arrayListOf("seis y un dieciseisavo")
        ear.triggerOnResults(Bundle().apply { putStringArrayList(SpeechRecognizer.RESULTS_RECOGNITION, said) })
        assertEquals(Heard.Words("seis y un dieciseisavo"), heard.last())
    }

    @Test
    @Config(qualifiers = "es-rMX")
    fun aPhoneThatHasNoPackForItsLanguageSaysSo() {
        ShadowSpeechRecognizer.setIsOnDeviceRecognitionAvailable(true)
        shadowOf(start.application).grantPermissions(RECORD_AUDIO)
        val heard = mutableListOf<Heard>()
        start.phone.services.listening.listen("es") { heard += it }
        pass(0)
        val ear = shadowOf(ShadowSpeechRecognizer.getLatestSpeechRecognizer())
        assertEquals("as it is spoken here", "es-MX", ear.lastRecognizerIntent.getStringExtra(RecognizerIntent.EXTRA_LANGUAGE))
        ear.triggerOnError(SpeechRecognizer.ERROR_LANGUAGE_UNAVAILABLE)
        assertEquals(listOf<Heard>(Heard.LanguageNotHere), heard)
    }

    @Test
    fun aRefusalFeelsUnlikeATap() {
        val view = shadowOf(start.window.decorView)
        start.phone.services.haptics.taken()
        assertEquals(HapticFeedbackConstants.VIRTUAL_KEY, view.lastHapticFeedbackPerformed())
        start.phone.services.haptics.refused()
        assertEquals(HapticFeedbackConstants.REJECT, view.lastHapticFeedbackPerformed())
    }
}
