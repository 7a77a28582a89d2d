//! What is ripped off a board as a further piece.
//!
//! A board has a factory edge along each of its long sides, and every piece needs one at its bottom, where it shows. What is
//! ripped off the top of a piece has the other one: turned end for end, it is the bottom of a piece that is low enough. So
//! two pieces lie over each other on a board at most, and what lies between two rips, without any factory edge, is none.

use std::cmp::Reverse;
use std::collections::BTreeSet;

use super::cut_list::{LowOffcut, Rips};
use super::demand::Demand;
use super::{CutList, Piece, Plan, Planner, PlannerProgress, RunToCut, SawError, SawnBoard};
use crate::measure::{Length, Rounding};

/// The planner's steps on boards once it is settled which pieces lie over each other.
const EFFORT: u64 = 10;

/// Works on a cut list in slices, and uses the strips that are ripped off where the list names what is ripped.
///
/// The bound is that of a list in which each piece that may share a board's height takes half its length: whatever lies where,
/// such pieces take one of the board's two factory edges each, along all their length and a kerf, and other pieces take
/// both, so that no board holds more than its own length in these measures. A strip left over has one factory edge and holds
/// half its length.
#[derive(Clone, Debug)]
pub struct RipPlanner {
    /// Every piece out of a board's full height.
    plain: Planner,
    strips: Option<Strips>,
}

/// The work on strips.
#[derive(Clone, Debug)]
struct Strips {
    list: CutList,
    rips: Rips,
    /// The runs whose pieces may share a board's height.
    pairing: BTreeSet<usize>,
    /// For the bound, and for joints that suit it; none where it found no plan, and nothing is known of a bound.
    halved: Option<Planner>,
    /// The best plan that uses strips.
    best: Option<Plan>,
    /// The costs of the plans whose pieces were laid over each other last.
    laid: Option<(u64, u64)>,
}

/// What is cut from a strip left over, by its place among them.
type Row = (usize, Vec<usize>);

/// Pieces that take a stretch of a board together, by their places among all.
#[derive(Clone, Debug)]
struct Stretch {
    /// Those with the board's lower factory edge; a piece of full height is alone.
    lower: Vec<usize>,
    /// Those with its upper one: no longer together than the lower ones.
    upper: Vec<usize>,
}

impl RipPlanner {
    /// As [`Planner::new`].
    ///
    /// # Errors
    /// As [`Planner::new`].
    pub fn new(list: &CutList) -> Result<Self, SawError> {
        let plain = Planner::new(list)?;
        let halved = |pairing: BTreeSet<usize>| Planner::of(Demand::of(&with_strips(list), pairing)?);
        Ok(Self { plain, strips: Strips::of(list, halved) })
    }

    /// As [`Planner::again`].
    ///
    /// # Errors
    /// As [`Planner::again`].
    pub fn again(list: &CutList, before: &Self) -> Result<Self, SawError> {
        let plain = Planner::again(list, &before.plain)?;
        let known = before.strips.as_ref().and_then(|strips| strips.halved.as_ref());
        let halved = |pairing: BTreeSet<usize>| {
            let demand = Demand::of(&with_strips(list), pairing)?;
            match known {
                Some(known) => Planner::of_again(demand, known),
                None => Planner::of(demand),
            }
        };
        let mut planner = Self { plain, strips: Strips::of(list, halved) };
        planner.lay();
        Ok(planner)
    }

    /// As [`Planner::step`].
    pub fn step(&mut self, effort: u64) -> PlannerProgress {
        self.plain.step(effort);
        if let Some(Strips { halved: Some(halved), .. }) = &mut self.strips {
            halved.step(effort);
        }
        self.lay();
        let plan = self.plan();
        PlannerProgress { done: plan.proved, cost: plan.cost, bound: plan.bound }
    }

    /// The best plan so far.
    pub fn plan(&self) -> Plan {
        let plain = self.plain.plan();
        let Some(Strips { best, halved, .. }) = &self.strips else { return plain };
        let bound = halved.as_ref().map_or(0, |halved| halved.plan().bound);
        let plan = best.clone().filter(|best| best.cost < plain.cost).unwrap_or(plain);
        let bound = bound.min(plan.cost);
        Plan { bound, proved: bound == plan.cost, ..plan }
    }

    fn lay(&mut self) {
        if let Some(strips) = &mut self.strips {
            strips.lay(&self.plain.plan());
        }
    }
}

impl Strips {
    /// None where no piece may share a board's height.
    fn of(list: &CutList, halved: impl FnOnce(BTreeSet<usize>) -> Result<Planner, SawError>) -> Option<Self> {
        let rips = list.rips.clone()?;
        let longest = list.longest()?;
        let is_pieced = |run: usize| {
            let run = list.runs.get(run);
            run.is_some_and(|run| list.cut(run.to - run.from - list.end_gap - list.end_gap) > longest)
        };
        let pairing = rips.pairing(list.kerf, is_pieced);
        if pairing.is_empty() {
            return None;
        }
        let halved = halved(pairing.clone()).ok();
        Some(Self { list: list.clone(), rips, pairing, halved, best: None, laid: None })
    }

    /// Lays the pieces of a plan over each other, and those of the halved one, where they are not those of last time.
    fn lay(&mut self, plain: &Plan) {
        let halved = self.halved.as_ref().map(Planner::plan);
        let costs = Some((plain.cost, halved.as_ref().map_or(0, |plan| plan.cost)));
        if self.laid == costs {
            return;
        }
        self.laid = costs;
        for plan in halved.iter().chain([plain]) {
            let pieces = &plan.pieces;
            let left_over = self.left_over(pieces);
            for rows in [&left_over[..], &[]] {
                let low = self.low(pieces, rows);
                let ways = [Some(self.one_by_one(pieces, low.clone())), self.row_by_row(pieces, &low)];
                for stretches in ways.into_iter().flatten() {
                    let Some(found) = self.cut(pieces, &stretches, rows) else { continue };
                    if self.best.as_ref().is_none_or(|best| found.cost < best.cost) {
                        self.best = Some(found);
                    }
                }
                if left_over.is_empty() {
                    break;
                }
            }
        }
    }

    /// What is cut from the strips left over, the shortest strip first, so that the long ones stay for what is long: the
    /// longest piece that it holds, and so on.
    fn left_over(&self, pieces: &[Piece]) -> Vec<Row> {
        let mut low = self.low(pieces, &[]);
        let mut strips: Vec<usize> = (0..self.rips.strips.len()).collect();
        strips.sort_by_key(|at| self.rips.strips.get(*at).map(|strip| (strip.length, strip.height)));
        let mut rows = Vec::new();
        for at in strips {
            let Some(strip) = self.rips.strips.get(at) else { continue };
            let mut row = Vec::new();
            low.retain(|piece| {
                let is_low = pieces.get(*piece).is_some_and(|own| self.height(own) <= strip.height);
                row.push(*piece);
                let taken = is_low && self.row(pieces, &row) <= strip.length;
                if !taken {
                    row.pop();
                }
                !taken
            });
            if !row.is_empty() {
                rows.push((at, row));
            }
        }
        rows
    }

    /// How high a piece is.
    fn height(&self, piece: &Piece) -> Length {
        self.rips.heights.get(&piece.run).copied().unwrap_or(self.rips.board)
    }

    fn are_pair(&self, one: Length, other: Length) -> bool {
        self.rips.are_pair(one, other, self.list.kerf)
    }

    /// What pieces take one behind the other.
    fn row(&self, pieces: &[Piece], row: &[usize]) -> Length {
        let length: Length = row.iter().filter_map(|at| pieces.get(*at)).map(|piece| piece.length).sum();
        let kerfs = i64::try_from(row.len()).unwrap_or(i64::MAX).saturating_sub(1);
        length + self.list.kerf.checked_mul(kerfs.max(0)).unwrap_or(length)
    }

    /// The places of pieces that may share a board's height, the longest first; not of those that strips left over give.
    fn low(&self, pieces: &[Piece], rows: &[Row]) -> Vec<usize> {
        let given = |at: usize| rows.iter().any(|(_, row)| row.contains(&at));
        let own = pieces.iter().enumerate().filter(|(at, own)| self.pairing.contains(&own.run) && !given(*at));
        let mut low: Vec<usize> = own.map(|(at, _)| at).collect();
        low.sort_by_key(|at| Reverse(pieces.get(*at).map(|piece| piece.length)));
        low
    }

    /// Over each piece, the longest first, the next longest ones that its strip holds.
    fn one_by_one(&self, pieces: &[Piece], mut low: Vec<usize>) -> Vec<Stretch> {
        let mut stretches = Vec::new();
        while !low.is_empty() {
            let own = low.remove(0);
            let Some(piece) = pieces.get(own) else { continue };
            let mut upper = Vec::new();
            low.retain(|at| {
                let fits = pieces.get(*at).is_some_and(|other| self.are_pair(self.height(piece), self.height(other)));
                let mut with = upper.clone();
                with.push(*at);
                let taken = fits && self.row(pieces, &with) <= piece.length;
                if taken {
                    upper = with;
                }
                !taken
            });
            stretches.push(Stretch { lower: vec![own], upper });
        }
        stretches
    }

    /// Rows as if they were all that is cut, and the longest over each other.
    fn row_by_row(&self, pieces: &[Piece], low: &[usize]) -> Option<Vec<Stretch>> {
        let lengths = low.iter().filter_map(|at| Some(pieces.get(*at)?.length));
        let plan = self.boards(lengths)?;
        let row =
            |board: &SawnBoard| board.pieces.iter().filter_map(|at| low.get(*at).copied()).collect::<Vec<usize>>();
        let mut rows: Vec<(Length, Length, Vec<usize>)> = plan
            .boards
            .iter()
            .map(row)
            .map(|row| {
                let highest = row.iter().filter_map(|at| pieces.get(*at)).map(|piece| self.height(piece)).max();
                (self.row(pieces, &row), highest.unwrap_or(self.rips.board), row)
            })
            .collect();
        rows.sort_by_key(|(length, ..)| Reverse(*length));
        let mut stretches = Vec::new();
        while !rows.is_empty() {
            let (_, height, lower) = rows.remove(0);
            let over = rows.iter().position(|(_, other, _)| self.are_pair(height, *other));
            let upper = over.map(|over| rows.remove(over).2).unwrap_or_default();
            stretches.push(Stretch { lower, upper });
        }
        Some(stretches)
    }

    /// The boards for pieces of full height, one behind the other.
    fn boards(&self, lengths: impl Iterator<Item = Length>) -> Option<Plan> {
        let run = |length: Length| RunToCut {
            wall: String::new(),
            course: 0,
            from: Length::ZERO,
            to: self.list.division.round(length, Rounding::Up),
        };
        let mut list = CutList::new();
        list.runs = lengths.map(run).collect();
        list.joints = false;
        list.stock.clone_from(&self.list.stock);
        list.offcuts.clone_from(&self.list.offcuts);
        (list.kerf, list.keep_min, list.division) = (self.list.kerf, self.list.keep_min, self.list.division);
        let mut planner = Planner::new(&list).ok()?;
        planner.step(EFFORT);
        Some(planner.plan())
    }

    /// The boards for all pieces, with some of them over each other and some out of strips left over.
    fn cut(&self, pieces: &[Piece], stretches: &[Stretch], rows: &[Row]) -> Option<Plan> {
        let full = (0..pieces.len()).filter(|at| pieces.get(*at).is_some_and(|own| !self.pairing.contains(&own.run)));
        let full = full.map(|at| Stretch { lower: vec![at], upper: Vec::new() });
        let all: Vec<Stretch> = full.chain(stretches.iter().cloned()).collect();
        let plan = self.boards(all.iter().map(|own| self.row(pieces, &own.lower)))?;
        let boards = plan.boards.iter().map(|board| {
            let own = || board.pieces.iter().filter_map(|at| all.get(*at));
            SawnBoard {
                pieces: own().flat_map(|own| own.lower.iter().copied()).collect(),
                strips: own().flat_map(|own| own.upper.iter().copied()).collect(),
                ..board.clone()
            }
        });
        let strips = rows.iter().filter_map(|(at, row)| {
            let strip = self.rips.strips.get(*at)?;
            let left = strip.length - self.row(pieces, row);
            Some(SawnBoard {
                source: self.list.offcuts.len() + at,
                offcut: true,
                length: strip.length,
                pieces: Vec::new(),
                strips: row.clone(),
                left,
                keep: self.list.keep_min.is_some_and(|least| left >= least),
            })
        });
        Some(Plan { boards: boards.chain(strips).collect(), pieces: pieces.to_vec(), ..plan })
    }
}

/// The list in which low pieces take half their length, with what a strip left over holds in that measure: a row of pieces,
/// a kerf each, is no longer than the strip and one kerf.
fn with_strips(list: &CutList) -> CutList {
    let holds = |strip: &LowOffcut| Length::from_nm((strip.length + list.kerf).nm().saturating_add(1) / 2);
    let strips = list.rips.iter().flat_map(|rips| &rips.strips);
    let halves = strips.map(|strip| (holds(strip) - list.kerf).max(Length::from_nm(1)));
    CutList { offcuts: list.offcuts.iter().copied().chain(halves).collect(), ..list.clone() }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use proptest::prelude::*;

    use super::*;
    use crate::saw::Stock;

    fn inch(n: i64) -> Length {
        Length::from_inches(n)
    }

    /// Pieces as long and as high as given, out of boards of 12 ft and 8 in with a kerf of 1/8 in.
    fn list(pieces: &[(i64, i64)]) -> CutList {
        let mut list = CutList::new();
        list.joints = false;
        list.kerf = Length::from_inches_64(0, 8);
        list.stock.push(Stock { length: inch(144), cost: 1, count: None });
        let run = |length: i64| RunToCut { wall: String::new(), course: 0, from: Length::ZERO, to: inch(length) };
        list.runs = pieces.iter().map(|(length, _)| run(*length)).collect();
        let low = pieces.iter().enumerate().filter(|(_, (_, height))| *height < 8);
        let heights: BTreeMap<usize, Length> = low.map(|(at, (_, height))| (at, inch(*height))).collect();
        list.rips = Some(Rips { board: inch(8), heights, strips: Vec::new() });
        list
    }

    fn planned(pieces: &[(i64, i64)]) -> Plan {
        planned_with(pieces, &[])
    }

    /// The same with strips left over, as long and as high as given.
    fn planned_with(pieces: &[(i64, i64)], strips: &[(i64, i64)]) -> Plan {
        let mut list = list(pieces);
        let strip = |(length, height): &(i64, i64)| LowOffcut { length: inch(*length), height: inch(*height) };
        list.rips.as_mut().unwrap().strips = strips.iter().map(strip).collect();
        let mut planner = RipPlanner::new(&list).unwrap();
        planner.step(100);
        planner.plan()
    }

    /// By hand. A strip of 3 in by 100 in gives 60 and 39 7/8 in, a kerf between them, and no board is bought; it gives no piece
    /// of 4 in, none of 101 in and none of a board's full height.
    #[test]
    fn a_strip_left_over_gives_what_is_low_enough() {
        let strips = [(100, 3)];
        for (pieces, boards) in [
            (&[(60, 3), (39, 2)][..], 0),
            (&[(60, 3), (40, 2)], 1),
            (&[(60, 4)], 1),
            (&[(101, 3)], 1),
            (&[(60, 8)], 1),
            (&[(140, 8), (100, 3)], 1),
        ] {
            let plan = planned_with(pieces, &strips);
            assert_eq!((plan.count, plan.proved), (boards, true), "{pieces:?}: {plan:?}");
        }
        let plan = planned_with(&[(60, 3), (30, 3)], &strips);
        let [strip] = plan.boards.as_slice() else { panic!("{plan:?}") };
        let taken = (strip.offcut, strip.source, &strip.strips, &strip.pieces);
        assert_eq!(taken, (true, 0, &vec![0, 1], &vec![]));
        assert_eq!(strip.left, Length::from_inches_64(9, 56));
    }

    /// By hand. Two pieces of 140 in that are 3 in high come out of one board, 3 + 1/8 + 3 in of its 8; 4 in high they do
    /// not, since the kerf takes 1/8 in, but one of 3 and one of 4 do. Three of 2 in would lie over each other, but the middle
    /// one would have no factory edge: two boards.
    #[test]
    fn two_pieces_share_a_boards_height_and_never_three() {
        for (heights, boards) in [
            (&[3, 3][..], 1),
            (&[4, 4], 2),
            (&[3, 4], 1),
            (&[2, 2, 2], 2),
            (&[8, 2], 2),
            (&[7, 2], 2),
            (&[2, 2, 2, 2], 2),
        ] {
            let pieces: Vec<(i64, i64)> = heights.iter().map(|height| (140, *height)).collect();
            let plan = planned(&pieces);
            assert_eq!((plan.count, plan.proved), (boards, true), "{heights:?}");
        }
    }

    /// 73 in of full height leave 70 7/8 in behind the kerf: room for two pieces of 70 in over each other.
    #[test]
    fn strips_lie_beside_pieces_of_full_height() {
        let plan = planned(&[(73, 8), (70, 3), (70, 3), (73, 8), (70, 3), (70, 3)]);
        assert_eq!((plan.count, plan.proved), (2, true));
        assert!(plan.boards.iter().all(|board| board.pieces.len() == 2 && board.strips.len() == 1), "{plan:?}");
    }

    /// Without a rule for it every piece takes a board's full height.
    #[test]
    fn nothing_is_ripped_where_the_list_does_not_say_so() {
        let mut list = list(&[(140, 3), (140, 3)]);
        list.rips = None;
        let mut planner = RipPlanner::new(&list).unwrap();
        planner.step(100);
        assert_eq!((planner.plan().count, planner.plan().proved), (2, true));
    }

    /// The fewest boards for pieces, by trying everything: each piece goes on a board that is open or on a new one, at its
    /// lower edge, at its upper one, or over both; or it goes on a strip left over.
    fn fewest(pieces: &[(i64, i64)], strips: &[(i64, i64)]) -> usize {
        /// What of a board is taken in eighths: over its full height, and the lengths and greatest heights at its edges.
        #[derive(Clone, Copy, Default)]
        struct Taken {
            full: i64,
            rows: [(i64, i64); 2],
        }
        impl Taken {
            fn holds(&self) -> bool {
                let [(lower, low), (upper, high)] = self.rows;
                let over = lower > 0 && upper > 0;
                self.full + lower.max(upper) <= 144 * 8 + 1 && (!over || low + 1 + high <= 8 * 8)
            }
        }
        fn go(pieces: &[(i64, i64)], boards: &mut Vec<Taken>, strips: &mut [(i64, i64)], best: &mut usize) {
            if boards.len() >= *best {
                return;
            }
            let Some(((length, height), rest)) = pieces.split_first() else {
                *best = boards.len();
                return;
            };
            let takes = length * 8 + 1;
            for at in 0..strips.len() {
                if *height <= strips[at].1 && takes <= strips[at].0 {
                    strips[at].0 -= takes;
                    go(rest, boards, strips, best);
                    strips[at].0 += takes;
                }
            }
            for at in 0..=boards.len() {
                let is_new = at == boards.len();
                if is_new {
                    boards.push(Taken::default());
                }
                let before = boards[at];
                for edge in 0..2 {
                    boards[at] = before;
                    if *height == 8 {
                        boards[at].full += takes;
                    } else {
                        let row = &mut boards[at].rows[edge];
                        *row = (row.0 + takes, row.1.max(height * 8));
                    }
                    if boards[at].holds() {
                        go(rest, boards, strips, best);
                    }
                }
                boards[at] = before;
                if is_new {
                    boards.pop();
                }
            }
        }
        let mut best = pieces.len() + 1;
        // As many kerfs as pieces, one of them behind the end of the strip.
        let mut strips: Vec<(i64, i64)> = strips.iter().map(|(length, height)| (length * 8 + 1, *height)).collect();
        go(pieces, &mut Vec::new(), &mut strips, &mut best);
        best
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        /// The plan holds what it says, no proof is false, and no bound lies over the fewest boards.
        #[test]
        fn no_plan_undercuts_the_bound(
            pieces in prop::collection::vec((20_i64..144, prop::sample::select(vec![8_i64, 8, 4, 3, 2])), 1..7),
            strips in prop::collection::vec((20_i64..144, prop::sample::select(vec![4_i64, 3])), 0..3),
        ) {
            let plan = planned_with(&pieces, &strips);
            let fewest = fewest(&pieces, &strips);
            prop_assert!(plan.bound <= fewest as u64 && fewest <= plan.count, "{plan:?} for {fewest}");
            prop_assert!(!plan.proved || plan.count == fewest);
            let mut seen = vec![0; pieces.len()];
            for board in &plan.boards {
                let row = |row: &[usize]| row.iter().map(|at| pieces[*at].0 * 8 + 1).sum::<i64>() - 1;
                for at in board.pieces.iter().chain(&board.strips) {
                    seen[*at] += 1;
                }
                if board.offcut {
                    let (length, height) = strips[board.source];
                    prop_assert!(row(&board.strips) <= length * 8 && board.pieces.is_empty());
                    prop_assert!(board.strips.iter().all(|at| pieces[*at].1 <= height));
                    continue;
                }
                prop_assert!(row(&board.pieces) <= 144 * 8);
                prop_assert!(board.strips.is_empty() || row(&board.strips) <= row(&board.pieces));
                // Over each strip lies a piece that leaves it.
                for strip in &board.strips {
                    let leaves = |at: &usize| pieces[*at].1 * 8 + 1 + pieces[*strip].1 * 8 <= 8 * 8;
                    prop_assert!(board.pieces.iter().any(leaves));
                }
            }
            prop_assert!(seen.iter().all(|count| *count == 1));
        }
    }
}
