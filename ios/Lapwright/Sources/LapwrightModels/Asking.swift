import LapwrightCore

/// A screen that asks questions.
@MainActor public protocol Asking: ScreenModel {
    /// All that can be asked here.
    var questions: [Question] { get }
    /// The question that the view asks now, if any.
    var asked: Question? { get }
    /// What keeps the keys of a question.
    func keeping(_ question: Question, _ text: String) -> Action
    /// What answers a question.
    func answering(_ question: Question, _ text: String) -> Action
}

/// Which question: the view's own may change under it.
struct QuestionKey: Equatable {
    let subject: String
    let field: String

    init(_ question: Question) {
        (subject, field) = (question.subject, question.field)
    }

    func find(in questions: [Question]) -> Question? {
        questions.first { QuestionKey($0) == self }
    }
}
