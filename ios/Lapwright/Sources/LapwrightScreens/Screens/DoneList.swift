import LapwrightModels
import SwiftUI

import struct LapwrightCore.DoneLine

/// What happened, newest first. A tap on a line shows what is built on it, before it is taken back.
struct DoneListScreen: View {
    let model: DoneListModel

    private var app: AppModel { model.app }

    private var next: Next? {
        model.view.lookedAt.flatMap { line in
            line.undone ? nil : Next(app.words.takeBack) { model.undo(line) }
        }
    }

    var body: some View {
        let view = model.view
        Frame(app, app.words.doneList, job: view.job, next: next) {
            if let looked = view.lookedAt {
                lines([looked]) { _ in }
                if !view.depends.isEmpty {
                    Warning(app.words.depends)
                    lines(view.depends) { _ in }
                }
                OtherAction(app.words.close) { model.close() }
            }
            if !view.reopened.isEmpty {
                Heading(app.words.reopened)
                ForEach(Array(view.reopened.enumerated()), id: \.offset) { answer in
                    Line {
                        model.open(answer.element)
                    } content: {
                        Named(answer.element.title, answer.element.text)
                    }
                }
            }
            if view.lookedAt == nil {
                if view.lines.isEmpty { Text(app.words.nothingDone).font(.label) }
                ForEach(model.days, id: \.day) { day in
                    Heading(day.day)
                    lines(day.lines) { line in model.look(at: line) }
                }
                if view.older != nil { OtherAction(app.words.older) { model.older() } }
            }
        }
    }

    private func lines(_ lines: [DoneLine], act: @escaping @MainActor (DoneLine) -> Void) -> some View {
        ForEach(lines, id: \.group) { line in
            Line {
                act(line)
            } content: {
                VStack(alignment: .leading, spacing: 2) {
                    Text(line.text).font(line.undone ? .label : .strong)
                    Text(said(line)).font(.small)
                }
                .frame(maxWidth: .infinity, alignment: .leading)
            }
        }
    }

    /// When and by whom, and whether it was taken back.
    private func said(_ line: DoneLine) -> String {
        let state = line.undone ? app.words.takenBack : ""
        return [line.time, line.signer, state].filter { !$0.isEmpty }.joined(separator: " · ")
    }
}
