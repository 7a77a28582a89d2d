use crate::flashing::{
    HeadFlashing, HeadRequest, LapFault, LayerBoard, LayerKind, LayersRequest, Outer, ShedKind, WallLayers,
};
use crate::phrases::key;
use crate::rules::keys;
use crate::screens::context::Terms;
use crate::screens::trouble::Kept;
use crate::views::{Note, Shedding, Size, Source};
use crate::wall::Finish;

use super::{Round, patch};

/// The head flashing of a penetration; `None` where it has none, or where it cannot be bent.
pub(super) fn head(round: &Round) -> Kept<Option<HeadFlashing>> {
    let (Some(block), true) = (round.penetration.block, round.detail.head_flashing) else { return Ok(None) };
    let rules = &round.job.rules;
    let request = HeadRequest {
        block: round.outer(),
        thickness: block.thickness,
        up_leg: rules.get_length(keys::HEAD_FLASHING_UP_LEG)?,
        gap: rules.get_length(keys::GAP_HEAD_FLASHING)?,
        slope: rules.get_share(keys::HEAD_FLASHING_SLOPE)?,
        end_dam: rules.get_length(keys::HEAD_FLASHING_END_DAM)?,
        down_lap: rules.get_length(keys::HEAD_FLASHING_DOWN_LAP)?,
        drip: rules.get_length(keys::HEAD_FLASHING_DRIP)?,
    };
    Ok(HeadFlashing::bend(&request).ok())
}

/// What the head flashing is cut from and bent to.
pub(super) fn head_sizes(terms: &Terms<'_>, round: &Round) -> Kept<Vec<Size>> {
    let size = |code: &str, label: &str, length| Size {
        code: code.to_owned(),
        label: terms.phrase(label, &[]),
        reading: terms.reading(length, Source::Planned, None),
    };
    Ok(head(round)?.map_or_else(Vec::new, |head| {
        vec![
            size("head-cut", key("head-cut"), head.cut_length),
            size("head-strip", key("head-strip"), head.strip),
            size("head-leg", key("head-leg"), head.area.top - head.bend),
            size("head-out", key("head-out"), head.out),
            size("head-fall", key("head-fall"), head.fall),
        ]
    }))
}

/// The layers of a penetration with their extents; `None` where its patch cannot be told.
pub(super) fn layers(terms: &Terms<'_>, round: &Round) -> Kept<Option<WallLayers>> {
    let Some(Ok(patch)) = patch::cut(terms, round)? else { return Ok(None) };
    let rule = |key: &str| round.job.rules.get_length(key);
    let kind = match round.detail.finish {
        Finish::Block => LayerKind::Block,
        Finish::Collar => LayerKind::Collar,
        Finish::Trim => LayerKind::Trim,
    };
    let board = |course: &crate::siding::CourseLine| LayerBoard { bottom: course.bottom, height: course.height };
    let board_thickness = round.job.board_thickness()?;
    let thickness = round.penetration.block.map_or(board_thickness, |block| block.thickness);
    let request = LayersRequest {
        boards: round.courses.iter().map(board).collect(),
        board_thickness,
        lap: round.job.lap()?,
        patch,
        pipe: round.pipe(),
        outer: Outer { kind, area: round.outer(), thickness },
        head: head(round)?,
        gap: rule(keys::GAP_BLOCK_MOST)?,
        barrier_lap: rule(keys::BARRIER_LAP_HORIZONTAL)?,
        head_laps: (rule(keys::HEAD_FLASHING_DOWN_LAP)?, rule(keys::HEAD_FLASHING_UP_LEG)?),
        patch_lap: round.job.nail_line()?,
        shadow: rule(keys::SHADOW_MOST)?,
    };
    Ok(WallLayers::build(&request).ok())
}

/// The shedding check on those layers; `None` where they cannot be told.
pub(super) fn check(terms: &Terms<'_>, round: &Round) -> Kept<Option<Shedding>> {
    let Some(layers) = layers(terms, round)? else { return Ok(None) };
    Ok(layers.faults().ok().map(|faults| said(terms, round, &layers, &faults)))
}

pub(super) fn said(terms: &Terms<'_>, round: &Round, layers: &WallLayers, faults: &[LapFault]) -> Shedding {
    let mut lines: Vec<Note> = faults.iter().map(|fault| line(terms, round, layers, fault)).collect();
    let sheds = lines.is_empty();
    if sheds {
        lines.push(Note { code: "sheds".to_owned(), text: terms.phrase("shed-passes", &[]) });
    }
    Shedding { sheds, lines }
}

fn line(terms: &Terms<'_>, round: &Round, layers: &WallLayers, fault: &LapFault) -> Note {
    let named = |at: usize| layers.layers.get(at).map(|layer| name(terms, round, layer.kind)).unwrap_or_default();
    let lower = fault.lower.map(named);
    let (code, text) = match (fault.kind, &lower) {
        (ShedKind::ShortLap, _) => ("short-lap", key("shed-short-lap")),
        (ShedKind::StopsShort, Some(_)) => ("stops-short", key("shed-stops-short")),
        (ShedKind::StopsShort, None) => ("stops-short", key("shed-over-nothing")),
        (ShedKind::Behind, _) => ("behind", key("shed-behind")),
        (ShedKind::Shows, _) => ("shows", key("shed-shows")),
        (ShedKind::SlitDown, _) => ("slit-down", key("shed-slit-down")),
    };
    let lower = lower.unwrap_or_default();
    let args = [("upper", named(fault.upper).into()), ("lower", lower.into()), ("height", terms.shown(fault.y).into())];
    Note { code: code.to_owned(), text: terms.phrase(text, &args) }
}

fn name(terms: &Terms<'_>, round: &Round, kind: LayerKind) -> String {
    let plain = match kind {
        LayerKind::Board { course } => {
            return terms.phrase("shed-layer-board", &[("course", round.course_number(course).into())]);
        }
        LayerKind::Base => key("shed-layer-base"),
        LayerKind::Barrier => key("shed-layer-barrier"),
        LayerKind::Patch => key("shed-layer-patch"),
        LayerKind::Cover => key("shed-layer-cover"),
        LayerKind::Block => key("shed-layer-block"),
        LayerKind::Collar => key("shed-layer-collar"),
        LayerKind::Trim => key("shed-layer-trim"),
        LayerKind::HeadFlashing => key("shed-layer-head-flashing"),
        LayerKind::BarrierFlap => key("shed-layer-barrier-flap"),
    };
    terms.phrase(plain, &[])
}
