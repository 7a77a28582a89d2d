import LapwrightModels
import SwiftUI

/// What to buy.
struct OrderScreen: View {
    let model: OrderModel

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, app.words.order, job: model.view.job, next: Next(app.words.shareText) { model.share() }) {
            Notes(model.view.notes)
            ForEach(model.view.lines, id: \.code) { line in
                Named("\(line.name), \(line.said)", line.from)
            }
            OtherAction(app.words.shareCsv) { model.share(.csv) }
            OtherAction(app.words.sawList) { model.sawList() }
        }
    }
}
