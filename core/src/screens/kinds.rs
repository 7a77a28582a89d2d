//! The things of the book and their fields: what each is called there, and what may be answered.
//!
//! These names are kept in every book; none is ever given a second meaning. A field whose name ends in `-taped` is the
//! measured twin of a planned one.

use crate::phrases::key;
use crate::views::AnswerKind;
use crate::wall::{Finish, Mounting, OpeningKind, PenetrationKind};

/// A house to be clad.
pub(super) const JOB: &str = "job";
/// A stock length of boards that a job has.
pub(super) const STOCK: &str = "stock";
/// A board left over from before that is at hand for a job.
pub(super) const OFFCUT: &str = "offcut";
/// A rule of a job that was changed.
pub(super) const RULE: &str = "rule";
/// The story pole of a job.
pub(super) const POLE: &str = "pole";
/// A height that the pole's lines should meet or stay clear of.
pub(super) const MARK: &str = "mark";
/// A wall of a job.
pub(super) const WALL: &str = "wall";
/// A step of a wall's base line.
pub(super) const BASE_STEP: &str = "base-step";
/// A stud whose centre was measured.
pub(super) const STUD: &str = "stud";
/// A window or a door.
pub(super) const OPENING: &str = "opening";
/// What the siding must keep clear of.
pub(super) const ABUTMENT: &str = "abutment";
/// What goes through a wall.
pub(super) const PENETRATION: &str = "penetration";
/// A board: of a wall's plan, or loose.
pub(super) const BOARD: &str = "board";
/// A block as it was measured on a board.
pub(super) const NOTCH: &str = "notch";
/// A gap that was measured after fitting: what a saw and a pair of hands did.
pub(super) const FITTED: &str = "fitted";
/// The field of that gap.
pub(super) const GAP: &str = "gap";

/// The bottom edge of a course as it hangs on a wall: what the tape read, and the lines planned from there.
pub(super) const AS_BUILT: &str = "as-built";

/// What is said of a board that is spoiled; no thing of the book.
pub(super) const SPOILED: &str = "spoiled";

/// A size of mounting block that a job has.
pub(super) const BLOCK_SIZE: &str = "block-size";

/// What an answer must be.
#[derive(Clone, Copy, Debug)]
pub(super) enum Allowed {
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

/// A question that a thing's field answers.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ask {
    /// The field.
    pub(super) field: &'static str,
    /// The key of the question.
    pub(super) title: &'static str,
    /// The key of where to hook the tape.
    pub(super) hint: &'static str,
    /// What the answer must be.
    pub(super) allowed: Allowed,
    /// Whether the work can go on without it.
    pub(super) optional: bool,
}

impl Ask {
    const fn new(field: &'static str, title: &'static str, hint: &'static str, allowed: Allowed) -> Self {
        Self { field, title, hint, allowed, optional: false }
    }

    const fn optional(self) -> Self {
        Self { optional: true, ..self }
    }

    /// The kind of answer, for a shell.
    pub(super) const fn kind(&self) -> AnswerKind {
        match self.allowed {
            Allowed::Positive | Allowed::NotNegative | Allowed::AnyLength => AnswerKind::LengthKind,
            Allowed::OneOf(_) => AnswerKind::ChoiceKind,
            Allowed::Whole(..) => AnswerKind::WholeKind,
            Allowed::Text | Allowed::AnyText => AnswerKind::TextKind,
        }
    }
}

const YES_OR_NO: Allowed = Allowed::OneOf(&[("yes", key("screen-yes")), ("no", key("screen-no"))]);

/// The questions of a job: its boards.
pub(super) const JOB_ASKS: &[Ask] = &[
    Ask::new("name", key("ask-job-name"), key("ask-job-name-hint"), Allowed::Text),
    Ask::new("board-height", key("ask-board-height"), key("ask-board-height-hint"), Allowed::Positive),
    Ask::new("board-thickness", key("ask-board-thickness"), key("ask-board-thickness-hint"), Allowed::Positive),
    Ask::new("lap", key("ask-lap"), key("ask-lap-hint"), Allowed::Positive),
    Ask::new("nail-line", key("ask-nail-line"), key("ask-nail-line-hint"), Allowed::Positive),
    Ask::new("old-house", key("ask-old-house"), key("ask-old-house-hint"), YES_OR_NO).optional(),
    Ask::new("rules", key("ask-rules"), key("ask-rules-hint"), Allowed::OneOf(RULE_FAMILIES)).optional(),
];

/// The families of rules that a job may follow.
pub(super) const RULE_FAMILIES: &[(&str, &str)] = &[
    ("us", key("rule-family-us")),
    ("ca", key("rule-family-ca")),
    ("au", key("rule-family-au")),
    ("nz", key("rule-family-nz")),
];

/// The questions of a stock length.
pub(super) const STOCK_ASKS: &[Ask] = &[
    Ask::new("length", key("ask-stock-length"), key("ask-stock-length-hint"), Allowed::Positive),
    Ask::new("count", key("ask-stock-count"), key("ask-stock-count-hint"), Allowed::Whole(0, 10_000)).optional(),
];

/// The question of an offcut.
pub(super) const OFFCUT_ASKS: &[Ask] =
    &[Ask::new("length", key("ask-offcut-length"), key("ask-offcut-length-hint"), Allowed::Positive)];

/// The question of a board that is spoiled.
pub(super) const SPOILED_ASKS: &[Ask] =
    &[Ask::new("left", key("ask-spoiled-left"), key("ask-spoiled-left-hint"), Allowed::Positive).optional()];

/// The questions of the story pole.
pub(super) const POLE_ASKS: &[Ask] = &[
    Ask::new("from", key("ask-pole-from"), key("ask-pole-from-hint"), Allowed::AnyLength),
    Ask::new("to", key("ask-pole-to"), key("ask-pole-to-hint"), Allowed::AnyLength),
    Ask::new(
        "mode",
        key("ask-pole-mode"),
        key("ask-pole-mode-hint"),
        Allowed::OneOf(&[
            ("fit", key("ask-pole-mode-fit")),
            ("equal", key("ask-pole-mode-equal")),
            ("fixed", key("ask-pole-mode-fixed")),
        ]),
    ),
    Ask::new("reveal-max", key("ask-reveal-max"), key("ask-reveal-max-hint"), Allowed::Positive),
    Ask::new("reveal-min", key("ask-reveal-min"), key("ask-reveal-min-hint"), Allowed::Positive),
    Ask::new("reveal", key("ask-reveal"), key("ask-reveal-hint"), Allowed::Positive).optional(),
    Ask::new("change-max", key("ask-change-max"), key("ask-change-max-hint"), Allowed::NotNegative).optional(),
];

/// The questions of a mark.
pub(super) const MARK_ASKS: &[Ask] = &[
    Ask::new("name", key("ask-mark-name"), key("ask-mark-name-hint"), Allowed::Text),
    Ask::new("at", key("ask-mark-at"), key("ask-mark-at-hint"), Allowed::AnyLength),
    Ask::new(
        "want",
        key("ask-mark-want"),
        key("ask-mark-want-hint"),
        Allowed::OneOf(&[("land", key("ask-mark-want-land")), ("clear", key("ask-mark-want-clear"))]),
    ),
    Ask::new("clear", key("ask-mark-clear"), key("ask-mark-clear-hint"), Allowed::NotNegative).optional(),
    Ask::new("weight", key("ask-mark-weight"), key("ask-mark-weight-hint"), Allowed::Whole(0, 1_000)).optional(),
];

/// The questions of a wall, in the order in which a person with a tape meets them.
pub(super) const WALL_ASKS: &[Ask] = &[
    Ask::new("name", key("ask-wall-name"), key("ask-wall-name-hint"), Allowed::Text),
    Ask::new("width", key("ask-wall-width"), key("ask-wall-width-hint"), Allowed::Positive),
    Ask::new("left-height", key("ask-wall-left-height"), key("ask-wall-left-height-hint"), Allowed::Positive),
    Ask::new("right-height", key("ask-wall-right-height"), key("ask-wall-right-height-hint"), Allowed::Positive),
    Ask::new("base", key("ask-wall-base"), key("ask-wall-base-hint"), Allowed::AnyLength),
    Ask::new("first-stud", key("ask-wall-first-stud"), key("ask-wall-first-stud-hint"), Allowed::NotNegative),
    Ask::new("stud-spacing", key("ask-wall-stud-spacing"), key("ask-wall-stud-spacing-hint"), Allowed::Positive),
    Ask::new("trim-left", key("ask-wall-trim-left"), key("ask-wall-trim-left-hint"), Allowed::NotNegative),
    Ask::new("trim-right", key("ask-wall-trim-right"), key("ask-wall-trim-right-hint"), Allowed::NotNegative),
    Ask::new("diagonal-up", key("ask-wall-diagonal-up"), key("ask-wall-diagonal-up-hint"), Allowed::Positive)
        .optional(),
    Ask::new("diagonal-down", key("ask-wall-diagonal-down"), key("ask-wall-diagonal-down-hint"), Allowed::Positive)
        .optional(),
    Ask::new("peak-from-left", key("ask-wall-peak-from-left"), key("ask-wall-peak-from-left-hint"), Allowed::Positive)
        .optional(),
    Ask::new("peak-height", key("ask-wall-peak-height"), key("ask-wall-peak-height-hint"), Allowed::Positive)
        .optional(),
];

/// The questions of a step in the base line.
pub(super) const BASE_STEP_ASKS: &[Ask] = &[
    Ask::new("from-left", key("ask-step-from-left"), key("ask-step-from-left-hint"), Allowed::Positive),
    Ask::new("rise", key("ask-step-rise"), key("ask-step-rise-hint"), Allowed::AnyLength),
];

/// The question of a stud whose center was measured.
pub(super) const STUD_ASKS: &[Ask] =
    &[Ask::new("at", key("ask-stud-at"), key("ask-wall-first-stud-hint"), Allowed::NotNegative)];

/// The questions of a window or a door.
pub(super) const OPENING_ASKS: &[Ask] = &[
    Ask::new(
        "what",
        key("ask-opening-what"),
        key("ask-opening-what-hint"),
        Allowed::OneOf(&[
            (OpeningKind::Window.code(), key("wall-opening-window")),
            (OpeningKind::Door.code(), key("wall-opening-door")),
        ]),
    ),
    Ask::new("from-left", key("ask-opening-from-left"), key("ask-opening-from-left-hint"), Allowed::NotNegative),
    Ask::new("width", key("ask-opening-width"), key("ask-opening-width-hint"), Allowed::Positive),
    Ask::new("from-base", key("ask-opening-from-base"), key("ask-opening-from-base-hint"), Allowed::NotNegative),
    Ask::new("height", key("ask-opening-height"), key("ask-opening-height-hint"), Allowed::Positive),
    Ask::new(
        "head-from-left",
        key("ask-opening-head-from-left"),
        key("ask-opening-head-from-left-hint"),
        Allowed::NotNegative,
    )
    .optional(),
    Ask::new("head-width", key("ask-opening-head-width"), key("ask-opening-head-width-hint"), Allowed::Positive)
        .optional(),
];

/// The questions of an abutment.
pub(super) const ABUTMENT_ASKS: &[Ask] = &[
    Ask::new(
        "what",
        key("ask-abutment-what"),
        key("ask-abutment-what-hint"),
        Allowed::OneOf(&[
            ("ground", key("wall-abutment-ground")),
            ("paving", key("wall-abutment-paving")),
            ("roof", key("wall-abutment-roof")),
            ("deck", key("wall-abutment-deck")),
        ]),
    ),
    Ask::new("from-left", key("ask-abutment-from-left"), key("ask-abutment-from-left-hint"), Allowed::NotNegative),
    Ask::new("width", key("ask-abutment-width"), key("ask-abutment-width-hint"), Allowed::Positive),
    Ask::new("top", key("ask-abutment-top"), key("ask-abutment-top-hint"), Allowed::AnyLength),
];

/// The questions of a penetration. Kind, size and two offsets are needed; the rest has defaults.
pub(super) const PENETRATION_ASKS: &[Ask] = &[
    Ask::new(
        "what",
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
    Ask::new("width", key("ask-penetration-width"), key("ask-penetration-width-hint"), Allowed::Positive),
    Ask::new("height", key("ask-penetration-height"), key("ask-penetration-height-hint"), Allowed::Positive).optional(),
    Ask::new(
        "from-left",
        key("ask-penetration-from-left"),
        key("ask-penetration-from-left-hint"),
        Allowed::NotNegative,
    ),
    Ask::new("from-base", key("ask-penetration-from-base"), key("ask-penetration-from-base-hint"), Allowed::AnyLength),
    Ask::new(
        "mounting",
        key("ask-penetration-mounting"),
        key("ask-penetration-mounting-hint"),
        Allowed::OneOf(&[
            (Mounting::Split.code(), key("wall-mounting-split")),
            (Mounting::SlipOver.code(), key("wall-mounting-slip-over")),
        ]),
    )
    .optional(),
    Ask::new(
        "finish",
        key("ask-penetration-finish"),
        key("ask-penetration-finish-hint"),
        Allowed::OneOf(&[
            (Finish::Block.code(), key("wall-finish-block")),
            (Finish::Collar.code(), key("wall-finish-collar")),
            (Finish::Trim.code(), key("wall-finish-trim")),
        ]),
    )
    .optional(),
    Ask::new("block-width", key("ask-block-width"), key("ask-block-width-hint"), Allowed::Positive).optional(),
    Ask::new("block-height", key("ask-block-height"), key("ask-block-height-hint"), Allowed::Positive).optional(),
    Ask::new("block-thickness", key("ask-block-thickness"), key("ask-block-thickness-hint"), Allowed::Positive)
        .optional(),
    Ask::new("hole-from-bottom", key("ask-hole-from-bottom"), key("ask-hole-from-bottom-hint"), Allowed::Positive)
        .optional(),
    Ask::new("painted", key("ask-painted"), key("ask-painted-hint"), YES_OR_NO).optional(),
    Ask::new("head-flashing", key("ask-head-flashing"), key("ask-head-flashing-hint"), YES_OR_NO).optional(),
    Ask::new("bottom-open", key("ask-bottom-open"), key("ask-bottom-open-hint"), YES_OR_NO).optional(),
];

/// The questions of the board in hand.
pub(super) const BOARD_ASKS: &[Ask] = &[
    Ask::new("length", key("ask-board-length"), key("ask-board-length-hint"), Allowed::Positive),
    Ask::new("height", key("ask-board-height"), key("ask-board-height-hint"), Allowed::Positive).optional(),
    Ask::new("lap", key("ask-lap"), key("ask-lap-hint"), Allowed::NotNegative).optional(),
];

/// The questions of a notch: what the tape reads at the block, left and right apart.
pub(super) const NOTCH_ASKS: &[Ask] = &[
    Ask::new("left", key("ask-notch-left"), key("ask-notch-left-hint"), Allowed::AnyLength),
    Ask::new("right", key("ask-notch-right"), key("ask-notch-right-hint"), Allowed::AnyLength),
    Ask::new("bottom-left", key("ask-notch-bottom-left"), key("ask-notch-bottom-left-hint"), Allowed::AnyLength),
    Ask::new("bottom-right", key("ask-notch-bottom-right"), key("ask-notch-bottom-right-hint"), Allowed::AnyLength)
        .optional(),
    Ask::new("top-left", key("ask-notch-top-left"), key("ask-notch-top-left-hint"), Allowed::AnyLength),
    Ask::new("top-right", key("ask-notch-top-right"), key("ask-notch-top-right-hint"), Allowed::AnyLength).optional(),
];

/// The question of a notch that is cut: what gap came out.
pub(super) const FITTED_ASKS: &[Ask] =
    &[Ask::new(GAP, key("ask-gap"), key("ask-gap-hint"), Allowed::NotNegative).optional()];

/// The questions of a course as it hangs: heights of its bottom edge above the pole's datum.
pub(super) const AS_BUILT_ASKS: &[Ask] = &[
    Ask::new("course", key("ask-as-built-course"), key("ask-as-built-course-hint"), Allowed::Whole(1, 10_000)),
    Ask::new("left", key("ask-as-built-left"), key("ask-as-built-hint"), Allowed::AnyLength),
    Ask::new("middle", key("ask-as-built-middle"), key("ask-as-built-hint"), Allowed::AnyLength).optional(),
    Ask::new("right", key("ask-as-built-right"), key("ask-as-built-hint"), Allowed::AnyLength),
];

/// The questions of a size of mounting block.
pub(super) const BLOCK_SIZE_ASKS: &[Ask] = &[
    Ask::new("width", key("ask-block-width"), key("ask-block-width-hint"), Allowed::Positive),
    Ask::new("height", key("ask-block-height"), key("ask-block-height-hint"), Allowed::Positive),
];

/// The questions of a kind of thing.
pub(super) fn asks(kind: &str) -> &'static [Ask] {
    match kind {
        JOB => JOB_ASKS,
        STOCK => STOCK_ASKS,
        OFFCUT => OFFCUT_ASKS,
        POLE => POLE_ASKS,
        MARK => MARK_ASKS,
        WALL => WALL_ASKS,
        BASE_STEP => BASE_STEP_ASKS,
        STUD => STUD_ASKS,
        OPENING => OPENING_ASKS,
        ABUTMENT => ABUTMENT_ASKS,
        PENETRATION => PENETRATION_ASKS,
        BOARD => BOARD_ASKS,
        NOTCH => NOTCH_ASKS,
        FITTED => FITTED_ASKS,
        AS_BUILT => AS_BUILT_ASKS,
        BLOCK_SIZE => BLOCK_SIZE_ASKS,
        SPOILED => SPOILED_ASKS,
        _ => &[],
    }
}

/// The questions of every kind of thing.
pub(super) const ALL_ASKS: &[&[Ask]] = &[
    JOB_ASKS,
    STOCK_ASKS,
    OFFCUT_ASKS,
    SPOILED_ASKS,
    POLE_ASKS,
    MARK_ASKS,
    WALL_ASKS,
    BASE_STEP_ASKS,
    OPENING_ASKS,
    ABUTMENT_ASKS,
    PENETRATION_ASKS,
    BOARD_ASKS,
    NOTCH_ASKS,
    FITTED_ASKS,
    AS_BUILT_ASKS,
    BLOCK_SIZE_ASKS,
];
