import LapwrightCore
import Observation

/// What to buy.
@MainActor @Observable
public final class OrderModel: ScreenModel {
    public private(set) var view: OrderView
    public let app: AppModel

    init(_ view: OrderView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .orderKind(let view) = view, view.job == self.view.job else { return false }
        self.view = view
        return true
    }

    /// Hands the list on: `text` is one of the view's texts.
    public func share(_ text: String) {
        app.services.share.text(text, title: "\(view.name): \(app.words.order)")
    }

    /// Reads a material aloud.
    public func say(_ line: OrderLine) {
        app.say("\(line.name): \(line.said)")
    }

    @discardableResult public func sawList() -> Task<Void, Never> { app.go(.sawList(job: view.job)) }
}
