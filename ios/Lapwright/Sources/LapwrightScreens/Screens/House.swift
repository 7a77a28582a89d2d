import LapwrightModels
import SwiftUI

/// How far a house is, what comes next, and what is open to the weather now.
struct HouseScreen: View {
    let model: HouseModel

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, model.view.name, job: model.view.job, next: Next(model.view.nextSaid) { model.goOn() }) {
            if !model.view.openToWeather.isEmpty {
                Heading(app.words.openToWeather)
                ForEach(Array(model.view.openToWeather.enumerated()), id: \.offset) { open in
                    Line {
                        app.go(open.element.place)
                    } content: {
                        Warning(open.element.text)
                    }
                }
            }
            Heading(app.words.walls)
            ForEach(model.view.walls, id: \.wall) { wall in
                Line {
                    model.open(wall)
                } content: {
                    Named(wall.name, wall.said)
                }
            }
            OtherAction(app.words.newWall) { model.addWall() }
            OtherAction(app.words.pole) { model.pole() }
            OtherAction(app.words.sawList) { model.sawList() }
            OtherAction(app.words.order) { model.order() }
            OtherAction(app.words.rules) { model.rules() }
            OtherAction(app.words.looseBoard) { model.addLooseBoard() }
            if model.view.hasLooseBoard { OtherAction(app.words.sameBoard) { model.createSameBoard() } }
            Heading(app.words.stock)
            ForEach(model.view.stock, id: \.stock) { stock in
                HStack(spacing: 8) {
                    Named(stock.said, "")
                    SignButton(.close, "\(app.words.remove): \(stock.said)") { model.remove(stock) }
                }
            }
            OtherAction(app.words.newStock) { model.addStock() }
            Heading(app.words.answers)
            Answers(app, model.view.questions)
            Text(model.view.copied).font(.small)
        }
    }
}
