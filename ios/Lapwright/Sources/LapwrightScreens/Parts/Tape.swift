import LapwrightModels
import SwiftUI

import struct LapwrightCore.TapeMark

/// One inch of tape, or one centimeter, drawn large: a tap takes the nearest mark.
struct Tape: View {
    let app: AppModel
    let name: String
    @ScaledMetric(relativeTo: .body) private var em: CGFloat = 16
    @Environment(\.look) private var look

    private var marks: [TapeMark] { app.frame.tape }

    var body: some View {
        let tapped = marks.tapped(in: app.entry.text)
        GeometryReader { space in
            Canvas { context, size in draw(tapped, in: context, size) }
                .contentShape(.rect)
                .onTapGesture { place in
                    let at = 1000 * Double(place.x) / Double(space.size.width)
                    if let mark = marks.nearest(to: at) { app.entry.tap(mark) }
                }
        }
        .frame(height: Look.target + 8)
        .accessibilityElement(children: .ignore)
        .accessibilityLabel(name)
        .accessibilityActions {
            ForEach(marks, id: \.at) { mark in Button(mark.spoken) { app.entry.tap(mark) } }
        }
    }

    private func draw(_ tapped: TapeMark?, in context: GraphicsContext, _ size: CGSize) {
        context.fill(Path(CGRect(x: 0, y: 0, width: size.width, height: size.height)), with: .color(look.inks.board))
        line(from: CGPoint(x: 0, y: 0), to: CGPoint(x: size.width, y: 0), look.inks.ink, 2, in: context)
        for mark in marks {
            let (x, own) = (across(mark, size), mark == tapped)
            let long = own ? size.height : size.height * 0.55 * CGFloat(mark.long) / 1000
            let ink = own ? look.inks.chalk : look.inks.ink
            line(from: CGPoint(x: x, y: 0), to: CGPoint(x: x, y: long), ink, own ? 5 : 2, in: context)
        }
        // Only the marks that a tape numbers, and the one that was tapped, where they have room.
        let others = marks.filter { $0.long >= 750 && $0 != tapped }
        var taken: [ClosedRange<CGFloat>] = []
        for mark in (tapped.map { [$0] } ?? []) + others {
            let own = mark == tapped
            let font = Font.custom(Look.boldFace, fixedSize: min(em, 32))
            let ink = own ? look.inks.ground : look.inks.ink
            let text = context.resolve(Text(mark.text).font(font).foregroundStyle(ink))
            let room = text.measure(in: CGSize(width: 10_000, height: 10_000))
            let left = max(4, min(across(mark, size) - room.width / 2, size.width - room.width - 4))
            if taken.contains(where: { left - 8 < $0.upperBound && $0.lowerBound < left + room.width + 8 }) { continue }
            taken.append(left...(left + room.width))
            let top = size.height - room.height - 2
            if own {
                let plate = CGRect(x: left - 6, y: top, width: room.width + 12, height: room.height)
                context.fill(Path(plate), with: .color(look.inks.chalk))
            }
            context.draw(text, at: CGPoint(x: left, y: top), anchor: .topLeading)
        }
    }

    private func across(_ mark: TapeMark, _ size: CGSize) -> CGFloat { size.width * CGFloat(mark.at) / 1000 }

    private func line(from: CGPoint, to: CGPoint, _ ink: Color, _ width: CGFloat, in context: GraphicsContext) {
        var path = Path()
        path.move(to: from)
        path.addLine(to: to)
        context.stroke(path, with: .color(ink), lineWidth: width)
    }
}
