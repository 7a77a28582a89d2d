// Types a key into every field of every screen, each in a copy of the book of its own, says so, and waits to be killed.
import Foundation
import LapwrightCore

@testable import LapwrightModels

let folder = URL(fileURLWithPath: CommandLine.arguments[1])

func book(_ name: String) throws -> Book {
    try Book.open(path: folder.appendingPathComponent(name).path, copies: nil)
}

func app(_ book: Book) async throws -> AppModel {
    try await AppModel.open(BookActor(book), Still().services)
}

let whole = try book("book.lapwright")
let fields = try Field.all(in: whole, try await app(whole).context())
for (at, field) in fields.enumerated() {
    let app = try await app(try book("\(at).lapwright"))
    await app.go(field.place).value
    app.ask(field.question)
    app.entry.type(field.keys)
    await app.settled()
}
FileHandle.standardOutput.write(Data("typed \(fields.count)\n".utf8))
try await Task.sleep(for: .seconds(600))

/// A phone that does nothing.
@MainActor final class Still: Speech, Haptics, Share, Camera, KeepAwake, Listening, FilePicker {
    var services: Services {
        Services(
            speech: self,
            haptics: self,
            share: self,
            camera: self,
            keepAwake: self,
            listening: self,
            files: self,
            clock: SystemClock(),
            entropy: SystemEntropy()
        )
    }

    func say(_ text: String, language: String) {}
    func hush() {}
    func taken() {}
    func refused() {}
    func place(_ name: String) -> String { folder.appendingPathComponent(name).path }
    func file(_ path: String, title: String) {}
    func text(_ text: String, title: String) {}
    func fill(_ path: String) async -> Bool { false }
    func keep() {}
    func release() {}
    func hears(_ language: String) -> Bool { false }
    func listen(_ language: String) async -> Heard { .nothing }
    func pick() async -> Picked { .nothing }
}
