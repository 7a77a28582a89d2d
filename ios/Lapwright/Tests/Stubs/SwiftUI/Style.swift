public struct Color: Equatable, Sendable {
    public init(red: Double, green: Double, blue: Double) {}
    public func opacity(_ opacity: Double) -> Color { self }
}

extension Color: Primitive {}

public struct Font: Equatable, Sendable {
    public enum TextStyle: Sendable { case body, largeTitle, headline }

    public static func custom(_ name: String, size: CGFloat, relativeTo style: TextStyle) -> Font { Font() }
    public static func custom(_ name: String, fixedSize: CGFloat) -> Font { Font() }
}

public enum ColorScheme: Sendable { case light, dark }

public struct PlainButtonStyle: Sendable {}

public protocol PrimitiveButtonStyle {}

extension PlainButtonStyle: PrimitiveButtonStyle {}

extension PrimitiveButtonStyle where Self == PlainButtonStyle {
    public static var plain: PlainButtonStyle { PlainButtonStyle() }
}

public struct Edge: Sendable {
    public struct Set: OptionSet, Sendable {
        public let rawValue: Int
        public init(rawValue: Int) { self.rawValue = rawValue }
        public static let top = Set(rawValue: 1)
        public static let bottom = Set(rawValue: 2)
    }
}

public struct AccessibilityTraits: Sendable {
    public static let isHeader = AccessibilityTraits()
}

public enum AccessibilityChildBehavior: Sendable { case ignore, combine, contain }
