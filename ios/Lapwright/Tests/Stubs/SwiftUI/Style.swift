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
        public static let horizontal = Set(rawValue: 4)
        public static let vertical = Set(rawValue: 8)
        public static let leading = Set(rawValue: 16)
    }
}

public struct AccessibilityTraits: OptionSet, Sendable {
    public let rawValue: Int
    public init(rawValue: Int) { self.rawValue = rawValue }
    public static let isHeader = AccessibilityTraits(rawValue: 1)
    public static let isButton = AccessibilityTraits(rawValue: 2)
    public static let isSelected = AccessibilityTraits(rawValue: 4)
    public static let isToggle = AccessibilityTraits(rawValue: 8)
}

public enum AccessibilityChildBehavior: Sendable { case ignore, combine, contain }

public enum TextAlignment: Sendable { case leading, center, trailing }

public struct SubmitLabel: Sendable {
    public static var done: SubmitLabel { SubmitLabel() }
}
