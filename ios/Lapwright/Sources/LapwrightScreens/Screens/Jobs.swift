import LapwrightModels
import SwiftUI

/// Which house.
struct JobsScreen: View {
    let model: JobsModel
    @Environment(\.look) private var look

    private var app: AppModel { model.app }

    private var next: Next { Next(app.words.newHouse) { model.create() } }

    var body: some View {
        let view = model.view
        Frame(app, app.words.jobs, next: next) {
            if !view.copyFailed.isEmpty { Warning(view.copyFailed) }
            if !view.differences.isEmpty {
                Line {
                    model.differences()
                } content: {
                    // The ink of a warning is too pale on the ground of a line.
                    Icon(.warning, look.inks.warning)
                    Text(view.differences).font(.strong)
                }
            }
            ForEach(Array(view.account.enumerated()), id: \.offset) { Warning($0.element) }
            if !view.account.isEmpty {
                OtherAction(app.words.accountRead) { model.acknowledge() }
            }
            if view.jobs.isEmpty { Text(app.words.noHouses).font(.label) }
            OtherAction(app.words.notchNow) { model.notchNow() }
            ForEach(view.jobs, id: \.job) { job in
                Line {
                    model.open(job)
                } content: {
                    Named(job.name, job.archived ? "\(job.said) · \(app.words.archived)" : job.said)
                }
            }
            if !view.hasDemo { OtherAction(app.words.openDemo) { model.openDemo() } }
            if !view.jobs.isEmpty {
                Text(view.copied).font(.label)
                OtherAction(app.words.handOver) { model.handOver() }
            }
            OtherAction(app.words.pickFile) { app.pickFile() }
            OtherAction(app.words.backups) { model.backups() }
            OtherAction(app.words.settings, .gear) { model.settings() }
        }
    }
}
