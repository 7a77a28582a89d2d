import LapwrightCore
import Observation

/// How far a house is, what comes next, and what is open to the weather now.
@MainActor @Observable
public final class HouseModel: ScreenModel, Asking {
    public private(set) var view: HouseView
    public let app: AppModel

    init(_ view: HouseView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .houseKind(let view) = view, view.job == self.view.job else { return false }
        self.view = view
        return true
    }

    public var questions: [Question] { view.questions }

    public var asked: Question? { view.asked }

    public func keeping(_ question: Question, _ text: String) -> Action {
        .houseKind(action: .keepDraft(job: view.job, field: question.field, text: text))
    }

    public func answering(_ question: Question, _ text: String) -> Action {
        .houseKind(action: .answer(job: view.job, field: question.field, text: text))
    }

    @discardableResult public func addStock() -> Task<Void, Never> { new(.stock) }

    @discardableResult public func addBlockSize() -> Task<Void, Never> { new(.blockSize) }

    @discardableResult public func addWall() -> Task<Void, Never> { new(.wall) }

    @discardableResult public func addLooseBoard() -> Task<Void, Never> { new(.looseBoard) }

    private func new(_ what: NewThing) -> Task<Void, Never> { app.go(.new(what: what, parent: view.job)) }

    /// Another loose board like the last one.
    @discardableResult public func createSameBoard() -> Task<Void, Never> {
        app.act(.boardKind(action: .createSameAsLast(job: view.job)))
    }

    /// A house with boards, rules and stock of this one.
    @discardableResult public func createLike() -> Task<Void, Never> { new(.house) }

    /// Out of the way, or back again; nothing is deleted.
    @discardableResult public func archive() -> Task<Void, Never> {
        view.archived
            ? app.act(.jobsKind(action: .bringBack(job: view.job)))
            : app.act(.jobsKind(action: .archive(job: view.job)))
    }

    /// Takes a stock length or a size of block off the house.
    @discardableResult public func remove(_ part: String) -> Task<Void, Never> {
        app.act(.houseKind(action: .removePart(job: view.job, part: part)))
    }

    @discardableResult public func open(_ wall: WallProgress) -> Task<Void, Never> {
        app.go(wall.measured ? .wall(wall: wall.wall) : .measure(wall: wall.wall))
    }

    @discardableResult public func pole() -> Task<Void, Never> { app.go(.pole(job: view.job)) }

    @discardableResult public func sawList() -> Task<Void, Never> { app.go(.sawList(job: view.job)) }

    @discardableResult public func order() -> Task<Void, Never> { app.go(.order(job: view.job)) }

    @discardableResult public func rules() -> Task<Void, Never> { app.go(.rules(job: view.job)) }

    @discardableResult public func handOver() -> Task<Void, Never> { app.go(.handOver(job: view.job)) }

    /// Opens what goes through a wall.
    @discardableResult public func open(_ line: PenetrationLine) -> Task<Void, Never> {
        app.go(.penetration(penetration: line.penetration))
    }

    /// How many of what goes through the walls are done.
    public var penetrationsDone: Int { view.penetrations.filter { $0.done }.count }

    /// Whether nothing is left to do.
    public var isDone: Bool {
        if case .nothingLeft = view.next { true } else { false }
    }

    /// Goes to a piece of work.
    @discardableResult public func goOn(_ next: NextWork) -> Task<Void, Never> {
        switch next {
        case .answerJob(let question):
            app.ask(question)
            return Task {}
        case .addStock: return addStock()
        case .addWall: return addWall()
        case .measureWall(let wall, _, _): return app.go(.measure(wall: wall))
        case .layOutPole: return pole()
        case .planWall(let wall, _): return app.act(.wallKind(action: .planBoards(wall: wall)))
        case .makeTight(let penetration, _, _, _): return app.go(.penetration(penetration: penetration))
        case .hangBoard(let board, _, _, _, _): return app.go(.board(board: board))
        case .nothingLeft: return Task {}
        }
    }
}
