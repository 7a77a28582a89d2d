import LapwrightCore
import Observation

/// The one question that is being answered, and the keys that were typed for it.
@MainActor @Observable
public final class EntryModel {
    /// The question, as the view has it; nil where none is asked.
    public private(set) var question: Question?
    /// What is typed so far.
    public private(set) var text = ""

    /// How many taps are on their way: keys after them would be kept for a question that is left or answered.
    @ObservationIgnored var pending = 0
    /// The question whose keys these are; it may be put away.
    @ObservationIgnored private var typed: QuestionKey?
    @ObservationIgnored private var keep: (String) -> Void = { _ in }
    @ObservationIgnored private var take: (String) -> Void = { _ in }

    init() {}

    /// Asks a question. Where its keys are here already they stay: they are newer than the view's draft.
    func ask(_ question: Question, keep: @escaping (String) -> Void, take: @escaping (String) -> Void) {
        if typed != QuestionKey(question) { text = question.draft }
        (self.question, typed) = (question, QuestionKey(question))
        (self.keep, self.take) = (keep, take)
    }

    /// Asks nothing for now.
    func putAway() {
        question = nil
        (keep, take) = ({ _ in }, { _ in })
    }

    /// Asks nothing: what the book says holds again.
    func close() {
        putAway()
        (text, typed) = ("", nil)
    }

    /// The whole text anew: from a text field, or heard.
    public func type(_ text: String) {
        guard question != nil, pending == 0, text != self.text else { return }
        self.text = text
        keep(text)
    }

    /// A key of the keypad.
    public func press(_ key: String) {
        type(text + key)
    }

    /// A mark of the drawn piece of tape.
    public func tap(_ mark: TapeMark) {
        type(Typing.with(mark: mark, in: text))
    }

    /// Takes the last key back.
    public func rubOut() {
        type(Typing.rubbedOut(text))
    }

    /// Hands the answer over as it is typed.
    public func accept() {
        handOver(text)
    }

    /// Hands over what is offered.
    public func accept(_ offer: Offer) {
        handOver(offer.text)
    }

    /// Hands over one of the choices.
    public func choose(_ choice: Choice) {
        handOver(choice.code)
    }

    private func handOver(_ answer: String) {
        guard question != nil, pending == 0 else { return }
        take(answer)
    }
}
