import LapwrightCore

/// What was done last, in the reader's language, and the answer to undo it by.
public struct Done: Equatable, Sendable {
    public let said: String
    public let group: String

    /// What an action did; nil where nothing was accepted, and on the list where each line has its own undo.
    init?(_ outcome: Outcome, of action: Action) {
        if case .doneListKind = action { return nil }
        if outcome.said.isEmpty { return nil }
        (said, group) = (outcome.said, outcome.group)
    }
}
