import LapwrightModels
import SwiftUI

import struct LapwrightCore.SawBoardLine

/// What to cut from what, in cutting order.
struct SawListScreen: View {
    @Bindable var model: SawListModel
    @Environment(\.look) private var look

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, app.words.sawList, job: model.view.job, next: next) {
            Text(model.view.text).font(.strong)
            if model.view.planned { Text(model.view.progress).font(.label) }
            Notes(notes: model.view.notes)
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
            Next(["\(board.number)", app.words.cut].spoken) { model.markCut(board) }
        }
    }

    @ViewBuilder private func part(_ board: SawBoardLine) -> some View {
        Line {
            model.say(board)
        } content: {
            Named("\(board.number)", [board.cuts, board.restSaid].spoken)
            Text(board.length.text).font(.strong).accessibilityLabel(board.length.spoken)
            if board.cut { Image(systemName: "checkmark").accessibilityLabel(app.words.done) }
        }
        Picture(app: app, model: model.picture(board), revision: board.number, height: 160)
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
                    SignButton("minus", [app.words.remove, offcut.length.spoken].spoken) { model.keep(offcut, false) }
                } else {
                    SignButton("plus", [app.words.bringBack, offcut.length.spoken].spoken) { model.keep(offcut, true) }
                }
            }
        }
        HStack(spacing: 8) {
            WordsField(title: app.words.stock, text: model.newOffcut) { model.newOffcut = $0 }
            SignButton("plus", app.words.save) { model.addOffcut() }
        }
    }
}
