import LapwrightCore

/// Keys on a keypad and on the drawn piece of tape, as text: what they mean is the core's to say.
enum Typing {
    /// The text with a tapped mark of the tape behind its whole number, in place of the mark that was tapped before.
    static func with(mark: TapeMark, in text: String) -> String {
        if let first = mark.text.first, first.isNumber {
            let whole = text.split(separator: " ").filter { !$0.contains("/") }.map(String.init)
            return (whole + [mark.text]).joined(separator: " ")
        }
        return String(text.prefix { $0 != "." && $0 != "," }) + mark.text
    }

    /// The text without its last key; a fraction goes as a whole.
    static func rubbedOut(_ text: String) -> String {
        let last = text.split(separator: " ", omittingEmptySubsequences: false).last ?? ""
        var left = String(text.dropLast(last.contains("/") ? last.count : 1))
        while left.last == " " { left.removeLast() }
        return left
    }
}
