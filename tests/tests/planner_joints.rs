//! Small walls with joints against the optima of solvers from the registries.
//!
//! `tests/peers/joints.json` holds a hundred walls and the least cost that OR-Tools CP-SAT proved for each,
//! `tests/peers/small_lists.json` pairs of walls that are hard for their size and the least cost that HiGHS proved over all
//! joints and all patterns, from models written apart from the planner; the programmes beside them make them and name their
//! commands. No number in them is the planner's.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a check stops at what it did not expect")]

use std::path::Path;

use lapwright::measure::Length;
use lapwright::saw::{CutList, JointFree, Planner, RunToCut, Stock, StudCenters};
use lapwright_tests::plan_check;
use serde_json::Value;

/// A length that the file gives in 32nds of an inch.
fn length(value: &Value) -> Length {
    Length::from_inches_64(0, 2 * value.as_i64().unwrap())
}

fn each<'a>(wall: &'a Value, field: &str) -> impl Iterator<Item = &'a Value> {
    wall[field].as_array().unwrap().iter()
}

fn list(wall: &Value) -> CutList {
    let mut list = CutList::new();
    list.runs = each(wall, "runs")
        .map(|run| RunToCut {
            wall: run["wall"].to_string(),
            course: run["course"].as_i64().unwrap(),
            from: length(&run["from"]),
            to: length(&run["to"]),
        })
        .collect();
    list.studs = Some(match &wall["studs"] {
        Value::Array(studs) => StudCenters::Listed(studs.iter().map(length).collect()),
        studs => StudCenters::Spaced { first: length(&studs["first"]), spacing: length(&studs["spacing"]) },
    });
    list.stock = each(wall, "stock")
        .map(|stock| Stock {
            length: length(&stock["length"]),
            cost: stock["cost"].as_u64().unwrap(),
            count: stock["count"].as_u64().map(|count| u32::try_from(count).unwrap()),
        })
        .collect();
    list.offcuts = each(wall, "offcuts").map(length).collect();
    list.avoid = each(wall, "avoid")
        .map(|zone| JointFree {
            wall: None,
            from: length(&zone["from"]),
            to: length(&zone["to"]),
            courses: Some(each(zone, "courses").map(|course| course.as_i64().unwrap()).collect()),
        })
        .collect();
    list.kerf = length(&wall["kerf"]);
    list.end_gap = length(&wall["end_gap"]);
    list.joint_gap = length(&wall["joint_gap"]);
    list.stagger = length(&wall["stagger"]);
    list.piece_min = length(&wall["piece_min"]);
    list.extra_joints = u32::try_from(wall["extra_joints"].as_u64().unwrap()).unwrap();
    list
}

/// What came of the walls of a file.
#[derive(Debug, Default)]
struct Found {
    walls: usize,
    jointed: usize,
    proved: usize,
    wrong: Vec<String>,
}

/// Plans every wall of a file in so many steps.
fn plan_all(file: &str, solver: &str, steps: u64) -> Found {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("peers").join(file);
    let file: Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    assert!(file["solver"].as_str().unwrap().starts_with(solver));
    let mut found = Found::default();
    for wall in each(&file, "walls") {
        let (name, list) = (wall["name"].as_str().unwrap(), list(wall));
        let least = wall["least"]["cost"].as_u64().unwrap();
        let over = wall["least"]["runs_with_one_more"].as_u64().unwrap() > 0;
        found.walls += 1;
        let mut planner = match Planner::new(&list) {
            Ok(planner) => planner,
            Err(error) => {
                found.wrong.push(format!("{name}: {error}, the least is {least}"));
                continue;
            }
        };
        planner.step(steps);
        let plan = planner.plan();
        assert_eq!(plan_check::faults(&list, &plan, over), Vec::<String>::new(), "{name}");
        // Nobody finds less than the least, no bound lies above it, and what we call proved is it.
        if plan.cost < least || plan.bound > least || plan.cost != least {
            found.wrong.push(format!("{name}: {} with the bound {}, the least is {least}", plan.cost, plan.bound));
        }
        found.jointed += usize::from(plan.pieces.len() > list.runs.len());
        found.proved += usize::from(plan.proved);
    }
    found
}

#[test]
fn a_hundred_walls_cost_what_the_solver_proved() {
    let found = plan_all("joints.json", "OR-Tools CP-SAT ", 300);
    assert_eq!(found.wrong, Vec::<String>::new());
    assert_eq!((found.walls, found.jointed), (100, 100));
    assert!(found.proved >= 80, "{}", found.proved);
}

/// Lists on which a search over boards alone stays a board too dear or a unit too low: joints and cuts are searched together.
#[test]
fn small_houses_are_planned_to_their_optimum_and_proved() {
    let found = plan_all("small_lists.json", "HiGHS ", 300);
    assert_eq!(found.wrong, Vec::<String>::new());
    assert_eq!(found.proved, found.walls);
    assert!(found.walls >= 30 && found.jointed * 10 >= found.walls * 9);
}
