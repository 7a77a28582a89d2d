import LapwrightModels
import UIKit

/// Felt through a glove.
final class PhoneHaptics: Haptics {
    private let generator = UINotificationFeedbackGenerator()

    func taken() {
        generator.notificationOccurred(.success)
    }

    func refused() {
        generator.notificationOccurred(.error)
    }
}
