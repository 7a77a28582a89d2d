use super::*;

fn answer(book: &mut Book, n: u8, (what, parent): (NewThing, &str), field: &str, text: &str) -> Outcome {
    let (parent, field, text) = (parent.to_owned(), field.to_owned(), text.to_owned());
    tap(book, n, NewAction::Answer { what, parent, field, text }).unwrap()
}

fn making(book: &Book, what: NewThing, parent: &str) -> NewView {
    shown(book, "en", Place::New { what, parent: parent.to_owned() })
}

fn asked(book: &Book, what: NewThing, parent: &str) -> String {
    making(book, what, parent).asked.map(|question| question.field).unwrap_or_default()
}

/// A house and a wall of it.
fn wall(book: &mut Book) -> String {
    let Place::House { job } = answer(book, 1, (NewThing::House, ""), "name", "Lot 7").place else { panic!("house") };
    let Place::Measure { wall } = answer(book, 2, (NewThing::Wall, &job), "name", "South").place else {
        panic!("measure")
    };
    wall
}

#[test]
fn a_penetration_takes_four_answers_and_is_one_entry() {
    let mut book = Book::in_memory().unwrap();
    let wall = wall(&mut book);
    let new = (NewThing::Penetration, wall.as_str());
    let before = book.history(None, None, 100).unwrap().len();
    for (n, (field, text)) in [("what", "hose-bib"), ("width", "7/8"), ("from-left", "52 3/8")].into_iter().enumerate()
    {
        assert_eq!(asked(&book, new.0, new.1), field);
        assert_eq!(
            answer(&mut book, 3 + u8::try_from(n).unwrap(), new, field, text).group,
            "",
            "nothing is accepted yet"
        );
    }
    assert_eq!(asked(&book, new.0, new.1), "from-base");
    let outcome = answer(&mut book, 9, new, "from-base", "24");
    assert!(matches!(outcome.place, Place::Penetration { .. }), "{:?}", outcome.place);
    assert_eq!(book.history(None, None, 100).unwrap().len(), before + 1);
    assert_eq!(asked(&book, new.0, new.1), "what", "the next one begins anew");
}

#[test]
fn keys_are_kept_and_asked_on() {
    let mut book = Book::in_memory().unwrap();
    let wall = wall(&mut book);
    let new = (NewThing::Opening, wall.as_str());
    answer(&mut book, 3, new, "what", "window");
    let (field, text) = ("width".to_owned(), "4".to_owned());
    tap(&mut book, 4, NewAction::KeepDraft { what: new.0, parent: wall.clone(), field, text }).unwrap();
    let view = making(&book, new.0, new.1);
    let asked = view.asked.unwrap();
    assert_eq!((asked.field.as_str(), asked.draft.as_str()), ("width", "4"));
    assert_eq!(view.questions[0].answer, "Window");
}

#[test]
fn a_wrong_answer_changes_nothing_and_leaving_drops_all() {
    let mut book = Book::in_memory().unwrap();
    let wall = wall(&mut book);
    let wrong = |field: &str, text: &str| NewAction::Answer {
        what: NewThing::Stud,
        parent: wall.clone(),
        field: field.to_owned(),
        text: text.to_owned(),
    };
    assert_eq!(tap(&mut book, 3, wrong("at", "-2")).unwrap_err().field, "at");
    assert_eq!(tap(&mut book, 4, wrong("colour", "blue")).unwrap_err().code, "unknown");
    answer(&mut book, 5, (NewThing::Opening, &wall), "what", "door");
    let left = tap(&mut book, 6, NewAction::Leave { what: NewThing::Opening, parent: wall.clone() }).unwrap();
    assert_eq!(left.place, Place::Measure { wall: wall.clone() });
    assert_eq!(asked(&book, NewThing::Opening, &wall), "what");
}

/// Blocks that the house has are what a better block is looked for among.
#[test]
fn a_size_of_block_is_asked_for_and_taken_off_again() {
    let (mut book, job) = house();
    let sizes = |book: &Book| shown::<HouseView>(book, "en", Place::House { job: job.clone() }).block_sizes;
    let new = (NewThing::BlockSize, job.as_str());
    answer(&mut book, 5, new, "width", "6");
    assert_eq!(asked(&book, new.0, new.1), "height");
    let made = answer(&mut book, 6, new, "height", "7 1/2");
    assert_eq!(made.place, Place::House { job: job.clone() });
    let [size] = &sizes(&book)[..] else { panic!("{:?}", sizes(&book)) };
    assert_eq!(size.said, "6\" × 7 1/2\"");
    tap(&mut book, 7, HouseAction::RemovePart { job: job.clone(), part: size.block_size.clone() }).unwrap();
    assert_eq!(sizes(&book), []);
}

#[test]
fn a_loose_board_without_a_house_asks_for_height_and_lap() {
    let mut book = Book::in_memory().unwrap();
    let new = (NewThing::LooseBoard, "");
    answer(&mut book, 1, new, "length", "118 1/2");
    answer(&mut book, 2, new, "height", "7 1/4");
    let made = answer(&mut book, 3, new, "lap", "");
    assert!(matches!(made.place, Place::Board { .. }), "{:?}", made.place);
}

#[test]
fn a_house_like_another_takes_its_boards_and_its_name_from_here() {
    let (mut book, job) = demo_laid_out();
    let of = |book: &Book, job: &str| shown::<HouseView>(book, "en", Place::House { job: job.to_owned() });
    let like = of(&book, &job);
    let new = (NewThing::House, job.as_str());
    assert_ne!(making(&book, new.0, new.1).title, making(&book, NewThing::House, "").title);
    let Place::House { job: made } = answer(&mut book, 9, new, "name", "Lot 9").place else { panic!("house") };
    let made = of(&book, &made);
    let lengths = |house: &HouseView| house.stock.iter().map(|stock| stock.length.nm).collect::<Vec<_>>();
    assert_eq!((made.name.as_str(), made.walls.len()), ("Lot 9", 0));
    assert!(!like.stock.is_empty());
    assert_eq!(lengths(&made), lengths(&like));
    assert!(made.stock.iter().all(|stock| stock.count.is_none()), "the boards at hand lie there");
    let nowhere = Place::New { what: NewThing::House, parent: "nowhere".to_owned() };
    assert_eq!(view(&book, &context("en", 0), &nowhere).unwrap_err().field, "parent");
}
