import LapwrightCore
import Observation

/// The board in hand, of a wall's plan or loose.
@MainActor @Observable
public final class BoardModel: ScreenModel, Asking, Signing {
    public private(set) var view: BoardView
    /// Which side is up.
    public private(set) var side = Side.face
    public let app: AppModel

    /// A side of a board.
    public enum Side: Sendable {
        case face, back
    }

    init(_ view: BoardView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .boardKind(let view) = view, view.board == self.view.board else { return false }
        self.view = view
        return true
    }

    public var questions: [Question] { view.questions + view.notches.flatMap(\.questions) + steps.flatMap(\.asks) }

    /// While the board is not cut, also what no tape was put to.
    public var asked: Question? { view.asked }

    public func keeping(_ question: Question, _ text: String) -> Action {
        let (subject, field) = (question.subject, question.field)
        return .boardKind(action: .keepDraft(board: view.board, subject: subject, field: field, text: text))
    }

    public func answering(_ question: Question, _ text: String) -> Action {
        let (board, subject, field) = (view.board, question.subject, question.field)
        return subject == board
            ? .boardKind(action: .answer(board: board, field: field, text: text))
            : .boardKind(action: .answerNotch(board: board, notch: subject, field: field, text: text))
    }

    /// A notch round a block that no plan knows.
    @discardableResult public func addNotch() -> Task<Void, Never> {
        app.go(.new(what: .notch, parent: view.board))
    }

    public var steps: [StepLine] { view.steps }

    public func signing(_ step: StepLine, _ said: StepSaid) -> Action {
        .boardKind(action: .signStep(board: view.board, step: step.code, said: said))
    }

    /// What is checked next.
    public var currentCheck: CheckLine? { view.checks.first { $0.state == .open } }

    /// What there is to mind at it, before it is signed.
    public var cautions: [Note] { currentCheck.map { $0.cautionsRead ? [] : $0.cautions } ?? [] }

    /// A tap on a check: read, then asked for its number where it has one, else signed for all of its steps; one that is done is taken
    /// back.
    @discardableResult public func tap(_ check: CheckLine) -> Task<Void, Never> {
        if check.state != .open {
            return app.sign(.boardKind(action: .takeCheckBack(board: view.board, check: check.code)))
        }
        if !check.cautionsRead { return app.read(check.code) }
        if let asks = check.opens {
            app.ask(asks)
            return Task {}
        }
        return app.sign(.boardKind(action: .tickCheck(board: view.board, check: check.code)))
    }

    /// Opens the camera for the step of a check whose photo is asked for.
    @discardableResult public func takePhoto(_ check: CheckLine) -> Task<Void, Never> {
        guard let step = steps.first(where: { $0.code == check.camera }) else { return Task {} }
        return app.takePhoto(step)
    }

    /// The photos of the steps that a check stands for, each with its step.
    public func photographed(_ check: CheckLine) -> [StepLine] {
        steps.filter { $0.photo != nil && check.steps.contains($0.code) }
    }

    /// The next board of the wall that is not up.
    @discardableResult public func openNext() -> Task<Void, Never> {
        app.go(.board(board: view.nextBoard))
    }

    /// Whether a notch is what the board was made for: a loose one that has none yet.
    public var isNotchAwaited: Bool { isLoose && view.notches.isEmpty }

    /// Whether there are marks to transfer.
    public var isMarked: Bool { view.notches.contains { $0.face != nil } }

    /// The drawing of the face.
    public var face: Subject { .boardFace(board: view.board) }

    /// The drawing of the side that is up.
    public var picture: Subject { side == .face ? face : .boardBack(board: view.board) }

    /// Turns the board over.
    public func turn() {
        side = side == .face ? .back : .face
    }

    /// Whether there is another side to look at.
    public var hasBack: Bool { view.notches.contains { $0.back != nil } || view.instructions.count > 1 }

    /// The marks of a notch on the side that is up.
    public func marks(_ notch: NotchView) -> MarksView? {
        side == .face ? notch.face : notch.back
    }

    /// Whether it is cut: only then can it be spoiled.
    public var isCut: Bool { view.state != "planned" }

    /// Whether it belongs to no plan: only then is another one made like it.
    public var isLoose: Bool { view.wall.isEmpty }

    /// It is spoiled: what is left of it is asked for.
    @discardableResult public func spoiled() -> Task<Void, Never> {
        app.go(.new(what: .spoiled, parent: view.board))
    }

    /// Another loose board like the last one.
    @discardableResult public func createSame() -> Task<Void, Never> {
        app.act(.boardKind(action: .createSameAsLast(job: view.job.isEmpty ? nil : view.job)))
    }

    /// What was learned of this signer's saw and hands no longer holds.
    @discardableResult public func forgetHabit() -> Task<Void, Never> {
        app.act(.boardKind(action: .forgetHabit(board: view.board)))
    }

    /// A loose board goes on a wall.
    @discardableResult public func attach(to wall: PoleWall) -> Task<Void, Never> {
        app.act(.boardKind(action: .attach(board: view.board, wall: wall.wall)))
    }

    /// What is read aloud: the length, then every mark of the side that is up.
    public func sayMarks() {
        let marks = view.notches.compactMap { self.marks($0) }
        let readings = marks.flatMap { $0.uprights + $0.levels.flatMap { [$0.left, $0.right] } }
        app.say((CollectionOfOne(view.length).compactMap { $0 } + readings).map(\.spoken).joined(separator: ". "))
    }
}
