// The names of UniformTypeIdentifiers that the app uses, with the shapes that Apple documents; see Stubs/SwiftUI.

public struct UTType: Sendable {
    /// Anything that is a file.
    public static let item = UTType()
}
