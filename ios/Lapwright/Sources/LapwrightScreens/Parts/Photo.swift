import LapwrightModels
import SwiftUI

import struct LapwrightCore.StepLine
import struct LapwrightCore.StepPhoto

/// A photo, small; a tap shows it large. One that is not here, or cannot be read, is the sign of a camera.
struct Thumbnail: View {
    let app: AppModel
    let photo: StepPhoto
    let step: String
    @Environment(\.look) private var look

    init(_ app: AppModel, _ photo: StepPhoto, of step: String) {
        (self.app, self.photo, self.step) = (app, photo, step)
    }

    private var here: Bool { photo.place == .here }

    var body: some View {
        Button {
            if here { app.look(photo) }
        } label: {
            if here {
                AsyncImage(url: URL(fileURLWithPath: photo.file)) { image in
                    image.resizable().scaledToFit()
                } placeholder: {
                    Icon(.camera, look.inks.done)
                }
                .frame(width: Look.target, height: Look.target)
                .clipped()
            } else {
                Icon(.camera, look.inks.warning).frame(width: Look.target, height: Look.target)
            }
        }
        .buttonStyle(.plain)
        .accessibilityLabel("\(app.words.photo): \(step)")
    }
}

/// The photo that is looked at, in place of its screen, until it is closed; the one before it can stand beside it.
struct LargePhoto: View {
    let app: AppModel
    @Environment(\.look) private var look

    init(_ app: AppModel) {
        self.app = app
    }

    var body: some View {
        let steps = app.lookedSteps
        VStack(spacing: 6) {
            // What is compared stands side by side where the phone lies, and one over the other where it stands.
            GeometryReader { space in
                if space.size.width > space.size.height {
                    HStack(spacing: 6) { photos(steps) }
                } else {
                    VStack(spacing: 6) { photos(steps) }
                }
            }
            if steps.count > 1 {
                OtherAction(app.comparing ? app.words.compareNot : app.words.compare) { app.compare(!app.comparing) }
            }
            OtherAction(app.words.close, .close) { app.look(nil) }
        }
        .padding(8)
        .background(look.inks.ground)
    }

    private func photos(_ steps: [StepLine]) -> some View {
        ForEach(app.comparing ? steps : Array(steps.suffix(1)), id: \.code) { step in
            if let photo = step.photo { large(photo, of: step) }
        }
    }

    /// A photo under what its step says.
    private func large(_ photo: StepPhoto, of step: StepLine) -> some View {
        VStack(alignment: .leading, spacing: 4) {
            Text(step.text).font(look.aside)
            AsyncImage(url: URL(fileURLWithPath: photo.file)) { image in
                image.resizable().scaledToFit()
            } placeholder: {
                EmptyView()
            }
            .frame(maxWidth: .infinity, maxHeight: .infinity)
            .accessibilityLabel("\(app.words.photo): \(step.text)")
        }
    }
}
