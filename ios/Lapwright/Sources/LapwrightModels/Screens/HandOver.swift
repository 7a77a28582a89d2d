import LapwrightCore
import Observation

/// The book, or one house of it, as a file for a colleague, with the words that they compare.
@MainActor @Observable
public final class HandOverModel: ScreenModel {
    public private(set) var view: HandOverView
    public let app: AppModel

    init(_ view: HandOverView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .handOverKind(let view) = view, view.job == self.view.job else { return false }
        self.view = view
        return true
    }

    /// The whole book.
    @discardableResult public func shareBook() -> Task<Void, Never> {
        app.share(app.words.shareCopy, name: "book.lapwright") { .handOverKind(action: .book(path: $0)) }
    }

    /// The answers of the house: those since the last such file, or all.
    @discardableResult public func shareHouse(all: Bool) -> Task<Void, Never> {
        guard let job = view.job else { return Task {} }
        return app.share(view.name, name: "house.lapwright-house") {
            .handOverKind(action: .house(job: job, all: all, path: $0))
        }
    }
}
