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
        step.state == .open && step.photoAsked && step.photo?.place != .here
    }
}
