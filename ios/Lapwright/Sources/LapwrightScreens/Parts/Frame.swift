import LapwrightModels
import SwiftUI

/// The one next action of a screen.
struct Next {
    let text: String
    let act: @MainActor () -> Void

    init(_ text: String, act: @escaping @MainActor () -> Void) {
        (self.text, self.act) = (text, act)
    }
}

/// The frame of every screen: what is read above, what is tapped below in the thumb's half; back and the done list in the
/// corner of the other hand. While a question is asked its entry stands below, and a strip of the drawing stays in sight.
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
        VStack(spacing: 6) {
            ScrollView {
                VStack(alignment: .leading, spacing: 6) {
                    if app.cameBack { Text(app.words.cameBack).font(.strong).foregroundStyle(look.inks.chalk) }
                    if let trouble = app.trouble { Warning(trouble.text) }
                    if let question = app.entry.question {
                        QuestionHead(app: app, question: question)
                        strip
                    } else {
                        Text(title).font(.large).accessibilityAddTraits(.isHeader)
                        content
                    }
                }
                .frame(maxWidth: .infinity, alignment: .leading)
            }
            if let question = app.entry.question { QuestionEntry(app: app, question: question) }
            Corner(app: app, job: job, next: app.entry.question == nil ? next : nil)
        }
        .padding(8)
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

/// Back and the done list in one corner, the next action in the thumb's.
private struct Corner: View {
    let app: AppModel
    let job: String?
    let next: Next?
    @Environment(\.look) private var look

    var body: some View {
        HStack(spacing: 6) {
            if look.leftHanded {
                action
                signs
            } else {
                signs
                action
            }
        }
    }

    @ViewBuilder private var action: some View {
        if let next { NextAction(next.text, act: next.act) } else { Spacer() }
    }

    @ViewBuilder private var signs: some View {
        if app.entry.question != nil {
            SignButton("chevron.down", app.words.close) { app.putQuestionAway() }
        } else if app.canGoBack {
            SignButton("chevron.backward", app.words.back) { app.back() }
        }
        SignButton("list.bullet", app.words.doneList) { app.go(.doneList(job: job)) }
        if let group = app.lastGroup {
            SignButton("arrow.uturn.backward", app.words.undo) { app.undo(group) }
        }
        SignButton("lock", app.words.lock) { app.locked = true }
    }
}
