import SwiftUI

/// The one next action of a screen; a long one is written smaller.
struct NextAction: View {
    let text: String
    let glyph: Glyph?
    let act: @MainActor () -> Void
    @Environment(\.look) private var look

    init(_ text: String, _ glyph: Glyph? = nil, act: @escaping @MainActor () -> Void) {
        (self.text, self.glyph, self.act) = (text, glyph, act)
    }

    var body: some View {
        Button(action: act) {
            HStack(spacing: 8) {
                if let glyph { Icon(glyph, look.inks.ground) }
                Text(text)
                    // The step that it signs stands over it in full size.
                    .font(text.count > 24 ? look.face(16, bold: true, atMost: 1.4) : .large)
                    .foregroundStyle(look.inks.ground)
                    .multilineTextAlignment(.center)
            }
            .padding(.horizontal, 12)
            .padding(.vertical, 8)
            .frame(maxWidth: .infinity, minHeight: Look.target)
            .background(look.inks.chalk, in: .plate)
        }
        .buttonStyle(.plain)
    }
}

/// An action beside the next one.
struct OtherAction: View {
    let text: String
    let glyph: Glyph?
    let act: @MainActor () -> Void
    @Environment(\.look) private var look

    init(_ text: String, _ glyph: Glyph? = nil, act: @escaping @MainActor () -> Void) {
        (self.text, self.glyph, self.act) = (text, glyph, act)
    }

    var body: some View {
        Button(action: act) {
            HStack(spacing: 10) {
                if let glyph { Icon(glyph, look.inks.ink) }
                Text(text).font(.label).multilineTextAlignment(.center)
            }
            .padding(.horizontal, 12)
            .padding(.vertical, 8)
            .frame(maxWidth: .infinity, minHeight: Look.target)
            .contentShape(.plate)
            .overlay { RoundedRectangle.plate.stroke(look.inks.ink, lineWidth: 1.5) }
        }
        .buttonStyle(.plain)
    }
}

/// A control that is a sign with its name under it; a screen reader says the longer `spoken`.
struct GlyphButton: View {
    let glyph: Glyph
    let name: String
    let spoken: String
    let act: @MainActor () -> Void
    @Environment(\.look) private var look

    init(_ glyph: Glyph, _ name: String, spoken: String? = nil, act: @escaping @MainActor () -> Void) {
        (self.glyph, self.name, self.spoken, self.act) = (glyph, name, spoken ?? name, act)
    }

    var body: some View {
        Button(action: act) {
            VStack(spacing: 2) {
                Icon(glyph, look.inks.ink)
                // As small as the room for signs needs where texts are large, and never under 16 points.
                Text(name).font(.custom(Look.face, fixedSize: 16 * min(max(look.scale, 1), 1.4)))
            }
            .padding(4)
            .frame(minWidth: Look.target, minHeight: Look.target)
            .contentShape(.plate)
        }
        .buttonStyle(.plain)
        .accessibilityLabel(spoken)
    }
}

/// A heading that opens and closes what is under it.
struct Fold<Content: View>: View {
    private let title: String
    private let content: Content
    @State private var open = false
    @Environment(\.look) private var look

    init(_ title: String, @ViewBuilder content: () -> Content) {
        (self.title, self.content) = (title, content())
    }

    var body: some View {
        Button {
            open = !open
        } label: {
            HStack(spacing: 10) {
                Text(title).font(.strong).frame(maxWidth: .infinity, alignment: .leading)
                Icon(open ? .fold : .unfold, look.inks.ink)
            }
            .padding(.horizontal, 12)
            .padding(.vertical, 8)
            .frame(maxWidth: .infinity, minHeight: Look.target, alignment: .leading)
            .contentShape(.plate)
            .overlay { RoundedRectangle.plate.stroke(look.inks.planned, lineWidth: 1) }
        }
        .buttonStyle(.plain)
        if open { content }
    }
}

/// How much of something is done: a bar with its words over it.
struct Bar: View {
    let said: String
    let share: CGFloat
    @Environment(\.look) private var look

    init<Count: BinaryInteger>(_ said: String, _ done: Count, of all: Count) {
        (self.said, share) = (said, all == 0 ? 0 : CGFloat(Double(done) / Double(all)))
    }

    var body: some View {
        VStack(alignment: .leading, spacing: 4) {
            if !said.isEmpty { Text(said).font(.strong) }
            GeometryReader { space in
                look.inks.done.frame(width: space.size.width * share, height: 14)
            }
            .frame(height: 14)
            .border(look.inks.ink, width: 1.5)
            .accessibilityHidden(true)
        }
    }
}

/// A line of a list that leads somewhere.
struct Line<Content: View>: View {
    private let act: @MainActor () -> Void
    private let content: Content
    @Environment(\.look) private var look

    init(act: @escaping @MainActor () -> Void, @ViewBuilder content: () -> Content) {
        (self.act, self.content) = (act, content())
    }

    var body: some View {
        Button(action: act) {
            HStack(spacing: 10) { content }
                .padding(.horizontal, 12)
                .padding(.vertical, 8)
                .frame(maxWidth: .infinity, minHeight: Look.target, alignment: .leading)
                .background(look.inks.board, in: .plate)
        }
        .buttonStyle(.plain)
    }
}

/// A name with what is said of it, one over the other.
struct Named: View {
    let name: String
    let said: String

    init(_ name: String, _ said: String = "") {
        (self.name, self.said) = (name, said)
    }

    var body: some View {
        VStack(alignment: .leading, spacing: 2) {
            Text(name).font(.strong)
            if !said.isEmpty { Text(said).font(.small) }
        }
        .frame(maxWidth: .infinity, alignment: .leading)
    }
}

/// A heading over a group of lines.
struct Heading: View {
    let text: String

    init(_ text: String) {
        self.text = text
    }

    var body: some View {
        Text(text).font(.smallStrong).padding(.top, 10).padding(.bottom, 2).accessibilityAddTraits(.isHeader)
    }
}

extension Shape where Self == RoundedRectangle {
    /// The shape of all that is tapped.
    static var plate: RoundedRectangle { RoundedRectangle(cornerRadius: 6) }
}
