import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels

/// The way of a tap, on a real book.
@MainActor struct AppTests {
    @Test func aNewBookOpensOnTheHousesAndSaysNothingOfComingBack() async throws {
        let phone = try await Phone()
        #expect(phone.app.place == .jobs)
        #expect(try phone.jobs().view.jobs.isEmpty)
        #expect(!phone.app.restored && !phone.app.canGoBack)
    }

    @Test func oneTapIsOneCallOfTheBookAndGivesTheWholeView() async throws {
        let phone = try await Phone()
        phone.book.reset()
        await (try phone.jobs()).openDemo().value
        #expect(phone.book["act"] == 1 && phone.book["view"] == 0)
        #expect(try phone.house().view.walls.count == 2)
        phone.book.reset()
        await (try phone.house()).pole().value
        #expect(phone.book["act"] == 0 && phone.book["view"] == 0 && phone.book["go"] == 1)
        #expect(try phone.pole().view.marks.count > 0)
    }

    @Test func backGoesThroughThePlacesAndUpToTheHouses() async throws {
        let phone = try await Phone.withDemo()
        let house = phone.app.place
        await (try phone.house()).rules().value
        await phone.app.back().value
        #expect(phone.app.place == house)
        await phone.app.back().value
        #expect(phone.app.place == .jobs)
        #expect(!phone.app.canGoBack)
    }

    @Test func aScreenKeepsItsModelWhileThePlaceStays() async throws {
        let phone = try await Phone.withDemo()
        let before = try phone.house()
        await phone.app.act(.houseKind(action: .addStock(job: before.view.job, length: "9'", count: ""))).value
        #expect(try phone.house() === before)
        #expect(before.view.stock.contains { $0.length.nm == 2_743_200_000 })
    }

    @Test func tapsAreCarriedOutInTheirOrder() async throws {
        let phone = try await Phone.withDemo()
        let house = try phone.house()
        let wall = try #require(house.view.walls.first)
        phone.app.go(.rules(job: house.view.job))
        phone.app.go(.pole(job: house.view.job))
        phone.app.back()
        phone.app.go(.wall(wall: wall.wall))
        await phone.app.settled()
        #expect(phone.app.place == .wall(wall: wall.wall))
        await phone.app.back().value
        #expect(phone.app.place == .rules(job: house.view.job))
    }

    @Test func aRefusalChangesNothingAndIsSaidInTheLanguageOfTheScreens() async throws {
        let phone = try await Phone.withDemo()
        let before = try phone.house().view
        await phone.app.act(.houseKind(action: .addStock(job: before.job, length: "a foot", count: ""))).value
        let trouble = try #require(phone.app.trouble)
        #expect(trouble.field == "length" && trouble.code == "length" && trouble.text.count > 8)
        #expect(phone.device.refusals == 1)
        await phone.app.settled()
        #expect(try phone.house().view == before)
        await phone.app.act(.settingsKind(action: .answer(field: "language", text: "es"))).value
        await phone.app.act(.houseKind(action: .addStock(job: before.job, length: "a foot", count: ""))).value
        #expect(try #require(phone.app.trouble).text != trouble.text)
    }

    @Test func troubleIsGoneAfterTheNextTapOrWhenItWasRead() async throws {
        let phone = try await Phone.withDemo()
        let job = try phone.house().view.job
        await phone.app.act(.houseKind(action: .addStock(job: job, length: "", count: ""))).value
        #expect(phone.app.trouble != nil)
        await phone.app.go(.settings).value
        #expect(phone.app.trouble == nil)
        await phone.app.go(.house(job: "no such house")).value
        #expect(phone.app.trouble?.field == "job" && phone.app.place == .settings)
        phone.app.understood()
        #expect(phone.app.trouble == nil)
    }

    @Test func aLockedGlassTakesNoTap() async throws {
        let phone = try await Phone.withNotchedBoard()
        let (board, place) = (try phone.board(), phone.app.place)
        #expect(phone.app.lockable)
        phone.app.putQuestionAway()
        phone.app.lock(true)
        phone.book.reset()
        await phone.app.go(.jobs).value
        await phone.app.back().value
        await board.tick(try #require(board.currentStep)).value
        await phone.app.takePhoto(try #require(board.currentStep)).value
        await phone.app.share("a copy", name: "book.lapwright") { .handOverKind(action: .book(path: $0)) }.value
        await phone.app.pickFile().value
        phone.app.ask(board.questions[0])
        await phone.app.listen().value
        #expect(phone.app.place == place && phone.app.entry.question == nil && phone.book.calls.isEmpty)
        #expect(phone.device.filled.isEmpty && phone.device.shared.isEmpty)
        phone.app.lock(false)
        await phone.app.go(.jobs).value
        #expect(phone.app.place == .jobs)
    }

    @Test func onlyABoardAndAPenetrationCanBeLocked() async throws {
        let phone = try await Phone.withBoards()
        let wall = try phone.wall()
        #expect(!phone.app.lockable)
        let places =
            [Place.board(board: wall.view.boards[0].board)]
            + wall.view.penetrations.map { Place.penetration(penetration: $0.penetration) }
        for place in places {
            await phone.app.go(place).value
            #expect(phone.app.lockable)
        }
        for place in [Place.jobs, .settings, .doneList(job: nil), .measure(wall: wall.view.wall)] {
            await phone.app.go(place).value
            #expect(!phone.app.lockable)
        }
    }

    @Test func aLockDoesNotOutliveAStop() async throws {
        let phone = try await Phone.withNotchedBoard()
        phone.app.lock(true)
        try await phone.restart()
        #expect(phone.app.lockable && !phone.app.locked)
    }

    @Test func aCopyOfTheBookIsHandedOnUnderATitleAndCanBeOpened() async throws {
        let phone = try await Phone.withDemo()
        await phone.app.go(.handOver(job: nil)).value
        let before = try phone.handOver().view.copied
        phone.book.reset()
        await (try phone.handOver()).shareBook().value
        #expect(phone.book.calls == ["act"] && phone.app.trouble == nil)
        let (title, path) = try #require(phone.device.shared.last)
        #expect(title == phone.app.words.shareCopy)
        let copy = try Book.open(path: path, copies: nil)
        let empty = View.jobsKind(view: JobsView(jobs: [], copied: "", copyFailed: "", differences: "", account: []))
        #expect(try copy.view(context: phone.app.context(), place: .jobs) != empty)
        #expect(try phone.handOver().view.copied != before, "how old the last copy is")
    }

    @Test func whatWasSavedOfADamagedBookIsShownUntilSomebodyHasReadIt() async throws {
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent(UUID().uuidString)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        let file = folder.appendingPathComponent("book.lapwright")
        do {
            let book = try Book.open(path: file.path, copies: nil)
            let context = Context(
                nowMs: 1_780_000_000_000,
                utcOffsetMinutes: 0,
                signer: "Ines",
                language: "en",
                show: "in/16",
                division: "1/16\"",
                entropy: Data(repeating: 7, count: 16)
            )
            _ = try book.act(context: context, action: .jobsKind(action: .openDemo))
        }
        let handle = try FileHandle(forWritingTo: file)
        try handle.seek(toOffset: 4096)
        try handle.write(contentsOf: Data(count: 4 * 4096))
        try handle.close()
        let phone = try await Phone(folder: folder)
        let account = try phone.jobs().view.account
        #expect(account.count > 2 && phone.app.place == .jobs)
        await (try phone.jobs()).acknowledge().value
        #expect(try phone.jobs().view.account.isEmpty && phone.app.trouble == nil)
    }

    @Test func theGlassStaysLitOnABoardAndOnAPenetrationOnly() async throws {
        let phone = try await Phone.withDemo()
        #expect(!phone.device.awake)
        let wall = try #require(try phone.house().view.walls.last)
        await phone.app.go(.wall(wall: wall.wall)).value
        #expect(!phone.device.awake)
        let hole = try #require(try phone.wall().view.penetrations.first)
        await (try phone.wall()).open(hole).value
        #expect(phone.device.awake)
        await phone.app.back().value
        #expect(!phone.device.awake)
    }

    @Test func anAcceptedAnswerIsFeltAndARefusedOneToo() async throws {
        let phone = try await Phone.withDemo()
        let (taken, refused) = (phone.device.answers, phone.device.refusals)
        let job = try phone.house().view.job
        await phone.app.act(.houseKind(action: .addStock(job: job, length: "14'", count: "3"))).value
        #expect(phone.device.answers == taken + 1 && phone.device.refusals == refused)
        await phone.app.act(.houseKind(action: .addStock(job: job, length: "14'", count: "-3"))).value
        #expect(phone.device.answers == taken + 1 && phone.device.refusals == refused + 1)
    }

    @Test func aPlaceThatIsGoneLeadsToTheHouses() async throws {
        let phone = try await Phone.withDemo()
        let job = try phone.house().view.job
        await (try phone.house()).addWall().value
        for key in "North" { phone.app.entry.press(String(key)) }
        phone.app.entry.accept()
        await phone.app.settled()
        let wall = try phone.measure().view.wall
        #expect(phone.app.place == .measure(wall: wall))
        // Another program on the same file takes the wall off while this phone is off.
        let other = try await Phone(folder: phone.folder)
        await other.app.act(.houseKind(action: .removePart(job: job, part: wall))).value
        #expect(other.app.trouble == nil)
        try await phone.restart()
        #expect(phone.app.screen != nil)
        #expect(phone.app.trouble == nil)
    }

    @Test func whatIsNoBookIsRefusedAndLeftAsItIs() async throws {
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent(UUID().uuidString)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        defer { try? FileManager.default.removeItem(at: folder) }
        let file = folder.appendingPathComponent("book.lapwright")
        try "a shopping list".write(to: file, atomically: true, encoding: .utf8)
        do {
            _ = try BookActor(folder: folder, language: "es")
            Issue.record("a shopping list was opened")
        } catch {
            #expect(Trouble(error).text == "\(file.path) no es un libro. Se dejó como está.")
        }
        #expect(try String(contentsOf: file, encoding: .utf8) == "a shopping list")
    }

    @Test func theBookActorMakesItsFolderAndOpensTheSameBookAgain() async throws {
        let base = FileManager.default.temporaryDirectory.appendingPathComponent(UUID().uuidString)
        defer { try? FileManager.default.removeItem(at: base) }
        let folder = base.appendingPathComponent("deep/down")
        let device = Device(seed: 77)
        let first = try await AppModel.open(BookActor(folder: folder), device.services)
        await first.act(.jobsKind(action: .create(name: "Lot 3", like: nil))).value
        let second = try await AppModel.open(BookActor(folder: folder), Device(seed: 78).services)
        guard case .house(let model) = second.screen else {
            Issue.record("\(second.place)")
            return
        }
        #expect(model.view.name == "Lot 3")
    }
}
