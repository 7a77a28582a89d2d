import LapwrightModels
import SwiftUI

import struct LapwrightCore.Question
import struct LapwrightCore.Reading
import struct LapwrightCore.Size
import enum LapwrightCore.Source

/// Questions with their answers, each to be opened again by a tap.
struct Answers: View {
    let app: AppModel
    let questions: [Question]

    init(_ app: AppModel, _ questions: [Question]) {
        (self.app, self.questions) = (app, questions)
    }

    var body: some View {
        ForEach(questions, id: \.field) { question in
            Line {
                app.ask(question)
            } content: {
                Named(question.title, said(question))
                if let reading = question.reading { SourceBox(app: app, source: reading.source) }
            }
        }
    }

    private func said(_ question: Question) -> String {
        if !question.draft.isEmpty { return question.draft }
        return question.answer.isEmpty ? "–" : question.answer
    }
}

/// A named length; a tap says it aloud.
struct ReadingLine: View {
    let app: AppModel
    let label: String
    let reading: Reading

    init(_ app: AppModel, _ label: String, _ reading: Reading) {
        (self.app, self.label, self.reading) = (app, label, reading)
    }

    var body: some View {
        Line {
            app.say("\(label): \(reading.spoken)")
        } content: {
            Text(label).font(.label).frame(maxWidth: .infinity, alignment: .leading)
            Text(reading.text).font(.large).accessibilityLabel(reading.spoken)
            SourceBox(app: app, source: reading.source)
        }
    }
}

/// Named lengths.
struct Sizes: View {
    let app: AppModel
    let sizes: [Size]

    init(_ app: AppModel, _ sizes: [Size]) {
        (self.app, self.sizes) = (app, sizes)
    }

    var body: some View {
        ForEach(sizes, id: \.code) { size in ReadingLine(app, size.label, size.reading) }
    }
}

/// Where a number comes from: a letter in a small box, and a line under it of its own kind.
struct SourceBox: View {
    let app: AppModel
    let source: Source
    @Environment(\.look) private var look

    var body: some View {
        VStack(spacing: 1) {
            Text(letter).font(.small)
            DashedLine(lengths: lengths, color: color)
        }
        .padding(4)
        .frame(minWidth: 28)
        .border(color, width: 1.5)
        .foregroundStyle(look.inks.ink)
        .accessibilityElement(children: .ignore)
        .accessibilityLabel(word)
    }

    private var letter: String {
        switch source {
        case .taped: app.words.tapedLetter
        case .planned: app.words.plannedLetter
        case .ruled: app.words.ruleLetter
        }
    }

    private var word: String {
        switch source {
        case .taped: app.words.taped
        case .planned: app.words.planned
        case .ruled: app.words.byRule
        }
    }

    private var color: Color {
        switch source {
        case .taped: look.inks.ink
        case .planned: look.inks.planned
        case .ruled: look.inks.ruled
        }
    }

    private var lengths: [CGFloat] {
        switch source {
        case .taped: []
        case .planned: [5, 3]
        case .ruled: [1.5, 2]
        }
    }
}

/// A level line, broken or not.
struct DashedLine: View {
    let lengths: [CGFloat]
    let color: Color

    var body: some View {
        Canvas { context, size in
            var path = Path()
            path.move(to: CGPoint(x: 0, y: size.height / 2))
            path.addLine(to: CGPoint(x: size.width, y: size.height / 2))
            context.stroke(path, with: .color(color), style: StrokeStyle(lineWidth: 2, dash: lengths))
        }
        .frame(width: 20, height: 3)
        .accessibilityHidden(true)
    }
}
