import LapwrightModels
import SwiftUI

import struct LapwrightCore.LevelView
import struct LapwrightCore.MarksView
import struct LapwrightCore.Reading

/// The marks to transfer to one side of a board, to be read from where the saw stands.
struct Marks: View {
    let app: AppModel
    let marks: MarksView

    init(_ app: AppModel, _ marks: MarksView) {
        (self.app, self.marks) = (app, marks)
    }

    var body: some View {
        VStack(alignment: .leading, spacing: 0) {
            Mark(label: app.words.fromLeft, readings: marks.uprights)
            ForEach(Array(marks.levels.enumerated()), id: \.offset) { level in
                Mark(
                    label: level.element.from == "top" ? app.words.fromTop : app.words.fromBottom,
                    readings: readings(level.element)
                )
            }
        }
        .frame(maxWidth: .infinity, alignment: .leading)
    }

    /// One number where both ends have the same.
    private func readings(_ level: LevelView) -> [Reading] {
        level.left.text == level.right.text ? [level.left] : [level.left, level.right]
    }
}

/// What is measured along one edge: its name, and each number on a line that it may fill, never under 44 points.
private struct Mark: View {
    let label: String
    let readings: [Reading]
    @Environment(\.look) private var look

    var body: some View {
        Text(label).font(.small)
        ForEach(Array(readings.enumerated()), id: \.offset) { reading in
            Text(reading.element.text)
                .font(.custom(Look.boldFace, fixedSize: 44 * max(look.scale, 1)))
                .foregroundStyle(look.inks.chalk)
                .lineLimit(1)
                .minimumScaleFactor(1 / max(look.scale, 1))
                .accessibilityLabel("\(label): \(reading.element.spoken)")
        }
    }
}
