//! Keeps writing answers into the book it is given and prints each group once it is acknowledged, until it is killed.

use std::io::Write as _;

use lapwright::store::{Author, Change, Id, Now, Op, OpenOptions, Store, Value};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let path = std::env::args_os().nth(1).ok_or("name a book")?;
    let mut store = Store::open(path, &OpenOptions::default())?.store;
    let author = Author { signer: "Ada".to_owned(), program: "test".to_owned() };
    let subject = store.device().0;
    let mut out = std::io::stdout().lock();
    for ms in 0..i64::MAX {
        let change = match store.subject(subject)? {
            None => Change::Create { subject, kind: "wall".to_owned(), parent: None, sort_key: String::new() },
            Some(_) => Change::Set { subject, field: format!("f{}", ms % 7), value: Value::Whole(ms) },
        };
        let job: Option<Id> = None;
        let op = Op { kind: "tick".to_owned(), version: 1, job, args: Vec::new(), changes: vec![change] };
        let outcome = store.transact(&op, &author, Now { ms, utc_offset_minutes: 0 }, &[])?;
        writeln!(out, "{}", outcome.group)?;
        out.flush()?;
    }
    Ok(())
}
