import LapwrightModels
import SwiftUI

import struct LapwrightCore.DoneLine

/// What happened, newest first.
struct DoneListScreen: View {
    let model: DoneListModel

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, app.words.doneList, job: model.view.job) {
            if let looked = model.view.lookedAt {
                Text(looked.text).font(.strong)
                if !model.view.depends.isEmpty { Heading(app.words.depends) }
                ForEach(model.view.depends, id: \.group) { line in Warning(line.text) }
                NextAction(app.words.undo) { model.undo(looked) }
            }
            if model.view.lines.isEmpty { Text(app.words.nothingDone).font(.label) }
            ForEach(model.view.lines, id: \.group) { line in self.line(line) }
            if model.view.older != nil { OtherAction(app.words.older) { model.older() } }
        }
    }

    private func line(_ line: DoneLine) -> some View {
        Line {
            if !line.undone { model.look(at: line) }
        } content: {
            Named(line.text, "\(line.day), \(line.time), \(line.signer)")
            if line.undone { Text(app.words.takenBack).font(.small) }
        }
    }
}
