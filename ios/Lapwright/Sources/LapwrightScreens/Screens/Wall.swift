import LapwrightModels
import SwiftUI

/// What is where on a wall.
struct WallScreen: View {
    let model: WallModel

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, model.view.name, job: model.view.job, next: next) {
            Drawn(app, .elevation(wall: model.view.wall), model.view.revision, most: 420, zooms: true)
            Notes(model.view.notes)
            penetrations
            OtherAction(app.words.measure) { model.measure() }
            if !model.view.boards.isEmpty {
                OtherAction(app.words.planBoards) { model.planBoards() }
                Heading(app.words.board)
                boards
            }
        }
    }

    /// Boards are planned first; then what goes through the wall comes one after the other.
    private var next: Next {
        model.view.boards.isEmpty
            ? Next(app.words.planBoards) { model.planBoards() }
            : Next(app.words.newPenetration) { model.addPenetration() }
    }

    @ViewBuilder private var penetrations: some View {
        Heading(app.words.penetrations)
        ForEach(model.view.penetrations, id: \.penetration) { line in
            HStack(spacing: 8) {
                Line {
                    model.open(line)
                } content: {
                    Named(line.name, "")
                }
                SignButton(.close, "\(app.words.remove): \(line.name)") { model.remove(line) }
            }
        }
        if model.view.boards.isEmpty { OtherAction(app.words.newPenetration) { model.addPenetration() } }
        if !model.view.penetrations.isEmpty { OtherAction(app.words.sameAsLast) { model.addSameAsLast() } }
    }

    private var boards: some View {
        ForEach(model.view.boards, id: \.board) { board in
            Line {
                model.open(board)
            } content: {
                Named(board.said, "")
                Text(board.length.text).font(.strong).accessibilityLabel(board.length.spoken)
                SourceBox(app, board.length.source)
            }
        }
    }
}
