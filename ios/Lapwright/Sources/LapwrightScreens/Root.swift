import LapwrightModels
import SwiftUI

/// The screen that the app is on, in the look that its settings ask for.
public struct Root: View {
    private let app: AppModel

    public init(app: AppModel) {
        self.app = app
    }

    private var look: Look {
        let remembered = app.remembered
        return Look(
            inks: remembered.theme == "dark" ? .indoors : .sun,
            leftHanded: remembered.hand == "left",
            gloves: remembered.gloves
        )
    }

    public var body: some View {
        ZStack {
            look.inks.ground.ignoresSafeArea()
            if let screen = app.screen { shown(screen) }
            if app.locked { Locked(app: app) }
        }
        .environment(\.look, look)
        .foregroundStyle(look.inks.ink)
        .tint(look.inks.chalk)
        .preferredColorScheme(app.remembered.theme == "dark" ? .dark : .light)
    }

    @ViewBuilder private func shown(_ screen: Screen) -> some View {
        switch screen {
        case .jobs(let model): JobsScreen(model: model)
        case .house(let model): HouseScreen(model: model)
        case .wall(let model): WallScreen(model: model)
        case .measure(let model): MeasureScreen(model: model)
        case .board(let model): BoardScreen(model: model)
        case .penetration(let model): PenetrationScreen(model: model)
        case .pole(let model): PoleScreen(model: model)
        case .rules(let model): RulesScreen(model: model)
        case .settings(let model): SettingsScreen(model: model)
        case .doneList(let model): DoneListScreen(model: model)
        case .new(let model): NewScreen(model: model)
        case .sawList(let model): SawListScreen(model: model)
        case .order(let model): OrderScreen(model: model)
        }
    }
}

/// Over a locked glass: only a long press opens it.
struct Locked: View {
    let app: AppModel
    @Environment(\.look) private var look

    var body: some View {
        ZStack(alignment: .bottom) {
            look.inks.ground.opacity(0.01).ignoresSafeArea()
            Text(app.words.unlock)
                .font(.large)
                .frame(maxWidth: .infinity, minHeight: look.target)
                .background(look.inks.board)
        }
        .onLongPressGesture(minimumDuration: 1) { app.locked = false }
        .accessibilityElement(children: .combine)
        .accessibilityLabel(app.words.unlock)
        .accessibilityAction { app.locked = false }
    }
}
