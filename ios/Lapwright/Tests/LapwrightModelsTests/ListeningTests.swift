import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels

/// Lengths that are said instead of typed, with the ear played by the test.
@MainActor struct ListeningTests {
    @Test func whatWasHeardIsTypedAndWaitsToBeAccepted() async throws {
        let phone = try await Phone.withNotchedBoard()
        let (field, answer) = (phone.app.entry.question?.field, phone.app.entry.question?.answer)
        phone.device.heard = "fifty two and three eighths"
        #expect(phone.app.listens)
        await phone.app.listen().value
        await phone.app.settled()
        #expect(phone.app.entry.text.hasPrefix("52 3/8") && phone.app.trouble == nil)
        #expect(phone.app.entry.question?.field == field && phone.app.entry.question?.answer == answer)
        #expect(try phone.board().asked?.answer == answer, "nothing was accepted")
        let text = phone.app.entry.text
        try await phone.restart()
        #expect(phone.app.entry.question?.field == field && phone.app.entry.text == text, "it was kept as keys are")
    }

    @Test func whatIsNoLengthIsSaidAndLeavesTheKeysAlone() async throws {
        let phone = try await Phone.withNotchedBoard()
        phone.app.entry.press("5")
        phone.device.heard = "a cup of coffee"
        await phone.app.listen().value
        #expect(phone.app.trouble?.text.isEmpty == false && phone.app.entry.text == "5")
        #expect(phone.device.refusals == 1)
        phone.device.heard = "six inches"
        await phone.app.listen().value
        #expect(phone.app.trouble == nil && phone.app.entry.text.hasPrefix("6"))
    }

    @Test func whyNothingIsHeardIsSaid() async throws {
        let phone = try await Phone.withNotchedBoard()
        let words = phone.app.words
        phone.device.heard = ""
        let reasons: [(Heard, String)] = [
            (.nothing, words.heardNothing), (.refused, words.microphoneRefused),
            (.languageNotHere, words.languageNotHere),
        ]
        for (reason, text) in reasons {
            phone.device.deaf = reason
            await phone.app.listen().value
            #expect(phone.app.trouble?.text == text && !phone.app.listening)
        }
    }

    @Test func spanishIsHeardWhereTheScreensAreSpanish() async throws {
        let phone = try await Phone.withNotchedBoard()
        let place = phone.app.place
        await phone.app.act(.settingsKind(action: .answer(field: "language", text: "es"))).value
        await phone.app.go(place).value
        phone.device.heard = "siete pies tres pulgadas y media"
        await phone.app.listen().value
        #expect(phone.app.entry.text == "7' 3 1/2\"" && phone.device.listenedIn == ["es"])
    }

    @Test func aPhoneWithoutAnEarHasNoKeyForItAndHearsNothing() async throws {
        let phone = try await Phone.withNotchedBoard()
        #expect(!phone.app.listens)
        phone.book.reset()
        await phone.app.listen().value
        #expect(phone.app.entry.text.isEmpty && phone.book.calls.isEmpty)
    }

    @Test func whatIsHeardTooLateGoesToNoOtherQuestion() async throws {
        let phone = try await Phone.withNotchedBoard()
        let other = try #require(try phone.board().questions.first { $0.field != phone.app.entry.question?.field })
        phone.device.heard = "six inches"
        let listening = phone.app.listen()
        phone.app.ask(other)
        await listening.value
        #expect(phone.app.entry.text == other.draft)
    }
}
