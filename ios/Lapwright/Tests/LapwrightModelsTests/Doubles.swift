import Foundation
import LapwrightCore

@testable import LapwrightModels

/// The device of a test: what it was told is written down, and its clock and entropy are the same every time.
@MainActor final class Device: Speech, Haptics, Share, Camera, KeepAwake, Listening, FilePicker, Clock, Entropy {
    private(set) var said: [String] = []
    private(set) var languages: [String] = []
    private(set) var answers = 0
    private(set) var refusals = 0
    /// What was handed on: its title, and the text or the path.
    private(set) var shared: [(title: String, what: String)] = []
    private(set) var awake = false
    private(set) var filled: [String] = []
    /// What the camera leaves; nil where it takes nothing.
    var photo: Data?
    /// What the ear hears; nil where there is none.
    var heard: String?
    /// Why the ear hears nothing, where it has a reason.
    var deaf: Heard?
    var hasCamera = true
    /// The file that is picked.
    var picks = Picked.nothing
    private(set) var listenedIn: [String] = []
    private let out = FileManager.default.temporaryDirectory.appendingPathComponent(UUID().uuidString)
    private var draws: UInt64
    private var seconds: Int64

    /// Two devices that write to one book roll differently. The clock is the phone's own: however many tests run beside this
    /// one, two phones of a test begin in the same second.
    init(seed: UInt64 = 1, seconds: Int64 = 0) {
        draws = seed << 32
        self.seconds = seconds
    }

    deinit {
        try? FileManager.default.removeItem(at: out)
    }

    func say(_ text: String, language: String) {
        said.append(text)
        languages.append(language)
    }

    func hush() {}

    func taken() { answers += 1 }

    func refused() { refusals += 1 }

    func place(_ name: String) -> String {
        try? FileManager.default.createDirectory(at: out, withIntermediateDirectories: true)
        return out.appendingPathComponent(name).path
    }

    func file(_ path: String, title: String) { shared.append((title, path)) }

    func text(_ text: String, title: String) { shared.append((title, text)) }

    func hears(_ language: String) -> Bool { heard != nil }

    func listen(_ language: String) async -> Heard {
        listenedIn.append(language)
        return deaf ?? heard.map(Heard.words) ?? .nothing
    }

    func pick() async -> Picked { picks }

    func fill(_ path: String) async -> Bool {
        guard hasCamera else { return false }
        filled.append(path)
        if let photo { try? photo.write(to: URL(fileURLWithPath: path)) }
        return true
    }

    func keep() { awake = true }

    func release() { awake = false }

    /// The time where it stands; else a second goes by with each look at the clock, so that no tap comes at once after another.
    var stands: Int64?

    var nowMs: Int64 {
        if let stands { return stands }
        seconds += 1
        return 1_777_896_000_000 + seconds * 1000
    }

    let utcOffsetMinutes: Int32 = -420

    /// It lies about, if nothing else is said until tomorrow.
    func sleep(hours: Int64 = 24) { seconds += hours * 60 * 60 }

    func draw() -> [UInt8] {
        draws += 1
        return (0..<16).map { UInt8(truncatingIfNeeded: draws >> (8 * ($0 % 8))) }
    }

    var services: Services {
        Services(
            speech: self,
            haptics: self,
            share: self,
            camera: self,
            keepAwake: self,
            listening: self,
            files: self,
            clock: self,
            entropy: self
        )
    }
}

/// The real book, with its calls written down.
final class CountedBook: BookProtocol, @unchecked Sendable {
    private let book: Book
    private let lock = NSLock()
    private var made: [String] = []

    init(_ book: Book) {
        self.book = book
    }

    subscript(call: String) -> Int {
        calls.count { $0 == call }
    }

    /// The calls since the last look, in their order.
    var calls: [String] { lock.withLock { made } }

    func reset() {
        lock.withLock { made = [] }
    }

    private func count(_ call: String) {
        lock.withLock { made.append(call) }
    }

    func accounts(context: Context) throws -> [BookAccount] {
        count("accounts")
        return try book.accounts(context: context)
    }

    func acknowledge() throws {
        count("acknowledge")
        try book.acknowledge()
    }

    func check() throws -> [String] {
        count("check")
        return try book.check()
    }

    func act(context: Context, action: Action) throws -> Outcome {
        count("act")
        return try book.act(context: context, action: action)
    }

    func drawing(context: Context, subject: Subject, frame: Frame) throws -> Drawing {
        count("drawing")
        return try book.drawing(context: context, subject: subject, frame: frame)
    }

    func frame(context: Context) throws -> FrameView {
        count("frame")
        return try book.frame(context: context)
    }

    func heard(context: Context, text: String) throws -> String {
        count("heard")
        return try book.heard(context: context, text: text)
    }

    func copy(path: String, nowMs: Int64) throws {
        count("copy")
        try book.copy(path: path, nowMs: nowMs)
    }

    func keepCopy(folder: String, nowMs: Int64) throws -> String {
        count("keepCopy")
        return try book.keepCopy(folder: folder, nowMs: nowMs)
    }

    func exportPhoto(photo: String, path: String) throws {
        count("exportPhoto")
        try book.exportPhoto(photo: photo, path: path)
    }

    func go(context: Context, place: Place) throws -> View {
        count("go")
        return try book.go(context: context, place: place)
    }

    func speakFirst(language: String) throws {
        count("speakFirst")
        try book.speakFirst(language: language)
    }

    func remembered() -> Remembered {
        count("remembered")
        return book.remembered()
    }

    func view(context: Context, place: Place) throws -> View {
        count("view")
        return try book.view(context: context, place: place)
    }
}
