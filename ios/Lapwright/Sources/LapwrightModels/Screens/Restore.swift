import LapwrightCore
import Observation

/// What going back to a copy would do, before it is done.
@MainActor @Observable
public final class RestoreModel: ScreenModel {
    public private(set) var view: RestoreView
    public let app: AppModel

    init(_ view: RestoreView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .restoreKind(let view) = view, view.copy == self.view.copy else { return false }
        self.view = view
        return true
    }

    @discardableResult public func restore() -> Task<Void, Never> {
        app.act(.restoreKind(action: .restore(copy: view.copy)))
    }

    @discardableResult public func cancel() -> Task<Void, Never> { app.go(.backups) }
}
