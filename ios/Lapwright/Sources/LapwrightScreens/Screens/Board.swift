import LapwrightModels
import SwiftUI

import struct LapwrightCore.MarksView
import struct LapwrightCore.NotchView

/// The board in hand.
struct BoardScreen: View {
    let model: BoardModel
    @State private var gap = ""
    @Environment(\.look) private var look

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, model.view.title, job: model.view.job.isEmpty ? nil : model.view.job, next: next) {
            if let length = model.view.length {
                HStack(spacing: 8) {
                    Text(length.text).font(.answer).minimumScaleFactor(0.7).accessibilityLabel(length.spoken)
                    SourceBox(app: app, source: length.source)
                }
            }
            HStack(spacing: 6) {
                OtherAction(model.side == .face ? app.words.face : app.words.behind) { model.turn() }
                OtherAction(app.words.sayIt) { model.sayMarks() }
            }
            picture(400)
            Notes(notes: model.view.notes)
            ForEach(model.view.notches, id: \.notch) { notch in part(notch) }
            OtherAction(app.words.newNotch) { model.addNotch() }
            Heading(app.words.steps)
            StepList(model: model)
            Heading(app.words.answers)
            Answers(app, model.view.questions)
            if let stock = model.view.stock { ReadingLine(app, app.words.stock, stock) }
            if model.isCut { OtherAction(app.words.spoiled) { model.spoiled() } }
            if model.isLoose { OtherAction(app.words.sameBoard) { model.createSame() } }
        } strip: {
            picture(160)
        }
    }

    private var next: Next? {
        model.currentStep.map { step in Next(step.text) { model.tick(step) } }
    }

    private func picture(_ height: CGFloat) -> some View {
        Picture(app: app, model: model.picture, revision: model.view.revision, height: height)
    }

    @ViewBuilder private func part(_ notch: NotchView) -> some View {
        Heading([notch.name, notch.cutText].spoken)
        if let marks = model.marks(notch) { self.marks(marks) }
        if let offset = notch.offset { ReadingLine(app, app.words.offset, offset) }
        if let least = notch.gapLeast { ReadingLine(app, app.words.gapLeast, least) }
        if let most = notch.gapMost { ReadingLine(app, app.words.gapMost, most) }
        Heading(app.words.legs)
        Sizes(app, notch.legs)
        Notes(notes: notch.notes)
        Answers(app, notch.questions)
        WordsField(title: app.words.gap, text: gap) { gap = $0 }
        OtherAction(app.words.save) { model.sayGap(notch, gap) }
    }

    /// Lines to transfer: uprights from the left end, levels from their edge, left and right.
    @ViewBuilder private func marks(_ marks: MarksView) -> some View {
        ForEach(Array(marks.uprights.enumerated()), id: \.offset) { ReadingLine(app, "│", $0.element) }
        ForEach(Array(marks.levels.enumerated()), id: \.offset) { level in
            ReadingLine(app, "─ ◧", level.element.left)
            ReadingLine(app, "─ ◨", level.element.right)
        }
    }
}
