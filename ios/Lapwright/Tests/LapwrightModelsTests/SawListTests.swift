import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels

/// What to cut from what, and what to buy.
@MainActor struct SawListTests {
    private func planned() async throws -> Phone {
        let phone = try await Phone.withDemo()
        let house = try phone.house()
        await house.pole().value
        await (try phone.pole()).layOut().value
        await phone.app.back().value
        await house.sawList().value
        await (try phone.sawList()).plan().value
        return phone
    }

    @Test func theListIsPlannedInOneTapAndCutBoardByBoard() async throws {
        let phone = try await planned()
        let list = try phone.sawList()
        #expect(list.view.planned && list.view.least.nm <= list.view.used.nm && list.view.boards.count > 10)
        let first = try #require(list.next)
        await list.markCut(first).value
        #expect(list.view.boardsCut == 1 && list.next?.number != first.number)
        #expect(list.view.boards.first { $0.number == first.number }?.cut == true)
        await list.markCut(first).value
        #expect(phone.app.trouble != nil && list.view.boardsCut == 1)
    }

    @Test func whereNoListIsBetterTheOneThatIsHalfCutStays() async throws {
        let phone = try await planned()
        let list = try phone.sawList()
        await list.markCut(try #require(list.next)).value
        let before = list.view
        #expect(before.proved && before.boardsCut == 1 && before.offcuts.isEmpty)
        phone.book.reset()
        await list.improve().value
        #expect(phone.book.calls == ["act"] && phone.app.trouble?.code == "infeasible")
        #expect(list.view == before)
    }

    @Test func anOffcutIsAddedThrownAwayAndKeptAfterAll() async throws {
        let phone = try await planned()
        let list = try phone.sawList()
        let before = list.view.offcuts.count
        await list.addOffcut().value
        await phone.type("50 1/2")
        #expect(phone.app.trouble == nil)
        let added = try phone.sawList()
        #expect(added.view.offcuts.count == before + 1)
        let offcut = try #require(added.view.offcuts.first { $0.length.nm == 1_282_700_000 })
        await added.drop(offcut).value
        #expect(added.view.offcuts.first { $0.offcut == offcut.offcut }?.atHand == false)
        await added.keep(offcut).value
        #expect(added.view.offcuts.first { $0.offcut == offcut.offcut }?.atHand == true)
    }

    @Test func aBoardIsDrawnWithItsCutsAndSaid() async throws {
        let phone = try await planned()
        let list = try phone.sawList()
        let board = try #require(list.next)
        let frame = Frame(widthDp: 360, heightDp: 160, answerDp: 44, labelDp: 18, smallDp: 16, leftHand: false)
        let picture = PictureModel(.sawPattern(job: list.view.job, number: board.number), app: phone.app)
        await picture.fetch(board.revision, for: frame)
        #expect(try #require(picture.strokes).count > board.pieces.count)
        list.say(board)
        for piece in board.pieces { #expect(phone.device.said.last?.contains(piece.length.spoken) == true) }
        await list.open(board.pieces[0]).value
        #expect(try phone.board().view.board == board.pieces[0].board)
    }

    @Test func howManyBoardsThereAreIsAQuestionWhoseKeysAreKept() async throws {
        let phone = try await planned()
        var list = try phone.sawList()
        let stock = try #require(list.view.stock.first)
        phone.app.ask(stock.asks)
        phone.app.entry.type("7")
        await phone.app.settled()
        try await phone.restart()
        list = try phone.sawList()
        #expect(phone.app.entry.question?.subject == stock.stock && phone.app.entry.text == "7")
        #expect(list.view.stock.first { $0.stock == stock.stock }?.have != 7, "keys alone answer nothing")
        phone.app.entry.accept()
        await phone.app.settled()
        #expect(list.view.stock.first { $0.stock == stock.stock }?.have == 7)
        #expect(list.view.stock.first { $0.stock == stock.stock }?.said.contains("7") == true)
        phone.app.ask(stock.asks)
        phone.app.entry.type("-7")
        await phone.app.settled()
        phone.app.entry.accept()
        await phone.app.settled()
        #expect(phone.app.trouble != nil)
    }

    @Test func whenEveryBoardIsCutNothingIsNext() async throws {
        let phone = try await planned()
        let list = try phone.sawList()
        for _ in list.view.boards { await list.markCut(try #require(list.next)).value }
        #expect(list.next == nil && list.view.boards.allSatisfy(\.cut))
        #expect(list.boardsCut.count == list.view.boards.count && list.boardsLater.isEmpty)
    }

    @Test func theOrderIsSharedAsTextAsATableAndAsAnObject() async throws {
        let phone = try await planned()
        await phone.app.back().value
        await (try phone.house()).order().value
        let order = try phone.order()
        #expect(order.view.lines.count > 5)
        for text in [order.view.text, order.view.csv, order.view.json] { order.share(text) }
        let shared = phone.device.shared
        #expect(shared.allSatisfy { $0.title.contains(order.view.name) && $0.title.contains(phone.app.words.order) })
        let wanted = order.view.lines.filter { $0.buy > 0 }
        #expect(!wanted.isEmpty && wanted.allSatisfy { shared[0].what.contains($0.name) })
        #expect(shared[1].what.split(whereSeparator: \.isNewline).count > order.view.lines.count)
        let object = try #require(JSONSerialization.jsonObject(with: Data(shared[2].what.utf8)) as? [String: Any])
        #expect(!object.isEmpty)
        order.say(order.view.lines[0])
        #expect(phone.device.said.last == "\(order.view.lines[0].name): \(order.view.lines[0].said)")
        await order.sawList().value
        _ = try phone.sawList()
    }
}
