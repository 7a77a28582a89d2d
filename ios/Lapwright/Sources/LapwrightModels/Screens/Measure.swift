import LapwrightCore
import Observation

/// Setting up a wall, one question at a time.
@MainActor @Observable
public final class MeasureModel: ScreenModel, Asking {
    public private(set) var view: MeasureView
    public let app: AppModel

    init(_ view: MeasureView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .measureKind(let view) = view, view.wall == self.view.wall else { return false }
        self.view = view
        return true
    }

    public var questions: [Question] { view.questions + view.parts.flatMap(\.questions) }

    public var asked: Question? { view.asked }

    public func keeping(_ question: Question, _ text: String) -> Action {
        let (subject, field) = (question.subject, question.field)
        return .measureKind(action: .keepDraft(wall: view.wall, subject: subject, field: field, text: text))
    }

    public func answering(_ question: Question, _ text: String) -> Action {
        let (wall, subject, field) = (view.wall, question.subject, question.field)
        return subject == wall
            ? .measureKind(action: .answer(wall: wall, field: field, text: text))
            : .measureKind(action: .answerPart(wall: wall, part: subject, field: field, text: text))
    }

    /// A new step of the base line, stud, window or door, or abutment.
    @discardableResult public func add(_ what: NewThing) -> Task<Void, Never> {
        app.go(.new(what: what, parent: view.wall))
    }

    @discardableResult public func remove(_ part: PartView) -> Task<Void, Never> {
        app.act(.measureKind(action: .removePart(wall: view.wall, part: part.part)))
    }

    @discardableResult public func wall() -> Task<Void, Never> { app.go(.wall(wall: view.wall)) }
}
