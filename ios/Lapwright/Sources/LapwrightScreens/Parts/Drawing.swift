import LapwrightModels
import SwiftUI

import struct LapwrightCore.Drawing
import struct LapwrightCore.Frame
import enum LapwrightCore.Subject

/// The drawing of a subject, as wide as there is room: asked for when the subject, its revision or the frame changed.
///
/// A tap leads to what was hit. `zooms` adds pinching, and two buttons for who cannot pinch in gloves.
struct Drawn: View {
    let app: AppModel
    let subject: Subject
    let revision: Int64
    let most: CGFloat
    /// Whether it may be higher where large texts need more room for their rows.
    let withTexts: Bool
    let zooms: Bool

    init(
        _ app: AppModel, _ subject: Subject, _ revision: Int64, most: CGFloat, withTexts: Bool = false,
        zooms: Bool = false
    ) {
        (self.app, self.subject, self.revision) = (app, subject, revision)
        (self.most, self.withTexts, self.zooms) = (most, withTexts, zooms)
    }

    var body: some View {
        Sheet(app, subject, revision, most: most, withTexts: withTexts, zooms: zooms).id(subject)
    }
}

/// One subject's drawing on a canvas.
private struct Sheet: View {
    let app: AppModel
    let revision: Int64
    let most: CGFloat
    /// Whether it may be higher where large texts need more room for their rows.
    let withTexts: Bool
    let zooms: Bool
    @State private var model: PictureModel
    @State private var lens = Lens()
    /// How far a pinch and a drag have come since they began.
    @State private var pinched: Float = 1
    @State private var dragged = CGSize(width: 0, height: 0)
    @Environment(\.look) private var look

    init(_ app: AppModel, _ subject: Subject, _ revision: Int64, most: CGFloat, withTexts: Bool, zooms: Bool) {
        (self.app, self.revision, self.most, self.withTexts, self.zooms) = (app, revision, most, withTexts, zooms)
        _model = State(wrappedValue: PictureModel(subject, app: app))
    }

    var body: some View {
        GeometryReader { space in
            canvas
                .gesture(pinch, including: zooms ? .all : .subviews)
                .gesture(drag, including: lens.scale > 1 ? .all : .subviews)
                .task(id: Wanted(revision: revision, frame: frame(space.size.width))) {
                    await model.fetch(revision, for: frame(space.size.width))
                }
        }
        .frame(height: drawn)
        .accessibilityElement(children: .ignore)
        .accessibilityLabel(model.drawing?.spoken ?? "")
        .accessibilityHidden(model.drawing == nil)
        .accessibilityActions {
            ForEach(Array((model.drawing?.targets ?? []).enumerated()), id: \.offset) { target in
                Button(target.element.spoken) { app.go(target.element.place) }
            }
        }
        if zooms, let drawing = model.drawing {
            let middle = Spot(x: drawing.widthDp / 2, y: drawing.heightDp / 2)
            HStack(spacing: 8) {
                GlyphButton(.closer, app.words.zoomIn) { lens.draw(nearer: 1.6, about: middle) }
                GlyphButton(.farther, app.words.zoomOut) { lens.draw(nearer: 1 / 1.6, about: middle) }
            }
        }
    }

    private var canvas: some View {
        Canvas { context, _ in
            context.translateBy(x: CGFloat(lens.shift.x), y: CGFloat(lens.shift.y))
            context.scaleBy(x: CGFloat(lens.scale), y: CGFloat(lens.scale))
            for stroke in model.strokes ?? [] { draw(stroke, in: &context) }
        }
        .frame(height: drawn)
        .clipped()
        .onTapGesture { place in
            let at = Spot(x: Float(place.x), y: Float(place.y))
            let hit = lens.under(at)
            guard let target = model.target(x: hit.x, y: hit.y) else { return }
            let nearer = zooms ? lens.nearer(for: target) : 1
            if nearer > 1 { lens.draw(nearer: nearer, about: at) } else { app.go(target.place) }
        }
    }

    private var pinch: some Gesture {
        MagnifyGesture()
            .onChanged { value in
                let at = Spot(x: Float(value.startLocation.x), y: Float(value.startLocation.y))
                lens.draw(nearer: Float(value.magnification) / pinched, about: at)
                pinched = Float(value.magnification)
            }
            .onEnded { _ in pinched = 1 }
    }

    /// Moves a drawing that was drawn nearer; at its own size the screen under it scrolls.
    private var drag: some Gesture {
        DragGesture()
            .onChanged { value in
                let moved = Spot(
                    x: Float(value.translation.width - dragged.width),
                    y: Float(value.translation.height - dragged.height)
                )
                lens.draw(nearer: 1, about: Spot(x: 0, y: 0), moved: moved)
                dragged = value.translation
            }
            .onEnded { _ in dragged = CGSize(width: 0, height: 0) }
    }

    /// What the drawing takes of the height that it may have; nothing where there is none.
    private var drawn: CGFloat { CGFloat(model.drawing?.heightDp ?? 0) }

    private struct Wanted: Equatable {
        let revision: Int64
        let frame: LapwrightCore.Frame
    }

    private func frame(_ width: CGFloat) -> LapwrightCore.Frame {
        // Drawings are laid out for texts of up to twice their size.
        let scale = min(look.scale, 2)
        return LapwrightCore.Frame(
            widthDp: Float(width),
            heightDp: Float(withTexts ? most * max(scale, 1) : most),
            answerDp: Float(44 * scale),
            labelDp: Float(18 * scale),
            smallDp: Float(16 * scale),
            leftHand: look.leftHanded
        )
    }

    private func draw(_ stroke: Stroke, in context: inout GraphicsContext) {
        switch stroke {
        case .fill(let role, let points):
            context.fill(path(points, closed: true), with: .color(look.inks.color(role)))
        case .line(let role, let pattern, let closed, let thickness, let points):
            let style = StrokeStyle(
                lineWidth: CGFloat(thickness),
                lineCap: .butt,
                lineJoin: .miter,
                dash: pattern.lengths.map { CGFloat($0) }
            )
            context.stroke(path(points, closed: closed), with: .color(look.inks.color(role)), style: style)
        case .hatch(let role, let spacing, let thickness, let points):
            var inside = context
            inside.clip(to: path(points, closed: true))
            for line in hatching(spacing: spacing, of: points) {
                let color = GraphicsContext.Shading.color(look.inks.color(role))
                inside.stroke(path([line.from, line.to], closed: false), with: color, lineWidth: CGFloat(thickness))
            }
        case .text(let role, let lettering): write(lettering, look.inks.color(role), in: context)
        }
    }

    /// The core laid the text out at this very size: it is not scaled again.
    private func write(_ lettering: Stroke.Lettering, _ color: Color, in context: GraphicsContext) {
        let face = lettering.weight == .bold ? Look.boldFace : Look.face
        let font = Font.custom(face, fixedSize: CGFloat(lettering.em))
        let text = context.resolve(Text(lettering.text).font(font).foregroundStyle(color))
        var turned = context
        turned.translateBy(x: CGFloat(lettering.at.x), y: CGFloat(lettering.at.y))
        turned.rotate(by: .degrees(-Double(lettering.turn)))
        // The point lies on the base line; the canvas places a text by a point of its box.
        let size = text.measure(in: CGSize(width: 10_000, height: 10_000))
        let baseline = text.firstBaseline(in: size)
        let shift: CGFloat =
            switch lettering.anchor {
            case .start: 0
            case .middle: size.width / 2
            case .end: size.width
            }
        turned.draw(text, at: CGPoint(x: -shift, y: -baseline), anchor: .topLeading)
    }

    private func path(_ points: [Spot], closed: Bool) -> Path {
        var path = Path()
        for (at, point) in points.enumerated() {
            let point = CGPoint(x: CGFloat(point.x), y: CGFloat(point.y))
            if at == 0 { path.move(to: point) } else { path.addLine(to: point) }
        }
        if closed { path.closeSubpath() }
        return path
    }
}
