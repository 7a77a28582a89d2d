/// A point of a drawing: right of its left edge and down from its top edge.
public struct Spot: Equatable, Sendable {
    public let x: Float
    public let y: Float

    public init(x: Float, y: Float) {
        (self.x, self.y) = (x, y)
    }
}

/// What a stroke is, and so its colour in a theme. The numbers are those of the bytes.
public enum Role: UInt8, Sendable, CaseIterable {
    case ground, board, ink, chalk, cut, warning, done, taped, planned, ruled
}

/// How a line is broken.
public enum Pattern: UInt8, Sendable {
    case solid, dashed, dotted

    /// What is drawn and what is left out, in turn; empty for an unbroken line.
    public var lengths: [Float] {
        switch self {
        case .solid: []
        case .dashed: [8, 5]
        case .dotted: [2, 3]
        }
    }
}

/// How heavy a text is.
public enum Weight: UInt8, Sendable {
    case regular, bold
}

/// Which end of a text its point marks.
public enum Anchor: UInt8, Sendable {
    case start, middle, end
}

/// One stroke of a drawing, drawn over those before it.
public enum Stroke: Equatable, Sendable {
    case fill(role: Role, points: [Spot])
    case line(role: Role, pattern: Pattern, closed: Bool, thickness: Float, points: [Spot])
    case hatch(role: Role, spacing: Float, thickness: Float, points: [Spot])
    case text(role: Role, Lettering)

    public struct Lettering: Equatable, Sendable {
        public let weight: Weight
        public let anchor: Anchor
        public let at: Spot
        public let em: Float
        /// Degrees counter-clockwise about the point.
        public let turn: Float
        /// How wide the core laid it out.
        public let width: Float
        public let text: String
    }
}

/// The lines of a hatch, to be clipped to its polygon: hatches side by side run through.
public func hatching(spacing: Float, of points: [Spot]) -> [(from: Spot, to: Spot)] {
    let sums = points.map { $0.x + $0.y }
    guard let least = sums.min(), let most = sums.max(), spacing > 0 else { return [] }
    let (bottom, top) = (points.map(\.y).max() ?? 0, points.map(\.y).min() ?? 0)
    let step = spacing * Float(2).squareRoot()
    let (first, last) = (Int((least / step).rounded(.up)), Int((most / step).rounded(.down)))
    guard first <= last else { return [] }
    return (first...last).map { n in
        let sum = Float(n) * step
        return (Spot(x: sum - bottom, y: bottom), Spot(x: sum - top, y: top))
    }
}
