use super::*;
use crate::measure::Length;
use crate::screens::ask::{Answer, accept, fields, op};
use crate::screens::signing::{Signing, sign};
use crate::store::{Hash, Value};

fn shown(store: &Store, language: &str, job: &str) -> HouseView {
    let View::HouseKind { view } = view(store, &context(language, 0), &Place::House { job: job.to_owned() }).unwrap()
    else {
        panic!("house")
    };
    view
}

fn next(store: &Store, job: &str) -> NextWork {
    shown(store, "en", job).next
}

fn tap(store: &mut Store, n: u8, action: HouseAction) -> Result<Outcome, Problem> {
    act(store, &context("en", n), &Action::HouseKind { action })
}

fn answer(store: &mut Store, job: &str, field: &str, text: &str) -> Result<Outcome, Problem> {
    tap(store, 2, HouseAction::Answer { job: job.to_owned(), field: field.to_owned(), text: text.to_owned() })
}

/// Writes a thing under a parent as its screen would, with its questions answered.
fn thing(store: &mut Store, n: u8, (kind, parent, job): (&str, &str, &str), given: &[(&str, &str)]) -> Id {
    spoken(&context("en", n), |terms| {
        let id = terms.fresh(0);
        let mut answer = op("test", Some(job.parse().unwrap()), []);
        answer = answer.create(id, kind, Some(parent.parse().unwrap()), format!("{n:03}"));
        for (field, value) in fields(terms, kind, &given.iter().copied().collect())? {
            answer = answer.set(id, field, value);
        }
        accept(store, terms, answer, &[])?;
        Ok(id)
    })
    .unwrap()
}

fn write(store: &mut Store, answer: Answer) {
    spoken(&context("en", 9), |terms| accept(store, terms, answer, &[])).unwrap();
}

/// A planned board: inches along the wall and up from its base line.
fn board(store: &mut Store, n: u8, wall: &str, course: i64, from: i64, to: i64) -> Id {
    let id = Id::from_bytes([n; 16]);
    let job = store.subject(wall.parse().unwrap()).unwrap().unwrap().job;
    let inches = |inches: i64| Value::Length {
        length: Length::from_inches_64(inches, 0),
        typed: String::new(),
        unit: "in".to_owned(),
    };
    let answer = op("test", job, [])
        .create(id, kinds::BOARD, Some(wall.parse().unwrap()), format!("{n:03}"))
        .set(id, "course", Value::Whole(course))
        .set(id, "from", inches(from))
        .set(id, "to", inches(to))
        .set(id, "bottom", inches(7 * (course - 1)))
        .set(id, "height", inches(8))
        .set(id, "state", Value::Text("planned".to_owned()));
    write(store, answer);
    id
}

fn stand(store: &mut Store, board: Id, state: &str) {
    write(store, op("test", None, []).set(board, "state", Value::Text(state.to_owned())));
}

fn tick(store: &mut Store, subject: &str, step: &str, steps: &[crate::steps::Step]) {
    let said = StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None };
    let on = Signing { subject: subject.parse().unwrap(), job: None, about: "", steps, detail: Hash::NONE };
    spoken(&context("en", 8), |terms| sign(store, terms, &on, step, &said)).unwrap();
}

fn measured(store: &mut Store, job: &str) -> String {
    for (field, text) in
        [("board-height", "8 1/4"), ("board-thickness", "5/16"), ("lap", "1 1/4"), ("nail-line", "3/4")]
    {
        answer(store, job, field, text).unwrap();
    }
    let (length, count) = ("12'".to_owned(), "40".to_owned());
    tap(store, 3, HouseAction::AddStock { job: job.to_owned(), length, count }).unwrap();
    let wall = tap(store, 4, HouseAction::AddWall { job: job.to_owned(), name: "South".to_owned() }).unwrap();
    let Place::Measure { wall } = wall.place else { panic!("a new wall is measured") };
    wall
}

const WALL: [(&str, &str); 9] = [
    ("width", "20'"),
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
    let (mut store, job) = house();
    let NextWork::AnswerJob { question } = next(&store, &job) else { panic!("boards first") };
    assert_eq!(question.field, "board-height");
    let wall = measured(&mut store, &job);
    let NextWork::MeasureWall { question, .. } = next(&store, &job) else { panic!("then the wall") };
    assert_eq!(question.field, "width");
    spoken(&context("en", 5), |terms| {
        let facts = kept::Facts::of(&store, terms, wall.parse().unwrap(), kinds::WALL)?;
        for (field, text) in WALL {
            ask::answer(&mut store, terms, &facts, field, text)?;
        }
        Ok(())
    })
    .unwrap();
    assert_eq!(next(&store, &job), NextWork::LayOutPole);
    let pole = [("from", "0"), ("to", "9'"), ("mode", "fit"), ("reveal-max", "7"), ("reveal-min", "6")];
    let pole = thing(&mut store, 6, (kinds::POLE, &job, &job), &pole);
    let lines: Vec<_> = (0..=16).map(|line| (line * 7 * Length::NM_PER_INCH).to_string()).collect();
    write(&mut store, op("test", None, []).set(pole, "lines", Value::Text(lines.join(","))));
    assert!(matches!(next(&store, &job), NextWork::PlanWall { .. }));
    let boards: Vec<Id> = (1..=3).map(|n| board(&mut store, 20 + n, &wall, n.into(), 0, 140)).collect();
    let NextWork::HangBoard { course: 1, cut: false, .. } = next(&store, &job) else { panic!("the lowest course") };

    // A pipe whose block lies from 12 to 16 inches: on the second and the third course.
    let pipe = [("what", "hose-bib"), ("width", "1"), ("from-left", "60"), ("from-base", "14"), ("block-height", "4")];
    let hole = thing(&mut store, 7, (kinds::PENETRATION, &wall, &job), &pipe).to_string();
    stand(&mut store, boards[0], "cut");
    let NextWork::HangBoard { course: 1, cut: true, .. } = next(&store, &job) else { panic!("cut, not fixed") };
    assert_eq!(shown(&store, "en", &job).open_to_weather[0].kind, WeatherKind::EdgeNotPrimed);
    let prime = crate::steps::BoardDetail::default().steps();
    tick(&mut store, &boards[0].to_string(), "board-prime", &prime);
    assert_eq!(shown(&store, "en", &job).open_to_weather, []);
    stand(&mut store, boards[0], "fixed");

    let steps = spoken(&context("en", 0), |terms| {
        let job = kept::Job::of(&store, terms, job.parse().unwrap())?;
        Ok(kept::Penetration::on_wall(&store, terms, &job, wall.parse().unwrap())?[0].detail(&job, &[]).steps())
    })
    .unwrap();
    for step in steps.iter().take_while(|step| step.code != "boards-cut") {
        let NextWork::MakeTight { step: code, .. } = next(&store, &job) else {
            panic!("{} before the board", step.code)
        };
        assert_eq!(code, step.code);
        tick(&mut store, &hole, step.code, &steps);
        let open: Vec<_> = shown(&store, "en", &job).open_to_weather.iter().map(|open| open.kind).collect();
        let unclosed = ["patch-hole", "patch-slit", "patch-lap", "patch-roll", "patch-top"].contains(&step.code);
        assert_eq!(open.contains(&WeatherKind::PatchNotLapped), unclosed, "after {}", step.code);
    }
    let NextWork::HangBoard { course: 2, .. } = next(&store, &job) else { panic!("the board over the block") };
    for &board in &boards[1..] {
        tick(&mut store, &board.to_string(), "board-prime", &prime);
        stand(&mut store, board, "fixed");
    }
    assert_eq!(shown(&store, "en", &job).open_to_weather[0].kind, WeatherKind::BeadMissing);
    for step in steps.iter().skip_while(|step| step.code != "boards-cut") {
        let NextWork::MakeTight { step: code, .. } = next(&store, &job) else { panic!("{}", step.code) };
        assert_eq!(code, step.code, "the sealant comes after the last board");
        tick(&mut store, &hole, step.code, &steps);
    }
    assert_eq!((next(&store, &job), shown(&store, "en", &job).open_to_weather), (NextWork::NothingLeft, vec![]));
    let wall = &shown(&store, "en", &job).walls[0];
    assert_eq!((wall.planned, wall.cut, wall.fixed, wall.penetrations_open), (0, 0, 3, 0));
}

#[test]
fn stock_and_walls_go_and_come_back() {
    let (mut store, job) = house();
    let wall = measured(&mut store, &job);
    let stock = shown(&store, "en", &job).stock[0].clone();
    assert_eq!((stock.length.nm, stock.count), (144 * Length::NM_PER_INCH, Some(40)));
    for part in [stock.stock, wall] {
        let gone = tap(&mut store, 5, HouseAction::RemovePart { job: job.clone(), part: part.clone() }).unwrap();
        let again = tap(&mut store, 6, HouseAction::RemovePart { job: job.clone(), part });
        assert_eq!(again.unwrap_err().field, "part");
        let action = DoneListAction::Undo { job: None, group: gone.group };
        act(&mut store, &context("en", 7), &Action::DoneListKind { action }).unwrap();
    }
    let back = shown(&store, "en", &job);
    assert_eq!((back.stock.len(), back.walls.len()), (1, 1));
}

#[test]
fn bad_input_changes_nothing() {
    let (mut store, job) = house();
    let before = store.content_hash().unwrap();
    for (field, text, code) in [
        ("board-height", "-8\"", "range"),
        ("board-height", "eight", "length"),
        ("board-height", "", "missing"),
        ("rules", "moon", "choice"),
        ("colour", "red", "unknown"),
    ] {
        assert_eq!(answer(&mut store, &job, field, text).unwrap_err().code, code, "{field} {text}");
    }
    let add = |length: &str, count: &str| {
        let (length, count) = (length.to_owned(), count.to_owned());
        HouseAction::AddStock { job: job.clone(), length, count }
    };
    assert_eq!(tap(&mut store, 2, add("", "3")).unwrap_err().field, "length");
    assert_eq!(tap(&mut store, 2, add("12'", "-3")).unwrap_err().field, "count");
    let nameless = HouseAction::AddWall { job: job.clone(), name: " ".to_owned() };
    assert_eq!(tap(&mut store, 2, nameless).unwrap_err().field, "name");
    assert_eq!(store.content_hash().unwrap(), before);
    let typed = HouseAction::KeepDraft { job: job.clone(), field: "lap".to_owned(), text: "1 1".to_owned() };
    tap(&mut store, 3, typed).unwrap();
    let lap = shown(&store, "en", &job).questions.into_iter().find(|question| question.field == "lap").unwrap();
    assert_eq!(lap.draft, "1 1");
}

#[test]
fn the_age_of_the_last_copy_is_said() {
    let (mut store, job) = house();
    let now = context("en", 0).now_ms;
    for (ago_hours, said) in [(1, "Copied today"), (25, "Last copy one day old"), (75, "Last copy 3 days old")] {
        store.setting_put("copied-at", &(now - ago_hours * 3_600_000).to_string()).unwrap();
        assert_eq!(shown(&store, "en", &job).copied, said);
    }
}

#[test]
fn a_copy_that_was_made_is_the_last_one_and_a_refused_one_is_not() {
    let folder = tempfile::tempdir().unwrap();
    let (mut store, job) = house();
    assert_eq!(shown(&store, "en", &job).copied, "Never copied off this phone");
    let now = context("en", 0).now_ms;
    let elsewhere = folder.path().join("copy.lapwright");
    copy(&mut store, now - 49 * 3_600_000, &elsewhere).unwrap();
    let in_the_way = folder.path().join("notes.txt");
    std::fs::write(&in_the_way, "mine").unwrap();
    copy(&mut store, now, &in_the_way).unwrap_err();
    assert_eq!(shown(&store, "en", &job).copied_at_ms, Some(now - 49 * 3_600_000));
    let View::JobsKind { view } = view(&store, &context("en", 0), &Place::Jobs).unwrap() else { panic!("jobs") };
    assert_eq!(view.copied, "Last copy 2 days old");
    let theirs = Store::open(&elsewhere, &Default::default()).unwrap().store;
    assert_eq!(shown(&theirs, "en", &job).copied_at_ms, None);
}

#[test]
fn reads_well_in_both_languages() {
    let (mut store, job) = house();
    let wall = measured(&mut store, &job);
    let first = board(&mut store, 20, &wall, 1, 0, 140);
    stand(&mut store, first, "cut");
    for language in ["en", "es"] {
        insta::assert_json_snapshot!(format!("house-{language}"), shown(&store, language, &job));
    }
}
