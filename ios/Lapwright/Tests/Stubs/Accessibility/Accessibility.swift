// The names of Accessibility that the screens use, with the shapes that Apple documents; see Stubs/SwiftUI.

public enum AccessibilityNotification {
    public struct Announcement {
        public init(_ text: String) {}
        public func post() {}
    }
}
