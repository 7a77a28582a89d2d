use crate::flashing::{BlockError, BlockWarning, SlipBlock, SlipError, SplitBlock};
use crate::measure::Length;
use crate::phrases::{Arg, key};
use crate::screens::context::Terms;
use crate::screens::trouble::Kept;
use crate::views::{Note, Size, Source};
use crate::wall::{Mounting, Shape};
use crate::work::{MadeBlock, PenetrationSite};

/// The sizes of the block and whether it is split; empty, with a note, where it cannot be made so.
pub(super) fn sizes(terms: &Terms<'_>, site: &PenetrationSite, notes: &mut Vec<Note>) -> Kept<(Vec<Size>, bool)> {
    let (Some(block), Some(made)) = (site.penetration.block, site.made_block(terms.division)?) else {
        return Ok((Vec::new(), false));
    };
    let whole = vec![
        size(terms, "width", key("block-width"), block.x.length()),
        size(terms, "height", key("block-height"), block.y.length()),
        size(terms, "thickness", key("block-thickness"), block.thickness),
    ];
    Ok(match made {
        MadeBlock::Split(split) => (split_sizes(terms, whole, split, notes), true),
        MadeBlock::Slip(slip) => {
            if site.penetration.mounting == Mounting::Split {
                notes.push(said(terms, "split-not-round", key("block-split-not-round"), &[]));
            }
            (slip_sizes(terms, whole, slip, notes), false)
        }
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
                size(terms, "bit", key("block-bit"), split.bit),
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
            match slip.hole {
                Shape::Round { diameter } => sizes.push(size(terms, "bit", key("block-bit"), diameter)),
                Shape::Rectangle { width, height } => sizes.extend([
                    size(terms, "hole-width", key("block-hole-width"), width),
                    size(terms, "hole-height", key("block-hole-height"), height),
                ]),
            }
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

fn size(terms: &Terms<'_>, code: &str, label: &str, length: Length) -> Size {
    let reading = terms.reading(length, Source::Planned, None);
    Size { code: code.to_owned(), label: terms.phrase(label, &[]), reading }
}

fn said(terms: &Terms<'_>, code: &str, text: &str, args: &[(&str, Arg<'_>)]) -> Note {
    Note { code: code.to_owned(), text: terms.phrase(text, args) }
}

fn warned(terms: &Terms<'_>, warning: BlockWarning) -> Note {
    let (code, text) = match warning {
        BlockWarning::MouthTight => ("mouth-tight", key("block-mouth-tight")),
        BlockWarning::ThinSide => ("thin-side", key("block-thin-side")),
        BlockWarning::Shallow => ("block-shallow", key("block-shallow")),
    };
    said(terms, code, text, &[])
}

fn refused(terms: &Terms<'_>, error: &BlockError) -> Note {
    let way_out = match error {
        BlockError::RingClosed(way_out) => Some(("ring-closed", key("block-ring-closed"), way_out)),
        BlockError::MouthNarrow { way_out, .. } => Some(("mouth-narrow", key("block-mouth-narrow"), way_out)),
        _ => None,
    };
    match (way_out, error) {
        (Some((code, text, way_out)), _) => {
            let bit = way_out.bit.map_or_else(|| terms.phrase("block-no-bit", &[]), |bit| terms.shown(bit));
            said(terms, code, text, &[("angle", way_out.angle_text().into()), ("bit", bit.into())])
        }
        (None, BlockError::BitTooWide { bit }) => {
            said(terms, "bit-wide", key("block-bit-wide"), &[("bit", terms.shown(*bit).into())])
        }
        (None, BlockError::CutLeaves { .. }) => said(terms, "cut-leaves", key("block-cut-leaves"), &[]),
        (None, _) => said(terms, "block", key("block-trouble"), &[]),
    }
}
