//! Generated cut lists by family: house work, and the classes that are usual in the literature on cutting and packing,
//! made anew here. Lengths are in sixteenths of an inch.

use lapwright::measure::Length;
use lapwright::saw::{CutList, RunToCut, Stock, StudCenters};
use rand_xoshiro::SplitMix64;
use rand_xoshiro::rand_core::{Rng, SeedableRng};

/// SplitMix64 with a fixed start: the same cut lists every time.
pub(crate) struct Random(SplitMix64);

impl Random {
    pub(crate) fn new(seed: u64) -> Self {
        Self(SplitMix64::seed_from_u64(seed))
    }

    pub(crate) fn between(&mut self, least: i64, most: i64) -> i64 {
        least + (self.0.next_u64() % (most - least + 1) as u64) as i64
    }
}

type Make = Box<dyn Fn(&mut Random) -> CutList>;

/// A way to make cut lists.
pub(crate) struct Family {
    pub(crate) name: String,
    /// How many lists are made of it.
    pub(crate) repeats: u64,
    pub(crate) make: Make,
}

const FOUR: &[i64] = &[16 * 96, 16 * 120, 16 * 144, 16 * 192];
/// 1/8 in.
const KERF: i64 = 2;

fn length(sixteenths: i64) -> Length {
    Length::from_inches_64(0, 4 * sixteenths)
}

fn list(stock: &[i64], kerf: i64) -> CutList {
    let mut list = CutList::new();
    list.joints = false;
    list.kerf = length(kerf);
    let board = |length: Length| Stock { length, cost: length.nm().unsigned_abs(), count: None };
    list.stock = stock.iter().map(|sixteenths| board(length(*sixteenths))).collect();
    list
}

fn run(list: &mut CutList, wall: i64, course: i64, from: i64, to: i64) {
    list.runs.push(RunToCut { wall: wall.to_string(), course, from: length(from), to: length(to) });
}

fn pieces(stock: &[i64], kerf: i64, pieces: impl IntoIterator<Item = i64>) -> CutList {
    let mut list = list(stock, kerf);
    for (course, piece) in pieces.into_iter().enumerate() {
        run(&mut list, 0, course as i64, 0, piece);
    }
    list
}

/// Pieces of any length between two.
fn uniform(random: &mut Random, stock: &[i64], kerf: i64, count: i64, least: i64, most: i64) -> CutList {
    pieces(stock, kerf, (0..count).map(|_| random.between(least, most)))
}

/// Pieces of few lengths.
fn repeated(random: &mut Random, stock: &[i64], count: i64, lengths: i64) -> CutList {
    let lengths: Vec<i64> = (0..lengths).map(|_| random.between(16 * 14, 16 * 90)).collect();
    pieces(stock, KERF, (0..count).map(|_| lengths[random.between(0, lengths.len() as i64 - 1) as usize]))
}

/// Boards without any rest, cut into three.
fn triplets(random: &mut Random, board: i64, kerf: i64, count: i64, least: i64, most: i64) -> CutList {
    let mut all = Vec::new();
    for _ in 0..count / 3 {
        let whole = board - 2 * kerf;
        let first = random.between(least, most);
        let second = random.between(least, (whole - first) / 2);
        all.extend([first, second, whole - first - second]);
    }
    pieces(&[board], kerf, all)
}

/// Boards cut up without any rest, into two to `parts` pieces, at one price for length and kerf.
fn exact(random: &mut Random, stock: &[i64], kerf: i64, boards: i64, parts: i64, least: i64) -> CutList {
    let mut all = Vec::new();
    for _ in 0..boards {
        let mut left = stock[random.between(0, stock.len() as i64 - 1) as usize];
        for _ in 1..random.between(2, parts) {
            if left < 2 * least + kerf {
                break;
            }
            let piece = random.between(least, left - least - kerf);
            all.push(piece);
            left -= piece + kerf;
        }
        all.push(left);
    }
    let mut list = pieces(stock, kerf, all);
    for stock in &mut list.stock {
        stock.cost = (stock.length + list.kerf).nm().unsigned_abs();
    }
    list
}

/// Three lengths that need a board more than the rounded bound says (arithmetic: 2/3 + 3/4 + 6/11 < 2, yet no two boards
/// hold them), among boards that leave nothing.
fn gap(random: &mut Random, boards: i64) -> CutList {
    let board = 132 * 20;
    let mut all: Vec<i64> =
        [(44, 2), (33, 3), (12, 6)].iter().flat_map(|(size, count)| vec![20 * size; *count]).collect();
    for _ in 0..boards {
        // One piece over half a board and two that fill it.
        let first = random.between(board / 2 + 1, board * 2 / 3);
        let second = random.between((board - first) / 3, (board - first) / 2);
        all.extend([first, second, board - first - second]);
    }
    pieces(&[board], 0, all)
}

/// Walls with courses longer than the boards, and openings.
fn house(random: &mut Random, stock: &[i64], walls: i64, courses: i64) -> CutList {
    let mut list = list(stock, KERF);
    list.joints = true;
    list.end_gap = length(2);
    list.stagger = length(16 * 32);
    list.piece_min = length(16 * 24);
    list.studs = Some(StudCenters::Spaced { first: Length::ZERO, spacing: length(16 * 16) });
    for wall in 0..walls {
        let width = random.between(16 * 200, 16 * 480);
        let left = random.between(16 * 40, width - 16 * 100);
        let right = left + random.between(16 * 30, 16 * 60);
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

/// All families.
pub(crate) fn all() -> Vec<Family> {
    let mut families = Vec::new();
    let mut add = |name: String, repeats: u64, make: Make| families.push(Family { name, repeats, make });
    let one: &'static [i64] = &[16 * 192];
    for count in [50, 200, 500, 1000, 2000] {
        let repeats = if count == 1000 { 5 } else { 10 };
        for (name, stock) in [("four", FOUR), ("one", one)] {
            let any = move |random: &mut Random| uniform(random, stock, KERF, count, 16 * 12, 16 * 180);
            add(format!("{name}/any/{count}"), repeats, Box::new(any));
            let middle = move |random: &mut Random| uniform(random, stock, KERF, count, 16 * 16, 16 * 96);
            add(format!("{name}/middle/{count}"), repeats, Box::new(middle));
            let short = move |random: &mut Random| uniform(random, stock, KERF, count, 16 * 6, 16 * 60);
            add(format!("{name}/short/{count}"), repeats, Box::new(short));
            let long = move |random: &mut Random| uniform(random, stock, KERF, count, 16 * 40, 16 * 190);
            add(format!("{name}/long/{count}"), repeats, Box::new(long));
            add(format!("{name}/few/{count}"), repeats, Box::new(move |random| repeated(random, stock, count, 20)));
            // Whole inches, as a tape is read aloud.
            let inches = move |random: &mut Random| {
                let all: Vec<i64> = (0..count).map(|_| 16 * random.between(12, 180)).collect();
                pieces(stock, KERF, all)
            };
            add(format!("{name}/inches/{count}"), repeats, Box::new(inches));
        }
    }
    for count in [120, 250, 500, 1000] {
        add(
            format!("uniform/150/{count}"),
            10,
            Box::new(move |random| uniform(random, &[16 * 150], 0, count, 320, 1600)),
        );
        let units = move |random: &mut Random| {
            pieces(&[150], 0, (0..count).map(|_| random.between(20, 100)).collect::<Vec<_>>())
        };
        add(format!("uniform/units/{count}"), 10, Box::new(units));
    }
    for (capacity, least) in [(100, 1), (120, 20), (150, 30)] {
        for count in [50, 200, 500] {
            let make = move |random: &mut Random| uniform(random, &[capacity], 0, count, least, 100);
            add(format!("small/{capacity}/{least}/{count}"), 10, Box::new(make));
        }
    }
    for parts in [3, 5, 7, 9] {
        for spread in [20, 50, 90] {
            let (least, most) = (1000 * (100 - spread) / (100 * parts), 1000 * (100 + spread) / (100 * parts));
            let make = move |random: &mut Random| {
                let count = [50, 100, 200, 500][random.between(0, 3) as usize];
                uniform(random, &[1000], 0, count, least, most)
            };
            add(format!("spread/{parts}/{spread}"), 10, Box::new(make));
        }
    }
    add("hundred-thousand/200".into(), 10, Box::new(|random| uniform(random, &[100_000], 0, 200, 20_000, 35_000)));
    add("narrow/100".into(), 10, Box::new(|random| uniform(random, &[1000], 0, 100, 150, 200)));
    add("narrow/120".into(), 10, Box::new(|random| uniform(random, &[1000], 0, 120, 150, 200)));
    add("wide/1000".into(), 20, Box::new(|random| uniform(random, &[1000], 0, 180, 1, 800)));
    add("wide/10000".into(), 10, Box::new(|random| uniform(random, &[10_000], 0, 150, 1, 7000)));
    add("tenths/10000".into(), 10, Box::new(|random| uniform(random, &[10_000], 0, 200, 300, 3500)));
    for count in [60, 120, 249, 501] {
        let make = move |random: &mut Random| triplets(random, 1000, 0, count, 250, 490);
        add(format!("triplets/1000/{count}"), 10, Box::new(make));
    }
    add("triplets/kerf/120".into(), 10, Box::new(|random| triplets(random, 16 * 144, KERF, 120, 16 * 37, 16 * 60)));
    add("triplets/kerf/249".into(), 10, Box::new(|random| triplets(random, 16 * 144, KERF, 249, 16 * 37, 16 * 60)));
    for boards in [15, 50, 150] {
        add(format!("exact/four/{boards}"), 10, Box::new(move |random| exact(random, FOUR, KERF, boards, 5, 16 * 10)));
        add(format!("exact/2500/{boards}"), 10, Box::new(move |random| exact(random, &[2500], 0, boards, 4, 200)));
        add(format!("exact/10000/{boards}"), 10, Box::new(move |random| exact(random, &[10_000], 0, boards, 4, 800)));
    }
    for boards in [0, 5, 20, 60] {
        add(format!("gap/{boards}"), 5, Box::new(move |random| gap(random, boards)));
    }
    let two: &'static [i64] = &[16 * 144, 16 * 192];
    for (name, stock) in [("two", two), ("four", FOUR)] {
        for courses in [8, 16, 30] {
            add(format!("house/{name}/{courses}"), 10, Box::new(move |random| house(random, stock, 4, courses)));
        }
    }
    families
}
