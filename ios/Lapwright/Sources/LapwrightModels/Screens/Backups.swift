import LapwrightCore
import Observation

/// The copies that the book keeps of itself, and one file of everything.
@MainActor @Observable
public final class BackupsModel: ScreenModel {
    public private(set) var view: BackupsView
    public let app: AppModel

    init(_ view: BackupsView, app: AppModel) {
        (self.view, self.app) = (view, app)
    }

    public func take(_ view: View) -> Bool {
        guard case .backupsKind(let view) = view else { return false }
        self.view = view
        return true
    }

    /// The book and its photos as one file.
    @discardableResult public func share() -> Task<Void, Never> {
        app.share(app.words.shareBackup, name: "backup.zip") { .backupsKind(action: .share(path: $0)) }
    }

    @discardableResult public func keep() -> Task<Void, Never> {
        app.act(.backupsKind(action: .keep))
    }

    /// Says what going back to a copy would do.
    @discardableResult public func look(at copy: CopyLine) -> Task<Void, Never> {
        app.go(.restore(copy: copy.copy))
    }
}
