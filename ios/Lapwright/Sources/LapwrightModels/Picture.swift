import LapwrightCore
import Observation

/// One drawing of the core: fetched again only where what is drawn, or the frame, has changed.
@MainActor @Observable
public final class PictureModel {
    /// What is drawn.
    public let subject: Subject
    /// What to put on the canvas; nil until it was fetched, and where there is nothing to draw yet.
    public private(set) var strokes: [Stroke]?
    /// The drawing that the strokes come from.
    public private(set) var drawing: Drawing?

    @ObservationIgnored private unowned let app: AppModel
    @ObservationIgnored private var fetched: (revision: Int64, frame: Frame)?

    public init(_ subject: Subject, app: AppModel) {
        (self.subject, self.app) = (subject, app)
    }

    /// Fetches the drawing of a revision for a frame, unless it is here already.
    public func fetch(_ revision: Int64, for frame: Frame) async {
        if let fetched, fetched == (revision, frame) { return }
        let drawing = try? await app.bookActor.drawing(app.context(), subject, frame)
        // Another revision or frame is wanted by now.
        if Task.isCancelled { return }
        // Where there is none, something else must be answered first: the screen around says what.
        strokes = drawing.flatMap { try? Stroke.all(in: $0) }
        self.drawing = strokes == nil ? nil : drawing
        fetched = strokes == nil ? nil : (revision, frame)
    }

    /// Where a tap leads.
    public func target(x: Float, y: Float) -> Target? {
        drawing?.targets.first { $0.left <= x && x <= $0.right && $0.top <= y && y <= $0.bottom }
    }
}
