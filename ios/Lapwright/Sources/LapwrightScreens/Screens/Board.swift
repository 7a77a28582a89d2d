import LapwrightModels
import SwiftUI

import struct LapwrightCore.NotchView

/// The board in hand: measure, mark, cut, prime, fix.
struct BoardScreen: View {
    let model: BoardModel

    private var app: AppModel { model.app }

    var body: some View {
        let view = model.view
        Frame(app, view.title, job: view.job.isEmpty ? nil : view.job, next: next) {
            if let length = view.length {
                Answer(length.text).accessibilityLabel(length.spoken)
                Drawn(app, model.picture, view.revision, most: 420, withTexts: true)
                if model.hasBack {
                    OtherAction(model.side == .back ? app.words.face : app.words.behind, .flip) { model.turn() }
                    OtherAction(app.words.sayIt, .speak) { model.sayMarks() }
                }
            }
            Notes(view.notes)
            // A board that is cut to length alone needs no list.
            if view.instructions.count > 1 {
                ForEach(Array(view.instructions.enumerated()), id: \.offset) { at, line in
                    Text("\(at + 1). \(line.text)").font(.label)
                }
            }
            ForEach(view.notches, id: \.notch) { notch in part(notch) }
            OtherAction(app.words.newNotch) { model.addNotch() }
            Heading(app.words.steps)
            StepList(model)
            Heading(app.words.answers)
            Answers(app, view.questions)
            if let stock = view.stock { ReadingLine(app, app.words.stock, stock) }
            if model.isCut { OtherAction(app.words.spoiled) { model.spoiled() } }
            ForEach(view.walls, id: \.wall) { wall in
                OtherAction("\(app.words.attach): \(wall.name)") { model.attach(to: wall) }
            }
            if view.gapsKnown > 0 { OtherAction(app.words.forgetHabit) { model.forgetHabit() } }
            if model.isLoose { OtherAction(app.words.sameBoard) { model.createSame() } }
        } strip: {
            Drawn(app, model.face, view.revision, most: 150)
        }
    }

    private var next: Next? {
        model.currentStep.map { step in Next(step.text, .tick) { model.tick(step) } }
    }

    @ViewBuilder private func part(_ notch: NotchView) -> some View {
        Text(notch.name).font(.large).accessibilityAddTraits(.isHeader)
        if !notch.cutText.isEmpty { Text(notch.cutText).font(.label) }
        if let offset = notch.offset { ReadingLine(app, app.words.offset, offset) }
        if let least = notch.gapLeast, let most = notch.gapMost {
            Heading(app.words.gap)
            ReadingLine(app, app.words.gapLeast, least)
            ReadingLine(app, app.words.gapMost, most)
        }
        Notes(notch.notes)
        if !notch.legs.isEmpty { Heading(app.words.legs) }
        SizeLines(app, notch.legs)
        Heading(app.words.answers)
        Answers(app, notch.questions)
    }
}
