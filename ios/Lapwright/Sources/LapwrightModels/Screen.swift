import LapwrightCore

/// The model of one screen.
@MainActor public protocol ScreenModel: AnyObject {
    /// Shows a further view of the same place; false where it is another screen's.
    func take(_ view: View) -> Bool
}

/// The screen that is shown, and its model.
public enum Screen {
    case jobs(JobsModel)
    case house(HouseModel)
    case wall(WallModel)
    case measure(MeasureModel)
    case board(BoardModel)
    case penetration(PenetrationModel)
    case pole(PoleModel)
    case rules(RulesModel)
    case settings(SettingsModel)
    case doneList(DoneListModel)
    case new(NewModel)
    case sawList(SawListModel)
    case order(OrderModel)
    case backups(BackupsModel)
    case restore(RestoreModel)
    case handOver(HandOverModel)
    case takeIn(TakeInModel)
    case differences(DifferencesModel)

    @MainActor init(_ view: View, app: AppModel) {
        switch view {
        case .jobsKind(let view): self = .jobs(JobsModel(view, app: app))
        case .houseKind(let view): self = .house(HouseModel(view, app: app))
        case .wallKind(let view): self = .wall(WallModel(view, app: app))
        case .measureKind(let view): self = .measure(MeasureModel(view, app: app))
        case .boardKind(let view): self = .board(BoardModel(view, app: app))
        case .penetrationKind(let view): self = .penetration(PenetrationModel(view, app: app))
        case .poleKind(let view): self = .pole(PoleModel(view, app: app))
        case .rulesKind(let view): self = .rules(RulesModel(view, app: app))
        case .settingsKind(let view): self = .settings(SettingsModel(view, app: app))
        case .doneListKind(let view): self = .doneList(DoneListModel(view, app: app))
        case .newKind(let view): self = .new(NewModel(view, app: app))
        case .sawListKind(let view): self = .sawList(SawListModel(view, app: app))
        case .orderKind(let view): self = .order(OrderModel(view, app: app))
        case .backupsKind(let view): self = .backups(BackupsModel(view, app: app))
        case .restoreKind(let view): self = .restore(RestoreModel(view, app: app))
        case .handOverKind(let view): self = .handOver(HandOverModel(view, app: app))
        case .takeInKind(let view): self = .takeIn(TakeInModel(view, app: app))
        case .differencesKind(let view): self = .differences(DifferencesModel(view, app: app))
        }
    }

    /// The model, whichever it is.
    public var model: any ScreenModel {
        switch self {
        case .jobs(let model): model
        case .house(let model): model
        case .wall(let model): model
        case .measure(let model): model
        case .board(let model): model
        case .penetration(let model): model
        case .pole(let model): model
        case .rules(let model): model
        case .settings(let model): model
        case .doneList(let model): model
        case .new(let model): model
        case .sawList(let model): model
        case .order(let model): model
        case .backups(let model): model
        case .restore(let model): model
        case .handOver(let model): model
        case .takeIn(let model): model
        case .differences(let model): model
        }
    }
}
