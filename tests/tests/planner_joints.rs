//! A hundred small walls with joints against the optimum of a solver from the registries.
//!
//! `tests/peers/joints.json` holds the walls and the least cost that OR-Tools CP-SAT proved for each, from a model written
//! apart from the planner; `tests/peers/joints.py` makes it and names its command. No number in it is the planner's.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a check stops at what it did not expect")]

use std::path::Path;

use lapwright::measure::Length;
use lapwright::saw::{Avoid, CutList, Planner, Run, Stock, Studs};
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
        .map(|run| Run {
            wall: run["wall"].to_string(),
            course: run["course"].as_i64().unwrap(),
            from: length(&run["from"]),
            to: length(&run["to"]),
        })
        .collect();
    let studs = &wall["studs"];
    list.studs = Some(Studs::Spaced { first: length(&studs["first"]), spacing: length(&studs["spacing"]) });
    list.stock = each(wall, "stock")
        .map(|stock| Stock {
            length: length(&stock["length"]),
            cost: stock["cost"].as_u64().unwrap(),
            count: stock["count"].as_u64().map(|count| u32::try_from(count).unwrap()),
        })
        .collect();
    list.offcuts = each(wall, "offcuts").map(length).collect();
    list.avoid = each(wall, "avoid")
        .map(|zone| Avoid {
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

#[test]
fn a_hundred_walls_cost_what_the_solver_proved() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("peers/joints.json");
    let file: Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    assert!(file["solver"].as_str().unwrap().starts_with("OR-Tools CP-SAT "));
    let (mut walls, mut jointed, mut proved, mut forced, mut wrong) = (0, 0, 0, 0, Vec::new());
    for wall in each(&file, "walls") {
        let (name, list) = (wall["name"].as_str().unwrap(), list(wall));
        let least = wall["least"]["cost"].as_u64().unwrap();
        let over = wall["least"]["runs_with_one_more"].as_u64().unwrap() > 0;
        walls += 1;
        let mut planner = match Planner::new(&list) {
            Ok(planner) => planner,
            Err(error) => {
                wrong.push(format!("{name}: {error}, the least is {least}"));
                continue;
            }
        };
        planner.step(300);
        let plan = planner.plan();
        assert_eq!(plan_check::faults(&list, &plan, over), Vec::<String>::new(), "{name}");
        // Nobody finds less than the least, no bound lies above it, and what we call proved is it.
        if plan.cost < least || plan.bound > least || plan.cost != least {
            wrong.push(format!("{name}: {} with the bound {}, the least is {least}", plan.cost, plan.bound));
        }
        jointed += i32::from(plan.pieces.len() > list.runs.len());
        proved += i32::from(plan.proved);
        forced += i32::from(over);
    }
    println!("{walls} walls, {jointed} with joints, {proved} proved by ourselves, {forced} with a joint too many");
    assert_eq!(wrong, Vec::<String>::new());
    assert_eq!((walls, jointed), (100, 100));
    assert!(proved >= 80, "{proved}");
}
