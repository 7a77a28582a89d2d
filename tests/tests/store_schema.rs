//! A book of the frozen first schema, made without the store, opens and then has the tables of a new book.

use std::path::Path;

use lapwright::store::{Author, BookOpening, Change, Id, Now, Op, OpenOptions, SCHEMA, Store, StoreError};
use rusqlite::Connection;

const FIRST: &str = include_str!("../../fixtures/book/schema-1.sql");

fn first_book(path: &Path) -> Connection {
    let conn = Connection::open(path).unwrap();
    conn.execute_batch(FIRST).unwrap();
    conn.pragma_update(None, "user_version", 1).unwrap();
    conn
}

fn tables(path: &Path) -> Vec<(String, String, Option<String>)> {
    let conn = Connection::open(path).unwrap();
    let mut statement = conn.prepare("SELECT type, name, sql FROM sqlite_schema ORDER BY type, name").unwrap();
    statement.query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?))).unwrap().map(Result::unwrap).collect()
}

#[test]
fn a_book_of_the_first_schema_gets_the_tables_of_a_new_one() {
    let folder = tempfile::tempdir().unwrap();
    let (old, new) = (folder.path().join("old"), folder.path().join("new"));
    let conn = first_book(&old);
    conn.execute("INSERT INTO draft VALUES ('width', '11 1/2')", []).unwrap();
    let book: Id = conn.query_row("SELECT id FROM book", [], |row| row.get(0)).unwrap();
    drop(conn);

    let opened = Store::open(&old, &OpenOptions::default()).unwrap();
    let expected = if SCHEMA == 1 { BookOpening::Existing } else { BookOpening::Upgraded { from: 1 } };
    assert_eq!(opened.opening, expected);
    let mut store = opened.store;
    assert_eq!(store.book(), book);
    assert_eq!(store.draft_get("width").unwrap().as_deref(), Some("11 1/2"));
    let subject = Id::from_bytes([1; 16]);
    let make = Change::Create { subject, kind: "wall".to_owned(), parent: None, sort_key: String::new() };
    let op = Op { kind: "wall".to_owned(), version: 1, job: None, args: Vec::new(), changes: vec![make] };
    let author = Author { signer: "Ada".to_owned(), program: "test".to_owned() };
    store.transact(&op, &author, Now { ms: 0, utc_offset_minutes: 0 }, &["width"]).unwrap();
    assert_eq!(store.draft_get("width").unwrap(), None);
    assert!(store.check().unwrap().is_good());
    drop(store);

    drop(Store::open(&new, &OpenOptions::default()).unwrap());
    assert_eq!(tables(&old), tables(&new));
    let version: i64 = Connection::open(&old).unwrap().query_row("PRAGMA user_version", [], |row| row.get(0)).unwrap();
    assert_eq!(version, SCHEMA);
}

#[test]
fn a_newer_book_is_read_only_where_it_allows_it() {
    let folder = tempfile::tempdir().unwrap();
    for (least_reader, opens) in [(SCHEMA, true), (SCHEMA + 1, false)] {
        let path = folder.path().join(least_reader.to_string());
        let conn = first_book(&path);
        conn.execute("UPDATE book SET least_reader = ?1", [least_reader]).unwrap();
        conn.pragma_update(None, "user_version", SCHEMA + 1).unwrap();
        drop(conn);
        let before = std::fs::read(&path).unwrap();
        match Store::open(&path, &OpenOptions::default()) {
            Ok(opened) => assert!(opens && opened.opening == BookOpening::Existing),
            Err(StoreError::NewerBook { needs, reads }) => {
                assert!(!opens && (needs, reads) == (SCHEMA + 1, SCHEMA));
                assert_eq!(std::fs::read(&path).unwrap(), before);
            }
            Err(error) => panic!("{error}"),
        }
    }
}
