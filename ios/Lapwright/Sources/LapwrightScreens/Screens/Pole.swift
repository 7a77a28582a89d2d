import LapwrightModels
import SwiftUI

/// Where the lines go.
struct PoleScreen: View {
    let model: PoleModel

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, app.words.pole, job: model.view.job, next: next) {
            Notes(notes: model.view.notes)
            Picture(app: app, model: model.picture, revision: model.view.revision, height: 600)
            if !model.view.said.isEmpty { Text(model.view.said).font(.label) }
            Heading(app.words.lines)
            ForEach(model.view.lines, id: \.course) { line in ReadingLine(app, line.said, line.height) }
            OtherAction(app.words.sayIt) { model.sayLines() }
            Heading(app.words.heights)
            ForEach(Array(model.view.marks.enumerated()), id: \.offset) { entry in
                let mark = entry.element
                ReadingLine(app, mark.name, mark.at)
                Text(mark.said).font(.small)
                if !mark.mark.isEmpty { OtherAction([app.words.remove, mark.name].spoken) { model.remove(mark) } }
            }
            OtherAction(app.words.newMark) { model.addMark() }
            Heading(app.words.answers)
            Answers(app, model.view.questions)
        }
    }

    /// Keeps the lines that are shown, where others are kept or none.
    private var next: Next? {
        model.view.upToDate || model.view.lines.isEmpty ? nil : Next(app.words.layOut) { model.layOut() }
    }
}
