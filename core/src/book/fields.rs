//! The table of fields: which questions each kind of thing answers, in the order in which they are asked, and what may be answered.

use crate::phrases::key;
use crate::rules::Exposure;
use crate::wall::{CornerKind, Finish, Mounting, OpeningKind, PenetrationKind};

use super::{BoardState, Field, Kind};

/// What an answer must be.
#[derive(Clone, Copy, Debug)]
pub enum Allowed {
    /// A length over zero.
    Positive,
    /// A length of at least zero.
    NotNegative,
    /// Any length.
    AnyLength,
    /// One of these codes, with the key of each one's phrase.
    OneOf(&'static [(&'static str, &'static str)]),
    /// A whole number from the first to the second.
    Whole(i64, i64),
    /// Text that is not empty.
    Text,
    /// Any text.
    AnyText,
}

/// A question that a field answers. `F` is a field of the book, or a setting.
#[derive(Clone, Copy, Debug)]
pub struct FieldSpec<F = Field> {
    /// The field.
    pub field: F,
    /// The key of the question.
    pub title: &'static str,
    /// The key of where to hook the tape.
    pub hint: &'static str,
    /// What the answer must be.
    pub allowed: Allowed,
    /// Whether the work can go on without it.
    pub optional: bool,
}

impl<F> FieldSpec<F> {
    /// A question that the work cannot go on without.
    pub const fn new(field: F, title: &'static str, hint: &'static str, allowed: Allowed) -> Self {
        Self { field, title, hint, allowed, optional: false }
    }

    /// The key of the label of a code that answers it, where it is one of its choices.
    pub fn label(&self, code: &str) -> Option<&'static str> {
        let Allowed::OneOf(choices) = self.allowed else { return None };
        choices.iter().find_map(|(own, label)| (*own == code).then_some(*label))
    }
}

impl<F: Copy> FieldSpec<F> {
    /// The same, where the work can go on without an answer.
    pub const fn optional(self) -> Self {
        Self { optional: true, ..self }
    }
}

const YES_OR_NO: Allowed = Allowed::OneOf(&[("yes", key("screen-yes")), ("no", key("screen-no"))]);

/// The questions of a job: its boards.
const JOB_FIELDS: &[FieldSpec] = &[
    FieldSpec::new(Field::Name, key("ask-job-name"), key("ask-job-name-hint"), Allowed::Text),
    FieldSpec::new(Field::BoardHeight, key("ask-board-height"), key("ask-board-height-hint"), Allowed::Positive),
    FieldSpec::new(
        Field::BoardThickness,
        key("ask-board-thickness"),
        key("ask-board-thickness-hint"),
        Allowed::Positive,
    ),
    FieldSpec::new(Field::Lap, key("ask-lap"), key("ask-lap-hint"), Allowed::Positive),
    FieldSpec::new(Field::NailLine, key("ask-nail-line"), key("ask-nail-line-hint"), Allowed::Positive),
    FieldSpec::new(Field::OldHouse, key("ask-old-house"), key("ask-old-house-hint"), YES_OR_NO).optional(),
    FieldSpec::new(Field::Rules, key("ask-rules"), key("ask-rules-hint"), Allowed::OneOf(RULE_FAMILIES)).optional(),
    FieldSpec::new(Field::WindSpeed, key("ask-wind-speed"), key("ask-wind-speed-hint"), Allowed::Whole(50, 250))
        .optional(),
    FieldSpec::new(
        Field::Exposure,
        key("ask-exposure"),
        key("ask-exposure-hint"),
        Allowed::OneOf(&[
            (Exposure::B.code(), key("ask-exposure-b")),
            (Exposure::C.code(), key("ask-exposure-c")),
            (Exposure::D.code(), key("ask-exposure-d")),
        ]),
    )
    .optional(),
    FieldSpec::new(Field::RoofHeight, key("ask-roof-height"), key("ask-roof-height-hint"), Allowed::Positive)
        .optional(),
];

/// The families of rules that a job may follow.
pub const RULE_FAMILIES: &[(&str, &str)] = &[
    ("us", key("rule-family-us")),
    ("ca", key("rule-family-ca")),
    ("au", key("rule-family-au")),
    ("nz", key("rule-family-nz")),
];

/// The questions of a stock length.
const STOCK_FIELDS: &[FieldSpec] = &[
    FieldSpec::new(Field::Length, key("ask-stock-length"), key("ask-stock-length-hint"), Allowed::Positive),
    FieldSpec::new(Field::Count, key("ask-stock-count"), key("ask-stock-count-hint"), Allowed::Whole(0, 10_000))
        .optional(),
];

/// The question of an offcut.
const OFFCUT_FIELDS: &[FieldSpec] =
    &[FieldSpec::new(Field::Length, key("ask-offcut-length"), key("ask-offcut-length-hint"), Allowed::Positive)];

/// The question of a board that is spoiled.
pub const SPOILED_FIELDS: &[FieldSpec] =
    &[FieldSpec::new(Field::Left, key("ask-spoiled-left"), key("ask-spoiled-left-hint"), Allowed::Positive).optional()];

/// The questions of the story pole.
const POLE_FIELDS: &[FieldSpec] = &[
    FieldSpec::new(Field::From, key("ask-pole-from"), key("ask-pole-from-hint"), Allowed::AnyLength),
    FieldSpec::new(Field::To, key("ask-pole-to"), key("ask-pole-to-hint"), Allowed::AnyLength),
    FieldSpec::new(
        Field::Mode,
        key("ask-pole-mode"),
        key("ask-pole-mode-hint"),
        Allowed::OneOf(&[
            ("fit", key("ask-pole-mode-fit")),
            ("equal", key("ask-pole-mode-equal")),
            ("fixed", key("ask-pole-mode-fixed")),
        ]),
    ),
    FieldSpec::new(Field::RevealMax, key("ask-reveal-max"), key("ask-reveal-max-hint"), Allowed::Positive),
    FieldSpec::new(Field::RevealMin, key("ask-reveal-min"), key("ask-reveal-min-hint"), Allowed::Positive),
    FieldSpec::new(Field::Reveal, key("ask-reveal"), key("ask-reveal-hint"), Allowed::Positive).optional(),
    FieldSpec::new(Field::ChangeMax, key("ask-change-max"), key("ask-change-max-hint"), Allowed::NotNegative)
        .optional(),
];

/// The questions of a mark.
const MARK_FIELDS: &[FieldSpec] = &[
    FieldSpec::new(Field::Name, key("ask-mark-name"), key("ask-mark-name-hint"), Allowed::Text),
    FieldSpec::new(Field::At, key("ask-mark-at"), key("ask-mark-at-hint"), Allowed::AnyLength),
    FieldSpec::new(
        Field::Want,
        key("ask-mark-want"),
        key("ask-mark-want-hint"),
        Allowed::OneOf(&[("land", key("ask-mark-want-land")), ("clear", key("ask-mark-want-clear"))]),
    ),
    FieldSpec::new(Field::Clear, key("ask-mark-clear"), key("ask-mark-clear-hint"), Allowed::NotNegative).optional(),
    FieldSpec::new(Field::Weight, key("ask-mark-weight"), key("ask-mark-weight-hint"), Allowed::Whole(0, 1_000))
        .optional(),
];

/// The questions of a wall, in the order in which a person with a tape meets them.
const WALL_FIELDS: &[FieldSpec] = &[
    FieldSpec::new(Field::Name, key("ask-wall-name"), key("ask-wall-name-hint"), Allowed::Text),
    FieldSpec::new(Field::Width, key("ask-wall-width"), key("ask-wall-width-hint"), Allowed::Positive),
    FieldSpec::new(
        Field::LeftHeight,
        key("ask-wall-left-height"),
        key("ask-wall-left-height-hint"),
        Allowed::NotNegative,
    ),
    FieldSpec::new(
        Field::RightHeight,
        key("ask-wall-right-height"),
        key("ask-wall-right-height-hint"),
        Allowed::NotNegative,
    ),
    FieldSpec::new(Field::Base, key("ask-wall-base"), key("ask-wall-base-hint"), Allowed::AnyLength),
    FieldSpec::new(Field::FirstStud, key("ask-wall-first-stud"), key("ask-wall-first-stud-hint"), Allowed::NotNegative),
    FieldSpec::new(
        Field::StudSpacing,
        key("ask-wall-stud-spacing"),
        key("ask-wall-stud-spacing-hint"),
        Allowed::Positive,
    ),
    FieldSpec::new(Field::TrimLeft, key("ask-wall-trim-left"), key("ask-wall-trim-left-hint"), Allowed::NotNegative),
    FieldSpec::new(Field::TrimRight, key("ask-wall-trim-right"), key("ask-wall-trim-right-hint"), Allowed::NotNegative),
    FieldSpec::new(Field::DiagonalUp, key("ask-wall-diagonal-up"), key("ask-wall-diagonal-up-hint"), Allowed::Positive)
        .optional(),
    FieldSpec::new(
        Field::DiagonalDown,
        key("ask-wall-diagonal-down"),
        key("ask-wall-diagonal-down-hint"),
        Allowed::Positive,
    )
    .optional(),
    FieldSpec::new(
        Field::PeakFromLeft,
        key("ask-wall-peak-from-left"),
        key("ask-wall-peak-from-left-hint"),
        Allowed::Positive,
    )
    .optional(),
    FieldSpec::new(Field::PeakHeight, key("ask-wall-peak-height"), key("ask-wall-peak-height-hint"), Allowed::Positive)
        .optional(),
    FieldSpec::new(Field::CornerLeft, key("ask-wall-corner-left"), key("ask-wall-corner-hint"), CORNERS).optional(),
    FieldSpec::new(Field::CornerRight, key("ask-wall-corner-right"), key("ask-wall-corner-hint"), CORNERS).optional(),
];

/// How the siding ends at an end of a wall.
const CORNERS: Allowed = Allowed::OneOf(&[
    (CornerKind::Outside.code(), key("detail-corner-outside")),
    (CornerKind::Inside.code(), key("detail-corner-inside")),
    (CornerKind::Mitred.code(), key("detail-corner-mitred")),
]);

/// The questions of a step in the base line.
const BASE_STEP_FIELDS: &[FieldSpec] = &[
    FieldSpec::new(Field::FromLeft, key("ask-step-from-left"), key("ask-step-from-left-hint"), Allowed::Positive),
    FieldSpec::new(Field::Rise, key("ask-step-rise"), key("ask-step-rise-hint"), Allowed::AnyLength),
];

/// The question of a stud whose center was measured.
const STUD_FIELDS: &[FieldSpec] =
    &[FieldSpec::new(Field::At, key("ask-stud-at"), key("ask-wall-first-stud-hint"), Allowed::NotNegative)];

/// The questions of a window or a door.
const OPENING_FIELDS: &[FieldSpec] = &[
    FieldSpec::new(
        Field::What,
        key("ask-opening-what"),
        key("ask-opening-what-hint"),
        Allowed::OneOf(&[
            (OpeningKind::Window.code(), key("wall-opening-window")),
            (OpeningKind::Door.code(), key("wall-opening-door")),
        ]),
    ),
    FieldSpec::new(
        Field::FromLeft,
        key("ask-opening-from-left"),
        key("ask-opening-from-left-hint"),
        Allowed::NotNegative,
    ),
    FieldSpec::new(Field::Width, key("ask-opening-width"), key("ask-opening-width-hint"), Allowed::Positive),
    FieldSpec::new(
        Field::FromBase,
        key("ask-opening-from-base"),
        key("ask-opening-from-base-hint"),
        Allowed::NotNegative,
    ),
    FieldSpec::new(Field::Height, key("ask-opening-height"), key("ask-opening-height-hint"), Allowed::Positive),
    FieldSpec::new(
        Field::HeadFromLeft,
        key("ask-opening-head-from-left"),
        key("ask-opening-head-from-left-hint"),
        Allowed::NotNegative,
    )
    .optional(),
    FieldSpec::new(
        Field::HeadWidth,
        key("ask-opening-head-width"),
        key("ask-opening-head-width-hint"),
        Allowed::Positive,
    )
    .optional(),
];

/// The questions of an abutment.
const ABUTMENT_FIELDS: &[FieldSpec] = &[
    FieldSpec::new(
        Field::What,
        key("ask-abutment-what"),
        key("ask-abutment-what-hint"),
        Allowed::OneOf(&[
            ("ground", key("wall-abutment-ground")),
            ("paving", key("wall-abutment-paving")),
            ("roof", key("wall-abutment-roof")),
            ("deck", key("wall-abutment-deck")),
            ("ledge", key("wall-abutment-ledge")),
        ]),
    ),
    FieldSpec::new(
        Field::FromLeft,
        key("ask-abutment-from-left"),
        key("ask-abutment-from-left-hint"),
        Allowed::NotNegative,
    ),
    FieldSpec::new(Field::Width, key("ask-abutment-width"), key("ask-abutment-width-hint"), Allowed::Positive),
    FieldSpec::new(Field::Top, key("ask-abutment-top"), key("ask-abutment-top-hint"), Allowed::AnyLength),
    FieldSpec::new(Field::Rise, key("ask-abutment-rise"), key("ask-abutment-rise-hint"), Allowed::AnyLength).optional(),
];

/// The questions of a penetration. Kind, size and two offsets are needed; the rest has defaults.
const PENETRATION_FIELDS: &[FieldSpec] = &[
    FieldSpec::new(
        Field::What,
        key("ask-penetration-what"),
        key("ask-penetration-what-hint"),
        Allowed::OneOf(&[
            (PenetrationKind::HoseBib.code(), key("wall-kind-hose-bib")),
            (PenetrationKind::Pipe.code(), key("wall-kind-pipe")),
            (PenetrationKind::Conduit.code(), key("wall-kind-conduit")),
            (PenetrationKind::Cable.code(), key("wall-kind-cable")),
            (PenetrationKind::ElectricalBox.code(), key("wall-kind-electrical-box")),
            (PenetrationKind::Light.code(), key("wall-kind-light")),
            (PenetrationKind::VentHood.code(), key("wall-kind-vent-hood")),
            (PenetrationKind::MeterBase.code(), key("wall-kind-meter-base")),
            (PenetrationKind::LineSet.code(), key("wall-kind-line-set")),
        ]),
    ),
    FieldSpec::new(Field::Width, key("ask-penetration-width"), key("ask-penetration-width-hint"), Allowed::Positive),
    FieldSpec::new(Field::Height, key("ask-penetration-height"), key("ask-penetration-height-hint"), Allowed::Positive)
        .optional(),
    FieldSpec::new(
        Field::FromLeft,
        key("ask-penetration-from-left"),
        key("ask-penetration-from-left-hint"),
        Allowed::NotNegative,
    ),
    FieldSpec::new(
        Field::FromBase,
        key("ask-penetration-from-base"),
        key("ask-penetration-from-base-hint"),
        Allowed::AnyLength,
    ),
    FieldSpec::new(
        Field::Mounting,
        key("ask-penetration-mounting"),
        key("ask-penetration-mounting-hint"),
        Allowed::OneOf(&[
            (Mounting::Split.code(), key("wall-mounting-split")),
            (Mounting::SlipOver.code(), key("wall-mounting-slip-over")),
        ]),
    )
    .optional(),
    FieldSpec::new(
        Field::Finish,
        key("ask-penetration-finish"),
        key("ask-penetration-finish-hint"),
        Allowed::OneOf(&[
            (Finish::Block.code(), key("wall-finish-block")),
            (Finish::Collar.code(), key("wall-finish-collar")),
            (Finish::Trim.code(), key("wall-finish-trim")),
        ]),
    )
    .optional(),
    FieldSpec::new(Field::BlockWidth, key("ask-block-width"), key("ask-block-width-hint"), Allowed::Positive)
        .optional(),
    FieldSpec::new(Field::BlockHeight, key("ask-block-height"), key("ask-block-height-hint"), Allowed::Positive)
        .optional(),
    FieldSpec::new(
        Field::BlockThickness,
        key("ask-block-thickness"),
        key("ask-block-thickness-hint"),
        Allowed::Positive,
    )
    .optional(),
    FieldSpec::new(
        Field::HoleFromBottom,
        key("ask-hole-from-bottom"),
        key("ask-hole-from-bottom-hint"),
        Allowed::Positive,
    )
    .optional(),
    FieldSpec::new(Field::Painted, key("ask-painted"), key("ask-painted-hint"), YES_OR_NO).optional(),
    FieldSpec::new(Field::HeadFlashing, key("ask-head-flashing"), key("ask-head-flashing-hint"), YES_OR_NO).optional(),
    FieldSpec::new(Field::BottomOpen, key("ask-bottom-open"), key("ask-bottom-open-hint"), YES_OR_NO).optional(),
];

/// The questions of the board in hand.
const BOARD_FIELDS: &[FieldSpec] = &[
    FieldSpec::new(Field::Length, key("ask-board-length"), key("ask-board-length-hint"), Allowed::Positive),
    FieldSpec::new(Field::Height, key("ask-board-height"), key("ask-board-height-hint"), Allowed::Positive).optional(),
    FieldSpec::new(Field::Lap, key("ask-lap"), key("ask-lap-hint"), Allowed::NotNegative).optional(),
];

/// The questions of a notch: what the tape reads at the block, left and right apart.
const NOTCH_FIELDS: &[FieldSpec] = &[
    FieldSpec::new(Field::Left, key("ask-notch-left"), key("ask-notch-left-hint"), Allowed::AnyLength),
    FieldSpec::new(Field::Right, key("ask-notch-right"), key("ask-notch-right-hint"), Allowed::AnyLength),
    FieldSpec::new(
        Field::BottomLeft,
        key("ask-notch-bottom-left"),
        key("ask-notch-bottom-left-hint"),
        Allowed::AnyLength,
    ),
    FieldSpec::new(
        Field::BottomRight,
        key("ask-notch-bottom-right"),
        key("ask-notch-bottom-right-hint"),
        Allowed::AnyLength,
    )
    .optional(),
    FieldSpec::new(Field::TopLeft, key("ask-notch-top-left"), key("ask-notch-top-left-hint"), Allowed::AnyLength),
    FieldSpec::new(Field::TopRight, key("ask-notch-top-right"), key("ask-notch-top-right-hint"), Allowed::AnyLength)
        .optional(),
];

/// The question of a notch that is cut: what gap came out.
const GAP_FIELDS: &[FieldSpec] =
    &[FieldSpec::new(Field::Gap, key("ask-gap"), key("ask-gap-hint"), Allowed::NotNegative).optional()];

/// The questions of a course as it hangs: heights of its bottom edge above the pole's datum.
const AS_BUILT_FIELDS: &[FieldSpec] = &[
    FieldSpec::new(
        Field::Course,
        key("ask-as-built-course"),
        key("ask-as-built-course-hint"),
        Allowed::Whole(1, 10_000),
    ),
    FieldSpec::new(Field::Left, key("ask-as-built-left"), key("ask-as-built-hint"), Allowed::AnyLength),
    FieldSpec::new(Field::Middle, key("ask-as-built-middle"), key("ask-as-built-hint"), Allowed::AnyLength).optional(),
    FieldSpec::new(Field::Right, key("ask-as-built-right"), key("ask-as-built-hint"), Allowed::AnyLength),
];

/// The questions of a size of mounting block.
const BLOCK_SIZE_FIELDS: &[FieldSpec] = &[
    FieldSpec::new(Field::Width, key("ask-block-width"), key("ask-block-width-hint"), Allowed::Positive),
    FieldSpec::new(Field::Height, key("ask-block-height"), key("ask-block-height-hint"), Allowed::Positive),
];

/// The questions of a kind of thing.
pub const fn fields_of(kind: Kind) -> &'static [FieldSpec] {
    match kind {
        Kind::Job => JOB_FIELDS,
        Kind::Stock => STOCK_FIELDS,
        Kind::Offcut => OFFCUT_FIELDS,
        Kind::BlockSize => BLOCK_SIZE_FIELDS,
        Kind::Rule | Kind::Cut | Kind::CutNotch => &[],
        Kind::Pole => POLE_FIELDS,
        Kind::Mark => MARK_FIELDS,
        Kind::Wall => WALL_FIELDS,
        Kind::BaseStep => BASE_STEP_FIELDS,
        Kind::Stud => STUD_FIELDS,
        Kind::Opening => OPENING_FIELDS,
        Kind::Abutment => ABUTMENT_FIELDS,
        Kind::Penetration => PENETRATION_FIELDS,
        Kind::AsBuilt => AS_BUILT_FIELDS,
        Kind::Board => BOARD_FIELDS,
        Kind::Notch => NOTCH_FIELDS,
        Kind::Gap => GAP_FIELDS,
    }
}

/// A field that no question asks.
const fn written(field: Field, allowed: Allowed) -> FieldSpec {
    FieldSpec::new(field, "", "", allowed).optional()
}

/// How good the saw list is.
const WRITTEN_JOB_FIELDS: &[FieldSpec] = &[
    written(Field::House, Allowed::Text),
    written(Field::PlanUsed, Allowed::NotNegative),
    written(Field::PlanLeast, Allowed::NotNegative),
];

const WRITTEN_OFFCUT_FIELDS: &[FieldSpec] = &[
    // Of a strip that was ripped off a board; any other offcut is as high as the boards.
    written(Field::Height, Allowed::Positive),
    written(Field::CutFrom, Allowed::Whole(1, 1_000_000)),
    written(Field::Used, Allowed::OneOf(&[("cut", ""), ("dropped", ""), ("spoiled", "")])),
];

const WRITTEN_BOARD_FIELDS: &[FieldSpec] = &[
    written(Field::Course, Allowed::Whole(1, 10_000)),
    written(Field::From, Allowed::AnyLength),
    written(Field::To, Allowed::AnyLength),
    written(Field::Bottom, Allowed::AnyLength),
    written(Field::BottomRight, Allowed::AnyLength),
    written(Field::Joint, YES_OR_NO),
    written(Field::Bevelled, YES_OR_NO),
    written(Field::BevelLeft, Allowed::AnyLength),
    written(Field::BevelRight, Allowed::AnyLength),
    written(Field::CutFrom, Allowed::Whole(1, 1_000_000)),
    written(Field::Stock, Allowed::Positive),
    written(Field::Strip, YES_OR_NO),
    written(
        Field::State,
        Allowed::OneOf(&[
            (BoardState::Planned.code(), ""),
            (BoardState::Cut.code(), ""),
            (BoardState::Fixed.code(), ""),
        ]),
    ),
];

const WRITTEN_AS_BUILT_FIELDS: &[FieldSpec] = &[
    written(Field::Courses, Allowed::Whole(0, 10_000)),
    written(Field::NeedChange, Allowed::NotNegative),
    written(Field::NeedRevealMin, Allowed::Positive),
    written(Field::NeedRevealMax, Allowed::Positive),
];

/// What a thing of a kind keeps that no question asks, where it can be said in one answer; these have no titles.
pub const fn written_fields_of(kind: Kind) -> &'static [FieldSpec] {
    match kind {
        Kind::Job => WRITTEN_JOB_FIELDS,
        Kind::Offcut => WRITTEN_OFFCUT_FIELDS,
        Kind::Board => WRITTEN_BOARD_FIELDS,
        Kind::AsBuilt => WRITTEN_AS_BUILT_FIELDS,
        _ => &[],
    }
}

/// The question of a field of a kind of thing.
pub fn field_of(kind: Kind, field: Field) -> Option<&'static FieldSpec> {
    fields_of(kind).iter().find(|spec| spec.field == field)
}

/// The questions of every kind of thing, and those of what is said of a spoiled board.
pub fn all_fields() -> impl Iterator<Item = &'static FieldSpec> {
    Kind::all().flat_map(fields_of).chain(SPOILED_FIELDS)
}
