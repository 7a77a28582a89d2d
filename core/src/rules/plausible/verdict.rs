use super::super::{Rule, RuleSet, Status};
use super::Suggestion;
use super::measurand::Range;
use crate::measure::{Length, Show};
use crate::phrases::{Arg, Phrases, key};

/// What is to be said of a value before it is taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Nothing: it is a value like any other.
    Fine,
    /// A question: it can be, but hardly is.
    Unlikely {
        /// What speaks against it.
        why: Why,
        /// What was probably meant.
        suggestion: Option<Suggestion>,
    },
    /// An error: it cannot be.
    Impossible {
        /// What speaks against it.
        why: Why,
        /// What can be.
        allowed: AllowedLengths,
        /// What was probably meant.
        suggestion: Option<Suggestion>,
    },
}

/// The lengths that are possible, both ends included; what a side does not say is open.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct AllowedLengths {
    /// The least.
    pub least: Option<Length>,
    /// The most.
    pub most: Option<Length>,
}

/// What speaks against a value, and how well that is known.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Why {
    /// What is wrong.
    pub reason: Reason,
    /// The other thing's name, where there is one.
    pub name: String,
    /// The range that the value is compared with.
    pub range: AllowedLengths,
    /// Where that comes from.
    pub ground: Ground,
}

/// Where a bound comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ground {
    /// A rule of the house, by its key: its source stands in the rule.
    Rule(&'static str),
    /// The other values of the house: two things cannot both be so.
    Geometry,
    /// Jobsite habit: common practice, no source.
    CommonPractice,
}

macro_rules! reasons {
    ($($(#[$doc:meta])* $reason:ident = $key:literal,)+) => {
        /// What can speak against a value.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Reason { $($(#[$doc])* $reason,)+ }

        impl Reason {
            /// Every reason.
            pub const ALL: &'static [Self] = &[$(Self::$reason,)+];

            /// The key of the phrase that says it, with `value`, `least`, `most` and `name`.
            pub const fn phrase(self) -> &'static str {
                match self { $(Self::$reason => key($key),)+ }
            }
        }
    };
}

reasons! {
    /// Beyond anything on a house.
    Absurd = "plausible-absurd",
    /// Beyond what is usual.
    Unusual = "plausible-unusual",
    /// A small whole number of inches where feet are usual.
    Feet = "plausible-feet",
    /// A fraction over one: a blank may be missing in it.
    OverOne = "plausible-over-one",
    /// Between the marks of a tape in inches.
    OffTape = "plausible-off-tape",
    /// In the units of another tape than everything else.
    OtherUnit = "plausible-other-unit",
    /// Under what a rule asks at least.
    UnderRule = "plausible-under-rule",
    /// Over what a rule allows at most.
    OverRule = "plausible-over-rule",
    /// Far from what is planned or read elsewhere.
    OffPlan = "plausible-off-plan",
    /// Nearer to another course than to this one.
    AnotherCourse = "plausible-another-course",
    /// A lap as high as the board.
    LapOfBoard = "plausible-lap-of-board",
    /// Nails that the next course does not hide.
    NailsHidden = "plausible-nails-hidden",
    /// A reveal that leaves too little lap.
    LapShort = "plausible-lap-short",
    /// A reveal as high as the board.
    RevealOfBoard = "plausible-reveal-of-board",
    /// Smallest and largest reveal the wrong way round.
    RevealOrder = "plausible-reveal-order",
    /// A smallest reveal under half of the largest.
    RevealsUneven = "plausible-reveals-uneven",
    /// A pole that ends before it begins.
    PoleOrder = "plausible-pole-order",
    /// Outside the pole.
    OffPole = "plausible-off-pole",
    /// Longer than the longest stock.
    LongerThanStock = "plausible-longer-than-stock",
    /// Longer than the board it is a part of.
    LongerThanBoard = "plausible-longer-than-board",
    /// Not on the wall.
    OnWall = "plausible-on-wall",
    /// A peak that is none.
    PeakOverEaves = "plausible-peak-over-eaves",
    /// A first stud that has another before it.
    StudBefore = "plausible-stud-before",
    /// A diagonal that makes no triangle with its sides.
    Triangle = "plausible-triangle",
    /// A diagonal of a wall far out of square.
    OutOfSquare = "plausible-out-of-square",
    /// A block no larger than what goes through it.
    BlockOverPipe = "plausible-block-over-pipe",
    /// A block so thin that the boards stand in front of it.
    BlockShallow = "plausible-block-shallow",
    /// A hole outside its block.
    HoleInBlock = "plausible-hole-in-block",
    /// Not on the board.
    OffBoard = "plausible-off-board",
    /// The left side of a block right of its right one.
    SidesOrder = "plausible-sides-order",
    /// The bottom of a block above its top.
    EdgesOrder = "plausible-edges-order",
    /// A gap far from what saw and hands were seen to leave.
    FarFromLearned = "plausible-far-from-learned",
    /// A gap of a board that is not cut.
    NotCut = "plausible-not-cut",
    /// On top of something else.
    Overlaps = "plausible-overlaps",
    /// A block on top of something else.
    BlockOverlaps = "plausible-block-overlaps",
    /// A roof steeper than any.
    Steep = "plausible-steep",
    /// A pole that ends, or begins, where no wall is.
    OffHouse = "plausible-off-house",
    /// A name that something else has.
    NameTaken = "plausible-name-taken",
    /// A rule changed to less than half or more than double.
    FarFromDefault = "plausible-far-from-default",
    /// A flashing without a fall: water stands on it.
    NoFall = "plausible-no-fall",
}

impl From<Range> for AllowedLengths {
    fn from((least, most): Range) -> Self {
        Self { least, most }
    }
}

impl Why {
    /// It follows from another value, `bound`.
    pub(super) fn geometry(reason: Reason, bound: Length) -> Self {
        Self::with(reason, AllowedLengths { least: Some(bound), most: Some(bound) }, Ground::Geometry)
    }

    /// A rule says so: `bound` is its value, or follows from it.
    pub(super) fn rule(reason: Reason, bound: Length, key: &'static str) -> Self {
        Self::with(reason, AllowedLengths { least: Some(bound), most: Some(bound) }, Ground::Rule(key))
    }

    /// Jobsite habit says so.
    pub(super) fn habit(reason: Reason, range: Range) -> Self {
        Self::with(reason, range.into(), Ground::CommonPractice)
    }

    pub(super) fn with(reason: Reason, range: AllowedLengths, ground: Ground) -> Self {
        Self { reason, name: String::new(), range, ground }
    }

    /// It collides with something of this name.
    pub(super) fn named(reason: Reason, name: &str) -> Self {
        Self { name: name.to_owned(), ..Self::with(reason, AllowedLengths::default(), Ground::Geometry) }
    }
}

impl Verdict {
    /// Whether nothing speaks against the value.
    pub const fn is_fine(&self) -> bool {
        matches!(self, Self::Fine)
    }

    /// What a person reads: what is wrong, what is allowed or usual and where that comes from, and what was probably
    /// meant; nothing where all is fine.
    pub fn text(&self, value: &str, rules: &RuleSet, phrases: &Phrases, show: Show) -> String {
        let (why, allowed, suggestion) = match self {
            Self::Fine => return String::new(),
            Self::Unlikely { why, suggestion } => (why, None, suggestion),
            Self::Impossible { why, allowed, suggestion } => (why, Some(allowed), suggestion),
        };
        let shown = |length: Option<Length>| length.map(|length| show.text(length)).unwrap_or_default();
        let args: [(&str, Arg<'_>); 4] = [
            ("value", value.into()),
            ("least", shown(why.range.least).into()),
            ("most", shown(why.range.most).into()),
            ("name", why.name.as_str().into()),
        ];
        let mut said = vec![phrases.phrase(why.reason.phrase(), &args)];
        if let Some(source) = why.ground.source(rules, phrases) {
            said.push(source);
        }
        if let Some(allowed) = allowed.filter(|allowed| why.range != **allowed) {
            said.extend(allowed.text(phrases, show));
        }
        if let Some(suggestion) = suggestion {
            let meant = suggestion.shown(show);
            said.push(phrases.phrase(suggestion.slip.phrase(), &[("meant", meant.into())]));
        }
        said.join(" ")
    }
}

impl AllowedLengths {
    fn text(self, phrases: &Phrases, show: Show) -> Option<String> {
        let (least, most) = (self.least.map(|least| show.text(least)), self.most.map(|most| show.text(most)));
        Some(match (least, most) {
            (Some(least), Some(most)) => {
                phrases.phrase("plausible-allowed", &[("least", least.into()), ("most", most.into())])
            }
            (Some(least), None) => phrases.phrase("plausible-allowed-least", &[("least", least.into())]),
            (None, Some(most)) => phrases.phrase("plausible-allowed-most", &[("most", most.into())]),
            (None, None) => return None,
        })
    }
}

impl Ground {
    /// The source in words; none for what follows from the house's own values.
    fn source(self, rules: &RuleSet, phrases: &Phrases) -> Option<String> {
        let rule: &Rule = match self {
            Self::Geometry => return None,
            Self::CommonPractice => return Some(phrases.phrase("plausible-habit", &[])),
            Self::Rule(key) => rules.rule(key).ok()?,
        };
        if rules.change(rule.key).is_some() {
            return Some(phrases.phrase("plausible-own-rule", &[]));
        }
        if rule.source.is_empty() {
            return Some(phrases.phrase("plausible-habit", &[]));
        }
        let source = format!("{} {}", rule.source, rule.edition);
        let from = if rule.status == Status::Memory { "plausible-source-memory" } else { "plausible-source" };
        Some(phrases.phrase(from, &[("source", source.trim_end().into())]))
    }
}
