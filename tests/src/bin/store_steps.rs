//! What an app does in a day, on the book that it is given: opens it, answers, takes back, keeps copies, hands a file on,
//! checks. Prints each group once it is acknowledged, and what the draft may be and is. What fails is said and the next thing is tried, as a person would.
//! With a number behind the book it is a day of its own: so many of these things in any order.

use std::io::Write as _;
use std::path::{Path, PathBuf};

use lapwright::store::{Entry, Id, Overwrite, Store, StoreError, write_file};
use lapwright_tests::book::{TYPED, answer, author, entries, now, open, options};
use lapwright_tests::random::Random;

#[derive(Clone, Copy)]
enum Step {
    Answer,
    /// Three answers of one tap.
    Several,
    /// The last answer is taken back.
    Undo,
    Draft,
    Forget,
    Backup,
    KeepBackup,
    CopyOut,
    Pack,
    File,
    Check,
}

use Step::{Answer, Backup, Check, CopyOut, Draft, File, Forget, KeepBackup, Pack, Several, Undo};

/// The day of whom no number was given to.
const PLAIN: [Step; 10] = [Answer, Answer, Answer, Backup, Draft, Answer, CopyOut, File, Check, Answer];
/// Answers are what a day is made of.
const ANY: [Step; 14] =
    [Answer, Answer, Answer, Answer, Several, Undo, Draft, Forget, Backup, KeepBackup, CopyOut, Pack, File, Check];

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut args = std::env::args_os().skip(1);
    let path: PathBuf = args.next().ok_or("name a book")?.into();
    let seed: Option<u64> = args.next().and_then(|seed| seed.to_str()?.parse().ok());
    let mut store = match open(&path) {
        Ok(opened) => {
            eprintln!("opened: {:?}", opened.opening);
            opened.store
        }
        Err(error) => {
            eprintln!("open: {error}");
            std::process::exit(1);
        }
    };
    let from = entries(&store)?.len() as i64 * 100;
    let mut failed = 0;
    if from == 0 {
        failed += usize::from(step(&mut store, &path, Answer, 0).is_err());
    }
    let steps: Vec<Step> = match seed {
        None => PLAIN.to_vec(),
        Some(seed) => {
            let mut random = Random::new(seed);
            (0..12).map(|_| *random.of(&ANY.each_ref())).collect()
        }
    };
    for (ms, what) in (from + 1..).zip(steps) {
        if let Err(error) = step(&mut store, &path, what, ms) {
            eprintln!("{error}");
            failed += 1;
        }
    }
    drop(store);
    std::process::exit(i32::from(failed > 0));
}

fn step(store: &mut Store, path: &Path, step: Step, ms: i64) -> Result<(), StoreError> {
    let copies = options(path).backups.unwrap_or_default();
    let today = now(ms + 1_780_000_000_000);
    match step {
        Answer => acknowledge(answer(store, ms)?.group),
        Several => {
            store.begin_together();
            let all = (0..3).map(|n| answer(store, ms * 1000 + n)).collect::<Result<Vec<_>, _>>();
            store.end_together(all.is_ok())?;
            all?.into_iter().for_each(|accepted| acknowledge(accepted.group));
        }
        Undo => {
            // Without the thing itself nothing more could be said of it.
            let of_day = |entry: &&Entry| entry.undoes.is_none() && !entry.payload.contains("create");
            if let Some(last) = entries(store)?.iter().rev().find(of_day) {
                // What is undone already is told as such, and nothing changes.
                let text = format!("{TYPED} again {ms}");
                say(&format!("tries {text}"));
                match store.undo(last.group(), &author(), now(ms), |_| Some(("key".to_owned(), text.clone()))) {
                    Ok(undone) => {
                        acknowledge(undone.outcome.group);
                        if !undone.reopened.is_empty() {
                            say(&format!("has {text}"));
                        }
                    }
                    Err(StoreError::CannotUndo(_)) => {}
                    Err(error) => return Err(error),
                }
            }
        }
        Draft => {
            let text = format!("{TYPED} {ms}");
            say(&format!("tries {text}"));
            store.draft_put("key", &text)?;
            say(&format!("has {text}"));
        }
        Forget => {
            say("tries");
            store.draft_clear("key")?;
            say("has");
        }
        Backup => drop(store.backup(copies, today)?),
        KeepBackup => drop(store.keep_backup(copies, today)?),
        CopyOut => store.copy(beside(path, "copy"))?,
        Pack => store.pack(beside(path, "by-hand.zip"), Overwrite::PlainFiles, today).map(|_| ())?,
        File => write_file(beside(path, "house.json"), &[b'x'; 9_000], Overwrite::PlainFiles)?,
        Check => {
            let report = store.check()?;
            if !report.is_good() {
                return Err(StoreError::Damaged(format!("{report:?}")));
            }
        }
    }
    Ok(())
}

fn acknowledge(group: Id) {
    say(&group.to_string());
}

fn say(line: &str) {
    let mut out = std::io::stdout().lock();
    let _ = writeln!(out, "{line}").and_then(|()| out.flush());
}

fn beside(path: &Path, name: &str) -> PathBuf {
    path.with_file_name(name)
}
