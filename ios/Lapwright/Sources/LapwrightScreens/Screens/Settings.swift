import LapwrightModels
import SwiftUI

import struct LapwrightCore.SignerLine

/// Who holds this phone, and how it speaks.
struct SettingsScreen: View {
    let model: SettingsModel
    @Environment(\.look) private var look

    private var app: AppModel { model.app }

    var body: some View {
        Frame(app, app.words.settings) {
            Heading(app.words.signers)
            ForEach(model.view.signers, id: \.name) { signer in self.signer(signer) }
            OtherAction(app.words.newSigner) { model.newSigner() }
            Answers(app, model.view.settings)
        }
    }

    /// One tap takes the phone; each finds their own place again.
    private func signer(_ signer: SignerLine) -> some View {
        HStack(spacing: 4) {
            Line {
                model.take(signer)
            } content: {
                Text(signer.name)
                    .font(signer.current ? .strong : .label)
                    .frame(maxWidth: .infinity, alignment: .leading)
                if signer.current { Icon(.tick, look.inks.done) }
            }
            .accessibilityAddTraits(signer.current ? .isSelected : [])
            GlyphButton(.remove, app.words.remove, spoken: "\(app.words.remove): \(signer.name)") { model.drop(signer) }
        }
    }
}
