import LapwrightModels
import SwiftUI

import struct LapwrightCore.BlockAdvice
import struct LapwrightCore.StepLine

/// One penetration, made weathertight: the step in hand first, with its layer drawn, its sizes and what there is to mind.
struct PenetrationScreen: View {
    let model: PenetrationModel
    @Environment(\.look) private var look

    private var app: AppModel { model.app }

    var body: some View {
        let view = model.view
        let done = view.steps.filter { $0.state != .open }
        Frame(app, view.name, job: view.job, next: model.currentStep.flatMap { next($0) }, cautions: model.cautions) {
            Text(view.said).font(look.face(18, atMost: 1.6))
            Notes(view.notes.filter { $0.level == .stop })
            if let shedding = view.shedding, !shedding.sheds { Notes(shedding.lines) }
            if let step = model.currentStep { StepInHand(app, step) }
            if let advice = view.advice {
                Fold("\(app.words.advice): \(advice.gain)") { self.advice(advice) }
            }
            Drawn(app, .layersFront(penetration: view.penetration, layer: model.picked), view.revision, most: 260)
            if let layer = view.layers.first(where: { $0.code == model.picked }) {
                Text("\(layer.number). \(layer.text)").font(.small)
            }
            Notes(view.notes.filter { $0.level != .stop })
            StepList(model, view.steps.filter { $0.state == .open })
            if !done.isEmpty { Fold("\(app.words.done): \(done.count)") { StepList(model, done) } }
            Fold(app.words.layers) { layers }
            Fold(app.words.sizes) { sizes }
            if !view.questions.isEmpty { Fold(app.words.answers) { Answers(app, view.questions) } }
        }
    }

    /// The tick of the step in hand; what there is to mind at it is read first.
    private func next(_ step: StepLine) -> Next? {
        if !step.cautionsRead { return Next(app.words.readIt) { model.next(step) } }
        var camera: (@MainActor () -> Void)?
        if model.wantsPhoto(step) { camera = { app.takePhoto(step) } }
        return Next(step.text, .tick, camera: camera) { model.next(step) }
    }

    /// The layers as they are numbered in the drawings; a tap picks one out.
    @ViewBuilder private var layers: some View {
        let view = model.view
        Drawn(app, .layersSection(penetration: view.penetration, layer: model.picked), view.revision, most: 320)
        ForEach(view.layers, id: \.code) { layer in
            Line {
                model.touch(layer)
            } content: {
                Text("\(layer.number). \(layer.text)").font(layer.code == model.picked ? .strong : .label)
            }
        }
        if let shedding = view.shedding, shedding.sheds { Notes(shedding.lines) }
    }

    /// Every size of the patch, the block and the head flashing, or of a detail that every house has.
    @ViewBuilder private var sizes: some View {
        let view = model.view
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
    }

    /// A block that sits better between the courses: its sizes, what it gains, and the tap that takes it.
    @ViewBuilder private func advice(_ advice: BlockAdvice) -> some View {
        ReadingLine(app, model.title("block-width"), advice.width)
        ReadingLine(app, model.title("block-height"), advice.height)
        ReadingLine(app, model.title("hole-from-bottom"), advice.holeFromBottom)
        OtherAction(app.words.takeAdvice) { model.takeAdvice() }
    }
}
