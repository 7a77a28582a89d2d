// The names of AVFoundation that the app's voice uses, with the shapes that Apple documents; see Stubs/SwiftUI.

public final class AVSpeechSynthesisVoice {
    public init?(language: String?) {}
}

public final class AVSpeechUtterance {
    public init(string: String) {}
    public var voice: AVSpeechSynthesisVoice?
}

public enum AVSpeechBoundary { case immediate, word }

public final class AVSpeechSynthesizer {
    public init() {}
    public func speak(_ utterance: AVSpeechUtterance) {}
    @discardableResult public func stopSpeaking(at boundary: AVSpeechBoundary) -> Bool { false }
}
