import LapwrightModels
import SwiftUI

import struct LapwrightCore.PenetrationLine
import struct LapwrightCore.WallProgress

/// How far a house is, what comes next, and what is open to the weather now.
struct HouseScreen: View {
    let model: HouseModel
    @Environment(\.look) private var look

    private var app: AppModel { model.app }

    var body: some View {
        let view = model.view
        Frame(
            app, view.name, job: view.job, next: model.isDone ? nil : Next(view.nextSaid) { model.goOn(view.next) }
        ) {
            if !view.progress.isEmpty { Bar(view.progress, view.boardsUp, of: view.boards) }
            if model.isDone { Text(view.nextSaid).font(.strong) }
            if !view.openToWeather.isEmpty {
                Heading(app.words.openToWeather)
                ForEach(Array(view.openToWeather.enumerated()), id: \.offset) { open in
                    Line {
                        app.go(open.element.place)
                    } content: {
                        Stop(open.element.text)
                    }
                }
            }
            if let then = view.then {
                Heading(app.words.nextWork)
                Line {
                    model.goOn(then)
                } content: {
                    Text(view.thenSaid).font(.label).frame(maxWidth: .infinity, alignment: .leading)
                }
            }
            Heading(app.words.walls)
            ForEach(view.walls, id: \.wall) { wall in self.wall(wall) }
            if !view.penetrations.isEmpty {
                Fold("\(app.words.penetrations): \(model.penetrationsDone) / \(view.penetrations.count)") {
                    ForEach(view.penetrations, id: \.penetration) { line in penetration(line) }
                }
            }
            OtherAction(app.words.looseBoard) { model.addLooseBoard() }
            if view.hasLooseBoard { OtherAction(app.words.sameBoard) { model.createSameBoard() } }
            OtherAction(app.words.pole) { model.pole() }
            OtherAction(app.words.sawList) { model.sawList() }
            OtherAction(app.words.order) { model.order() }
            OtherAction(app.words.rules) { model.rules() }
            OtherAction(app.words.newWall) { model.addWall() }
            Fold(app.words.stock) {
                ForEach(view.stock, id: \.stock) { stock in part(stock.stock, stock.said) }
                OtherAction(app.words.newStock) { model.addStock() }
                Heading(app.words.blocks)
                ForEach(view.blockSizes, id: \.blockSize) { size in part(size.blockSize, size.said) }
                OtherAction(app.words.newBlock) { model.addBlockSize() }
            }
            Fold(app.words.answers) { Answers(app, view.questions) }
            Fold(app.words.more) {
                OtherAction(app.words.houseLike) { model.createLike() }
                OtherAction(app.words.handOver) { model.handOver() }
                OtherAction(view.archived ? app.words.bringBack : app.words.archive) { model.archive() }
            }
            Text(view.copied).font(.label)
        }
    }

    /// What goes through a wall, and how far it is.
    private func penetration(_ line: PenetrationLine) -> some View {
        Line {
            model.open(line)
        } content: {
            VStack(alignment: .leading, spacing: 2) {
                Text("\(line.letter) · \(line.name)").font(line.done ? .label : .strong)
                Text("\(line.wall) · \(line.said)").font(.small)
            }
            .frame(maxWidth: .infinity, alignment: .leading)
            if line.done { Icon(.tick, look.inks.done) }
        }
    }

    /// What the house has, with the tap that takes it off.
    private func part(_ part: String, _ said: String) -> some View {
        HStack(spacing: 4) {
            Text(said).font(.label).frame(maxWidth: .infinity, alignment: .leading)
            GlyphButton(.remove, app.words.remove, spoken: "\(app.words.remove): \(said)") { model.remove(part) }
        }
    }

    /// A wall, how far it is, and a small drawing of it beside that.
    private func wall(_ wall: WallProgress) -> some View {
        Line {
            model.open(wall)
        } content: {
            VStack(alignment: .leading, spacing: 4) {
                Named(wall.name, wall.said)
                let all = wall.planned + wall.cut + wall.fixed
                if all > 0 { Bar("", wall.fixed, of: all) }
            }
            .frame(maxWidth: .infinity, alignment: .leading)
            // A tap on the small drawing is one on the line.
            if wall.revision != 0 {
                Drawn(app, .wallSmall(wall: wall.wall), wall.revision, most: 120)
                    .frame(width: 120)
                    .allowsHitTesting(false)
            }
        }
    }
}
