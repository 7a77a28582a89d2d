import Observation

@propertyWrapper public struct State<Value> {
    public var wrappedValue: Value {
        get { initial }
        nonmutating set {}
    }
    private let initial: Value
    public init(wrappedValue: Value) { initial = wrappedValue }
}

@propertyWrapper public struct Binding<Value> {
    public var wrappedValue: Value {
        get { fatalError("kept by nobody") }
        nonmutating set {}
    }
    public init(
        get: @escaping @isolated(any) @Sendable () -> Value,
        set: @escaping @isolated(any) @Sendable (Value) -> Void
    ) {}
}

@propertyWrapper public struct Bindable<Value: AnyObject & Observable> {
    public var wrappedValue: Value
    public init(wrappedValue: Value) { self.wrappedValue = wrappedValue }
}

public protocol EnvironmentKey {
    associatedtype Value
    static var defaultValue: Value { get }
}

public struct EnvironmentValues {
    public init() {}
    public subscript<Key: EnvironmentKey>(key: Key.Type) -> Key.Value {
        get { Key.defaultValue }
        set {}
    }
}

@propertyWrapper public struct Environment<Value> {
    public let wrappedValue: Value
    public init(_ keyPath: KeyPath<EnvironmentValues, Value>) { wrappedValue = EnvironmentValues()[keyPath: keyPath] }
}

@propertyWrapper public struct ScaledMetric<Value: BinaryFloatingPoint> {
    public let wrappedValue: Value
    public init(wrappedValue: Value, relativeTo style: Font.TextStyle) { self.wrappedValue = wrappedValue }
}
