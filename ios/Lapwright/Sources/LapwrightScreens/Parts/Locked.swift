import LapwrightModels
import SwiftUI

/// What unlocks the glass: a finger that rests on it for a second, which a drop that runs down does not. A screen reader's
/// action is no drop and does it at once.
struct HoldToUnlock: View {
    let app: AppModel
    @Environment(\.look) private var look

    var body: some View {
        Text(app.words.locked).font(.small)
        HStack(spacing: 8) {
            Icon(.lock, look.inks.ground)
            Text(app.words.unlock).font(.large).foregroundStyle(look.inks.ground).multilineTextAlignment(.center)
        }
        .padding(.horizontal, 12)
        .padding(.vertical, 8)
        .frame(maxWidth: .infinity, minHeight: Look.target)
        .background(look.inks.chalk)
        .contentShape(.rect)
        .onLongPressGesture(minimumDuration: 1) { app.lock(false) }
        .accessibilityElement(children: .ignore)
        .accessibilityLabel(app.words.unlock)
        .accessibilityAddTraits(.isButton)
        .accessibilityAction { app.lock(false) }
    }
}
