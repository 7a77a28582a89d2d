import LapwrightModels
import SwiftUI

/// A new thing in the making, one question at a time.
struct NewScreen: View {
    let model: NewModel

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, model.view.title, job: model.view.job, next: next) {
            Answers(app, model.view.questions)
            OtherAction(app.words.cancel) { model.leave() }
        }
    }

    private var next: Next? {
        model.view.asked.map { asked in Next(asked.title) { app.ask(asked) } }
    }
}
