import LapwrightModels
import SwiftUI

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

/// The photo that is looked at, in place of its screen, until it is closed.
struct LargePhoto: View {
    let app: AppModel
    let photo: StepPhoto
    @Environment(\.look) private var look

    init(_ app: AppModel, _ photo: StepPhoto) {
        (self.app, self.photo) = (app, photo)
    }

    var body: some View {
        VStack(spacing: 6) {
            AsyncImage(url: URL(fileURLWithPath: photo.file)) { image in
                image.resizable().scaledToFit()
            } placeholder: {
                EmptyView()
            }
            .frame(maxWidth: .infinity, maxHeight: .infinity)
            .accessibilityLabel(app.words.photo)
            OtherAction(app.words.close, .close) { app.look(nil) }
        }
        .padding(8)
        .background(look.inks.ground)
    }
}
