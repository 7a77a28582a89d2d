//! A list of strokes as bytes, in the format of `core/docs/drawing-format.md`.

use thiserror::Error;

use super::font::Weight;
use super::role::{Dash, Role};
use super::stroke::{Anchor, Spot, Stroke};

/// The version of the format: the first byte.
pub const VERSION: u8 = 1;

const FILL: u8 = 1;
const LINE: u8 = 2;
const HATCH: u8 = 3;
const TEXT: u8 = 4;

/// A packed drawing: its bytes and the texts that they name by number.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Packed {
    /// The version, then one stroke after the other.
    pub bytes: Vec<u8>,
    /// The texts, in the order in which they are first drawn.
    pub texts: Vec<String>,
}

/// Why bytes are no drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum PackError {
    /// Another version than [`VERSION`].
    #[error("the drawing is of version {0}, and only {VERSION} is known")]
    Version(u8),
    /// The bytes end within a stroke.
    #[error("the drawing ends within a stroke")]
    Short,
    /// A kind of stroke, a role or a pattern that is not known.
    #[error("byte {0} stands for nothing here")]
    Unknown(u8),
    /// A text that is not in the list.
    #[error("text {0} is not in the list")]
    Text(u16),
}

/// Packs strokes; a polygon or line beyond 65,535 points, or a text beyond so many, is left out.
pub fn pack(strokes: &[Stroke]) -> Packed {
    let mut packed = Packed { bytes: vec![VERSION], texts: Vec::new() };
    for stroke in strokes {
        packed.put(stroke);
    }
    packed
}

impl Packed {
    fn put(&mut self, stroke: &Stroke) {
        match stroke {
            Stroke::Fill { role, corners } => {
                let Ok(count) = u16::try_from(corners.len()) else { return };
                self.bytes.extend([FILL, role_byte(*role)]);
                self.points(count, corners);
            }
            Stroke::Line { role, pattern, thickness, closed, points } => {
                let Ok(count) = u16::try_from(points.len()) else { return };
                self.bytes.extend([LINE, role_byte(*role), pattern_byte(*pattern), u8::from(*closed)]);
                self.number(*thickness);
                self.points(count, points);
            }
            Stroke::Hatch { role, spacing, thickness, corners } => {
                let Ok(count) = u16::try_from(corners.len()) else { return };
                self.bytes.extend([HATCH, role_byte(*role)]);
                self.number(*spacing);
                self.number(*thickness);
                self.points(count, corners);
            }
            Stroke::Text { role, weight, anchor, at, em, turn, width, text } => {
                let Some(number) = self.text(text) else { return };
                let weight = u8::from(*weight == Weight::Bold);
                let anchor = match anchor {
                    Anchor::Start => 0,
                    Anchor::Middle => 1,
                    Anchor::End => 2,
                };
                self.bytes.extend([TEXT, role_byte(*role), weight, anchor]);
                for value in [at.x, at.y, *em, *turn, *width] {
                    self.number(value);
                }
                self.bytes.extend(number.to_le_bytes());
            }
        }
    }

    fn number(&mut self, value: f32) {
        self.bytes.extend(value.to_le_bytes());
    }

    fn points(&mut self, count: u16, points: &[Spot]) {
        self.bytes.extend(count.to_le_bytes());
        for point in points {
            self.number(point.x);
            self.number(point.y);
        }
    }

    /// The number of a text, which is listed once.
    fn text(&mut self, text: &str) -> Option<u16> {
        let at = self.texts.iter().position(|own| own == text).unwrap_or(self.texts.len());
        let number = u16::try_from(at).ok()?;
        if at == self.texts.len() {
            self.texts.push(text.to_owned());
        }
        Some(number)
    }
}

fn role_byte(role: Role) -> u8 {
    place(&Role::ALL, role)
}

fn pattern_byte(pattern: Dash) -> u8 {
    place(&Dash::ALL, pattern)
}

/// The place of a thing in a short list of all of its kind.
fn place<T: PartialEq>(all: &[T], one: T) -> u8 {
    all.iter().position(|own| *own == one).and_then(|at| u8::try_from(at).ok()).unwrap_or(0)
}

/// The strokes of packed bytes.
///
/// # Errors
/// [`PackError`] where the bytes are not what [`pack`] makes.
pub fn unpack(bytes: &[u8], texts: &[String]) -> Result<Vec<Stroke>, PackError> {
    let mut bytes = Bytes(bytes);
    match bytes.byte()? {
        VERSION => {}
        other => return Err(PackError::Version(other)),
    }
    let mut strokes = Vec::new();
    while !bytes.0.is_empty() {
        strokes.push(bytes.stroke(texts)?);
    }
    Ok(strokes)
}

/// The bytes that are not read yet.
struct Bytes<'a>(&'a [u8]);

impl Bytes<'_> {
    fn take<const N: usize>(&mut self) -> Result<[u8; N], PackError> {
        let (first, rest) = self.0.split_first_chunk::<N>().ok_or(PackError::Short)?;
        self.0 = rest;
        Ok(*first)
    }

    fn byte(&mut self) -> Result<u8, PackError> {
        let [byte] = self.take()?;
        Ok(byte)
    }

    fn one_of<T: Copy>(&mut self, all: &[T]) -> Result<T, PackError> {
        let byte = self.byte()?;
        all.get(usize::from(byte)).copied().ok_or(PackError::Unknown(byte))
    }

    fn number(&mut self) -> Result<f32, PackError> {
        Ok(f32::from_le_bytes(self.take()?))
    }

    fn points(&mut self) -> Result<Vec<Spot>, PackError> {
        let count = u16::from_le_bytes(self.take()?);
        (0..count).map(|_| Ok(Spot { x: self.number()?, y: self.number()? })).collect()
    }

    fn stroke(&mut self, texts: &[String]) -> Result<Stroke, PackError> {
        let kind = self.byte()?;
        let role = self.one_of(&Role::ALL)?;
        Ok(match kind {
            FILL => Stroke::Fill { role, corners: self.points()? },
            LINE => {
                let (pattern, closed) = (self.one_of(&Dash::ALL)?, self.one_of(&[false, true])?);
                Stroke::Line { role, pattern, closed, thickness: self.number()?, points: self.points()? }
            }
            HATCH => {
                Stroke::Hatch { role, spacing: self.number()?, thickness: self.number()?, corners: self.points()? }
            }
            TEXT => {
                let weight = self.one_of(&[Weight::Regular, Weight::Bold])?;
                let anchor = self.one_of(&[Anchor::Start, Anchor::Middle, Anchor::End])?;
                let at = Spot { x: self.number()?, y: self.number()? };
                let (em, turn, width) = (self.number()?, self.number()?, self.number()?);
                let number = u16::from_le_bytes(self.take()?);
                let text = texts.get(usize::from(number)).ok_or(PackError::Text(number))?.clone();
                Stroke::Text { role, weight, anchor, at, em, turn, width, text }
            }
            other => return Err(PackError::Unknown(other)),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn spots() -> impl Strategy<Value = Vec<Spot>> {
        let spot = (-1e4_f32..1e4, -1e4_f32..1e4).prop_map(|(x, y)| Spot { x, y });
        proptest::collection::vec(spot, 0..9)
    }

    fn stroke() -> impl Strategy<Value = Stroke> {
        let role = || proptest::sample::select(Role::ALL.to_vec());
        let pattern = proptest::sample::select(Dash::ALL.to_vec());
        let size = || 0.1_f32..50.0;
        prop_oneof![
            (role(), spots()).prop_map(|(role, corners)| Stroke::Fill { role, corners }),
            (role(), pattern, size(), any::<bool>(), spots()).prop_map(|(role, pattern, thickness, closed, points)| {
                Stroke::Line { role, pattern, thickness, closed, points }
            }),
            (role(), size(), size(), spots()).prop_map(|(role, spacing, thickness, corners)| Stroke::Hatch {
                role,
                spacing,
                thickness,
                corners
            }),
            (role(), any::<bool>(), 0..3_usize, size(), "[a-z ]{0,9}").prop_map(|(role, bold, anchor, em, text)| {
                Stroke::Text {
                    role,
                    weight: if bold { Weight::Bold } else { Weight::Regular },
                    anchor: [Anchor::Start, Anchor::Middle, Anchor::End][anchor],
                    at: Spot { x: em * 2.0, y: em * 3.0 },
                    em,
                    turn: 90.0,
                    width: em * 4.0,
                    text,
                }
            }),
        ]
    }

    proptest! {
        #[test]
        fn what_is_packed_is_read_again(strokes in proptest::collection::vec(stroke(), 0..20)) {
            let packed = pack(&strokes);
            prop_assert_eq!(unpack(&packed.bytes, &packed.texts), Ok(strokes));
        }

        #[test]
        fn bytes_cut_off_are_refused(strokes in proptest::collection::vec(stroke(), 1..4), share in 0.0..1.0_f64) {
            let packed = pack(&strokes);
            let at = ((packed.bytes.len() - 1) as f64 * share) as usize;
            let read = unpack(&packed.bytes[..at], &packed.texts);
            // Cut between two strokes it is a shorter drawing; elsewhere none.
            prop_assert!(read.map_or(true, |read| read.len() < strokes.len()));
        }
    }

    #[test]
    fn strange_bytes_are_named() {
        assert_eq!(unpack(&[2], &[]), Err(PackError::Version(2)));
        assert_eq!(unpack(&[], &[]), Err(PackError::Short));
        assert_eq!(unpack(&[1, 9, 0], &[]), Err(PackError::Unknown(9)));
        assert_eq!(unpack(&[1, FILL, 10], &[]), Err(PackError::Unknown(10)));
        let text = pack(&[Stroke::Text {
            role: Role::Ink,
            weight: Weight::Regular,
            anchor: Anchor::Start,
            at: Spot { x: 0.0, y: 0.0 },
            em: 18.0,
            turn: 0.0,
            width: 9.0,
            text: "6".to_owned(),
        }]);
        assert_eq!(unpack(&text.bytes, &[]), Err(PackError::Text(0)));
    }
}
