//! The house planned as one: a plan on a snapshot, accepted once, refused when the book has moved on.

use crate::screens::context::Terms;
use crate::screens::kept::{Facts, Job, Wall};
use crate::screens::{HousePlanner, act, kinds};
use crate::store::{Id, Store};
use crate::views::{Action, HouseAction, View};

use super::{context, demo_laid_out as house};

fn boards(store: &Store, job: &str) -> Vec<Facts> {
    let job: Id = job.parse().unwrap();
    let walls = Wall::of_job(store, job).unwrap();
    walls.iter().flat_map(|wall| Facts::children(store, wall.id(), kinds::BOARD).unwrap()).collect()
}

#[test]
fn the_demo_house_is_planned_and_kept_in_one_answer() {
    let (mut store, job) = house();
    let mut planner = HousePlanner::of(&store, &context("en", 3), &job).unwrap();
    let mut progress = planner.step(&context("en", 3), 0).unwrap();
    for _ in 0..10 {
        if progress.done {
            break;
        }
        progress = planner.step(&context("en", 3), 20).unwrap();
    }
    // Within one board of the best possible.
    let (used, least) = (progress.used.nm, progress.least.nm);
    assert!(least <= used && used - least <= 144 * 25_400_000, "{}", progress.text);
    assert_eq!(progress.proved, used == least);
    let outcome = planner.accept(&mut store, &context("en", 4)).unwrap();
    let View::HouseKind { .. } = outcome.view else { panic!("the house") };
    let boards = boards(&store, &job);
    assert_eq!(boards.len(), planner.plan().pieces.len());
    // What is cut from one board fits it, kerfs included.
    let context = context("en", 5);
    let terms = Terms::read(&context).unwrap();
    let rules = Job::of(&store, &terms, job.parse().unwrap()).unwrap().rules;
    let kerf = rules.get_length(crate::rules::keys::SAW_KERF).unwrap();
    let mut used = std::collections::BTreeMap::new();
    for board in &boards {
        let slot = used.entry(board.whole("cut-from").unwrap()).or_insert((board.length("stock").unwrap(), -kerf.nm()));
        slot.1 += board.length("length").unwrap().nm() + kerf.nm();
    }
    assert_eq!(used.len(), progress.boards as usize);
    assert!(used.values().all(|(stock, cut)| *cut <= stock.nm()));
    let total: i64 = used.values().map(|(stock, _)| stock.nm()).sum();
    assert_eq!(total, progress.used.nm);
}

#[test]
fn a_plan_is_refused_when_the_book_has_moved_on() {
    let (mut store, job) = house();
    let planner = HousePlanner::of(&store, &context("en", 3), &job).unwrap();
    let add = HouseAction::AddStock { job: job.clone(), length: "20'".to_owned(), count: String::new() };
    act(&mut store, &context("en", 4), &Action::HouseKind { action: add }).unwrap();
    let refused = planner.accept(&mut store, &context("en", 5)).unwrap_err();
    assert_eq!((refused.code.as_str(), boards(&store, &job).len()), ("first", 0));
    let planner = HousePlanner::of(&store, &context("en", 6), &job).unwrap();
    planner.accept(&mut store, &context("en", 7)).unwrap();
    // Accepted again it would plan what is planned already: the boards that it would replace are gone.
    assert_eq!(planner.accept(&mut store, &context("en", 8)).unwrap_err().code, "first");
}
