import LapwrightModels
import SwiftUI

/// Which house.
struct JobsScreen: View {
    let model: JobsModel

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, app.words.jobs, next: Next(app.words.newHouse) { model.create() }) {
            if model.view.jobs.isEmpty { Text(app.words.noHouses).font(.label) }
            ForEach(model.view.jobs, id: \.job) { job in
                Line {
                    model.open(job)
                } content: {
                    Named(job.name, job.archived ? "\(job.said) · \(app.words.archived)" : job.said)
                }
            }
            OtherAction(app.words.openDemo) { model.openDemo() }
            OtherAction(app.words.settings) { model.settings() }
        }
    }
}
