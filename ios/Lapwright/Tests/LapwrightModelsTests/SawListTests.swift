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
        await added.keep(offcut, false).value
        #expect(added.view.offcuts.first { $0.offcut == offcut.offcut }?.atHand == false)
        await added.keep(offcut, true).value
        #expect(added.view.offcuts.first { $0.offcut == offcut.offcut }?.atHand == true)
    }

    @Test func aBoardIsDrawnWithItsCutsAndSaid() async throws {
        let phone = try await planned()
        let list = try phone.sawList()
        let board = try #require(list.next)
        let frame = Frame(widthDp: 360, heightDp: 160, answerDp: 44, labelDp: 18, smallDp: 16, leftHand: false)
        let picture = PictureModel(.sawPattern(job: list.view.job, number: board.number), app: phone.app)
        await picture.fetch(list.revision, for: frame)
        #expect(try #require(picture.strokes).count > board.pieces.count)
        list.say(board)
        for piece in board.pieces { #expect(phone.device.said.last?.contains(piece.length.spoken) == true) }
        await list.open(board.pieces[0]).value
        #expect(try phone.board().view.board == board.pieces[0].board)
    }

    @Test func howManyBoardsThereAreIsSaid() async throws {
        let phone = try await planned()
        let list = try phone.sawList()
        let stock = try #require(list.view.stock.first)
        phone.app.ask(stock.asks)
        phone.app.entry.type("7")
        phone.app.entry.accept()
        await phone.app.settled()
        #expect(list.view.stock.first { $0.stock == stock.stock }?.have == 7)
        phone.app.ask(stock.asks)
        phone.app.entry.type("-7")
        await phone.app.settled()
        phone.app.entry.accept()
        await phone.app.settled()
        #expect(phone.app.trouble != nil)
    }

    @Test func theOrderIsSharedAsTextAndAsATable() async throws {
        let phone = try await planned()
        await phone.app.back().value
        await (try phone.house()).order().value
        let order = try phone.order()
        #expect(order.view.lines.count > 5)
        order.share()
        #expect(phone.device.shared.map(\.what) == [order.view.text])
        order.share(.csv)
        let path = try #require(phone.device.shared.last?.what)
        defer { try? FileManager.default.removeItem(atPath: path) }
        #expect(try String(contentsOfFile: path, encoding: .utf8) == order.view.csv)
        let rows = order.view.csv.split(whereSeparator: \.isNewline)
        #expect(rows.count > order.view.lines.count)
        await order.sawList().value
        _ = try phone.sawList()
    }
}
