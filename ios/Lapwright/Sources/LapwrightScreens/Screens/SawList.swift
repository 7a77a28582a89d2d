import LapwrightModels
import SwiftUI

import struct LapwrightCore.SawBoardLine

/// What to cut from what, in cutting order.
struct SawListScreen: View {
    let model: SawListModel
    @Environment(\.look) private var look

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, app.words.sawList, job: model.view.job, next: next) {
            Text(model.view.text).font(.strong)
            if model.view.planned { Text(model.view.progress).font(.label) }
            Notes(model.view.notes)
            if let board = model.next { part(board) }
            if model.view.planned { OtherAction(app.words.planBoards) { model.plan() } }
            ForEach(model.view.boards, id: \.number) { board in
                if board.number != model.view.next { part(board) }
            }
            Heading(app.words.stock)
            ForEach(model.view.stock, id: \.stock) { stock in Named(stock.said, "") }
            offcuts
        }
    }

    private var next: Next? {
        if !model.view.planned { return Next(app.words.planBoards) { model.plan() } }
        return model.next.map { board in
            Next("\(board.number): \(app.words.allCut)") { model.markCut(board) }
        }
    }

    @ViewBuilder private func part(_ board: SawBoardLine) -> some View {
        Line {
            model.say(board)
        } content: {
            Named("\(board.number)", [board.cuts, board.restSaid].filter { !$0.isEmpty }.joined(separator: ". "))
            Text(board.length.text).font(.strong).accessibilityLabel(board.length.spoken)
            if board.cut { Icon(.tick, look.inks.done) }
        }
        Drawn(app, .sawPattern(job: model.view.job, number: board.number), model.revision, most: 160)
        ForEach(board.pieces, id: \.board) { piece in
            Line {
                model.open(piece)
            } content: {
                Named(piece.said, "")
                Text(piece.length.text).font(.strong).accessibilityLabel(piece.length.spoken)
            }
        }
    }

    @ViewBuilder private var offcuts: some View {
        ForEach(model.view.offcuts, id: \.offcut) { offcut in
            HStack(spacing: 8) {
                Named(offcut.length.text, offcut.atHand ? "" : app.words.archived)
                    .accessibilityLabel(offcut.length.spoken)
                if offcut.atHand {
                    SignButton(.close, "\(app.words.throwAway): \(offcut.length.spoken)") { model.keep(offcut, false) }
                } else {
                    SignButton(.closer, "\(app.words.keepIt): \(offcut.length.spoken)") { model.keep(offcut, true) }
                }
            }
        }
        OtherAction(app.words.newOffcut) { model.addOffcut() }
    }
}
