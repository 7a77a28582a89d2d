import AVFoundation
import LapwrightModels

/// The voice of the phone; it needs no network.
final class PhoneSpeech: Speech {
    private let voice = AVSpeechSynthesizer()

    func say(_ text: String, language: String) {
        hush()
        let said = AVSpeechUtterance(string: text)
        said.voice = AVSpeechSynthesisVoice(language: language == "es" ? "es-MX" : "en-US")
        voice.speak(said)
    }

    func hush() {
        voice.stopSpeaking(at: .immediate)
    }
}
