import LapwrightModels
import SwiftUI

import struct LapwrightCore.BlockAdvice
import struct LapwrightCore.Shedding

/// One penetration, made weathertight.
struct PenetrationScreen: View {
    let model: PenetrationModel

    private var app: AppModel { model.app }

    var body: some View {
        let view = model.view
        Frame(app, view.name, job: view.job, next: next) {
            Notes(view.notes)
            // What is advised changes everything below it.
            if let advice = view.advice { self.advice(advice) }
            Drawn(app, .layersFront(penetration: view.penetration), view.revision, most: 320)
            if !view.patch.isEmpty {
                Heading(app.words.patch)
                if !view.patchEnds.isEmpty { Text(view.patchEnds).font(.label) }
                SizeLines(app, view.patch)
            }
            if !view.block.isEmpty {
                Heading(app.words.block)
                Drawn(app, .blockSplit(penetration: view.penetration), view.revision, most: 420, withTexts: true)
                SizeLines(app, view.block)
            }
            SizeLines(app, view.head)
            SizeLines(app, view.sizes)
            Heading(app.words.layers)
            Drawn(app, .layersSection(penetration: view.penetration), view.revision, most: 320)
            ForEach(view.layers, id: \.code) { layer in Text(layer.text).font(.label) }
            if let shedding = view.shedding { self.shedding(shedding) }
            Heading(app.words.steps)
            StepList(model)
            if !view.questions.isEmpty { Heading(app.words.answers) }
            Answers(app, view.questions)
        }
    }

    private var next: Next? {
        model.currentStep.map { step in Next(step.text, .tick) { model.tick(step) } }
    }

    /// What the check of the layers says: a warning where water would get in.
    private func shedding(_ shedding: Shedding) -> some View {
        ForEach(Array(shedding.lines.enumerated()), id: \.offset) { line in
            if shedding.sheds { Text(line.element.text).font(.label) } else { Warning(line.element.text) }
        }
    }

    /// A block that sits better between the courses: its sizes, what it gains, and the tap that takes it.
    @ViewBuilder private func advice(_ advice: BlockAdvice) -> some View {
        Heading(app.words.advice)
        Text(advice.gain).font(.label)
        ReadingLine(app, model.title("block-width"), advice.width)
        ReadingLine(app, model.title("block-height"), advice.height)
        ReadingLine(app, model.title("hole-from-bottom"), advice.holeFromBottom)
        OtherAction(app.words.takeAdvice) { model.takeAdvice() }
    }
}
