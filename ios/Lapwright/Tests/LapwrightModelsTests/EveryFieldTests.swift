import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels
@testable import Typist

/// Killed at any field of any screen, the next process is on that screen, asks that field and has its keys.
@MainActor struct EveryFieldTests {
    @Test func whatWasTypedInAnyFieldIsThereAfterTheProcessWasKilled() async throws {
        let phone = try await Phone.withBoards()
        let fields = try Field.all(in: phone.book, phone.app.context())
        #expect(fields.count > 40)
        func book(_ name: String) -> String { phone.folder.appendingPathComponent(name).path }
        try phone.book.copy(path: book("copy.lapwright"), nowMs: phone.device.nowMs)
        for at in fields.indices {
            try FileManager.default.copyItem(atPath: book("copy.lapwright"), toPath: book("\(at).lapwright"))
        }
        try killedOnceItTyped(fields.count, phone.folder)
        var lost: [String] = []
        for (at, field) in fields.enumerated() {
            let bookActor = BookActor(try Book.open(path: book("\(at).lapwright"), copies: nil))
            let app = try await AppModel.open(bookActor, phone.device.services)
            let asked = app.entry.question
            if app.place != field.place {
                lost.append("\(field): it is on \(app.place)")
            } else if asked.map(QuestionKey.init) != QuestionKey(field.question) {
                lost.append("\(field): it asks \(asked?.field ?? "nothing")")
            } else if app.entry.text != field.keys {
                lost.append("\(field): it has \(app.entry.text)")
            }
        }
        #expect(lost.isEmpty, "\(lost.count) of \(fields.count) fields:\n\(lost.prefix(20).joined(separator: "\n"))")
    }

    /// Runs the typist on the books of a folder until it has typed, and kills it there.
    private func killedOnceItTyped(_ fields: Int, _ folder: URL) throws {
        let typist = Process()
        typist.executableURL = URL(fileURLWithPath: CommandLine.arguments[0])
            .deletingLastPathComponent().appendingPathComponent("Typist")
        typist.arguments = [folder.path]
        let said = Pipe()
        typist.standardOutput = said
        try typist.run()
        let typed = String(decoding: said.fileHandleForReading.availableData, as: UTF8.self)
        #expect(typed == "typed \(fields)\n")
        kill(typist.processIdentifier, SIGKILL)
        typist.waitUntilExit()
        #expect(typist.terminationReason == .uncaughtSignal && typist.terminationStatus == SIGKILL)
    }
}
