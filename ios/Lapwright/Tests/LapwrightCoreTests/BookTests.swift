import Foundation
import LapwrightCore
import Testing

/// A book is opened, answered and read from the other side of the boundary, on a real file.
struct BookTests {
    private let folder = FileManager.default.temporaryDirectory.appendingPathComponent(UUID().uuidString)

    init() throws {
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
    }

    private func context() -> Context {
        Context(
            nowMs: 1_700_000_000_000,
            utcOffsetMinutes: -360,
            signer: "Rosa",
            language: "en",
            show: "in/16",
            division: "1/16\"",
            entropy: Data((0..<16).map { UInt8($0) })
        )
    }

    private func names(_ view: View) -> [String]? {
        guard case .jobsKind(let jobs) = view else { return nil }
        return jobs.jobs.map(\.name)
    }

    @Test func anAnswerIsThereAfterTheBookIsOpenedAgain() throws {
        let path = folder.appendingPathComponent("a.lapwright").path
        let first = try Book.open(path: path, copies: nil)
        #expect(names(try first.view(context: context(), place: .jobs)) == [])
        _ = try first.act(context: context(), action: .jobsKind(action: .create(name: "Lot 7", like: nil)))
        let second = try Book.open(path: path, copies: nil)
        #expect(names(try second.view(context: context(), place: .jobs)) == ["Lot 7"])
    }

    @Test func whatIsNotABookIsLeftAsItIs() throws {
        let file = folder.appendingPathComponent("notes.txt")
        try "not a book".write(to: file, atomically: true, encoding: .utf8)
        #expect(throws: Refusal.self) { try Book.open(path: file.path, copies: nil) }
        #expect(try String(contentsOf: file, encoding: .utf8) == "not a book")
    }
}
