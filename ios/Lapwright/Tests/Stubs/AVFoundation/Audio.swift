// The names of AVFoundation that the app's ear uses, with the shapes that Apple documents; see Stubs/SwiftUI.

public final class AVAudioFormat {
    public var sampleRate: Double { 0 }
}

public final class AVAudioPCMBuffer {}

public final class AVAudioTime {}

public final class AVAudioInputNode {
    public func outputFormat(forBus bus: Int) -> AVAudioFormat { AVAudioFormat() }
    public func installTap(
        onBus bus: Int,
        bufferSize: UInt32,
        format: AVAudioFormat?,
        block: @escaping (AVAudioPCMBuffer, AVAudioTime) -> Void
    ) {}
    public func removeTap(onBus bus: Int) {}
}

public final class AVAudioEngine {
    public init() {}
    public var inputNode: AVAudioInputNode { AVAudioInputNode() }
    public func start() throws {}
    public func stop() {}
}

public final class AVAudioSession {
    public enum Category: Sendable { case record, soloAmbient, playback }
    public enum Mode: Sendable { case `default`, measurement, spokenAudio }

    public struct CategoryOptions: OptionSet, Sendable {
        public let rawValue: UInt
        public init(rawValue: UInt) { self.rawValue = rawValue }
        public static let duckOthers = CategoryOptions(rawValue: 2)
    }

    public struct SetActiveOptions: OptionSet, Sendable {
        public let rawValue: UInt
        public init(rawValue: UInt) { self.rawValue = rawValue }
        public static let notifyOthersOnDeactivation = SetActiveOptions(rawValue: 1)
    }

    public class func sharedInstance() -> AVAudioSession { AVAudioSession() }
    public func setCategory(_ category: Category, mode: Mode, options: CategoryOptions) throws {}
    public func setActive(_ active: Bool, options: SetActiveOptions) throws {}
}

public final class AVAudioApplication {
    public enum RecordPermission: Sendable { case undetermined, denied, granted }

    public class var shared: AVAudioApplication { AVAudioApplication() }
    public var recordPermission: RecordPermission { .undetermined }
    public class func requestRecordPermission() async -> Bool { false }
}
