import LapwrightModels
import SwiftUI

/// The screen that the app is on, in the look that its settings ask for.
public struct Root: View {
    private let app: AppModel
    @ScaledMetric(relativeTo: .body) private var scale: CGFloat = 1

    public init(app: AppModel) {
        self.app = app
    }

    private var look: Look {
        let remembered = app.remembered
        return Look(
            inks: remembered.theme == "dark" ? .indoors : .sun,
            leftHanded: remembered.hand == "left",
            gloves: remembered.gloves,
            scale: scale
        )
    }

    public var body: some View {
        ZStack {
            look.inks.ground.ignoresSafeArea()
            if app.looked != nil {
                LargePhoto(app)
            } else if let screen = app.screen {
                shown(screen).id(ObjectIdentifier(screen.model))
            }
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
        case .backups(let model): BackupsScreen(model: model)
        case .restore(let model): RestoreScreen(model: model)
        case .handOver(let model): HandOverScreen(model: model)
        case .takeIn(let model): TakeInScreen(model: model)
        case .differences(let model): DifferencesScreen(model: model)
        }
    }
}
