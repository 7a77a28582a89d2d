import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels

/// A book that is not found as it was left: what the houses say of it, until somebody has read it.
@MainActor struct AccountTests {
    /// A name that no other text of a book has in it.
    private static let name = "Quokka Cottage"

    /// What the houses say when the app is opened. It stands there until it is acknowledged, and never again.
    private func account(of kept: Kept) async throws -> [String] {
        let phone = try await Phone(folder: kept.folder)
        #expect(phone.app.place == .jobs, "read before the work goes on")
        let told = try phone.jobs().view.account
        #expect(!told.isEmpty)
        #expect(!told.contains { $0.contains(kept.folder.path) }, "the folders of a phone tell nobody anything")
        try await phone.restart()
        #expect(try phone.jobs().view.account == told, "told until somebody has read it")
        await (try phone.jobs()).acknowledge().value
        #expect(try phone.jobs().view.account.isEmpty && phone.app.trouble == nil)
        try await phone.restart()
        await phone.app.go(.jobs).value
        #expect(try phone.jobs().view.account.isEmpty, "not told any more")
        let job = try #require(try phone.jobs().view.jobs.first).job
        await phone.app.go(.house(job: job)).value
        return told + ["lap: \(try phone.house().view.questions.first { $0.field == "lap" }?.answer ?? "")"]
    }

    @Test func aBookThatIsGoneComesFromItsCopies() async throws {
        let kept = try Kept()
        let job = try kept.house("Lot 12")
        try kept.answerLap(job, "1 3/8")
        try kept.answerLap(job, "1 1/2")
        let copy = try kept.keepCopy()
        try FileManager.default.removeItem(at: kept.file)
        let told = try await account(of: kept).joined(separator: "\n")
        #expect(told.contains("The book was not in its place."))
        #expect(told.contains("3 answers were taken from the copy “\(copy.said)”."))
        #expect(told.contains("3 answers were in the book then") && told.contains("by Ines"))
        #expect(told.contains("lap: 1 1/2\""))
    }

    @Test func anOlderBookInThePlaceOfTheNewestIsToldOfWithWhatIsLost() async throws {
        let kept = try Kept()
        let job = try kept.house("Lot 12")
        try kept.answerLap(job, "1 3/4")
        let (older, newest) = (try Data(contentsOf: kept.file), kept.told)
        kept.signer = "Teo"
        try kept.answerLap(job, "1 3/8")
        try kept.answerLap(job, "1 1/2")
        try older.write(to: kept.file)
        let told = try await account(of: kept).joined(separator: "\n")
        #expect(told.contains("an older one") && told.contains("2 answers were in the book then"))
        #expect(told.contains("2 accepted answers are lost, made after \(newest) by Ines."))
        #expect(!told.contains("taken from"))
        #expect(told.contains("lap: 1 3/4\""))
    }

    @Test func whatAnOlderBookLacksComesFromTheCopies() async throws {
        let kept = try Kept()
        let job = try kept.house("Lot 12")
        try kept.answerLap(job, "1 3/4")
        let older = try Data(contentsOf: kept.file)
        try kept.answerLap(job, "1 3/8")
        try kept.answerLap(job, "1 1/2")
        let copy = try kept.keepCopy()
        try older.write(to: kept.file)
        let told = try await account(of: kept).joined(separator: "\n")
        #expect(told.contains("an older one") && told.contains("4 answers were in the book then"))
        #expect(told.contains("2 answers were taken from the copy “\(copy.said)”."))
        #expect(told.contains("No accepted answer is known to be lost."))
        #expect(told.contains("lap: 1 1/2\""))
    }

    /// Of the one that was hurt its time and its signer can still be read.
    @Test func anAnswerThatIsLostIsToldOfByWhenAndByWhom() async throws {
        let kept = try Kept()
        let job = try kept.house("Lot 12")
        try kept.answerLap(job, "1 3/8")
        let before = kept.told
        kept.signer = "Teo"
        try kept.act(.jobsKind(action: .rename(job: job, name: Self.name)))
        let lost = kept.told
        let bytes = try Data(contentsOf: kept.file)
        let places = self.places(in: bytes)
        #expect(places.count > 1, "in the log and in the tables")
        try places.reduce(into: bytes) { bytes, at in bytes[at] = UInt8(ascii: "P") }.write(to: kept.file)
        let told = try await account(of: kept)
        #expect(told.contains { $0.hasPrefix("One accepted answer is lost, made after \(before) by Ines.") })
        #expect(told.contains("It was of \(lost) by Teo."))
        #expect(told.contains("The file that was found was kept: book.lapwright.damaged-1"))
        #expect(told.last == "lap: 1 3/8\"")
    }

    /// One letter of a name that was typed, in the log or in a table: nothing else of the copy is hurt.
    @Test func anAlteredCopyIsRefusedByItsNameAndTheBookIsAsItWas() async throws {
        let phone = try await Phone()
        await phone.app.act(.jobsKind(action: .create(name: Self.name, like: nil))).value
        let job = try phone.house().view.job
        await phone.app.go(.backups).value
        await (try phone.backups()).keep().value
        let copy = try #require(try phone.backups().view.copies.first)
        let file = URL(fileURLWithPath: copy.copy)
        let bytes = try Data(contentsOf: file)
        await (try phone.backups()).look(at: copy).value
        let whole = try phone.restoring().view
        let text = "The copy “\(copy.said)” is damaged or was changed"
        var refused = 0
        for at in places(in: bytes) {
            var altered = bytes
            altered[at] = UInt8(ascii: "P")
            try altered.write(to: file)
            await phone.app.go(.backups).value
            await (try phone.backups()).look(at: copy).value
            if phone.app.place != .backups {
                #expect(try phone.restoring().view == whole, "what a page has left over is no value")
                continue
            }
            #expect(phone.app.trouble?.text.hasPrefix(text) == true, "byte \(at): \(phone.app.trouble?.text ?? "")")
            // It may have been looked at while it was whole.
            await phone.app.act(.restoreKind(action: .restore(copy: copy.copy))).value
            #expect(phone.app.trouble?.text.hasPrefix(text) == true, "byte \(at) at once")
            await phone.app.go(.house(job: job)).value
            #expect(try phone.house().view.name == Self.name, "byte \(at)")
            refused += 1
        }
        #expect(refused > 1, "in the log and in the tables")
        try bytes.write(to: file)
        await phone.app.go(.backups).value
        await (try phone.backups()).look(at: copy).value
        #expect(phone.app.place == .restore(copy: copy.copy) && phone.app.trouble == nil)
    }

    private func places(in bytes: Data) -> [Data.Index] {
        var (places, from) = ([Data.Index](), bytes.startIndex)
        while let found = bytes.range(of: Data(Self.name.utf8), in: from..<bytes.endIndex) {
            places.append(found.lowerBound)
            from = found.upperBound
        }
        return places
    }
}

/// The files of a book that is open only as long as something is done with it.
@MainActor private final class Kept {
    let folder = FileManager.default.temporaryDirectory.appendingPathComponent(UUID().uuidString)
    var signer = "Ines"
    private var minutes: Int64 = 0

    init() throws {
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
    }

    var file: URL { folder.appendingPathComponent("book.lapwright") }

    private var copies: String { folder.appendingPathComponent("copies").path }

    private var nowMs: Int64 { 1_777_890_000_000 + minutes * 60_000 }

    /// When the last answer was given, as it is told where that was.
    var told: String {
        let format = DateFormatter()
        format.locale = Locale(identifier: "en_US_POSIX")
        format.timeZone = TimeZone(secondsFromGMT: -7 * 60 * 60)
        format.dateFormat = "yyyy-MM-dd HH:mm"
        return format.string(from: Date(timeIntervalSince1970: Double(nowMs) / 1000))
    }

    /// A minute goes by with each answer.
    @discardableResult func act(_ action: Action) throws -> Outcome {
        minutes += 1
        let context = Context(
            nowMs: nowMs,
            utcOffsetMinutes: -420,
            signer: signer,
            language: "en",
            show: "in/16",
            division: "1/16\"",
            entropy: Data(repeating: UInt8(minutes), count: 16)
        )
        return try Book.open(path: file.path, copies: copies).act(context: context, action: action)
    }

    /// A house that one answer makes.
    func house(_ name: String) throws -> String {
        let made = try act(.jobsKind(action: .create(name: name, like: nil)))
        guard case .house(let job) = made.place else { throw CancellationError() }
        return job
    }

    func answerLap(_ job: String, _ text: String) throws {
        try act(.houseKind(action: .answer(job: job, field: "lap", text: text)))
    }

    /// One more copy that the book keeps of itself, as the screen of the copies lists it.
    func keepCopy() throws -> CopyLine {
        guard case .backupsKind(let view) = try act(.backupsKind(action: .keep)).view else { throw CancellationError() }
        return try #require(view.copies.first)
    }
}
