import LapwrightModels
import SwiftUI

import struct LapwrightCore.StepLine
import struct LapwrightCore.StepPhoto

/// The steps in their order: a tap on the box ticks one, a tap on the words opens its reason.
struct StepList<Model: Signing>: View {
    let model: Model
    @State private var open = ""
    @State private var note = ""
    @Environment(\.look) private var look

    private var app: AppModel { model.app }

    var body: some View {
        ForEach(model.steps, id: \.code) { step in
            if step.code == model.currentStep?.code { Cautions(heading: app.words.caution, notes: step.cautions) }
            row(step)
            if step.code == open { choices(step) }
        }
    }

    private func row(_ step: StepLine) -> some View {
        HStack(spacing: 4) {
            Button {
                _ = step.state == .open ? model.tick(step) : model.takeBack(step)
            } label: {
                Image(systemName: sign(step))
                    .font(.large)
                    .foregroundStyle(step.state == .done ? look.inks.done : look.inks.ink)
                    .frame(minWidth: look.target, minHeight: look.target)
            }
            .buttonStyle(.plain)
            .accessibilityLabel(step.text)
            .accessibilityValue(said(step))
            Line {
                open = open == step.code ? "" : step.code
                note = ""
            } content: {
                Named(step.text, step.state == .open ? "" : [said(step), step.signer, step.note].spoken)
            }
        }
    }

    @ViewBuilder private func choices(_ step: StepLine) -> some View {
        if !step.reason.isEmpty { Text(step.reason).font(.label) }
        if step.code != model.currentStep?.code { Cautions(heading: app.words.caution, notes: step.cautions) }
        if let measured = step.measured { ReadingLine(app, app.words.taped, measured) }
        OtherAction(app.words.sayIt) { model.say(step) }
        if let photo = step.photo, photo.place != .waiting { PhotoOf(words: app.words.photo, photo: photo) }
        if step.state == .open {
            if model.takesPhoto(step) { OtherAction(app.words.photo) { model.takePhoto(step) } }
            WordsField(title: app.words.reason, text: note) { note = $0 }
            OtherAction(app.words.done) { model.tick(step, note: note) }
            OtherAction(app.words.leaveOut) { model.leaveOut(step, note: note) }
        } else {
            OtherAction(app.words.takeBack) { model.takeBack(step) }
        }
    }

    private func sign(_ step: StepLine) -> String {
        switch step.state {
        case .open: "square"
        case .done: "checkmark.square"
        case .skipped: "minus.square"
        }
    }

    private func said(_ step: StepLine) -> String {
        switch step.state {
        case .open: app.words.open
        case .done: app.words.done
        case .skipped: app.words.leftOut
        }
    }
}

/// A photo of a step, or that it cannot be found.
private struct PhotoOf: View {
    let words: String
    let photo: StepPhoto

    var body: some View {
        if photo.place == .here {
            AsyncImage(url: URL(fileURLWithPath: photo.file)) { image in
                image.resizable().scaledToFit()
            } placeholder: {
                Image(systemName: "camera")
            }
            .frame(maxHeight: 240)
            .accessibilityLabel(words)
        } else {
            Warning(words)
        }
    }
}

extension [String] {
    /// What is not empty, one after the other.
    var spoken: String { filter { !$0.isEmpty }.joined(separator: ", ") }
}
