//! Generated cut lists whose least cost is known from the way they were made; every plan goes through the checker that
//! was written apart from the planner. Lengths are in sixteenths of an inch. No source but the construction.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a check stops at what it did not expect"
)]

use lapwright::measure::Length;
use lapwright::saw::{CutList, Plan, Planner, RunToCut, Stock};
use lapwright_tests::plan_check;
use lapwright_tests::random::Random;

fn length(sixteenths: i64) -> Length {
    Length::from_inches_64(0, 4 * sixteenths)
}

/// Pieces without joints; the cost of a board is its length, or its length and one kerf.
fn list(boards: &[i64], kerf: i64, with_kerf: bool, pieces: &[i64]) -> CutList {
    let mut list = CutList::new();
    list.joints = false;
    list.kerf = length(kerf);
    let cost = |board: i64| length(board + if with_kerf { kerf } else { 0 }).nm().unsigned_abs();
    list.stock = boards.iter().map(|board| Stock { length: length(*board), cost: cost(*board), count: None }).collect();
    for (course, piece) in pieces.iter().enumerate() {
        let to = length(*piece);
        list.runs.push(RunToCut { wall: String::new(), course: course as i64, from: Length::ZERO, to });
    }
    list
}

fn solve(list: &CutList) -> Plan {
    let mut planner = Planner::new(list).expect("a plan");
    planner.step(1_500);
    let plan = planner.plan();
    assert_eq!(plan_check::faults(list, &plan, false), Vec::<String>::new());
    plan
}

/// Cuts a board into pieces of at least `least` that leave nothing.
fn cut_up(random: &mut Random, board: i64, kerf: i64, least: i64, most_pieces: i64, pieces: &mut Vec<i64>) {
    let mut left = board;
    for _ in 1..random.between(2, most_pieces) {
        if left < 2 * least + kerf {
            break;
        }
        let piece = random.between(least, left - least - kerf);
        pieces.push(piece);
        left -= piece + kerf;
    }
    pieces.push(left);
}

/// Nothing is left of any board, so that no plan can take less than was cut up.
#[test]
fn boards_of_one_length_cut_up_without_rest() {
    for seed in 0..60 {
        let mut random = Random::new(seed);
        let (board, kerf) = (16 * random.between(8, 16) * 12, random.between(0, 3));
        let boards = random.between(3, 30);
        let mut pieces = Vec::new();
        for _ in 0..boards {
            cut_up(&mut random, board, kerf, 16 * 8, 8, &mut pieces);
        }
        let plan = solve(&list(&[board], kerf, false, &pieces));
        assert_eq!((plan.count as i64, plan.proved), (boards, true), "seed {seed}");
    }
}

/// Three pieces on every board and nothing left: the hardest way to be sure of the answer.
#[test]
fn triplets() {
    for seed in 0..20 {
        let mut random = Random::new(1000 + seed);
        let (board, boards) = (16 * 144, 12);
        let mut pieces = Vec::new();
        for _ in 0..boards {
            let first = random.between(16 * 37, 16 * 60);
            let second = random.between(16 * 37, (board - 4 - first) / 2);
            pieces.extend([first, second, board - 4 - first - second]);
        }
        let plan = solve(&list(&[board], 2, false, &pieces));
        assert_eq!((plan.count, plan.proved), (boards, true), "seed {seed}");
    }
}

/// Pieces longer than half a board each take a board of their own.
#[test]
fn few_long_pieces() {
    for seed in 0..30 {
        let mut random = Random::new(2000 + seed);
        let count = random.between(1, 40);
        let pieces: Vec<i64> = (0..count).map(|_| random.between(16 * 72, 16 * 144)).collect();
        let plan = solve(&list(&[16 * 144], 2, false, &pieces));
        assert_eq!((plan.count as i64, plan.proved), (count, true), "seed {seed}");
    }
}

/// Many short pieces, nothing left.
#[test]
fn many_short_pieces() {
    for seed in 0..30 {
        let mut random = Random::new(3000 + seed);
        let boards = random.between(4, 25);
        let mut pieces = Vec::new();
        for _ in 0..boards {
            let mut left = 16 * 144;
            while left > 16 * 40 {
                let piece = random.between(16 * 5, 16 * 20);
                pieces.push(piece);
                left -= piece + 2;
            }
            pieces.push(left);
        }
        let plan = solve(&list(&[16 * 144], 2, false, &pieces));
        assert_eq!((plan.count as i64, plan.proved), (boards, true), "seed {seed}");
    }
}

/// Several lengths at one price for each length with its kerf, nothing left of any board. The search may miss the one
/// plan without rest, in no more than one of ten; then it must say so, and its bound must not pass the least cost.
#[test]
fn several_lengths_without_rest() {
    let lengths = [16 * 96, 16 * 120, 16 * 144, 16 * 192];
    let mut proved = 0;
    for seed in 0..40 {
        let mut random = Random::new(4000 + seed);
        let kerf = random.between(0, 2);
        let mut pieces = Vec::new();
        let mut total = 0;
        for _ in 0..random.between(3, 20) {
            let board = lengths[random.between(0, 3) as usize];
            total += board + kerf;
            cut_up(&mut random, board, kerf, 16 * 10, 5, &mut pieces);
        }
        let plan = solve(&list(&lengths, kerf, true, &pieces));
        let least = length(total).nm().unsigned_abs();
        assert!(plan.bound <= least && least <= plan.cost, "seed {seed}: {} to {}", plan.bound, plan.cost);
        assert_eq!(plan.proved, plan.cost == least, "seed {seed}");
        proved += i32::from(plan.proved);
    }
    assert!(proved >= 36, "nine of ten are to be found, not {proved} of 40");
}

/// Pieces of a whole part of the board: the kerf takes one of them.
#[test]
fn kerf_traps() {
    for parts in 2..=12 {
        for count in [1, parts - 1, parts, 2 * parts, 5 * parts + 1] {
            let pieces = vec![16 * 12; count as usize];
            let plan = solve(&list(&[16 * 12 * parts], 1, false, &pieces));
            let least = if parts == 1 { count } else { (count + parts - 2) / (parts - 1) };
            assert_eq!((plan.count as i64, plan.proved), (least, true), "{count} of 1/{parts}");
            let plan = solve(&list(&[16 * 12 * parts], 0, false, &pieces));
            assert_eq!((plan.count as i64, plan.proved), ((count + parts - 1) / parts, true), "{count} of 1/{parts}");
        }
    }
}

/// Whatever is cut up from offcuts costs nothing.
#[test]
fn offcuts_suffice() {
    for seed in 0..20 {
        let mut random = Random::new(5000 + seed);
        let mut pieces = Vec::new();
        let mut offcuts = Vec::new();
        for _ in 0..random.between(1, 6) {
            let offcut = random.between(16 * 20, 16 * 90);
            offcuts.push(length(offcut));
            cut_up(&mut random, offcut, 2, 16 * 6, 3, &mut pieces);
        }
        let mut list = list(&[16 * 144], 2, false, &pieces);
        list.offcuts = offcuts;
        let plan = solve(&list);
        assert_eq!((plan.cost, plan.count, plan.proved), (0, 0, true), "seed {seed}");
    }
}
