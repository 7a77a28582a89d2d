import LapwrightModels
import SwiftUI

import enum LapwrightCore.NewThing

/// Setting up a wall, one question at a time, in the order in which a person with a tape meets them.
struct MeasureScreen: View {
    let model: MeasureModel

    private var app: AppModel { model.app }

    private var parts: [(name: String, what: NewThing)] {
        [
            (app.words.opening, .opening),
            (app.words.stud, .stud),
            (app.words.baseStep, .baseStep),
            (app.words.abutment, .abutment),
        ]
    }

    var body: some View {
        let view = model.view
        Frame(app, view.name, job: view.job, next: Next("\(app.words.wall): \(view.name)") { model.wall() }) {
            Notes(view.notes)
            Heading(app.words.answers)
            Answers(app, view.questions)
            ForEach(view.parts, id: \.part) { part in
                Heading(part.title)
                Answers(app, part.questions)
                OtherAction(app.words.remove) { model.remove(part) }
            }
            Heading(app.words.more)
            ForEach(parts, id: \.what) { part in OtherAction(part.name) { model.add(part.what) } }
        }
    }
}
