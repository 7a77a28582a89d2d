import Foundation
import LapwrightCore

/// Holds the book: every call goes through here, one after the other, never on the thread that draws.
public actor BookActor {
    private let book: any BookProtocol
    private let copies: String?

    public init(_ book: any BookProtocol, copies: String? = nil) {
        (self.book, self.copies) = (book, copies)
    }

    /// Opens the book of a folder, with its own copies beside it; it speaks `language`, the phone's, until another is chosen.
    public init(folder: URL, language: String = "") throws {
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        let copies = folder.appendingPathComponent("copies").path
        self.copies = copies
        let file = folder.appendingPathComponent("book.lapwright").path
        book = try Book.open(path: file, copies: copies, language: language)
        try book.speakFirst(language: language)
    }

    func remembered() -> Remembered {
        book.remembered()
    }

    func go(_ context: Context, _ place: Place) throws -> View {
        try book.go(context: context, place: place)
    }

    func frame(_ context: Context) throws -> FrameView {
        try book.frame(context: context)
    }

    func view(_ context: Context, _ place: Place) throws -> View {
        try book.view(context: context, place: place)
    }

    func act(_ context: Context, _ action: Action) throws -> Outcome {
        try book.act(context: context, action: action)
    }

    func drawing(_ context: Context, _ subject: Subject, _ frame: Frame) throws -> Drawing {
        try book.drawing(context: context, subject: subject, frame: frame)
    }

    func heard(_ context: Context, _ text: String) throws -> String {
        try book.heard(context: context, text: text)
    }

    /// Keeps a copy of the book beside it, if something was answered since the last one.
    func keepCopy(nowMs: Int64) throws {
        if let copies { _ = try book.keepCopy(folder: copies, nowMs: nowMs) }
    }

    func exportPhoto(_ photo: String, _ path: String) throws {
        try book.exportPhoto(photo: photo, path: path)
    }
}
