import LapwrightModels
import SwiftUI

import struct LapwrightCore.RuleLine

/// Which numbers apply. A tap on one opens where it comes from, and the ways to change it.
struct RulesScreen: View {
    let model: RulesModel
    @Environment(\.look) private var look

    private var app: AppModel { model.app }

    var body: some View {
        let view = model.view
        Frame(app, app.words.rules, job: view.job) {
            Text(view.family).font(.strong)
            Warning(view.whoWins)
            ForEach(view.rules, id: \.key) { rule in
                self.rule(rule)
                if model.opened == rule.key { opened(rule) }
            }
        }
    }

    private func rule(_ rule: RuleLine) -> some View {
        Line {
            model.open(rule)
        } content: {
            VStack(alignment: .leading, spacing: 2) {
                Text(rule.name).font(.label)
                Text(rule.value).font(.large)
                Text(rule.said).font(.small)
            }
            .frame(maxWidth: .infinity, alignment: .leading)
            if rule.notVerified { Icon(.warning, look.inks.warning) }
        }
    }

    @ViewBuilder private func opened(_ rule: RuleLine) -> some View {
        if rule.notVerified { Warning(rule.status) }
        if !rule.asks.isEmpty {
            Text(rule.bounds).font(.label)
            OtherAction(app.words.change) { model.change(rule) }
        }
        if rule.changed != nil { OtherAction(app.words.backToDefault) { model.backToDefault(rule) } }
    }
}
