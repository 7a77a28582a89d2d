import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels

/// Copies of the book, and what two colleagues hand over to each other, on real books.
@MainActor struct ExchangeTests {
    private func lap(_ phone: Phone, _ job: String) throws -> String? {
        let view = try phone.book.view(context: phone.app.context(), place: .house(job: job))
        guard case .houseKind(let house) = view else { return nil }
        return house.questions.first { $0.field == "lap" }?.answer
    }

    private func answerLap(_ phone: Phone, _ job: String, _ text: String) async {
        await phone.app.act(.houseKind(action: .answer(job: job, field: "lap", text: text))).value
        #expect(phone.app.trouble == nil)
    }

    /// Hands a house over, and gives the file.
    private func handOver(_ phone: Phone, _ job: String) async throws -> String {
        await phone.app.go(.handOver(job: job)).value
        await (try phone.handOver()).shareHouse(all: false).value
        #expect(phone.app.trouble == nil)
        return try #require(phone.device.shared.last).what
    }

    @Test func aCopyIsKeptByHandGoneBackToAndGoneBackOn() async throws {
        let phone = try await Phone.withDemo()
        let job = try phone.house().view.job
        await phone.app.go(.jobs).value
        await (try phone.jobs()).backups().value
        #expect(try phone.backups().view.copies.isEmpty)
        await (try phone.backups()).keep().value
        let copy = try #require(try phone.backups().view.copies.first)
        let before = try lap(phone, job)
        await answerLap(phone, job, "1 1/2")
        await phone.app.go(.backups).value
        await (try phone.backups()).look(at: copy).value
        #expect(try phone.restoring().view.lines.count > 2 && lap(phone, job) != before)
        await (try phone.restoring()).restore().value
        #expect(phone.app.trouble == nil && phone.app.place == .backups)
        #expect(try lap(phone, job) == before)
        let done = try #require(try phone.backups().view.done.first)
        let was = try #require(try phone.backups().view.copies.first { done.contains($0.said) })
        await (try phone.backups()).look(at: was).value
        await (try phone.restoring()).restore().value
        #expect(try lap(phone, job) == "1 1/2\"")
        await phone.app.back().value
        #expect(phone.app.place == .jobs, "nowhere that may be gone")
    }

    @Test func everythingGoesIntoOneFileThatANewPhoneGoesBackTo() async throws {
        let phone = try await Phone.withDemo()
        await phone.app.go(.backups).value
        phone.book.reset()
        await (try phone.backups()).share().value
        #expect(phone.book.calls == ["act"] && phone.app.trouble == nil)
        let path = try #require(phone.device.shared.last).what
        let other = try await Phone()
        other.device.picks = .file(path)
        await (try other.jobs()).backups().value
        await other.app.pickFile().value
        #expect(other.app.place == .restore(copy: path))
        await (try other.restoring()).restore().value
        await other.app.go(.jobs).value
        #expect(try other.jobs().view.jobs.count == 1 && other.app.trouble == nil)
    }

    @Test func aHouseGoesToAColleagueAndDifferencesAreShownUntilLookedAt() async throws {
        let (one, two) = (try await Phone.withDemo(), try await Phone())
        let job = try one.house().view.job
        two.device.picks = .file(try await handOver(one, job))
        let words = try one.handOver().view.said
        await two.app.pickFile().value
        let sender = try #require(try two.takeIn().view.senders.first)
        #expect(try !two.takeIn().view.ready && !sender.trusted && words.contains(sender.words))
        await (try two.takeIn()).takeIn().value
        #expect(two.app.trouble?.code == "book", "nothing comes in before the words were compared")
        await (try two.takeIn()).trust(sender).value
        #expect(try two.takeIn().view.ready)
        await (try two.takeIn()).takeIn().value
        #expect(try two.differences().view.differences.isEmpty && two.app.trouble == nil)
        await two.app.back().value
        #expect(two.app.place == .jobs, "not to the file that is taken in")
        await answerLap(two, job, "1 1/2")
        // The later answer stands.
        one.device.sleep(hours: 1)
        await answerLap(one, job, "1 3/8")
        two.device.picks = .file(try await handOver(one, job))
        await two.app.pickFile().value
        await (try two.takeIn()).takeIn().value
        #expect(try two.differences().view.differences.count == 1)
        await two.app.go(.jobs).value
        #expect(try !two.jobs().view.differences.isEmpty)
        await (try two.jobs()).differences().value
        await (try two.differences()).lookedAt().value
        #expect(try two.jobs().view.differences.isEmpty && lap(one, job) == lap(two, job))
    }

    @Test func aFileThatIsNoneOfOursSaysSoAndChangesNothing() async throws {
        let phone = try await Phone.withDemo()
        await phone.app.go(.jobs).value
        let path = phone.folder.appendingPathComponent("holiday.txt")
        try Data("not ours".utf8).write(to: path)
        phone.device.picks = .file(path.path)
        await phone.app.pickFile().value
        #expect(phone.app.place == .jobs && phone.app.trouble?.code == "book")
        phone.device.picks = .unreadable
        await phone.app.pickFile().value
        #expect(phone.app.trouble?.text == phone.app.words.fileUnreadable)
    }

    @Test func aCopyIsKeptWhenTheAppGoesOutOfSightAndAFailureIsTold() async throws {
        let phone = try await Phone.withDemo()
        await phone.app.hidden().value
        #expect(phone.book["keepCopy"] == 1 && phone.app.trouble == nil)
        await phone.app.go(.backups).value
        #expect(try phone.backups().view.copies.count == 1)
        let copies = phone.folder.appendingPathComponent("copies")
        try FileManager.default.removeItem(at: copies)
        try Data("no folder".utf8).write(to: copies)
        await phone.app.hidden().value
        #expect(phone.app.trouble?.code == "book")
        try FileManager.default.removeItem(at: copies)
        await phone.app.go(.jobs).value
        #expect(try !phone.jobs().view.copyFailed.isEmpty)
        await phone.app.hidden().value
        await phone.app.go(.jobs).value
        #expect(try phone.jobs().view.copyFailed.isEmpty)
    }
}
