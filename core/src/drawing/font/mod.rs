//! The one bundled font: how wide its texts are, so that texts can be laid out without it.
//!
//! The shells draw with the same font, DejaVu Sans Condensed 2.37, with kerning and ligatures off. All of its digits are
//! equally wide.

mod widths;

use widths::{BOLD, BOLD_SIGNS, REGULAR, REGULAR_SIGNS};

/// How heavy a text is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// Labels.
    Regular,
    /// Answers and words that name a side.
    Bold,
}

/// How far a text reaches above its base line, in ems: `ascender` of the font.
pub(super) const ASCENT: f64 = 1901.0 / EM;
/// How far a text reaches below its base line, in ems: `descender` of the font.
pub(super) const DESCENT: f64 = 483.0 / EM;
/// How high digits and capitals are, in ems.
pub(super) const CAPITAL: f64 = 1493.0 / EM;

/// The font's units in an em.
const EM: f64 = 2048.0;

/// The first code point of the tables of [`widths`].
const FIRST: u32 = 0x20;

/// A sign that the font's tables here do not hold comes from another font of the phone: no such sign is known to be
/// wider than this many units.
const UNKNOWN: u16 = 2_867;

/// The advance of a character in units of the font.
fn advance(sign: char, weight: Weight) -> u16 {
    let (table, signs): (&[u16], &[(char, u16)]) = match weight {
        Weight::Regular => (&REGULAR, &REGULAR_SIGNS),
        Weight::Bold => (&BOLD, &BOLD_SIGNS),
    };
    let at = u32::from(sign).checked_sub(FIRST).and_then(|at| usize::try_from(at).ok());
    if let Some(width) = at.and_then(|at| table.get(at)) {
        return *width;
    }
    signs.iter().find_map(|(own, width)| (*own == sign).then_some(*width)).unwrap_or(UNKNOWN)
}

/// The width of a text of one line that is set `em` high, in the unit of `em`.
pub(super) fn width(text: &str, weight: Weight, em: f64) -> f64 {
    let units: u32 = text.chars().map(|sign| u32::from(advance(sign, weight))).sum();
    f64::from(units) / EM * em
}

#[cfg(test)]
mod tests {
    use super::*;
    use ttf_parser::Face;

    fn faces() -> [(Weight, Face<'static>); 2] {
        use dejavu::sans_condensed::{bold, regular};
        [(Weight::Regular, regular()), (Weight::Bold, bold())]
            .map(|(weight, ttf)| (weight, Face::parse(ttf, 0).unwrap()))
    }

    #[test]
    fn the_tables_hold_the_fonts_own_widths() {
        for (weight, face) in faces() {
            assert_eq!((face.units_per_em(), face.ascender(), face.descender()), (2048, 1901, -483));
            let signs: Vec<char> = REGULAR_SIGNS.iter().map(|(sign, _)| *sign).collect();
            assert_eq!(signs, BOLD_SIGNS.map(|(sign, _)| sign));
            let drawn = (0x20..0x7f).chain(0xa0..0x180).filter_map(char::from_u32);
            for sign in drawn.chain(signs) {
                let glyph = face.glyph_index(sign).unwrap_or_else(|| panic!("{sign}"));
                assert_eq!(face.glyph_hor_advance(glyph), Some(advance(sign, weight)), "{sign}");
            }
        }
    }

    #[test]
    fn digits_are_equally_wide_and_as_high_as_said() {
        for (weight, face) in faces() {
            for digit in '0'..='9' {
                assert_eq!(advance(digit, weight), advance('0', weight));
            }
            let height = face.glyph_bounding_box(face.glyph_index('1').unwrap()).unwrap().y_max;
            assert!((f64::from(height) - CAPITAL * EM).abs() < 1e-6);
        }
    }

    #[test]
    fn a_text_is_as_wide_as_its_signs() {
        let half = width("1", Weight::Regular, 18.0);
        assert!((width("11", Weight::Regular, 36.0) - 4.0 * half).abs() < 1e-9);
        assert!(width("\u{1f528}", Weight::Regular, 10.0) > 13.0, "a sign of another font is taken as wide");
    }
}
