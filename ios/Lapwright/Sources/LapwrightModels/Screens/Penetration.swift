import LapwrightCore
import Observation

/// A penetration, made weathertight.
@MainActor @Observable
public final class PenetrationModel: ScreenModel, Asking, Signing {
    public private(set) var view: PenetrationView
    public let app: AppModel

    init(_ view: PenetrationView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .penetrationKind(let view) = view, view.penetration == self.view.penetration else { return false }
        if view.steps.first(where: { $0.state == .open })?.code != currentStep?.code { touched = "" }
        self.view = view
        return true
    }

    public var questions: [Question] { view.questions + steps.flatMap(\.asks) }

    public var asked: Question? { view.asked }

    public func keeping(_ question: Question, _ text: String) -> Action {
        .penetrationKind(action: .keepDraft(penetration: view.penetration, field: question.field, text: text))
    }

    public func answering(_ question: Question, _ text: String) -> Action {
        .penetrationKind(action: .answer(penetration: view.penetration, field: question.field, text: text))
    }

    public var steps: [StepLine] { view.steps }

    public func signing(_ step: StepLine, _ said: StepSaid) -> Action {
        .penetrationKind(action: .signStep(penetration: view.penetration, step: step.code, said: said))
    }

    /// What there is to mind at the step in hand, before it is signed.
    public var cautions: [Note] { currentStep.map { $0.cautionsRead ? [] : $0.cautions } ?? [] }

    /// A tap on the next action: read, then asked for its number where it has one, else signed.
    @discardableResult public func next(_ step: StepLine) -> Task<Void, Never> {
        if !step.cautionsRead { return app.read(step.code) }
        guard let asks = step.opens else { return tick(step) }
        app.ask(asks)
        return Task {}
    }

    /// The layer that was tapped in the list, by its code.
    public private(set) var touched = ""

    /// Picks a layer out in the drawings.
    public func touch(_ layer: LayerLine) {
        touched = layer.code
    }

    /// The layer that is picked out: the tapped one, else that of the step in hand.
    public var picked: String { touched.isEmpty ? currentStep?.layer ?? "" : touched }

    /// What the advice calls a size: the question that it would answer.
    public func title(_ field: String) -> String {
        view.questions.first { $0.field == field }?.title ?? ""
    }

    /// The advised block instead of the one that is placed.
    @discardableResult public func takeAdvice() -> Task<Void, Never> {
        app.act(.penetrationKind(action: .takeAdvice(penetration: view.penetration)))
    }
}
