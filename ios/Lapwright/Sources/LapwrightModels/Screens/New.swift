import LapwrightCore
import Observation

/// A new thing in the making, one question at a time.
@MainActor @Observable
public final class NewModel: ScreenModel, Asking {
    public private(set) var view: NewView
    public let app: AppModel

    init(_ view: NewView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .newKind(let view) = view, view.what == self.view.what, view.parent == self.view.parent else {
            return false
        }
        self.view = view
        return true
    }

    public var questions: [Question] { view.questions }

    public var asked: Question? { view.asked }

    public func keeping(_ question: Question, _ text: String) -> Action {
        .newKind(action: .keepDraft(what: view.what, parent: view.parent, field: question.field, text: text))
    }

    public func answering(_ question: Question, _ text: String) -> Action {
        .newKind(action: .answer(what: view.what, parent: view.parent, field: question.field, text: text))
    }

    /// Nothing comes of it.
    @discardableResult public func leave() -> Task<Void, Never> {
        app.act(.newKind(action: .leave(what: view.what, parent: view.parent)))
    }
}
