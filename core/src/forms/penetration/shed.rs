use crate::flashing::{LapFault, LayerKind, ShedKind, WallLayers};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::phrases::key;
use crate::views::{Note, Shedding, Size, Source};
use crate::work::PenetrationSite;

/// What the head flashing is cut from and bent to.
pub(crate) fn head_sizes(terms: &Terms<'_>, site: &PenetrationSite) -> Result<Vec<Size>> {
    let size = |code: &str, label: &str, length| Size {
        code: code.to_owned(),
        label: terms.phrase(label, &[]),
        reading: terms.reading(length, Source::Planned, None),
    };
    Ok(site.head_flashing()?.map_or_else(Vec::new, |head| {
        vec![
            size("head-cut", key("head-cut"), head.cut_length),
            size("head-strip", key("head-strip"), head.strip),
            size("head-leg", key("head-leg"), head.area.top - head.bend),
            size("head-out", key("head-out"), head.out),
            size("head-fall", key("head-fall"), head.fall),
        ]
    }))
}

/// The shedding check on the layers, which `name` names; `None` where it cannot be made.
pub(crate) fn check(terms: &Terms<'_>, layers: &WallLayers, name: &dyn Fn(LayerKind) -> String) -> Option<Shedding> {
    let faults = layers.faults().ok()?;
    let mut lines: Vec<Note> = faults.iter().map(|fault| line(terms, layers, name, fault)).collect();
    let sheds = lines.is_empty();
    if sheds {
        lines.push(Note::know("sheds", terms.phrase("shed-passes", &[])));
    }
    Some(Shedding { sheds, lines })
}

fn line(terms: &Terms<'_>, layers: &WallLayers, name: &dyn Fn(LayerKind) -> String, fault: &LapFault) -> Note {
    let named = |at: usize| layers.layers.get(at).map(|layer| name(layer.kind)).unwrap_or_default();
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
    Note::stop(code, terms.phrase(text, &args))
}

/// What a layer round a penetration is called.
pub(crate) fn name(terms: &Terms<'_>, site: &PenetrationSite, kind: LayerKind) -> String {
    let plain = match kind {
        LayerKind::Board { course } => {
            return terms.phrase("shed-layer-board", &[("course", site.course_number(course).into())]);
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
        // Round a penetration there is none of them.
        LayerKind::Detail { layer } => return terms.phrase(&format!("detail-layer-{}", layer.code()), &[]),
    };
    terms.phrase(plain, &[])
}
