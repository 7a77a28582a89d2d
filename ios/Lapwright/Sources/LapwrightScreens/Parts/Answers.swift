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
                VStack(alignment: .leading, spacing: 2) {
                    Text(question.title).font(.small)
                    Text(said(question)).font(.strong)
                    if let reading = question.reading { ReadBy(reading) }
                }
                .frame(maxWidth: .infinity, alignment: .leading)
                if let reading = question.reading { SourceBox(app, reading.source) }
            }
        }
    }

    private func said(_ question: Question) -> String {
        if !question.draft.isEmpty { return question.draft }
        return question.answer.isEmpty ? "–" : question.answer
    }
}

/// Named lengths.
struct SizeLines: View {
    let app: AppModel
    let sizes: [Size]

    init(_ app: AppModel, _ sizes: [Size]) {
        (self.app, self.sizes) = (app, sizes)
    }

    var body: some View {
        ForEach(sizes, id: \.code) { size in ReadingLine(app, size.label, size.reading) }
    }
}

/// A named length; a tap says it aloud, where it leads nowhere else. Large texts stand under each other.
struct ReadingLine: View {
    let app: AppModel
    let label: String
    let reading: Reading
    let act: (@MainActor () -> Void)?
    @Environment(\.look) private var look

    init(_ app: AppModel, _ label: String, _ reading: Reading, act: (@MainActor () -> Void)? = nil) {
        (self.app, self.label, self.reading, self.act) = (app, label, reading, act)
    }

    var body: some View {
        Line {
            if let act { act() } else { app.say("\(label): \(reading.spoken)") }
        } content: {
            if look.large {
                VStack(alignment: .leading, spacing: 2) {
                    Text(label).font(.label)
                    length
                    ReadBy(reading)
                }
                .frame(maxWidth: .infinity, alignment: .leading)
            } else {
                VStack(alignment: .leading, spacing: 2) {
                    Text(label).font(.label)
                    ReadBy(reading)
                }
                .frame(maxWidth: .infinity, alignment: .leading)
                length
            }
            SourceBox(app, reading.source)
        }
    }

    private var length: some View { Text(reading.text).font(.large).accessibilityLabel(reading.spoken) }
}

/// Who read a number off the tape, and when.
private struct ReadBy: View {
    let reading: Reading

    init(_ reading: Reading) {
        self.reading = reading
    }

    var body: some View {
        if !reading.said.isEmpty { Text(reading.said).font(.small) }
    }
}

/// Where a number comes from: a letter in a small box.
struct SourceBox: View {
    let app: AppModel
    let source: Source
    @Environment(\.look) private var look

    init(_ app: AppModel, _ source: Source) {
        (self.app, self.source) = (app, source)
    }

    var body: some View {
        let (letter, word) = told
        Text(letter)
            .font(.smallStrong)
            .padding(.horizontal, 6)
            .padding(.vertical, 2)
            .frame(minWidth: 28)
            .border(look.inks.ink, width: 1.5)
            .accessibilityLabel(word)
    }

    private var told: (letter: String, word: String) {
        switch source {
        case .taped: (app.words.tapedLetter, app.words.taped)
        case .planned: (app.words.plannedLetter, app.words.planned)
        case .ruled: (app.words.ruleLetter, app.words.byRule)
        }
    }
}

/// A number to read at arm's length, with its unit half as large: as large as its width allows, so that it stays on one line
/// where texts are large already, and never under 44 points.
struct Answer: View {
    let text: String
    let unit: String
    let color: Color?
    @ScaledMetric(relativeTo: .body) private var most: CGFloat = 72
    @Environment(\.look) private var look

    init(_ text: String, unit: String = "", color: Color? = nil) {
        (self.text, self.unit, self.color) = (text, unit, color)
    }

    var body: some View {
        (Text(text).font(face(most)) + Text(unit.isEmpty ? "" : " \(unit)").font(face(most / 2)))
            .foregroundStyle(color ?? look.inks.ink)
            .lineLimit(1)
            .minimumScaleFactor(min(1, 44 / most))
            .frame(maxWidth: .infinity, alignment: .leading)
    }

    private func face(_ size: CGFloat) -> Font { .custom(Look.boldFace, fixedSize: size) }
}
