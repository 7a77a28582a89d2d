use super::*;
use crate::forms::signing::{DetailHashes, Signing, sign};
use crate::handover::{DEMO_HOUSE as DEMO, job_document};
use crate::screens::take_in_document;
use crate::work::PenetrationSite;

fn take(book: &mut Book, n: u8, text: &str) -> Result<String, Problem> {
    let outcome = take_in_document(book, &context("en", n), text)?;
    let Place::House { job } = outcome.place else { panic!("a house opens") };
    Ok(job)
}

fn out(book: &Book, job: &str) -> String {
    job_document(book, &context("en", 0), job).unwrap()
}

#[test]
fn what_goes_out_comes_in_and_goes_out_the_same() {
    let (mut first, mut second) = (Book::in_memory().unwrap(), Book::in_memory().unwrap());
    let mut third = Book::in_memory().unwrap();
    let job = take(&mut first, 1, DEMO).unwrap();
    let text = out(&first, &job);
    let again = take(&mut second, 2, &text).unwrap();
    assert_eq!(out(&second, &again), text);
    for (book, n) in [(&mut first, 4), (&mut second, 5)] {
        let twice = take(book, n, &text).unwrap_err();
        assert_eq!((twice.code.as_str(), twice.field.as_str()), ("order", "house"), "it is the same house in both");
    }
    let spanish = take_in_document(&mut third, &Context { show: "mm".to_owned(), ..context("es", 3) }, &text).unwrap();
    let Place::House { job: again } = spanish.place else { panic!("a house opens") };
    assert_eq!(out(&third, &again), text, "whatever language and unit the reader has");
    // Everything that the hand-written one says is still there.
    let (sent, came): (serde_json::Value, serde_json::Value) =
        (serde_json::from_str(DEMO).unwrap(), serde_json::from_str(&text).unwrap());
    assert_eq!(came["walls"][1]["openings"], sent["walls"][1]["openings"]);
    assert_eq!(came["pole"]["marks"], sent["pole"]["marks"]);
    assert_eq!(came["walls"][0]["penetrations"].as_array().unwrap().len(), 2);
}

#[test]
fn planned_lengths_lines_notches_and_rules_come_along() {
    let text = r#"{
        "lapwright": 1, "name": "Lot 3", "board-height": "210 mm", "rules": "nz",
        "pole": { "lines": ["0\"", "180.000001 mm", "14 3/64\""] },
        "walls": [{ "name": "East", "width-taped": "7' 3 1/2\"", "penetrations": [{ "id": "p1", "what": "pipe" }],
            "studs": [{ "at": "16 in" }],
            "boards": [{ "length": "99 in", "course": 1, "from": { "planned": "3.1 mm" }, "state": "cut",
                "notches": [{ "left": "12\"", "penetration": "p1" }] }] }],
        "rules-changed": [{ "key": "lap.least", "value": "32 mm", "reason": "maker" }]
    }"#;
    let mut book = Book::in_memory().unwrap();
    // A stud and a notch in inches on a house in millimetres: asked about once.
    assert_eq!(take(&mut book, 1, text).unwrap_err().code, "unlikely");
    let job = take(&mut book, 1, text).unwrap();
    let mut came: serde_json::Value = serde_json::from_str(&out(&book, &job)).unwrap();
    let sent: serde_json::Value = serde_json::from_str(text).unwrap();
    assert_eq!(came.as_object_mut().unwrap().remove("house"), Some(job.into()));
    assert_eq!(came, sent);
}

/// What a document says was measured stands over the plain field: an answer that is typed later takes the place of both.
#[test]
fn an_answer_over_what_a_document_had_measured_is_what_holds() {
    let text = r#"{"lapwright": 1, "name": "Lot 4", "walls": [{"name": "East", "width": "90 in", "width-taped": "7' 3 1/2\""}]}"#;
    let mut book = Book::in_memory().unwrap();
    let job = take(&mut book, 1, text).unwrap();
    let wall = |book: &Book| {
        let house: HouseView = shown(book, "en", Place::House { job: job.clone() });
        house.walls[0].wall.clone()
    };
    let id = wall(&book);
    let answer = MeasureAction::Answer { wall: id.clone(), field: "width".to_owned(), text: "88".to_owned() };
    tap(&mut book, 2, answer).unwrap();
    let measure: MeasureView = shown(&book, "en", Place::Measure { wall: id });
    let width = measure.questions.iter().find(|question| question.field == "width").unwrap();
    assert_eq!(width.reading.as_ref().unwrap().nm, inches(88, 0));
}

#[test]
fn a_document_in_error_keeps_nothing_and_says_where() {
    let mut book = Book::in_memory().unwrap();
    let empty = book.store().content_hash().unwrap();
    let wall = |rest: &str| format!(r#"{{"lapwright": 1, "name": "x", "walls": [{{"name": "w", {rest}}}]}}"#);
    let job = |rest: &str| format!(r#"{{"lapwright": 1, "name": "x", {rest}}}"#);
    for (text, field) in [
        ("{".to_owned(), ""),
        ("[]".to_owned(), ""),
        (r#"{"lapwright": 2, "name": "x"}"#.to_owned(), ""),
        (r#"{"lapwright": 1}"#.to_owned(), "name"),
        (r#"{"lapwright": 1, "name": " "}"#.to_owned(), "name"),
        (r#"{"lapwright": 1, "name": "x", "name": "y"}"#.to_owned(), ""),
        (wall(r#""width": "1 ft", "width": "2 ft""#), ""),
        (job(r#""lap": "1\u001b[2J""#), "lap"),
        (wall(r#""openings": [{"what": "a\u0000"}]"#), "walls[0].openings[0].what"),
        (r#"{"lapwright": 1, "name": "a\u202eb"}"#.to_owned(), "name"),
        (job(&format!(r#""stock": [{}{{}}]"#, "{},".repeat(50_001))), ""),
        (job(r#""color": "red""#), "color"),
        (job(r#""lap": "1.25""#), "lap"),
        (job(r#""lap": 2"#), "lap"),
        (job(r#""lap": "-1 in""#), "lap"),
        (job(r#""rules": "moon""#), "rules"),
        (job(r#""stock": {}"#), "stock"),
        (job(r#""stock": [{"length": "0 in"}]"#), "stock[0].length"),
        (job(r#""stock": [7]"#), "stock[0]"),
        (job(r#""pole": []"#), "pole"),
        (job(r#""pole": {"lines": ["1 in", "1 in"]}"#), "pole.lines[1]"),
        (job(r#""rules-changed": [{"key": "lap.least", "value": "9 ft", "reason": "r"}]"#), "rules-changed[0]"),
        (job(r#""rules-changed": [{"key": "lap.least", "value": "2 in"}]"#), "rules-changed[0]"),
        (wall(r#""width": {"planned": 3}"#), "walls[0].width"),
        (wall(r#""openings": [{"what": "hatch"}]"#), "walls[0].openings[0].what"),
        (wall(r#""boards": [{"course": 0}]"#), "walls[0].boards[0].course"),
        (wall(r#""boards": [{"notches": [{"penetration": "p9"}]}]"#), "walls[0].boards[0].notches[0].penetration"),
        (wall(r#""penetrations": [{"id": "a"}, {"id": "a"}]"#), "walls[0].penetrations[1].id"),
        (DEMO.replace("{ \"from-left\": \"100 in\"", "{ \"from-left\": \"400 in\""), "walls[1].peak-height"),
    ] {
        let problem = take(&mut book, 1, &text).expect_err(&text);
        assert_eq!(problem.field, field, "{text}: {problem:?}");
        assert_eq!(book.store().content_hash().unwrap(), empty, "{text}");
    }
}

#[test]
fn who_signed_what_goes_out_as_a_report_and_does_not_come_in() {
    let (mut book, job) = demo_house();
    let plain = out(&book, &job);
    in_language(&context("en", 2), |terms| {
        let work = lookup::house(&book, terms, &job)?;
        let wall = &work.walls()[1];
        let site = PenetrationSite::new(work.clone(), wall.clone(), wall.penetrations[2].clone());
        let (subject, steps) = (site.penetration.id(), site.detail.steps());
        let said = StepSaid { how: StepHow::Tick, note: "shut".to_owned(), measured: String::new(), photo: None };
        let detail = DetailHashes { hash: crate::store::Hash::NONE, earlier: Vec::new() };
        let on = Signing { work: &work, subject, about: "", steps: &steps, detail };
        sign(&mut book, terms, &on, "water-line", &said)
    })
    .unwrap();
    let signed = out(&book, &job);
    let document: serde_json::Value = serde_json::from_str(&signed).unwrap();
    let line = &document["report"]["sign-offs"][0];
    assert_eq!(
        (&line["penetration"], &line["step"], &line["signer"]),
        (&"p5".into(), &"water-line".into(), &"Ines".into())
    );
    let mut second = Book::in_memory().unwrap();
    let again = take(&mut second, 3, &signed).unwrap();
    assert_eq!(out(&second, &again), plain, "nobody signs for somebody else");
}

#[test]
fn the_demo_house_lays_out_and_every_penetration_can_be_made_tight() {
    let (book, job) = demo_house();
    in_language(&context("en", 2), |terms| {
        demo::check(&*lookup::house(&book, terms, &job)?, terms);
        Ok(())
    })
    .unwrap();
    assert_eq!(shown::<HouseView>(&book, "en", Place::House { job }).next, NextWork::LayOutPole);
}

#[test]
fn the_demo_house_is_laid_out_and_planned_by_a_persons_taps() {
    let (mut book, job) = demo_laid_out();
    let house = |book: &Book| shown::<HouseView>(book, "en", Place::House { job: job.clone() });
    for (n, wall) in (3..).zip(house(&book).walls) {
        if n == 3 {
            assert!(matches!(house(&book).next, NextWork::PlanWall { wall: first, .. } if first == wall.wall));
        }
        tap(&mut book, n, WallAction::PlanBoards { wall: wall.wall }).unwrap();
    }
    // The barrier first.
    assert!(matches!(house(&book).next, NextWork::MakeTight { step, .. } if step == "barrier/barrier-course"));
    let text = out(&book, &job);
    let document: serde_json::Value = serde_json::from_str(&text).unwrap();
    assert!(document["walls"][0]["boards"].as_array().unwrap().len() > 40);
    assert_eq!(document["pole"]["lines"].as_array().unwrap().len(), 25);
    let mut second = Book::in_memory().unwrap();
    let again = take(&mut second, 9, &text).unwrap();
    assert_eq!(out(&second, &again), text);
}
