import Accessibility
import LapwrightModels
import SwiftUI

import struct LapwrightCore.Note

/// The one next action of a screen; where it wants a photo, what opens the camera stands beside it.
struct Next {
    let text: String
    let glyph: Glyph?
    let camera: (@MainActor () -> Void)?
    let act: @MainActor () -> Void

    init(
        _ text: String, _ glyph: Glyph? = nil, camera: (@MainActor () -> Void)? = nil,
        act: @escaping @MainActor () -> Void
    ) {
        (self.text, self.glyph, self.camera, self.act) = (text, glyph, camera, act)
    }
}

/// The frame of every screen: what is read above, what is tapped below in the thumb's half; back and the done list in the
/// corner of the other hand.
///
/// `cautions` stand right over the next action and do not scroll away: they are read before it. While a question is asked its entry stands below, and `strip` may keep a narrow piece of the drawing in sight.
struct Frame<Content: View, Strip: View>: View {
    private let app: AppModel
    private let title: String
    private let job: String?
    private let next: Next?
    private let cautions: [Note]
    private let content: Content
    private let strip: Strip
    @Environment(\.look) private var look

    init(
        _ app: AppModel,
        _ title: String,
        job: String? = nil,
        next: Next? = nil,
        cautions: [Note] = [],
        @ViewBuilder content: () -> Content,
        @ViewBuilder strip: () -> Strip
    ) {
        (self.app, self.title, self.job, self.next, self.cautions) = (app, title, job, next, cautions)
        (self.content, self.strip) = (content(), strip())
    }

    var body: some View {
        GeometryReader { space in
            let height = space.size.height
            // A phone that lies on its side, or is small and set to large texts, has no room for a question over its keys. A line
            // of text needs little room, and its keyboard takes much.
            if isLow(height) && space.size.width >= 600 {
                lying(height).padding(8)
            } else if isLow(height) && app.entry.question != nil {
                ScrollView {
                    VStack(spacing: 6) {
                        above(height)
                        below(height)
                    }
                    .padding(8)
                }
            } else {
                VStack(spacing: 6) {
                    ScrollView { above(height) }.allowsHitTesting(!app.locked)
                    below(height)
                }
                .padding(8)
            }
        }
    }

    private func isLow(_ height: CGFloat) -> Bool {
        !app.locked && app.entry.question?.kind != .textKind && height < (look.large ? 760 : 600)
    }

    /// What is read in one column, what is tapped in the other, on the thumb's side.
    private func lying(_ height: CGFloat) -> some View {
        HStack(spacing: 8) {
            if look.leftHanded {
                tapped(height)
                beside(height)
            } else {
                beside(height)
                tapped(height)
            }
        }
    }

    private func beside(_ height: CGFloat) -> some View {
        VStack(spacing: 6) {
            ScrollView {
                above(height)
                if look.large { number }
            }
            if app.entry.question != nil {
                if !look.large { number }
                Corner(app: app, job: job, next: nil)
            }
        }
    }

    @ViewBuilder private var number: some View {
        if let question = app.entry.question { QuestionNumber(app: app, question: question, low: true) }
    }

    private func tapped(_ height: CGFloat) -> some View {
        VStack(spacing: 6) {
            if let question = app.entry.question {
                ScrollView { QuestionKeys(app: app, question: question, height: height - 16, alone: true) }
            } else {
                DoneBar(app: app, height: height)
                Spacer()
                if !cautions.isEmpty { ScrollView { CautionPanel(app.words.caution, cautions) } }
                if let next { NextWithCamera(app: app, next: next) }
                Corner(app: app, job: job, next: nil)
            }
        }
        .frame(maxWidth: app.entry.question == nil ? 300 : .infinity)
    }

    private func above(_ height: CGFloat) -> some View {
        VStack(alignment: .leading, spacing: 6) { read(height) }.frame(maxWidth: .infinity, alignment: .leading)
    }

    /// What is tapped, on a screen of a height.
    @ViewBuilder private func below(_ height: CGFloat) -> some View {
        if app.locked {
            HoldToUnlock(app: app)
        } else {
            DoneBar(app: app, height: height)
            entry(height)
            if app.entry.question == nil && !cautions.isEmpty {
                // A scrolled one takes all the room that it may have.
                if look.large {
                    // What was done stands over them for some seconds, and takes of their room.
                    ScrollView { CautionPanel(app.words.caution, cautions) }
                        .frame(maxHeight: height * (app.done == nil ? 0.35 : 0.25))
                } else {
                    CautionPanel(app.words.caution, cautions)
                }
            }
            Corner(app: app, job: job, next: app.entry.question == nil ? next : nil)
        }
    }

    @ViewBuilder private func entry(_ height: CGFloat) -> some View {
        if let question = app.entry.question { QuestionEntry(app: app, question: question, height: height) }
    }

    /// What is read.
    @ViewBuilder private func read(_ height: CGFloat) -> some View {
        if app.restored { Text(app.words.cameBack).font(.strong).foregroundStyle(look.inks.chalk) }
        if let question = app.entry.question {
            QuestionHead(app: app, question: question, low: height < 660)
            strip
            if Strip.self == EmptyView.self && !question.picture.isEmpty {
                Drawn(app, .tapePlace(picture: question.picture), 0, most: 130)
            }
        } else {
            if let trouble = app.trouble { TroublePanel(trouble.text) }
            Text(title).font(look.heading).accessibilityAddTraits(.isHeader)
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
        cautions: [Note] = [],
        @ViewBuilder content: () -> Content
    ) {
        self.init(app, title, job: job, next: next, cautions: cautions, content: content, strip: { EmptyView() })
    }
}

/// What was done last, with its undo, for some seconds.
private struct DoneBar: View {
    let app: AppModel
    /// Of the screen.
    let height: CGFloat
    @Environment(\.look) private var look

    var body: some View {
        if let done = app.done {
            HStack(spacing: 8) {
                Icon(.tick, look.inks.done, size: 24)
                if look.large {
                    ScrollView { text(done) }.frame(maxHeight: max(64, height * 0.16))
                } else {
                    text(done)
                }
                GlyphButton(.undo, app.words.undo, spoken: "\(app.words.undo): \(done.said)") { app.undo() }
            }
            .padding(.leading, 10)
            .border(look.inks.done, width: 1.5)
            .task(id: done) {
                AccessibilityNotification.Announcement(done.said).post()
                // It stays where the wait is cut short: something else was done by then.
                guard (try? await Task.sleep(for: .seconds(AppModel.seenSeconds))) != nil else { return }
                app.forget(done)
            }
        }
    }

    private func text(_ done: Done) -> some View {
        Text("\(app.words.done): \(done.said)")
            .font(.small)
            .foregroundStyle(look.inks.done)
            .frame(maxWidth: .infinity, alignment: .leading)
    }
}

/// Back and the done list in one corner, the next action in the thumb's: beside them, or over them where texts are large or
/// the lock stands there, too.
private struct Corner: View {
    let app: AppModel
    let job: String?
    let next: Next?
    @Environment(\.look) private var look

    /// Many words have no room beside the corner.
    private var isOver: Bool { look.large || app.lockable || (next?.text.count ?? 0) > 48 }

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
        if let next { NextWithCamera(app: app, next: next) }
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
        if app.lockable { GlyphButton(.lock, app.words.lockSign, spoken: app.words.lock) { app.lock(true) } }
    }
}

/// The next action, and beside it the camera where it wants a photo.
private struct NextWithCamera: View {
    let app: AppModel
    let next: Next

    var body: some View {
        HStack(spacing: 6) {
            NextAction(next.text, next.glyph, act: next.act)
            if let camera = next.camera {
                GlyphButton(.camera, app.words.photo, spoken: "\(app.words.photo): \(next.text)", act: camera)
            }
        }
    }
}
