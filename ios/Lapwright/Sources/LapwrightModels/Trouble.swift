import LapwrightCore

/// Why something was not done, in the reader's language; nothing was changed.
public struct Trouble: Equatable, Sendable {
    /// The code of a refusal that is a question: the same answer once more is the yes.
    static let inDoubt = "unlikely"

    /// A stable code.
    public let code: String
    /// The field that it is about; empty for the whole.
    public let field: String
    /// What is wrong and what is allowed.
    public let text: String

    /// What the phone itself cannot do, in the reader's language.
    init(_ text: String) {
        (code, field, self.text) = ("phone", "", text)
    }

    public init(_ error: any Error) {
        if case Refusal.Refused(let code, let field, let text)? = error as? Refusal {
            (self.code, self.field, self.text) = (code, field, text)
        } else {
            // The library itself has failed: there are no words for it but its own.
            (code, field, text) = ("inner", "", String(describing: error))
        }
    }
}
