import LapwrightCore

/// How far a drawing was drawn nearer, and moved: transforms alone, the core is not asked.
public struct Lens: Equatable, Sendable {
    /// How many times its own size it is drawn.
    public private(set) var scale: Float = 1
    /// How far its left and top edge was moved.
    public private(set) var shift = Spot(x: 0, y: 0)

    public init() {}

    /// Draws it nearer, or farther, about a point of the glass that stays, and moves it; at its own size it lies as it was.
    public mutating func draw(nearer by: Float, about at: Spot, moved: Spot = Spot(x: 0, y: 0)) {
        let next = min(max(scale * by, 1), 12)
        let grown = next / scale
        scale = next
        shift =
            next == 1
            ? Spot(x: 0, y: 0)
            : Spot(x: at.x - (at.x - shift.x) * grown + moved.x, y: at.y - (at.y - shift.y) * grown + moved.y)
    }

    /// How many times nearer a target must come for a finger to hit it and no other; once it is large enough it is not moved.
    public func nearer(for target: Target) -> Float {
        let side = min(target.right - target.left, target.bottom - target.top) * scale
        return side < 40 ? 64 / max(side, 1) : 1
    }

    /// The point of the drawing under a point of the glass.
    public func under(_ at: Spot) -> Spot {
        Spot(x: (at.x - shift.x) / scale, y: (at.y - shift.y) / scale)
    }
}
