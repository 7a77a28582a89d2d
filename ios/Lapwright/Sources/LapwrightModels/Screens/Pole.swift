import LapwrightCore
import Observation

/// Where the lines go.
@MainActor @Observable
public final class PoleModel: ScreenModel, Asking {
    public private(set) var view: PoleView
    public let app: AppModel

    init(_ view: PoleView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .poleKind(let view) = view, view.job == self.view.job else { return false }
        self.view = view
        return true
    }

    public var questions: [Question] { view.questions }

    public var asked: Question? { view.asked }

    public func keeping(_ question: Question, _ text: String) -> Action {
        .poleKind(action: .keepDraft(job: view.job, field: question.field, text: text))
    }

    public func answering(_ question: Question, _ text: String) -> Action {
        .poleKind(action: .answer(job: view.job, field: question.field, text: text))
    }

    /// A height of one's own to meet or stay clear of.
    @discardableResult public func addMark() -> Task<Void, Never> {
        app.go(.new(what: .mark, parent: view.job))
    }

    @discardableResult public func remove(_ mark: MarkLine) -> Task<Void, Never> {
        app.act(.poleKind(action: .removeMark(job: view.job, mark: mark.mark)))
    }

    /// Keeps the lines that are shown.
    @discardableResult public func layOut() -> Task<Void, Never> {
        app.act(.poleKind(action: .layOut(job: view.job)))
    }

    /// What a reading of a course as it hangs is called.
    public func title(_ field: String) -> String {
        view.asBuiltQuestions.first { $0.field == field }?.title ?? ""
    }

    /// A course as it hangs on a wall: the lines above it follow.
    @discardableResult public func tape(_ wall: PoleWall) -> Task<Void, Never> {
        app.go(.new(what: .asBuilt, parent: wall.wall))
    }

    /// What was said of a course as it hangs no longer holds.
    @discardableResult public func remove(_ built: AsBuiltLine) -> Task<Void, Never> {
        app.act(.poleKind(action: .removeAsBuilt(asBuilt: built.asBuilt)))
    }

    /// Reads a line aloud.
    public func say(_ line: PoleLine) {
        app.say("\(line.said): \(line.height.spoken)")
    }

    /// Reads a height aloud.
    public func say(_ mark: MarkLine) {
        app.say("\(mark.name): \(mark.at.spoken). \(mark.said)")
    }
}
