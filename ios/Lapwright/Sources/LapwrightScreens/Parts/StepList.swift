import LapwrightModels
import SwiftUI

import struct LapwrightCore.StepLine

/// The steps in their order: a tap on the box ticks one, a tap on the words opens its reason.
struct StepList<Model: Signing>: View {
    let model: Model
    @Environment(\.look) private var look

    init(_ model: Model) {
        self.model = model
    }

    private var app: AppModel { model.app }

    var body: some View {
        let current = model.currentStep?.code
        ForEach(model.steps, id: \.code) { step in
            let unread = step.code == current && !step.cautionsRead
            if unread { CautionPanel(app.words.caution, step.cautions) }
            row(step)
            if step.code == app.openStep {
                if !step.reason.isEmpty { Text(step.reason).font(.label) }
                SizeLines(app, step.sizes)
                if !unread { CautionPanel(app.words.caution, step.cautions) }
                choices(step)
            }
        }
    }

    private func state(_ step: StepLine) -> String {
        switch step.state {
        case .open: app.words.open
        case .done: app.words.done
        case .skipped: app.words.leftOut
        }
    }

    private func words(_ step: StepLine) -> some View {
        VStack(alignment: .leading, spacing: 2) {
            Text(step.text).font(step.state == .open ? .strong : .label)
            if step.state != .open {
                Text("\(state(step)): \(step.said)").font(.small)
            }
            if step.differs { Warning(app.words.differs) }
        }
        .frame(maxWidth: .infinity, alignment: .leading)
    }

    @ViewBuilder private func row(_ step: StepLine) -> some View {
        // A photo that is asked for is one tap away, and the tick takes it in with the next.
        HStack(spacing: 4) {
            box(step)
            Line {
                app.open(step)
            } content: {
                words(step)
                if let photo = step.photo {
                    Icon(.camera, photo.place == .here ? look.inks.done : look.inks.warning)
                        .accessibilityElement(children: .ignore)
                        .accessibilityLabel(app.words.photo)
                }
            }
            if model.wantsPhoto(step) && !look.large {
                GlyphButton(.camera, "\(app.words.photo): \(step.text)") { app.takePhoto(step) }
            }
        }
        if model.wantsPhoto(step) && look.large { OtherAction(app.words.photo, .camera) { app.takePhoto(step) } }
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

    @ViewBuilder private func choices(_ step: StepLine) -> some View {
        if let photo = step.photoHere {
            OtherAction(app.words.sharePhoto) { app.sharePhoto(photo, title: step.text) }
        }
        if step.state != .open {
            OtherAction(app.words.takeBack) { model.takeBack(step) }
        } else {
            if !model.wantsPhoto(step) { OtherAction(app.words.photo, .camera) { app.takePhoto(step) } }
            ForEach(step.asks.dropLast(), id: \.field) { asks in OtherAction(asks.title) { app.ask(asks) } }
            if let asks = step.asks.last { OtherAction(app.words.leaveOut) { app.ask(asks) } }
        }
    }
}
