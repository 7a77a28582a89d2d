import LapwrightModels
import SwiftUI

/// Who holds this phone, and how it speaks.
struct SettingsScreen: View {
    let model: SettingsModel
    @Environment(\.look) private var look

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, app.words.settings) {
            Heading(app.words.signers)
            ForEach(model.view.signers, id: \.name) { signer in
                HStack(spacing: 8) {
                    Line {
                        model.take(signer)
                    } content: {
                        Named(signer.name, "")
                        if signer.current { Image(systemName: "checkmark").accessibilityLabel(app.words.done) }
                    }
                    SignButton("minus", [app.words.remove, signer.name].spoken) { model.drop(signer) }
                }
            }
            OtherAction(app.words.newSigner) { model.newSigner() }
            ForEach(model.view.settings, id: \.field) { setting in
                Heading(setting.title)
                Text(setting.hint).font(.small)
                if setting.choices.isEmpty {
                    Answers(app, [setting])
                }
                ForEach(setting.choices, id: \.code) { choice in
                    Line {
                        model.choose(setting, choice)
                    } content: {
                        Named(choice.label, "")
                        if choice.label == setting.answer {
                            Image(systemName: "checkmark").accessibilityLabel(app.words.done)
                        }
                    }
                }
            }
        }
    }
}
