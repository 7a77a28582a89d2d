use crate::flashing::{JointSection, Layer};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::phrases::key;
use crate::rules::keys;
use crate::views::LayerLine;
use crate::work::PenetrationSite;

/// The layers from the wall outward, each lapping over the one below it.
pub(super) fn lines(terms: &Terms<'_>, site: &PenetrationSite) -> Result<Vec<LayerLine>> {
    let (rules, detail) = (site.work.rules(), &site.detail);
    let joint = JointSection::of(rules, rules.get_length(keys::GAP_BLOCK_MOST)?, site.work.board_thickness()?)?;
    let sizes = [("width", terms.shown(joint.width).into()), ("depth", terms.shown(joint.depth).into())];
    let line = |(code, text): (&str, &str)| LayerLine { code: code.to_owned(), text: terms.phrase(text, &sizes) };
    let layers = detail.assembly().layers();
    Ok(layers.filter_map(|layer| said(layer, detail.first_course, joint.for_looks)).map(line).collect())
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
