/// Says a text aloud.
@MainActor public protocol Speech: AnyObject {
    /// Says `text`, which is in `language` (`en` or `es`), and stops what was being said.
    func say(_ text: String, language: String)

    /// Stops what is being said.
    func hush()
}

/// Felt through a glove; never the only sign.
@MainActor public protocol Haptics: AnyObject {
    /// An answer was taken.
    func taken()

    /// An answer was refused.
    func refused()
}

/// Hands something to another program, which the person picks.
@MainActor public protocol Share: AnyObject {
    /// The absolute path at which a file called `name` is made before it is handed on; nothing is there yet.
    func place(_ name: String) -> String

    /// Hands on the file that was made at `path`, a path of `place`, under a title.
    func file(_ path: String, title: String)

    /// Hands on plain text under a title.
    func text(_ text: String, title: String)
}

/// What came of listening.
public enum Heard: Equatable, Sendable {
    /// These words.
    case words(String)
    /// No words: nothing was said, or the phone was disturbed.
    case nothing
    /// The microphone, or the recognition of speech, may not be used.
    case refused
    /// This phone does not hear the language by itself.
    case languageNotHere
}

/// Hears a few words.
@MainActor public protocol Listening: AnyObject {
    /// Whether this phone can in `language` (`en` or `es`); without it no key is shown for it.
    func hears(_ language: String) -> Bool

    /// Listens once for words in `language`.
    func listen(_ language: String) async -> Heard
}

/// Takes a photo.
@MainActor public protocol Camera: AnyObject {
    /// Fills the file at an absolute path with a photo, and ends when the camera is closed again, with or without one; false
    /// where no camera opens.
    func fill(_ path: String) async -> Bool
}

/// Keeps the display lit on the screens that are read with both hands full; it goes out by itself after a while.
@MainActor public protocol KeepAwake: AnyObject {
    /// Lit from now on, for a limited time: called again on every tap.
    func keep()

    /// Dark again as always.
    func release()
}

/// What came of picking a file.
public enum Picked: Equatable, Sendable {
    /// A file that can be read at this path, for as long as the screen is on it.
    case file(String)
    /// None.
    case nothing
    /// One that cannot be read.
    case unreadable
}

/// Lets the person pick a file that another program or device left.
@MainActor public protocol FilePicker: AnyObject {
    /// Opens the phone's own list of files.
    func pick() async -> Picked
}

/// What time it is.
@MainActor public protocol Clock: AnyObject {
    /// Milliseconds since 1970-01-01 UTC.
    var nowMs: Int64 { get }

    /// Minutes that the local time is ahead of UTC.
    var utcOffsetMinutes: Int32 { get }
}

/// Chance, from which the book makes its ids.
@MainActor public protocol Entropy: AnyObject {
    /// Sixteen random bytes, new every time.
    func draw() -> [UInt8]
}

/// What a device does for the models.
@MainActor public struct Services {
    public let speech: any Speech
    public let haptics: any Haptics
    public let share: any Share
    public let camera: any Camera
    public let keepAwake: any KeepAwake
    public let listening: any Listening
    public let files: any FilePicker
    public let clock: any Clock
    public let entropy: any Entropy

    public init(
        speech: any Speech,
        haptics: any Haptics,
        share: any Share,
        camera: any Camera,
        keepAwake: any KeepAwake,
        listening: any Listening,
        files: any FilePicker,
        clock: any Clock,
        entropy: any Entropy
    ) {
        self.speech = speech
        self.haptics = haptics
        self.share = share
        self.camera = camera
        self.keepAwake = keepAwake
        self.listening = listening
        self.files = files
        self.clock = clock
        self.entropy = entropy
    }
}
