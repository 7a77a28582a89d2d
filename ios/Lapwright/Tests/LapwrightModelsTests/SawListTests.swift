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
        list.newOffcut = "a stump"
        await list.addOffcut().value
        #expect(phone.app.trouble != nil && list.newOffcut == "a stump")
        list.newOffcut = "50 1/2"
        await list.addOffcut().value
        #expect(list.newOffcut.isEmpty && list.view.offcuts.count == before + 1)
        let offcut = try #require(list.view.offcuts.first { $0.length.nm == 1_282_700_000 })
        await list.keep(offcut, false).value
        #expect(list.view.offcuts.first { $0.offcut == offcut.offcut }?.atHand == false)
        await list.keep(offcut, true).value
        #expect(list.view.offcuts.first { $0.offcut == offcut.offcut }?.atHand == true)
    }

    @Test func aBoardIsDrawnWithItsCutsAndSaid() async throws {
        let phone = try await planned()
        let list = try phone.sawList()
        let board = try #require(list.next)
        let frame = Frame(widthDp: 360, heightDp: 160, answerDp: 44, labelDp: 18, smallDp: 16, leftHand: false)
        await list.picture(board).show(board.number, in: frame)
        #expect(try #require(list.picture(board).strokes).count > board.pieces.count)
        list.say(board)
        for piece in board.pieces { #expect(phone.device.said.last?.contains(piece.length.spoken) == true) }
        await list.open(board.pieces[0]).value
        #expect(try phone.board().view.board == board.pieces[0].board)
    }

    @Test func howManyBoardsThereAreIsSaid() async throws {
        let phone = try await planned()
        let list = try phone.sawList()
        let stock = try #require(list.view.stock.first)
        await list.say(stock, count: "7").value
        #expect(list.view.stock.first { $0.stock == stock.stock }?.have == 7)
        await list.say(stock, count: "-7").value
        #expect(phone.app.trouble?.field == "count")
    }

    @Test func theOrderIsSharedAsTextAndAsATable() async throws {
        let phone = try await planned()
        await phone.app.back().value
        await (try phone.house()).order().value
        let order = try phone.order()
        #expect(order.view.lines.count > 5)
        order.shareText()
        #expect(phone.device.shared == [order.view.text])
        order.shareTable()
        let path = try #require(phone.device.shared.last)
        defer { try? FileManager.default.removeItem(atPath: path) }
        #expect(try String(contentsOfFile: path, encoding: .utf8) == order.view.csv)
        let rows = order.view.csv.split(whereSeparator: \.isNewline)
        #expect(rows.count > order.view.lines.count)
        await order.sawList().value
        _ = try phone.sawList()
    }
}
