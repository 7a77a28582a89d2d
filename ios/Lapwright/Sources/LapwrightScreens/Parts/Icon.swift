import SwiftUI

/// Glyphs that are drawn with a few strokes of a pencil; each stands in a control that says its name.
enum Glyph {
    case back, doneList, rubOut, close, remove, speak, listen, gear, tick, stop, warning, know, camera, lock, closer,
        farther, flip
    case undo, unfold, fold, share, space

    /// The lines, each through points on a square of 24.
    fileprivate var lines: [[(Int, Int)]] {
        switch self {
        case .back: [[(21, 12), (4, 12)], [(11, 5), (4, 12), (11, 19)]]
        // A clock: steps have ticks of their own.
        case .doneList: [[(12, 6), (12, 12), (16, 14)]]
        case .remove:
            [[(4, 7), (20, 7)], [(9, 7), (9, 4), (15, 4), (15, 7)], [(6, 7), (7, 21), (17, 21), (18, 7)]]
        case .listen:
            [
                [(9, 5), (9, 12), (12, 14), (15, 12), (15, 5), (12, 3), (9, 5)],
                [(5, 11), (7, 16), (12, 18), (17, 16), (19, 11)], [(12, 18), (12, 22)],
            ]
        case .stop:
            [
                [(8, 2), (16, 2), (22, 8), (22, 16), (16, 22), (8, 22), (2, 16), (2, 8), (8, 2)],
                [(12, 7), (12, 13)], [(12, 17), (12, 17)],
            ]
        case .know: [[(12, 11), (12, 17)], [(12, 7), (12, 7)]]
        case .undo:
            [[(8, 4), (3, 9), (8, 14)], [(3, 9), (15, 9), (20, 13), (20, 17), (16, 20), (10, 20)]]
        case .unfold: [[(5, 9), (12, 16), (19, 9)]]
        case .fold: [[(5, 15), (12, 8), (19, 15)]]
        case .share:
            [[(12, 15), (12, 3)], [(7, 8), (12, 3), (17, 8)], [(5, 12), (5, 21), (19, 21), (19, 12)]]
        case .rubOut:
            [[(2, 12), (8, 5), (22, 5), (22, 19), (8, 19), (2, 12)], [(11, 9), (17, 15)], [(17, 9), (11, 15)]]
        case .close: [[(5, 5), (19, 19)], [(19, 5), (5, 19)]]
        case .speak:
            [
                [(3, 9), (7, 9), (12, 4), (12, 20), (7, 15), (3, 15), (3, 9)],
                [(16, 9), (17, 12), (16, 15)], [(19, 6), (21, 12), (19, 18)],
            ]
        case .gear: [6, 12, 18].map { y in [(2, y), (22, y)] }
        case .tick: [[(4, 13), (10, 19), (20, 5)]]
        case .warning: [[(12, 3), (22, 21), (2, 21), (12, 3)], [(12, 10), (12, 14)], [(12, 18), (12, 18)]]
        case .camera: [[(2, 7), (7, 7), (9, 4), (15, 4), (17, 7), (22, 7), (22, 20), (2, 20), (2, 7)]]
        case .lock:
            [[(5, 11), (19, 11), (19, 21), (5, 21), (5, 11)], [(8, 11), (8, 6), (10, 3), (14, 3), (16, 6), (16, 11)]]
        case .closer: [[(4, 12), (20, 12)], [(12, 4), (12, 20)]]
        case .farther: [[(4, 12), (20, 12)]]
        case .flip: [[(3, 8), (20, 8)], [(15, 3), (20, 8)], [(21, 16), (4, 16)], [(9, 21), (4, 16)]]
        case .space: [[(3, 14), (3, 19), (21, 19), (21, 14)]]
        }
    }

    /// The rings, each by its middle and its radius.
    fileprivate var rings: [(x: Int, y: Int, radius: Int)] {
        switch self {
        case .gear: [(8, 6, 2), (16, 12, 2), (10, 18, 2)]
        case .camera: [(12, 13, 4)]
        case .doneList, .know: [(12, 12, 9)]
        default: []
        }
    }
}

/// A glyph in an ink.
struct Icon: View {
    let glyph: Glyph
    let color: Color
    let size: CGFloat

    init(_ glyph: Glyph, _ color: Color, size: CGFloat = 28) {
        (self.glyph, self.color, self.size) = (glyph, color, size)
    }

    var body: some View {
        Canvas { context, size in
            let part = size.width / 24
            var path = Path()
            for line in glyph.lines {
                for (n, (x, y)) in line.enumerated() {
                    let at = CGPoint(x: CGFloat(x) * part, y: CGFloat(y) * part)
                    if n == 0 { path.move(to: at) } else { path.addLine(to: at) }
                }
            }
            for ring in glyph.rings {
                let (left, top) = (CGFloat(ring.x - ring.radius) * part, CGFloat(ring.y - ring.radius) * part)
                let across = CGFloat(2 * ring.radius) * part
                path.addEllipse(in: CGRect(x: left, y: top, width: across, height: across))
            }
            let pencil = StrokeStyle(lineWidth: 2.6, lineCap: .round, lineJoin: .round)
            context.stroke(path, with: .color(color), style: pencil)
        }
        .frame(width: size, height: size)
        .accessibilityHidden(true)
    }
}
