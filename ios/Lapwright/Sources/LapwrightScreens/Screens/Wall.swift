import LapwrightModels
import SwiftUI

import struct LapwrightCore.PenetrationLine

/// What is where on a wall.
struct WallScreen: View {
    let model: WallModel
    @Environment(\.look) private var look

    private var app: AppModel { model.app }

    /// Boards are planned first; then what goes through the wall comes one after the other.
    private var next: Next {
        model.view.boards.isEmpty
            ? Next(app.words.planBoards) { model.planBoards() }
            : Next(app.words.newPenetration) { model.addPenetration() }
    }

    var body: some View {
        let view = model.view
        Frame(app, view.name, job: view.job, next: next) {
            Drawn(app, .elevation(wall: view.wall), view.revision, most: 420, zooms: true)
            Notes(view.notes)
            Heading(app.words.penetrations)
            ForEach(view.penetrations, id: \.penetration) { line in penetration(line) }
            if view.boards.isEmpty { OtherAction(app.words.newPenetration) { model.addPenetration() } }
            if !view.penetrations.isEmpty { OtherAction(app.words.sameAsLast) { model.addSameAsLast() } }
            if !view.details.isEmpty { Heading(app.words.details) }
            ForEach(view.details, id: \.detail) { line in
                Line {
                    model.open(line)
                } content: {
                    Named(line.name, line.said)
                }
            }
            OtherAction(app.words.measure) { model.measure() }
            if !view.boards.isEmpty {
                OtherAction(app.words.planBoards) { model.planBoards() }
                Fold(app.words.boards) {
                    ForEach(view.boards, id: \.board) { board in
                        ReadingLine(app, board.said, board.length) { model.open(board) }
                    }
                }
            }
        }
    }

    /// What goes through the wall; it can be taken off again.
    private func penetration(_ line: PenetrationLine) -> some View {
        HStack(spacing: 4) {
            Line {
                model.open(line)
            } content: {
                VStack(alignment: .leading, spacing: 2) {
                    Text("\(line.letter) · \(line.name)").font(line.done ? .label : .strong)
                    Text(line.said).font(.small)
                }
                .frame(maxWidth: .infinity, alignment: .leading)
                if line.done { Icon(.tick, look.inks.done) }
            }
            GlyphButton(.remove, app.words.remove, spoken: "\(app.words.remove): \(line.name)") { model.remove(line) }
        }
    }
}
