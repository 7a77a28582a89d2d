import Foundation
import Testing

@testable import LapwrightModels

/// Bytes of drawings, against what the fixtures say that they hold.
struct DecoderTests {
    static let names = ["every-stroke", "board-face", "board-back", "board-large-text"]

    private struct Golden {
        let bytes: Data
        let texts: [String]
        let strokes: [[String: Any]]
        let width: Float
        let height: Float

        init(_ name: String) throws {
            let here = URL(fileURLWithPath: #filePath)
            let root = (0..<5).reduce(here) { url, _ in url.deletingLastPathComponent() }
            let folder = root.appendingPathComponent("fixtures/drawings")
            bytes = try Data(contentsOf: folder.appendingPathComponent("\(name).bin"))
            let json = try Data(contentsOf: folder.appendingPathComponent("\(name).json"))
            let object = try #require(try JSONSerialization.jsonObject(with: json) as? [String: Any])
            texts = try #require(object["texts"] as? [String])
            strokes = try #require(object["strokes"] as? [[String: Any]])
            width = try #require(object["width"] as? NSNumber).floatValue
            height = try #require(object["height"] as? NSNumber).floatValue
        }

        func decoded() throws -> [Stroke] { try Stroke.all(in: bytes, texts: texts) }
    }

    @Test(arguments: names)
    func everyStrokeIsWhatTheFixtureSays(_ name: String) throws {
        let golden = try Golden(name)
        let strokes = try golden.decoded()
        #expect(strokes.count == golden.strokes.count)
        for (stroke, wanted) in zip(strokes, golden.strokes) {
            #expect(try stroke == written(wanted))
        }
    }

    /// The stroke that a fixture describes.
    private func written(_ object: [String: Any]) throws -> Stroke {
        let text = { (key: String) in try #require(object[key] as? String) }
        let number = { (key: String) in try #require(object[key] as? NSNumber).floatValue }
        let points = { () -> [Spot] in
            let pairs = try #require(object["points"] as? [[NSNumber]])
            return pairs.map { Spot(x: $0[0].floatValue, y: $0[1].floatValue) }
        }
        let roles = ["ground", "board", "ink", "chalk", "cut", "warning", "done", "taped", "planned", "ruled"]
        let named = try #require(roles.firstIndex(of: try text("role")))
        let role = try #require(Role(rawValue: UInt8(named)))
        switch try text("kind") {
        case "fill": return .fill(role: role, points: try points())
        case "line":
            let patterns = ["solid": Pattern.solid, "dashed": .dashed, "dotted": .dotted]
            return .line(
                role: role,
                pattern: try #require(patterns[try text("pattern")]),
                closed: try #require(object["closed"] as? Bool),
                thickness: try number("thickness"),
                points: try points()
            )
        case "hatch":
            let (spacing, thickness) = (try number("spacing"), try number("thickness"))
            return .hatch(role: role, spacing: spacing, thickness: thickness, points: try points())
        default:
            let anchors = ["start": Anchor.start, "middle": .middle, "end": .end]
            return .text(
                role: role,
                Stroke.Lettering(
                    weight: try text("weight") == "bold" ? .bold : .regular,
                    anchor: try #require(anchors[try text("anchor")]),
                    at: Spot(x: try number("x"), y: try number("y")),
                    em: try number("em"),
                    turn: try number("turn"),
                    width: try number("width"),
                    text: try text("text")
                )
            )
        }
    }

    @Test(arguments: names)
    func bytesThatEndWithinAStrokeAreRefused(_ name: String) throws {
        let golden = try Golden(name)
        // Where a cut falls between two strokes a shorter drawing is left, and nothing else.
        let whole = try golden.decoded()
        for length in 1..<min(golden.bytes.count, 400) {
            let cut = try? Stroke.all(in: golden.bytes.prefix(length), texts: golden.texts)
            if let cut { #expect(cut == Array(whole.prefix(cut.count)) && cut.count < whole.count) }
        }
        #expect(throws: NotADrawing.self) {
            try Stroke.all(in: golden.bytes.dropLast(), texts: golden.texts)
        }
    }

    @Test(
        arguments: [
            ("version", [2]),
            ("end", []),
            ("kind", [1, 9, 0]),
            ("role", [1, 1, 10]),
            ("pattern", [1, 2, 0, 3]),
            ("closed", [1, 2, 0, 0, 2]),
            ("weight", [1, 4, 0, 2]),
            ("anchor", [1, 4, 0, 0, 3]),
        ] as [(String, [UInt8])])
    func aByteThatMeansNothingIsRefusedByName(_ what: String, _ bytes: [UInt8]) throws {
        do {
            _ = try Stroke.all(in: Data(bytes), texts: [])
            Issue.record("taken for a drawing")
        } catch let refused as NotADrawing {
            #expect(refused.what == what)
        }
    }

    @Test func aTextBeyondTheListIsRefused() throws {
        let golden = try Golden("every-stroke")
        #expect(throws: NotADrawing.self) { try Stroke.all(in: golden.bytes, texts: []) }
    }

    @Test func theLinesOfAHatchRiseToTheRightAndRunThrough() throws {
        let square = [Spot(x: 0, y: 0), Spot(x: 20, y: 0), Spot(x: 20, y: 20), Spot(x: 0, y: 20)]
        let lines = hatching(spacing: 7, of: square)
        // x + y runs from 0 to 40; the step is 7 * sqrt 2 = 9.899: n is 0, 1, 2, 3, 4.
        #expect(lines.count == 5)
        for line in lines {
            #expect(abs((line.from.x + line.from.y) - (line.to.x + line.to.y)) < 0.001)
            #expect(line.to.y < line.from.y && line.to.x > line.from.x)
        }
        let beside = hatching(spacing: 7, of: square.map { Spot(x: $0.x + 20, y: $0.y) })
        let sums = lines.map { $0.from.x + $0.from.y } + beside.map { $0.from.x + $0.from.y }
        let step = Float(7) * Float(2).squareRoot()
        for sum in sums { #expect(abs((sum / step).rounded() * step - sum) < 0.001) }
    }

    @Test func brokenLinesBeginWithWhatIsDrawn() {
        #expect(Pattern.solid.lengths == [])
        #expect(Pattern.dashed.lengths == [8, 5])
        #expect(Pattern.dotted.lengths == [2, 3])
    }
}
