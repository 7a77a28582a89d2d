import Accessibility
import SwiftUI

import struct LapwrightCore.Note

/// What needs attention, the worst first: a stop is boxed, a check has a triangle, what is good to know is grey with an i.
struct Notes: View {
    let notes: [Note]

    init(_ notes: [Note]) {
        self.notes = notes
    }

    var body: some View {
        // Two of them may have the same code: a thin strip under each of two windows.
        ForEach(Array(notes.enumerated()), id: \.offset) { note in
            switch note.element.level {
            case .stop: Stop(note.element.text)
            case .check: Warning(note.element.text)
            case .know: Know(note.element.text)
            }
        }
    }
}

/// A sign, and beside it what it is about.
private struct NoteLine: View {
    let text: String
    let glyph: Glyph
    let font: Font
    let ink: Color

    init(_ text: String, _ glyph: Glyph, _ font: Font, _ ink: Color) {
        (self.text, self.glyph, self.font, self.ink) = (text, glyph, font, ink)
    }

    var body: some View {
        HStack(alignment: .top, spacing: 8) {
            Icon(glyph, ink, size: 24)
            Text(text)
                .font(font)
                .foregroundStyle(ink)
                .frame(maxWidth: .infinity, alignment: .leading)
        }
    }
}

/// Whoever goes on does harm.
struct Stop: View {
    let text: String
    @Environment(\.look) private var look

    init(_ text: String) {
        self.text = text
    }

    var body: some View {
        NoteLine(text, .stop, .strong, look.inks.warning)
            .padding(8)
            .border(look.inks.warning, width: 2.5)
    }
}

/// Good to know: nothing is wrong.
struct Know: View {
    let text: String
    @Environment(\.look) private var look

    init(_ text: String) {
        self.text = text
    }

    var body: some View {
        NoteLine(text, .know, .small, look.inks.planned)
            .padding(.vertical, 2)
    }
}

/// One thing that needs attention.
struct Warning: View {
    let text: String
    @Environment(\.look) private var look

    init(_ text: String) {
        self.text = text
    }

    var body: some View {
        NoteLine(text, .warning, .label, look.inks.warning)
            .padding(.vertical, 2)
    }
}

/// Why the last tap did nothing; a screen reader says it at once.
struct TroublePanel: View {
    let text: String
    @Environment(\.look) private var look

    init(_ text: String) {
        self.text = text
    }

    var body: some View {
        Warning(text)
            .padding(6)
            .border(look.inks.warning, width: 1.5)
            .task(id: text) { AccessibilityNotification.Announcement(text).post() }
    }
}

/// Cautions at the step where they matter; they never stand in the way of the next tap.
struct CautionPanel: View {
    let heading: String
    let cautions: [Note]
    @Environment(\.look) private var look

    init(_ heading: String, _ cautions: [Note]) {
        (self.heading, self.cautions) = (heading, cautions)
    }

    var body: some View {
        if !cautions.isEmpty {
            VStack(alignment: .leading, spacing: 6) {
                HStack(spacing: 8) {
                    Icon(.warning, look.inks.warning, size: 24)
                    Text(heading).font(.strong).foregroundStyle(look.inks.warning)
                }
                ForEach(Array(cautions.enumerated()), id: \.offset) { Text($0.element.text).font(.label) }
            }
            .padding(8)
            .frame(maxWidth: .infinity, alignment: .leading)
            .border(look.inks.warning, width: 1.5)
        }
    }
}
