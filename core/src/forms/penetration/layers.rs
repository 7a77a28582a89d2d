use crate::flashing::{JointSection, Layer};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::phrases::key;
use crate::rules::keys;
use crate::steps::Step;
use crate::views::{LayerLine, StepLine};
use crate::work::PenetrationSite;

/// The layers from the wall outward, each lapping over the one below it.
pub(crate) fn lines(terms: &Terms<'_>, site: &PenetrationSite) -> Result<Vec<LayerLine>> {
    let (rules, detail) = (site.work.rules(), &site.detail);
    let joint = JointSection::of(rules, rules.get_length(keys::GAP_BLOCK_MOST)?, site.work.board_thickness()?)?;
    let sizes = [("width", terms.shown(joint.width).into()), ("depth", terms.shown(joint.depth).into())];
    let layers = detail.assembly().layers();
    let listed = layers.filter_map(|layer| said(layer, detail.first_course, joint.for_looks));
    let line = |(number, (code, text)): (u32, (&str, &str))| LayerLine {
        number,
        code: code.to_owned(),
        text: terms.phrase(text, &sizes),
    };
    Ok((1..).zip(listed).map(line).collect())
}

/// Says of a step's line which layer it works on, and that a step that asks for a measure asks for it at its tick; without
/// one it is ticked in the list.
pub(crate) fn point_out(line: &mut StepLine, step: &Step, layers: &[LayerLine]) {
    line.layer = of_step(step, layers);
    let measured = format!("{}/measured", line.code);
    line.opens = line.asks.iter().find(|asks| asks.field == measured).cloned();
}

/// The code of the layer that a step works on; empty where it is none.
fn of_step(step: &Step, layers: &[LayerLine]) -> String {
    // What is made ready is named after its layer: a block's hole, a patch's slit; at a detail behind its place.
    let own = step.code.rsplit('/').next().unwrap_or_default();
    let code = step.puts.map_or_else(|| own.split('-').next().unwrap_or_default(), told_as);
    layers.iter().find(|line| line.code == code).map(|line| line.code.clone()).unwrap_or_default()
}

/// The code of the line that tells a layer: the pieces of a split block and of a casing are told together.
pub(crate) fn told_as(layer: Layer) -> &'static str {
    match layer {
        Layer::BlockLower | Layer::BlockUpper => Layer::Block.code(),
        Layer::TrimBottom | Layer::TrimSides | Layer::TrimTop => "trim",
        layer => layer.code(),
    }
}

/// The code and the text of a layer; the pieces of a split block and of trim are told together.
fn said(layer: Layer, first_course: bool, for_looks: bool) -> Option<(&'static str, &'static str)> {
    let text = match layer {
        Layer::Barrier => key("layer-barrier"),
        Layer::Patch if first_course => key("layer-patch-over-starter"),
        Layer::Patch => key("layer-patch"),
        Layer::Cover => key("layer-cover"),
        Layer::Block => key("layer-slip-block"),
        Layer::BlockLower => return Some((Layer::Block.code(), key("layer-split-block"))),
        Layer::TrimBottom => return Some(("trim", key("layer-trim"))),
        Layer::BlockUpper | Layer::TrimSides | Layer::TrimTop => return None,
        Layer::HeadFlashing => key("layer-head-flashing"),
        Layer::BarrierFlap => key("layer-barrier-flap"),
        Layer::Boards => key("layer-boards"),
        Layer::Collar => key("layer-collar"),
        Layer::Sealant if for_looks => key("layer-sealant-for-looks"),
        Layer::Sealant => key("layer-sealant"),
        // The details that every house has tell these.
        _ => return None,
    };
    Some((layer.code(), text))
}
