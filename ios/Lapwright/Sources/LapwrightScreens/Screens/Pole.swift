import LapwrightModels
import SwiftUI

import struct LapwrightCore.AsBuiltLine

/// Where the lines go.
struct PoleScreen: View {
    let model: PoleModel

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, app.words.pole, job: model.view.job, next: next) {
            Notes(model.view.notes)
            if !model.view.said.isEmpty { Text(model.view.said).font(.label) }
            Heading(app.words.lines)
            ForEach(model.view.lines, id: \.course) { line in ReadingLine(app, line.said, line.height) }
            Heading(app.words.heights)
            ForEach(Array(model.view.marks.enumerated()), id: \.offset) { entry in
                let mark = entry.element
                ReadingLine(app, mark.name, mark.at)
                Text(mark.said).font(.small)
                if !mark.mark.isEmpty { OtherAction("\(app.words.remove): \(mark.name)") { model.remove(mark) } }
            }
            OtherAction(app.words.newMark) { model.addMark() }
            if !model.view.walls.isEmpty { Heading(app.words.asBuiltAt) }
            ForEach(model.view.asBuilt, id: \.asBuilt) { built in self.built(built) }
            ForEach(model.view.walls, id: \.wall) { wall in
                OtherAction("\(app.words.asBuilt): \(wall.name)") { model.tape(wall) }
            }
            Heading(app.words.answers)
            Answers(app, model.view.questions)
        }
    }

    /// A course as it hangs, with what it changes.
    @ViewBuilder private func built(_ built: AsBuiltLine) -> some View {
        Heading("\(built.wallName) · \(model.title("course")): \(built.course)")
        ReadingLine(app, model.title("left"), built.left)
        ReadingLine(app, model.title("middle"), built.middle)
        ReadingLine(app, model.title("right"), built.right)
        Notes(built.notes)
        OtherAction(app.words.remove) { model.remove(built) }
    }

    /// Keeps the lines that are shown, where others are kept or none.
    private var next: Next? {
        model.view.upToDate || model.view.lines.isEmpty ? nil : Next(app.words.layOut) { model.layOut() }
    }
}
