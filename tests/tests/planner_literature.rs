//! Cutting-stock and bin-packing problems of the literature with the answers printed beside them: what is cut there is paper
//! or steel, and nothing is lost to a saw. Every plan goes through the checker that was written apart from the planner.
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a check stops at what it did not expect"
)]

use lapwright::measure::{Division, Length};
use lapwright::saw::{CutList, Plan, Planner, RunToCut, Stock};
use lapwright_tests::plan_check;

/// Pieces and how many of each, out of stock that costs its length; the source's unit is a millimetre here.
fn list(stock: &[(i64, Option<u32>)], pieces: &[(i64, i64)]) -> CutList {
    let mut list = CutList::new();
    list.joints = false;
    list.kerf = Length::ZERO;
    list.division = Division::new(Length::NM_PER_MM, 1).unwrap();
    list.stock = stock
        .iter()
        .map(|(length, count)| Stock { length: Length::from_mm(*length), cost: length.unsigned_abs(), count: *count })
        .collect();
    let each = pieces.iter().flat_map(|(length, count)| (0..*count).map(|_| *length));
    list.runs = each
        .enumerate()
        .map(|(course, length)| RunToCut {
            wall: String::new(),
            course: course as i64,
            from: Length::ZERO,
            to: Length::from_mm(length),
        })
        .collect();
    list
}

fn solve(list: &CutList) -> Plan {
    let mut planner = Planner::new(list).unwrap();
    planner.step(3_000);
    let plan = planner.plan();
    assert_eq!(plan_check::faults(list, &plan, false), Vec::<String>::new());
    plan
}

/// The boards that a plan takes, and whether fewer would do is settled.
fn boards(stock: i64, pieces: &[(i64, i64)]) -> (usize, bool) {
    let plan = solve(&list(&[(stock, None)], pieces));
    (plan.count, plan.proved)
}

/// Wikipedia, "Cutting stock problem" (quoted): thirteen widths out of rolls of 5600 mm; "the optimal answer requires 73 master
/// rolls".
#[test]
fn thirteen_widths_out_of_rolls_of_5600() {
    let pieces = [
        (1380, 22),
        (1520, 25),
        (1560, 12),
        (1710, 14),
        (1820, 18),
        (1880, 18),
        (1930, 20),
        (2000, 10),
        (2050, 12),
        (2100, 14),
        (2140, 16),
        (2150, 18),
        (2200, 20),
    ];
    assert_eq!(boards(5600, &pieces), (73, true));
}

/// Chvátal, Linear Programming (1983), chapter 13 (quoted by the NEOS Guide and the JuMP notebooks): 97 of 45 in, 610 of 36,
/// 395 of 31 and 211 of 14 out of rolls of 100 in; the relaxed problem takes 452.25 rolls, whole ones 453.
#[test]
fn four_widths_out_of_rolls_of_100() {
    assert_eq!(boards(100, &[(45, 97), (36, 610), (31, 395), (14, 211)]), (453, true));
}

/// Mosel, "Multiple models and parallel solving", column generation for cutting stock (read): 150 of 17, 96 of 21, 48 of
/// 22.5, 108 of 24 and 227 of 29.5 out of rolls of 94; "the MIP finds a solution with 161 rolls", 160.95 relaxed.
#[test]
fn five_widths_out_of_rolls_of_94() {
    assert_eq!(boards(940, &[(170, 150), (210, 96), (225, 48), (240, 108), (295, 227)]), (161, true));
}

/// JuMP, "Column generation" (read): sixteen widths out of rolls of 100; its columns give 334 rolls, "this may not be the
/// global minimum".
#[test]
fn sixteen_widths_out_of_rolls_of_100() {
    let pieces = [
        (750, 38 + 44 + 30 + 41 + 36),
        (538, 33),
        (530, 36),
        (510, 41),
        (502, 35),
        (322, 37),
        (308, 44),
        (298, 49),
        (201, 37),
        (162, 36),
        (145, 42),
        (110, 33),
        (86, 47),
        (82, 35),
        (66, 49),
        (51, 42),
    ];
    assert_eq!(boards(1000, &pieces), (334, true));
}

/// The `cutting-stock` package, worked example (read): 34 of 3.4 m, 13 of 3 m and 5 of 2.7 m out of 12 m; "16 stocks of 12 m
/// each, 23.9 m waste".
#[test]
fn three_lengths_out_of_12_m() {
    let pieces = [(3400, 34), (3000, 13), (2700, 5)];
    assert_eq!(boards(12_000, &pieces), (16, true));
    let cut: i64 = pieces.iter().map(|(length, count)| length * count).sum();
    assert_eq!(16 * 12_000 - cut, 23_900);
}

/// Kantor, CBE 40455 Process Operations, "Stock Cutting" (read): 3 of 7 m, 2 of 6, 6 of 4 and 1 of 3 out of three lengths of
/// 15 m and three of 10 m; two of 15 m and three of 10 m are cut up without any remainder: 60 m.
#[test]
fn four_lengths_out_of_what_is_at_hand() {
    let plan = solve(&list(&[(15, Some(3)), (10, Some(3))], &[(7, 3), (6, 2), (4, 6), (3, 1)]));
    assert_eq!((plan.cost, plan.proved), (60, true));
}

/// A problem of the OR-Library.
struct Problem {
    name: String,
    board: i64,
    /// How many boards the best plan takes that was known.
    best: usize,
    pieces: Vec<(i64, i64)>,
}

fn problems() -> Vec<Problem> {
    let text = std::fs::read_to_string(lapwright_tests::fixtures().join("bin-packing/u120.txt")).unwrap();
    let number = |word: &str| word.parse::<i64>().unwrap();
    text.lines()
        .map(|line| {
            let (head, pieces) = line.split_once(':').unwrap();
            let head: Vec<&str> = head.split_whitespace().collect();
            let pieces: Vec<(i64, i64)> = pieces.split_whitespace().map(|piece| (number(piece), 1)).collect();
            assert_eq!(pieces.len(), 120);
            Problem { name: head[0].to_owned(), board: number(head[1]), best: head[2].parse().unwrap(), pieces }
        })
        .collect()
}

/// Beasley, OR-Library, binpack1 (Falkenauer's uniform class; read): 120 pieces of 20 to 100 out of 150, with the number of
/// boards in the best plan that was known. Of u120_08 the file has 51, for which 50 suffice.
#[test]
fn the_uniform_class_of_the_or_library() {
    let problems = problems();
    let solved = |Problem { name, board, best, pieces }: &Problem| {
        let (count, proved) = boards(*board, pieces);
        assert!(proved && count <= *best, "{name}: {count}, {best} known");
        count
    };
    let found: Vec<(&str, usize)> = problems.iter().map(|problem| (problem.name.as_str(), solved(problem))).collect();
    let printed = [
        ("u120_00", 48),
        ("u120_01", 49),
        ("u120_02", 46),
        ("u120_03", 49),
        ("u120_04", 50),
        ("u120_05", 48),
        ("u120_06", 48),
        ("u120_07", 49),
        ("u120_08", 50),
        ("u120_09", 46),
    ];
    assert_eq!(found, printed);
}
