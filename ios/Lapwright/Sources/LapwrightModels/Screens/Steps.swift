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
    /// The questions why steps are left out.
    public var reasons: [Question] { steps.compactMap(\.asks) }

    /// What leaves a step out for a reason, where that is what was asked.
    func leaving(_ question: Question, _ reason: String) -> Action? {
        steps.first { $0.asks?.field == question.field }
            .map { signing($0, StepSaid(how: .skip, note: reason, measured: "", photo: nil)) }
    }

    /// The step that is to be done now.
    public var currentStep: StepLine? { steps.first { $0.state == .open } }

    /// Done, in one tap, with the photo that was taken of it.
    @discardableResult public func tick(_ step: StepLine) -> Task<Void, Never> {
        let photo = step.photo.flatMap { $0.place == .here && !$0.signed ? $0.photo : nil }
        return sign(step, StepSaid(how: .tick, note: "", measured: "", photo: photo))
    }

    /// Asks why a step is left out.
    public func leaveOut(_ step: StepLine) {
        if let question = step.asks { app.ask(question) }
    }

    /// What was said before no longer holds.
    @discardableResult public func takeBack(_ step: StepLine) -> Task<Void, Never> {
        sign(step, StepSaid(how: .takeBack, note: "", measured: "", photo: nil))
    }

    private func sign(_ step: StepLine, _ said: StepSaid) -> Task<Void, Never> {
        app.act(signing(step, said))
    }

    /// Whether the camera stands beside a step: a photo is asked for, and none is there.
    public func wantsPhoto(_ step: StepLine) -> Bool {
        beginningPhoto(step) != nil && step.state == .open && step.photoAsked && step.photo?.place != .here
    }

    /// Whether a photo can be taken although none is wanted: one that is not asked for, or another one.
    public func offersPhoto(_ step: StepLine) -> Bool {
        beginningPhoto(step) != nil && step.state == .open && !wantsPhoto(step)
    }

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
}
