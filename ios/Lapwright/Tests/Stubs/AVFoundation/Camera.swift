// The names of AVFoundation that the app's camera uses, with the shapes that Apple documents; see Stubs/SwiftUI.

public struct AVMediaType: Sendable {
    public static let video = AVMediaType()
}

public enum AVAuthorizationStatus: Sendable { case notDetermined, restricted, denied, authorized }

public final class AVCaptureDevice {
    public class func authorizationStatus(for type: AVMediaType) -> AVAuthorizationStatus { .notDetermined }
    public class func requestAccess(for type: AVMediaType) async -> Bool { false }
}
