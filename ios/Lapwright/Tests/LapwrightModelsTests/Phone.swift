import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels

/// A phone with a real book on a real file. It can be switched off at any moment: nothing of it is kept but the file.
@MainActor final class Phone {
    let folder: URL
    private(set) var device: Device
    private(set) var app: AppModel
    private(set) var book: CountedBook
    private var starts: Int64 = 0
    private static var seeds: UInt64 = 0

    init(folder: URL? = nil) async throws {
        self.folder = folder ?? FileManager.default.temporaryDirectory.appendingPathComponent(UUID().uuidString)
        try FileManager.default.createDirectory(at: self.folder, withIntermediateDirectories: true)
        (device, book, app) = try await Self.start(self.folder, seconds: 0)
    }

    deinit {
        try? FileManager.default.removeItem(at: folder)
    }

    /// Switched off and on again: a new book on the same file.
    func restart() async throws {
        starts += 1
        (device, book, app) = try await Self.start(folder, seconds: 1000 * starts)
    }

    private static func start(_ folder: URL, seconds: Int64) async throws -> (Device, CountedBook, AppModel) {
        seeds += 1
        let device = Device(seed: seeds, seconds: seconds)
        let file = folder.appendingPathComponent("book.lapwright")
        let copies = folder.appendingPathComponent("copies").path
        let book = CountedBook(try Book.open(path: file.path, copies: copies))
        return (device, book, try await AppModel.open(BookActor(book, copies: copies), device.services))
    }

    /// A phone that Ines holds, on the demo house.
    static func withDemo() async throws -> Phone {
        let phone = try await Phone()
        await phone.app.act(.settingsKind(action: .takePhone(signer: "Ines"))).value
        await (try phone.jobs()).openDemo().value
        return phone
    }

    private func model<Model>(_ type: Model.Type) throws -> Model {
        let shown = try #require(app.screen?.model)
        return try #require(
            shown as? Model, "another screen is shown: \(app.place), \(String(describing: app.trouble))")
    }

    func jobs() throws -> JobsModel { try model(JobsModel.self) }
    func house() throws -> HouseModel { try model(HouseModel.self) }
    func wall() throws -> WallModel { try model(WallModel.self) }
    func measure() throws -> MeasureModel { try model(MeasureModel.self) }
    func board() throws -> BoardModel { try model(BoardModel.self) }
    func penetration() throws -> PenetrationModel { try model(PenetrationModel.self) }
    func pole() throws -> PoleModel { try model(PoleModel.self) }
    func rules() throws -> RulesModel { try model(RulesModel.self) }
    func settings() throws -> SettingsModel { try model(SettingsModel.self) }
    func sawList() throws -> SawListModel { try model(SawListModel.self) }
    func order() throws -> OrderModel { try model(OrderModel.self) }
    func new() throws -> NewModel { try model(NewModel.self) }
    func backups() throws -> BackupsModel { try model(BackupsModel.self) }
    func restoring() throws -> RestoreModel { try model(RestoreModel.self) }
    func handOver() throws -> HandOverModel { try model(HandOverModel.self) }
    func takeIn() throws -> TakeInModel { try model(TakeInModel.self) }
    func differences() throws -> DifferencesModel { try model(DifferencesModel.self) }
    func doneList() throws -> DoneListModel { try model(DoneListModel.self) }

    /// Takes the last thing that was done back, on the list of what was done.
    func undoTheLast() async throws {
        await app.go(.doneList(job: nil)).value
        let list = try doneList()
        await list.undo(try #require(list.view.lines.first)).value
    }

    /// Types an answer key by key and hands it over.
    func type(_ text: String) async {
        for key in text { app.entry.press(String(key)) }
        await app.settled()
        app.entry.accept()
        await app.settled()
    }
}
