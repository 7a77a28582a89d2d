import LapwrightModels
import SwiftUI

/// The one next action of a screen.
struct Next {
    let text: String
    let glyph: Glyph?
    let act: @MainActor () -> Void

    init(_ text: String, _ glyph: Glyph? = nil, act: @escaping @MainActor () -> Void) {
        (self.text, self.glyph, self.act) = (text, glyph, act)
    }
}

/// The frame of every screen: what is read above, what is tapped below in the thumb's half; back and the done list in the
/// corner of the other hand.
///
/// While a question is asked its entry stands below, and `strip` may keep a narrow piece of the drawing in sight.
struct Frame<Content: View, Strip: View>: View {
    private let app: AppModel
    private let title: String
    private let job: String?
    private let next: Next?
    private let content: Content
    private let strip: Strip
    @Environment(\.look) private var look

    init(
        _ app: AppModel,
        _ title: String,
        job: String? = nil,
        next: Next? = nil,
        @ViewBuilder content: () -> Content,
        @ViewBuilder strip: () -> Strip
    ) {
        (self.app, self.title, self.job, self.next) = (app, title, job, next)
        (self.content, self.strip) = (content(), strip())
    }

    var body: some View {
        GeometryReader { space in
            // A phone that lies on its side, or is small and set to large texts, has no room for a question over its keys. A line
            // of text needs little room, and its keyboard takes much.
            if isTight(space.size) && space.size.width >= 600 {
                HStack(alignment: .top, spacing: 8) {
                    VStack(spacing: 6) {
                        ScrollView { above }
                        Corner(app: app, job: job, next: nil)
                    }
                    ScrollView { entry(space.size.height) }
                }
                .padding(8)
            } else if isTight(space.size) {
                ScrollView {
                    VStack(spacing: 6) {
                        above
                        below(space.size.height)
                    }
                    .padding(8)
                }
            } else {
                VStack(spacing: 6) {
                    ScrollView { above }.allowsHitTesting(!app.locked)
                    below(space.size.height)
                }
                .padding(8)
            }
        }
    }

    private func isTight(_ space: CGSize) -> Bool {
        guard let question = app.entry.question, question.kind != .textKind, !app.locked else { return false }
        return space.height < (look.large ? 760 : 600)
    }

    private var above: some View {
        VStack(alignment: .leading, spacing: 6) { read }.frame(maxWidth: .infinity, alignment: .leading)
    }

    /// What is tapped, on a screen of a height.
    @ViewBuilder private func below(_ height: CGFloat) -> some View {
        if app.locked {
            HoldToUnlock(app: app)
        } else {
            entry(height)
            Corner(app: app, job: job, next: app.entry.question == nil ? next : nil)
        }
    }

    @ViewBuilder private func entry(_ height: CGFloat) -> some View {
        if let question = app.entry.question { QuestionEntry(app: app, question: question, height: height) }
    }

    /// What is read.
    @ViewBuilder private var read: some View {
        if app.restored { Text(app.words.cameBack).font(.strong).foregroundStyle(look.inks.chalk) }
        if let question = app.entry.question {
            QuestionHead(app: app, question: question)
            strip
            if !question.picture.isEmpty { Drawn(app, .tapePlace(picture: question.picture), 0, most: 130) }
        } else {
            if let trouble = app.trouble { TroublePanel(trouble.text) }
            Text(title).font(.large).accessibilityAddTraits(.isHeader)
            content
        }
    }
}

extension Frame where Strip == EmptyView {
    init(
        _ app: AppModel,
        _ title: String,
        job: String? = nil,
        next: Next? = nil,
        @ViewBuilder content: () -> Content
    ) {
        self.init(app, title, job: job, next: next, content: content, strip: { EmptyView() })
    }
}

/// Back and the done list in one corner, the next action in the thumb's: beside them, or over them where texts are large or
/// the lock stands there, too.
private struct Corner: View {
    let app: AppModel
    let job: String?
    let next: Next?
    @Environment(\.look) private var look

    private var isOver: Bool { look.large || app.lockable }

    var body: some View {
        VStack(spacing: 6) {
            if isOver { action }
            HStack(spacing: 6) {
                if look.leftHanded {
                    beside
                    lock
                    doneList
                    back
                } else {
                    back
                    doneList
                    lock
                    beside
                }
            }
        }
    }

    @ViewBuilder private var action: some View {
        if let next { NextAction(next.text, next.glyph, act: next.act) }
    }

    @ViewBuilder private var beside: some View {
        if next == nil || isOver { Spacer() } else { action }
    }

    @ViewBuilder private var back: some View {
        if app.canGoBack { GlyphButton(.back, app.words.back) { app.back() } }
    }

    private var doneList: some View {
        GlyphButton(.doneList, app.words.doneList) { app.go(.doneList(job: job)) }
    }

    @ViewBuilder private var lock: some View {
        if app.lockable { GlyphButton(.lock, app.words.lock) { app.lock(true) } }
    }
}
