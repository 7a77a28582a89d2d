use super::*;
use crate::book::Kind;

/// A house of one wall with a little of everything that a detail follows from.
const HOUSE: &str = r#"{
  "lapwright": 1, "name": "Corner house", "board-height": "8 1/4 in", "rules": "us",
  "rules-changed": [{ "key": "furring.thickness", "value": "3/4 in", "reason": "rainscreen" }],
  "stock": [{ "length": "12 ft" }],
  "pole": { "from": "0 in", "to": "91 in", "mode": "fixed", "reveal": "7 in", "reveal-max": "7 in", "reveal-min": "6 in" },
  "walls": [{
    "name": "Front", "width": "30 ft", "left-height": "91 in", "right-height": "91 in", "base": "0 in",
    "first-stud": "0 in", "stud-spacing": "16 in", "trim-left": "3 1/2 in", "trim-right": "0 in",
    "openings": [
      { "what": "window", "from-left": "40 in", "width": "30 in", "from-base": "29 in", "height": "34 in" },
      { "what": "door", "from-left": "100 in", "width": "36 in", "from-base": "0 in", "height": "66 in" }],
    "abutments": [
      { "what": "ground", "from-left": "0 in", "width": "100 in", "top": "-7 in" },
      { "what": "deck", "from-left": "150 in", "width": "30 in", "top": "-3 in" },
      { "what": "ledge", "from-left": "190 in", "width": "30 in", "top": "3 in" },
      { "what": "roof", "from-left": "230 in", "width": "30 in", "top": "6 in" },
      { "what": "roof", "from-left": "280 in", "width": "80 in", "top": "4 in", "rise": "40 in" }]
  }]
}"#;

fn house_of_details() -> (Book, String, String) {
    let mut book = Book::in_memory().unwrap();
    let mut take_in = || take_in_document(&mut book, &context("en", 1), HOUSE);
    let taken = take_in().or_else(|_| take_in()).unwrap();
    let Place::House { job } = taken.place else { panic!("a house opens") };
    tap(&mut book, 2, PoleAction::LayOut { job: job.clone() }).unwrap();
    let wall = book.house(Some(job.parse().unwrap())).unwrap().own(Kind::Wall)[0].id().to_string();
    (book, job, wall)
}

fn detail_of(book: &Book, wall: &str, place: &str) -> String {
    let view: WallView = shown(book, "en", Place::Wall { wall: wall.to_owned() });
    let line = view.details.iter().find(|line| line.detail.ends_with(&format!("/{place}")));
    line.unwrap_or_else(|| panic!("no {place} among {:?}", view.details)).detail.clone()
}

fn detail(book: &Book, language: &str, name: &str) -> PenetrationView {
    shown(book, language, Place::Penetration { penetration: name.to_owned() })
}

fn ticked() -> StepSaid {
    StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None }
}

#[test]
fn a_wall_lists_its_details_in_the_order_of_the_work() {
    let (book, _, wall) = house_of_details();
    let view: WallView = shown(&book, "en", Place::Wall { wall });
    let places: Vec<&str> = view.details.iter().filter_map(|line| Some(line.detail.split_once('/')?.1)).collect();
    let all = [
        "barrier",
        "base",
        "furring",
        "corner-left",
        "corner-right",
        "window",
        "door",
        "ledger",
        "ledge",
        "roof-head",
        "roof-side",
        "eave",
    ];
    assert_eq!(places, all);
}

/// Every detail is shown in both languages with its layers, its sizes and its steps, sheds, and is drawn both ways.
#[test]
fn every_detail_is_told_and_drawn() {
    let (book, _, wall) = house_of_details();
    let view: WallView = shown(&book, "en", Place::Wall { wall });
    let frame =
        Frame { width_dp: 340.0, height_dp: 500.0, answer_dp: 44.0, label_dp: 18.0, small_dp: 14.0, left_hand: false };
    for line in &view.details {
        for language in ["en", "es"] {
            let told = detail(&book, language, &line.detail);
            let shedding = told.shedding.clone().unwrap();
            assert!(shedding.sheds, "{} {:?}", line.name, shedding.lines);
            assert!(!told.sizes.is_empty() && !told.layers.is_empty() && told.steps.len() > 2, "{}", line.name);
            let texts = told.layers.iter().map(|layer| &layer.text).chain(told.sizes.iter().map(|size| &size.label));
            let texts = texts.chain(told.steps.iter().flat_map(|step| [&step.text, &step.reason])).chain([&told.name]);
            for text in texts {
                let untold =
                    ["detail-", "step-", "layer-"].iter().any(|key| text.starts_with(key)) || text.contains('{');
                assert!(!untold, "{language} {}: {text}", line.name);
            }
        }
        let id = line.detail.clone();
        for subject in [front(&id, ""), section(&id, "")] {
            let drawn = drawing(&book, &context("en", 0), &subject, &frame).unwrap();
            assert!(drawn.bytes.len() > 100 && drawn.height_dp > 40.0, "{} {subject:?}", line.name);
        }
    }
}

fn front(penetration: &str, layer: &str) -> Subject {
    Subject::LayersFront { penetration: penetration.to_owned(), layer: layer.to_owned() }
}

fn section(penetration: &str, layer: &str) -> Subject {
    Subject::LayersSection { penetration: penetration.to_owned(), layer: layer.to_owned() }
}

/// The layers are numbered from the wall outward; a step points out the layer that it puts, which is then drawn otherwise
/// from the front; which of its wall's details it is stands above them.
#[test]
fn a_step_points_out_its_layer() {
    let (book, _, wall) = house_of_details();
    let view: WallView = shown(&book, "en", Place::Wall { wall });
    let frame =
        Frame { width_dp: 340.0, height_dp: 500.0, answer_dp: 44.0, label_dp: 18.0, small_dp: 14.0, left_hand: false };
    let bytes = |subject: Subject| drawing(&book, &context("en", 0), &subject, &frame).unwrap().bytes;
    for (nth, line) in (1..).zip(&view.details) {
        let told = detail(&book, "en", &line.detail);
        assert_eq!(told.said, format!("Front, {nth} of {}", view.details.len()));
        assert!((1..).zip(&told.layers).all(|(number, layer)| layer.number == number), "{:?}", told.layers);
        // A bead and what lies past the edge of the wall have no place in a drawing of it; the others are picked out.
        let plain = bytes(front(&line.detail, ""));
        let picked = |step: &&StepLine| !step.layer.is_empty() && bytes(front(&line.detail, &step.layer)) != plain;
        let picked: Vec<&str> = told.steps.iter().filter(picked).map(|step| step.code.as_str()).collect();
        assert!(!picked.is_empty(), "{}", line.name);
        if line.detail.ends_with("/window") {
            let put =
                ["sill-flashing", "jamb-flashing", "head-membrane", "trim-sides", "head-flashing", "barrier-down"];
            for step in put {
                assert!(picked.contains(&&*format!("window/{step}")), "{step} of {picked:?}");
            }
        }
    }
}

/// A step that asks for a measure asks for it at its tick, at a detail as at a penetration.
#[test]
fn a_measured_step_of_a_detail_opens_its_question() {
    let (book, _, wall) = house_of_details();
    let barrier = detail(&book, "en", &detail_of(&book, &wall, "barrier"));
    let course = barrier.steps.iter().find(|step| step.code == "barrier/barrier-course").unwrap();
    assert_eq!(course.opens.as_ref().map(|asks| asks.field.as_str()), Some("barrier/barrier-course/measured"));
}

/// The steps of both corners are signed on one wall, each for itself; the wall says how many are open, and a tick is taken back.
#[test]
fn a_detail_is_ticked_like_a_penetration() {
    let (mut book, _, wall) = house_of_details();
    let (left, right) = (detail_of(&book, &wall, "corner-left"), detail_of(&book, &wall, "corner-right"));
    let sign = |book: &mut Book, n: u8, detail: &str, step: &str| {
        tap(
            book,
            n,
            PenetrationAction::SignStep { penetration: detail.to_owned(), step: step.to_owned(), said: ticked() },
        )
    };
    let outcome = sign(&mut book, 3, &left, "corner-left/corner-wrap").unwrap();
    assert_eq!(outcome.place, Place::Penetration { penetration: left.clone() });
    let state = |book: &Book, name: &str| detail(book, "en", name).steps[0].state;
    assert_eq!((state(&book, &left), state(&book, &right)), (StepState::Done, StepState::Open));
    // What is hidden later is not passed over in silence.
    let passed = sign(&mut book, 4, &left, "corner-left/corner-boards").unwrap_err();
    assert_eq!(passed.code, "first", "{passed:?}");
    let open = |book: &Book| {
        let view: WallView = shown(book, "en", Place::Wall { wall: wall.clone() });
        view.details.iter().find(|line| line.detail == left).unwrap().said.clone()
    };
    let before = open(&book);
    tap(&mut book, 5, DoneListAction::Undo { job: None, group: outcome.group }).unwrap();
    assert_ne!(open(&book), before);
    assert_eq!(state(&book, &left), StepState::Open);
}

/// How a corner is made is asked at the corner: with another answer its layers are others, and what was ticked says so.
#[test]
fn a_corner_asks_how_it_is_made() {
    let (mut book, _, wall) = house_of_details();
    let left = detail_of(&book, &wall, "corner-left");
    let (step, said) = ("corner-left/corner-wrap".to_owned(), ticked());
    tap(&mut book, 3, PenetrationAction::SignStep { penetration: left.clone(), step, said }).unwrap();
    let asked = detail(&book, "en", &left).questions;
    assert_eq!(asked.iter().map(|question| question.field.as_str()).collect::<Vec<_>>(), ["corner-left"]);
    let answer = |text: &str| PenetrationAction::Answer {
        penetration: left.clone(),
        field: "corner-left".to_owned(),
        text: text.to_owned(),
    };
    tap(&mut book, 4, answer("mitred")).unwrap();
    let mitred = detail(&book, "en", &left);
    assert!(mitred.layers.iter().all(|layer| layer.code != "corner-boards"));
    assert!(mitred.steps[0].differs, "the wrap was ticked for another corner");
    // 3/4 in of furring, one board thickness at the top edge and two at the bottom: 1 1/16 and 1 3/8 in.
    let size = |code: &str| mitred.sizes.iter().find(|size| size.code == code).unwrap().reading.nm;
    assert_eq!((size("past-corner-top"), size("past-corner-bottom")), (inches(1, 4), inches(1, 24)));
}

/// Boards follow a roof that runs up along the wall: on a 6 in 12 slope from 4 in at 280 in, with 1 in of clearance square
/// to the roof, the first course ends before the roof and its end is no longer square.
#[test]
fn boards_are_cut_along_a_sloped_roof() {
    let (mut book, _, wall) = house_of_details();
    tap(&mut book, 3, WallAction::PlanBoards { wall: wall.clone() }).unwrap();
    let view: WallView = shown(&book, "en", Place::Wall { wall });
    // 5 in over the roof at its foot, 8 1/4 in high: the right end of the first course leans.
    let first: Vec<_> = view.boards.iter().filter(|board| board.course == 1).collect();
    let right = first.iter().map(|board| board.at.right).max().unwrap();
    assert!(right < inches(300, 0), "the first course ends at the roof: {right}");
    // 91 in high over a slope that ends at 44 in + 1 in x 13.42 / 12: the upper courses reach the wall's end.
    let upper = view.boards.iter().filter(|board| board.course == 9).map(|board| board.at.right).max().unwrap();
    assert!(upper > inches(355, 0), "{upper}");
    let slanted = |shape: &ShapeView| {
        let corners = || shape.shape.iter().zip(shape.shape.iter().cycle().skip(1));
        corners().any(|(a, b)| a.x != b.x && a.y != b.y)
    };
    let courses: std::collections::BTreeSet<i64> =
        view.boards.iter().filter(|board| board.shapes.iter().any(slanted)).map(|board| board.course).collect();
    assert_eq!(courses.into_iter().collect::<Vec<_>>(), [1, 2, 3, 4, 5, 6, 7]);
}

/// What the details take is ordered: 30 in each of ledger, ledge and roof; a slope of 80 in that rises 40 is 89.4 in long,
/// 18 pieces of 5 in with one kick-out; 23 studs from 0 to 360 in.
#[test]
fn what_details_take_is_ordered() {
    let (book, job, _) = house_of_details();
    let view: OrderView = shown(&book, "en", Place::Order { job });
    let net = |name: &str| {
        let line = view.lines.iter().find(|line| line.name == name);
        line.unwrap_or_else(|| panic!("no {name} in {:?}", view.lines)).net.clone()
    };
    assert_eq!(net("Flashing along roofs, ledgers and ledges"), "7.5 ft");
    assert_eq!((net("Step flashing"), net("Kick-out flashing")), ("18".to_owned(), "1".to_owned()));
    assert_eq!(net("Furring strips"), "174.5 ft");
}

/// No tape reads the thickness of a sheet: IRC R905.2.8.3 has 0.019 in for step flashing.
#[test]
fn a_sheet_is_as_thick_as_its_source_says() {
    let (book, _, wall) = house_of_details();
    let name = detail_of(&book, &wall, "roof-side");
    let thickness = |show: &str| {
        let place = Place::Penetration { penetration: name.clone() };
        let context = Context { show: show.to_owned(), ..context("en", 1) };
        let View::PenetrationKind { view } = view(&book, &context, &place).unwrap() else { panic!("a detail opens") };
        view.sizes.into_iter().find(|size| size.code == "sheet-least").unwrap().reading.text
    };
    assert_eq!(thickness("in/16"), "0.019 in");
    // 0.4826 mm, rounded up.
    assert_eq!(thickness("mm"), "0.49 mm");
}

/// A door has neither a sill to lap over nor a casing below.
#[test]
fn the_layers_of_a_door_name_nothing_that_it_lacks() {
    let (book, _, wall) = house_of_details();
    let said = |place: &str| -> String {
        let view = detail(&book, "en", &detail_of(&book, &wall, place));
        view.layers.iter().map(|layer| layer.text.as_str()).collect::<Vec<_>>().join(" ")
    };
    let (window, door) = (said("window"), said("door"));
    assert!(window.contains("under the sill") && window.contains("Casing: bottom"), "{window}");
    assert!(door.contains("under the threshold") && !door.contains("sill") && !door.contains("bottom"), "{door}");
}

#[test]
fn a_place_that_a_wall_has_not_is_unknown() {
    let (mut book, _, wall) = house_of_details();
    for name in [format!("{wall}/rake"), format!("{wall}/cellar"), "00000000000000000000000000000000/base".to_owned()] {
        let place = Place::Penetration { penetration: name.clone() };
        let problem = view(&book, &context("en", 0), &place).unwrap_err();
        assert_eq!(problem.code, "unknown", "{name}");
    }
    let base = detail_of(&book, &wall, "base");
    let problem = tap(&mut book, 3, PenetrationAction::TakeAdvice { penetration: base }).unwrap_err();
    assert_eq!(problem.code, "unknown");
}
