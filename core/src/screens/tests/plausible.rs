//! What is believed and what is not: the impossible is refused, the unlikely asked about once, the usual taken.

use super::penetration::{hose_bib, wall};
use super::*;
use crate::book::Book;
use crate::measure::Show;
use crate::phrases::{Language, Phrases};

fn given(answers: &[(&str, &str)]) -> Vec<Given> {
    answers.iter().map(|(field, text)| Given { field: (*field).to_owned(), text: (*text).to_owned() }).collect()
}

fn of_house(job: &str, field: &str, text: &str) -> Action {
    let (job, field, text) = (job.to_owned(), field.to_owned(), text.to_owned());
    HouseAction::Answer { job, field, text }.into()
}

fn of_wall(wall: &str, field: &str, text: &str) -> Action {
    let (wall, field, text) = (wall.to_owned(), field.to_owned(), text.to_owned());
    MeasureAction::Answer { wall, field, text }.into()
}

fn part(wall: &str, kind: &str, answers: &[(&str, &str)]) -> Action {
    MeasureAction::AddPart { wall: wall.to_owned(), kind: kind.to_owned(), answers: given(answers) }.into()
}

fn through(wall: &str, answers: &[(&str, &str)]) -> Action {
    WallAction::AddPenetration { wall: wall.to_owned(), answers: given(answers) }.into()
}

/// The wall of the other tests has no window yet.
fn with_window() -> (Book, String, String) {
    let (mut book, job, wall) = wall();
    let window = [("what", "window"), ("from-left", "40"), ("width", "30"), ("from-base", "20"), ("height", "40")];
    tap(&mut book, 20, part(&wall, "opening", &window)).unwrap();
    (book, job, wall)
}

#[test]
fn what_cannot_be_is_refused_and_what_hardly_can_is_asked_about() {
    let (mut book, job, wall) = with_window();
    tap(&mut book, 21, HouseAction::AddStock { job: job.clone(), length: "12'".to_owned(), count: String::new() })
        .unwrap();
    let stock = |length: &str| {
        Action::from(HouseAction::AddStock { job: job.clone(), length: length.to_owned(), count: String::new() })
    };
    let light = |left: &str, base: &str, width: &str| {
        through(&wall, &[("what", "light"), ("width", width), ("from-left", left), ("from-base", base)])
    };
    let window = |left: &str| {
        let answers = [("what", "window"), ("from-left", left), ("width", "30"), ("from-base", "30"), ("height", "30")];
        part(&wall, "opening", &answers)
    };
    let offcut = |length: &str| SawListAction::AddOffcut { job: job.clone(), length: length.to_owned() }.into();
    let rule = |key: &str, value: &str| {
        let (job, key, value) = (job.clone(), key.to_owned(), value.to_owned());
        RulesAction::Change { job, key, value, reason: "so".to_owned() }.into()
    };
    let named = |name: &str| HouseAction::AddWall { job: job.clone(), name: name.to_owned() }.into();
    let house = |name: &str| JobsAction::Create { name: name.to_owned(), like: None }.into();
    let wall_name = shown::<MeasureView>(&book, "en", Place::Measure { wall: wall.clone() }).name.to_uppercase();
    let cases: Vec<(Action, &str, &str)> = vec![
        (of_house(&job, "lap", "1/4"), "range", "lap"),
        (of_house(&job, "lap", "20"), "range", "lap"),
        (of_house(&job, "lap", "1"), "unlikely", "lap"),
        (of_house(&job, "board-height", "16"), "unlikely", "board-height"),
        (of_house(&job, "board-thickness", "1/8"), "range", "board-thickness"),
        (of_house(&job, "nail-line", "1/16"), "range", "nail-line"),
        (stock("300'"), "range", "length"),
        (stock("12"), "unlikely", "length"),
        (of_wall(&wall, "stud-spacing", "24"), "unlikely", "stud-spacing"),
        (light("100", "300", "4"), "range", "from-base"),
        (light("100", "60", "400"), "range", "width"),
        (light("50", "40", "4"), "range", "from-base"),
        (window("60"), "range", "height"),
        (offcut("14'"), "unlikely", "length"),
        (named(&wall_name), "range", "name"),
        (house(" lot  12 "), "range", "name"),
        (rule("head-flashing.slope", "0"), "range", "rule-range"),
    ];
    let before = book.store().content_hash().unwrap();
    for (action, code, field) in cases {
        let problem = tap(&mut book, 30, action.clone()).expect_err(&format!("{action:?}"));
        assert_eq!((problem.code.as_str(), problem.field.as_str()), (code, field), "{action:?}: {problem:?}");
        assert!(problem.text.chars().count() > 20, "{problem:?}");
    }
    assert_eq!(book.store().content_hash().unwrap(), before, "nothing was kept");
}

/// How a number is written says what was meant where its value alone does not; and a block takes up room, too.
#[test]
fn blanks_points_blocks_and_heights_off_the_house_are_asked_about() {
    let (mut book, job, wall) = with_window();
    let light = |left: &str, base: &str, block: &str| {
        let block = [("block-width", block), ("block-height", block)];
        let light = [("what", "light"), ("width", "4"), ("from-left", left), ("from-base", base)];
        through(&wall, &[&light[..], &block].concat())
    };
    let pole = |field: &str, text: &str| {
        let (field, text) = (field.to_owned(), text.to_owned());
        Action::from(PoleAction::Answer { job: job.clone(), field, text })
    };
    let add = HouseAction::AddWall { job: job.clone(), name: "Other side".to_owned() };
    let (Place::Measure { wall: other } | Place::Wall { wall: other }) = tap(&mut book, 18, add).unwrap().place else {
        panic!("a wall")
    };
    let cases: Vec<(Action, &str, &str, &str)> = vec![
        (of_house(&job, "lap", "11/4"), "unlikely", "lap", "Did you mean 1 1/4\"?"),
        (of_wall(&other, "left-height", "8.5"), "unlikely", "left-height", "8' 6\""),
        (of_wall(&other, "width", "24.5"), "unlikely", "width", "24' 6\""),
        (light("76", "40", "14"), "unlikely", "block-height", "would lie over Window"),
        (light("100", "-20", "6"), "range", "from-base", "does not lie on the wall"),
        (of_house(&job, "lap", "1/4"), "range", "lap", "3/4\""),
    ];
    for (action, code, field, said) in cases {
        let problem = tap(&mut book, 30, action.clone()).expect_err(&format!("{action:?}"));
        assert_eq!((problem.code.as_str(), problem.field.as_str()), (code, field), "{action:?}: {problem:?}");
        assert!(problem.text.contains(said), "{action:?}: {}", problem.text);
    }
    tap(&mut book, 31, HouseAction::RemovePart { job: job.clone(), part: other.clone() }).unwrap();
    for (field, text) in [("to", "250"), ("from", "60")] {
        let problem = tap(&mut book, 32, pole(field, text)).unwrap_err();
        assert_eq!((problem.code.as_str(), problem.field.as_str()), ("unlikely", field), "{problem:?}");
        assert!(problem.text.contains("off the walls"), "{}", problem.text);
    }
    // Fractions under one, points on short things, and blocks that touch nothing.
    tap(&mut book, 41, of_house(&job, "lap", "1 1/4")).unwrap();
    tap(&mut book, 42, of_wall(&wall, "trim-left", "3.5")).unwrap();
    tap(&mut book, 43, light("100", "40", "7")).unwrap();
}

/// A yes is of the value it was given to: where another wall stands, or how high it is, it says nothing.
#[test]
fn a_yes_to_a_height_is_no_yes_to_another_wall() {
    let (mut book, job, first) = wall();
    let add = HouseAction::AddWall { job, name: "Other side".to_owned() };
    let (Place::Measure { wall: second } | Place::Wall { wall: second }) = tap(&mut book, 20, add).unwrap().place
    else {
        panic!("a wall")
    };
    insist(&mut book, 21, of_wall(&first, "left-height", "45'"));
    insist(&mut book, 22, of_wall(&second, "left-height", "45'"));
    insist(&mut book, 23, of_wall(&first, "stud-spacing", "24"));
    tap(&mut book, 24, of_wall(&second, "stud-spacing", "24")).unwrap();
}

#[test]
fn a_contradiction_names_what_stands_on_the_wall() {
    let (mut book, _, wall) = with_window();
    hose_bib(&mut book, &wall, &[("from-left", "130"), ("from-base", "70")]);
    let problem = tap(&mut book, 31, of_wall(&wall, "width", "110")).unwrap_err();
    assert_eq!((problem.code.as_str(), problem.field.as_str()), ("range", "width"));
    let name = Phrases::for_language(Language::English).phrase("wall-kind-hose-bib", &[]);
    assert!(problem.text.contains(&name) && problem.text.contains("130"), "{}", problem.text);
}

#[test]
fn a_board_of_another_height_is_asked_about_before_it_goes_on_a_wall() {
    let (mut book, job, wall) = wall();
    tap(&mut book, 20, of_house(&job, "board-height", "8 1/4")).unwrap();
    let answers = given(&[("length", "100"), ("height", "7 1/4"), ("lap", "1 1/4")]);
    let Place::Board { board } = tap(&mut book, 21, BoardAction::CreateLoose { job: None, answers }).unwrap().place
    else {
        panic!("a board")
    };
    insist(&mut book, 22, BoardAction::Attach { board, wall });
}

/// The question comes back with what was typed, what was probably meant, and the keys again.
#[test]
fn what_is_in_doubt_is_chosen_and_a_yes_is_never_asked_for_again() {
    let (mut book, job) = house();
    let Place::Measure { wall } =
        tap(&mut book, 2, HouseAction::AddWall { job, name: "North".to_owned() }).unwrap().place
    else {
        panic!("a wall")
    };
    let place = || Place::Measure { wall: wall.clone() };
    let asked = |book: &Book, language: &str| shown::<MeasureView>(book, language, place()).asked.unwrap();
    let type_in = |book: &mut Book, text: &str| {
        let (wall, subject, field, text) = (wall.clone(), wall.clone(), "width".to_owned(), text.to_owned());
        tap(book, 3, MeasureAction::KeepDraft { wall, subject, field, text }).unwrap();
    };
    type_in(&mut book, "24");
    let problem = tap(&mut book, 4, of_wall(&wall, "width", "24")).unwrap_err();
    assert_eq!((problem.code.as_str(), problem.field.as_str()), ("unlikely", "width"));
    for language in ["en", "es"] {
        let question = asked(&book, language);
        let codes: Vec<&str> = question.choices.iter().map(|choice| choice.code.as_str()).collect();
        assert_eq!((question.kind, question.draft.as_str()), (AnswerKind::ChoiceKind, "24"));
        assert_eq!(codes, ["24", "24' 0\"", "type-anew"]);
        assert!(question.choices.iter().all(|choice| !choice.label.is_empty()));
    }
    // The keys again: nothing is typed, and the keypad is there.
    tap(&mut book, 5, of_wall(&wall, "width", "type-anew")).unwrap();
    assert_eq!((asked(&book, "en").kind, asked(&book, "en").draft.as_str()), (AnswerKind::LengthKind, ""));
    // What was meant.
    type_in(&mut book, "24");
    let meant = asked(&book, "en").choices[1].code.clone();
    tap(&mut book, 6, of_wall(&wall, "width", &meant)).unwrap();
    let width = |book: &Book| shown::<MeasureView>(book, "en", place()).questions[1].reading.clone().unwrap().nm;
    assert_eq!(width(&book), inches(288, 0));
    // The yes; it holds ever after, also for who undoes and says it again.
    insist(&mut book, 7, of_wall(&wall, "width", "30"));
    assert_eq!(width(&book), inches(30, 0));
    tap(&mut book, 8, of_wall(&wall, "width", "24 ft")).unwrap();
    tap(&mut book, 9, of_wall(&wall, "width", "30")).unwrap();
}

#[test]
fn a_thing_in_the_making_is_judged_question_by_question_and_asked_once() {
    let (mut book, _, wall) = wall();
    let mut answer = |n: u8, field: &str, text: &str| {
        let (parent, field, text) = (wall.clone(), field.to_owned(), text.to_owned());
        tap(&mut book, n, NewAction::Answer { what: NewThing::Penetration, parent, field, text })
    };
    answer(20, "what", "hose-bib").unwrap();
    let absurd = answer(21, "width", "78").unwrap_err();
    assert_eq!((absurd.code.as_str(), absurd.field.as_str()), ("range", "width"));
    assert!(absurd.text.contains("7/8"), "{}", absurd.text);
    assert_eq!(answer(22, "width", "7").unwrap_err().code, "unlikely");
    answer(23, "width", "7").unwrap();
    answer(24, "from-left", "100").unwrap();
    let made = answer(25, "from-base", "20").unwrap();
    assert!(matches!(made.place, Place::Penetration { .. }), "asked once, not again at the end: {:?}", made.place);
}

#[test]
fn a_rule_far_from_its_default_is_asked_about_once() {
    let (mut book, job) = house();
    let rule = |value: &str| RulesAction::Change {
        job: job.clone(),
        key: "gap.block.most".to_owned(),
        value: value.to_owned(),
        reason: "maker".to_owned(),
    };
    insist(&mut book, 2, rule("1/2"));
    tap(&mut book, 3, rule("3/16")).unwrap();
}

/// A rule that changes later meets what was answered before: the answer is named, and one yes is enough.
#[test]
fn a_rule_against_what_stands_on_the_house_is_asked_about_with_its_name() {
    let (mut book, job, wall) = with_window();
    tap(&mut book, 21, of_wall(&wall, "stud-spacing", "16")).unwrap();
    let rule = |key: &str, value: &str| {
        let (job, key, value) = (job.clone(), key.to_owned(), value.to_owned());
        Action::from(RulesAction::Change { job, key, value, reason: "maker".to_owned() })
    };
    let name = shown::<MeasureView>(&book, "en", Place::Measure { wall: wall.clone() }).name;
    for (n, key, value, said) in
        [(22, "lap.least", "2", vec!["1 1/4 in", "2\""]), (23, "stud.spacing", "12", vec![&*name, "16 in"])]
    {
        let problem = tap(&mut book, n, rule(key, value)).map(|_| ()).expect_err(key);
        assert_eq!((problem.code.as_str(), problem.field.as_str()), ("unlikely", "value"), "{problem:?}");
        assert!(said.iter().all(|said| problem.text.contains(said)), "{key}: {}", problem.text);
        tap(&mut book, n, rule(key, value)).unwrap();
    }
    // What stands against a rule already is not brought up again.
    tap(&mut book, 24, rule("gap.trim", "1/4")).unwrap();
    // The question of the screen asks before it asks for the reason.
    let answer = |field: &str, text: &str| {
        let (job, field, text) = (job.clone(), field.to_owned(), text.to_owned());
        Action::from(RulesAction::Answer { job, field, text })
    };
    tap(&mut book, 25, RulesAction::BackToDefault { job: job.clone(), key: "lap.least".to_owned() }).unwrap();
    assert_eq!(tap(&mut book, 26, answer("lap.least", "2")).unwrap_err().code, "unlikely");
    tap(&mut book, 27, answer("lap.least", "2")).unwrap();
    tap(&mut book, 28, answer("lap.least/reason", "maker")).unwrap();
}

/// The rules of another country meet what was answered under those of before: each answer is named, one yes is enough.
#[test]
fn the_rules_of_another_country_are_held_against_what_is_answered() {
    let (mut book, job, wall) = wall();
    tap(&mut book, 20, of_house(&job, "rules", "au")).unwrap();
    for (n, action) in [
        (21, of_house(&job, "lap", "25 mm")),
        (22, of_house(&job, "board-thickness", "7.5 mm")),
        (23, of_wall(&wall, "stud-spacing", "600 mm")),
    ] {
        if let Err(asked) = tap(&mut book, n, action.clone()) {
            assert_eq!(asked.code, "unlikely", "{asked:?}");
            tap(&mut book, n, action).unwrap();
        }
    }
    let name = shown::<MeasureView>(&book, "en", Place::Measure { wall: wall.clone() }).name;
    let before = book.store().content_hash().unwrap();
    let to_us = || of_house(&job, "rules", "us");
    let asked = tap(&mut book, 24, to_us()).unwrap_err();
    assert_eq!((asked.code.as_str(), asked.field.as_str()), ("unlikely", "rules"), "{asked:?}");
    // 25 mm where R703.10.2 asks for 1 1/4 in, 600 mm where R703.3 has 16 in.
    for said in ["25 mm", "600 mm", name.as_str(), "R703.10.2", "R703.3"] {
        assert!(asked.text.contains(said), "{said}: {}", asked.text);
    }
    assert_eq!(book.store().content_hash().unwrap(), before, "nothing was kept");
    tap(&mut book, 25, to_us()).unwrap();
    // Back where everything was right, nothing is asked; taking the answer back leads to the United States as well.
    tap(&mut book, 26, of_house(&job, "rules", "au")).unwrap();
    insist(&mut book, 27, of_house(&job, "rules", ""));
}

/// What is bought in one length stands once on the list, however it is written; and so does a block of one size.
#[test]
fn a_length_and_a_size_of_block_stand_once_on_a_houses_list() {
    let (mut book, job) = house();
    let stock = |length: &str| {
        let (job, length, count) = (job.clone(), length.to_owned(), String::new());
        HouseAction::AddStock { job, length, count }
    };
    let block = |width: &str, height: &str| {
        let (job, width, height) = (job.clone(), width.to_owned(), height.to_owned());
        HouseAction::AddBlockSize { job, width, height }
    };
    tap(&mut book, 2, stock("12'")).unwrap();
    tap(&mut book, 3, stock("10'")).unwrap();
    tap(&mut book, 4, block("8", "10")).unwrap();
    tap(&mut book, 5, block("10", "8")).unwrap();
    let before = book.store().content_hash().unwrap();
    for (action, field, said) in [(stock("144"), "length", "144\""), (block("8 in", "10 in"), "width", "8\" × 10\"")] {
        let problem = tap(&mut book, 6, action).unwrap_err();
        assert_eq!((problem.code.as_str(), problem.field.as_str()), ("range", field));
        assert!(problem.text.contains(said), "{}", problem.text);
    }
    assert_eq!(book.store().content_hash().unwrap(), before, "nothing was kept");
}

/// A length in words is refused where keys are read, and how the keys write it is told.
#[test]
fn words_are_told_how_the_keys_write_them() {
    let (mut book, _, wall) = wall();
    for (language, text, typed) in [
        ("es", "3 metros", "3 m"),
        ("es", "3.20 mts.", "3.20 m"),
        ("es", "3 pulgadas y media", "3 1/2\""),
        ("es", "tres y media", "3 1/2"),
        ("es", "24 pies y 3 pulgadas", "24' 3\""),
        ("en", "twenty-four feet", "24'"),
    ] {
        let action = of_wall(&wall, "width", text);
        let problem = act(&mut book, &context(language, 20), &action).unwrap_err();
        assert_eq!((problem.code.as_str(), problem.field.as_str()), ("length", "width"));
        assert!(problem.text.contains(&format!(" {typed}.")), "{text}: {}", problem.text);
    }
    // Where nobody knows what is meant, nothing is told.
    let problem = act(&mut book, &context("es", 21), &of_wall(&wall, "width", "3 varas")).unwrap_err();
    assert!(!problem.text.contains("teclas"), "{}", problem.text);
}

/// A choice is typed by its code or by its name, with or without accents; a refusal says both.
#[test]
fn a_choice_goes_by_its_code_and_by_its_name() {
    let (mut book, _, wall) = wall();
    let hole = hose_bib(&mut book, &wall, &[]);
    let say = |text: &str| {
        let (penetration, field, text) = (hole.clone(), "painted".to_owned(), text.to_owned());
        Action::from(PenetrationAction::Answer { penetration, field, text })
    };
    for text in ["yes", "Sí", "si", "NO"] {
        act(&mut book, &context("es", 20), &say(text)).unwrap();
    }
    let refused = act(&mut book, &context("es", 21), &say("quizás")).unwrap_err();
    assert!(refused.text.contains("yes (Sí), no"), "{}", refused.text);
    let kinds = act(&mut book, &context("es", 22), &through(&wall, &[("what", "grifo")])).unwrap_err();
    let name = Phrases::for_language(Language::Spanish).phrase("wall-kind-hose-bib", &[]);
    assert!(kinds.text.contains(&format!("hose-bib ({name})")), "{}", kinds.text);
    // In English code and name are one word.
    let kinds = tap(&mut book, 23, through(&wall, &[("what", "tap")])).unwrap_err();
    assert!(kinds.text.contains("hose-bib, pipe"), "{}", kinds.text);
}

/// A cheek beside a dormer runs out to nothing, and the triangle of a gable does at both ends.
#[test]
fn a_wall_may_run_out_to_nothing() {
    let (mut book, job, first) = wall();
    let mut n = 30;
    let mut outline = |book: &mut Book, name: &str, answers: &[(&str, &str)]| {
        n += 1;
        let add = HouseAction::AddWall { job: job.clone(), name: name.to_owned() };
        let (Place::Measure { wall } | Place::Wall { wall }) = tap(book, n, add).unwrap().place else {
            panic!("a wall")
        };
        for (field, text) in answers {
            let answer = of_wall(&wall, field, text);
            let taken = if *text == "0" { insist(book, n, answer) } else { tap(book, n, answer).unwrap() };
            assert!(!taken.group.is_empty());
        }
        wall
    };
    let ends = |left, right| [("width", "10 ft"), ("left-height", left), ("right-height", right)];
    let cheek = outline(&mut book, "Cheek", &ends("0", "6 ft"));
    let flat = outline(&mut book, "Flat", &ends("0", "0"));
    let gable = outline(
        &mut book,
        "Gable",
        &[&ends("0", "0")[..], &[("peak-from-left", "60"), ("peak-height", "40")]].concat(),
    );
    let nothing_yet = view(&book, &context("en", 40), &Place::Wall { wall: flat });
    assert_eq!(nothing_yet.unwrap_err().field, "peak-height");
    let house = book.house(Some(job.parse().unwrap())).unwrap();
    let corners = |wall: &str| {
        let record = house.any(wall.parse().unwrap()).unwrap();
        let outline = crate::work::outline_with(record, std::iter::empty()).unwrap();
        outline
            .points()
            .iter()
            .map(|point| (point.x.nm() / inches(1, 0), point.y.nm() / inches(1, 0)))
            .collect::<Vec<_>>()
    };
    assert_eq!(corners(&cheek), [(0, 0), (120, 0), (120, 72)]);
    assert_eq!(corners(&gable), [(0, 0), (120, 0), (60, 40)]);
    assert_eq!(corners(&first).len(), 4);
    assert_eq!(tap(&mut book, 40, of_wall(&first, "left-height", "-1")).unwrap_err().field, "left-height");
}

#[test]
fn the_demo_and_its_readings_ask_nothing() {
    let (mut book, job) = demo_laid_out();
    let second = tap(&mut book, 3, JobsAction::OpenDemo).unwrap();
    let Place::House { job: other } = second.place else { panic!("a house") };
    let name = |job: &str| shown::<HouseView>(&book, "en", Place::House { job: job.to_owned() }).name;
    assert_eq!(name(&other), format!("{} (2)", name(&job)), "no two houses of one name");
}

/// Which is right where tape and plan differ: the plan moves, or the reading goes.
#[test]
fn which_is_right_can_be_answered() {
    let (mut book, job) = demo_laid_out();
    let house: HouseView = shown(&book, "en", Place::House { job });
    let wall = house.walls[0].wall.clone();
    tap(&mut book, 3, WallAction::PlanBoards { wall: wall.clone() }).unwrap();
    let view: WallView = shown(&book, "en", Place::Wall { wall: wall.clone() });
    let notched = |board: &str| {
        let view: BoardView = shown(&book, "en", Place::Board { board: board.to_owned() });
        view.notches.iter().find(|notch| notch.cut != "none" && !notch.cut.is_empty()).map(|notch| notch.notch.clone())
    };
    let (board, notch) = view.boards.iter().find_map(|line| Some((line.board.clone(), notched(&line.board)?))).unwrap();
    let of = |book: &Book, field: &str| {
        let view: BoardView = shown(book, "en", Place::Board { board: board.clone() });
        let questions = view.notches.into_iter().flat_map(|notch| notch.questions);
        questions.filter(|question| question.field == field).collect::<Vec<_>>()
    };
    let say = |book: &mut Book, n: u8, notch: &str, field: &str, text: &str| {
        let (board, notch, field, text) = (board.clone(), notch.to_owned(), field.to_owned(), text.to_owned());
        tap(book, n, BoardAction::AnswerNotch { board, notch, field, text })
    };
    assert!(of(&book, "right").iter().all(|question| question.kind == AnswerKind::LengthKind), "nothing differs yet");
    let planned = of(&book, "left")[0].reading.clone().unwrap().nm;
    let moved = Show::Inches(16).text(Length::from_nm(planned + inches(0, 48)));
    let right =
        Show::Inches(16).text(Length::from_nm(of(&book, "right")[0].reading.clone().unwrap().nm + inches(0, 48)));
    let taped = |book: &Book| of(book, "left")[0].subject.clone();
    say(&mut book, 4, &notch, "left", &moved).unwrap();
    let own = taped(&book);
    say(&mut book, 5, &own, "right", &right).unwrap();
    let question = of(&book, "which-is-right").pop().unwrap();
    assert_eq!((question.kind, question.choices.len(), question.optional), (AnswerKind::ChoiceKind, 2, true));
    let wrong = say(&mut book, 6, &own, "which-is-right", "both").unwrap_err();
    assert_eq!((wrong.code.as_str(), wrong.field.as_str()), ("choice", "which-is-right"));
    let dropped = say(&mut book, 7, &own, "which-is-right", "plan").unwrap();
    assert_eq!(of(&book, "left")[0].reading.clone().unwrap().nm, planned);
    tap(&mut book, 8, DoneListAction::Undo { job: None, group: dropped.group }).unwrap();
    let own = taped(&book);
    say(&mut book, 9, &own, "which-is-right", "tape").unwrap();
    assert!(of(&book, "which-is-right").is_empty(), "the plan has followed");
}

#[test]
fn a_peak_follows_from_the_pitch_of_the_roof() {
    let (mut book, job) = house();
    let Place::Measure { wall } =
        tap(&mut book, 2, HouseAction::AddWall { job, name: "Gable".to_owned() }).unwrap().place
    else {
        panic!("a wall")
    };
    assert_eq!(tap(&mut book, 3, of_wall(&wall, "pitch", "6/12")).unwrap_err().code, "first");
    for (field, text) in [("width", "24 ft"), ("left-height", "9 ft"), ("right-height", "9 ft")] {
        tap(&mut book, 4, of_wall(&wall, field, text)).unwrap();
    }
    let peak = |book: &Book| {
        let questions = shown::<MeasureView>(book, "en", Place::Measure { wall: wall.clone() }).questions;
        let of = |field: &str| questions.iter().find(|question| question.field == field)?.reading.clone();
        (of("peak-from-left").unwrap().nm, of("peak-height").unwrap().nm)
    };
    // Half of 24 ft, 6 in up for each 12 in: 6 ft over 9 ft.
    for pitch in ["6/12", "6 in 12", "1:2", "6"] {
        tap(&mut book, 5, of_wall(&wall, "pitch", pitch)).unwrap();
        assert_eq!(peak(&book), (inches(144, 0), inches(180, 0)), "{pitch}");
    }
    // The right end a foot higher: the rakes meet a foot right of the middle, 5 1/2 ft over the left end.
    tap(&mut book, 6, of_wall(&wall, "right-height", "10 ft")).unwrap();
    tap(&mut book, 7, of_wall(&wall, "pitch", "6/12")).unwrap();
    assert_eq!(peak(&book), (inches(156, 0), inches(186, 0)));
    for wrong in ["0/12", "steep", "6/0", ""] {
        assert_eq!(tap(&mut book, 8, of_wall(&wall, "pitch", wrong)).unwrap_err().field, "pitch", "{wrong}");
    }
}

/// What stays true on the next house is taken over: what is bought, how long; never what lies at hand.
#[test]
fn a_house_like_another_has_none_of_its_boards_at_hand() {
    let (mut book, job) = house();
    insist(&mut book, 2, of_house(&job, "board-height", "16"));
    let (length, count) = ("12'".to_owned(), "7".to_owned());
    tap(&mut book, 3, HouseAction::AddStock { job: job.clone(), length, count }).unwrap();
    let like = JobsAction::Create { name: "Next door".to_owned(), like: Some(job) };
    let Place::House { job: next } = tap(&mut book, 4, like).unwrap().place else { panic!("a house") };
    let view: HouseView = shown(&book, "en", Place::House { job: next.clone() });
    let stock: Vec<_> = view.stock.iter().map(|stock| (stock.length.nm, stock.count)).collect();
    assert_eq!(stock, [(inches(144, 0), None)]);
    // Somebody was sure of the boards already.
    tap(&mut book, 5, of_house(&next, "board-height", "8 1/4")).unwrap();
    tap(&mut book, 6, of_house(&next, "board-height", "16")).unwrap();
}

/// Ticks alone keep no rain out.
#[test]
fn a_penetration_that_is_ticked_to_the_end_without_a_board_up_is_not_tight() {
    let (mut book, job, wall) = wall();
    for field in ["trim-left", "trim-right"] {
        tap(&mut book, 20, of_wall(&wall, field, "0")).unwrap();
    }
    super::penetration::lay_out_pole(&mut book, &job);
    let hole = hose_bib(&mut book, &wall, &[]);
    let steps = shown::<PenetrationView>(&book, "en", Place::Penetration { penetration: hole.clone() }).steps;
    for step in steps {
        let said = StepSaid { how: StepHow::Tick, note: "done".to_owned(), measured: String::new(), photo: None };
        tap(&mut book, 30, PenetrationAction::SignStep { penetration: hole.clone(), step: step.code, said }).unwrap();
    }
    let house: HouseView = shown(&book, "en", Place::House { job });
    assert_eq!(house.walls[0].penetrations_open, 1);
    let open: Vec<WeatherKind> = house.open_to_weather.iter().map(|open| open.kind).collect();
    assert_eq!(open, [WeatherKind::BoardsMissing]);
    assert!(house.walls[0].said.contains("1 to make tight"), "{}", house.walls[0].said);
}
