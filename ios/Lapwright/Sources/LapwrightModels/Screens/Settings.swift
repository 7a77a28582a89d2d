import LapwrightCore
import Observation

/// Who holds this phone, and how it speaks.
@MainActor @Observable
public final class SettingsModel: ScreenModel, Asking {
    public private(set) var view: SettingsView
    public let app: AppModel

    init(_ view: SettingsView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .settingsKind(let view) = view else { return false }
        self.view = view
        return true
    }

    public var questions: [Question] { view.settings + [view.newSigner] }

    public var asked: Question? { view.asked }

    public func keeping(_ question: Question, _ text: String) -> Action {
        .settingsKind(action: .keepDraft(field: question.field, text: text))
    }

    public func answering(_ question: Question, _ text: String) -> Action {
        question.field == view.newSigner.field
            ? .settingsKind(action: .takePhone(signer: text))
            : .settingsKind(action: .answer(field: question.field, text: text))
    }

    /// Somebody takes the phone, who goes on where they left off.
    @discardableResult public func take(_ signer: SignerLine) -> Task<Void, Never> {
        app.act(.settingsKind(action: .takePhone(signer: signer.name)))
    }

    /// Asks for a name that is not among the signers yet.
    public func newSigner() {
        app.ask(view.newSigner)
    }

    /// A name leaves the list; what was signed with it stays.
    @discardableResult public func drop(_ signer: SignerLine) -> Task<Void, Never> {
        app.act(.settingsKind(action: .dropSigner(signer: signer.name)))
    }
}
