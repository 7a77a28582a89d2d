import LapwrightModels
import SwiftUI

/// What is where on a wall.
struct WallScreen: View {
    let model: WallModel
    @State private var zoom: CGFloat = 1

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, model.view.name, job: model.view.job, next: next) {
            Picture(app: app, model: model.picture, revision: model.view.revision, height: 420, zoom: zoom)
            HStack(spacing: 6) {
                SignButton("minus.magnifyingglass", app.words.zoomOut) { zoom = max(1, zoom / 2) }
                SignButton("plus.magnifyingglass", app.words.zoomIn) { zoom = min(8, zoom * 2) }
            }
            Notes(notes: model.view.notes)
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
                SignButton("minus", [app.words.remove, line.name].spoken) { model.remove(line) }
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
                SourceBox(app: app, source: board.length.source)
            }
        }
    }
}
