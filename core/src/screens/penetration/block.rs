use num_rational::BigRational;

use crate::flashing::{BlockError, BlockLimits, BlockWarning, SlipBlock, SlipRequest, SplitBlock, SplitRequest};
use crate::measure::Length;
use crate::phrases::{Arg, key};
use crate::rules::keys;
use crate::screens::context::Terms;
use crate::screens::kept::Block;
use crate::screens::trouble::Kept;
use crate::views::{Note, Size, Source};
use crate::wall::{Mounting, Shape};

use super::Round;

/// The sizes of the block and whether it is split; empty, with a note, where it cannot be made so.
pub(super) fn sizes(terms: &Terms<'_>, round: &Round, notes: &mut Vec<Note>) -> Kept<(Vec<Size>, bool)> {
    let penetration = &round.penetration;
    let Some(block) = penetration.block else { return Ok((Vec::new(), false)) };
    let (width, height) = (block.x.length(), block.y.length());
    let whole = vec![
        size(terms, "width", key("block-width"), width),
        size(terms, "height", key("block-height"), height),
        size(terms, "thickness", key("block-thickness"), block.thickness),
    ];
    match (penetration.mounting, penetration.shape) {
        (Mounting::Split, Shape::Round { diameter }) => {
            let split = SplitBlock::lay_out(&split(terms, round, &block, diameter)?);
            Ok((split_sizes(terms, whole, split, notes), true))
        }
        (mounting, through) => {
            if mounting == Mounting::Split {
                notes.push(said(terms, "split-not-round", key("block-split-not-round"), &[]));
            }
            let request = SlipRequest {
                width,
                height,
                thickness: block.thickness,
                through,
                center: block.hole,
                gap: round.job.rules.get_length(keys::GAP_BLOCK_MOST)?,
                board_thickness: round.job.board_thickness()?,
                limits: limits(round)?,
            };
            Ok((slip_sizes(terms, whole, &request, notes), false))
        }
    }
}

/// What a block that is split round a pipe is laid out from.
pub(super) fn split(terms: &Terms<'_>, round: &Round, block: &Block, pipe: Length) -> Kept<SplitRequest> {
    let rules = &round.job.rules;
    Ok(SplitRequest {
        width: block.x.length(),
        height: block.y.length(),
        thickness: block.thickness,
        pipe,
        center: block.hole,
        angle: BigRational::from_integer(rules.get_whole(keys::BLOCK_ANGLE)?.into()),
        kerf: rules.get_length(keys::SAW_KERF)?,
        gap: rules.get_length(keys::GAP_BLOCK_MOST)?,
        bits: None,
        board_thickness: Some(round.job.board_thickness()?),
        division: terms.division,
        limits: limits(round)?,
    })
}

fn limits(round: &Round) -> Kept<BlockLimits> {
    let rule = |key: &str| round.job.rules.get_length(key);
    Ok(BlockLimits {
        bit_step: rule(keys::BLOCK_BIT_STEP)?,
        side_least: rule(keys::BLOCK_SIDE_LEAST)?,
        thickness_margin: rule(keys::BLOCK_THICKNESS_MARGIN)?,
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

fn slip_sizes(terms: &Terms<'_>, mut sizes: Vec<Size>, request: &SlipRequest, notes: &mut Vec<Note>) -> Vec<Size> {
    match SlipBlock::lay_out(request) {
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
