//! A small book to do things to, and how often a fault is put in: a few times in the tests, in full where
//! `LAPWRIGHT_FAULTS=full` asks for it.

use std::path::Path;

use lapwright::store::{
    Accepted, Author, Change, Entry, Hash, Id, Now, Op, OpenOptions, Opened, SignOff, State, Store, StoreError, Value,
};

use crate::random::Random;

/// One of the two counts.
pub fn count(short: usize, full: usize) -> usize {
    if std::env::var("LAPWRIGHT_FAULTS").is_ok_and(|which| which == "full") { full } else { short }
}

/// What stands in the drafts of `store_steps`, with the moment behind it, and in nothing else.
pub const TYPED: &str = "typed and not accepted";

/// Says how many faults of a sort were put in, and what came of them.
#[allow(clippy::print_stdout, reason = "with `-- --nocapture` a run shows what came of its faults")]
pub fn tell(sort: &str, many: usize, came: &str) {
    println!("faults: {sort}: {many}: {came}");
}

/// A number below `end`.
pub fn below(random: &mut Random, end: usize) -> usize {
    random.between(0, end as i64 - 1) as usize
}

/// An answer of some changes.
pub fn op(changes: Vec<Change>) -> Op {
    Op { kind: "tick".to_owned(), version: 1, job: None, args: Vec::new(), changes }
}

/// Who answers.
pub fn author() -> Author {
    Author { signer: "Ada".to_owned(), program: "test".to_owned() }
}

/// A moment.
pub fn now(ms: i64) -> Now {
    Now { ms, utc_offset_minutes: 0 }
}

/// A thing by its number.
pub fn thing(number: u8) -> Id {
    Id::from_bytes([number; 16])
}

/// Makes a thing.
pub fn make(number: u8) -> Change {
    Change::Create { subject: thing(number), kind: "wall".to_owned(), parent: None, sort_key: String::new() }
}

/// Opens a book, with its copies in `copies` beside it.
///
/// # Errors
/// As [`Store::open`].
pub fn open(path: &Path) -> Result<Opened, StoreError> {
    Store::open(path, &options(path))
}

/// How the books of the checks are opened.
pub fn options(path: &Path) -> OpenOptions {
    let mut copies = path.as_os_str().to_owned();
    copies.push(".copies");
    OpenOptions { backups: Some(copies.into()) }
}

/// The answer of a moment: fields of a wall by turns, now and then a longer text, a sign-off, an undo.
///
/// # Errors
/// As [`Store::transact`].
pub fn answer(store: &mut Store, ms: i64) -> Result<Accepted, StoreError> {
    let subject = thing(1);
    let change = match ms {
        0 => make(1),
        _ if ms % 7 == 3 => {
            let text = format!("a note of {ms}, {}", "long ".repeat((ms % 1000) as usize));
            Change::Set { subject, field: "note".to_owned(), value: Value::Text(text) }
        }
        _ if ms % 5 == 2 => Change::SignOff(SignOff {
            subject,
            step: format!("step-{}", ms % 9),
            state: State::Done,
            signer: "Ada".to_owned(),
            note: String::new(),
            reason: String::new(),
            measured: None,
            photo: None,
            detail_hash: Hash::NONE,
        }),
        _ => Change::Set { subject, field: format!("f{}", ms % 9), value: Value::Whole(ms) },
    };
    let outcome = store.transact(&op(vec![change]), &author(), now(ms), &[])?;
    if ms % 11 == 10 {
        store.undo(outcome.group, &author(), now(ms), |_| None)?;
    }
    Ok(outcome)
}

/// The answers of the moments up to `end`.
///
/// # Errors
/// As [`Store::transact`].
pub fn fill(store: &mut Store, end: i64) -> Result<(), StoreError> {
    (0..end).try_for_each(|ms| answer(store, ms).map(|_| ()))
}

/// Every entry, by device and number.
///
/// # Errors
/// As [`Store::entries_since`].
pub fn entries(store: &Store) -> Result<Vec<Entry>, StoreError> {
    store.entries_since(&Default::default())
}
