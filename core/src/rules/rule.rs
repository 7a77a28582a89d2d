use super::{Quantity, RuleUnit};
use crate::phrases::key;

/// How well a value is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Status {
    /// Read in the text of the source, or of a full copy of it.
    Read,
    /// Read in another text that quotes the source.
    Quoted,
    /// From memory: shown as not verified until somebody reads the source.
    Memory,
    /// Jobsite habit without a published source.
    CommonPractice,
    /// Chosen for this program, with the reason in the rule's name or by analogy with published values.
    EngineeringChoice,
}

impl Status {
    /// The stable text code.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Read => "read",
            Self::Quoted => "quoted",
            Self::Memory => "memory",
            Self::CommonPractice => "common-practice",
            Self::EngineeringChoice => "engineering-choice",
        }
    }

    /// The key of the phrase that says it to the user.
    pub const fn phrase(self) -> &'static str {
        match self {
            Self::Read => key("rule-status-read"),
            Self::Quoted => key("rule-status-quoted"),
            Self::Memory => key("rule-status-memory"),
            Self::CommonPractice => key("rule-status-common-practice"),
            Self::EngineeringChoice => key("rule-status-engineering-choice"),
        }
    }
}

/// The rules of one country, or of no code at all.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Family {
    /// The model codes and federal regulations of the United States.
    #[default]
    UnitedStates,
    /// The National Building Code of Canada.
    Canada,
    /// The National Construction Code of Australia.
    Australia,
    /// The Building Code and guidance of New Zealand.
    NewZealand,
    /// Common practice, engineering choices and definitions: the same everywhere.
    Common,
}

impl Family {
    /// Every family, in the order in which they are shown.
    pub const ALL: &'static [Self] =
        &[Self::UnitedStates, Self::Canada, Self::Australia, Self::NewZealand, Self::Common];

    /// The stable text code.
    pub const fn code(self) -> &'static str {
        match self {
            Self::UnitedStates => "us",
            Self::Canada => "ca",
            Self::Australia => "au",
            Self::NewZealand => "nz",
            Self::Common => "common",
        }
    }

    /// The family of a code.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|family| family.code() == code)
    }

    /// The key of the phrase that names it to the user.
    pub const fn phrase(self) -> &'static str {
        match self {
            Self::UnitedStates => key("rule-family-us"),
            Self::Canada => key("rule-family-ca"),
            Self::Australia => key("rule-family-au"),
            Self::NewZealand => key("rule-family-nz"),
            Self::Common => key("rule-family-common"),
        }
    }
}

/// What is no publication, but stands on what is sold, with the key of the phrase that says it.
pub const UNWRITTEN: &[(&str, &str)] =
    &[("package size", key("rule-source-package")), ("as labels usually print it", key("rule-source-label"))];

/// One default of the rule set, with where it comes from.
#[derive(Clone, Copy, Debug)]
pub struct Rule {
    /// The stable key, such as `lap.least`. The same key may stand in several families.
    pub key: &'static str,
    /// The rules it belongs to.
    pub family: Family,
    /// The default, in the source's own unit.
    pub value: Quantity,
    /// The least value that a change may set, in any unit that measures the same.
    pub least: Quantity,
    /// The greatest value that a change may set.
    pub most: Quantity,
    /// The published source and its clause, in its own language, or one of [`UNWRITTEN`]; empty where there is none.
    pub source: &'static str,
    /// The edition of the source; empty where none is known.
    pub edition: &'static str,
    /// Whether the edition was not noted when the source was read, but is known from memory to have the value.
    pub edition_recalled: bool,
    /// How well the value is known.
    pub status: Status,
}

impl Rule {
    /// The key of the phrase that names the rule: `rule-lap-least` for `lap.least`.
    pub fn name_phrase(&self) -> String {
        format!("rule-{}", self.key.replace('.', "-"))
    }

    /// Whether the value must be shown as not verified.
    pub fn not_verified(&self) -> bool {
        self.status == Status::Memory
    }

    /// Whether its source is a publication, which has editions.
    pub fn is_published(&self) -> bool {
        !self.source.is_empty() && UNWRITTEN.iter().all(|(source, _)| *source != self.source)
    }

    /// Whether the value is a definition or a fact that no crew can change.
    pub fn is_fixed(&self) -> bool {
        self.least == self.value && self.most == self.value
    }

    /// A rule that may be changed from nothing to eight times its default; see [`Rule::within`] for other bounds.
    pub(super) const fn new(family: Family, key: &'static str, n: i64, d: i64, unit: RuleUnit) -> Self {
        Self {
            key,
            family,
            value: Quantity::fixed(n, d, unit),
            least: Quantity::fixed(0, 1, unit),
            most: Quantity::fixed(8 * n, d, unit),
            source: "",
            edition: "",
            edition_recalled: false,
            status: Status::CommonPractice,
        }
    }

    pub(super) const fn from(mut self, source: &'static str, edition: &'static str, status: Status) -> Self {
        self.source = source;
        self.edition = edition;
        self.status = status;
        self
    }

    pub(super) const fn recalled(mut self) -> Self {
        self.edition_recalled = true;
        self
    }

    pub(super) const fn chosen(mut self) -> Self {
        self.status = Status::EngineeringChoice;
        self
    }

    /// Other bounds, in the default's own unit.
    pub(super) const fn within(mut self, least: (i64, i64), most: (i64, i64)) -> Self {
        self.least = Quantity::fixed(least.0, least.1, self.value.unit());
        self.most = Quantity::fixed(most.0, most.1, self.value.unit());
        self
    }

    /// A definition or a fact that cannot be changed.
    pub(super) const fn fact(mut self) -> Self {
        self.least = self.value;
        self.most = self.value;
        self
    }
}
