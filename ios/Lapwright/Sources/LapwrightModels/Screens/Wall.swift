import LapwrightCore
import Observation

/// What is where on a wall.
@MainActor @Observable
public final class WallModel: ScreenModel {
    public private(set) var view: WallView
    public let app: AppModel

    init(_ view: WallView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .wallKind(let view) = view, view.wall == self.view.wall else { return false }
        self.view = view
        return true
    }

    @discardableResult public func addPenetration() -> Task<Void, Never> {
        app.go(.new(what: .penetration, parent: view.wall))
    }

    /// The same as the last one, at another place.
    @discardableResult public func addSameAsLast() -> Task<Void, Never> {
        app.go(.new(what: .samePenetration, parent: view.wall))
    }

    @discardableResult public func remove(_ line: PenetrationLine) -> Task<Void, Never> {
        app.act(.wallKind(action: .removePenetration(wall: view.wall, penetration: line.penetration)))
    }

    @discardableResult public func planBoards() -> Task<Void, Never> {
        app.act(.wallKind(action: .planBoards(wall: view.wall)))
    }

    @discardableResult public func open(_ board: BoardLine) -> Task<Void, Never> {
        app.go(.board(board: board.board))
    }

    @discardableResult public func open(_ detail: DetailLine) -> Task<Void, Never> {
        app.go(.penetration(penetration: detail.detail))
    }

    @discardableResult public func open(_ penetration: PenetrationLine) -> Task<Void, Never> {
        app.go(.penetration(penetration: penetration.penetration))
    }

    @discardableResult public func measure() -> Task<Void, Never> { app.go(.measure(wall: view.wall)) }
}
