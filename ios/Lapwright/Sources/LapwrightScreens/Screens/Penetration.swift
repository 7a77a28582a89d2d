import LapwrightModels
import SwiftUI

import struct LapwrightCore.BlockAdvice

/// A penetration, made weathertight.
struct PenetrationScreen: View {
    let model: PenetrationModel

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, model.view.name, job: model.view.job, next: next) {
            Notes(notes: model.view.notes)
            if !model.view.patch.isEmpty {
                Heading(app.words.patch)
                if !model.view.patchEnds.isEmpty { Text(model.view.patchEnds).font(.label) }
                Sizes(app, model.view.patch)
            }
            if !model.view.block.isEmpty {
                Heading(app.words.block)
                picture(model.block)
                Sizes(app, model.view.block)
            }
            if let advice = model.view.advice { self.advice(advice) }
            Sizes(app, model.view.head)
            Heading(app.words.layers)
            picture(model.front)
            picture(model.section)
            ForEach(model.view.layers, id: \.code) { layer in Named(layer.text, "") }
            if let shedding = model.view.shedding { self.shedding(shedding.sheds, shedding.lines.map(\.text)) }
            Heading(app.words.steps)
            StepList(model: model)
            Heading(app.words.answers)
            Answers(app, model.view.questions)
            OtherAction(app.words.wall) { model.wall() }
        }
        .task { await model.lookForPhotos() }
    }

    private func picture(_ picture: PictureModel) -> some View {
        Picture(app: app, model: picture, revision: model.view.revision, height: 320)
    }

    /// A block that sits better between the courses, what it gains, and the tap that takes it.
    @ViewBuilder private func advice(_ advice: BlockAdvice) -> some View {
        Heading(app.words.advice)
        Text(advice.gain).font(.label)
        ReadingLine(app, model.title("block-width"), advice.width)
        ReadingLine(app, model.title("block-height"), advice.height)
        ReadingLine(app, model.title("hole-from-bottom"), advice.holeFromBottom)
        OtherAction(app.words.takeAdvice) { model.takeAdvice() }
    }

    /// What the check of the layers says: a warning where water would get in.
    private func shedding(_ sheds: Bool, _ lines: [String]) -> some View {
        ForEach(Array(lines.enumerated()), id: \.offset) { line in
            if sheds { Text(line.element).font(.label) } else { Warning(line.element) }
        }
    }

    private var next: Next? {
        model.currentStep.map { step in Next(step.text) { model.tick(step) } }
    }
}
