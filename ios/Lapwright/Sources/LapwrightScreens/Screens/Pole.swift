import LapwrightModels
import SwiftUI

import struct LapwrightCore.AsBuiltLine
import struct LapwrightCore.MarkLine
import struct LapwrightCore.PoleLine

/// Where the lines go: the stick with its top end first, and the heights that it meets.
struct PoleScreen: View {
    let model: PoleModel
    @Environment(\.look) private var look

    private var app: AppModel { model.app }

    /// Keeps the lines that are shown, where others are kept or none.
    private var next: Next? {
        !model.view.lines.isEmpty && !model.view.upToDate
            ? Next(app.words.layOut) { model.layOut() }
            : nil
    }

    var body: some View {
        let view = model.view
        Frame(app, app.words.pole, job: view.job, next: next) {
            Notes(view.notes)
            // A tape on a course that hangs decides the lines above it.
            ForEach(view.asBuilt, id: \.asBuilt) { built in self.built(built) }
            if !view.lines.isEmpty {
                Text(view.said).font(.label)
                VStack(spacing: 0) { ForEach(view.lines.reversed(), id: \.course) { line in self.line(line) } }
            }
            Heading(app.words.heights)
            // The heights that come from the walls have no id.
            ForEach(Array(view.marks.enumerated()), id: \.offset) { mark in height(mark.element) }
            OtherAction(app.words.newMark) { model.addMark() }
            if !view.walls.isEmpty { Heading(app.words.asBuiltAt) }
            ForEach(view.walls, id: \.wall) { wall in
                OtherAction("\(app.words.asBuilt): \(wall.name)") { model.tape(wall) }
            }
            Heading(app.words.answers)
            Answers(app, view.questions)
        }
    }

    /// A course as it hangs, with what it changes.
    @ViewBuilder private func built(_ built: AsBuiltLine) -> some View {
        Heading(built.wallName)
        Text("\(model.title("course")) \(built.course)").font(.label)
        ReadingLine(app, model.title("left"), built.left)
        ReadingLine(app, model.title("middle"), built.middle)
        ReadingLine(app, model.title("right"), built.right)
        Notes(built.notes)
        OtherAction(app.words.remove) { model.remove(built) }
    }

    /// A line of the stick: its tick, its height, and what the course above it shows. A tap says it aloud.
    private func line(_ line: PoleLine) -> some View {
        Line {
            model.say(line)
        } content: {
            VStack(alignment: .leading, spacing: 2) {
                Text(line.height.text).font(.large).accessibilityLabel(line.height.spoken)
                Text(line.said).font(.small)
                From(app, line.height, .planned)
            }
            .frame(maxWidth: .infinity, alignment: .leading)
        }
        .padding(.vertical, 2)
        .padding(.leading, 28)
        .background(Stick(edge: look.inks.ink, tick: look.inks.chalk, width: 28))
    }

    /// A height to meet or stay clear of; one of the job's own can be taken off.
    private func height(_ mark: MarkLine) -> some View {
        HStack(spacing: 4) {
            Line {
                model.say(mark)
            } content: {
                VStack(alignment: .leading, spacing: 2) {
                    Text(mark.name).font(.label)
                    Text(mark.at.text).font(.large).accessibilityLabel(mark.at.spoken)
                    Text(mark.said).font(.small)
                }
                .frame(maxWidth: .infinity, alignment: .leading)
            }
            if !mark.mark.isEmpty {
                GlyphButton(.remove, app.words.remove, spoken: "\(app.words.remove): \(mark.name)") {
                    model.remove(mark)
                }
            }
        }
    }
}

/// The edge of the stick with one tick, left of a line and as high as it.
private struct Stick: View {
    let edge: Color
    let tick: Color
    let width: CGFloat

    var body: some View {
        Canvas { context, size in
            let pen: CGFloat = 2.5
            context.stroke(
                line(from: CGPoint(x: pen, y: 0), to: CGPoint(x: pen, y: size.height)),
                with: .color(edge),
                lineWidth: pen
            )
            context.stroke(
                line(from: CGPoint(x: pen, y: size.height / 2), to: CGPoint(x: width - pen, y: size.height / 2)),
                with: .color(tick),
                lineWidth: 1.5 * pen
            )
        }
        .accessibilityHidden(true)
    }

    private func line(from: CGPoint, to: CGPoint) -> Path {
        var path = Path()
        path.move(to: from)
        path.addLine(to: to)
        return path
    }
}
