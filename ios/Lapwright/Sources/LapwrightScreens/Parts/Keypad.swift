import LapwrightModels
import SwiftUI

/// The keys for a length or a number: three columns of 18 mm keys in gloves, else four of at least 64 points. In gloves the
/// signs and the rubber lie on a second page.
struct Keypad: View {
    let app: AppModel
    /// Whether it is written with more than digits.
    let signed: Bool
    /// The height that is left for the keys.
    let height: CGFloat
    @State private var signs = false
    @Environment(\.look) private var look

    /// Three rows of digits, and what else a length is written with.
    private static let rows = [["1", "2", "3", "'"], ["4", "5", "6", "."], ["7", "8", "9", "-"]]

    /// On a small phone the keys for gloves leave room for the question.
    private var side: CGFloat { look.gloves ? max(Look.target, min(Look.gloveKey, height / 4)) : Look.target }
    private var gap: CGFloat { look.gloves ? 1.5 : 6 }
    private var isPaged: Bool { look.gloves && signed }

    var body: some View {
        VStack(spacing: gap) {
            if isPaged && signs { signRows } else { digitRows }
            HStack(spacing: gap) {
                if isPaged {
                    page
                } else {
                    rubOut
                }
                key("0")
                if signed && !look.gloves { space }
                accept
            }
        }
    }

    private var digitRows: some View {
        ForEach(Self.rows, id: \.self) { row in
            HStack(spacing: gap) {
                ForEach(Array(row.prefix(signed && !look.gloves ? 4 : 3)), id: \.self) { text in key(text) }
            }
        }
    }

    @ViewBuilder private var signRows: some View {
        HStack(spacing: gap) {
            ForEach(Self.rows, id: \.self) { row in key(row[3]) }
        }
        HStack(spacing: gap) {
            space
            rubOut
        }
    }

    private var font: Font { look.gloves ? .gloveKey : .key }

    /// A digit, or a sign that digits follow: their page comes back by itself.
    private func key(_ text: String) -> some View {
        Key(side: side, fill: look.inks.board) {
            app.entry.press(text)
            signs = false
        } label: {
            Text(text).font(font)
        }
    }

    private var space: some View {
        Key(side: side, fill: look.inks.board) {
            app.entry.press(" ")
            signs = false
        } label: {
            Icon(.space, look.inks.ink)
        }
        .accessibilityLabel(app.words.space)
    }

    private var rubOut: some View {
        Key(side: side, fill: look.inks.board) {
            app.entry.rubOut()
        } label: {
            Icon(.rubOut, look.inks.ink)
        }
        .accessibilityLabel(app.words.rubOut)
    }

    /// Turns to the other page of keys; it shows what lies there.
    private var page: some View {
        Key(side: side, fill: look.inks.ground) {
            signs.toggle()
        } label: {
            Text(signs ? "123" : "'.-").font(.key)
        }
        .accessibilityLabel(app.words.more)
    }

    private var accept: some View {
        Key(side: side, fill: look.inks.chalk) {
            app.entry.accept()
        } label: {
            Text(app.words.accept).font(font).foregroundStyle(look.inks.ground)
        }
    }
}

private struct Key<Label: View>: View {
    let side: CGFloat
    let fill: Color
    private let act: @MainActor () -> Void
    private let label: Label
    @Environment(\.look) private var look

    init(side: CGFloat, fill: Color, act: @escaping @MainActor () -> Void, @ViewBuilder label: () -> Label) {
        (self.side, self.fill, self.act, self.label) = (side, fill, act, label())
    }

    var body: some View {
        Button(action: act) {
            label
                .lineLimit(1)
                .minimumScaleFactor(0.5)
                .frame(maxWidth: .infinity, minHeight: side, maxHeight: side)
                .background(fill, in: .plate)
                .overlay { RoundedRectangle.plate.stroke(look.inks.planned, lineWidth: 1) }
        }
        .buttonStyle(.plain)
    }
}
