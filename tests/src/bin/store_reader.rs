//! Opens a book, counts its answers, and says whether it may only be read: then an answer must be refused.

use lapwright::store::StoreError;
use lapwright_tests::book::{answer, entries, open};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let path = std::env::args_os().nth(1).ok_or("name a book")?;
    let mut store = open(path.as_ref())?.store;
    let count = entries(&store)?.len();
    let read_only = store.is_read_only();
    let refused = matches!(answer(&mut store, 1_000), Err(StoreError::ReadOnly));
    if read_only != refused {
        return Err("an answer must be refused where the book may only be read".into());
    }
    println!("{count} {}", if read_only { "read-only" } else { "writable" });
    Ok(())
}
