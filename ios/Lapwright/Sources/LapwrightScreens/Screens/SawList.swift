import LapwrightModels
import SwiftUI

import struct LapwrightCore.OffcutLine
import struct LapwrightCore.SawBoardLine

/// What to cut from what: the boards in cutting order, and the stock and offcuts that they come from.
struct SawListScreen: View {
    let model: SawListModel
    @Environment(\.look) private var look

    private var app: AppModel { model.app }

    private var next: Next? {
        if !model.view.planned { return Next(app.words.planBoards) { model.plan() } }
        if let board = model.next {
            return Next("\(board.number): \(app.words.allCut)", .tick) { model.markCut(board) }
        }
        return nil
    }

    var body: some View {
        let view = model.view
        Frame(app, app.words.sawList, job: view.job, next: next) {
            if view.planned { Bar(view.progress, Int(view.boardsCut), of: view.boards.count) }
            Notes(view.notes)
            // The board at hand alone: what its button signs is in sight.
            if let board = model.next { atHand(board) }
            if view.boardsCut > 0 {
                Fold(view.cutSaid) { ForEach(model.boardsCut, id: \.number) { board in listed(board) } }
            }
            if !model.boardsLater.isEmpty {
                Fold("\(app.words.boards): \(model.boardsLater.count)") {
                    ForEach(model.boardsLater, id: \.number) { board in listed(board) }
                }
            }
            Text(view.text).font(.label)
            if view.planned {
                if !view.proved { OtherAction(app.words.improve) { model.improve() } }
                OtherAction(app.words.planBoards) { model.plan() }
            }
            Heading(app.words.stock)
            ForEach(view.stock, id: \.stock) { stock in
                Line {
                    app.ask(stock.asks)
                } content: {
                    VStack(alignment: .leading, spacing: 2) {
                        if stock.short > 0 { Text("\(stock.short) \(app.words.lacking)").font(.large) }
                        Text(stock.said).font(.label)
                    }
                    .frame(maxWidth: .infinity, alignment: .leading)
                }
            }
            Heading(app.words.offcuts)
            ForEach(view.offcuts, id: \.offcut) { offcut in self.offcut(offcut) }
            OtherAction(app.words.newOffcut) { model.addOffcut() }
            OtherAction(app.words.order) { model.order() }
        }
    }

    /// The board at hand: its drawn cuts, each piece large with where it goes, and all of it as text for who is at the saw.
    @ViewBuilder private func atHand(_ board: SawBoardLine) -> some View {
        listed(board)
        Drawn(app, .sawPattern(job: model.view.job, number: board.number), board.revision, most: 160, withTexts: true)
        ForEach(board.pieces, id: \.board) { piece in
            Line {
                model.open(piece)
            } content: {
                VStack(alignment: .leading, spacing: 2) {
                    Text(piece.length.text).font(.length).accessibilityLabel(piece.length.spoken)
                    Text(piece.said).font(piece.notched ? .strong : .label)
                }
                .frame(maxWidth: .infinity, alignment: .leading)
            }
        }
        OtherAction(app.words.ticket, .share) { model.shareTicket(board) }
    }

    /// A board in a line. A tap says it aloud.
    private func listed(_ board: SawBoardLine) -> some View {
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
            }
            .frame(maxWidth: .infinity, alignment: .leading)
            if board.cut { Icon(.tick, look.inks.done) }
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
                GlyphButton(.remove, app.words.throwAway, spoken: "\(app.words.throwAway): \(offcut.length.spoken)") {
                    model.drop(offcut)
                }
            } else {
                GlyphButton(.undo, app.words.keepIt, spoken: "\(app.words.keepIt): \(offcut.length.spoken)") {
                    model.keep(offcut)
                }
            }
        }
    }
}
