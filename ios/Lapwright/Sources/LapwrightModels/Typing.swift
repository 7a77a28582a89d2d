import LapwrightCore

/// Keys on a keypad and on the drawn piece of tape, as text: what they mean is the core's to say.
enum Typing {
    /// The text with a tapped mark of the tape behind its whole number, in place of the mark that was tapped before.
    static func with(mark: TapeMark, in text: String) -> String {
        if let first = mark.text.first, first.isNumber {
            let whole = text.split(separator: " ").filter { !$0.contains("/") }.map(String.init)
            return (whole + [mark.text]).joined(separator: " ")
        }
        return trimmed(String(text.prefix { $0 != "." && $0 != "," })) + mark.text
    }

    /// The text without its last key; a fraction goes as a whole.
    static func rubbedOut(_ text: String) -> String {
        let last = text.split(separator: " ", omittingEmptySubsequences: false).last ?? ""
        return trimmed(String(text.dropLast(last.contains("/") ? last.count : 1)))
    }

    private static func trimmed(_ text: String) -> String {
        var left = text
        while left.last == " " { left.removeLast() }
        return left
    }
}

extension [TapeMark] {
    /// The mark nearest to a place, in thousandths of the drawn piece.
    public func nearest(to place: Double) -> TapeMark? {
        self.min { abs(Double($0.at) - place) < abs(Double($1.at) - place) }
    }

    /// The mark that a text ends with.
    public func tapped(in text: String) -> TapeMark? {
        let last = text.split(separator: " ", omittingEmptySubsequences: false).last ?? ""
        return self.last { last.hasSuffix($0.text) }
    }
}
