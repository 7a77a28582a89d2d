import LapwrightModels
import SwiftUI

import struct LapwrightCore.Choice
import struct LapwrightCore.Question

/// The question: above, where it is read.
struct QuestionHead: View {
    let app: AppModel
    let question: Question
    @Environment(\.look) private var look

    var body: some View {
        // The way out stays in sight where a long question goes on below.
        HStack(alignment: .top, spacing: 4) {
            VStack(alignment: .leading, spacing: 2) {
                let whose = [question.about, question.nth].filter { !$0.isEmpty }
                if !whose.isEmpty { Text(whose.joined(separator: " · ")).font(.small) }
                // Where texts are large the whole question matters more than a large first line of it.
                Text(question.title).font(look.large ? .strong : .large).accessibilityAddTraits(.isHeader)
                if !question.hint.isEmpty { Text(question.hint).font(.small) }
            }
            .frame(maxWidth: .infinity, alignment: .leading)
            GlyphButton(.close, app.words.close) { app.putQuestionAway() }
        }
        if let trouble = app.trouble { TroublePanel(trouble.text) }
    }
}

/// Where the answer is given: below, where the thumb is. It stands on a screen of a `height`.
struct QuestionEntry: View {
    let app: AppModel
    let question: Question
    let height: CGFloat

    var body: some View {
        VStack(spacing: 6) {
            switch question.kind {
            case .lengthKind, .wholeKind:
                HStack(spacing: 6) {
                    if app.listening {
                        Text(app.words.listening).font(.large).frame(maxWidth: .infinity, alignment: .leading)
                    } else {
                        Typed(app: app, question: question)
                    }
                    if app.listens {
                        GlyphButton(.listen, app.words.listenSign, spoken: app.words.listen) { app.listen() }
                    }
                }
                Keypad(app: app, lengths: question.kind == .lengthKind, height: height)
            case .choiceKind:
                Choices(question.choices, answer: question.answer, height: height) { app.entry.choose($0) }
            case .textKind: TextEntry(app: app, question: question)
            }
        }
    }
}

/// The number that is being typed; before the first key the one that stands, in grey.
private struct Typed: View {
    let app: AppModel
    let question: Question
    @Environment(\.look) private var look

    var body: some View {
        let text = app.entry.text
        if text.isEmpty {
            Answer(question.answer.isEmpty ? "–" : question.answer, color: look.inks.planned)
        } else {
            Answer(text, unit: question.kind == .wholeKind ? "" : app.frame.unit, color: look.inks.chalk)
        }
    }
}

/// A few answers, one of them to tap.
private struct Choices: View {
    let choices: [Choice]
    let answer: String
    /// How high the screen is: the question and the corner under the answers take some of it.
    let height: CGFloat
    let choose: @MainActor (Choice) -> Void
    @Environment(\.look) private var look

    init(
        _ choices: [Choice], answer: String, height: CGFloat, choose: @escaping @MainActor (Choice) -> Void
    ) {
        (self.choices, self.answer, self.height, self.choose) = (choices, answer, height, choose)
    }

    var body: some View {
        ScrollView {
            VStack(spacing: 6) {
                ForEach(choices, id: \.code) { choice in
                    Line {
                        choose(choice)
                    } content: {
                        Text(choice.label)
                            .font(choice.label == answer ? .strong : .label)
                            .frame(maxWidth: .infinity, alignment: .leading)
                        if choice.label == answer { Icon(.tick, look.inks.done) }
                    }
                    .accessibilityAddTraits(choice.label == answer ? .isSelected : [])
                }
            }
        }
        .frame(maxHeight: max(height - 240, 200))
    }
}

/// A line of text from the phone's own keyboard.
private struct TextEntry: View {
    let app: AppModel
    let question: Question
    @Environment(\.look) private var look

    private var text: Binding<String> {
        Binding(get: { @MainActor [app] in app.entry.text }, set: { @MainActor [app] in app.entry.type($0) })
    }

    var body: some View {
        if look.large {
            field
            accept
        } else {
            HStack(spacing: 6) {
                field
                accept.fixedSize()
            }
        }
    }

    private var field: some View {
        TextField(question.title, text: text)
            .font(.large)
            .padding(12)
            .frame(minHeight: Look.target)
            .border(look.inks.ink, width: 1.5)
            .submitLabel(.done)
            .onSubmit { app.entry.accept() }
            .accessibilityLabel(question.title)
    }

    private var accept: some View { NextAction(app.words.accept) { app.entry.accept() } }
}
