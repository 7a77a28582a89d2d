@preconcurrency import AVFoundation
import LapwrightModels
@preconcurrency import Speech

/// Hears with what the phone has built in, and only on the phone itself: where it would have to ask a server, the key is not
/// shown. The first tap asks for the microphone.
final class PhoneListening: Listening {
    private var ears: [String: SFSpeechRecognizer] = [:]
    private let engine = AVAudioEngine()
    private var request: SFSpeechAudioBufferRecognitionRequest?

    func hears(_ language: String) -> Bool {
        ear(language)?.supportsOnDeviceRecognition == true
    }

    func listen(_ language: String) async -> Heard {
        // A second tap ends what is being heard.
        if let request {
            request.endAudio()
            return .nothing
        }
        guard let ear = ear(language), ear.supportsOnDeviceRecognition else { return .languageNotHere }
        let request = SFSpeechAudioBufferRecognitionRequest()
        request.requiresOnDeviceRecognition = true
        self.request = request
        defer { self.request = nil }
        guard await Permission.given() else { return .refused }
        defer { close() }
        guard (try? open(request)) == true else { return .nothing }
        var heard: String?
        var silence = end(request, after: .seconds(6))
        for await words in Self.words(ear, request) {
            heard = words
            silence.cancel()
            silence = end(request, after: .milliseconds(1500))
        }
        silence.cancel()
        return heard.map(Heard.words) ?? .nothing
    }

    private func ear(_ language: String) -> SFSpeechRecognizer? {
        if let ear = ears[language] { return ear }
        ears[language] = SFSpeechRecognizer(locale: Locale(identifier: language == "es" ? "es-MX" : "en-US"))
        return ears[language]
    }

    /// Opens the microphone; false where there is none.
    private func open(_ request: SFSpeechAudioBufferRecognitionRequest) throws -> Bool {
        let session = AVAudioSession.sharedInstance()
        try session.setCategory(.record, mode: .measurement, options: [])
        try session.setActive(true, options: [])
        guard engine.inputNode.outputFormat(forBus: 0).sampleRate > 0 else { return false }
        Self.feed(request, from: engine.inputNode)
        try engine.start()
        return true
    }

    /// Ends the listening where nothing more is said for a while.
    private func end(_ request: SFSpeechAudioBufferRecognitionRequest, after silence: Duration) -> Task<Void, Never> {
        Task {
            try? await Task.sleep(for: silence)
            if !Task.isCancelled { request.endAudio() }
        }
    }

    /// Gives the microphone back to the phone, and the loudspeaker to its voice.
    private func close() {
        engine.stop()
        engine.inputNode.removeTap(onBus: 0)
        let session = AVAudioSession.sharedInstance()
        try? session.setActive(false, options: .notifyOthersOnDeactivation)
        try? session.setCategory(.soloAmbient, mode: .default, options: [])
    }
}

// Made off the main actor: the phone calls these closures on threads of its own.
extension PhoneListening {
    private nonisolated static func feed(
        _ request: SFSpeechAudioBufferRecognitionRequest,
        from microphone: AVAudioInputNode
    ) {
        let format = microphone.outputFormat(forBus: 0)
        microphone.installTap(onBus: 0, bufferSize: 1024, format: format) { sound, _ in request.append(sound) }
    }

    /// What was heard so far, again and again until it is final.
    private nonisolated static func words(
        _ ear: SFSpeechRecognizer,
        _ request: SFSpeechAudioBufferRecognitionRequest
    ) -> AsyncStream<String> {
        AsyncStream { words in
            _ = ear.recognitionTask(with: request) { result, error in
                if let result { words.yield(result.bestTranscription.formattedString) }
                if error != nil || result?.isFinal == true { words.finish() }
            }
        }
    }
}

/// The microphone and the recognition of speech: each is asked for once.
private enum Permission {
    /// Whether both are given; asks first for what was never asked for.
    static func given() async -> Bool {
        if SFSpeechRecognizer.authorizationStatus() == .notDetermined { await askForSpeech() }
        if AVAudioApplication.shared.recordPermission == .undetermined {
            _ = await AVAudioApplication.requestRecordPermission()
        }
        return SFSpeechRecognizer.authorizationStatus() == .authorized
            && AVAudioApplication.shared.recordPermission == .granted
    }

    private static func askForSpeech() async {
        await withCheckedContinuation { asked in
            SFSpeechRecognizer.requestAuthorization { _ in asked.resume() }
        }
    }
}
