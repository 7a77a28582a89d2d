import LapwrightCore
import Observation

/// The one question that is being answered, and the keys that were typed for it.
@MainActor @Observable
public final class EntryModel {
    /// The question, as the view has it; nil where none is asked.
    public private(set) var question: Question?
    /// What is typed so far.
    public private(set) var text = ""

    /// Whether an answer is on its way: keys after it would be kept for a question that is answered.
    @ObservationIgnored private var isHandedOver = false
    @ObservationIgnored private var keep: (String) -> Void = { _ in }
    @ObservationIgnored private var take: (String) -> Void = { _ in }

    init() {}

    /// Asks a question. Of the one that is asked already the keys stay: they are newer than the view's draft.
    func ask(_ question: Question?, keep: @escaping (String) -> Void, take: @escaping (String) -> Void) {
        let same = question?.subject == self.question?.subject && question?.field == self.question?.field
        if !same { text = question?.draft ?? "" }
        self.question = question
        isHandedOver = false
        (self.keep, self.take) = (keep, take)
    }

    /// Asks nothing.
    func close() {
        question = nil
        text = ""
        isHandedOver = false
        (keep, take) = ({ _ in }, { _ in })
    }

    /// The answer was refused: it can be typed on.
    func giveBack() {
        isHandedOver = false
    }

    /// The whole text anew: from a text field, or heard.
    public func type(_ text: String) {
        guard question != nil, !isHandedOver, text != self.text else { return }
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

    /// Hands over one of the choices.
    public func choose(_ choice: Choice) {
        handOver(choice.code)
    }

    private func handOver(_ answer: String) {
        guard question != nil, !isHandedOver else { return }
        isHandedOver = true
        take(answer)
    }
}
