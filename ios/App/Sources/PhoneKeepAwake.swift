import LapwrightModels
import UIKit

/// Keeps the display lit, for ten minutes after the last tap at most.
final class PhoneKeepAwake: KeepAwake {
    private var out: Task<Void, Never>?

    func keep() {
        UIApplication.shared.isIdleTimerDisabled = true
        out?.cancel()
        out = Task {
            try? await Task.sleep(for: .seconds(600))
            if !Task.isCancelled { release() }
        }
    }

    func release() {
        out?.cancel()
        UIApplication.shared.isIdleTimerDisabled = false
    }
}
