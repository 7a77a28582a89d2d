import LapwrightModels
import SwiftUI

/// The keys of a tape: three columns, so that they are large enough for gloves.
struct Keypad: View {
    let app: AppModel
    let keys: [[String]]
    @Environment(\.look) private var look

    static let lengthKeys = [["7", "8", "9"], ["4", "5", "6"], ["1", "2", "3"], ["'", "0", "\""], ["-", "/", "."]]
    static let wholeKeys = [["7", "8", "9"], ["4", "5", "6"], ["1", "2", "3"], ["0"]]

    var body: some View {
        VStack(spacing: 4) {
            ForEach(keys, id: \.self) { row in
                HStack(spacing: 4) {
                    ForEach(row, id: \.self) { key in
                        Key(text: key, words: key) { app.entry.press(key) }
                    }
                }
            }
            HStack(spacing: 4) {
                Key(text: "␣", words: app.words.space) { app.entry.press(" ") }
                Key(text: "⌫", words: app.words.rubOut) { app.entry.rubOut() }
            }
        }
    }
}

private struct Key: View {
    let text: String
    let words: String
    let act: @MainActor () -> Void
    @Environment(\.look) private var look

    var body: some View {
        Button(action: act) {
            Text(text)
                .font(.large)
                .frame(maxWidth: .infinity, minHeight: look.gloves ? look.target : 48)
                .background(look.inks.board)
        }
        .buttonStyle(.plain)
        .accessibilityLabel(words)
    }
}

/// The drawn piece of tape, an inch or a centimetre, as wide as the screen: a tap on a mark adds it to what is typed.
struct TapeInch: View {
    let app: AppModel
    @Environment(\.look) private var look

    var body: some View {
        VStack(alignment: .leading, spacing: 2) {
            Text(app.words.tape).font(.small)
            GeometryReader { space in
                ZStack(alignment: .topLeading) {
                    Canvas { context, size in
                        for mark in app.frame.tape {
                            var path = Path()
                            let x = size.width * Double(mark.at) / 1000
                            path.move(to: CGPoint(x: x, y: 0))
                            path.addLine(to: CGPoint(x: x, y: size.height * 0.8 * Double(mark.long) / 1000))
                            context.stroke(path, with: .color(look.inks.ink), lineWidth: 3)
                        }
                    }
                    .accessibilityHidden(true)
                    ForEach(app.frame.tape, id: \.at) { mark in
                        Button {
                            app.entry.tap(mark)
                        } label: {
                            look.inks.board.opacity(0.01)
                        }
                        .buttonStyle(.plain)
                        .frame(width: space.size.width / Double(app.frame.tape.count + 1), height: space.size.height)
                        .position(x: space.size.width * Double(mark.at) / 1000, y: space.size.height / 2)
                        .accessibilityLabel(mark.spoken)
                    }
                }
            }
            .frame(height: look.target)
            .background(look.inks.board)
        }
    }
}
