import LapwrightModels
import SwiftUI

import struct LapwrightCore.Choice
import struct LapwrightCore.Question

/// The question: above, where it is read.
struct QuestionHead: View {
    let app: AppModel
    let question: Question
    /// Whether the glass is low.
    let low: Bool
    @Environment(\.look) private var look

    private var font: Font {
        // A long one has little room over keys for gloves.
        if look.gloves { return look.face(18, bold: true, atMost: question.title.count > 60 ? 1 : 1.4) }
        return low ? look.face(18, bold: true, atMost: 1.6) : look.heading
    }

    var body: some View {
        // The way out stays in sight where a long question goes on below.
        HStack(alignment: .top, spacing: 4) {
            VStack(alignment: .leading, spacing: 2) {
                let whose = [question.about, question.nth].filter { !$0.isEmpty }
                if !whose.isEmpty { Text(whose.joined(separator: " · ")).font(look.aside) }
                // Where texts are large, or the glass is low, the whole question matters more than a large first line of it.
                Text(question.title)
                    .font(font)
                    .accessibilityAddTraits(.isHeader)
                if !question.hint.isEmpty { Text(question.hint).font(look.aside) }
            }
            .frame(maxWidth: .infinity, alignment: .leading)
            GlyphButton(.close, app.words.close) { app.putQuestionAway() }
        }
        if let trouble = app.trouble { TroublePanel(trouble.text) }
        if let offer = question.offer { OtherAction(offer.said) { app.entry.accept(offer) } }
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
            case .textKind: TextEntry(app: app, question: question)
            default:
                QuestionNumber(app: app, question: question, low: height < 660)
                QuestionKeys(app: app, question: question, height: height)
            }
        }
    }
}

/// The number that is typed, the phone's ear beside it, and under it the tape where it is a length.
struct QuestionNumber: View {
    let app: AppModel
    let question: Question
    /// Whether the glass is low.
    let low: Bool

    var body: some View {
        if question.kind != .choiceKind {
            HStack(spacing: 6) {
                if app.listening {
                    Text(app.words.listening).font(.large).frame(maxWidth: .infinity, alignment: .leading)
                } else {
                    Typed(app: app, question: question, low: low)
                }
                if app.listens {
                    GlyphButton(.listen, app.words.listenSign, spoken: app.words.listen) { app.listen() }
                }
            }
        }
        // Fractions are tapped on it.
        if question.kind == .lengthKind { Tape(app: app, name: app.words.tape) }
    }
}

/// The keys of a number, or the answers to choose from; they stand over the corner, or `alone` in a column of their own.
struct QuestionKeys: View {
    let app: AppModel
    let question: Question
    /// Of the screen.
    let height: CGFloat
    var alone = false

    var body: some View {
        if question.kind == .choiceKind {
            let most = alone ? height : max(height - 240, 200)
            Choices(question.choices, answer: question.answer, most: most) { app.entry.choose($0) }
        } else {
            // On a small phone the keys for gloves leave room for the question.
            Keypad(app: app, signed: question.kind != .wholeKind, height: height - (alone ? 6 : 320))
        }
    }
}

/// The number that is being typed; before the first key the one that stands, in grey.
private struct Typed: View {
    let app: AppModel
    let question: Question
    let low: Bool
    @Environment(\.look) private var look

    /// Its question is to stay whole over it.
    private var most: CGFloat? {
        if look.gloves || low { return 44 }
        return look.large ? 54 : nil
    }

    var body: some View {
        let text = app.entry.text
        if text.isEmpty {
            Answer(question.answer.isEmpty ? "–" : question.answer, color: look.inks.planned, most: most)
        } else {
            let unit = question.kind == .lengthKind ? app.frame.unit : ""
            Answer(text, unit: unit, color: look.inks.chalk, most: most)
        }
    }
}

/// A few answers, one of them to tap; many stand in two columns, so that all are in sight.
private struct Choices: View {
    let choices: [Choice]
    let answer: String
    /// How high they may be together.
    let most: CGFloat
    let choose: @MainActor (Choice) -> Void
    @Environment(\.look) private var look

    init(
        _ choices: [Choice], answer: String, most: CGFloat, choose: @escaping @MainActor (Choice) -> Void
    ) {
        (self.choices, self.answer, self.most, self.choose) = (choices, answer, most, choose)
    }

    /// More than six do not stand under each other on every phone.
    private var columns: Int { choices.count > 6 && !look.large ? 2 : 1 }

    private var rows: [[Choice]] {
        stride(from: 0, to: choices.count, by: columns).map { from in
            Array(choices[from..<min(from + columns, choices.count)])
        }
    }

    var body: some View {
        ScrollView {
            VStack(spacing: 6) {
                ForEach(rows, id: \.first?.code) { row in
                    HStack(spacing: 6) {
                        ForEach(row, id: \.code) { choice in line(choice) }
                        if row.count < columns { Spacer().frame(maxWidth: .infinity) }
                    }
                }
            }
        }
        .frame(maxHeight: most)
    }

    private func line(_ choice: Choice) -> some View {
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
