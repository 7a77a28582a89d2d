import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels

/// A call of the book costs a crossing: one for a tap, and none for what a screen does by itself.
@MainActor struct CallsTests {
    /// What work calls of the book until nothing is on its way.
    private func calls(_ phone: Phone, _ work: () async throws -> Void) async throws -> [String] {
        await phone.app.settled()
        phone.book.reset()
        try await work()
        await phone.app.settled()
        return phone.book.calls
    }

    @Test func aStartAsksWhoItIsForTheWordsAndForOneView() async throws {
        let phone = try await Phone.withNotchedBoard()
        try await phone.restart()
        #expect(phone.book.calls == ["remembered", "frame", "view"])
        _ = try phone.board()
    }

    @Test func aBoardIsReachedMeasuredAndTakenBackWithOneCallATap() async throws {
        let phone = try await Phone.withNotchedBoard()
        let place = phone.app.place
        await phone.app.back().value
        #expect(try await calls(phone) { phone.app.go(place) } == ["go"])
        let field = try #require(phone.app.entry.question?.field)
        #expect(try await calls(phone) { phone.app.entry.press("3") } == ["act"])
        #expect(try await calls(phone) { phone.app.entry.rubOut() } == ["act"])
        phone.app.entry.type(try #require(phone.app.entry.question?.reading).text)
        #expect(try await calls(phone) { phone.app.entry.accept() } == ["act"])
        #expect(phone.app.entry.question?.field != field)
        let list = Place.doneList(job: nil)
        #expect(try await calls(phone) { phone.app.go(list) } == ["go"])
        let line = try #require(try phone.doneList().view.lines.first)
        #expect(try await calls(phone) { try phone.doneList().look(at: line) } == ["act"])
        #expect(try await calls(phone) { try phone.doneList().undo(line) } == ["act"])
        #expect(try await calls(phone) { phone.app.back() } == ["go"])
        #expect(phone.app.entry.question?.field == field, "the answer was taken back")
    }

    @Test func whatAScreenDoesByItselfCallsNothing() async throws {
        let phone = try await Phone.withNotchedBoard()
        let board = try phone.board()
        let question = try #require(phone.app.entry.question)
        let made = try await calls(phone) {
            phone.app.putQuestionAway()
            phone.app.ask(question)
            phone.app.putQuestionAway()
            board.turn()
            board.sayMarks()
            phone.app.lock(true)
            board.tick(try #require(board.currentStep))
            phone.app.back()
            phone.app.lock(false)
            phone.app.understood()
        }
        #expect(made.isEmpty)
    }

    @Test func keysAfterAnAnswerAreNotKeptForTheQuestionThatWasAnswered() async throws {
        let phone = try await Phone.withNotchedBoard()
        let made = try await calls(phone) {
            phone.app.entry.type(try #require(phone.app.entry.question?.reading).text)
            phone.app.entry.accept()
            phone.app.entry.press("9")
            phone.app.entry.accept()
        }
        #expect(made == ["act", "act"], "the keys, then the answer once")
        #expect(phone.app.entry.text.isEmpty && phone.app.trouble == nil)
    }

    @Test func onlyASettingThatChangesAllWordsAsksForThem() async throws {
        let phone = try await Phone.withDemo()
        #expect(try await calls(phone) { phone.app.go(.settings) } == ["go"])
        let saw = Action.settingsKind(action: .answer(field: "saw", text: "table saw"))
        #expect(try await calls(phone) { phone.app.act(saw) } == ["act", "remembered"])
        let language = Action.settingsKind(action: .answer(field: "language", text: "es"))
        #expect(try await calls(phone) { phone.app.act(language) } == ["act", "remembered", "frame", "view"])
    }
}
