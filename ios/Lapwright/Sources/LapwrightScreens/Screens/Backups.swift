import LapwrightModels
import SwiftUI

/// The copies that the book keeps of itself, and one file of everything. A tap on a copy says what going back to it would do.
struct BackupsScreen: View {
    let model: BackupsModel

    private var app: AppModel { model.app }

    private var next: Next { Next(app.words.shareBackup) { model.share() } }

    var body: some View {
        let view = model.view
        Frame(app, app.words.backups, next: next) {
            ForEach(view.done, id: \.self) { Text($0).font(.strong) }
            ForEach(view.notes, id: \.self) { Warning($0) }
            Text(view.copied).font(.label)
            Heading(app.words.copiesHere)
            if view.copies.isEmpty { Text(app.words.noCopies).font(.label) }
            ForEach(view.copies, id: \.copy) { copy in
                Line {
                    model.look(at: copy)
                } content: {
                    Named(copy.said, copy.size)
                }
            }
            OtherAction(app.words.keepCopy) { model.keep() }
            OtherAction(app.words.pickCopy) { app.pickFile() }
        }
    }
}
