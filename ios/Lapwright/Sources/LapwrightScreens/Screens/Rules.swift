import LapwrightModels
import SwiftUI

/// Which numbers apply, where each comes from, and who replaced it.
struct RulesScreen: View {
    let model: RulesModel

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, app.words.rules, job: model.view.job) {
            Text(model.view.family).font(.strong)
            Text(model.view.whoWins).font(.label)
            ForEach(model.view.rules, id: \.key) { rule in
                Line {
                    model.change(rule)
                } content: {
                    Named(rule.name, rule.said)
                    Text(rule.value).font(.large)
                }
                if rule.notVerified { Warning(rule.status) }
                if rule.changed != nil {
                    OtherAction("\(app.words.backToDefault): \(rule.default)") { model.backToDefault(rule) }
                }
            }
        }
    }
}
