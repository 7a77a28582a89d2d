import Foundation
import LapwrightCore

/// Bytes that are no drawing, and where they stop being one.
public struct NotADrawing: Error, Equatable {
    public let what: String
    public let at: Int
}

extension Stroke {
    /// The strokes of a drawing, in the order in which they are drawn.
    public static func all(in drawing: Drawing) throws -> [Stroke] {
        try all(in: drawing.bytes, texts: drawing.texts)
    }

    static func all(in bytes: Data, texts: [String]) throws -> [Stroke] {
        var reader = Reader(bytes: [UInt8](bytes))
        guard try reader.byte() == 1 else { throw NotADrawing(what: "version", at: 0) }
        var strokes: [Stroke] = []
        while !reader.isAtEnd { strokes.append(try one(&reader, texts)) }
        return strokes
    }

    private static func one(_ reader: inout Reader, _ texts: [String]) throws -> Stroke {
        let kind = try reader.byte()
        let role: Role = try reader.known("role")
        switch kind {
        case 1: return .fill(role: role, points: try reader.points())
        case 2:
            let (pattern, closed): (Pattern, Bool) = (try reader.known("pattern"), try reader.flag())
            return .line(
                role: role,
                pattern: pattern,
                closed: closed,
                thickness: try reader.float(),
                points: try reader.points()
            )
        case 3:
            let (spacing, thickness) = (try reader.float(), try reader.float())
            return .hatch(role: role, spacing: spacing, thickness: thickness, points: try reader.points())
        case 4: return .text(role: role, try lettering(&reader, texts))
        default: throw NotADrawing(what: "kind", at: reader.at - 2)
        }
    }

    private static func lettering(_ reader: inout Reader, _ texts: [String]) throws -> Lettering {
        let (weight, anchor): (Weight, Anchor) = (try reader.known("weight"), try reader.known("anchor"))
        let at = Spot(x: try reader.float(), y: try reader.float())
        let (em, turn, width) = (try reader.float(), try reader.float(), try reader.float())
        let number = Int(try reader.short())
        guard texts.indices.contains(number) else { throw NotADrawing(what: "text", at: reader.at - 2) }
        let text = texts[number]
        return Lettering(weight: weight, anchor: anchor, at: at, em: em, turn: turn, width: width, text: text)
    }
}

/// Little-endian numbers, one after the other.
private struct Reader {
    let bytes: [UInt8]
    var at = 0

    var isAtEnd: Bool { at == bytes.count }

    mutating func byte() throws -> UInt8 {
        guard at < bytes.count else { throw NotADrawing(what: "end", at: at) }
        defer { at += 1 }
        return bytes[at]
    }

    mutating func short() throws -> UInt16 {
        UInt16(try byte()) | UInt16(try byte()) << 8
    }

    mutating func float() throws -> Float {
        Float(bitPattern: UInt32(try short()) | UInt32(try short()) << 16)
    }

    mutating func points() throws -> [Spot] {
        try (0..<(try short())).map { _ in Spot(x: try float(), y: try float()) }
    }

    mutating func flag() throws -> Bool {
        let byte = try byte()
        guard byte <= 1 else { throw NotADrawing(what: "closed", at: at - 1) }
        return byte == 1
    }

    mutating func known<Value: RawRepresentable<UInt8>>(_ what: String) throws -> Value {
        guard let value = Value(rawValue: try byte()) else { throw NotADrawing(what: what, at: at - 1) }
        return value
    }
}
