use super::*;
use crate::book::{BoardState, Field, Kind, Operation, OperationKind, Setting, fields_of};
use crate::forms::ask::{accept, fields};
use crate::forms::signing::{DetailHashes, Signing, sign};
use crate::measure::Length;
use crate::store::{Hash, Value};

fn house_view(book: &Book, language: &str, job: &str) -> HouseView {
    shown(book, language, Place::House { job: job.to_owned() })
}

fn next(book: &Book, job: &str) -> NextWork {
    house_view(book, "en", job).next
}

fn answer(book: &mut Book, job: &str, field: &str, text: &str) -> Result<Outcome, Problem> {
    tap(book, 2, HouseAction::Answer { job: job.to_owned(), field: field.to_owned(), text: text.to_owned() })
}

/// Writes a thing under a parent as its screen would, with its questions answered.
fn thing(book: &mut Book, n: u8, kind: Kind, (parent, job): (&str, &str), given: &[(&str, &str)]) -> Id {
    in_language(&context("en", n), |terms| {
        let id = terms.fresh(0);
        let given = fields(terms, fields_of(kind), &given.iter().copied().collect())?;
        let operation = Operation::new(OperationKind::PartAdded, Some(job.parse().unwrap()), [])
            .create(id, kind, Some(parent.parse().unwrap()), format!("{n:03}"))
            .set_all(id, given);
        accept(book, terms, operation, &[])?;
        Ok(id)
    })
    .unwrap()
}

fn write(book: &mut Book, operation: Operation) {
    in_language(&context("en", 9), |terms| accept(book, terms, operation, &[])).unwrap();
}

/// A planned board from end to end of the wall, as its plan would have it.
fn board(book: &mut Book, n: u8, (wall, job): (&str, &str), course: i64) -> Id {
    let id = Id::from_bytes([n; 16]);
    let inches = |inches: i64, eighths: i64| Value::Length {
        length: Length::from_inches_64(inches, 8 * eighths),
        typed: String::new(),
        unit: "in".to_owned(),
    };
    let operation = Operation::new(OperationKind::BoardsPlanned, Some(job.parse().unwrap()), [])
        .create(id, Kind::Board, Some(wall.parse().unwrap()), format!("{n:03}"))
        .set(id, Field::Course, Value::Whole(course))
        .set(id, Field::From, inches(0, 1))
        .set(id, Field::To, inches(143, 7))
        .set(id, Field::Length, inches(143, 6))
        .set(id, Field::Bottom, inches(7 * (course - 1), 0))
        .set(id, Field::Height, inches(8, 2))
        .set(id, Field::State, Value::Text("planned".to_owned()));
    write(book, operation);
    id
}

fn stand(book: &mut Book, board: Id, state: BoardState) {
    let state = Value::Text(state.code().to_owned());
    write(book, Operation::new(OperationKind::SawCut, None, []).set(board, Field::State, state));
}

fn tick(book: &mut Book, job: &str, subject: &str, step: &str, steps: &[crate::steps::Step]) {
    let said = StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None };
    let work = lookup::work(book, Some(job.parse().unwrap())).unwrap();
    let detail = DetailHashes { hash: Hash::NONE, earlier: Vec::new() };
    let on = Signing { work: &work, subject: subject.parse().unwrap(), about: "", steps, detail };
    in_language(&context("en", 8), |terms| sign(book, terms, &on, step, &said)).unwrap();
}

/// Does what comes next as long as it is a detail of the wall; gives what was done.
fn details_done(book: &mut Book, job: &str) -> Vec<String> {
    let mut done = Vec::new();
    while let NextWork::MakeTight { penetration, step: code, .. } = next(book, job) {
        let Some((subject, place)) = penetration.split_once('/') else { break };
        let work = lookup::work(book, Some(job.parse().unwrap())).unwrap();
        let details = work.walls()[0].details(&work).unwrap();
        let detail = details.iter().find(|detail| detail.place().code() == place).unwrap();
        tick(book, job, subject, &code, &detail.steps.steps());
        done.push(code);
    }
    done
}

fn measured(book: &mut Book, job: &str) -> String {
    for (field, text) in
        [("board-height", "8 1/4"), ("board-thickness", "5/16"), ("lap", "1 1/4"), ("nail-line", "3/4")]
    {
        answer(book, job, field, text).unwrap();
    }
    let (length, count) = ("12'".to_owned(), "40".to_owned());
    tap(book, 3, HouseAction::AddStock { job: job.to_owned(), length, count }).unwrap();
    let wall = tap(book, 4, HouseAction::AddWall { job: job.to_owned(), name: "South".to_owned() }).unwrap();
    let Place::Measure { wall } = wall.place else { panic!("a new wall is measured") };
    wall
}

const WALL: [(&str, &str); 9] = [
    ("width", "12'"),
    ("left-height", "9'"),
    ("right-height", "9'"),
    ("base", "0"),
    ("first-stud", "0"),
    ("stud-spacing", "16"),
    ("trim-left", "0"),
    ("trim-right", "0"),
    ("name", "South"),
];

#[test]
fn the_way_from_a_name_to_the_last_bead() {
    let (mut book, job) = house();
    let NextWork::AnswerJob { question } = next(&book, &job) else { panic!("boards first") };
    assert_eq!(question.field, "board-height");
    let wall = measured(&mut book, &job);
    let NextWork::MeasureWall { question, .. } = next(&book, &job) else { panic!("then the wall") };
    assert_eq!(question.field, "width");
    in_language(&context("en", 5), |terms| {
        for (field, text) in WALL {
            let (_, site) = lookup::wall(&book, terms, &wall)?;
            ask::answer(&mut book, terms, &site.record, field, text)?;
        }
        Ok(())
    })
    .unwrap();
    assert_eq!(next(&book, &job), NextWork::LayOutPole);
    let pole = [("from", "0"), ("to", "9'"), ("mode", "fit"), ("reveal-max", "7"), ("reveal-min", "6")];
    let pole = thing(&mut book, 6, Kind::Pole, (&job, &job), &pole);
    let lines: Vec<_> = (0..=16).map(|line| (line * 7 * Length::NM_PER_INCH).to_string()).collect();
    let laid_out = Operation::new(OperationKind::PoleLaidOut, None, []);
    write(&mut book, laid_out.set(pole, Field::Lines, Value::Text(lines.join(","))));
    assert!(matches!(next(&book, &job), NextWork::PlanWall { .. }));
    let boards: Vec<Id> = (1..=3).map(|n| board(&mut book, 20 + n, (&wall, &job), n.into())).collect();
    let before = details_done(&mut book, &job);
    assert_eq!(before.first().map(String::as_str), Some("barrier/barrier-course"), "{before:?}");
    let at = |place: &str| before.iter().filter(|code| code.starts_with(place)).count();
    // The barrier and the foot wholly, the corners up to their boards, and nothing under the soffit yet.
    assert!(
        ["barrier/look-over", "base/starter", "corner-left/corner-flashing"]
            .iter()
            .all(|code| before.contains(&(*code).to_owned())),
        "{before:?}"
    );
    assert_eq!((at("eave"), at("corner-left/sealant"), at("corner-left/look-over")), (0, 0, 0), "{before:?}");
    let NextWork::HangBoard { course: 1, cut: false, .. } = next(&book, &job) else { panic!("the lowest course") };

    // A pipe whose block lies from 12 to 16 inches: on the second and the third course.
    let pipe = [("what", "hose-bib"), ("width", "1"), ("from-left", "60"), ("from-base", "14"), ("block-height", "4")];
    let hole = thing(&mut book, 7, Kind::Penetration, (&wall, &job), &pipe).to_string();
    stand(&mut book, boards[0], BoardState::Cut);
    let NextWork::HangBoard { course: 1, cut: true, .. } = next(&book, &job) else { panic!("cut, not fixed") };
    assert_eq!(house_view(&book, "en", &job).open_to_weather[0].kind, WeatherKind::EdgeNotPrimed);
    let prime = crate::steps::BoardDetail::default().steps();
    tick(&mut book, &job, &boards[0].to_string(), "board-prime", &prime);
    assert_eq!(house_view(&book, "en", &job).open_to_weather, []);
    stand(&mut book, boards[0], BoardState::Fixed);

    let work = lookup::work(&book, Some(job.parse().unwrap())).unwrap();
    let steps = work.walls()[0].penetrations[0].detail(&work, &[]).steps();
    let mut unclosed = false;
    for step in steps.iter().take_while(|step| step.code != "boards-cut") {
        let NextWork::MakeTight { step: code, .. } = next(&book, &job) else {
            panic!("{} before the board", step.code)
        };
        assert_eq!(code, step.code);
        tick(&mut book, &job, &hole, step.code, &steps);
        let open: Vec<_> = house_view(&book, "en", &job).open_to_weather.iter().map(|open| open.kind).collect();
        unclosed = (unclosed || step.code == "patch-hole") && step.code != "barrier-down";
        assert_eq!(open.contains(&WeatherKind::PatchNotLapped), unclosed, "after {}", step.code);
    }
    let NextWork::HangBoard { course: 2, .. } = next(&book, &job) else { panic!("the board over the block") };
    for &board in &boards[1..] {
        tick(&mut book, &job, &board.to_string(), "board-prime", &prime);
        stand(&mut book, board, BoardState::Fixed);
    }
    assert_eq!(house_view(&book, "en", &job).open_to_weather[0].kind, WeatherKind::BeadMissing);
    // What the last boards met.
    let met = details_done(&mut book, &job);
    assert_eq!(met.first().map(String::as_str), Some("eave/soffit"), "{met:?}");
    assert!(!met.contains(&"eave/look-over".to_owned()), "{met:?}");
    for step in steps.iter().skip_while(|step| step.code != "boards-cut") {
        let NextWork::MakeTight { step: code, .. } = next(&book, &job) else { panic!("{}", step.code) };
        assert_eq!(code, step.code, "the sealant comes after the last board");
        tick(&mut book, &job, &hole, step.code, &steps);
    }
    assert!(!house_view(&book, "en", &job).walls[0].said.contains("all done"));
    let after = details_done(&mut book, &job);
    for code in ["corner-left/look-over", "eave/look-over"] {
        assert!(after.contains(&code.to_owned()), "{after:?}");
    }
    assert_eq!((next(&book, &job), house_view(&book, "en", &job).open_to_weather), (NextWork::NothingLeft, vec![]));
    assert!(house_view(&book, "en", &job).walls[0].said.contains("all done"));
    let wall = &house_view(&book, "en", &job).walls[0];
    assert_eq!((wall.planned, wall.cut, wall.fixed, wall.penetrations_open), (0, 0, 3, 0));
}

#[test]
fn stock_and_walls_go_and_come_back() {
    let (mut book, job) = house();
    let wall = measured(&mut book, &job);
    let stock = house_view(&book, "en", &job).stock[0].clone();
    assert_eq!((stock.length.nm, stock.count), (144 * Length::NM_PER_INCH, Some(40)));
    for part in [stock.stock, wall] {
        let gone = tap(&mut book, 5, HouseAction::RemovePart { job: job.clone(), part: part.clone() }).unwrap();
        let again = tap(&mut book, 6, HouseAction::RemovePart { job: job.clone(), part });
        assert_eq!(again.unwrap_err().field, "part");
        let action = DoneListAction::Undo { job: None, group: gone.group };
        tap(&mut book, 7, action).unwrap();
    }
    let back = house_view(&book, "en", &job);
    assert_eq!((back.stock.len(), back.walls.len()), (1, 1));
}

#[test]
fn bad_input_changes_nothing() {
    let (mut book, job) = house();
    let before = book.store().content_hash().unwrap();
    for (field, text, code) in [
        ("board-height", "-8\"", "range"),
        ("board-height", "eight", "length"),
        ("board-height", "", "missing"),
        ("rules", "moon", "choice"),
        ("colour", "red", "unknown"),
    ] {
        assert_eq!(answer(&mut book, &job, field, text).unwrap_err().code, code, "{field} {text}");
    }
    let add = |length: &str, count: &str| {
        let (length, count) = (length.to_owned(), count.to_owned());
        HouseAction::AddStock { job: job.clone(), length, count }
    };
    assert_eq!(tap(&mut book, 2, add("", "3")).unwrap_err().field, "length");
    assert_eq!(tap(&mut book, 2, add("12'", "-3")).unwrap_err().field, "count");
    let nameless = HouseAction::AddWall { job: job.clone(), name: " ".to_owned() };
    assert_eq!(tap(&mut book, 2, nameless).unwrap_err().field, "name");
    assert_eq!(book.store().content_hash().unwrap(), before);
    let typed = HouseAction::KeepDraft { job: job.clone(), field: "lap".to_owned(), text: "1 1".to_owned() };
    tap(&mut book, 3, typed).unwrap();
    let lap = house_view(&book, "en", &job).questions.into_iter().find(|question| question.field == "lap").unwrap();
    assert_eq!(lap.draft, "1 1");
}

#[test]
fn the_age_of_the_last_copy_is_said() {
    let (mut book, job) = house();
    let now = context("en", 0).now_ms;
    for (ago_hours, said) in [(1, "Copied today"), (25, "Last copy one day old"), (75, "Last copy 3 days old")] {
        book.put_setting(&Setting::CopiedAt, &(now - ago_hours * 3_600_000).to_string()).unwrap();
        assert_eq!(house_view(&book, "en", &job).copied, said);
    }
}

#[test]
fn a_copy_that_was_made_is_the_last_one_and_a_refused_one_is_not() {
    let folder = tempfile::tempdir().unwrap();
    let (mut book, job) = house();
    assert_eq!(house_view(&book, "en", &job).copied, "Never copied off this device");
    let now = context("en", 0).now_ms;
    let elsewhere = folder.path().join("copy.lapwright");
    copy(&mut book, now - 49 * 3_600_000, &elsewhere).unwrap();
    let in_the_way = folder.path().join("notes.txt");
    std::fs::write(&in_the_way, "mine").unwrap();
    copy(&mut book, now, &in_the_way).unwrap_err();
    assert_eq!(house_view(&book, "en", &job).copied_at_ms, Some(now - 49 * 3_600_000));
    let jobs: JobsView = shown(&book, "en", Place::Jobs);
    assert_eq!(jobs.copied, "Last copy 2 days old");
    let (theirs, _) = Book::open(&elsewhere, &Default::default()).unwrap();
    assert_eq!(house_view(&theirs, "en", &job).copied_at_ms, None);
}

#[test]
fn shows_what_it_showed() {
    let (mut book, job) = house();
    let wall = measured(&mut book, &job);
    let first = board(&mut book, 20, (&wall, &job), 1);
    stand(&mut book, first, BoardState::Cut);
    insta::assert_json_snapshot!("house", house_view(&book, "en", &job));
}
