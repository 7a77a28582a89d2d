import LapwrightModels
import LapwrightScreens
import SwiftUI
import UIKit

/// The app: opens the book, then shows where its signer left off.
@main
struct LapwrightApp: App {
    var body: some Scene {
        WindowGroup { Start() }
    }
}

/// Until the book is open; where it cannot be opened, why.
struct Start: View {
    @State private var app: AppModel?
    @State private var trouble: Trouble?
    @Environment(\.scenePhase) private var phase

    var body: some View {
        ZStack {
            if let app {
                Root(app: app)
            } else if let trouble {
                Text(trouble.text)
            }
        }
        .task { await open() }
        .onChange(of: phase) { _, now in
            if now == .background, let app { hide(app) }
        }
    }

    /// Keeps a copy of the book. The phone is asked for the time that it takes: else it may stop us in the middle.
    private func hide(_ app: AppModel) {
        let time = UIApplication.shared.beginBackgroundTask(expirationHandler: nil)
        Task {
            await app.hidden().value
            UIApplication.shared.endBackgroundTask(time)
        }
    }

    private func open() async {
        guard app == nil else { return }
        do {
            let support = FileManager.default.urls(for: .applicationSupportDirectory, in: .userDomainMask)
            let folder = support[0].appendingPathComponent("Book")
            let language = Locale.current.language.languageCode?.identifier ?? ""
            // A long book is read, and where it is damaged put together again, off the thread that draws.
            let bookActor = try await Task.detached { try BookActor(folder: folder, language: language) }.value
            app = try await AppModel.open(bookActor, .phone)
        } catch {
            trouble = Trouble(error)
        }
    }
}

extension Services {
    /// What this phone does for the models.
    @MainActor static var phone: Services {
        Services(
            speech: PhoneSpeech(),
            haptics: PhoneHaptics(),
            share: PhoneShare(),
            camera: PhoneCamera(),
            keepAwake: PhoneKeepAwake(),
            listening: PhoneListening(),
            files: PhoneFilePicker(),
            clock: SystemClock(),
            entropy: SystemEntropy()
        )
    }
}
