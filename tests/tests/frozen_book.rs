//! A book that the first program made, with what that program showed of it: whatever was signed there still holds.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use lapwright::book::{Book, Kind};
use lapwright::screens::view;
use lapwright::store::{Id, OpenOptions, Signed, State, Value};
use lapwright::views::{Context, Place, StepLine, StepState, View};
use rusqlite::Connection;

/// What the first program showed of a board or a penetration.
#[derive(serde::Deserialize)]
struct Shown {
    place: String,
    #[serde(default)]
    state: Option<String>,
    #[serde(default)]
    length: Option<i64>,
    #[serde(default)]
    differs_from_cut: bool,
    #[serde(default)]
    gaps_known: Option<u32>,
    steps: Vec<Step>,
}

/// Code, state, whether the thing had changed since, who, what was measured, the photo.
type Step = (String, String, bool, String, Option<i64>, Option<String>);

fn fixture(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../fixtures/book").join(name)
}

/// The book as it lay on the first program's disk: its tables made anew from its log.
fn book(folder: &Path) -> Book {
    let path = folder.join("book.lapwright");
    let old = Connection::open(&path).unwrap();
    old.execute_batch(&fs::read_to_string(fixture("schema-1.sql")).unwrap()).unwrap();
    old.execute_batch("PRAGMA user_version = 1; DELETE FROM book; BEGIN;").unwrap();
    old.execute_batch(&fs::read_to_string(fixture("demo-1.sql")).unwrap()).unwrap();
    old.execute_batch("COMMIT;").unwrap();
    drop(old);
    let photos = folder.join("book.lapwright.photos");
    fs::create_dir_all(&photos).unwrap();
    let photo = shown().values().flat_map(|shown| shown.steps.clone()).find_map(|step| step.5).unwrap();
    fs::copy(fixture("demo-1.jpg"), photos.join(format!("{photo}.jpg"))).unwrap();
    let (mut book, _) = Book::open(&path, &OpenOptions::default()).unwrap();
    book.store_mut().rebuild().unwrap();
    book
}

fn shown() -> BTreeMap<String, Shown> {
    serde_json::from_str(&fs::read_to_string(fixture("demo-1.json")).unwrap()).unwrap()
}

fn context(signer: &str) -> Context {
    Context {
        now_ms: 1_796_400_000_000,
        utc_offset_minutes: 0,
        signer: signer.to_owned(),
        language: "en".to_owned(),
        show: "in/16".to_owned(),
        division: "1/16\"".to_owned(),
        entropy: vec![0; 16],
    }
}

fn steps(book: &Book, signer: &str, id: &str, place: &str) -> (Vec<StepLine>, Option<lapwright::views::BoardView>) {
    let place = match place {
        "board" => Place::Board { board: id.to_owned() },
        _ => Place::Penetration { penetration: id.to_owned() },
    };
    match view(book, &context(signer), &place).unwrap() {
        View::BoardKind { view } => (view.steps.clone(), Some(view)),
        View::PenetrationKind { view } => (view.steps, None),
        other => panic!("{other:?}"),
    }
}

/// The last sign-off on a step, as the book has it, whatever a later step list makes of it.
fn last(book: &Book, id: Id, step: &str) -> Signed {
    let kind = book.house_of(id).unwrap().unwrap();
    let last = kind.signed(id).rfind(|signed| signed.sign_off.step == step);
    last.unwrap_or_else(|| panic!("{id}: {step} is gone")).clone()
}

#[test]
fn what_was_signed_with_the_first_program_still_holds() {
    let folder = tempfile::tempdir().unwrap();
    let book = book(folder.path());
    let mut checked = 0;
    for (id, was) in shown() {
        for signer in ["Ana", "Ben", "Cal"] {
            let (now, board) = steps(&book, signer, &id, &was.place);
            for (code, state, differs, who, measured, photo) in &was.steps {
                let signed = last(&book, id.parse().unwrap(), code);
                let said = if state == "done" { State::Done } else { State::Skipped };
                assert_eq!((&signed.sign_off.state, &signed.sign_off.signer), (&said, who), "{id} {code}");
                let nm = match &signed.sign_off.measured {
                    Some(Value::Length { length, .. }) => Some(length.nm()),
                    _ => None,
                };
                assert_eq!(
                    (nm, signed.sign_off.photo.map(|id| id.to_string())),
                    (*measured, photo.clone()),
                    "{id} {code}"
                );
                let Some(line) = now.iter().find(|line| line.code == *code) else { continue };
                assert_ne!(line.state, StepState::Open, "{id} {code}");
                assert_eq!(line.differs, *differs, "{id} {code} as {signer} sees it");
                checked += 1;
            }
            if let Some(board) = board {
                assert_eq!(Some(&board.state), was.state.as_ref(), "{id}");
                assert_eq!(board.length.as_ref().map(|length| length.nm), was.length, "{id}");
                let differs = board.notes.iter().any(|note| note.code == "differs-from-cut");
                assert_eq!(differs, was.differs_from_cut, "{id} as {signer} sees it");
                if signer == "Ana" {
                    assert_eq!(Some(board.gaps_known), was.gaps_known, "{id}");
                }
            }
        }
    }
    assert!(checked > 200, "{checked}");
}

#[test]
fn answers_that_were_taken_back_stay_so_and_the_photo_is_there() {
    let folder = tempfile::tempdir().unwrap();
    let book = book(folder.path());
    let [job] = &book.jobs().unwrap()[..] else { panic!("one house") };
    let house = book.house(Some(job.record.id())).unwrap();
    assert_eq!(house.own(Kind::Rule).len(), 0, "the rule that was changed and taken back");
    assert_ne!(house.job().unwrap().yes(lapwright::book::Field::OldHouse), Some(true));
    let photo = shown().values().flat_map(|shown| shown.steps.clone()).find_map(|step| step.5).unwrap();
    let (state, file) = book.photo(photo.parse().unwrap()).unwrap().unwrap();
    assert_eq!(state, lapwright::store::PhotoState::Here);
    assert_eq!(fs::read(file).unwrap(), fs::read(fixture("demo-1.jpg")).unwrap());
}
