import LapwrightModels
import SwiftUI

/// What two phones answered differently, until somebody has looked at it. A tap on a line goes to where it is asked.
struct DifferencesScreen: View {
    let model: DifferencesModel

    private var app: AppModel { model.app }

    private var next: Next? {
        model.view.differences.isEmpty ? nil : Next(app.words.lookedAt) { model.lookedAt() }
    }

    var body: some View {
        let view = model.view
        Frame(app, app.words.differences, next: next) {
            ForEach(view.done, id: \.self) { Text($0).font(.strong) }
            ForEach(view.differences, id: \.difference) { line in
                Line {
                    model.open(line)
                } content: {
                    VStack(alignment: .leading, spacing: 2) {
                        Text(line.title).font(.strong)
                        Text(line.stands).font(.label)
                        Text(line.other).font(.label)
                    }
                    .frame(maxWidth: .infinity, alignment: .leading)
                }
            }
        }
    }
}
