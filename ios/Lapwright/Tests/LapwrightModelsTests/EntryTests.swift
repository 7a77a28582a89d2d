import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels

/// Keys, the drawn piece of tape, and the one question that is asked.
@MainActor struct EntryTests {
    private func measuring() async throws -> Phone {
        let phone = try await Phone.withDemo()
        await (try phone.house()).addWall().value
        await phone.type("North")
        return phone
    }

    private func width(_ phone: Phone) throws -> Question {
        try #require(try phone.measure().view.questions.first { $0.field == "width" })
    }

    @Test func aMarkStandsBehindTheWholeNumberInPlaceOfTheOneBefore() async throws {
        let phone = try await measuring()
        let marks = phone.app.frame.tape
        let (half, sixteenth) = (
            try #require(marks.first { $0.text == "1/2" }), try #require(marks.first { $0.text == "1/16" })
        )
        phone.app.entry.tap(half)
        #expect(phone.app.entry.text == "1/2")
        phone.app.entry.rubOut()
        phone.app.entry.press("6")
        phone.app.entry.tap(half)
        phone.app.entry.tap(sixteenth)
        #expect(phone.app.entry.text == "6 1/16")
    }

    @Test func theTapeOfMillimetresHasTenths() async throws {
        let phone = try await measuring()
        await phone.app.act(.settingsKind(action: .answer(field: "show", text: "mm"))).value
        await phone.app.back().value
        #expect(phone.app.frame.tape.map(\.text) == (1...9).map { ".\($0)" })
        #expect(Typing.with(mark: phone.app.frame.tape[4], in: "154.2") == "154.5")
        #expect(Typing.with(mark: phone.app.frame.tape[4], in: "") == ".5")
    }

    @Test(arguments: [
        ("6 1/16", "6"), ("12", "1"), ("1", ""), ("", ""), ("1/2", ""), ("9' 4", "9'"), ("9'", "9"),
    ]) func rubbingOutTakesAKeyOrAWholeFraction(_ text: String, _ left: String) {
        #expect(Typing.rubbedOut(text) == left)
    }

    @Test func aRefusedAnswerCanBeTypedOn() async throws {
        let phone = try await measuring()
        let field = try #require(phone.app.entry.question?.field)
        await phone.type("0")
        #expect(phone.app.trouble?.field == field)
        #expect(phone.app.entry.question?.field == field && phone.app.entry.text == "0")
        phone.app.entry.rubOut()
        await phone.type("18'")
        #expect(phone.app.trouble == nil)
        #expect(phone.app.entry.question?.field != field)
    }

    @Test func theNextQuestionStartsEmpty() async throws {
        let phone = try await measuring()
        await phone.type("18'")
        #expect(phone.app.entry.text == "")
        #expect(try width(phone).answer == "216\"")
    }

    @Test func aQuestionThatIsPutAwayStaysAwayUntilItIsOpenedAgain() async throws {
        let phone = try await measuring()
        let question = try #require(phone.app.entry.question)
        phone.app.entry.press("7")
        await phone.app.settled()
        phone.app.putQuestionAway()
        #expect(phone.app.entry.question == nil)
        phone.app.ask(question)
        #expect(phone.app.entry.question?.field == question.field)
        #expect(phone.app.entry.text == "7", "what was typed is still there")
    }

    @Test func anAnsweredQuestionIsOpenedByHandAndAnsweredAnew() async throws {
        let phone = try await measuring()
        await phone.type("18'")
        phone.app.ask(try width(phone))
        #expect(phone.app.entry.question?.field == "width")
        await phone.type("17'")
        #expect(try width(phone).answer == "204\"")
    }

    @Test func aChoiceIsOneTap() async throws {
        let phone = try await Phone.withDemo()
        let house = try phone.house()
        let rules = try #require(house.view.questions.first { $0.field == "rules" })
        phone.app.ask(rules)
        let canada = try #require(rules.choices.first { $0.code == "ca" })
        phone.book.reset()
        phone.app.entry.choose(canada)
        await phone.app.settled()
        #expect(phone.book["act"] == 1)
        #expect(house.view.questions.first { $0.field == "rules" }?.answer == canada.label)
    }

    @Test func aKeyIsOneCallAndLeavesTheDrawingAlone() async throws {
        let phone = try await measuring()
        phone.book.reset()
        phone.app.entry.press("1")
        await phone.app.settled()
        #expect(phone.book["act"] == 1 && phone.book["view"] == 0 && phone.book["drawing"] == 0)
    }

    @Test func nothingIsTypedWhereNothingIsAsked() async throws {
        let phone = try await Phone()
        phone.book.reset()
        phone.app.entry.press("1")
        phone.app.entry.accept()
        await phone.app.settled()
        #expect(phone.app.entry.text == "" && phone.book["act"] == 0)
    }
}
