use std::collections::{BTreeMap, BTreeSet};

use crate::measure::{Division, Length};

use super::SawError;

/// The most of anything that is planned at once.
pub(super) const LIMIT: usize = 10_000;
/// The dearest board: a million, in billionths.
const COST_LIMIT: u64 = 1_000_000_000_000_000;

/// One course of boards from trim to trim.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RunToCut {
    /// The wall it belongs to: joints keep their stagger within one wall.
    pub wall: String,
    /// The number of its course, counted upward.
    pub course: i64,
    /// Its left end, on the wall's own scale.
    pub from: Length,
    /// Its right end.
    pub to: Length,
}

/// Where the stud centres are.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StudCenters {
    /// At `first` and every `spacing` to the right and to the left of it.
    Spaced {
        /// The centre of any one stud.
        first: Length,
        /// From centre to centre, over zero.
        spacing: Length,
    },
    /// At these centres only, in any order.
    Listed(Vec<Length>),
}

/// Boards of one length that can be bought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stock {
    /// The length of a board.
    pub length: Length,
    /// The price of a board in billionths of any unit, at most a million units. A length in nanometres is its length
    /// in metres.
    pub cost: u64,
    /// How many there are; `None` for as many as are needed.
    pub count: Option<u32>,
}

/// A stretch that joints stay out of: an open interval.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JointFree {
    /// The wall it lies on; `None` for every wall.
    pub wall: Option<String>,
    /// Its left end.
    pub from: Length,
    /// Its right end.
    pub to: Length,
    /// The courses that it touches; `None` for all.
    pub courses: Option<Vec<i64>>,
}

/// What is ripped of a board's full height, where a strip that comes off may be another piece.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rips {
    /// The full height of a board.
    pub board: Length,
    /// How high the pieces of a run are ripped, by its place among the runs; those of any other one have the full height.
    pub heights: BTreeMap<usize, Length>,
    /// Strips left over from before: each is there once and costs nothing.
    pub strips: Vec<LowOffcut>,
}

/// A strip that was ripped off a board, with one factory edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LowOffcut {
    /// Its length.
    pub length: Length,
    /// From its factory edge to where it was ripped.
    pub height: Length,
}

/// What is to be covered, what it is cut from, and the rules for joints.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutList {
    /// The runs to cover.
    pub runs: Vec<RunToCut>,
    /// The studs that joints fall on; `None` where there are none.
    pub studs: Option<StudCenters>,
    /// New boards.
    pub stock: Vec<Stock>,
    /// Boards left over from before: each is there once and costs nothing.
    pub offcuts: Vec<Length>,
    /// What the saw takes between two pieces of one board.
    pub kerf: Length,
    /// What stays open at each end of a run.
    pub end_gap: Length,
    /// What stays open at a joint, centred on its stud.
    pub joint_gap: Length,
    /// The least distance between joints of neighbouring courses.
    pub stagger: Length,
    /// The shortest piece that a joint may leave.
    pub piece_min: Length,
    /// Joints that a run may have beyond the fewest.
    pub extra_joints: u32,
    /// Where no joint may lie.
    pub avoid: Vec<JointFree>,
    /// The shortest rest that is worth keeping.
    pub keep_min: Option<Length>,
    /// Whether long runs are pieced; otherwise the runs are the pieces.
    pub joints: bool,
    /// The tape's division, to which pieces are rounded down.
    pub division: Division,
    /// What is ripped, where its strips may be used: a [`RipPlanner`](super::RipPlanner) alone looks at it.
    pub rips: Option<Rips>,
}

impl CutList {
    /// A list with no runs and no boards, no kerf and no gaps, and 16 in of stagger.
    pub fn new() -> Self {
        Self {
            runs: Vec::new(),
            studs: None,
            stock: Vec::new(),
            offcuts: Vec::new(),
            kerf: Length::ZERO,
            end_gap: Length::ZERO,
            joint_gap: Length::ZERO,
            stagger: Length::from_inches(16),
            piece_min: Length::ZERO,
            extra_joints: 0,
            avoid: Vec::new(),
            keep_min: None,
            joints: true,
            division: Division::SIXTEENTH,
            rips: None,
        }
    }

    /// Refuses what could not be planned, whatever the boards.
    pub(super) fn check(&self) -> Result<(), SawError> {
        let counts = [
            ("runs", self.runs.len()),
            ("stock", self.stock.len()),
            ("offcuts", self.offcuts.len()),
            ("strips", self.rips.as_ref().map_or(0, |rips| rips.strips.len())),
            ("avoid", self.avoid.len()),
            ("studs", if let Some(StudCenters::Listed(list)) = &self.studs { list.len() } else { 0 }),
            ("extra_joints", self.extra_joints as usize),
        ];
        for (what, count) in counts {
            if count > LIMIT {
                return Err(SawError::TooMany { what });
            }
        }
        let gaps = [
            ("kerf", self.kerf),
            ("end_gap", self.end_gap),
            ("joint_gap", self.joint_gap),
            ("stagger", self.stagger),
            ("piece_min", self.piece_min),
        ];
        for (what, length) in gaps {
            if length.is_negative() || length > Length::LIMIT {
                return Err(SawError::Negative { what });
            }
        }
        if let Some(StudCenters::Spaced { spacing, .. }) = self.studs
            && !spacing.is_positive()
        {
            return Err(SawError::Spacing);
        }
        for (index, stock) in self.stock.iter().enumerate() {
            if !stock.length.is_positive() || stock.length > Length::LIMIT {
                return Err(SawError::StockLength { stock: index });
            }
            if stock.cost > COST_LIMIT {
                return Err(SawError::StockCost { stock: index });
            }
        }
        let strips = self.rips.iter().flat_map(|rips| &rips.strips).map(|strip| strip.length);
        for (index, length) in self.offcuts.iter().copied().chain(strips).enumerate() {
            if !length.is_positive() || length > Length::LIMIT {
                return Err(SawError::OffcutLength { offcut: index });
            }
        }
        for (index, run) in self.runs.iter().enumerate() {
            if run.to < run.from || run.from.abs() > Length::LIMIT || run.to.abs() > Length::LIMIT {
                return Err(SawError::RunOrder { run: index });
            }
            if !self.cut(run.to - run.from - self.end_gap - self.end_gap).is_positive() {
                return Err(SawError::RunShort { run: index });
            }
        }
        Ok(())
    }

    /// Where the piece to the left of a joint ends, and where the one to the right of it starts: half the gap from its stud,
    /// to the nearest nanometre.
    pub(super) fn beside(&self, stud: Length) -> (Length, Length) {
        beside(stud, self.joint_gap)
    }

    /// A piece as it is cut: rounded down to the tape.
    pub(super) fn cut(&self, length: Length) -> Length {
        self.division.round(length, crate::measure::Rounding::Down)
    }

    /// The longest board at hand, new or left over.
    pub(super) fn longest(&self) -> Option<Length> {
        let new = self.stock.iter().filter(|stock| stock.count != Some(0)).map(|stock| stock.length);
        new.chain(self.offcuts.iter().copied()).max()
    }
}

/// The ends beside a joint with a gap, as [`CutList::beside`] tells them.
pub(super) fn beside(stud: Length, gap: Length) -> (Length, Length) {
    ((stud + stud - gap).half(), (stud + stud + gap).half())
}

impl Rips {
    /// Whether one board gives pieces of both heights over each other, with the saw's cut between them.
    pub(super) fn are_pair(&self, one: Length, other: Length, kerf: Length) -> bool {
        one + kerf + other <= self.board
    }

    /// The runs whose pieces may share a board's height, with those of another run or with each other where `is_pieced`; and
    /// those that a strip left over is high enough for.
    pub(super) fn pairing(&self, kerf: Length, is_pieced: impl Fn(usize) -> bool) -> BTreeSet<usize> {
        let mut heights: Vec<(Length, usize)> = self.heights.iter().map(|(run, height)| (*height, *run)).collect();
        heights.sort_unstable();
        let lowest = |run: usize| heights.iter().find(|(_, other)| *other != run || is_pieced(run));
        let highest = self.strips.iter().map(|strip| strip.height).max();
        let pairs = |(height, run): &&(Length, usize)| {
            highest >= Some(*height) || lowest(*run).is_some_and(|(other, _)| self.are_pair(*height, *other, kerf))
        };
        heights.iter().filter(pairs).map(|(_, run)| *run).collect()
    }
}

impl Default for CutList {
    fn default() -> Self {
        Self::new()
    }
}
