import LapwrightModels
import SwiftUI

import struct LapwrightCore.StepLine
import enum LapwrightCore.StepState
import struct LapwrightCore.Words

/// The steps in their order: a tap on the box ticks one, a tap on the words opens its reason, its sizes and its cautions.
struct StepList<Model: Signing>: View {
    let model: Model
    let steps: [StepLine]
    @Environment(\.look) private var look

    init(_ model: Model, _ steps: [StepLine]) {
        (self.model, self.steps) = (model, steps)
    }

    private var app: AppModel { model.app }

    var body: some View {
        ForEach(steps, id: \.code) { step in
            row(step)
            if step.code == app.openStep {
                if !step.reason.isEmpty { Text(step.reason).font(.label) }
                SizeLines(app, step.sizes)
                CautionPanel(app.words.caution, step.cautions)
                choices(step)
            }
        }
    }

    private func words(_ step: StepLine) -> some View {
        VStack(alignment: .leading, spacing: 2) {
            Text(step.text).font(step.state == .open ? .strong : .label)
            if step.state != .open {
                Text("\(step.state.said(app.words)): \(step.said)").font(.small)
            }
            if step.differs { Warning(app.words.differs) }
        }
        .frame(maxWidth: .infinity, alignment: .leading)
    }

    @ViewBuilder private func row(_ step: StepLine) -> some View {
        // A photo that is asked for is one tap away, and the tick takes it in with the next.
        HStack(spacing: 4) {
            // The box stands on the side of the hand that taps it.
            if look.leftHanded { box(step) }
            Line {
                app.open(step)
            } content: {
                words(step)
            }
            if model.wantsPhoto(step) && !look.large {
                GlyphButton(.camera, app.words.photo, spoken: "\(app.words.photo): \(step.text)") {
                    app.takePhoto(step)
                }
            }
            if let photo = step.photo { Thumbnail(app, photo, of: step.text) }
            if !look.leftHanded { box(step) }
        }
        if model.wantsPhoto(step) && look.large { OtherAction(app.words.photo, .camera) { app.takePhoto(step) } }
    }

    private func box(_ step: StepLine) -> some View {
        TickBox(app, step.text, step.state) { model.tapBox(step) }
    }

    @ViewBuilder private func choices(_ step: StepLine) -> some View {
        if let photo = step.photoHere {
            OtherAction(app.words.sharePhoto, .share) { app.sharePhoto(photo, title: step.text) }
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

/// The box of a step or a check.
struct TickBox: View {
    let app: AppModel
    let name: String
    let state: StepState
    let act: @MainActor () -> Void
    @Environment(\.look) private var look

    init(_ app: AppModel, _ name: String, _ state: StepState, act: @escaping @MainActor () -> Void) {
        (self.app, self.name, self.state, self.act) = (app, name, state, act)
    }

    var body: some View {
        Button(action: act) {
            ZStack {
                switch state {
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
        .accessibilityLabel(name)
        .accessibilityValue(state.said(app.words))
        .accessibilityAddTraits(.isToggle)
    }
}

extension StepState {
    /// The state in words.
    fileprivate func said(_ words: Words) -> String {
        switch self {
        case .open: words.open
        case .done: words.done
        case .skipped: words.leftOut
        }
    }
}

/// The step that is to be done now: what to do, why, and the sizes that it needs.
struct StepInHand: View {
    let app: AppModel
    let step: StepLine
    @Environment(\.look) private var look

    init(_ app: AppModel, _ step: StepLine) {
        (self.app, self.step) = (app, step)
    }

    var body: some View {
        Text(step.text).font(look.heading)
        if !step.reason.isEmpty { Text(step.reason).font(look.face(16, atMost: 1.6)) }
        SizeLines(app, step.sizes)
    }
}
