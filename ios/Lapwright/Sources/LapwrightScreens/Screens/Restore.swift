import LapwrightModels
import SwiftUI

/// What going back to a copy would do, before it is done.
struct RestoreScreen: View {
    let model: RestoreModel

    private var app: AppModel { model.app }

    private var next: Next { Next(app.words.restoreNow) { model.restore() } }

    var body: some View {
        let view = model.view
        Frame(app, app.words.restore, next: next) {
            Heading(view.name)
            ForEach(view.lines, id: \.self) { Text($0).font(.label) }
            OtherAction(app.words.cancel) { model.cancel() }
        }
    }
}
