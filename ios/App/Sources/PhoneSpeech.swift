import AVFoundation
import LapwrightModels

/// The voice of the phone; it needs no network.
final class PhoneSpeech: Speech {
    private let voice = AVSpeechSynthesizer()

    func say(_ text: String, language: String) {
        hush()
        // Heard with the ring switch off, too: it is a tool that was asked, and music only goes lower for it.
        let session = AVAudioSession.sharedInstance()
        try? session.setCategory(.playback, mode: .spokenAudio, options: .duckOthers)
        let said = AVSpeechUtterance(string: text)
        said.voice = AVSpeechSynthesisVoice(language: language == "es" ? "es-MX" : "en-US")
        voice.speak(said)
    }

    func hush() {
        voice.stopSpeaking(at: .immediate)
    }
}
