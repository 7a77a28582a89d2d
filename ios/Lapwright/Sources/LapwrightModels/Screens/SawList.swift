import LapwrightCore
import Observation

/// What to cut from what.
@MainActor @Observable
public final class SawListModel: ScreenModel, Asking {
    public private(set) var view: SawListView
    public let app: AppModel

    init(_ view: SawListView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .sawListKind(let view) = view, view.job == self.view.job else { return false }
        self.view = view
        return true
    }

    /// Of every stock length how many boards there are.
    public var questions: [Question] { view.stock.map(\.asks) }

    public var asked: Question? { view.asked }

    public func keeping(_ question: Question, _ text: String) -> Action {
        .sawListKind(action: .keepDraft(job: view.job, stock: question.subject, text: text))
    }

    public func answering(_ question: Question, _ text: String) -> Action {
        .sawListKind(action: .sayStock(job: view.job, stock: question.subject, count: text))
    }

    /// The board that is cut next.
    public var next: SawBoardLine? { view.boards.first { $0.number == view.next } }

    @discardableResult public func plan() -> Task<Void, Never> {
        app.act(.sawListKind(action: .plan(job: view.job)))
    }

    /// Looks for a better list, with more effort.
    @discardableResult public func improve() -> Task<Void, Never> {
        app.act(.sawListKind(action: .improve(job: view.job)))
    }

    @discardableResult public func markCut(_ board: SawBoardLine) -> Task<Void, Never> {
        app.sign(.sawListKind(action: .markCut(job: view.job, number: board.number)))
    }

    /// An offcut that lies about.
    @discardableResult public func addOffcut() -> Task<Void, Never> {
        app.go(.new(what: .offcut, parent: view.job))
    }

    /// An offcut is thrown away.
    @discardableResult public func drop(_ offcut: OffcutLine) -> Task<Void, Never> {
        app.act(.sawListKind(action: .dropOffcut(job: view.job, offcut: offcut.offcut)))
    }

    /// An offcut that was thrown away is there after all.
    @discardableResult public func keep(_ offcut: OffcutLine) -> Task<Void, Never> {
        app.act(.sawListKind(action: .keepOffcut(job: view.job, offcut: offcut.offcut)))
    }

    @discardableResult public func open(_ piece: SawPieceLine) -> Task<Void, Never> {
        app.go(.board(board: piece.board))
    }

    @discardableResult public func order() -> Task<Void, Never> { app.go(.order(job: view.job)) }

    /// Those that are cut.
    public var boardsCut: [SawBoardLine] { view.boards.filter { $0.cut } }

    /// Those that come after the board at hand.
    public var boardsLater: [SawBoardLine] { view.boards.filter { !$0.cut && $0.number != view.next } }

    /// Hands on a board's cuts as text, for who is at the saw.
    public func shareTicket(_ board: SawBoardLine) {
        app.services.share.text(board.ticket, title: "\(view.name): \(board.number)")
    }

    /// The cuts of a board, to be heard.
    public func aloud(_ board: SawBoardLine) -> String {
        (board.pieces.map(\.length.spoken) + [board.restSaid]).joined(separator: ". ")
    }

    /// Reads the cuts of a board aloud.
    public func say(_ board: SawBoardLine) {
        app.say("\(board.number): \(aloud(board))")
    }
}
