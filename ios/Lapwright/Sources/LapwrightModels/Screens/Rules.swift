import LapwrightCore
import Observation

/// Which numbers apply.
@MainActor @Observable
public final class RulesModel: ScreenModel, Asking {
    public private(set) var view: RulesView
    /// The key of the rule whose source and ways to change it are shown; empty where none is.
    public private(set) var opened = ""
    public let app: AppModel

    init(_ view: RulesView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .rulesKind(let view) = view, view.job == self.view.job else { return false }
        self.view = view
        return true
    }

    /// Of every rule that can be changed its value, and the reason.
    public var questions: [Question] { view.rules.flatMap(\.asks) }

    public var asked: Question? { view.asked }

    public func keeping(_ question: Question, _ text: String) -> Action {
        .rulesKind(action: .keepDraft(job: view.job, field: question.field, text: text))
    }

    public func answering(_ question: Question, _ text: String) -> Action {
        .rulesKind(action: .answer(job: view.job, field: question.field, text: text))
    }

    /// Opens a rule, or closes the one that is open.
    public func open(_ rule: RuleLine) {
        opened = opened == rule.key ? "" : rule.key
    }

    /// Asks for another value, then why; a fact stays as it is.
    public func change(_ rule: RuleLine) {
        if let question = rule.asks.first { app.ask(question) }
    }

    @discardableResult public func backToDefault(_ rule: RuleLine) -> Task<Void, Never> {
        app.act(.rulesKind(action: .backToDefault(job: view.job, key: rule.key)))
    }
}
