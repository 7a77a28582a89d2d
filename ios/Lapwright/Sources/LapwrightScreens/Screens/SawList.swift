import LapwrightModels
import SwiftUI

import struct LapwrightCore.OffcutLine
import struct LapwrightCore.SawBoardLine

/// What to cut from what: the boards in cutting order, and the stock and offcuts that they come from.
struct SawListScreen: View {
    let model: SawListModel
    @Environment(\.look) private var look

    private var app: AppModel { model.app }

    private var next: Next {
        if !model.view.planned { return Next(app.words.planBoards) { model.plan() } }
        if let board = model.next {
            return Next("\(board.number): \(app.words.allCut)", .tick) { model.markCut(board) }
        }
        return Next(app.words.house) { model.house() }
    }

    var body: some View {
        let view = model.view
        Frame(app, app.words.sawList, job: view.job, next: next) {
            Text(view.text).font(.strong)
            if view.planned { Text(view.progress).font(.label) }
            Notes(view.notes)
            ForEach(view.boards, id: \.number) { board in self.board(board) }
            if view.planned {
                if !view.proved { OtherAction(app.words.improve) { model.improve() } }
                OtherAction(app.words.planBoards) { model.plan() }
            }
            Heading(app.words.stock)
            ForEach(view.stock, id: \.stock) { stock in
                Line {
                    app.ask(stock.asks)
                } content: {
                    Text(stock.said).font(.label).frame(maxWidth: .infinity, alignment: .leading)
                }
            }
            Heading(app.words.offcuts)
            ForEach(view.offcuts, id: \.offcut) { offcut in self.offcut(offcut) }
            OtherAction(app.words.newOffcut) { model.addOffcut() }
            OtherAction(app.words.order) { model.order() }
        }
    }

    /// A board, its drawn cuts, and where each piece goes. A tap says it aloud.
    @ViewBuilder private func board(_ board: SawBoardLine) -> some View {
        Line {
            model.say(board)
        } content: {
            VStack(alignment: .leading, spacing: 2) {
                Text("\(board.number) · \(board.length.text)")
                    .font(.large)
                    .accessibilityLabel("\(board.number): \(board.length.spoken)")
                Text([board.cuts, board.restSaid].filter { !$0.isEmpty }.joined(separator: ". "))
                    .font(.small)
                    .accessibilityLabel(model.aloud(board))
                if board.cut { Text(app.words.allCut).font(.small) }
            }
            .frame(maxWidth: .infinity, alignment: .leading)
            if board.cut { Icon(.tick, look.inks.done) }
        }
        if !board.cut {
            Drawn(
                app, .sawPattern(job: model.view.job, number: board.number), board.revision, most: 160, withTexts: true)
            ForEach(board.pieces, id: \.board) { piece in
                ReadingLine(app, piece.said, piece.length) { model.open(piece) }
            }
        }
    }

    /// A piece left over, to throw away or to keep after all.
    private func offcut(_ offcut: OffcutLine) -> some View {
        HStack(spacing: 4) {
            VStack(alignment: .leading, spacing: 2) {
                Text(offcut.length.text).font(.large).accessibilityLabel(offcut.length.spoken)
                if !offcut.atHand { Text(app.words.thrownAway).font(.small) }
            }
            .frame(maxWidth: .infinity, alignment: .leading)
            if offcut.atHand {
                GlyphButton(.close, "\(app.words.throwAway): \(offcut.length.spoken)") { model.drop(offcut) }
            } else {
                GlyphButton(.closer, "\(app.words.keepIt): \(offcut.length.spoken)") { model.keep(offcut) }
            }
        }
    }
}
