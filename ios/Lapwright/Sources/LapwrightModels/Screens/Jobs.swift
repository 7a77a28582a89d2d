import LapwrightCore
import Observation

/// Which house.
@MainActor @Observable
public final class JobsModel: ScreenModel {
    public private(set) var view: JobsView
    /// The name that is being typed for a house, or for a new one like it.
    public var naming: Naming?
    public let app: AppModel

    /// A name in the making.
    public struct Naming: Equatable {
        public let job: String
        /// Whether it is for a new house with boards, rules and stock of this one.
        public let isNew: Bool
        public var name: String
    }

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

    @discardableResult public func open(_ job: JobLine) -> Task<Void, Never> {
        app.go(.house(job: job.job))
    }

    @discardableResult public func openDemo() -> Task<Void, Never> {
        app.act(.jobsKind(action: .openDemo))
    }

    public func beginRenaming(_ job: JobLine) {
        naming = Naming(job: job.job, isNew: false, name: job.name)
    }

    /// A new house with boards, rules and stock of another.
    public func beginNew(like job: JobLine) {
        naming = Naming(job: job.job, isNew: true, name: "")
    }

    /// Hands the typed name over; a refused one can be typed on.
    @discardableResult public func name() -> Task<Void, Never> {
        guard let naming else { return Task {} }
        let (job, name) = (naming.job, naming.name)
        return Task { [self] in
            await app.act(
                .jobsKind(action: naming.isNew ? .create(name: name, like: job) : .rename(job: job, name: name))
            )
            .value
            if app.trouble == nil { self.naming = nil }
        }
    }

    /// Out of the way, or back again; nothing is deleted.
    @discardableResult public func putAway(_ job: JobLine, _ away: Bool) -> Task<Void, Never> {
        app.act(.jobsKind(action: away ? .archive(job: job.job) : .bringBack(job: job.job)))
    }

    @discardableResult public func settings() -> Task<Void, Never> {
        app.go(.settings)
    }
}
