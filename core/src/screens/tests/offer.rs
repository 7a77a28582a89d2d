//! What another answer or a rule already says is offered, and nothing is filled in unasked.

use super::*;
use crate::rules::{RuleSet, keys};

fn house(book: &mut Book) -> String {
    let made = tap(book, 1, JobsAction::Create { name: "Lot 7".to_owned(), like: None }).unwrap();
    let Place::House { job } = made.place else { panic!("house") };
    job
}

fn of<'a>(questions: &'a [Question], field: &str) -> &'a Question {
    questions.iter().find(|question| question.field == field).unwrap()
}

#[test]
fn what_a_rule_says_of_the_boards_is_offered_and_taken_as_it_is() {
    for language in ["en", "es"] {
        let mut book = Book::in_memory().unwrap();
        let job = house(&mut book);
        let rules = RuleSet::standard();
        let fields = [
            ("board-thickness", keys::BOARD_THICKNESS),
            ("lap", keys::LAP_LEAST),
            ("nail-line", keys::NAIL_LINE_LEAST),
        ];
        for (n, (field, rule)) in (2..).zip(fields) {
            let view: HouseView = shown(&book, language, Place::House { job: job.clone() });
            let question = of(&view.questions, field);
            assert_eq!(question.answer, "", "{field} is filled in by nobody");
            let offer = question.offer.clone().unwrap();
            assert!(offer.said.starts_with(&offer.text) && offer.said.len() > offer.text.len(), "{offer:?}");
            let action = HouseAction::Answer { job: job.clone(), field: field.to_owned(), text: offer.text };
            act(&mut book, &context(language, n), &action.into()).unwrap();
            let view: HouseView = shown(&book, language, Place::House { job: job.clone() });
            let answered = of(&view.questions, field);
            assert_eq!(answered.reading.as_ref().unwrap().nm, rules.get_length(rule).unwrap().nm(), "{field}");
            assert_eq!(answered.offer, None);
        }
        let view: HouseView = shown(&book, language, Place::House { job: job.clone() });
        assert_eq!(of(&view.questions, "board-height").offer, None, "no rule says how high the boards are");
    }
}

#[test]
fn the_other_end_and_another_wall_are_offered() {
    let mut book = Book::in_memory().unwrap();
    let job = house(&mut book);
    let add = |book: &mut Book, n, name: &str| {
        let made = tap(book, n, HouseAction::AddWall { job: job.clone(), name: name.to_owned() }).unwrap();
        let Place::Measure { wall } = made.place else { panic!("measure") };
        wall
    };
    let questions = |book: &Book, wall: &str| -> Vec<Question> {
        shown::<MeasureView>(book, "en", Place::Measure { wall: wall.to_owned() }).questions
    };
    let answer = |book: &mut Book, n, wall: &str, field: &str, text: &str| {
        let (wall, field, text) = (wall.to_owned(), field.to_owned(), text.to_owned());
        tap(book, n, MeasureAction::Answer { wall, field, text }).unwrap();
    };
    let south = add(&mut book, 2, "South");
    assert_eq!(of(&questions(&book, &south), "right-height").offer, None);
    let spacing = of(&questions(&book, &south), "stud-spacing").offer.clone().unwrap();
    assert!(spacing.said.contains("rule"), "{spacing:?}");
    answer(&mut book, 3, &south, "left-height", "108 1/2");
    answer(&mut book, 4, &south, "trim-left", "3 1/2");
    answer(&mut book, 5, &south, "stud-spacing", "12");
    let asked = questions(&book, &south);
    assert_eq!(of(&asked, "right-height").offer.as_ref().unwrap().said, "108 1/2\", as on the left");
    assert_eq!(of(&asked, "trim-right").offer.as_ref().unwrap().text, "3 1/2\"");
    let north = add(&mut book, 6, "North");
    let spacing = of(&questions(&book, &north), "stud-spacing").offer.clone().unwrap();
    assert_eq!((spacing.text.as_str(), spacing.said.as_str()), ("12\"", "12\", as on South"));
    // Shown in inches it is rounded: that is not what was read, and is not offered.
    answer(&mut book, 7, &north, "left-height", "2745 mm");
    assert_eq!(of(&questions(&book, &north), "right-height").offer, None);
}

#[test]
fn a_loose_board_without_a_house_is_offered_the_last_ones_height_and_lap() {
    let mut book = Book::in_memory().unwrap();
    let asked = |book: &Book| -> Vec<Question> {
        shown::<NewView>(book, "en", Place::New { what: NewThing::LooseBoard, parent: String::new() }).questions
    };
    assert_eq!(of(&asked(&book), "height").offer, None);
    assert!(of(&asked(&book), "lap").offer.as_ref().unwrap().said.contains("rule"));
    let given = [("length", "96"), ("height", "8 1/4"), ("lap", "1 1/2")];
    let answers = given.map(|(field, text)| Given { field: field.to_owned(), text: text.to_owned() }).to_vec();
    tap(&mut book, 2, BoardAction::CreateLoose { job: None, answers }).unwrap();
    assert_eq!(of(&asked(&book), "height").offer.as_ref().unwrap().text, "8 1/4\"");
    assert_eq!(of(&asked(&book), "lap").offer.as_ref().unwrap().said, "1 1/2\", as on the last board");
}

#[test]
fn a_window_is_asked_of_by_its_trim_and_a_tap_by_its_block() {
    let (mut book, job) = demo_laid_out();
    let house: HouseView = shown(&book, "en", Place::House { job });
    let wall = house.walls[0].wall.clone();
    tap(&mut book, 3, WallAction::PlanBoards { wall: wall.clone() }).unwrap();
    let view: WallView = shown(&book, "en", Place::Wall { wall });
    let mut seen = [false; 2];
    for line in view.boards.iter().filter(|line| line.notched) {
        for (language, trim, block) in [("en", "trim", "block"), ("es", "moldura", "bloque")] {
            let board: BoardView = shown(&book, language, Place::Board { board: line.board.clone() });
            for notch in &board.notches {
                let opening = view.openings.iter().any(|opening| opening.opening == notch.notch);
                seen[usize::from(opening)] = true;
                for question in
                    notch.questions.iter().filter(|question| !question.optional || question.field.ends_with("-right"))
                {
                    let title = &question.title;
                    assert_eq!((title.contains(trim), title.contains(block)), (opening, !opening), "{title}");
                }
            }
        }
    }
    assert_eq!(seen, [true, true], "the demo has both");
}
