import LapwrightCore
import Observation

/// What two phones answered differently, until somebody has looked at it.
@MainActor @Observable
public final class DifferencesModel: ScreenModel {
    public private(set) var view: DifferencesView
    public let app: AppModel

    init(_ view: DifferencesView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .differencesKind(let view) = view else { return false }
        self.view = view
        return true
    }

    /// All that is shown was looked at.
    @discardableResult public func lookedAt() -> Task<Void, Never> {
        app.act(.differencesKind(action: .lookedAt(differences: view.differences.map(\.difference))))
    }

    /// Goes to where it is asked.
    @discardableResult public func open(_ line: DifferenceLine) -> Task<Void, Never> { app.go(line.place) }
}
