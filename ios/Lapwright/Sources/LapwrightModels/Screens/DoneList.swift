import LapwrightCore
import Observation

/// What happened, newest first.
@MainActor @Observable
public final class DoneListModel: ScreenModel {
    public private(set) var view: DoneListView
    public let app: AppModel

    init(_ view: DoneListView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .doneListKind(let view) = view, view.job == self.view.job else { return false }
        self.view = view
        return true
    }

    /// Shows the older lines that the view points to.
    @discardableResult public func older() -> Task<Void, Never> {
        guard let from = view.older else { return Task {} }
        return app.act(.doneListKind(action: .older(job: view.job, from: from)))
    }

    /// Shows what depends on an answer, before it is taken back.
    @discardableResult public func look(at line: DoneLine) -> Task<Void, Never> {
        app.act(.doneListKind(action: .lookAt(job: view.job, group: line.group)))
    }

    /// Takes an answer back and opens its question again.
    @discardableResult public func undo(_ line: DoneLine) -> Task<Void, Never> {
        app.undo(line.group, job: view.job)
    }
}
