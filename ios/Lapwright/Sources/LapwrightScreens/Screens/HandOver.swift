import LapwrightModels
import SwiftUI

/// The book, or one house of it, as a file for a colleague, with the words that they compare.
struct HandOverScreen: View {
    let model: HandOverModel

    private var app: AppModel { model.app }

    private var next: Next {
        model.view.job == nil
            ? Next(app.words.shareCopy) { model.shareBook() }
            : Next(app.words.shareNew) { model.shareHouse(all: false) }
    }

    var body: some View {
        let view = model.view
        Frame(app, app.words.handOver, job: view.job, next: next) {
            ForEach(view.done, id: \.self) { Text($0).font(.strong) }
            if !view.name.isEmpty { Heading(view.name) }
            if !view.said.isEmpty { Text(view.said).font(.label) }
            if view.job == nil {
                Text(view.copied).font(.label)
            } else {
                OtherAction(app.words.shareAll) { model.shareHouse(all: true) }
            }
        }
    }
}
