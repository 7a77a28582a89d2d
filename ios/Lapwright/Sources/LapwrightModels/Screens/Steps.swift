import LapwrightCore

/// A screen with steps to sign.
@MainActor public protocol Signing: ScreenModel {
    var app: AppModel { get }
    /// The steps in their order.
    var steps: [StepLine] { get }
    /// What signs a step.
    func signing(_ step: StepLine, _ said: StepSaid) -> Action
}

extension Signing {
    /// The step that is to be done now.
    public var currentStep: StepLine? { steps.first { $0.state == .open } }

    /// Done, in one tap, with the photo that was taken of it.
    @discardableResult public func tick(_ step: StepLine) -> Task<Void, Never> {
        let photo = step.photoHere.flatMap { $0.signed ? nil : $0.photo }
        return sign(step, StepSaid(how: .tick, note: "", measured: "", photo: photo))
    }

    /// What was said before no longer holds.
    @discardableResult public func takeBack(_ step: StepLine) -> Task<Void, Never> {
        sign(step, StepSaid(how: .takeBack, note: "", measured: "", photo: nil))
    }

    private func sign(_ step: StepLine, _ said: StepSaid) -> Task<Void, Never> {
        app.sign(signing(step, said))
    }

    /// A tap on the box of a step: what there is to mind is read before it is signed.
    @discardableResult public func tapBox(_ step: StepLine) -> Task<Void, Never> {
        if step.state != .open { return takeBack(step) }
        if !step.cautionsRead && step.code != app.openStep {
            app.open(step)
            return Task {}
        }
        return tick(step)
    }

    /// Whether the camera stands beside a step: a photo is asked for, and none is there.
    public func wantsPhoto(_ step: StepLine) -> Bool {
        step.state == .open && step.photoAsked && step.photoHere == nil
    }
}

extension StepLine {
    /// Its photo, where the file is there.
    public var photoHere: StepPhoto? { photo?.place == .here ? photo : nil }
}
