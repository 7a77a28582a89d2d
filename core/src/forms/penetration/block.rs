use crate::flashing::{BlockError, BlockWarning, SlipBlock, SlipError, SplitBlock};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::measure::Length;
use crate::phrases::{Arg, key};
use crate::views::{Note, Size, Source};
use crate::wall::Shape;
use crate::work::{MadeBlock, PenetrationSite};

/// The sizes of the block and whether it is split; empty, with a note, where it cannot be made so.
pub(crate) fn sizes(terms: &Terms<'_>, site: &PenetrationSite, notes: &mut Vec<Note>) -> Result<(Vec<Size>, bool)> {
    let Some(block) = site.penetration.block else { return Ok((Vec::new(), false)) };
    let sized = |width, height, thickness| {
        vec![
            size(terms, "width", width, block.x.length()),
            size(terms, "height", height, block.y.length()),
            size(terms, "thickness", thickness, block.thickness),
        ]
    };
    let of_block = || sized(key("block-width"), key("block-height"), key("block-thickness"));
    Ok(match site.made_block(terms.division)? {
        Some(MadeBlock::Split(split)) => (split_sizes(terms, of_block(), split, notes), true),
        Some(MadeBlock::Slip(slip)) => (slip_sizes(terms, of_block(), slip, notes), false),
        // Trim is put together round what comes through: it has no hole of its own.
        None => (sized(key("trim-width"), key("trim-height"), key("trim-thickness")), false),
    })
}

fn split_sizes(
    terms: &Terms<'_>,
    mut sizes: Vec<Size>,
    split: Result<SplitBlock, BlockError>,
    notes: &mut Vec<Note>,
) -> Vec<Size> {
    match split {
        Ok(split) => {
            notes.extend(split.warnings.iter().map(|warning| warned(terms, *warning)));
            sizes.extend([
                size(terms, "blank-height", key("block-blank-height"), split.blank_height),
                size(terms, "drill-at", key("block-drill-at"), split.drill_at),
            ]);
            sizes.extend(hole(terms, split.hole));
            sizes.extend([
                size(terms, "lower-face", key("block-lower-face"), split.lower.face),
                size(terms, "lower-back", key("block-lower-back"), split.lower.back),
                size(terms, "upper-face", key("block-upper-face"), split.upper.face),
                size(terms, "upper-back", key("block-upper-back"), split.upper.back),
                size(terms, "climb", key("block-climb"), split.climb),
                size(terms, "mouth", key("block-mouth"), split.mouth),
            ]);
        }
        Err(error) => notes.push(refused(terms, &error)),
    }
    sizes
}

fn slip_sizes(
    terms: &Terms<'_>,
    mut sizes: Vec<Size>,
    slip: Result<SlipBlock, SlipError>,
    notes: &mut Vec<Note>,
) -> Vec<Size> {
    match slip {
        Ok(slip) => {
            sizes.extend(hole(terms, slip.hole));
            sizes.push(size(terms, "hole-at", key("block-hole-at"), slip.hole_at));
            if slip.thin_side {
                notes.push(warned(terms, BlockWarning::ThinSide));
            }
            if slip.shallow {
                notes.push(warned(terms, BlockWarning::Shallow));
            }
        }
        Err(_) => notes.push(said(terms, "hole-leaves", key("block-hole-leaves"), &[])),
    }
    sizes
}

/// A bit, or an opening that is cut out.
fn hole(terms: &Terms<'_>, hole: Shape) -> Vec<Size> {
    match hole {
        Shape::Round { diameter } => vec![size(terms, "bit", key("block-bit"), diameter)],
        Shape::Rectangle { width, height } => vec![
            size(terms, "hole-width", key("block-hole-width"), width),
            size(terms, "hole-height", key("block-hole-height"), height),
        ],
    }
}

fn size(terms: &Terms<'_>, code: &str, label: &str, length: Length) -> Size {
    let reading = terms.reading(length, Source::Planned, None);
    Size { code: code.to_owned(), label: terms.phrase(label, &[]), reading }
}

/// Why the block cannot be made so.
fn said(terms: &Terms<'_>, code: &str, text: &str, args: &[(&str, Arg<'_>)]) -> Note {
    Note::stop(code, terms.phrase(text, args))
}

fn warned(terms: &Terms<'_>, warning: BlockWarning) -> Note {
    let (code, text) = match warning {
        BlockWarning::MouthTight => ("mouth-tight", key("block-mouth-tight")),
        BlockWarning::ThinSide => ("thin-side", key("block-thin-side")),
        BlockWarning::Shallow => ("block-shallow", key("block-shallow")),
    };
    Note::check(code, terms.phrase(text, &[]))
}

fn refused(terms: &Terms<'_>, error: &BlockError) -> Note {
    let way_out = match error {
        BlockError::RingClosed(way_out) => Some(("ring-closed", key("block-ring-closed"), way_out)),
        BlockError::MouthNarrow { way_out, .. } => Some(("mouth-narrow", key("block-mouth-narrow"), way_out)),
        _ => None,
    };
    match (way_out, error) {
        (Some((code, text, way_out)), _) => {
            let hole = way_out.hole.map_or_else(|| terms.phrase("block-no-bit", &[]), |hole| terms.shown(hole));
            said(terms, code, text, &[("angle", way_out.angle_text().into()), ("bit", hole.into())])
        }
        (None, BlockError::HoleTooWide { width }) => {
            said(terms, "bit-wide", key("block-bit-wide"), &[("bit", terms.shown(*width).into())])
        }
        (None, BlockError::HoleTooHigh { .. }) => said(terms, "hole-leaves", key("block-hole-leaves"), &[]),
        (None, BlockError::CutLeaves { .. }) => said(terms, "cut-leaves", key("block-cut-leaves"), &[]),
        (None, _) => said(terms, "block", key("block-trouble"), &[]),
    }
}
