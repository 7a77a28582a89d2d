use crate::flashing::fall;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::{RuleSet, RuleUnit, keys};
use crate::views::{Size, Source};

/// The sizes that are needed at a step, in the order in which they are marked.
pub(crate) fn of(step: &str, patch: &[Size], block: &[Size], head: &[Size]) -> Vec<Size> {
    let these = |sizes: &[Size], codes: &[&str]| -> Vec<Size> {
        sizes.iter().filter(|size| codes.contains(&size.code.as_str())).cloned().collect()
    };
    match step {
        "patch-hole" => these(
            patch,
            &["width", "height", "hole", "hole-width", "hole-height", "hole-from-left", "hole-from-bottom"],
        ),
        "patch-slit" => these(patch, &["slit"]),
        "patch-cover" => these(patch, &["cover-width", "cover-height", "cover-from-bottom"]),
        "patch-lap" => these(patch, &["over-board", "hidden-by"]),
        "block-hole" => these(
            block,
            &[
                "width",
                "height",
                "thickness",
                "blank-height",
                "drill-at",
                "bit",
                "hole-width",
                "hole-height",
                "hole-at",
            ],
        ),
        "block-split" => these(block, &["lower-face", "lower-back", "upper-face", "upper-back", "climb", "mouth"]),
        "trim-prime" => block.to_vec(),
        "head-flashing" => head.to_vec(),
        _ => Vec::new(),
    }
}

/// How far what goes through falls over a foot, by the house's own rules; none where they do not say.
pub(crate) fn slope(terms: &Terms<'_>, rules: &RuleSet) -> Result<Option<Size>> {
    if !rules.is_own(keys::PIPE_SLOPE)? {
        return Ok(None);
    }
    let degrees = rules.get(keys::PIPE_SLOPE)?.value_in(RuleUnit::Degree);
    let over = Length::from_inches(12);
    let fall = degrees.and_then(|degrees| fall(over, &degrees));
    Ok(fall.map(|fall| Size {
        code: "slope-fall".to_owned(),
        label: terms.phrase(key("step-size-slope-fall"), &[("over", terms.shown(over).into())]),
        reading: terms.reading(fall, Source::Planned, None),
    }))
}
