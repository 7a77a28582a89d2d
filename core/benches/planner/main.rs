//! How soon, how good and how well proved cutting plans are, on generated cut lists: `cargo bench --bench planner`.
//!
//! A word on the command line picks the families whose names hold it, or, with `--exact`, are it; `--each` prints every
//! list, `--seconds N` gives each so long, `--lists N` makes no more of a family, `--lines` prints one JSON object for each
//! list without joints, for the comparison with peers.
#![allow(
    clippy::print_stdout,
    clippy::indexing_slicing,
    clippy::expect_used,
    missing_docs,
    reason = "a bench prints what it measures"
)]

mod demo;
mod families;

use std::collections::BTreeMap;
use std::sync::LazyLock;
use std::time::{Duration, Instant};

use families::{Family, Random};
use lapwright::saw::{CutList, Planner};

/// What one list gave. Times are in milliseconds.
struct Outcome {
    first: f64,
    total: f64,
    proved: bool,
    cost: u64,
    bound: u64,
    /// How far the plan after one second is from the bound at the end, in percent.
    second: f64,
    steps: u64,
}

/// The time that this thread has had a processor, where the system tells: others on the machine do not count. Else the
/// time of day.
fn clock() -> Duration {
    static START: LazyLock<Instant> = LazyLock::new(Instant::now);
    let schedule = std::fs::read_to_string("/proc/thread-self/schedstat").ok();
    let spent = schedule.and_then(|line| line.split(' ').next()?.parse().ok());
    spent.map_or_else(|| START.elapsed(), Duration::from_nanos)
}

fn percent(cost: u64, bound: u64) -> f64 {
    cost.saturating_sub(bound) as f64 / bound.max(1) as f64 * 100.0
}

fn measure(list: &CutList, limit: Duration) -> Result<Outcome, String> {
    let (now, start) = (Instant::now(), clock());
    let mut planner = Planner::new(list).map_err(|error| error.to_string())?;
    // The system's count of a thread's time is too coarse for this.
    let first = now.elapsed().as_secs_f64() * 1e3;
    let mut progress = planner.step(0);
    let (mut steps, mut second) = (0, progress.cost);
    while !progress.done && (clock() - start) < limit {
        progress = planner.step(2);
        steps += 2;
        if (clock() - start) < Duration::from_secs(1) {
            second = progress.cost;
        }
    }
    let total = (clock() - start).as_secs_f64() * 1e3;
    let plan = planner.plan();
    let (cost, bound) = (plan.cost, plan.bound);
    Ok(Outcome { first, total, proved: plan.proved, cost, bound, second: percent(second, bound), steps })
}

/// The most memory that this process has used since the last call, in MiB, where the system tells.
fn peak() -> f64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    let kib = line.and_then(|line| line.trim().split(' ').next()?.parse::<f64>().ok());
    let _ = std::fs::write("/proc/self/clear_refs", "5");
    kib.map_or(f64::NAN, |kib| kib / 1024.0)
}

fn family(family: &Family, limit: Duration, each: bool) {
    let _ = peak();
    let mut outcomes = Vec::new();
    for number in 1..=family.repeats {
        let list = (family.make)(&mut Random::new(number));
        match measure(&list, limit) {
            Ok(outcome) => {
                if each {
                    println!(
                        "  #{number}: {} runs, cost {:.4}, bound {:.4}, {:+.4} %, {}, first {:.1} ms, {:.1} ms, {} steps",
                        list.runs.len(),
                        outcome.cost as f64 / 1e9,
                        outcome.bound as f64 / 1e9,
                        percent(outcome.cost, outcome.bound),
                        if outcome.proved { "proved" } else { "open" },
                        outcome.first,
                        outcome.total,
                        outcome.steps,
                    );
                }
                outcomes.push(outcome);
            }
            Err(error) => println!("  #{number}: {error}"),
        }
    }
    let within = |limit: f64| outcomes.iter().filter(|outcome| outcome.proved && outcome.total <= limit).count();
    let mut times: Vec<f64> = outcomes.iter().map(|outcome| outcome.total).collect();
    times.sort_by(f64::total_cmp);
    let most = |of: &dyn Fn(&Outcome) -> f64| outcomes.iter().map(of).fold(0.0, f64::max);
    println!(
        "{:<24} {:>3} {:>8.1} {:>5} {:>5} {:>5} {:>9.1} {:>9.1} {:>8.4} {:>8.4} {:>7.1}",
        family.name,
        outcomes.len(),
        most(&|outcome| outcome.first),
        within(100.0),
        within(1_000.0),
        within(5_000.0),
        times.get(times.len() / 2).copied().unwrap_or(f64::NAN),
        times.last().copied().unwrap_or(f64::NAN),
        most(&|outcome| outcome.second),
        most(&|outcome| percent(outcome.cost, outcome.bound)),
        peak(),
    );
}

/// One list and what came of it, in nanometres and billionths.
fn line(name: &str, list: &CutList, outcome: &Outcome) -> String {
    let mut counts: BTreeMap<i64, usize> = BTreeMap::new();
    for run in &list.runs {
        *counts.entry((run.to - run.from).nm()).or_default() += 1;
    }
    let pieces: Vec<String> = counts.iter().map(|(length, count)| format!("[{length},{count}]")).collect();
    let stock: Vec<String> = list.stock.iter().map(|board| format!("[{},{}]", board.length.nm(), board.cost)).collect();
    format!(
        "{{\"name\":\"{name}\",\"kerf\":{},\"stock\":[{}],\"pieces\":[{}],\"first\":{},\"milliseconds\":{},\"cost\":{},\"bound\":{}}}",
        list.kerf.nm(),
        stock.join(","),
        pieces.join(","),
        outcome.first,
        outcome.total,
        outcome.cost,
        outcome.bound,
    )
}

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let after = |flag: &str| words.iter().position(|word| word == flag).and_then(|at| words.get(at + 1));
    let has = |flag: &str| words.iter().any(|word| word == flag);
    let limit = Duration::from_secs_f64(after("--seconds").and_then(|word| word.parse().ok()).unwrap_or(5.0));
    let most = after("--lists").and_then(|word| word.parse().ok()).unwrap_or(u64::MAX);
    let only: Vec<&String> =
        words.iter().filter(|word| !word.starts_with('-') && word.parse::<f64>().is_err()).collect();
    let picked = families::all()
        .into_iter()
        .filter(|family| {
            let wanted =
                |word: &&String| if has("--exact") { family.name == **word } else { family.name.contains(*word) };
            only.is_empty() || only.iter().any(wanted)
        })
        .map(|family| Family { repeats: family.repeats.min(most), ..family });
    if has("--lines") {
        for family in picked {
            for number in 1..=family.repeats {
                let list = (family.make)(&mut Random::new(number));
                if list.joints {
                    continue;
                }
                if let Ok(outcome) = measure(&list, limit) {
                    println!("{}", line(&format!("{}#{number}", family.name), &list, &outcome));
                }
            }
        }
        return;
    }
    if only.is_empty() || only.iter().any(|word| "demo".contains(word.as_str())) {
        demo::run();
    }
    println!(
        "times in ms; proved within 0.1, 1 and 5 s; gaps in % of the bound after 1 s and at the end; memory in MiB"
    );
    println!(
        "{:<24} {:>3} {:>8} {:>5} {:>5} {:>5} {:>9} {:>9} {:>8} {:>8} {:>7}",
        "family", "n", "first", "0.1 s", "1 s", "5 s", "median", "worst", "gap 1 s", "gap", "peak"
    );
    for one in picked {
        family(&one, limit, has("--each"));
    }
}
