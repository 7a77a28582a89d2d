@MainActor public protocol App {
    associatedtype Body: Scene
    @SceneBuilder var body: Body { get }
    init()
}

extension App {
    public static func main() {}
}

@MainActor public protocol Scene {}

@resultBuilder public enum SceneBuilder {
    public static func buildBlock<Content: Scene>(_ content: Content) -> Content { content }
}

public enum ScenePhase {
    case background, inactive, active
}

extension EnvironmentValues {
    public var scenePhase: ScenePhase { .active }
}

public struct WindowGroup<Content: View>: Scene {
    public init(@ViewBuilder content: () -> Content) {}
}
