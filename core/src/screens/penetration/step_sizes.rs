use crate::views::Size;

/// The sizes that are needed at a step, in the order in which they are marked.
pub(super) fn of(step: &str, patch: &[Size], block: &[Size], head: &[Size]) -> Vec<Size> {
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
