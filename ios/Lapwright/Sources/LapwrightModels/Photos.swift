import LapwrightCore

// A photo of a step. The book names the file before the camera opens, and looks at it when it is closed: so nothing is lost
// where the app is stopped in between.
extension AppModel {
    /// Takes a photo of a step of the board or penetration in hand.
    @discardableResult public func takePhoto(_ step: StepLine) -> Task<Void, Never> {
        let of = place
        guard !locked, let begin = of.beginningPhoto(step.code) else { return Task {} }
        return Task { [self] in
            await act(begin).value
            let photo = (screen?.model as? any Signing)?.steps.first { $0.code == step.code }?.photo
            guard let photo, photo.place == .waiting else { return }
            let opened = await services.camera.fill(photo.file)
            if let takeIn = of.takingPhotoIn(step.code, closed: true) { await act(takeIn).value }
            if !opened { tell(words.noCamera) }
        }
    }

    /// The view of a place after what a camera left while the program was gone was taken in.
    func withPhotos(_ place: Place, _ view: View) async -> View {
        var view = view
        for step in view.steps where step.photo?.place == .waiting {
            guard let takeIn = place.takingPhotoIn(step.code, closed: false) else { continue }
            if let outcome = try? await bookActor.act(context(), takeIn) { view = outcome.view }
        }
        return view
    }

    /// The steps whose photo is looked at, in the order of the work: the one before it first, where there is one.
    public var lookedSteps: [StepLine] {
        let taken = (screen?.model as? any Signing)?.steps.filter { $0.photoHere != nil } ?? []
        guard let at = taken.firstIndex(where: { $0.photo?.photo == looked?.photo }) else { return [] }
        return Array(taken[max(at - 1, 0)...at])
    }

    /// Hands on a photo under a title, without the place where it was taken.
    @discardableResult public func sharePhoto(_ photo: StepPhoto, title: String) -> Task<Void, Never> {
        tap { [self] in
            let path = services.share.place("photo.jpg")
            try await bookActor.exportPhoto(photo.photo, path)
            services.share.file(path, title: title)
        }
    }
}

extension Place {
    /// What names the file for a photo of a step; nil where there are no steps.
    fileprivate func beginningPhoto(_ step: String) -> Action? {
        switch self {
        case .board(let board): .boardKind(action: .beginPhoto(board: board, step: step))
        case .penetration(let hole): .penetrationKind(action: .beginPhoto(penetration: hole, step: step))
        default: nil
        }
    }

    /// What has the book look at that file, which is full where the camera is `closed`; nil where there are no steps.
    fileprivate func takingPhotoIn(_ step: String, closed: Bool) -> Action? {
        switch self {
        case .board(let board): .boardKind(action: .takePhotoIn(board: board, step: step, closed: closed))
        case .penetration(let hole):
            .penetrationKind(action: .takePhotoIn(penetration: hole, step: step, closed: closed))
        default: nil
        }
    }
}

extension View {
    /// The steps of a board or a penetration.
    fileprivate var steps: [StepLine] {
        switch self {
        case .boardKind(let view): view.steps
        case .penetrationKind(let view): view.steps
        default: []
        }
    }
}
