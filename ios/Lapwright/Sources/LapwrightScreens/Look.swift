import LapwrightModels
import SwiftUI

/// The colours of a theme, by what they mean.
public struct Inks: Equatable, Sendable {
    let ground: Color
    let board: Color
    let ink: Color
    let chalk: Color
    let warning: Color
    let done: Color
    let planned: Color
    let ruled: Color

    /// Dark on pale, for the sun.
    static let sun = Inks(
        ground: Color(hex: 0xFAF8F3),
        board: Color(hex: 0xE9E4D8),
        ink: Color(hex: 0x161A1D),
        chalk: Color(hex: 0x0A4A86),
        warning: Color(hex: 0x8A2B0E),
        done: Color(hex: 0x1F5A33),
        planned: Color(hex: 0x4A5157),
        ruled: Color(hex: 0x6B4A00)
    )

    /// Pale on dark, for indoors.
    static let indoors = Inks(
        ground: Color(hex: 0x15191C),
        board: Color(hex: 0x262C31),
        ink: Color(hex: 0xF1EEE6),
        chalk: Color(hex: 0x9CC7F2),
        warning: Color(hex: 0xFFB199),
        done: Color(hex: 0xA6DDB4),
        planned: Color(hex: 0xB9C0C5),
        ruled: Color(hex: 0xF2CE7B)
    )

    /// The colour of a role in a drawing.
    func color(_ role: Role) -> Color {
        switch role {
        case .ground: ground
        case .board: board
        case .ink, .cut, .taped: ink
        case .chalk: chalk
        case .warning: warning
        case .done: done
        case .planned: planned
        case .ruled: ruled
        }
    }
}

extension Color {
    /// A colour written as red, green and blue.
    init(hex: UInt32) {
        let part = { (shift: UInt32) in Double(hex >> shift & 0xFF) / 255 }
        self.init(red: part(16), green: part(8), blue: part(0))
    }
}

/// How the screens look for who holds the phone.
public struct Look: Equatable, Sendable {
    var inks = Inks.sun
    var leftHanded = false
    var gloves = false
    /// How many times its own size a text is, as the phone is set.
    var scale: CGFloat = 1

    /// Whether texts are so large that they stand under each other.
    var large: Bool { scale > 1.3 }

    /// The bundled face in a size that grows with the phone's texts so many times at most: of what must stay in sight as a
    /// whole where texts are at 200 %, a question over its keys or a step over its caution.
    func face(_ size: CGFloat, bold: Bool = false, atMost times: CGFloat) -> Font {
        .custom(bold ? Look.boldFace : Look.face, fixedSize: size * min(scale, times))
    }

    /// The title of a screen, and the step in hand.
    var heading: Font { large ? face(18, bold: true, atMost: 1.6) : .large }

    /// What stands small over what is tapped.
    var aside: Font { face(16, atMost: 1.4) }

    /// The least side of anything that is tapped.
    static let target: CGFloat = 64

    /// The side of a key for gloves: 18 mm, at about 6.4 points to the millimeter of a phone.
    static let gloveKey: CGFloat = 115

    /// The names of the bundled face.
    static let face = "DejaVuSansCondensed"
    static let boldFace = "DejaVuSansCondensed-Bold"
}

private struct LookKey: EnvironmentKey {
    static let defaultValue = Look()
}

extension EnvironmentValues {
    var look: Look {
        get { self[LookKey.self] }
        set { self[LookKey.self] = newValue }
    }
}

extension Font {
    /// The bundled face, scaled with the text size of the phone.
    private static func face(_ size: CGFloat, bold: Bool = false) -> Font {
        .custom(bold ? Look.boldFace : Look.face, size: size, relativeTo: .body)
    }

    static let key = face(26, bold: true)
    static let gloveKey = face(36, bold: true)
    static let large = face(22, bold: true)
    static let length = face(28, bold: true)
    static let label = face(18)
    static let strong = face(18, bold: true)
    static let small = face(16)
    static let smallStrong = face(16, bold: true)
}
