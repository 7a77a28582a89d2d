// The names of Speech that the app's ear uses, with the shapes that Apple documents; see Stubs/SwiftUI.
import AVFoundation
@_exported import Foundation

public enum SFSpeechRecognizerAuthorizationStatus: Sendable { case notDetermined, denied, restricted, authorized }

public final class SFSpeechRecognizer {
    public init?(locale: Locale) {}
    public var supportsOnDeviceRecognition: Bool { false }
    public static func authorizationStatus() -> SFSpeechRecognizerAuthorizationStatus { .notDetermined }
    public static func requestAuthorization(_ handler: @escaping (SFSpeechRecognizerAuthorizationStatus) -> Void) {}
    public func recognitionTask(
        with request: SFSpeechRecognitionRequest,
        resultHandler: @escaping (SFSpeechRecognitionResult?, (any Error)?) -> Void
    ) -> SFSpeechRecognitionTask { SFSpeechRecognitionTask() }
}

open class SFSpeechRecognitionRequest {
    public init() {}
    public var requiresOnDeviceRecognition = false
}

public final class SFSpeechAudioBufferRecognitionRequest: SFSpeechRecognitionRequest {
    public func append(_ sound: AVAudioPCMBuffer) {}
    public func endAudio() {}
}

public final class SFSpeechRecognitionTask {}

public final class SFSpeechRecognitionResult {
    public var bestTranscription: SFTranscription { SFTranscription() }
    public var isFinal: Bool { false }
}

public final class SFTranscription {
    public var formattedString: String { "" }
}
