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

    /// Shows the whole list again, with nothing taken back.
    @discardableResult public func close() -> Task<Void, Never> { app.go(.doneList(job: view.job)) }

    /// Takes an answer back; the view says which questions are open again, with what had been typed.
    @discardableResult public func undo(_ line: DoneLine) -> Task<Void, Never> {
        app.act(.doneListKind(action: .undo(job: view.job, group: line.group)))
    }

    /// Goes to where a question is open again.
    @discardableResult public func open(_ answer: ReopenedAnswer) -> Task<Void, Never> { app.go(answer.place) }

    /// What happened on one day.
    public struct Day: Sendable {
        public let day: String
        public fileprivate(set) var lines: [DoneLine]
    }

    /// What happened, day by day.
    public var days: [Day] {
        var days: [Day] = []
        for line in view.lines {
            if days.last?.day != line.day { days.append(Day(day: line.day, lines: [])) }
            days[days.count - 1].lines.append(line)
        }
        return days
    }
}
