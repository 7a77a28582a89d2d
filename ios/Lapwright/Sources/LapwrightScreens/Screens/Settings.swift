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
                        if signer.current { Icon(.tick, look.inks.done) }
                    }
                    SignButton(.close, "\(app.words.remove): \(signer.name)") { model.drop(signer) }
                }
            }
            OtherAction(app.words.newSigner) { model.newSigner() }
            Heading(app.words.answers)
            Answers(app, model.view.settings)
        }
    }
}
