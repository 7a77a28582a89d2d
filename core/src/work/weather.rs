use crate::book::BoardState;
use crate::store::Id;

use super::progress::{PenetrationProgress, ProgressOnWall};
use super::signed::is_signed;
use super::wall_board::WallBoard;
use super::{Penetration, WallSite, Work};

/// Something that lets water in now.
#[derive(Clone, Debug)]
pub struct LetsWaterIn<'a> {
    /// The wall.
    pub wall: &'a WallSite,
    /// What is open.
    pub gap: WeatherGap<'a>,
}

/// What is open to the weather.
#[derive(Clone, Debug)]
pub enum WeatherGap<'a> {
    /// A patch is on and not lapped all round.
    PatchNotLapped(&'a Penetration),
    /// An edge was cut round a penetration and not primed.
    EdgeNotPrimed(&'a Penetration),
    /// A bead that should be there is missing.
    BeadMissing(&'a Penetration),
    /// The steps at a penetration are done up to its sealant, and no boards are up round it.
    BoardsMissing(&'a Penetration),
    /// Boards are cut and not primed: how many, and the lowest. A house has too many for an entry each.
    BoardsNotPrimed(&'a WallBoard, usize),
}

/// The steps that close a patch: until the barrier is down over it, rain runs in behind its top.
const PATCH: [&str; 4] = ["patch-lap", "patch-roll", "patch-cover", "barrier-down"];

/// The steps that cut an edge, each with the one that primes it.
const CUT: [(&str, &str); 3] =
    [("block-split", "block-prime"), ("boards-cut", "boards-prime"), ("trim-bottom", "trim-prime")];

/// What of a house is open to the weather now, wall by wall.
pub fn open_to_weather<'a>(work: &Work, walls: &'a [ProgressOnWall]) -> Vec<LetsWaterIn<'a>> {
    let mut open = Vec::new();
    for progress in walls {
        let round = progress.penetrations.iter().flat_map(|one| missing(one, progress.is_boarded(one)));
        let primed = |board: Id| is_signed(work.house(), board, "board-prime");
        let mut unprimed =
            progress.boards.iter().filter(|board| board.state != BoardState::Planned && !primed(board.id()));
        let lowest = unprimed.next();
        let boards = lowest.map(|lowest| WeatherGap::BoardsNotPrimed(lowest, 1 + unprimed.count()));
        open.extend(round.chain(boards).map(|gap| LetsWaterIn { wall: &progress.wall, gap }));
    }
    open
}

/// What is missing at a penetration; `boarded` where every board round it is fixed.
fn missing(one: &PenetrationProgress, boarded: bool) -> Vec<WeatherGap<'_>> {
    let patched = PATCH.iter().any(|code| one.is_signed(code)) || one.is_signed("patch-hole");
    let mut gaps = Vec::new();
    if patched && PATCH.iter().any(|code| one.is_open(code)) {
        gaps.push(WeatherGap::PatchNotLapped(&one.penetration));
    }
    if CUT.iter().any(|(cut, prime)| one.is_signed(cut) && one.is_open(prime)) {
        gaps.push(WeatherGap::EdgeNotPrimed(&one.penetration));
    }
    if !boarded && one.is_signed("sealant") {
        gaps.push(WeatherGap::BoardsMissing(&one.penetration));
    }
    if (boarded && one.is_open("sealant")) || (one.is_signed("block-upper") && one.is_open("block-bead")) {
        gaps.push(WeatherGap::BeadMissing(&one.penetration));
    }
    gaps
}
