//! What stands in a job document: the things of a book, their fields and the lists that hold them.

use crate::book::{Allowed, FieldSpec, Kind, fields_of, written_fields_of};

/// A list of things under another.
pub(super) struct PartList {
    /// Its name in the document.
    pub(super) name: &'static str,
    /// What is in it.
    pub(super) kind: Kind,
    /// Whether there is at most one, which then stands without a list.
    pub(super) one: bool,
}

const fn list(name: &'static str, kind: Kind) -> PartList {
    PartList { name, kind, one: false }
}

const JOB_PARTS: &[PartList] = &[
    list("stock", Kind::Stock),
    list("offcuts", Kind::Offcut),
    PartList { name: "pole", kind: Kind::Pole, one: true },
    list("walls", Kind::Wall),
    list("block-sizes", Kind::BlockSize),
];

const POLE_PARTS: &[PartList] = &[list("marks", Kind::Mark)];

const WALL_PARTS: &[PartList] = &[
    list("base-steps", Kind::BaseStep),
    list("studs", Kind::Stud),
    list("openings", Kind::Opening),
    list("abutments", Kind::Abutment),
    list("penetrations", Kind::Penetration),
    list("boards", Kind::Board),
    list("as-built", Kind::AsBuilt),
];

const BOARD_PARTS: &[PartList] = &[list("notches", Kind::Notch)];

/// What stands under a thing of a kind, in an order in which nothing names what comes later.
pub(super) const fn parts(kind: Kind) -> &'static [PartList] {
    match kind {
        Kind::Job => JOB_PARTS,
        Kind::Pole => POLE_PARTS,
        Kind::Wall => WALL_PARTS,
        Kind::Board => BOARD_PARTS,
        _ => &[],
    }
}

/// Every field of a thing of a kind.
pub(super) fn fields(kind: Kind) -> impl Iterator<Item = &'static FieldSpec> + use<> {
    fields_of(kind).iter().chain(written_fields_of(kind))
}

/// Whether a thing keeps course lines: a pole's one height each, a course that hangs three for each line above it (left,
/// middle, right).
pub(super) const fn keeps_lines(kind: Kind) -> bool {
    matches!(kind, Kind::Pole | Kind::AsBuilt)
}

/// Whether others name a thing in the document, by an id of the document's own.
pub(super) const fn is_named(kind: Kind) -> bool {
    matches!(kind, Kind::Penetration | Kind::Offcut)
}

/// Whether a field holds a length.
pub(super) const fn is_length(spec: &FieldSpec) -> bool {
    matches!(spec.allowed, Allowed::Positive | Allowed::NotNegative | Allowed::AnyLength)
}

/// The pieces but the first of a board that something goes right through.
pub(super) const FURTHER_PIECES: &str = "further-pieces";

/// What is not read, wherever it stands: it is most of a document, and follows from the rest or is for people.
pub(super) const PASSED_OVER: &[&str] = &["shape", "holes", "rip", "cuts", FURTHER_PIECES, "report", "readings"];

/// What a document says of the true shape of a board: for whoever checks it, as it follows from the rest.
pub(super) const BOARD_SHAPE: &[&str] = &["at", "shape", "holes", "rip", "cuts", FURTHER_PIECES];
