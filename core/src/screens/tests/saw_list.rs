//! Saw list and Order, from the demo house.

use super::{demo_laid_out as demo, *};

fn saw(book: &Book, language: &str, job: &str) -> SawListView {
    shown(book, language, Place::SawList { job: job.to_owned() })
}

fn order(book: &Book, language: &str, job: &str) -> OrderView {
    shown(book, language, Place::Order { job: job.to_owned() })
}

/// What was tapped on the saw list, and what it shows then.
fn tap(book: &mut Book, n: u8, action: SawListAction) -> Result<SawListView, Problem> {
    let outcome = super::tap(book, n, action)?;
    Ok(SawListView::of(outcome.view))
}

fn plan(job: &str) -> SawListAction {
    SawListAction::Plan { job: job.to_owned() }
}

#[test]
fn one_tap_plans_the_house_and_one_more_marks_a_board() {
    let (mut book, job) = demo();
    assert!(!saw(&book, "en", &job).planned);
    let list = tap(&mut book, 3, plan(&job)).unwrap();
    assert!(list.planned && list.notes.is_empty() && list.least.nm <= list.used.nm);
    // Within one board of the least possible.
    assert!(list.used.nm - list.least.nm <= 144 * 25_400_000, "{}", list.text);
    for board in &list.boards {
        // What is cut from a board and what is left of it, with an eighth for each cut between, is the board.
        let pieces: i64 = board.pieces.iter().map(|piece| piece.length.nm).sum();
        let kerfs = 3_175_000 * (board.pieces.len() as i64 - 1);
        assert_eq!(pieces + kerfs + board.rest.nm, board.length.nm);
    }
    // Cutting starts at the lowest course of the first wall.
    let first = &list.boards[0];
    assert!(first.pieces.iter().any(|piece| piece.wall == "Street gable" && piece.course <= 3), "{first:?}");
    assert_eq!(list.next, Some(first.number));
    let kept = list.boards.iter().find(|board| board.keep).unwrap().number;
    let after = tap(&mut book, 4, SawListAction::MarkCut { job: job.clone(), number: kept }).unwrap();
    assert_eq!(after.boards_cut, 1);
    let rest = after.boards.iter().find(|board| board.number == kept).unwrap().rest.nm;
    // The offcut is the rest less the cut that frees it, rounded down to the tape.
    let [offcut] = &after.offcuts[..] else { panic!("one offcut") };
    let freed = (rest - 3_175_000).div_euclid(1_587_500) * 1_587_500;
    assert_eq!((offcut.length.nm, offcut.at_hand), (freed, true));
    assert_eq!((after.used_boards, after.used.nm), (list.used_boards, list.used.nm));
}

#[test]
fn what_is_cut_stays_and_offcuts_are_used() {
    let (mut book, job) = demo();
    let list = tap(&mut book, 3, plan(&job)).unwrap();
    let cut = list.boards.iter().find(|board| board.pieces.len() > 1).unwrap().clone();
    tap(&mut book, 4, SawListAction::MarkCut { job: job.clone(), number: cut.number }).unwrap();
    tap(&mut book, 5, SawListAction::AddOffcut { job: job.clone(), length: "11'".to_owned() }).unwrap();
    let again = tap(&mut book, 6, plan(&job)).unwrap();
    let stays = again.boards.iter().find(|board| board.number == cut.number).unwrap();
    assert_eq!((&stays.pieces, stays.cut), (&cut.pieces, true));
    let taken = again.boards.iter().find(|board| board.offcut && board.length.nm == 132 * 25_400_000).unwrap();
    let number = taken.number;
    let after = tap(&mut book, 7, SawListAction::MarkCut { job: job.clone(), number }).unwrap();
    let gone = after.offcuts.iter().find(|offcut| offcut.length.nm == 132 * 25_400_000).unwrap().clone();
    assert!(!gone.at_hand);
    let back = SawListAction::KeepOffcut { job: job.clone(), offcut: gone.offcut };
    assert_eq!(tap(&mut book, 8, back).unwrap_err().code, "order");
    // Undone, the board is whole again and its offcut at hand.
    let group = book.history(None, None, 1).unwrap()[0].group;
    let undo = DoneListAction::Undo { job: None, group: group.to_string() };
    super::tap(&mut book, 9, undo).unwrap();
    let undone = saw(&book, "en", &job);
    assert!(!undone.boards.iter().find(|board| board.number == number).unwrap().cut);
    assert_eq!(undone.offcuts.iter().filter(|offcut| offcut.at_hand).count(), 2 - usize::from(!cut.keep));
}

/// What is cut stays and counts: a list takes the place of one that is half cut only where it takes less in all, or where
/// more is known of the least.
#[test]
fn a_half_cut_list_gives_way_only_to_a_better_one() {
    let (mut book, job) = demo();
    let improve = || SawListAction::Improve { job: job.clone() };
    let first = tap(&mut book, 3, plan(&job)).unwrap();
    let best = tap(&mut book, 4, improve()).unwrap_or(first);
    let cut = tap(&mut book, 5, SawListAction::MarkCut { job: job.clone(), number: best.next.unwrap() }).unwrap();
    // An offcut that came of it might make a better list possible.
    for offcut in cut.offcuts.iter().filter(|offcut| offcut.at_hand) {
        let drop = SawListAction::DropOffcut { job: job.clone(), offcut: offcut.offcut.clone() };
        tap(&mut book, 6, drop).unwrap();
    }
    let before = saw(&book, "en", &job);
    assert!(before.proved, "{}", before.text);
    let after = tap(&mut book, 7, improve()).map(|list| list.text);
    assert_eq!(after.unwrap_err().code, "infeasible");
    assert_eq!(saw(&book, "en", &job), before);
}

/// What is said to be kept is what is kept; a piece that was spoiled is gone from its board, however often it is planned anew.
#[test]
fn a_spoiled_piece_stays_gone_and_what_is_said_is_kept() {
    let (mut book, job) = demo();
    let short = RulesAction::Change {
        job: job.clone(),
        key: "offcut.keep.least".to_owned(),
        value: "1".to_owned(),
        reason: "for blocks".to_owned(),
    };
    // So little is asked about; the same once more is the yes.
    assert_eq!(super::tap(&mut book, 2, short.clone()).unwrap_err().code, "unlikely");
    super::tap(&mut book, 2, short).unwrap();
    let list = tap(&mut book, 3, plan(&job)).unwrap();
    let whole = list.boards.iter().find(|board| board.keep && board.pieces.len() > 1).unwrap().clone();
    let cut = tap(&mut book, 4, SawListAction::MarkCut { job: job.clone(), number: whole.number }).unwrap();
    let [offcut] = &cut.offcuts[..] else { panic!("one offcut") };
    for (language, said) in [("en", "keep "), ("es", "guarde ")] {
        let list = saw(&book, language, &job);
        let line = list.boards.iter().find(|board| board.number == whole.number).unwrap();
        assert!(line.rest_said.ends_with(&format!("{said}{}", offcut.length.text)), "{}", line.rest_said);
    }
    let piece = &whole.pieces[0];
    let spoil = BoardAction::SayItIsSpoiled { board: piece.board.clone(), left: String::new() };
    super::tap(&mut book, 5, spoil).unwrap();
    for n in [6, 7] {
        let again = tap(&mut book, n, plan(&job)).unwrap();
        let line = again.boards.iter().find(|board| board.number == whole.number).unwrap();
        assert_eq!((line.pieces.len(), line.rest.nm), (whole.pieces.len() - 1, whole.rest.nm));
        assert!(line.rest_said.ends_with(&format!("Spoiled: {}", piece.length.text)), "{}", line.rest_said);
        assert_eq!(again.offcuts.len(), 1, "a spoiled piece is no offcut to take back");
    }
}

#[test]
fn the_houses_rule_says_which_rests_are_kept() {
    let told = |least: i64| {
        let (mut book, job) = demo();
        super::change_rule(&mut book, 2, &job, "offcut.keep.least", &least.to_string());
        let list = tap(&mut book, 3, plan(&job)).unwrap();
        for board in &list.boards {
            assert_eq!(board.keep, board.rest.nm >= inches(least, 0), "{least}: {}", board.rest.text);
        }
        list.boards.iter().filter(|board| board.keep).count()
    };
    assert!(told(40) < told(2));
}

#[test]
fn an_offcut_is_thrown_away_and_kept_after_all() {
    let (mut book, job) = demo();
    let added = tap(&mut book, 3, SawListAction::AddOffcut { job: job.clone(), length: "40 1/2".to_owned() }).unwrap();
    let offcut = added.offcuts[0].offcut.clone();
    let dropped = tap(&mut book, 4, SawListAction::DropOffcut { job: job.clone(), offcut: offcut.clone() }).unwrap();
    assert!(!dropped.offcuts[0].at_hand);
    let kept = tap(&mut book, 5, SawListAction::KeepOffcut { job, offcut }).unwrap();
    assert!(kept.offcuts[0].at_hand);
}

#[test]
fn short_stock_is_said_and_the_order_buys_what_is_lacking() {
    let (mut book, job) = demo();
    let stock = saw(&book, "en", &job).stock[0].stock.clone();
    let say = SawListAction::SayStock { job: job.clone(), stock, count: "10".to_owned() };
    tap(&mut book, 3, say).unwrap();
    let list = tap(&mut book, 4, plan(&job)).unwrap();
    let need = &list.stock[0];
    assert_eq!((need.have, need.short), (Some(10), need.used - 10));
    assert!(need.short > 0 && list.notes.iter().any(|note| note.code == "stock-short"));
    let order = order(&book, "en", &job);
    let boards = &order.lines[0];
    assert_eq!((boards.have, boards.buy), (Some(10), boards.packs - 10));
    assert!(boards.packs > need.used, "an allowance for breakage comes on top");
    // Every line's packs are bought but for what is there.
    assert!(order.lines.iter().skip(1).all(|line| line.have.is_none() && line.buy == line.packs));
    assert_eq!(order.csv.matches("\r\n").count(), 1 + order.lines.len());
    let json: serde_json::Value = serde_json::from_str(&order.json).unwrap();
    assert_eq!(json["items"].as_array().unwrap().len(), order.lines.len());
    assert!(order.lines.iter().all(|line| order.text.contains(&line.name) == (line.buy > 0)));
}

#[test]
fn an_order_without_a_saw_list_plans_one_for_itself_and_keeps_nothing() {
    let (mut book, job) = demo();
    let before = book.history(None, None, 100).unwrap().len();
    let without = order(&book, "en", &job);
    assert_eq!(book.history(None, None, 100).unwrap().len(), before);
    tap(&mut book, 3, plan(&job)).unwrap();
    assert_eq!(order(&book, "en", &job).lines, without.lines);
}

#[test]
fn bad_input_is_refused_and_changes_nothing() {
    let (mut book, job) = demo();
    tap(&mut book, 3, plan(&job)).unwrap();
    let number = saw(&book, "en", &job).boards[0].number;
    tap(&mut book, 4, SawListAction::MarkCut { job: job.clone(), number }).unwrap();
    let before = (saw(&book, "en", &job), book.history(None, None, 100).unwrap().len());
    let own = || job.clone();
    let strange = Id::from_bytes([9; 16]).to_string();
    for (n, (action, code, field)) in [
        (SawListAction::MarkCut { job: own(), number }, "order", "number"),
        (SawListAction::MarkCut { job: own(), number: -1 }, "unknown", "number"),
        (SawListAction::AddOffcut { job: own(), length: "long".to_owned() }, "length", "length"),
        (SawListAction::AddOffcut { job: own(), length: "0".to_owned() }, "range", "length"),
        (SawListAction::AddOffcut { job: own(), length: String::new() }, "missing", "length"),
        (SawListAction::DropOffcut { job: own(), offcut: strange.clone() }, "unknown", "offcut"),
        (SawListAction::SayStock { job: own(), stock: strange.clone(), count: "3".to_owned() }, "unknown", "stock"),
        (
            SawListAction::SayStock { job: own(), stock: before.0.stock[0].stock.clone(), count: "-3".to_owned() },
            "range",
            "count",
        ),
        (SawListAction::Plan { job: strange }, "unknown", "job"),
    ]
    .into_iter()
    .enumerate()
    {
        let problem = tap(&mut book, 10 + n as u8, action.clone()).unwrap_err();
        assert_eq!((problem.code.as_str(), problem.field.as_str()), (code, field), "{action:?}");
    }
    assert_eq!((saw(&book, "en", &job), book.history(None, None, 100).unwrap().len()), before);
}

#[test]
fn a_wall_planned_anew_by_itself_is_said() {
    let (mut book, job) = demo();
    tap(&mut book, 3, plan(&job)).unwrap();
    let house: HouseView = shown(&book, "en", Place::House { job: job.clone() });
    super::tap(&mut book, 4, WallAction::PlanBoards { wall: house.walls[1].wall.clone() }).unwrap();
    let list = saw(&book, "en", &job);
    assert!(list.notes.iter().any(|note| note.code == "unlisted"), "{:?}", list.notes);
}

#[test]
fn shows_what_it_showed() {
    let (mut book, job) = demo();
    tap(&mut book, 3, plan(&job)).unwrap();
    tap(&mut book, 4, SawListAction::AddOffcut { job: job.clone(), length: "40 1/2".to_owned() }).unwrap();
    let mut list = saw(&book, "en", &job);
    list.boards.truncate(3);
    insta::assert_json_snapshot!("saw-list", list);
    let order = order(&book, "en", &job);
    insta::assert_json_snapshot!("order", order.lines);
    insta::assert_snapshot!("order-text", order.text);
    insta::assert_snapshot!("order-csv", order.csv);
}

#[test]
fn the_book_is_its_entries() {
    let (mut book, job) = demo();
    tap(&mut book, 3, plan(&job)).unwrap();
    let number = saw(&book, "en", &job).boards[0].number;
    tap(&mut book, 4, SawListAction::MarkCut { job: job.clone(), number }).unwrap();
    let before = saw(&book, "en", &job);
    book.store_mut().rebuild().unwrap();
    assert_eq!(saw(&book, "en", &job), before);
}

#[test]
fn a_job_document_carries_the_saw_list() {
    let (mut book, job) = demo();
    tap(&mut book, 3, SawListAction::AddOffcut { job: job.clone(), length: "11'".to_owned() }).unwrap();
    let list = tap(&mut book, 4, plan(&job)).unwrap();
    let number = list.boards.iter().find(|board| board.offcut).unwrap().number;
    let list = tap(&mut book, 5, SawListAction::MarkCut { job: job.clone(), number }).unwrap();
    let document = crate::handover::job_document(&book, &context("en", 6), &job).unwrap();
    let mut other = Book::in_memory().unwrap();
    let outcome = take_in_document(&mut other, &context("en", 7), &document).unwrap();
    let Place::House { job: taken } = outcome.place else { panic!("a house") };
    let again = saw(&other, "en", &taken);
    let plain = |view: &SawListView| {
        let boards: Vec<_> = view.boards.iter().map(|board| (board.number, board.cuts.clone(), board.cut)).collect();
        let offcuts: Vec<_> = view.offcuts.iter().map(|offcut| (offcut.length.nm, offcut.at_hand)).collect();
        (view.text.clone(), boards, offcuts, view.boards.iter().filter(|board| board.offcut).count())
    };
    assert_eq!(plain(&again), plain(&list));
    // Who signed what does not come in.
    let without_report = |text: &str| {
        let mut json: serde_json::Value = serde_json::from_str(text).unwrap();
        let report = json.as_object_mut().unwrap().remove("report");
        (json, report.is_some_and(|report| report.to_string().contains("board-cut")))
    };
    let again = crate::handover::job_document(&other, &context("en", 8), &taken).unwrap();
    assert_eq!(without_report(&again).0, without_report(&document).0);
    assert!(without_report(&document).1, "what was sawn is ticked");
}

#[test]
fn each_board_of_the_list_is_drawn() {
    let (mut book, job) = demo();
    let list = tap(&mut book, 3, plan(&job)).unwrap();
    let frame =
        Frame { width_dp: 360.0, height_dp: 200.0, answer_dp: 44.0, label_dp: 20.0, small_dp: 16.0, left_hand: false };
    for board in &list.boards {
        let subject = Subject::SawPattern { job: job.clone(), number: board.number };
        let drawn = drawing(&book, &context("en", 4), &subject, &frame).unwrap();
        // The board's own length, each piece and the rest are written.
        let mut wanted = vec![board.length.nm];
        wanted.extend(board.pieces.iter().map(|piece| piece.length.nm));
        wanted.extend((board.rest.nm > 0).then_some(board.rest.nm));
        let mut wanted: Vec<String> =
            wanted.into_iter().map(|nm| crate::measure::Show::Inches(16).text(Length::from_nm(nm))).collect();
        wanted.sort_unstable();
        wanted.dedup();
        let mut texts = drawn.texts.clone();
        texts.sort_unstable();
        assert_eq!(texts, wanted);
    }
    let subject = Subject::SawPattern { job, number: 9_999 };
    assert_eq!(drawing(&book, &context("en", 5), &subject, &frame).unwrap_err().code, "unknown");
}

/// A board of the same number with other cuts is drawn anew.
#[test]
fn each_board_of_the_list_has_the_revision_of_its_cuts() {
    let (mut book, job) = demo();
    let view = tap(&mut book, 60, plan(&job)).unwrap();
    let same = |one: &SawBoardLine, other: &SawBoardLine| {
        (&one.cuts, one.length.nm, one.rest.nm) == (&other.cuts, other.length.nm, other.rest.nm)
    };
    for one in &view.boards {
        for other in &view.boards {
            assert_eq!(one.revision == other.revision, same(one, other), "{one:?} {other:?}");
        }
    }
}

/// An offcut that comes after the plan may spare a board: until a further plan had it nobody says that none takes less.
#[test]
fn an_offcut_after_the_plan_takes_the_proof_away_until_the_next_one() {
    let (mut book, job) = demo();
    let planned = tap(&mut book, 3, plan(&job)).unwrap();
    assert!(planned.proved, "{}", planned.text);
    let add = SawListAction::AddOffcut { job: job.clone(), length: "12'".to_owned() };
    let added = tap(&mut book, 4, add).unwrap();
    assert!(!added.proved && added.used_boards == planned.used_boards, "{}", added.text);
    let offcut = added.offcuts.iter().find(|offcut| offcut.length.nm == 144 * 25_400_000).unwrap().offcut.clone();
    // A further plan takes it in place of a new board.
    let spared = tap(&mut book, 5, SawListAction::Improve { job: job.clone() }).unwrap();
    assert_eq!(spared.used_boards, planned.used_boards - 1, "{}", spared.text);
    let drop = SawListAction::DropOffcut { job: job.clone(), offcut: offcut.clone() };
    tap(&mut book, 6, drop).unwrap();
    tap(&mut book, 7, plan(&job)).unwrap();
    let kept = tap(&mut book, 8, SawListAction::KeepOffcut { job, offcut }).unwrap();
    assert!(!kept.proved, "{}", kept.text);
}

/// A wall of 11 ft by 101 in.
fn eleven_by_101(book: &mut Book, n: u8, job: &str, name: &str) -> String {
    let add = HouseAction::AddWall { job: job.to_owned(), name: name.to_owned() };
    let Place::Measure { wall } = super::tap(book, n, add).unwrap().place else { panic!("a wall") };
    measure_eleven_by_101(book, &wall);
    wall
}

fn measure_eleven_by_101(book: &mut Book, wall: &str) {
    for (field, text) in [
        ("width", "11'"),
        ("left-height", "101 in"),
        ("right-height", "101 in"),
        ("base", "0"),
        ("first-stud", "0"),
        ("stud-spacing", "16"),
        ("trim-left", "0"),
        ("trim-right", "0"),
    ] {
        let (wall, field, text) = (wall.to_owned(), field.to_owned(), text.to_owned());
        super::tap(book, 9, MeasureAction::Answer { wall, field, text }).unwrap();
    }
}

/// One wall has no other low course to share with: 8 1/4 in less 2 7/8 and a kerf are 5 1/4 in, kept when the board is cut, and
/// the top course of the next wall comes out of them.
#[test]
fn a_strip_that_is_kept_is_a_board_of_the_next_wall() {
    let (mut book, job, south) = super::penetration::wall();
    measure_eleven_by_101(&mut book, &south);
    let stock = HouseAction::AddStock { job: job.clone(), length: "12'".to_owned(), count: String::new() };
    super::tap(&mut book, 10, stock).unwrap();
    super::penetration::lay_out_pole(&mut book, &job);
    let planned = tap(&mut book, 11, plan(&job)).unwrap();
    let top = |list: &SawListView, wall: &str| {
        let goes = |piece: &SawPieceLine| piece.course == 15 && piece.wall == wall;
        list.boards.iter().find(|board| board.pieces.iter().any(goes)).unwrap().clone()
    };
    let keep = "Strips ripped off: keep 131 3/4\" by 5 1/4\" high";
    assert!(!top(&planned, "South").rest_said.contains("Strips"), "no strip may hang yet");
    let (key, value, reason) = ("rips.per-board".to_owned(), "2".to_owned(), "plain edges".to_owned());
    super::tap(&mut book, 12, RulesAction::Change { job: job.clone(), key, value, reason }).unwrap();
    let list = saw(&book, "en", &job);
    assert!(top(&list, "South").rest_said.ends_with(keep), "{}", top(&list, "South").rest_said);
    assert!(top(&saw(&book, "es", &job), "South").rest_said.contains("5 1/4\" de alto"));
    let number = top(&list, "South").number;
    let cut = tap(&mut book, 13, SawListAction::MarkCut { job: job.clone(), number }).unwrap();
    let at_hand: Vec<&str> = cut.offcuts.iter().map(|offcut| offcut.length.text.as_str()).collect();
    assert_eq!(at_hand, ["131 3/4\" by 5 1/4\" high"]);
    let north = eleven_by_101(&mut book, 14, &job, "North");
    let list = tap(&mut book, 15, plan(&job)).unwrap();
    assert_eq!((list.used_boards, list.proved, list.notes.len()), (29, true, 0), "{:?}", list.notes);
    let own = top(&list, "North");
    assert_eq!((own.offcut, own.length.nm, own.pieces.len()), (true, inches(131, 48), 1));
    let view: BoardView = shown(&book, "en", Place::Board { board: own.pieces[0].board.clone() });
    assert!(view.instructions[0].text.starts_with("Take it out of the strip that was kept"), "{:?}", view.instructions);
    assert_eq!(order(&book, "en", &job).lines[0].net, "29");
    // Another phone that takes the house in plans the same.
    let text = crate::handover::job_document(&book, &context("en", 16), &job).unwrap();
    let mut other = Book::in_memory().unwrap();
    let Place::House { job: taken } = take_in_document(&mut other, &context("en", 17), &text).unwrap().place else {
        panic!("a house")
    };
    let there = saw(&other, "en", &taken);
    assert_eq!((there.used_boards, there.notes.len()), (29, 0), "{:?}", there.notes);
    assert_eq!(there.offcuts[0].length.text, at_hand[0]);
    // The wall becomes higher than the strip.
    for field in ["left-height", "right-height"] {
        let (wall, field, text) = (north.clone(), field.to_owned(), "104 in".to_owned());
        super::tap(&mut book, 18, MeasureAction::Answer { wall, field, text }).unwrap();
    }
    assert!(top(&saw(&book, "en", &job), "North").pieces[0].said.ends_with("no longer fits"));
    assert_eq!(tap(&mut book, 19, plan(&job)).unwrap().used_boards, 30);
}

/// What is left of a spoiled piece that was ripped is no offcut of a board's full height.
#[test]
fn the_rest_of_a_spoiled_low_piece_is_low() {
    let (mut book, job, south) = super::penetration::wall();
    measure_eleven_by_101(&mut book, &south);
    let stock = HouseAction::AddStock { job: job.clone(), length: "12'".to_owned(), count: String::new() };
    super::tap(&mut book, 10, stock).unwrap();
    super::penetration::lay_out_pole(&mut book, &job);
    let list = tap(&mut book, 11, plan(&job)).unwrap();
    for (n, course) in [(12, 15), (15, 3)] {
        let of = |board: &&SawBoardLine| board.pieces[0].course == course;
        let own = list.boards.iter().find(of).unwrap();
        tap(&mut book, n, SawListAction::MarkCut { job: job.clone(), number: own.number }).unwrap();
        let (board, left) = (own.pieces[0].board.clone(), "60".to_owned());
        super::tap(&mut book, n + 1, BoardAction::SayItIsSpoiled { board, left }).unwrap();
    }
    let view = saw(&book, "en", &job);
    let mut texts: Vec<&str> = view.offcuts.iter().map(|own| own.length.text.as_str()).collect();
    texts.sort_unstable();
    assert_eq!(texts, ["60\"", "60\" by 2 7/8\" high"]);
}

/// Two walls, 11 ft each and 101 in high: from 98 in their top courses are ripped to 2 7/8 in, twice 2 7/8 and a kerf of 1/8 in are
/// 5 7/8 of 8 1/4 in. Where the crew turns strips, one board gives both.
#[test]
fn a_strip_that_is_ripped_off_is_a_board_where_the_rule_allows_it() {
    let (mut book, job, south) = super::penetration::wall();
    measure_eleven_by_101(&mut book, &south);
    eleven_by_101(&mut book, 8, &job, "North");
    let stock = HouseAction::AddStock { job: job.clone(), length: "12'".to_owned(), count: String::new() };
    super::tap(&mut book, 10, stock).unwrap();
    super::penetration::lay_out_pole(&mut book, &job);
    let before = tap(&mut book, 11, plan(&job)).unwrap();
    assert_eq!((before.used_boards, before.proved), (30, true));
    let (key, value, reason) = ("rips.per-board".to_owned(), "2".to_owned(), "plain edges".to_owned());
    super::tap(&mut book, 12, RulesAction::Change { job: job.clone(), key, value, reason }).unwrap();
    let list = tap(&mut book, 13, plan(&job)).unwrap();
    assert_eq!((list.used_boards, list.proved), (29, true));
    let shared: Vec<&SawBoardLine> = list.boards.iter().filter(|board| board.pieces.len() == 2).collect();
    let [shared] = shared.as_slice() else { panic!("{shared:?}") };
    assert!(shared.pieces.iter().all(|piece| piece.course == 15));
    assert_eq!(shared.cuts, "131 3/4\"; out of the strip: 131 3/4\"");
    assert_eq!(shared.rest.nm, inches(144 - 131, 0) - inches(0, 48));
    assert!(shared.pieces[1].said.ends_with("out of the strip that is ripped off"), "{}", shared.pieces[1].said);
    let board = |piece: &SawPieceLine| -> BoardView { shown(&book, "en", Place::Board { board: piece.board.clone() }) };
    let [own, strip] = [0, 1].map(|at: usize| board(&shared.pieces[at]));
    let told = |view: &BoardView| view.instructions.iter().map(|line| line.code.clone()).collect::<Vec<_>>();
    assert_eq!(
        (told(&own), told(&strip)),
        (vec!["length".into(), "rip".into()], vec!["strip".into(), "length".into(), "rip".into()])
    );
    assert!(strip.instructions[2].text.starts_with("Rip the strip down to 2 7/8\""), "{:?}", strip.instructions);
    assert!(own.instructions[1].text.starts_with("Rip 5 3/8\" off the top edge"), "{:?}", own.instructions);
    // The house as a document keeps it, and its order buys one board less.
    let boards = |book: &Book, job: &str| order(book, "en", job).lines[0].net.clone();
    assert_eq!(boards(&book, &job), "29");
    let text = crate::handover::job_document(&book, &context("en", 14), &job).unwrap();
    let mut other = Book::in_memory().unwrap();
    let Place::House { job: taken } = take_in_document(&mut other, &context("en", 15), &text).unwrap().place else {
        panic!("a house")
    };
    assert_eq!(saw(&other, "en", &taken).used_boards, 29);
    assert!(saw(&other, "en", &taken).notes.is_empty(), "{:?}", saw(&other, "en", &taken).notes);
    // The walls become higher: nothing is left for a strip.
    for field in ["left-height", "right-height"] {
        let (wall, field, text) = (south.clone(), field.to_owned(), "104 in".to_owned());
        super::tap(&mut book, 16, MeasureAction::Answer { wall, field, text }).unwrap();
    }
    let marked = saw(&book, "en", &job).boards.into_iter().flat_map(|board| board.pieces);
    assert_eq!(marked.filter(|piece| piece.said.ends_with("no longer fits")).count(), 2);
    let again = tap(&mut book, 17, plan(&job)).unwrap();
    assert_eq!((again.used_boards, again.notes.len()), (30, 0));
}

/// Who is at the saw without the phone has every cut, with where it goes and whether more is cut of it.
#[test]
fn a_ticket_is_all_of_a_board_as_text() {
    let (mut book, job) = demo();
    let list = tap(&mut book, 3, plan(&job)).unwrap();
    for board in &list.boards {
        let lines: Vec<&str> = board.ticket.lines().collect();
        assert!(lines[0].contains(&list.name) && lines[0].ends_with(&board.length.text), "{}", board.ticket);
        assert_eq!(lines.len(), board.pieces.len() + 2);
        for (piece, line) in board.pieces.iter().zip(&lines[1..]) {
            assert!(line.contains(&piece.length.text) && line.ends_with(&piece.said), "{line}");
            assert_eq!(line.ends_with("notched"), piece.notched, "{line}");
        }
    }
    let notched = |of: bool| list.boards.iter().flat_map(|board| &board.pieces).any(|piece| piece.notched == of);
    assert!(notched(true) && notched(false));
    assert!(saw(&book, "es", &job).boards.iter().any(|board| board.ticket.contains("con muesca")));
}
