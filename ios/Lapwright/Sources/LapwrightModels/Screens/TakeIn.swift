import LapwrightCore
import Observation

/// What taking in a colleague's file would do, before it is done; the words of a new device are compared here.
@MainActor @Observable
public final class TakeInModel: ScreenModel {
    public private(set) var view: TakeInView
    public let app: AppModel

    init(_ view: TakeInView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .takeInKind(let view) = view, view.file == self.view.file else { return false }
        self.view = view
        return true
    }

    /// The words of a device are those that it shows of itself.
    @discardableResult public func trust(_ sender: SenderLine) -> Task<Void, Never> {
        app.act(.takeInKind(action: .trust(file: view.file, device: sender.device)))
    }

    @discardableResult public func takeIn() -> Task<Void, Never> {
        app.act(.takeInKind(action: .takeIn(file: view.file, evenAhead: !view.ahead.isEmpty)))
    }

    @discardableResult public func cancel() -> Task<Void, Never> { app.go(.jobs) }
}
