import LapwrightModels
import SwiftUI

import struct LapwrightCore.CheckLine
import struct LapwrightCore.NotchView

/// The board in hand: its marks first, then how it is drawn, how long it is, and what is checked of it.
struct BoardScreen: View {
    let model: BoardModel
    @Environment(\.look) private var look

    private var app: AppModel { model.app }

    var body: some View {
        let view = model.view
        Frame(
            app, view.title, job: view.job.isEmpty ? nil : view.job, next: next(model.currentCheck),
            cautions: model.cautions
        ) {
            if !view.said.isEmpty { Text(view.said).font(.label) }
            Notes(view.notes.filter { $0.level == .stop })
            ForEach(view.notches, id: \.notch) { notch in marks(notch) }
            if !model.isMarked, let length = view.length { Answer(length.text).accessibilityLabel(length.spoken) }
            if let length = view.length {
                Drawn(app, model.picture, view.revision, most: 420, withTexts: true)
                if model.isMarked {
                    Text("\(app.words.length): \(length.text)").font(.length).accessibilityLabel(length.spoken)
                }
            }
            if let stock = view.stock { Text("\(app.words.stock): \(stock.text)").font(.label) }
            ForEach(view.notches, id: \.notch) { notch in gap(notch) }
            Notes(view.notes.filter { $0.level != .stop })
            if model.isNotchAwaited { newNotch }
            ForEach(view.checks, id: \.code) { check in row(check) }
            if view.length != nil && model.hasBack {
                OtherAction(model.side == .back ? app.words.showFace : app.words.showBack, .flip) { model.turn() }
                OtherAction(app.words.sayIt, .speak) { model.sayMarks() }
            }
            if !view.nextBoard.isEmpty {
                Line {
                    model.openNext()
                } content: {
                    Named(view.nextSaid)
                }
            }
            Fold(app.words.steps) {
                // A board that is cut to length alone needs no list of its cuts.
                if view.instructions.count > 1 {
                    ForEach(Array(view.instructions.enumerated()), id: \.offset) { at, line in
                        Text("\(at + 1). \(line.text)").font(.label)
                    }
                }
                StepList(model, view.steps)
            }
            Fold(app.words.answers) {
                Answers(app, view.questions)
                ForEach(view.notches, id: \.notch) { notch in answers(notch) }
            }
            Fold(app.words.more) { more }
        } strip: {
            Drawn(app, model.face, view.revision, most: 150)
        }
    }

    /// The next check, with what there is to mind read before it; on a board that is up the next board.
    private func next(_ check: CheckLine?) -> Next? {
        guard let check else {
            return model.view.nextBoard.isEmpty ? nil : Next(model.view.nextSaid) { model.openNext() }
        }
        if !check.cautionsRead { return Next(app.words.readIt) { app.read(check.code) } }
        var camera: (@MainActor () -> Void)?
        if !check.camera.isEmpty { camera = { model.takePhoto(check) } }
        return Next("\(check.text): \(model.view.title)", .tick, camera: camera) { model.tap(check) }
    }

    /// What is checked of the board: a box, and the camera beside it where a photo is asked for.
    private func row(_ check: CheckLine) -> some View {
        HStack(spacing: 4) {
            if look.leftHanded { box(check) }
            VStack(alignment: .leading, spacing: 2) {
                Text(check.text).font(check.state == .open ? .strong : .label)
                if !check.said.isEmpty { Text(check.said).font(.small) }
            }
            .frame(maxWidth: .infinity, alignment: .leading)
            if !check.camera.isEmpty {
                GlyphButton(.camera, app.words.photo, spoken: "\(app.words.photo): \(check.text)") {
                    model.takePhoto(check)
                }
            }
            ForEach(model.photographed(check), id: \.code) { step in
                if let photo = step.photo { Thumbnail(app, photo, of: step.text) }
            }
            if !look.leftHanded { box(check) }
        }
    }

    private func box(_ check: CheckLine) -> some View {
        TickBox(app, check.text, check.state) { model.tap(check) }
    }

    /// What is cut, and its marks on the side that is up.
    @ViewBuilder private func marks(_ notch: NotchView) -> some View {
        Text(notch.cutText.isEmpty ? notch.name : "\(notch.name): \(notch.cutText)").font(.strong)
        Notes(notch.notes)
        if let marks = model.marks(notch) { Marks(app, marks) }
    }

    /// The gap to expect at a notch.
    @ViewBuilder private func gap(_ notch: NotchView) -> some View {
        if let least = notch.gapLeast, let most = notch.gapMost {
            Heading(app.words.gap)
            let both = "\(app.words.gapLeast) \(least.text) · \(app.words.gapMost) \(most.text)"
            Text(least.text == most.text ? least.text : both).font(.label)
        }
    }

    /// What was read at a notch, and what follows from it.
    @ViewBuilder private func answers(_ notch: NotchView) -> some View {
        Heading(notch.name)
        if let offset = notch.offset { ReadingLine(app, app.words.offset, offset) }
        if !notch.legs.isEmpty { Heading(app.words.legs) }
        SizeLines(app, notch.legs)
        Answers(app, notch.questions)
    }

    private var newNotch: some View { OtherAction(app.words.newNotch) { model.addNotch() } }

    /// What is seldom done with a board.
    @ViewBuilder private var more: some View {
        if !model.isNotchAwaited { newNotch }
        if model.isCut { OtherAction(app.words.spoiled) { model.spoiled() } }
        ForEach(model.view.walls, id: \.wall) { wall in
            OtherAction("\(app.words.attach): \(wall.name)") { model.attach(to: wall) }
        }
        if model.view.gapsKnown > 0 { OtherAction(app.words.forgetHabit) { model.forgetHabit() } }
        if model.isLoose { OtherAction(app.words.sameBoard) { model.createSame() } }
    }
}
