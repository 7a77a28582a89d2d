public struct Canvas<Symbols: View>: Primitive {}

extension Canvas where Symbols == EmptyView {
    public init(renderer: @escaping (inout GraphicsContext, CGSize) -> Void) {}
}

public struct GraphicsContext {
    public struct Shading {
        public static func color(_ color: Color) -> Shading { Shading() }
    }

    public struct ResolvedText {
        public func measure(in size: CGSize) -> CGSize { size }
        public func firstBaseline(in size: CGSize) -> CGFloat { 0 }
    }

    public func fill(_ path: Path, with shading: Shading) {}
    public func stroke(_ path: Path, with shading: Shading, style: StrokeStyle) {}
    public func stroke(_ path: Path, with shading: Shading, lineWidth: CGFloat = 1) {}
    public mutating func clip(to path: Path) {}
    public mutating func translateBy(x: CGFloat, y: CGFloat) {}
    public mutating func scaleBy(x: CGFloat, y: CGFloat) {}
    public mutating func rotate(by angle: Angle) {}
    public func resolve(_ text: Text) -> ResolvedText { ResolvedText() }
    public func draw(_ text: ResolvedText, at point: CGPoint, anchor: UnitPoint = .center) {}
}

public struct UnitPoint: Sendable {
    public static let center = UnitPoint()
    public static let topLeading = UnitPoint()
}

public struct Angle: Sendable {
    public static func degrees(_ degrees: Double) -> Angle { Angle() }
}

public struct Path {
    public init() {}
    public init(_ rect: CGRect) {}
    public mutating func addEllipse(in rect: CGRect) {}
    public mutating func move(to point: CGPoint) {}
    public mutating func addLine(to point: CGPoint) {}
    public mutating func closeSubpath() {}
}

public struct StrokeStyle {
    public enum Cap { case butt, round }
    public enum Join { case miter, round }
    public init(lineWidth: CGFloat = 1, lineCap: Cap = .butt, lineJoin: Join = .miter, dash: [CGFloat] = []) {}
}

public protocol Shape: View, Sendable {}

extension Shape {
    public func stroke(_ color: Color, lineWidth: CGFloat = 1) -> some View { ModifiedView() }
}

public struct Rectangle: Shape, Primitive {
    nonisolated public init() {}
}

public struct RoundedRectangle: Shape, Primitive {
    nonisolated public init(cornerRadius: CGFloat) {}
}

extension Shape where Self == Rectangle {
    nonisolated public static var rect: Rectangle { Rectangle() }
}
