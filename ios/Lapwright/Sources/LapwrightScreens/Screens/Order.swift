import LapwrightModels
import SwiftUI

import struct LapwrightCore.OrderLine

/// What to buy: amounts with packs, waste and what is at hand, to be shared.
struct OrderScreen: View {
    let model: OrderModel

    private var app: AppModel { model.app }

    var body: some View {
        let view = model.view
        Frame(app, app.words.order, job: view.job, next: Next(app.words.shareText) { model.share(view.text) }) {
            Notes(view.notes)
            ForEach(view.lines, id: \.code) { line in material(line) }
            OtherAction(app.words.shareCsv) { model.share(view.csv) }
            OtherAction(app.words.shareJson) { model.share(view.json) }
            OtherAction(app.words.sawList) { model.sawList() }
        }
    }

    /// A material, how much of it to buy, and what that was computed from. A tap says it aloud.
    private func material(_ line: OrderLine) -> some View {
        Line {
            model.say(line)
        } content: {
            VStack(alignment: .leading, spacing: 2) {
                Text(line.name).font(.strong)
                if line.buy > 0 { Text("\(line.buy) × \(line.pack)").font(.large) }
                Text(line.said).font(.label)
                Text(line.from).font(.small)
            }
            .frame(maxWidth: .infinity, alignment: .leading)
        }
    }
}
