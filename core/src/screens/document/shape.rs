//! What stands in a job document: the things of a book, their fields and the lists that hold them.

use crate::screens::kinds::{self, Allowed, Ask, asks};

/// A list of things under another.
pub(super) struct Part {
    /// Its name in the document.
    pub(super) name: &'static str,
    /// What is in it.
    pub(super) kind: &'static str,
    /// Whether there is at most one, which then stands without a list.
    pub(super) one: bool,
}

const fn list(name: &'static str, kind: &'static str) -> Part {
    Part { name, kind, one: false }
}

const JOB_PARTS: &[Part] = &[
    list("stock", kinds::STOCK),
    list("offcuts", kinds::OFFCUT),
    Part { name: "pole", kind: kinds::POLE, one: true },
    list("walls", kinds::WALL),
    list("block-sizes", kinds::BLOCK_SIZE),
];

const POLE_PARTS: &[Part] = &[list("marks", kinds::MARK)];

const WALL_PARTS: &[Part] = &[
    list("base-steps", kinds::BASE_STEP),
    list("studs", kinds::STUD),
    list("openings", kinds::OPENING),
    list("abutments", kinds::ABUTMENT),
    list("penetrations", kinds::PENETRATION),
    list("boards", kinds::BOARD),
    list("as-built", kinds::AS_BUILT),
];

const BOARD_PARTS: &[Part] = &[list("notches", kinds::NOTCH)];

/// What stands under a thing of a kind, in an order in which nothing names what comes later.
pub(super) fn parts(kind: &str) -> &'static [Part] {
    match kind {
        kinds::JOB => JOB_PARTS,
        kinds::POLE => POLE_PARTS,
        kinds::WALL => WALL_PARTS,
        kinds::BOARD => BOARD_PARTS,
        _ => &[],
    }
}

const fn extra(field: &'static str, allowed: Allowed) -> Ask {
    Ask { field, title: "", hint: "", allowed, optional: true }
}

const YES_OR_NO: Allowed = Allowed::OneOf(&[("yes", ""), ("no", "")]);

/// How good the saw list is: the length of its new boards, and the least that any plan takes.
const JOB_EXTRAS: &[Ask] = &[extra("plan-used", Allowed::NotNegative), extra("plan-least", Allowed::NotNegative)];

const OFFCUT_EXTRAS: &[Ask] =
    &[extra("cut-from", Allowed::Whole(1, 1_000_000)), extra("used", Allowed::OneOf(&[("cut", ""), ("dropped", "")]))];

const BOARD_EXTRAS: &[Ask] = &[
    extra("course", Allowed::Whole(1, 10_000)),
    extra("from", Allowed::AnyLength),
    extra("to", Allowed::AnyLength),
    extra("bottom", Allowed::AnyLength),
    extra("bottom-right", Allowed::AnyLength),
    extra("joint", YES_OR_NO),
    // Documents written before bevels were read off the ends have it.
    extra("bevelled", YES_OR_NO),
    extra("bevel-left", Allowed::AnyLength),
    extra("bevel-right", Allowed::AnyLength),
    extra("cut-from", Allowed::Whole(1, 1_000_000)),
    extra("stock", Allowed::Positive),
    extra("state", Allowed::OneOf(&[("planned", ""), ("cut", ""), ("fixed", "")])),
];

const AS_BUILT_EXTRAS: &[Ask] = &[
    extra("courses", Allowed::Whole(0, 10_000)),
    extra("need-change", Allowed::NotNegative),
    extra("need-reveal-min", Allowed::Positive),
    extra("need-reveal-max", Allowed::Positive),
];

/// What a thing keeps that no question asks.
fn extras(kind: &str) -> &'static [Ask] {
    match kind {
        kinds::JOB => JOB_EXTRAS,
        kinds::OFFCUT => OFFCUT_EXTRAS,
        kinds::BOARD => BOARD_EXTRAS,
        kinds::AS_BUILT => AS_BUILT_EXTRAS,
        _ => &[],
    }
}

/// Every field of a thing of a kind.
pub(super) fn fields(kind: &str) -> impl Iterator<Item = &'static Ask> + use<> {
    asks(kind).iter().chain(extras(kind))
}

/// Whether a thing keeps course lines: a pole's one height each, a course that hangs three for each line above it (left,
/// middle, right).
pub(super) fn keeps_lines(kind: &str) -> bool {
    matches!(kind, kinds::POLE | kinds::AS_BUILT)
}

/// Whether a field holds a length.
pub(super) const fn is_length(ask: &Ask) -> bool {
    matches!(ask.allowed, Allowed::Positive | Allowed::NotNegative | Allowed::AnyLength)
}
