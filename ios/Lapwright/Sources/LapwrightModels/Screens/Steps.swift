import LapwrightCore

/// A screen with steps to sign.
@MainActor public protocol Signing: ScreenModel {
    var app: AppModel { get }
    /// The steps in their order.
    var steps: [StepLine] { get }
    /// What signs a step.
    func signing(_ step: StepLine, _ said: StepSaid) -> Action
    /// What names the file for a photo of a step; nil where no photos are taken.
    func beginningPhoto(_ step: StepLine) -> Action?
    /// What has the book look at that file; nil where no photos are taken.
    func takingPhotoIn(_ step: StepLine, closed: Bool) -> Action?
}

extension Signing {
    /// The step that is to be done now.
    public var currentStep: StepLine? { steps.first { $0.state == .open } }

    /// Done, in one tap, with the photo that was taken of it.
    @discardableResult public func tick(
        _ step: StepLine,
        note: String = "",
        measured: String = ""
    ) -> Task<Void, Never> {
        let photo = step.photo.flatMap { $0.place == .here && !$0.signed ? $0.photo : nil }
        return sign(step, StepSaid(how: .tick, note: note, measured: measured, photo: photo))
    }

    /// Left out; where later work hides the step, the note must say why.
    @discardableResult public func leaveOut(_ step: StepLine, note: String) -> Task<Void, Never> {
        sign(step, StepSaid(how: .skip, note: note, measured: "", photo: nil))
    }

    /// What was said before no longer holds.
    @discardableResult public func takeBack(_ step: StepLine) -> Task<Void, Never> {
        sign(step, StepSaid(how: .takeBack, note: "", measured: "", photo: nil))
    }

    private func sign(_ step: StepLine, _ said: StepSaid) -> Task<Void, Never> {
        app.act(signing(step, said))
    }

    /// Whether a photo can be taken of a step.
    public func takesPhoto(_ step: StepLine) -> Bool { beginningPhoto(step) != nil }

    /// Takes a photo of a step. The book names the file before the camera opens, and looks at it when it is closed: so
    /// nothing is lost where the app is stopped in between.
    @discardableResult public func takePhoto(_ step: StepLine) -> Task<Void, Never> {
        guard !app.locked, let begin = beginningPhoto(step) else { return Task {} }
        return Task {
            await app.act(begin).value
            guard let photo = steps.first(where: { $0.code == step.code })?.photo, photo.place == .waiting else {
                return
            }
            await app.services.camera.fill(photo.file)
            if let back = takingPhotoIn(step, closed: true) { await app.act(back).value }
        }
    }

    /// After a stop while the camera was open: looks at the files that photos are waited for in.
    public func lookForPhotos() async {
        for step in steps where step.photo?.place == .waiting {
            if let look = takingPhotoIn(step, closed: false) { await app.act(look).value }
        }
    }

    /// What is read aloud of a step: what to do, then what to mind.
    public func say(_ step: StepLine) {
        app.say(([step.text] + step.cautions.map(\.text)).joined(separator: " "))
    }
}
