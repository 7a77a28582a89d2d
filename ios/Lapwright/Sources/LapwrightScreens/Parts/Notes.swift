import SwiftUI

import struct LapwrightCore.Note

/// Something that needs attention: a triangle and words, never a colour alone.
struct Warning: View {
    let text: String
    @Environment(\.look) private var look

    init(_ text: String) {
        self.text = text
    }

    var body: some View {
        HStack(alignment: .top, spacing: 8) {
            Image(systemName: "exclamationmark.triangle").font(.strong).accessibilityHidden(true)
            Text(text).font(.label).frame(maxWidth: .infinity, alignment: .leading)
        }
        .foregroundStyle(look.inks.warning)
    }
}

/// What needs attention.
struct Notes: View {
    let notes: [Note]

    var body: some View {
        // Two of them may have the same code: a thin strip under each of two windows.
        ForEach(Array(notes.enumerated()), id: \.offset) { Warning($0.element.text) }
    }
}

/// What to mind before going on; it never stands in the way of the next tap.
struct Cautions: View {
    let heading: String
    let notes: [Note]
    @Environment(\.look) private var look

    var body: some View {
        if !notes.isEmpty {
            VStack(alignment: .leading, spacing: 6) {
                Text(heading).font(.strong).foregroundStyle(look.inks.warning)
                Notes(notes: notes)
            }
            .padding(8)
            .frame(maxWidth: .infinity, alignment: .leading)
            .border(look.inks.warning, width: 2)
        }
    }
}
