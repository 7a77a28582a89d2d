import Foundation
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

    /// Hands the list on as a message.
    public func shareText() {
        app.services.share.text(view.text)
    }

    /// Hands the list on as a table.
    public func shareTable() {
        let file = FileManager.default.temporaryDirectory.appendingPathComponent("\(view.job).csv")
        do {
            try Data(view.csv.utf8).write(to: file, options: .atomic)
            app.services.share.file(file.path)
        } catch {
            app.failed(error)
        }
    }

    @discardableResult public func sawList() -> Task<Void, Never> { app.go(.sawList(job: view.job)) }
}
