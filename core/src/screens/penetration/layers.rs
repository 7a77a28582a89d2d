use crate::phrases::key;
use crate::screens::context::Terms;
use crate::steps::PenetrationDetail;
use crate::views::LayerLine;
use crate::wall::{Finish, Mounting};

/// The layers from the wall outward, each lapping over the one below it.
pub(super) fn lines(terms: &Terms<'_>, detail: &PenetrationDetail) -> Vec<LayerLine> {
    let outer = match (detail.finish, detail.mounting) {
        (Finish::Block, Mounting::Split) => ("block", key("layer-split-block")),
        (Finish::Block, Mounting::SlipOver) => ("block", key("layer-slip-block")),
        (Finish::Collar, _) => ("collar", key("layer-collar")),
        (Finish::Trim, _) => ("trim", key("layer-trim")),
    };
    let below = if detail.first_course { key("layer-patch-over-starter") } else { key("layer-patch") };
    let head = (detail.head_flashing && detail.finish != Finish::Collar)
        .then_some(("head-flashing", key("layer-head-flashing")));
    [
        Some(("barrier", key("layer-barrier"))),
        Some(("patch", below)),
        Some(("cover", key("layer-cover"))),
        Some(outer),
        head,
        Some(("boards", key("layer-boards"))),
        Some(("sealant", key("layer-sealant"))),
    ]
    .into_iter()
    .flatten()
    .map(|(code, text)| LayerLine { code: code.to_owned(), text: terms.phrase(text, &[]) })
    .collect()
}
