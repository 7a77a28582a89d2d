// The names of UIKit that the app's services use, with the shapes that Apple documents; see Stubs/SwiftUI.
@_exported import Foundation
import UniformTypeIdentifiers

@MainActor open class UIView {}

@MainActor open class UIWindow {
    public var isKeyWindow: Bool { false }
    public var rootViewController: UIViewController? { nil }
}

@MainActor open class UIScene: Hashable {
    nonisolated public static func == (one: UIScene, other: UIScene) -> Bool { one === other }
    nonisolated public func hash(into hasher: inout Hasher) {}
}

@MainActor open class UIWindowScene: UIScene {
    public var windows: [UIWindow] { [] }
}

@MainActor open class UIApplication {
    public static var shared: UIApplication { fatalError("no phone") }
    public var connectedScenes: Set<UIScene> { [] }
    public var isIdleTimerDisabled = false
    public func beginBackgroundTask(
        expirationHandler: (@MainActor @Sendable () -> Void)? = nil
    ) -> UIBackgroundTaskIdentifier { UIBackgroundTaskIdentifier() }
    public func endBackgroundTask(_ task: UIBackgroundTaskIdentifier) {}
}

public struct UIBackgroundTaskIdentifier: Sendable {}

@MainActor open class UIPopoverPresentationController {
    public var sourceView: UIView?
}

@MainActor open class UIViewController {
    public init() {}
    public var view: UIView! { nil }
    public var presentedViewController: UIViewController? { nil }
    public var popoverPresentationController: UIPopoverPresentationController? { nil }
    public func present(_ other: UIViewController, animated: Bool, completion: (() -> Void)? = nil) {}
    public func dismiss(animated: Bool, completion: (() -> Void)? = nil) {}
}

public final class UIActivity {
    public struct ActivityType: Hashable, Sendable {}
}

@MainActor public protocol UIActivityItemSource: NSObjectProtocol {
    func activityViewControllerPlaceholderItem(_ sheet: UIActivityViewController) -> Any
    func activityViewController(
        _ sheet: UIActivityViewController,
        itemForActivityType type: UIActivity.ActivityType?
    ) -> Any?
    func activityViewController(
        _ sheet: UIActivityViewController,
        subjectForActivityType type: UIActivity.ActivityType?
    ) -> String
}

@MainActor open class UIActivityViewController: UIViewController {
    public init(activityItems: [Any], applicationActivities: [UIView]?) {}
}

@MainActor public protocol UIDocumentPickerDelegate: NSObjectProtocol {
    func documentPicker(_ picker: UIDocumentPickerViewController, didPickDocumentsAt urls: [URL])
    func documentPickerWasCancelled(_ picker: UIDocumentPickerViewController)
}

@MainActor open class UIDocumentPickerViewController: UIViewController {
    public init(forOpeningContentTypes types: [UTType], asCopy: Bool) {}
    public weak var delegate: (any UIDocumentPickerDelegate)?
}

public final class UIImage {
    public func jpegData(compressionQuality: CGFloat) -> Data? { nil }
}

@MainActor public protocol UINavigationControllerDelegate: NSObjectProtocol {}

@MainActor public protocol UIImagePickerControllerDelegate: NSObjectProtocol {
    func imagePickerController(
        _ picker: UIImagePickerController,
        didFinishPickingMediaWithInfo info: [UIImagePickerController.InfoKey: Any]
    )
    func imagePickerControllerDidCancel(_ picker: UIImagePickerController)
}

@MainActor open class UIImagePickerController: UIViewController {
    public enum SourceType: Sendable { case camera }

    public struct InfoKey: Hashable, Sendable {
        public static let originalImage = InfoKey()
    }

    public static func isSourceTypeAvailable(_ type: SourceType) -> Bool { false }
    public var sourceType = SourceType.camera
    public weak var delegate: (any UIImagePickerControllerDelegate & UINavigationControllerDelegate)?
}

@MainActor public final class UINotificationFeedbackGenerator {
    public enum FeedbackType: Sendable { case success, warning, error }

    public init() {}
    public func notificationOccurred(_ type: FeedbackType) {}
}
