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
        let usual = questions.compactMap(\.reading).usual
        ForEach(questions, id: \.field) { question in
            Line {
                app.ask(question)
            } content: {
                VStack(alignment: .leading, spacing: 2) {
                    Text(question.title).font(.small)
                    Text(said(question)).font(.strong)
                    if let reading = question.reading { From(app, reading, usual) }
                }
                .frame(maxWidth: .infinity, alignment: .leading)
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
        let usual = sizes.map(\.reading).usual
        ForEach(sizes, id: \.code) { size in ReadingLine(app, size.label, size.reading, usual: usual) }
    }
}

/// A named length; a tap says it aloud, where it leads nowhere else. Large texts stand under each other.
struct ReadingLine: View {
    let app: AppModel
    let label: String
    let reading: Reading
    /// Where its neighbours come from.
    let usual: Source
    let act: (@MainActor () -> Void)?
    @Environment(\.look) private var look

    init(
        _ app: AppModel, _ label: String, _ reading: Reading, usual: Source = .planned,
        act: (@MainActor () -> Void)? = nil
    ) {
        (self.app, self.label, self.reading, self.usual, self.act) = (app, label, reading, usual, act)
    }

    var body: some View {
        Line {
            if let act { act() } else { app.say("\(label): \(reading.spoken)") }
        } content: {
            if look.large {
                VStack(alignment: .leading, spacing: 2) {
                    Text(label).font(.label)
                    length
                    From(app, reading, usual)
                }
                .frame(maxWidth: .infinity, alignment: .leading)
            } else {
                VStack(alignment: .leading, spacing: 2) {
                    Text(label).font(.label)
                    From(app, reading, usual)
                }
                .frame(maxWidth: .infinity, alignment: .leading)
                length
            }
        }
    }

    private var length: some View { Text(reading.text).font(.large).accessibilityLabel(reading.spoken) }
}

/// Who read a number off the tape, and when; else where it comes from, where that is not where its neighbours do.
struct From: View {
    let app: AppModel
    let reading: Reading
    let usual: Source

    init(_ app: AppModel, _ reading: Reading, _ usual: Source) {
        (self.app, self.reading, self.usual) = (app, reading, usual)
    }

    var body: some View {
        if !reading.said.isEmpty {
            Text(reading.said).font(.small)
        } else if reading.source == .taped || reading.source != usual {
            Text(word).font(.small)
        }
    }

    private var word: String {
        switch reading.source {
        case .taped: app.words.taped
        case .planned: app.words.planned
        case .ruled: app.words.byRule
        }
    }
}

extension [Reading] {
    /// Where most of them come from: that goes without saying.
    var usual: Source {
        let all: [Source] = [.planned, .taped, .ruled]
        return all.max { one, other in filter { $0.source == one }.count < filter { $0.source == other }.count }
            ?? .planned
    }
}

/// A number to read at arm's length, with its unit half as large: as large as its width allows, so that it stays on one line
/// where texts are large already, and never under 44 points.
struct Answer: View {
    let text: String
    let unit: String
    let color: Color?
    /// How large it may be; nil for as large as the phone's texts allow.
    let limit: CGFloat?
    @ScaledMetric(relativeTo: .body) private var scaled: CGFloat = 72
    @Environment(\.look) private var look

    init(_ text: String, unit: String = "", color: Color? = nil, most limit: CGFloat? = nil) {
        (self.text, self.unit, self.color, self.limit) = (text, unit, color, limit)
    }

    private var most: CGFloat { limit ?? scaled }

    var body: some View {
        (Text(text).font(face(most)) + Text(unit.isEmpty ? "" : " \(unit)").font(face(most / 2)))
            .foregroundStyle(color ?? look.inks.ink)
            .lineLimit(1)
            .minimumScaleFactor(min(1, 44 / most))
            .frame(maxWidth: .infinity, alignment: .leading)
    }

    private func face(_ size: CGFloat) -> Font { .custom(Look.boldFace, fixedSize: size) }
}
