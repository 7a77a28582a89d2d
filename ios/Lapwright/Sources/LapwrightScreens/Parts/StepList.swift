import LapwrightModels
import SwiftUI

import struct LapwrightCore.StepLine

/// The steps in their order: a tap on the box ticks one, a tap on the words opens its reason.
struct StepList<Model: Signing>: View {
    let model: Model
    let takePhoto: (@MainActor (StepLine) -> Void)?
    @State private var open = ""
    @Environment(\.look) private var look

    init(_ model: Model, takePhoto: (@MainActor (StepLine) -> Void)? = nil) {
        (self.model, self.takePhoto) = (model, takePhoto)
    }

    private var app: AppModel { model.app }

    var body: some View {
        let current = model.currentStep?.code
        ForEach(model.steps, id: \.code) { step in
            if step.code == current { CautionPanel(app.words.caution, step.cautions) }
            row(step)
            if step.code == open {
                if !step.reason.isEmpty { Text(step.reason).font(.label) }
                if step.code != current { CautionPanel(app.words.caution, step.cautions) }
                choices(step)
            }
        }
    }

    @ViewBuilder private func row(_ step: StepLine) -> some View {
        // A photo that is asked for is one tap away, and the tick takes it in with the next.
        let camera = model.wantsPhoto(step) ? takePhoto : nil
        HStack(spacing: 4) {
            box(step)
            Line {
                open = open == step.code ? "" : step.code
            } content: {
                words(step)
                if let photo = step.photo {
                    Icon(.camera, photo.place == .here ? look.inks.done : look.inks.warning)
                        .accessibilityHidden(false)
                        .accessibilityLabel(app.words.photo)
                }
            }
            if let camera, !look.large {
                SignButton(.camera, "\(app.words.photo): \(step.text)") { camera(step) }
            }
        }
        if let camera, look.large { OtherAction(app.words.photo, .camera) { camera(step) } }
    }

    private func box(_ step: StepLine) -> some View {
        Button {
            _ = step.state == .open ? model.tick(step) : model.takeBack(step)
        } label: {
            ZStack {
                switch step.state {
                case .open: EmptyView()
                case .done: Icon(.tick, look.inks.done)
                case .skipped: Icon(.farther, look.inks.planned)
                }
            }
            .frame(width: 34, height: 34)
            .border(look.inks.ink, width: 2)
            .frame(minWidth: Look.target, minHeight: Look.target)
            .contentShape(.rect)
        }
        .buttonStyle(.plain)
        .accessibilityLabel(step.text)
        .accessibilityValue(state(step))
        .accessibilityAddTraits(.isToggle)
    }

    private func words(_ step: StepLine) -> some View {
        VStack(alignment: .leading, spacing: 2) {
            Text(step.text).font(step.state == .open ? .strong : .label)
            if step.state != .open {
                let who = [state(step), step.signer, step.note].filter { !$0.isEmpty }
                Text(who.joined(separator: ", ")).font(.small)
            }
        }
        .frame(maxWidth: .infinity, alignment: .leading)
    }

    private func state(_ step: StepLine) -> String {
        switch step.state {
        case .open: app.words.open
        case .done: app.words.done
        case .skipped: app.words.leftOut
        }
    }

    @ViewBuilder private func choices(_ step: StepLine) -> some View {
        if let photo = step.photo, photo.place == .here {
            OtherAction(app.words.sharePhoto) { app.sharePhoto(photo.photo, title: step.text) }
        }
        if step.state != .open {
            OtherAction(app.words.takeBack) { model.takeBack(step) }
        } else {
            if let takePhoto, !model.wantsPhoto(step) {
                OtherAction(app.words.photo, .camera) { takePhoto(step) }
            }
            if step.asks != nil { OtherAction(app.words.leaveOut) { model.leaveOut(step) } }
        }
    }
}
