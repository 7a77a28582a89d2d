import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels

/// What happened, and taking it back.
@MainActor struct DoneListTests {
    private func answered() async throws -> Phone {
        let phone = try await Phone.withDemo()
        await (try phone.house()).addWall().value
        await phone.type("North")
        await phone.type("18'")
        return phone
    }

    @Test func undoIsOneCallAndLeadsToTheQuestionWithWhatHadBeenTyped() async throws {
        let phone = try await answered()
        let wall = try phone.measure().view.wall
        await phone.app.go(.doneList(job: try phone.measure().view.job)).value
        let list = try phone.doneList()
        phone.book.reset()
        await list.undo(try #require(list.view.lines.first)).value
        #expect(phone.book.calls == ["act"] && phone.app.place == .doneList(job: list.view.job))
        let reopened = try #require(list.view.reopened.first)
        await list.open(reopened).value
        #expect(phone.app.place == .measure(wall: wall))
        #expect(phone.app.entry.question?.field == "width" && phone.app.entry.text == "18'")
        #expect(try phone.measure().view.questions.first { $0.field == "width" }?.answer == "")
        await phone.type("")
        #expect(try phone.measure().view.questions.first { $0.field == "width" }?.answer == "216\"")
    }

    @Test func whatDependsOnAnAnswerIsShownFirst() async throws {
        let phone = try await answered()
        await phone.app.go(.doneList(job: try phone.measure().view.job)).value
        let list = try phone.doneList()
        let added = try #require(list.view.lines.dropFirst().first)
        await list.look(at: added).value
        #expect(list.view.lookedAt?.group == added.group)
        #expect(list.view.depends.count == 1, "the width hangs on the wall")
    }

    @Test func theListIsReadDayByDayAndClosesWhatWasLookedAt() async throws {
        let phone = try await answered()
        phone.device.sleep()
        phone.app.ask(try #require(try phone.measure().view.questions.first { $0.field == "name" }))
        await phone.type("er")
        await phone.app.go(.doneList(job: try phone.measure().view.job)).value
        let list = try phone.doneList()
        let days = list.days
        #expect(days.flatMap(\.lines) == list.view.lines && Set(days.map(\.day)).count == days.count)
        #expect(days.count == 2 && days[0].lines.count == 1, "\(days)")
        #expect(days.allSatisfy { day in !day.lines.isEmpty && day.lines.allSatisfy { $0.day == day.day } })
        await list.look(at: days[0].lines[0]).value
        #expect(list.view.lookedAt != nil)
        await (try phone.doneList()).close().value
        #expect(try phone.doneList().view.lookedAt == nil && phone.doneList().days.count == days.count)
    }

    @Test func whatWasTakenBackCannotBeTakenBackAgain() async throws {
        let phone = try await answered()
        let job = try phone.measure().view.job
        await phone.app.go(.doneList(job: job)).value
        let line = try #require(try phone.doneList().view.lines.first)
        await (try phone.doneList()).undo(line).value
        await phone.app.go(.doneList(job: job)).value
        let list = try phone.doneList()
        #expect(list.view.lines.first?.isUndo == true)
        #expect(list.view.lines.first { $0.group == line.group }?.undone == true)
        await list.undo(line).value
        #expect(phone.app.trouble?.field == "group")
    }

    @Test func theNewestStandsFirstAndOlderPagesFollow() async throws {
        let phone = try await Phone()
        for n in 1...55 {
            await phone.app.act(.jobsKind(action: .create(name: "Lot \(n)", like: nil))).value
        }
        await phone.app.go(.doneList(job: nil)).value
        let list = try phone.doneList()
        #expect(list.view.lines.count == 50 && list.view.lines[0].text.contains("Lot 55"))
        await list.older().value
        #expect(list.view.lines.count == 5 && list.view.lines.last?.text.contains("Lot 1") == true)
        #expect(list.view.older == nil)
    }

    @Test func aTickThatIsTakenBackIsOpenAgain() async throws {
        let phone = try await Phone.withNotchedBoard()
        let board = try phone.board()
        let step = try #require(board.currentStep)
        await board.tick(step).value
        try await phone.undoTheLast()
        await phone.app.back().value
        #expect(phone.app.place == .board(board: board.view.board))
        #expect(try phone.board().steps.first { $0.code == step.code }?.state == .open)
    }
}
