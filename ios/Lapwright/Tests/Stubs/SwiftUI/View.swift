// The names of SwiftUI that the screens use, with the shapes that Apple documents, so that a compiler on Linux finds what
// is wrong in our own sources. Nothing is drawn, and nothing is proved about Apple's own.
@_exported import Foundation

// A view: its body, or none of its own.
@MainActor public protocol View {
    associatedtype Body: View
    @ViewBuilder var body: Body { get }
}

extension Never: View {
    public var body: Never { fatalError("drawn by nobody") }
}

/// A view that is made of nothing here.
public protocol Primitive: View where Body == Never {}

extension Primitive {
    public var body: Never { fatalError("drawn by nobody") }
}

public struct EmptyView: Primitive {
    nonisolated public init() {}
}

public struct TupleView<each Content: View>: Primitive {
    nonisolated public init(_ content: repeat each Content) {}
}

public struct ConditionalContent<First: View, Second: View>: Primitive {
    fileprivate nonisolated init(_: Void = ()) {}
}

extension Optional: View where Wrapped: View {
    public var body: Never { fatalError("drawn by nobody") }
}

public struct ModifiedView: Primitive {}

@resultBuilder public enum ViewBuilder {
    public static func buildBlock() -> EmptyView { EmptyView() }

    public static func buildExpression<Content: View>(_ content: Content) -> Content { content }

    public static func buildBlock<Content: View>(_ content: Content) -> Content { content }

    public static func buildBlock<each Content: View>(_ content: repeat each Content) -> TupleView<repeat each Content>
    {
        TupleView(repeat each content)
    }

    public static func buildIf<Content: View>(_ content: Content?) -> Content? { content }

    public static func buildEither<First: View, Second: View>(first: First) -> ConditionalContent<First, Second> {
        ConditionalContent()
    }

    public static func buildEither<First: View, Second: View>(second: Second) -> ConditionalContent<First, Second> {
        ConditionalContent()
    }
}
