import LapwrightModels
import SwiftUI

import struct LapwrightCore.Question

/// What is asked, and what is typed so far, in digits that are read at arm's length.
struct QuestionHead: View {
    let app: AppModel
    let question: Question
    @Environment(\.look) private var look

    var body: some View {
        Text(question.title).font(.large).accessibilityAddTraits(.isHeader)
        Text(question.hint).font(.label)
        switch question.kind {
        case .lengthKind:
            HStack(alignment: .firstTextBaseline, spacing: 8) {
                Text(app.entry.text.isEmpty ? "–" : app.entry.text).font(.answer).minimumScaleFactor(0.7)
                Text(app.frame.unit).font(.large)
            }
            .accessibilityElement(children: .combine)
        case .wholeKind: Text(app.entry.text.isEmpty ? "–" : app.entry.text).font(.answer)
        case .choiceKind, .textKind: EmptyView()
        }
        if let reading = question.reading { ReadingLine(app, app.words.answers, reading) }
    }
}

/// How it is answered.
struct QuestionEntry: View {
    let app: AppModel
    let question: Question

    var body: some View {
        VStack(spacing: 6) {
            switch question.kind {
            case .lengthKind:
                TapeInch(app: app)
                Keypad(app: app, keys: Keypad.lengthKeys)
            case .wholeKind: Keypad(app: app, keys: Keypad.wholeKeys)
            case .choiceKind: choices
            case .textKind: words
            }
            HStack(spacing: 6) {
                if question.optional { OtherAction(app.words.skip) { app.putQuestionAway() } }
                if question.kind != .choiceKind { NextAction(app.words.accept) { app.entry.accept() } }
            }
        }
    }

    private var choices: some View {
        ScrollView {
            VStack(spacing: 6) {
                ForEach(question.choices, id: \.code) { choice in
                    OtherAction(choice.label) { app.entry.choose(choice) }
                }
            }
        }
        .frame(maxHeight: 360)
    }

    private var words: some View {
        WordsField(title: question.title, text: app.entry.text) { app.entry.type($0) }
    }
}

/// A field of free text; the keyboard of the phone writes it, by voice too.
struct WordsField: View {
    let title: String
    let text: String
    let type: @MainActor @Sendable (String) -> Void
    @Environment(\.look) private var look

    var body: some View {
        TextField(title, text: Binding(get: { text }, set: { @MainActor text in type(text) }))
            .font(.label)
            .padding(12)
            .frame(minHeight: look.target)
            .border(look.inks.ink, width: 2)
            .accessibilityLabel(title)
    }
}
