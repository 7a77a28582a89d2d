import SwiftUI

/// The one next action, in the thumb's half.
struct NextAction: View {
    let text: String
    let act: @MainActor () -> Void
    @Environment(\.look) private var look

    init(_ text: String, act: @escaping @MainActor () -> Void) {
        (self.text, self.act) = (text, act)
    }

    var body: some View {
        Button(action: act) {
            Text(text)
                .font(.strong)
                .foregroundStyle(look.inks.ground)
                .padding(10)
                .frame(maxWidth: .infinity, minHeight: look.target)
                .background(look.inks.chalk)
        }
        .buttonStyle(.plain)
    }
}

/// Any other action.
struct OtherAction: View {
    let text: String
    let act: @MainActor () -> Void
    @Environment(\.look) private var look

    init(_ text: String, act: @escaping @MainActor () -> Void) {
        (self.text, self.act) = (text, act)
    }

    var body: some View {
        Button(action: act) {
            Text(text)
                .font(.label)
                .padding(10)
                .frame(maxWidth: .infinity, minHeight: look.target)
                .border(look.inks.ink, width: 2)
        }
        .buttonStyle(.plain)
    }
}

/// A button of one sign, with the words that a screen reader says.
struct SignButton: View {
    let sign: String
    let words: String
    let act: @MainActor () -> Void
    @Environment(\.look) private var look

    init(_ sign: String, _ words: String, act: @escaping @MainActor () -> Void) {
        (self.sign, self.words, self.act) = (sign, words, act)
    }

    var body: some View {
        Button(action: act) {
            Image(systemName: sign)
                .font(.large)
                .frame(minWidth: look.target, minHeight: look.target)
                .border(look.inks.ink, width: 2)
        }
        .buttonStyle(.plain)
        .accessibilityLabel(words)
    }
}

/// A line that leads somewhere.
struct Line<Content: View>: View {
    private let act: @MainActor () -> Void
    private let content: Content
    @Environment(\.look) private var look

    init(act: @escaping @MainActor () -> Void, @ViewBuilder content: () -> Content) {
        (self.act, self.content) = (act, content())
    }

    var body: some View {
        Button(action: act) {
            HStack(spacing: 8) { content }
                .padding(8)
                .frame(maxWidth: .infinity, minHeight: look.target, alignment: .leading)
                .background(look.inks.board)
        }
        .buttonStyle(.plain)
        .accessibilityElement(children: .combine)
    }
}

/// A name with what is said of it, one over the other.
struct Named: View {
    let name: String
    let said: String

    init(_ name: String, _ said: String) {
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

/// A heading between the parts of a screen.
struct Heading: View {
    let text: String

    init(_ text: String) {
        self.text = text
    }

    var body: some View {
        Text(text).font(.strong).padding(.top, 8).accessibilityAddTraits(.isHeader)
    }
}
