//! How good, how well proved and how fast cutting plans are, on generated cut lists: `cargo bench --bench planner`.
//! A word on the command line picks the families whose names hold it.
#![allow(clippy::print_stdout, clippy::indexing_slicing, missing_docs, reason = "a bench prints what it measures")]

use std::time::{Duration, Instant};

use lapwright::measure::Length;
use lapwright::saw::{CutList, Planner, Run, Stock, Studs};

/// SplitMix64: the same cut lists every time.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, least: i64, most: i64) -> i64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        least + ((z ^ (z >> 31)) % (most - least + 1) as u64) as i64
    }
}

const FOUR: &[i64] = &[96, 120, 144, 192];

fn list(stock: &[i64]) -> CutList {
    let mut list = CutList::new();
    list.kerf = Length::from_inches_64(0, 8);
    list.stock = stock
        .iter()
        .map(|inches| Length::from_inches(*inches))
        .map(|length| Stock { length, cost: length.nm() as u64, count: None })
        .collect();
    list
}

fn run(list: &mut CutList, wall: i64, course: i64, from: i64, to: i64) {
    let sixteenths = |count: i64| Length::from_inches_64(0, 4 * count);
    list.runs.push(Run { wall: wall.to_string(), course, from: sixteenths(from), to: sixteenths(to) });
}

/// Pieces of any sixteenth between two lengths in inches.
fn pieces(dice: &mut Dice, stock: &[i64], count: i64, least: i64, most: i64) -> CutList {
    let mut list = list(stock);
    list.joints = false;
    for course in 0..count {
        let length = dice.roll(16 * least, 16 * most);
        run(&mut list, 0, course, 0, length);
    }
    list
}

/// Pieces of few lengths.
fn repeated(dice: &mut Dice, stock: &[i64], count: i64, lengths: i64) -> CutList {
    let mut list = list(stock);
    list.joints = false;
    let lengths: Vec<i64> = (0..lengths).map(|_| dice.roll(16 * 14, 16 * 90)).collect();
    for course in 0..count {
        let length = lengths[dice.roll(0, lengths.len() as i64 - 1) as usize];
        run(&mut list, 0, course, 0, length);
    }
    list
}

/// Boards without any rest, cut into three.
fn triplets(dice: &mut Dice, count: i64) -> CutList {
    let mut list = list(&[144]);
    list.joints = false;
    for board in 0..count / 3 {
        let whole = 16 * 144 - 4;
        let first = dice.roll(16 * 37, 16 * 60);
        let second = dice.roll(16 * 37, (whole - first) / 2);
        for length in [first, second, whole - first - second] {
            run(&mut list, 0, board, 0, length);
        }
    }
    list
}

/// Boards of four lengths cut up without any rest, at one price for length and kerf.
fn exact(dice: &mut Dice, boards: i64) -> CutList {
    let mut list = list(FOUR);
    list.joints = false;
    for stock in &mut list.stock {
        stock.cost = (stock.length + list.kerf).nm() as u64;
    }
    for course in 0..boards {
        let mut left = 16 * FOUR[dice.roll(0, 3) as usize];
        for _ in 1..dice.roll(2, 5) {
            if left < 16 * 20 + 2 {
                break;
            }
            let piece = dice.roll(16 * 10, left - 16 * 10 - 2);
            run(&mut list, 0, course, 0, piece);
            left -= piece + 2;
        }
        run(&mut list, 0, course, 0, left);
    }
    list
}

/// Walls with courses longer than the boards, and openings.
fn house(dice: &mut Dice, courses: i64) -> CutList {
    let mut list = list(&[144, 192]);
    list.end_gap = Length::from_inches_64(0, 8);
    list.stagger = Length::from_inches(32);
    list.piece_min = Length::from_inches(24);
    list.studs = Some(Studs::Spaced { first: Length::ZERO, spacing: Length::from_inches(16) });
    for wall in 0..4 {
        let width = dice.roll(16 * 200, 16 * 480);
        let left = dice.roll(16 * 40, width - 16 * 100);
        let right = left + dice.roll(16 * 30, 16 * 60);
        for course in 0..courses {
            if course > courses / 3 && course < 2 * courses / 3 {
                run(&mut list, wall, course, 0, left);
                run(&mut list, wall, course, right, width);
            } else {
                run(&mut list, wall, course, 0, width);
            }
        }
    }
    list
}

fn main() {
    let only: Option<String> = std::env::args().skip(1).find(|word| !word.starts_with('-'));
    type Make = Box<dyn Fn(&mut Dice) -> CutList>;
    let mut families: Vec<(String, i64, Make)> = Vec::new();
    for (count, repeats) in [(50, 10), (200, 10), (500, 10), (2000, 3)] {
        families.push((
            format!("four lengths, {count} pieces"),
            repeats,
            Box::new(move |dice| pieces(dice, FOUR, count, 12, 180)),
        ));
        families.push((
            format!("one length, {count} pieces"),
            repeats,
            Box::new(move |dice| pieces(dice, &[192], count, 12, 180)),
        ));
        families.push((
            format!("short, four lengths, {count} pieces"),
            repeats,
            Box::new(move |dice| pieces(dice, FOUR, count, 6, 60)),
        ));
        families.push((
            format!("repeated, four lengths, {count} pieces"),
            repeats,
            Box::new(move |dice| repeated(dice, FOUR, count, 20)),
        ));
        families.push((
            format!("repeated, one length, {count} pieces"),
            repeats,
            Box::new(move |dice| repeated(dice, &[144], count, 12)),
        ));
    }
    families.push(("triplets, 120 pieces".into(), 10, Box::new(|dice| triplets(dice, 120))));
    families.push(("triplets, 249 pieces".into(), 5, Box::new(|dice| triplets(dice, 249))));
    families.push(("exact, 15 boards".into(), 20, Box::new(|dice| exact(dice, 15))));
    families.push(("exact, 50 boards".into(), 10, Box::new(|dice| exact(dice, 50))));
    families.push(("house, 16 courses".into(), 8, Box::new(|dice| house(dice, 16))));
    families.push(("house, 30 courses".into(), 8, Box::new(|dice| house(dice, 30))));
    for (name, repeats, make) in families {
        if only.as_ref().is_some_and(|word| !name.contains(word)) {
            continue;
        }
        for seed in 1..=repeats {
            let list = make(&mut Dice(seed as u64));
            let start = Instant::now();
            let mut planner = match Planner::new(&list) {
                Ok(planner) => planner,
                Err(error) => {
                    println!("{name} #{seed}: {error}");
                    continue;
                }
            };
            let first = start.elapsed();
            let mut progress = planner.step(0);
            let mut steps = 0;
            while !progress.done && start.elapsed() < Duration::from_secs(10) {
                progress = planner.step(10);
                steps += 10;
            }
            let plan = planner.plan();
            println!(
                "{name} #{seed}: {} pieces, {} boards, cost {:.4}, bound {:.4}, {:+.4} %, {}, first {:.1} ms, {:.0} ms, {steps} steps",
                plan.pieces.len(),
                plan.count,
                plan.cost as f64 / 1e9,
                plan.bound as f64 / 1e9,
                (plan.cost - plan.bound) as f64 / plan.bound.max(1) as f64 * 100.0,
                if plan.proved { "proved" } else { "open" },
                first.as_secs_f64() * 1e3,
                start.elapsed().as_secs_f64() * 1e3,
            );
        }
    }
}
