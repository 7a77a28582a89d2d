public struct Text: Primitive {
    public init<S: StringProtocol>(_ content: S) {}
    public func font(_ font: Font?) -> Text { self }
    public func foregroundStyle(_ color: Color) -> Text { self }
    public static func + (one: Text, other: Text) -> Text { one }
}

public struct Image: Primitive {
    public init(systemName: String) {}
    public func resizable() -> Image { self }
}

public struct AsyncImage<Content: View>: Primitive {
    public init<Shown: View, Empty: View>(
        url: URL?,
        @ViewBuilder content: @escaping (Image) -> Shown,
        @ViewBuilder placeholder: @escaping () -> Empty
    ) where Content == ConditionalContent<Shown, Empty> {}
}

public struct Spacer: Primitive {
    public init() {}
}

public struct VStack<Content: View>: Primitive {
    public init(
        alignment: HorizontalAlignment = .center,
        spacing: CGFloat? = nil,
        @ViewBuilder content: () -> Content
    ) {}
}

public struct HStack<Content: View>: Primitive {
    public init(alignment: VerticalAlignment = .center, spacing: CGFloat? = nil, @ViewBuilder content: () -> Content) {}
}

public struct ZStack<Content: View>: Primitive {
    public init(alignment: Alignment = .center, @ViewBuilder content: () -> Content) {}
}

public struct ScrollView<Content: View>: Primitive {
    public init(_ axes: Axis.Set = .vertical, @ViewBuilder content: () -> Content) {}
}

public enum Axis {
    public struct Set: OptionSet, Sendable {
        public let rawValue: Int
        public init(rawValue: Int) { self.rawValue = rawValue }
        public static let horizontal = Set(rawValue: 1)
        public static let vertical = Set(rawValue: 2)
    }
}

public struct ForEach<Data: RandomAccessCollection, ID: Hashable, Content: View>: Primitive {
    public init(
        _ data: Data,
        id: KeyPath<Data.Element, ID>,
        @ViewBuilder content: @escaping (Data.Element) -> Content
    ) {}
}

public struct Button<Label: View>: Primitive {
    public init(action: @escaping @MainActor () -> Void, @ViewBuilder label: () -> Label) {}
}

extension Button where Label == Text {
    public init<S: StringProtocol>(_ title: S, action: @escaping @MainActor () -> Void) {}
}

public struct TextField<Label: View>: Primitive {}

extension TextField where Label == Text {
    public init<S: StringProtocol>(_ title: S, text: Binding<String>) {}
}

public struct GeometryProxy {
    public var size: CGSize { CGSize(width: 0, height: 0) }
}

public struct GeometryReader<Content: View>: Primitive {
    public init(@ViewBuilder content: @escaping (GeometryProxy) -> Content) {}
}

public enum HorizontalAlignment { case leading, center, trailing }

public enum VerticalAlignment { case top, center, bottom, firstTextBaseline }

public enum Alignment { case leading, center, trailing, top, bottom, topLeading }
