use crate::measure::Length;
use crate::store::{Id, Value};

use super::{CutShape, Field, House, Kind, Operation, Record};

/// What a board was cut to. What is cut is never rewritten: a later change of a reading or a rule shows as a difference.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutRecord {
    /// Its length.
    pub length: Length,
    /// Its height.
    pub height: Length,
    /// What it was cut round, from left to right.
    pub notches: Vec<CutNotch>,
    /// The shape that it was cut to: more than one where something goes right through it, none of a board that was cut before
    /// boards had shapes.
    pub shapes: Vec<CutShape>,
}

/// What a board was cut round.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutNotch {
    /// Every id that the notch goes by: its own, and that of the penetration or opening that it was planned round.
    pub ids: Vec<Id>,
    /// The block in the board's own frame: left, right, bottom and top at its left and right side; absent where the tape had
    /// not read all of them.
    pub block: Option<[Length; 6]>,
    /// The gap that the rules wanted, least and most, and what they reckoned any saw to take beyond its line, least and most.
    pub rules: [Length; 4],
    /// The gap that was wanted over a head flashing, its fall included: zero where there was none, absent where a board was cut
    /// before anybody asked.
    pub head: Option<Length>,
    /// How far outside the block it was marked.
    pub offset: Length,
}

/// What no saw keeps by hand (common practice, no source).
const BY_HAND: Length = Length::from_inches_64(0, 4);

const BLOCK: [Field; 6] =
    [Field::Left, Field::Right, Field::BottomLeft, Field::BottomRight, Field::TopLeft, Field::TopRight];
const RULES: [Field; 4] = [Field::GapLeast, Field::GapMost, Field::OvercutLeast, Field::OvercutMost];

impl CutRecord {
    /// What a board was cut to last; none where nobody ever cut it.
    pub fn of(house: &House, board: &Record) -> Option<Self> {
        // Both are ordered by their moment.
        let cut = house.under(board.id(), Kind::Cut).last();
        let text = board.texts_under(IN_TEXT).last();
        match (cut, text) {
            (Some(cut), Some((at, text))) if moment(&cut.sort_key) < moment(at) => read_text(text),
            (Some(cut), _) => read(house, cut),
            (None, text) => read_text(text?.1),
        }
    }

    /// The answer with this as a board's further cut; `ids` are new, one more than there are notches, and `sort_key` tells the moment.
    pub fn write(&self, operation: Operation, board: Id, ids: &[Id], sort_key: &str) -> Operation {
        let length = |length: Length| Value::Length { length, typed: String::new(), unit: "mm".to_owned() };
        let Some((cut, ids)) = ids.split_first() else { return operation };
        let mut operation = operation
            .create(*cut, Kind::Cut, Some(board), sort_key.to_owned())
            .set(*cut, Field::Length, length(self.length))
            .set(*cut, Field::Height, length(self.height));
        if !self.shapes.is_empty() {
            operation = operation.set(*cut, Field::Shape, Value::Text(CutShape::text(&self.shapes)));
        }
        for (n, (notch, id)) in self.notches.iter().zip(ids).enumerate() {
            operation = operation
                .create(*id, Kind::CutNotch, Some(*cut), format!("{n:06}"))
                .set(*id, Field::Offset, length(notch.offset))
                .set_all(
                    *id,
                    [Field::Notch, Field::Penetration].into_iter().zip(notch.ids.iter().copied().map(Value::Reference)),
                )
                .set_all(*id, RULES.into_iter().zip(notch.rules.map(length)));
            if let Some(head) = notch.head {
                operation = operation.set(*id, Field::GapHead, length(head));
            }
            if let Some(block) = notch.block {
                operation = operation.set_all(*id, BLOCK.into_iter().zip(block.map(length)));
            }
        }
        operation
    }

    /// Whether a board has the shape that it would have now, but for what no saw keeps by hand; none where it was cut before
    /// boards had shapes.
    pub fn has_shape(&self, now: &[CutShape]) -> Option<bool> {
        let same = || self.shapes.iter().zip(now).all(|(own, now)| own.is_within(now, BY_HAND));
        (!self.shapes.is_empty()).then(|| self.shapes.len() == now.len() && same())
    }

    /// Whether what a board would be cut to now is something else: how far outside the block it was marked is its saw's
    /// own business.
    pub fn differs(&self, now: &Self) -> bool {
        let what = |record: &Self| {
            let notches = record.notches.iter().map(|notch| (notch.block, notch.rules));
            (record.length, record.height, notches.collect::<Vec<_>>())
        };
        let heads = self.notches.iter().zip(&now.notches).filter_map(|(was, is)| was.head.zip(is.head));
        let same = what(self) == what(now) && heads.into_iter().all(|(was, is)| was == is);
        !same || self.has_shape(&now.shapes) == Some(false)
    }

    /// The offset that a notch was marked with.
    pub fn offset(&self, notch: &[Id]) -> Option<Length> {
        let known = self.notches.iter().find(|own| own.ids.iter().any(|id| notch.contains(id)));
        known.map(|notch| notch.offset)
    }
}

fn read(house: &House, cut: &Record) -> Option<CutRecord> {
    let notch = |record: &std::sync::Arc<Record>| CutNotch {
        ids: [Field::Notch, Field::Penetration].into_iter().filter_map(|field| record.reference(field)).collect(),
        block: all(BLOCK.map(|field| record.length(field))),
        rules: RULES.map(|field| record.length(field).unwrap_or_default()),
        head: record.length(Field::GapHead),
        offset: record.length(Field::Offset).unwrap_or_default(),
    };
    Some(CutRecord {
        length: cut.length(Field::Length)?,
        height: cut.length(Field::Height)?,
        notches: house.under(cut.id(), Kind::CutNotch).iter().map(notch).collect(),
        shapes: cut.text(Field::Shape).and_then(CutShape::read).unwrap_or_default(),
    })
}

fn all<const N: usize>(lengths: [Option<Length>; N]) -> Option<[Length; N]> {
    lengths.iter().all(Option::is_some).then(|| lengths.map(Option::unwrap_or_default))
}

fn moment(key: &str) -> &str {
    key.get(..16).unwrap_or(key)
}

/// The beginning of the fields of a board in which the first books kept a cut as text, one a cut; the moment stands behind it.
const IN_TEXT: &str = "cut/";

/// Reads `length,height;cut:left,right,bottom,bottom,top,top:gap,gap,over,over;…|ids@offset@corners;…`, all lengths in
/// nanometres: what the first books kept. A notch whose block was not known has no lengths of it.
fn read_text(text: &str) -> Option<CutRecord> {
    let (cut, marks) = text.split_once('|')?;
    let mut cut = cut.split(';');
    let [length, height] = lengths(cut.next()?)?;
    let mut notches = Vec::new();
    for (notch, marked) in cut.zip(marks.split(';')) {
        let mut parts = notch.split(':').skip(1);
        let (block, rules) = (parts.next()?, lengths(parts.next()?)?);
        let mut parts = marked.split('@');
        let ids = parts.next()?.split(' ').filter_map(|id| id.parse().ok()).collect();
        let offset = Length::from_nm(parts.next()?.parse().ok()?);
        notches.push(CutNotch { ids, block: lengths(block), rules, head: None, offset });
    }
    Some(CutRecord { length, height, notches, shapes: Vec::new() })
}

fn lengths<const N: usize>(text: &str) -> Option<[Length; N]> {
    let lengths: Option<Vec<Length>> = text.split(',').map(|nm| nm.parse().ok().map(Length::from_nm)).collect();
    lengths?.try_into().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cut_that_the_first_books_kept_as_text_is_read() {
        let id = "0123456789abcdef0123456789abcdef";
        let text = format!("3000,200;bottom:1,2,-3,-4,5,6:7,8,9,10;none::7,8,9,10|{id}@11@1,2 3,4;@0@");
        let cut = read_text(&text).unwrap();
        let nm = Length::from_nm;
        assert_eq!((cut.length, cut.height, cut.notches.len()), (nm(3000), nm(200), 2));
        assert_eq!(cut.notches[0].block, Some([1, 2, -3, -4, 5, 6].map(nm)));
        assert_eq!((cut.notches[0].offset, cut.notches[1].block), (nm(11), None));
        assert_eq!(cut.offset(&[id.parse().unwrap()]), Some(nm(11)));
        assert_eq!(read_text("3000,200|").unwrap().notches, []);
        for bad in ["", "3000", "3000,200;bottom", "3000,200;b:1:2|a@b@c", "x,200|"] {
            assert_eq!(read_text(bad), None, "{bad}");
        }
    }
}
