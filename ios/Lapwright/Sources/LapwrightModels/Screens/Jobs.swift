import LapwrightCore
import Observation

/// Which house.
@MainActor @Observable
public final class JobsModel: ScreenModel {
    public private(set) var view: JobsView
    public let app: AppModel

    init(_ view: JobsView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .jobsKind(let view) = view else { return false }
        self.view = view
        return true
    }

    @discardableResult public func create() -> Task<Void, Never> {
        app.go(.new(what: .house, parent: ""))
    }

    @discardableResult public func notchNow() -> Task<Void, Never> {
        app.go(.new(what: .looseBoard, parent: ""))
    }

    @discardableResult public func open(_ job: JobLine) -> Task<Void, Never> {
        app.go(.house(job: job.job))
    }

    @discardableResult public func openDemo() -> Task<Void, Never> {
        app.act(.jobsKind(action: .openDemo))
    }

    /// The account of what was saved and what was lost was read.
    @discardableResult public func acknowledge() -> Task<Void, Never> {
        app.act(.jobsKind(action: .acknowledge))
    }

    @discardableResult public func handOver() -> Task<Void, Never> { app.go(.handOver(job: nil)) }

    @discardableResult public func backups() -> Task<Void, Never> { app.go(.backups) }

    @discardableResult public func differences() -> Task<Void, Never> { app.go(.differences) }

    @discardableResult public func settings() -> Task<Void, Never> {
        app.go(.settings)
    }
}
