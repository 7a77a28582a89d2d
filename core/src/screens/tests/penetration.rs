use super::*;
use crate::measure::Length;

/// A house with boards of 8 1/4 in lapped by 1 1/4 in and a wall, whose courses stand 7 in apart once the pole is laid
/// out.
pub(super) fn wall() -> (Store, String, String) {
    let (mut store, job) = house();
    for (field, text) in
        [("board-height", "8 1/4"), ("board-thickness", "5/16"), ("lap", "1 1/4"), ("nail-line", "3/4")]
    {
        let action = HouseAction::Answer { job: job.clone(), field: field.to_owned(), text: text.to_owned() };
        act(&mut store, &context("en", 2), &Action::HouseKind { action }).unwrap();
    }
    let action = HouseAction::AddWall { job: job.clone(), name: "South".to_owned() };
    let added = act(&mut store, &context("en", 3), &Action::HouseKind { action }).unwrap();
    let Place::Measure { wall } = added.place else { panic!("a new wall is measured") };
    spoken(&context("en", 4), |terms| {
        let facts = kept::Facts::of(&store, terms, wall.parse().unwrap(), kinds::WALL)?;
        for (field, text) in [
            ("width", "12'"),
            ("left-height", "9'"),
            ("right-height", "9'"),
            ("base", "0"),
            ("first-stud", "0"),
            ("stud-spacing", "16"),
        ] {
            ask::answer(&mut store, terms, &facts, field, text)?;
        }
        Ok(())
    })
    .unwrap();
    (store, job, wall)
}

/// Lays the pole out with a line every 7 in.
pub(super) fn lay_out_pole(store: &mut Store, job: &str) {
    let job = || job.to_owned();
    for (field, text) in
        [("from", "0"), ("to", "105"), ("mode", "fixed"), ("reveal", "7"), ("reveal-max", "7"), ("reveal-min", "7")]
    {
        let action = PoleAction::Answer { job: job(), field: field.to_owned(), text: text.to_owned() };
        act(store, &context("en", 5), &Action::PoleKind { action }).unwrap();
    }
    act(store, &context("en", 6), &Action::PoleKind { action: PoleAction::LayOut { job: job() } }).unwrap();
}

/// Adds a hose bib by kind, size and two offsets, with more answers where they are given.
pub(super) fn hose_bib(store: &mut Store, wall: &str, more: &[(&str, &str)]) -> String {
    let least = [("what", "hose-bib"), ("width", "1 1/16"), ("from-left", "60"), ("from-base", "24")];
    let answers = least
        .iter()
        .chain(more)
        .map(|(field, text)| Given { field: (*field).to_owned(), text: (*text).to_owned() })
        .collect();
    let action = WallAction::AddPenetration { wall: wall.to_owned(), answers };
    let added = act(store, &context("en", 7), &Action::WallKind { action }).unwrap();
    let Place::Penetration { penetration } = added.place else { panic!("a new penetration opens") };
    penetration
}

const BLOCK: [(&str, &str); 3] = [("block-width", "5"), ("block-height", "6"), ("hole-from-bottom", "3")];

fn shown(store: &Store, language: &str, penetration: &str) -> PenetrationView {
    let place = Place::Penetration { penetration: penetration.to_owned() };
    let View::PenetrationKind { view } = view(store, &context(language, 0), &place).unwrap() else {
        panic!("penetration")
    };
    view
}

fn tap(store: &mut Store, n: u8, action: PenetrationAction) -> Result<Outcome, Problem> {
    act(store, &context("en", n), &Action::PenetrationKind { action })
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

/// Inches and sixty-fourths in nanometres.
fn inches(whole: i64, parts: i64) -> i64 {
    Length::from_inches_64(whole, parts).nm()
}

fn line(store: &Store, penetration: &str, step: &str) -> StepLine {
    shown(store, "en", penetration).steps.into_iter().find(|line| line.code == step).unwrap()
}

/// By hand: the block stands from 21 to 27 in, so the patch ends on the nail line of course 2, 3/4 in below 15 1/4 in,
/// and runs 4 in past the block on three sides.
#[test]
fn the_patch_is_cut_as_by_hand() {
    let (mut store, job, wall) = wall();
    let hole = hose_bib(&mut store, &wall, &BLOCK);
    let before = shown(&store, "en", &hole);
    assert_eq!((before.patch.len(), before.patch_ends.as_str()), (0, ""));
    assert!(before.notes.iter().any(|note| note.code == "pole-missing"));
    lay_out_pole(&mut store, &job);
    let view = shown(&store, "en", &hole);
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

/// By hand, at 45 degrees: the default block is two boards and 1/4 in thick, 7/8 in, and so is the climb; half of it
/// below and above the pipe's center, at 3 in. The mouth is sqrt(1.5² - (7/8 - 0.17678)²) = 1.3276 in.
#[test]
fn the_block_is_split_as_by_hand() {
    let (mut store, _, wall) = wall();
    let hole = hose_bib(&mut store, &wall, &BLOCK);
    let view = shown(&store, "en", &hole);
    assert!(view.split);
    for (code, nm) in [
        ("thickness", inches(0, 56)),
        ("blank-height", inches(6, 12)),
        ("bit", inches(1, 32)),
        ("climb", inches(0, 56)),
        ("lower-face", inches(2, 36)),
        ("lower-back", inches(3, 28)),
        ("upper-face", inches(3, 28)),
        ("upper-back", inches(2, 36)),
    ] {
        assert_eq!(size(&view.block, code), nm, "{code}");
    }
    let mouth = size(&view.block, "mouth");
    assert!((mouth - 33_721_000).abs() < 2_000, "{mouth}");
    let back = view.block.iter().find(|size| size.code == "lower-back").unwrap();
    assert!(back.label.contains("WALL"), "{}", back.label);
}

#[test]
fn a_closed_ring_says_the_way_out() {
    let (mut store, _, wall) = wall();
    let hole = hose_bib(&mut store, &wall, &BLOCK);
    tap(&mut store, 8, answer(&hole, "block-thickness", "3")).unwrap();
    let view = shown(&store, "en", &hole);
    let note = view.notes.iter().find(|note| note.code == "ring-closed").unwrap();
    assert!(note.text.contains('°') && note.text.contains("drill"), "{}", note.text);
    assert!(view.block.iter().all(|size| size.code != "mouth"), "no sizes of a cut that cannot be made");
}

/// Kind, size and two offsets are one action; a tick is one action; taking it back is one.
#[test]
fn steps_are_ticked_with_one_action_each() {
    let (mut store, _, wall) = wall();
    let hole = hose_bib(&mut store, &wall, &[]);
    let first = shown(&store, "en", &hole).steps[0].code.clone();
    let ticked = tap(&mut store, 8, said(&hole, &first, StepHow::Tick, "")).unwrap();
    assert_eq!(ticked.place, Place::Penetration { penetration: hole.clone() });
    assert_eq!(line(&store, &hole, &first).state, StepState::Done);
    let again = tap(&mut store, 9, said(&hole, &first, StepHow::Tick, "")).unwrap_err();
    assert_eq!((again.code.as_str(), again.field.as_str()), ("order", "step"));
    tap(&mut store, 10, said(&hole, &first, StepHow::TakeBack, "wrong tap")).unwrap();
    assert_eq!(line(&store, &hole, &first).state, StepState::Open);
    let silent = tap(&mut store, 11, said(&hole, "patch-roll", StepHow::Skip, "")).unwrap_err();
    assert_eq!((silent.code.as_str(), silent.field.as_str()), ("missing", "note"));
    assert_eq!(line(&store, &hole, "patch-roll").state, StepState::Open);
}

/// What was signed stays signed, and says so where the sizes are no longer those it was signed under.
#[test]
fn a_signed_step_differs_once_a_size_changes() {
    for (field, other) in [("block-height", "8"), ("block-thickness", "1"), ("from-base", "25"), ("from-left", "61")] {
        let (mut store, job, wall) = wall();
        lay_out_pole(&mut store, &job);
        let hole = hose_bib(&mut store, &wall, &BLOCK);
        let first = shown(&store, "en", &hole).steps[0].code.clone();
        tap(&mut store, 8, said(&hole, &first, StepHow::Tick, "")).unwrap();
        assert!(!line(&store, &hole, &first).differs);
        let changed = tap(&mut store, 9, answer(&hole, field, other)).unwrap();
        let now = line(&store, &hole, &first);
        assert_eq!((now.state, now.differs), (StepState::Done, true), "{field}");
        let action = DoneListAction::Undo { job: None, group: changed.group };
        act(&mut store, &context("en", 10), &Action::DoneListKind { action }).unwrap();
        assert!(!line(&store, &hole, &first).differs, "{field} taken back");
    }
}

#[test]
fn the_same_as_another_takes_its_block_and_not_its_place() {
    let (mut store, _, wall) = wall();
    let model = hose_bib(&mut store, &wall, &BLOCK);
    let action = WallAction::AddPenetration {
        wall,
        answers: [("what", "hose-bib"), ("width", "1 1/16"), ("from-left", "100"), ("from-base", "40")]
            .map(|(field, text)| Given { field: field.to_owned(), text: text.to_owned() })
            .to_vec(),
    };
    let Place::Penetration { penetration } =
        act(&mut store, &context("en", 8), &Action::WallKind { action }).unwrap().place
    else {
        panic!("a new penetration opens")
    };
    tap(&mut store, 9, PenetrationAction::TakeSameAs { penetration: penetration.clone(), like: model }).unwrap();
    let view = shown(&store, "en", &penetration);
    assert_eq!((size(&view.block, "width"), size(&view.block, "height")), (inches(5, 0), inches(6, 0)));
    let left = view.questions.iter().find(|question| question.field == "from-left").unwrap();
    assert_eq!(left.reading.as_ref().unwrap().nm, inches(100, 0));
}

#[test]
fn bad_input_changes_nothing() {
    let (mut store, _, wall) = wall();
    let hole = hose_bib(&mut store, &wall, &BLOCK);
    let before = store.content_hash().unwrap();
    for (field, text, code) in [
        ("width", "-1\"", "range"),
        ("width", "wide", "length"),
        ("width", "", "missing"),
        ("what", "moon", "choice"),
        ("from-left", "-1", "range"),
        ("colour", "red", "unknown"),
    ] {
        let problem = tap(&mut store, 8, answer(&hole, field, text)).unwrap_err();
        assert_eq!((problem.code.as_str(), problem.field.as_str()), (code, field), "{field} {text}");
    }
    assert_eq!(tap(&mut store, 8, said(&hole, "no-such-step", StepHow::Tick, "")).unwrap_err().code, "unknown");
    assert_eq!(tap(&mut store, 8, answer("nothing", "width", "1")).unwrap_err().code, "unknown");
    assert_eq!(tap(&mut store, 8, answer(&wall, "width", "1")).unwrap_err().code, "unknown", "a wall is none");
    assert_eq!(store.content_hash().unwrap(), before);
}

#[test]
fn reads_well_in_both_languages() {
    let (mut store, job, wall) = wall();
    lay_out_pole(&mut store, &job);
    let hole = hose_bib(&mut store, &wall, &BLOCK);
    for language in ["en", "es"] {
        insta::assert_json_snapshot!(format!("penetration-{language}"), shown(&store, language, &hole));
    }
}

/// The detail that our own rules make sheds, with a block as with a head flashing or a collar.
#[test]
fn its_own_detail_sheds() {
    let (mut store, job, wall) = wall();
    let hole = hose_bib(&mut store, &wall, &BLOCK);
    assert_eq!(shown(&store, "en", &hole).shedding, None, "no courses to lap over yet");
    lay_out_pole(&mut store, &job);
    for (field, text) in [("block-width", "5"), ("head-flashing", "yes"), ("from-base", "4"), ("finish", "collar")] {
        tap(&mut store, 8, answer(&hole, field, text)).unwrap();
        let shedding = shown(&store, "en", &hole).shedding.unwrap();
        assert!(shedding.sheds, "{field} {text}: {shedding:?}");
        assert_eq!(shedding.lines.len(), 1);
    }
}

/// By NBC 9.27.3.8 over a block 5 in wide and 7/8 in thick: 5 in and two dams of 25 mm; 7/8 in and 5 mm out; 50 mm of
/// leg behind the barrier, and 1/4 in that stays open.
#[test]
fn a_head_flashing_is_bent_as_by_hand() {
    let (mut store, job, wall) = wall();
    lay_out_pole(&mut store, &job);
    let hole = hose_bib(&mut store, &wall, &BLOCK);
    assert_eq!(shown(&store, "en", &hole).head, []);
    tap(&mut store, 8, answer(&hole, "head-flashing", "yes")).unwrap();
    let head = shown(&store, "en", &hole).head;
    let mm = |count: i64| count * 1_000_000;
    assert_eq!(size(&head, "head-cut"), inches(5, 0) + mm(50));
    assert_eq!(size(&head, "head-out"), inches(0, 56) + mm(5));
    assert_eq!(size(&head, "head-leg"), inches(0, 16) + mm(50));
    // 6 % of 27.225 mm.
    assert_eq!(size(&head, "head-fall"), 1_633_500);
}

#[test]
fn a_layer_that_sheds_inward_is_named_with_what_to_do() {
    let (mut store, job, wall) = wall();
    lay_out_pole(&mut store, &job);
    let hole = hose_bib(&mut store, &wall, &BLOCK);
    for (language, said) in [
        ("en", "the membrane patch ends behind the board of course 2"),
        ("es", "el parche de membrana termina detrás de la tabla de la hilada 2"),
    ] {
        let shedding = spoken(&context(language, 8), |terms| {
            super::super::penetration::spoilt(&store, terms, &hole, |layers| layers.layers.swap(3, 4))
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
    act(&mut store, &context("en", 9), &Action::RulesKind { action }).unwrap();
    let shedding = shown(&store, "en", &hole).shedding.unwrap();
    assert!(!shedding.sheds);
    // Barrier and board lie over the patch by less than their laps.
    assert!(
        shedding.lines.iter().all(|line| line.code == "short-lap" && line.text.contains("over the membrane patch"))
    );
    assert_eq!(shedding.lines.len(), 2);
}

#[test]
fn a_begun_reason_comes_back_and_goes_with_the_step() {
    let (mut store, _, wall) = wall();
    let bib = hose_bib(&mut store, &wall, &[]);
    let shown = |store: &Store| {
        let place = Place::Penetration { penetration: bib.clone() };
        let View::PenetrationKind { view } = view(store, &context("en", 0), &place).unwrap() else { panic!("bib") };
        view
    };
    let hidden = shown(&store).steps.iter().find(|step| step.hidden_later).cloned().unwrap();
    let asks = hidden.asks.last().cloned().unwrap();
    assert!(!asks.optional && asks.hint == hidden.text);
    let mut tap = |n, action| act(&mut store, &context("en", n), &Action::PenetrationKind { action });
    let text = "patched".to_owned();
    let (penetration, field) = (bib.clone(), asks.field.clone());
    let outcome = tap(20, PenetrationAction::KeepDraft { penetration, field, text }).unwrap();
    let View::PenetrationKind { view } = outcome.view else { panic!("bib") };
    assert_eq!(view.asked.map(|asked| (asked.field, asked.draft)), Some((asks.field.clone(), "patched".to_owned())));
    let (penetration, field, text) = (bib.clone(), asks.field, "patched".to_owned());
    let outcome = tap(21, PenetrationAction::Answer { penetration, field, text });
    let View::PenetrationKind { view } = outcome.unwrap().view else { panic!("bib") };
    assert!(view.asked.is_none_or(|asked| asked.draft.is_empty()));
    let left_out = view.steps.iter().find(|step| step.code == hidden.code).unwrap();
    assert_eq!((left_out.state, left_out.note.as_str()), (StepState::Skipped, "patched"));
}
