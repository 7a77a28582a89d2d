@MainActor public protocol Gesture<Value> {
    associatedtype Value
}

extension Gesture {
    public func onChanged(_ action: @escaping (Value) -> Void) -> some Gesture<Value> { FollowedGesture<Value>() }
    public func onEnded(_ action: @escaping (Value) -> Void) -> some Gesture<Value> { FollowedGesture<Value>() }
}

struct FollowedGesture<Value>: Gesture {}

public struct MagnifyGesture: Gesture {
    public struct Value {
        public var magnification: CGFloat { 1 }
        public var startLocation: CGPoint { CGPoint(x: 0, y: 0) }
    }
    public init() {}
}

public struct DragGesture: Gesture {
    public struct Value {
        public var translation: CGSize { CGSize(width: 0, height: 0) }
    }
    public init() {}
}

public struct GestureMask: OptionSet, Sendable {
    public let rawValue: Int
    public init(rawValue: Int) { self.rawValue = rawValue }
    public static let gesture = GestureMask(rawValue: 1)
    public static let subviews = GestureMask(rawValue: 2)
    public static let all: GestureMask = [.gesture, .subviews]
}

extension View {
    public func gesture<Movement: Gesture>(_ gesture: Movement, including mask: GestureMask = .all) -> some View {
        ModifiedView()
    }
}
