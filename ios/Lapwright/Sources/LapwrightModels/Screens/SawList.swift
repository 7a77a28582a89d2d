import LapwrightCore
import Observation

/// What to cut from what.
@MainActor @Observable
public final class SawListModel: ScreenModel {
    public private(set) var view: SawListView
    /// An offcut that lies about, as far as its length is typed.
    public var newOffcut = ""
    public let app: AppModel

    @ObservationIgnored private var pictures: [Int64: PictureModel] = [:]

    init(_ view: SawListView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .sawListKind(let view) = view, view.job == self.view.job else { return false }
        // A drawing's revision is its own here; a further list may cut the same board otherwise.
        if view.boards != self.view.boards { pictures = [:] }
        self.view = view
        return true
    }

    /// The drawing of a board with its cuts.
    public func picture(_ board: SawBoardLine) -> PictureModel {
        if let picture = pictures[board.number] { return picture }
        let picture = PictureModel(.sawPattern(job: view.job, number: board.number), app: app)
        pictures[board.number] = picture
        return picture
    }

    /// The board that is cut next.
    public var next: SawBoardLine? { view.boards.first { $0.number == view.next } }

    /// A list where there is none, else a better one with more effort.
    @discardableResult public func plan() -> Task<Void, Never> {
        act(view.planned ? .improve(job: view.job) : .plan(job: view.job))
    }

    @discardableResult public func markCut(_ board: SawBoardLine) -> Task<Void, Never> {
        act(.markCut(job: view.job, number: board.number))
    }

    /// Hands the typed length over; a refused one can be typed on.
    @discardableResult public func addOffcut() -> Task<Void, Never> {
        let length = newOffcut
        return Task { [self] in
            await act(.addOffcut(job: view.job, length: length)).value
            if app.trouble == nil { newOffcut = "" }
        }
    }

    /// An offcut is thrown away, or kept after all.
    @discardableResult public func keep(_ offcut: OffcutLine, _ keep: Bool) -> Task<Void, Never> {
        let (job, id) = (view.job, offcut.offcut)
        return act(keep ? .keepOffcut(job: job, offcut: id) : .dropOffcut(job: job, offcut: id))
    }

    /// How many boards of a length there are.
    @discardableResult public func say(_ stock: StockNeed, count: String) -> Task<Void, Never> {
        act(.sayStock(job: view.job, stock: stock.stock, count: count))
    }

    @discardableResult public func open(_ piece: SawPieceLine) -> Task<Void, Never> {
        app.go(.board(board: piece.board))
    }

    /// Reads the cuts of a board aloud.
    public func say(_ board: SawBoardLine) {
        app.say(([board.length] + board.pieces.map(\.length)).map(\.spoken).joined(separator: ". "))
    }

    private func act(_ action: SawListAction) -> Task<Void, Never> {
        app.act(.sawListKind(action: action))
    }
}
