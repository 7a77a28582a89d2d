import LapwrightModels
import SwiftUI

import struct LapwrightCore.JobLine

/// Which house.
struct JobsScreen: View {
    @Bindable var model: JobsModel
    @State private var open = ""

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, app.words.jobs, next: Next(app.words.newHouse) { model.create() }) {
            if model.view.jobs.isEmpty { Text(app.words.noHouses).font(.label) }
            ForEach(model.view.jobs, id: \.job) { job in
                Line {
                    model.open(job)
                } content: {
                    Named(job.name, job.archived ? [job.said, app.words.archived].spoken : job.said)
                }
                if open == job.job { choices(job) }
                OtherAction(open == job.job ? app.words.close : app.words.more) {
                    open = open == job.job ? "" : job.job
                    model.naming = nil
                }
            }
            OtherAction(app.words.openDemo) { model.openDemo() }
            OtherAction(app.words.settings) { model.settings() }
        }
    }

    @ViewBuilder private func choices(_ job: JobLine) -> some View {
        if let naming = model.naming, naming.job == job.job {
            WordsField(title: app.words.rename, text: naming.name) { model.naming?.name = $0 }
            OtherAction(app.words.save) { model.name() }
        } else {
            OtherAction(app.words.rename) { model.beginRenaming(job) }
            OtherAction([app.words.newHouse, job.name].spoken) { model.beginNew(like: job) }
        }
        OtherAction(job.archived ? app.words.bringBack : app.words.archive) { model.putAway(job, !job.archived) }
    }
}
