import LapwrightModels
import SwiftUI

/// Setting up a wall, one question at a time.
struct MeasureScreen: View {
    let model: MeasureModel

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, model.view.name, job: model.view.job, next: Next(app.words.wall) { model.wall() }) {
            Notes(notes: model.view.notes)
            Heading(app.words.answers)
            Answers(app, model.view.questions)
            ForEach(model.view.parts, id: \.part) { part in
                HStack(spacing: 8) {
                    Heading(part.title)
                    Spacer()
                    SignButton("minus", [app.words.remove, part.title].spoken) { model.remove(part) }
                }
                Answers(app, part.questions)
            }
            OtherAction(app.words.baseStep) { model.add(.baseStep) }
            OtherAction(app.words.stud) { model.add(.stud) }
            OtherAction(app.words.opening) { model.add(.opening) }
            OtherAction(app.words.abutment) { model.add(.abutment) }
        }
    }
}
