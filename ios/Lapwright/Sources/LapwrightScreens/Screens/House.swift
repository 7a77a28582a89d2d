import LapwrightModels
import SwiftUI

import struct LapwrightCore.WallProgress

/// How far a house is, what comes next, and what is open to the weather now.
struct HouseScreen: View {
    let model: HouseModel

    private var app: AppModel { model.app }

    var body: some View {
        let view = model.view
        Frame(app, view.name, job: view.job, next: Next(view.nextSaid) { model.goOn() }) {
            if !view.openToWeather.isEmpty {
                Heading(app.words.openToWeather)
                ForEach(Array(view.openToWeather.enumerated()), id: \.offset) { open in
                    Line {
                        app.go(open.element.place)
                    } content: {
                        Warning(open.element.text)
                    }
                }
            }
            Heading(app.words.walls)
            ForEach(view.walls, id: \.wall) { wall in self.wall(wall) }
            OtherAction(app.words.newWall) { model.addWall() }
            OtherAction(app.words.pole) { model.pole() }
            OtherAction(app.words.sawList) { model.sawList() }
            OtherAction(app.words.order) { model.order() }
            OtherAction(app.words.rules) { model.rules() }
            Heading(app.words.stock)
            ForEach(view.stock, id: \.stock) { stock in part(stock.stock, stock.said) }
            OtherAction(app.words.newStock) { model.addStock() }
            Heading(app.words.blocks)
            ForEach(view.blockSizes, id: \.blockSize) { size in part(size.blockSize, size.said) }
            OtherAction(app.words.newBlock) { model.addBlockSize() }
            OtherAction(app.words.looseBoard) { model.addLooseBoard() }
            if view.hasLooseBoard { OtherAction(app.words.sameBoard) { model.createSameBoard() } }
            Heading(app.words.answers)
            Answers(app, view.questions)
            OtherAction(app.words.houseLike) { model.createLike() }
            OtherAction(view.archived ? app.words.bringBack : app.words.archive) { model.archive() }
            Text(view.copied).font(.label)
        }
    }

    /// What the house has, with the tap that takes it off.
    private func part(_ part: String, _ said: String) -> some View {
        HStack(spacing: 4) {
            Text(said).font(.label).frame(maxWidth: .infinity, alignment: .leading)
            GlyphButton(.close, "\(app.words.remove): \(said)") { model.remove(part) }
        }
    }

    /// A wall, how far it is, and a small drawing of it.
    private func wall(_ wall: WallProgress) -> some View {
        Line {
            model.open(wall)
        } content: {
            VStack(alignment: .leading, spacing: 4) {
                Named(wall.name, wall.said)
                // A tap on the small drawing is one on the line.
                if wall.revision != 0 {
                    Drawn(app, .wallSmall(wall: wall.wall), wall.revision, most: 110).allowsHitTesting(false)
                }
            }
            .frame(maxWidth: .infinity, alignment: .leading)
        }
    }
}
