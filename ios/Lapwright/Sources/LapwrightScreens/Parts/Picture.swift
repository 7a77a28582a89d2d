import LapwrightModels
import SwiftUI

import struct LapwrightCore.Drawing
import struct LapwrightCore.Frame

/// A drawing of the core on a canvas: fetched again where what is drawn, the width or the text size has changed.
struct Picture: View {
    let app: AppModel
    let model: PictureModel
    let revision: Int64
    let height: CGFloat
    var zoom: CGFloat = 1
    @ScaledMetric(relativeTo: .body) private var answer: CGFloat = 44
    @ScaledMetric(relativeTo: .body) private var label: CGFloat = 18
    @ScaledMetric(relativeTo: .body) private var small: CGFloat = 16
    @Environment(\.look) private var look

    var body: some View {
        GeometryReader { space in
            ScrollView([.horizontal, .vertical]) {
                Canvas { context, _ in
                    context.scaleBy(x: zoom, y: zoom)
                    for stroke in model.strokes ?? [] { draw(stroke, in: &context) }
                }
                .frame(width: space.size.width * zoom, height: drawn * zoom)
                .onTapGesture { place in
                    let target = model.target(x: Float(place.x / zoom), y: Float(place.y / zoom))
                    if let target { app.go(target.place) }
                }
            }
            .task(id: Wanted(revision: revision, frame: frame(space.size.width))) {
                await model.show(revision, in: frame(space.size.width))
            }
        }
        .frame(height: drawn)
        .accessibilityElement(children: .ignore)
        .accessibilityLabel(model.drawing?.spoken ?? "")
    }

    /// What the drawing takes of the height that it may have; nothing where there is none.
    private var drawn: CGFloat { CGFloat(model.drawing?.heightDp ?? 0) }

    private struct Wanted: Equatable {
        let revision: Int64
        let frame: LapwrightCore.Frame
    }

    private func frame(_ width: CGFloat) -> LapwrightCore.Frame {
        LapwrightCore.Frame(
            widthDp: Float(width),
            heightDp: Float(height),
            answerDp: Float(answer),
            labelDp: Float(label),
            smallDp: Float(small),
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
        let name = lettering.weight == .bold ? "DejaVuSansCondensed-Bold" : "DejaVuSansCondensed"
        let font = Font.custom(name, fixedSize: CGFloat(lettering.em))
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
