use crate::store::{Change, Id, Op, SignOff, Value};

use super::{Field, Kind};

macro_rules! operations {
    ($($(#[doc = $doc:literal])+ $name:ident = $code:literal,)+) => {
        /// What an accepted answer was: each has a line of its own in the done list. A code is never given a second meaning.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum OperationKind {
            $($(#[doc = $doc])+ $name,)+
        }

        impl OperationKind {
            /// Every kind of operation.
            pub const ALL: &[Self] = &[$(Self::$name,)+];

            /// The code that stands in every log.
            pub const fn code(self) -> &'static str {
                match self {
                    $(Self::$name => $code,)+
                }
            }
        }
    };
}

operations! {
    /// A question was answered.
    Answered = "answered",
    /// An answer was cleared.
    Cleared = "cleared",
    /// A course was taped as it hangs.
    AsBuilt = "as-built",
    /// What was taped of a course was taken off.
    AsBuiltRemoved = "as-built-removed",
    /// A penetration got the block that was advised.
    BlockAdvised = "block-advised",
    /// A further size of blocks.
    BlockSizeAdded = "block-size-added",
    /// A loose board went on a wall.
    BoardAttached = "board-attached",
    /// A loose board.
    BoardLoose = "board-loose",
    /// A board was spoiled.
    BoardSpoiled = "board-spoiled",
    /// The boards of a wall were planned.
    BoardsPlanned = "boards-planned",
    /// A gap was measured after fitting.
    GapFitted = "gap-fitted",
    /// What was learned of a saw and a pair of hands no longer holds.
    OvercutForgotten = "habit-forgotten",
    /// The boards of a house were planned.
    HousePlanned = "house-planned",
    /// A house was put out of the way.
    JobArchived = "job-archived",
    /// A house is back.
    JobBroughtBack = "job-brought-back",
    /// A further house.
    JobCreated = "job-created",
    /// A house came from a document.
    JobTakenIn = "job-taken-in",
    /// A further mark of the pole.
    MarkAdded = "mark-added",
    /// A further notch of a board.
    NotchAdded = "notch-added",
    /// A further offcut.
    OffcutAdded = "offcut-added",
    /// An offcut was thrown away.
    OffcutDropped = "offcut-dropped",
    /// An offcut is kept after all.
    OffcutKept = "offcut-kept",
    /// A further part of a wall.
    PartAdded = "part-added",
    /// A further penetration.
    PenetrationAdded = "penetration-added",
    /// A penetration like the last one.
    PenetrationSame = "penetration-same",
    /// The pole was laid out.
    PoleLaidOut = "pole-laid-out",
    /// A thing was taken off.
    Removed = "removed",
    /// A rule was changed.
    RuleChanged = "rule-changed",
    /// A rule went back to its default.
    RuleDefault = "rule-default",
    /// A board of the saw list was cut.
    SawCut = "saw-cut",
    /// A step was done.
    StepDone = "step-done",
    /// A step was left out.
    StepSkipped = "step-skipped",
    /// What was said of a step was taken back.
    StepTakenBack = "step-taken-back",
    /// A further stock length.
    StockAdded = "stock-added",
    /// A further wall.
    WallAdded = "wall-added",
}

/// One accepted answer in the making: all its changes are written together, or none.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Operation(Op);

impl Operation {
    /// An answer of a kind, with the texts of its line in the done list: keys of phrases are put into words there.
    pub fn new<const N: usize>(kind: OperationKind, job: Option<Id>, args: [&str; N]) -> Self {
        let args = args.into_iter().map(str::to_owned).collect();
        Self(Op { kind: kind.code().to_owned(), version: 1, job, args, changes: Vec::new() })
    }

    fn with(mut self, change: Change) -> Self {
        self.0.changes.push(change);
        self
    }

    /// The same with a new thing under an id that was never used.
    pub fn create(self, subject: Id, kind: Kind, parent: Option<Id>, sort_key: String) -> Self {
        self.with(Change::Create { subject, kind: kind.code().to_owned(), parent, sort_key })
    }

    /// The same with a field set; [`Value::Absent`] clears it.
    pub fn set(self, subject: Id, field: Field, value: Value) -> Self {
        self.set_code(subject, field.code().to_owned(), value)
    }

    /// The same with a field set by its code: a measured twin, or what another program wrote.
    pub fn set_code(self, subject: Id, field: String, value: Value) -> Self {
        self.with(Change::Set { subject, field, value })
    }

    /// The same with several fields of one thing set.
    pub fn set_all(self, subject: Id, fields: impl IntoIterator<Item = (Field, Value)>) -> Self {
        fields.into_iter().fold(self, |operation, (field, value)| operation.set(subject, field, value))
    }

    /// The same with what a thing was cut with: only undoing the answer frees it.
    pub fn keep_code(self, subject: Id, field: String, value: Value) -> Self {
        self.with(Change::Keep { subject, field, value })
    }

    /// The same without a thing; it stays in the log.
    pub fn remove(self, subject: Id) -> Self {
        self.with(Change::Remove { subject })
    }

    /// The same with a further sign-off.
    pub fn sign(self, sign_off: SignOff) -> Self {
        self.with(Change::SignOff(sign_off))
    }

    /// The same with everything that another one changes.
    pub fn also(mut self, other: Self) -> Self {
        self.0.changes.extend(other.0.changes);
        self
    }

    /// The house that it is about; none for the book itself.
    pub fn job(&self) -> Option<Id> {
        self.0.job
    }

    /// Whether it is an operation of this kind.
    pub fn is(&self, kind: OperationKind) -> bool {
        self.0.kind == kind.code()
    }

    /// The things that it makes, each with what it hangs under.
    pub fn created(&self) -> impl Iterator<Item = (Id, Option<Id>)> {
        self.0.changes.iter().filter_map(|change| match change {
            Change::Create { subject, parent, .. } => Some((*subject, *parent)),
            _ => None,
        })
    }

    /// What it writes: the thing, the code of the field, the value.
    pub fn writes(&self) -> impl Iterator<Item = (Id, &str, &Value)> {
        self.0.changes.iter().filter_map(|change| match change {
            Change::Set { subject, field, value } => Some((*subject, field.as_str(), value)),
            _ => None,
        })
    }

    /// Whether it changes nothing yet.
    pub fn is_empty(&self) -> bool {
        self.0.changes.is_empty()
    }

    pub(super) const fn op(&self) -> &Op {
        &self.0
    }
}
