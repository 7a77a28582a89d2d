import LapwrightModels
import SwiftUI

/// What taking in a colleague's file would do, before it is done; the words of a new device are compared here.
struct TakeInScreen: View {
    let model: TakeInModel

    private var app: AppModel { model.app }

    private var next: Next? {
        let text = model.view.ahead.isEmpty ? app.words.takeInNow : app.words.takeInAhead
        return model.view.ready ? Next(text) { model.takeIn() } : nil
    }

    var body: some View {
        let view = model.view
        Frame(app, app.words.takeIn, next: next) {
            ForEach(view.refused, id: \.self) { Warning($0) }
            if !view.ahead.isEmpty { Warning(view.ahead) }
            ForEach(view.lines, id: \.self) { Text($0).font(.label) }
            ForEach(view.senders, id: \.device) { sender in
                Text(sender.said).font(.label)
                if !sender.trusted {
                    Text(sender.words).font(.large)
                    OtherAction(app.words.sameWords) { model.trust(sender) }
                }
            }
            OtherAction(app.words.cancel) { model.cancel() }
        }
    }
}
