use super::bound;
use super::branch::Branch;
use super::demand::{Choices, Demand, TiedRuns};
use super::fill::Fill;
use super::master::{ColumnPart, Master};
use super::pattern::{Left, Packing, Pattern};
use super::random::Random;

/// Branch and price: each branch has its own programme and a bound in whole numbers, and the least bound of the open
/// branches bounds the whole. A [`Branch`] tells what it settles.
#[derive(Clone, Debug)]
pub(super) struct Tree {
    open: Vec<Branch>,
    now: Option<(Branch, Demand, Master)>,
    /// The least bound of branches that are given up.
    given_up: Option<i128>,
}

impl Tree {
    /// Starts from a solved programme; `None` where there is too much to branch on.
    pub(super) fn new(demand: &Demand, master: &Master) -> Option<Self> {
        Some(Self { open: vec![Branch::root(demand, master)?], now: None, given_up: None })
    }

    /// What no plan can cost less than, if every plan from `cost` on is of no interest.
    pub(super) fn bound(&self, cost: i128) -> i128 {
        let open = self.open.iter().chain(self.now.as_ref().map(|(branch, _, _)| branch)).map(|branch| branch.bound);
        open.chain(self.given_up).min().unwrap_or(cost).min(cost)
    }

    /// Whether nothing is left to look at.
    pub(super) fn over(&self) -> bool {
        self.open.is_empty() && self.now.is_none()
    }

    /// One slice of work for plans under `cost`; a plan that was found on the way, if there is one.
    pub(super) fn advance(
        &mut self,
        demand: &Demand,
        cost: i128,
        random: &mut Random,
        work: &mut u64,
    ) -> Option<(Choices, Packing)> {
        let Some((mut branch, own, mut master)) = self.now.take() else {
            let branch = self.open.pop()?;
            if branch.bound < cost {
                self.begin(branch, demand, work);
            }
            return None;
        };
        let before = master.work;
        master.advance(&own);
        *work += master.work - before;
        let reached = bound::reachable(demand, branch.bound.max(master.bound), cost);
        if reached >= cost {
            return None;
        }
        if !master.done {
            self.now = Some((branch, own, master));
            return None;
        }
        branch.bound = reached;
        let values = super::dive::mixed(&own, &master.prices);
        let found = round(&own, &master, &values, random, work);
        let found = found.map(|(choices, packing)| branch.unbind(&choices, &packing));
        match branch.split(&master) {
            Some(branches) => self.open.extend(branches),
            None => self.give_up(reached),
        }
        found
    }

    fn begin(&mut self, branch: Branch, demand: &Demand, work: &mut u64) {
        let own = branch.demand(demand);
        *work += 1_000 + own.walls.iter().map(TiedRuns::effort).sum::<u64>();
        // Where no joints are left, there is no plan to bound.
        if !own.walls.iter().all(TiedRuns::possible) {
            return;
        }
        match Master::of_branch(&own, &branch.start, branch.joints()) {
            Some(master) => self.now = Some((branch, own, master)),
            None => self.give_up(branch.bound),
        }
    }

    fn give_up(&mut self, bound: i128) {
        self.given_up = Some(self.given_up.map_or(bound, |known| known.min(bound)));
    }
}

/// For each wall the joints that the programme uses most, for their pieces the boards that are whole in its solution, and
/// the rest filled up.
fn round(
    own: &Demand,
    master: &Master,
    values: &[f64],
    random: &mut Random,
    work: &mut u64,
) -> Option<(Choices, Packing)> {
    let mut most: Vec<Option<(f64, &Vec<usize>)>> = vec![None; own.walls.len()];
    for (part, share) in master.solution() {
        if let ColumnPart::Joints { wall, choice } = part
            && let Some(slot) = most.get_mut(*wall)
            && slot.is_none_or(|(known, _)| share > known)
        {
            *slot = Some((share, choice));
        }
    }
    let choices: Choices = most.into_iter().map(|most| Some(most?.1.clone())).collect::<Option<_>>()?;
    let counts = own.balance(&choices).into_iter().map(|count| u32::try_from(count).ok());
    let mut counts: Vec<u32> = counts.collect::<Option<_>>()?;
    let (mut left, mut boards) = (Left::new(own), Vec::new());
    for (part, share) in master.solution() {
        let ColumnPart::Cut { kind, pieces } = part else { continue };
        for _ in 0..(share + 1e-4).max(0.0) as u32 {
            let enough = pieces.iter().all(|(size, count)| counts.get(*size).is_some_and(|have| have >= count));
            if !enough || !left.has(*kind) {
                break;
            }
            for (size, count) in pieces {
                if let Some(have) = counts.get_mut(*size) {
                    *have -= count;
                }
            }
            left.take(*kind);
            boards.push(Pattern::of(*kind, pieces));
        }
    }
    let fill = Fill { demand: own, values, nodes: 1_500, skip: 0 };
    let rest = fill.pack(&counts, &mut left, random, work)?;
    boards.extend(rest.boards);
    let mut packing = Packing { boards };
    packing.shrink(own, Left::new(own));
    Some((choices, packing))
}

#[cfg(test)]
mod tests;
