import Foundation
import LapwrightCore
import Observation

/// What to buy.
@MainActor @Observable
public final class OrderModel: ScreenModel {
    public private(set) var view: OrderView
    public let app: AppModel

    /// The list in a form that another program reads.
    public enum Form: String, CaseIterable, Sendable {
        case csv, json
    }

    init(_ view: OrderView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .orderKind(let view) = view, view.job == self.view.job else { return false }
        self.view = view
        return true
    }

    /// Hands the list on as a message.
    public func share() {
        app.services.share.text(view.text, title: title)
    }

    /// Hands the list on as a file.
    public func share(_ form: Form) {
        let name = title.replacingOccurrences(of: "/", with: "-")
        let file = FileManager.default.temporaryDirectory.appendingPathComponent("\(name).\(form.rawValue)")
        let text =
            switch form {
            case .csv: view.csv
            case .json: view.json
            }
        do {
            try Data(text.utf8).write(to: file, options: .atomic)
            app.services.share.file(file.path, title: title)
        } catch {
            app.failed(error)
        }
    }

    /// Reads a material aloud.
    public func say(_ line: OrderLine) {
        app.say("\(line.name): \(line.said)")
    }

    @discardableResult public func sawList() -> Task<Void, Never> { app.go(.sawList(job: view.job)) }

    private var title: String { "\(view.name): \(app.words.order)" }
}
