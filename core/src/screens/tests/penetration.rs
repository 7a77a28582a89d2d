use super::*;
use crate::work::PenetrationSite;

/// A house with boards of 8 1/4 in lapped by 1 1/4 in and a wall, whose courses stand 7 in apart once the pole is laid
/// out.
pub(super) fn wall() -> (Book, String, String) {
    let (mut book, job) = house();
    for (field, text) in
        [("board-height", "8 1/4"), ("board-thickness", "5/16"), ("lap", "1 1/4"), ("nail-line", "3/4")]
    {
        let (field, text) = (field.to_owned(), text.to_owned());
        tap(&mut book, 2, HouseAction::Answer { job: job.clone(), field, text }).unwrap();
    }
    let added = tap(&mut book, 3, HouseAction::AddWall { job: job.clone(), name: "South".to_owned() }).unwrap();
    let Place::Measure { wall } = added.place else { panic!("a new wall is measured") };
    for (field, text) in [
        ("width", "12'"),
        ("left-height", "9'"),
        ("right-height", "9'"),
        ("base", "0"),
        ("first-stud", "0"),
        ("stud-spacing", "16"),
    ] {
        let (field, text) = (field.to_owned(), text.to_owned());
        tap(&mut book, 4, MeasureAction::Answer { wall: wall.clone(), field, text }).unwrap();
    }
    (book, job, wall)
}

/// Lays the pole out with a line every 7 in.
pub(super) fn lay_out_pole(book: &mut Book, job: &str) {
    for (field, text) in
        [("from", "0"), ("to", "105"), ("mode", "fixed"), ("reveal", "7"), ("reveal-max", "7"), ("reveal-min", "7")]
    {
        let (field, text) = (field.to_owned(), text.to_owned());
        tap(book, 5, PoleAction::Answer { job: job.to_owned(), field, text }).unwrap();
    }
    tap(book, 6, PoleAction::LayOut { job: job.to_owned() }).unwrap();
}

fn given(answers: &[(&str, &str)]) -> Vec<Given> {
    let given = |(field, text): &(&str, &str)| Given { field: (*field).to_owned(), text: (*text).to_owned() };
    answers.iter().map(given).collect()
}

fn add(book: &mut Book, n: u8, wall: &str, answers: &[(&str, &str)]) -> String {
    let action = WallAction::AddPenetration { wall: wall.to_owned(), answers: given(answers) };
    let Place::Penetration { penetration } = tap(book, n, action).unwrap().place else {
        panic!("a new penetration opens")
    };
    penetration
}

/// Adds a hose bib by kind, size and two offsets, with more answers where they are given.
pub(super) fn hose_bib(book: &mut Book, wall: &str, more: &[(&str, &str)]) -> String {
    let least = [("what", "hose-bib"), ("width", "1 1/16"), ("from-left", "60"), ("from-base", "24")];
    add(book, 7, wall, &[&least, more].concat())
}

const BLOCK: [(&str, &str); 3] = [("block-width", "5"), ("block-height", "6"), ("hole-from-bottom", "3")];

fn view_of(book: &Book, language: &str, penetration: &str) -> PenetrationView {
    shown(book, language, Place::Penetration { penetration: penetration.to_owned() })
}

fn answer(penetration: &str, field: &str, text: &str) -> PenetrationAction {
    PenetrationAction::Answer { penetration: penetration.to_owned(), field: field.to_owned(), text: text.to_owned() }
}

fn said(penetration: &str, step: &str, how: StepHow, note: &str) -> PenetrationAction {
    let said = StepSaid { how, note: note.to_owned(), measured: String::new(), photo: None };
    PenetrationAction::SignStep { penetration: penetration.to_owned(), step: step.to_owned(), said }
}

fn size(sizes: &[Size], code: &str) -> i64 {
    sizes.iter().find(|size| size.code == code).unwrap_or_else(|| panic!("{code}")).reading.nm
}

fn line(book: &Book, penetration: &str, step: &str) -> StepLine {
    view_of(book, "en", penetration).steps.into_iter().find(|line| line.code == step).unwrap()
}

/// By hand: the block stands from 21 to 27 in, so the patch ends on the nail line of course 2, 3/4 in below 15 1/4 in,
/// and runs 4 in past the block on three sides.
#[test]
fn the_patch_is_cut_as_by_hand() {
    let (mut book, job, wall) = wall();
    let hole = hose_bib(&mut book, &wall, &BLOCK);
    let before = view_of(&book, "en", &hole);
    assert_eq!((before.patch.len(), before.patch_ends.as_str()), (0, ""));
    assert!(before.notes.iter().any(|note| note.code == "pole-missing"));
    lay_out_pole(&mut book, &job);
    let view = view_of(&book, "en", &hole);
    assert_eq!(view.notes, []);
    for (code, nm) in [
        ("width", inches(13, 0)),
        ("height", inches(16, 32)),
        ("hole", inches(0, 60)),
        ("hole-from-left", inches(6, 32)),
        ("hole-from-bottom", inches(9, 32)),
        ("slit", inches(6, 34)),
        ("cover-width", inches(4, 0)),
        ("cover-height", inches(8, 30)),
        ("over-board", inches(0, 48)),
        ("hidden-by", inches(0, 32)),
    ] {
        assert_eq!(size(&view.patch, code), nm, "{code}");
    }
    assert!(view.patch_ends.contains("course 2"), "{}", view.patch_ends);
}

/// By hand, at 45 degrees: two boards and 1/4 in ask for 7/8 in, which is sold as 1 in, and so is the climb; half of it
/// below and above the pipe's center, at 3 in. The mouth is sqrt(1.5² - (1 - 0.176777)²) = 1.253916 in.
#[test]
fn the_block_is_split_as_by_hand() {
    let (mut book, _, wall) = wall();
    let hole = hose_bib(&mut book, &wall, &BLOCK);
    let view = view_of(&book, "en", &hole);
    assert!(view.split);
    for (code, nm) in [
        ("thickness", inches(1, 0)),
        ("blank-height", inches(6, 12)),
        ("bit", inches(1, 32)),
        ("climb", inches(1, 0)),
        ("lower-face", inches(2, 32)),
        ("lower-back", inches(3, 32)),
        ("upper-face", inches(3, 32)),
        ("upper-back", inches(2, 32)),
    ] {
        assert_eq!(size(&view.block, code), nm, "{code}");
    }
    let mouth = size(&view.block, "mouth");
    assert!((mouth - 31_849_000).abs() < 2_000, "{mouth}");
    let back = view.block.iter().find(|size| size.code == "lower-back").unwrap();
    assert!(back.label.contains("WALL"), "{}", back.label);
}

#[test]
fn a_closed_ring_says_the_way_out() {
    let (mut book, _, wall) = wall();
    let hole = hose_bib(&mut book, &wall, &BLOCK);
    insist(&mut book, 8, answer(&hole, "block-thickness", "3"));
    let view = view_of(&book, "en", &hole);
    let note = view.notes.iter().find(|note| note.code == "ring-closed").unwrap();
    assert!(note.text.contains('°') && note.text.contains("make the hole"), "{}", note.text);
    assert!(view.block.iter().all(|size| size.code != "mouth"), "no sizes of a cut that cannot be made");
}

/// Kind, size and two offsets are one action; a tick is one action; taking it back is one.
#[test]
fn steps_are_ticked_with_one_action_each() {
    let (mut book, _, wall) = wall();
    let hole = hose_bib(&mut book, &wall, &[]);
    let first = view_of(&book, "en", &hole).steps[0].code.clone();
    let ticked = tap(&mut book, 8, said(&hole, &first, StepHow::Tick, "")).unwrap();
    assert_eq!(ticked.place, Place::Penetration { penetration: hole.clone() });
    assert_eq!(line(&book, &hole, &first).state, StepState::Done);
    let again = tap(&mut book, 9, said(&hole, &first, StepHow::Tick, "")).unwrap_err();
    assert_eq!((again.code.as_str(), again.field.as_str()), ("order", "step"));
    tap(&mut book, 10, said(&hole, &first, StepHow::TakeBack, "wrong tap")).unwrap();
    assert_eq!(line(&book, &hole, &first).state, StepState::Open);
    let silent = tap(&mut book, 11, said(&hole, "patch-roll", StepHow::Skip, "")).unwrap_err();
    assert_eq!((silent.code.as_str(), silent.field.as_str()), ("missing", "note"));
    assert_eq!(line(&book, &hole, "patch-roll").state, StepState::Open);
}

/// What there is to mind is read by itself, before the tick that it stands over; the step stays open.
#[test]
fn cautions_are_read_before_their_step_is_ticked() {
    let (mut book, _, wall) = wall();
    let hole = hose_bib(&mut book, &wall, &[]);
    assert!(!line(&book, &hole, "water-line").cautions_read);
    let read = |step: &str| PenetrationAction::ReadCautions { penetration: hole.clone(), step: step.to_owned() };
    tap(&mut book, 8, read("water-line")).unwrap();
    let line = line(&book, &hole, "water-line");
    assert_eq!((line.cautions_read, line.state), (true, StepState::Open));
    assert_eq!(tap(&mut book, 9, read("no-such-step")).unwrap_err().code, "unknown");
}

/// Every size that is shown is needed at a step, and stands there; but for those that only say how the patch ends.
#[test]
fn a_step_carries_the_sizes_that_it_needs() {
    let (mut book, job, wall) = wall();
    lay_out_pole(&mut book, &job);
    let hole = hose_bib(&mut book, &wall, &[&BLOCK[..], &[("head-flashing", "yes")]].concat());
    let view = view_of(&book, "en", &hole);
    let of = |step: &str| view.steps.iter().find(|line| line.code == step).unwrap().sizes.clone();
    assert_eq!(of("block-split").len(), 6, "lower and upper piece, face and back, climb and mouth");
    assert!(of("water-line").is_empty());
    for size in view.patch.iter().chain(&view.block).chain(&view.head) {
        let at: Vec<_> = view.steps.iter().filter(|line| line.sizes.contains(size)).map(|line| &line.code).collect();
        assert_eq!(at.len(), 1, "{}: {at:?}", size.label);
    }
}

/// The numbers on the drawings are those of the list, in its order; a step names the layer that it works on.
#[test]
fn the_layers_are_numbered_as_they_are_drawn() {
    let (mut book, job, wall) = wall();
    lay_out_pole(&mut book, &job);
    let hole = hose_bib(&mut book, &wall, &[&BLOCK[..], &[("head-flashing", "yes")]].concat());
    let view = view_of(&book, "en", &hole);
    let numbers: Vec<u32> = view.layers.iter().map(|layer| layer.number).collect();
    assert_eq!(numbers, (1..).take(view.layers.len()).collect::<Vec<_>>());
    let frame =
        Frame { width_dp: 360.0, height_dp: 500.0, answer_dp: 44.0, label_dp: 18.0, small_dp: 16.0, left_hand: false };
    let subject = Subject::LayersFront { penetration: hole.clone(), layer: "patch".to_owned() };
    let drawn = drawing(&book, &context("en", 0), &subject, &frame).unwrap();
    let listed: Vec<String> = numbers.iter().map(u32::to_string).collect();
    assert!(!drawn.texts.is_empty() && drawn.texts.iter().all(|text| listed.contains(text)), "{:?}", drawn.texts);
    let of = |step: &str| view.steps.iter().find(|line| line.code == step).unwrap().layer.clone();
    assert_eq!(
        ["patch-lap", "block-hole", "head-flashing", "barrier-down", "water-line"].map(of),
        ["patch", "block", "head-flashing", "barrier-flap", ""]
    );
}

/// Which of the house's it is stands on it, with the letter that it has on its wall.
#[test]
fn a_penetration_says_its_letter_its_wall_and_which_one_it_is() {
    let (book, job) = demo_laid_out();
    let house: HouseView = shown(&book, "en", Place::House { job });
    for (at, line) in house.penetrations.iter().enumerate() {
        let view: PenetrationView = shown(&book, "en", Place::Penetration { penetration: line.penetration.clone() });
        let said = format!("{}, {}, {} of {}", line.letter, line.wall, at + 1, house.penetrations.len());
        assert_eq!(view.said, said);
        assert!(!line.done && line.said.starts_with("0 of "), "{}", line.said);
    }
}

/// What was signed stays signed, and says so where the sizes are no longer those it was signed under.
#[test]
fn a_signed_step_differs_once_a_size_changes() {
    for (field, other) in
        [("block-height", "8"), ("block-thickness", "1 1/2"), ("from-base", "25"), ("from-left", "61")]
    {
        let (mut book, job, wall) = wall();
        lay_out_pole(&mut book, &job);
        let hole = hose_bib(&mut book, &wall, &BLOCK);
        let first = view_of(&book, "en", &hole).steps[0].code.clone();
        tap(&mut book, 8, said(&hole, &first, StepHow::Tick, "")).unwrap();
        assert!(!line(&book, &hole, &first).differs);
        let changed = tap(&mut book, 9, answer(&hole, field, other)).unwrap();
        let now = line(&book, &hole, &first);
        assert_eq!((now.state, now.differs), (StepState::Done, true), "{field}");
        tap(&mut book, 10, DoneListAction::Undo { job: None, group: changed.group }).unwrap();
        assert!(!line(&book, &hole, &first).differs, "{field} taken back");
    }
}

/// What a tick is signed for, by the lengths of the tests above: a letter of it that changed would make every tick that was
/// ever given differ from what is there.
#[test]
fn what_a_step_is_signed_for_stays_as_it_was_written() {
    let (mut book, job, wall) = wall();
    lay_out_pole(&mut book, &job);
    let hole = hose_bib(&mut book, &wall, &BLOCK);
    let text = in_language(&context("en", 8), |terms| {
        let (work, wall, penetration) = lookup::penetration(&book, terms, &hole)?;
        Ok(PenetrationSite::new(work, wall, penetration).canonical()?.detail_text())
    });
    let sizes = [
        ("block.height", inches(6, 0)),
        ("block.hole", inches(3, 0)),
        ("block.thickness", inches(1, 0)),
        ("block.width", inches(5, 0)),
        ("centre.x", inches(60, 0)),
        ("centre.y", inches(24, 0)),
        ("patch.cover-from-bottom", inches(10, 2)),
        ("patch.cover-height", inches(8, 30)),
        ("patch.cover-width", inches(4, 0)),
        ("patch.height", inches(16, 32)),
        ("patch.hidden-by", inches(0, 32)),
        ("patch.hole", inches(0, 60)),
        ("patch.hole-from-bottom", inches(9, 32)),
        ("patch.hole-from-left", inches(6, 32)),
        ("patch.over-board", inches(0, 48)),
        ("patch.slit", inches(6, 34)),
        ("patch.width", inches(13, 0)),
        ("shape.height", inches(1, 4)),
        ("shape.width", inches(1, 4)),
    ];
    let words = [
        "above-reach=0",
        "bottom-open=0",
        "detail=penetration",
        "finish=block",
        "first-course=0",
        "head-flashing=0",
        "kind=hose-bib",
        "mounting=split",
        "old-house=0",
        "painted=0",
        "shape=round",
    ];
    let mut lines: Vec<String> = sizes.iter().map(|(name, nm)| format!("{name}={nm}")).collect();
    lines.extend(words.map(str::to_owned));
    lines.sort_by(|a, b| a.split('=').next().cmp(&b.split('=').next()));
    assert_eq!(text.unwrap(), format!("{}\n", lines.join("\n")));
}

#[test]
fn the_same_as_another_takes_its_block_and_not_its_place() {
    let (mut book, _, wall) = wall();
    let model = hose_bib(&mut book, &wall, &BLOCK);
    let place = [("what", "hose-bib"), ("width", "1 1/16"), ("from-left", "100"), ("from-base", "40")];
    let penetration = add(&mut book, 8, &wall, &place);
    tap(&mut book, 9, PenetrationAction::TakeSameAs { penetration: penetration.clone(), like: model }).unwrap();
    let view = view_of(&book, "en", &penetration);
    assert_eq!((size(&view.block, "width"), size(&view.block, "height")), (inches(5, 0), inches(6, 0)));
    let left = view.questions.iter().find(|question| question.field == "from-left").unwrap();
    assert_eq!(left.reading.as_ref().unwrap().nm, inches(100, 0));
}

#[test]
fn bad_input_changes_nothing() {
    let (mut book, _, wall) = wall();
    let hole = hose_bib(&mut book, &wall, &BLOCK);
    let before = book.store().content_hash().unwrap();
    for (field, text, code) in [
        ("width", "-1\"", "range"),
        ("width", "wide", "length"),
        ("width", "", "missing"),
        ("what", "moon", "choice"),
        ("from-left", "-1", "range"),
        ("colour", "red", "unknown"),
    ] {
        let problem = tap(&mut book, 8, answer(&hole, field, text)).unwrap_err();
        assert_eq!((problem.code.as_str(), problem.field.as_str()), (code, field), "{field} {text}");
    }
    assert_eq!(tap(&mut book, 8, said(&hole, "no-such-step", StepHow::Tick, "")).unwrap_err().code, "unknown");
    assert_eq!(tap(&mut book, 8, answer("nothing", "width", "1")).unwrap_err().code, "unknown");
    assert_eq!(tap(&mut book, 8, answer(&wall, "width", "1")).unwrap_err().code, "unknown", "a wall is none");
    assert_eq!(book.store().content_hash().unwrap(), before);
}

#[test]
fn shows_what_it_showed() {
    let (mut book, job, wall) = wall();
    lay_out_pole(&mut book, &job);
    let hole = hose_bib(&mut book, &wall, &BLOCK);
    insta::assert_json_snapshot!("penetration", view_of(&book, "en", &hole));
}

/// The detail that our own rules make sheds, with a block as with a head flashing or a collar.
#[test]
fn its_own_detail_sheds() {
    let (mut book, job, wall) = wall();
    let hole = hose_bib(&mut book, &wall, &BLOCK);
    assert_eq!(view_of(&book, "en", &hole).shedding, None, "no courses to lap over yet");
    lay_out_pole(&mut book, &job);
    for (field, text) in [("block-width", "5"), ("head-flashing", "yes"), ("from-base", "4"), ("finish", "collar")] {
        tap(&mut book, 8, answer(&hole, field, text)).unwrap();
        let shedding = view_of(&book, "en", &hole).shedding.unwrap();
        assert!(shedding.sheds, "{field} {text}: {shedding:?}");
        assert_eq!(shedding.lines.len(), 1);
    }
}

/// By NBC 9.27.3.8 over a block 5 in wide and 1 in thick: 5 in and two dams of 25 mm; 1 in and 5 mm out; 50 mm of
/// leg behind the barrier, and 1/4 in that stays open.
#[test]
fn a_head_flashing_is_bent_as_by_hand() {
    let (mut book, job, wall) = wall();
    lay_out_pole(&mut book, &job);
    let hole = hose_bib(&mut book, &wall, &BLOCK);
    assert_eq!(view_of(&book, "en", &hole).head, []);
    tap(&mut book, 8, answer(&hole, "head-flashing", "yes")).unwrap();
    let head = view_of(&book, "en", &hole).head;
    let mm = |count: i64| count * 1_000_000;
    assert_eq!(size(&head, "head-cut"), inches(5, 0) + mm(50));
    assert_eq!(size(&head, "head-out"), inches(1, 0) + mm(5));
    assert_eq!(size(&head, "head-leg"), inches(0, 16) + mm(50));
    // 6 % of 30.4 mm.
    assert_eq!(size(&head, "head-fall"), 1_824_000);
}

#[test]
fn a_layer_that_sheds_inward_is_named_with_what_to_do() {
    let (mut book, job, wall) = wall();
    lay_out_pole(&mut book, &job);
    let hole = hose_bib(&mut book, &wall, &BLOCK);
    for (language, said) in [
        ("en", "the membrane patch ends behind the board of course 2"),
        ("es", "el parche de membrana termina por dentro y la tabla de la hilada 2 queda por fuera"),
    ] {
        let shedding = in_language(&context(language, 8), |terms| {
            super::super::penetration::spoilt(&book, terms, &hole, |layers| layers.layers.swap(3, 4))
        })
        .unwrap();
        assert!(!shedding.sheds);
        let line = shedding.lines.iter().find(|line| line.code == "behind").unwrap();
        assert!(line.text.contains(said), "{}", line.text);
    }
    let action = RulesAction::Change {
        job: job.clone(),
        key: "patch.beyond.top".to_owned(),
        value: "1".to_owned(),
        reason: "a scrap".to_owned(),
    };
    insist(&mut book, 9, action);
    let shedding = view_of(&book, "en", &hole).shedding.unwrap();
    assert!(!shedding.sheds);
    // Barrier and board lie over the patch by less than their laps.
    assert!(
        shedding.lines.iter().all(|line| line.code == "short-lap" && line.text.contains("over the membrane patch"))
    );
    assert_eq!(shedding.lines.len(), 2);
}

#[test]
fn a_begun_reason_comes_back_and_goes_with_the_step() {
    let (mut book, _, wall) = wall();
    let bib = hose_bib(&mut book, &wall, &[]);
    let hidden = view_of(&book, "en", &bib).steps.iter().find(|step| step.hidden_later).cloned().unwrap();
    let asks = hidden.asks.last().cloned().unwrap();
    assert!(!asks.optional && asks.hint == hidden.text);
    let text = "patched".to_owned();
    let (penetration, field) = (bib.clone(), asks.field.clone());
    tap(&mut book, 20, PenetrationAction::KeepDraft { penetration, field, text }).unwrap();
    let asked = view_of(&book, "en", &bib).asked;
    assert_eq!(asked.map(|asked| (asked.field, asked.draft)), Some((asks.field.clone(), "patched".to_owned())));
    tap(&mut book, 21, answer(&bib, &asks.field, "patched")).unwrap();
    let view = view_of(&book, "en", &bib);
    assert!(view.asked.is_none_or(|asked| asked.draft.is_empty()));
    let left_out = view.steps.iter().find(|step| step.code == hidden.code).unwrap();
    assert_eq!((left_out.state, left_out.note.as_str()), (StepState::Skipped, "patched"));
}

/// What an inspector is handed says of each step who signed it, when, and what was said of it; on another day too.
#[test]
fn the_sheet_says_who_signed_what_and_when() {
    let (mut book, job, wall) = wall();
    lay_out_pole(&mut book, &job);
    let hole = hose_bib(&mut book, &wall, &BLOCK);
    tap(&mut book, 8, said(&hole, "water-line", StepHow::Tick, "meter turned off")).unwrap();
    tap(&mut book, 9, said(&hole, "patch-roll", StepHow::Skip, "no roller here")).unwrap();
    let sheet = |language: &str| sign_off_sheet(&book, &context(language, 10), &job).unwrap();
    let english = sheet("en");
    let after = |text: &str| english.lines().skip_while(|line| !line.contains(text)).nth(1).unwrap_or_default();
    let (signed, left_out) = (after("[x] Shut the water off"), after("[-] Roll it tight"));
    let (day, signer) = ("20", context("en", 8).signer);
    for (line, note) in [(signed, "meter turned off"), (left_out, "no roller here")] {
        assert!(line.contains(&signer) && line.contains(note) && line.contains(day), "{line}");
    }
    assert!(english.contains("[ ] Slit it from the hole") && english.contains("Inspected by"), "{english}");
    // The details of the wall stand on it, too.
    assert!(english.contains("Foot of the wall"), "{english}");
    let spanish = sheet("es");
    assert!(spanish.contains("Hoja de firmas") && spanish.contains("[x] Cierre el agua"), "{spanish}");
    let nowhere = sign_off_sheet(&book, &context("en", 10), "ffffffffffffffffffffffffffffffff").unwrap_err();
    assert_eq!(nowhere.field, "job");
}
