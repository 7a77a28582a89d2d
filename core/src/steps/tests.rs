use std::collections::BTreeSet;
use std::fmt::Write;

use proptest::prelude::*;

use super::*;
use crate::flashing::Layer;
use crate::measure::Length;
use crate::phrases::{Language, Phrases};
use crate::wall::{Finish, Mounting, PenetrationKind, Shape};

const ROUND: Shape = Shape::Round { diameter: Length::from_mm(22) };
const BOX: Shape = Shape::Rectangle { width: Length::from_mm(100), height: Length::from_mm(60) };

fn plain(kind: PenetrationKind, shape: Shape, finish: Finish, mounting: Mounting) -> PenetrationDetail {
    PenetrationDetail::plain(kind, shape, finish, mounting)
}

/// Every detail that can be made of the enums and flags.
fn penetrations() -> Vec<PenetrationDetail> {
    let mut all = Vec::new();
    for kind in PenetrationKind::ALL {
        for shape in [ROUND, BOX] {
            for finish in Finish::ALL {
                for mounting in Mounting::ALL {
                    for flags in 0..64_u8 {
                        let bit = |at: u8| flags & (1 << at) != 0;
                        all.push(PenetrationDetail {
                            head_flashing: bit(0),
                            painted: bit(1),
                            first_course: bit(2),
                            bottom_open: bit(3),
                            old_house: bit(4),
                            above_reach: bit(5),
                            ..plain(*kind, shape, *finish, *mounting)
                        });
                    }
                }
            }
        }
    }
    all
}

fn boards() -> Vec<BoardDetail> {
    (0..1_024_u16)
        .map(|flags| {
            let bit = |at: u16| flags & (1 << at) != 0;
            BoardDetail {
                notched: bit(0),
                first_course: bit(1),
                joint: bit(2),
                bevelled: bit(3),
                painted: bit(4),
                old_house: bit(5),
                above_reach: bit(6),
                ripped: bit(7),
                face_nailed: bit(8),
                shaped: bit(9),
            }
        })
        .collect()
}

fn lists() -> Vec<Vec<Step>> {
    penetrations().iter().map(PenetrationDetail::steps).chain(boards().iter().map(BoardDetail::steps)).collect()
}

/// Where each code stands in the list.
fn at(steps: &[Step], code: &str) -> Option<usize> {
    steps.iter().position(|step| step.code == code)
}

#[test]
fn every_list_is_sound() {
    let (english, spanish) = (Phrases::for_language(Language::English), Phrases::for_language(Language::Spanish));
    let mut codes = BTreeSet::new();
    for steps in lists() {
        assert!(steps.len() >= 6);
        let own: BTreeSet<_> = steps.iter().map(|step| step.code).collect();
        assert_eq!(own.len(), steps.len(), "a code stands twice");
        for step in &steps {
            codes.insert(step.code);
            for phrases in [english, spanish] {
                assert!(phrases.has(step.text) && phrases.has(step.reason), "{} {}", step.text, step.reason);
                assert!(step.measured.is_none_or(|measured| phrases.has(measured.phrase)));
            }
            let cautions: BTreeSet<_> = step.cautions.iter().collect();
            assert_eq!(cautions.len(), step.cautions.len(), "{}: a caution stands twice", step.code);
        }
    }
    assert!(codes.len() > 40, "{}", codes.len());
}

#[test]
fn cautions_have_texts_and_codes_of_their_own() {
    for caution in Caution::ALL {
        assert_eq!(Caution::from_code(caution.code()), Some(*caution));
        assert!(Phrases::for_language(Language::Spanish).has(caution.phrase()));
    }
}

/// The contract of an assembly, over every kind, shape, finish, mounting and flag: each layer but the barrier is put by
/// one step, in the layers' order; what makes safe comes before; what a later layer hides is marked.
#[test]
fn every_layer_is_put_once_and_in_its_order() {
    for detail in penetrations() {
        let steps = detail.steps();
        let put: Vec<Layer> = steps.iter().filter_map(|step| step.puts).collect();
        let layers: Vec<Layer> = detail.assembly().layers().collect();
        assert_eq!(layers[0], Layer::Barrier);
        assert_eq!(put, layers[1..], "{detail:?}");

        let putting = |layer: Layer| steps.iter().position(|step| step.puts == Some(layer));
        for layer in [Layer::Patch, Layer::Cover, Layer::HeadFlashing, Layer::BarrierFlap] {
            assert!(putting(layer).is_none_or(|at| steps[at].hidden_by_later), "{layer:?} {detail:?}");
        }
        let sealed = putting(Layer::Sealant).unwrap();
        assert!(steps[sealed..].iter().all(|step| !step.hidden_by_later), "{detail:?}");

        let first_put = steps.iter().position(|step| step.puts.is_some()).unwrap();
        let safe = |steps: &[Step]| steps.iter().filter(|step| step.keeps_safe).count();
        assert_eq!(safe(&steps), safe(&steps[..first_put]), "{detail:?}");
        let new = PenetrationDetail { old_house: false, ..detail };
        assert!(safe(&new.steps()) >= 1);
        assert_eq!(safe(&steps), safe(&new.steps()) + usize::from(detail.old_house));
    }
}

/// A part that an assembly may lack, as its steps' codes and texts name it in English and Spanish.
struct NamedPart {
    there: fn(&PenetrationDetail) -> bool,
    code: &'static str,
    english: &'static [&'static str],
    spanish: &'static [&'static str],
}

#[test]
fn no_step_names_a_part_that_the_assembly_lacks() {
    let parts = [
        NamedPart {
            there: |detail| detail.assembly().has(Layer::Cover),
            code: "slit",
            english: &["slit", "second piece"],
            spanish: &["el corte hacia", "sobre el corte", "segunda pieza"],
        },
        NamedPart {
            there: |detail| detail.assembly().has(Layer::Cover),
            code: "patch-cover",
            english: &[],
            spanish: &[],
        },
        NamedPart {
            there: |detail| detail.finish == Finish::Block,
            code: "block",
            english: &["the block"],
            spanish: &["bloque"],
        },
        NamedPart {
            there: |detail| detail.assembly().block_is_split(),
            code: "split",
            english: &["lower piece", "upper piece", "halves"],
            spanish: &["mitades"],
        },
        NamedPart {
            there: |detail| detail.finish == Finish::Trim,
            code: "trim",
            english: &["trim"],
            spanish: &["moldura"],
        },
        NamedPart {
            there: |detail| detail.finish == Finish::Collar,
            code: "collar",
            english: &["collar"],
            spanish: &["collar"],
        },
        NamedPart {
            there: |detail| detail.has_head_flashing(),
            code: "head-flashing",
            english: &["flashing"],
            spanish: &["tapajuntas"],
        },
        NamedPart {
            there: |detail| detail.first_course,
            code: "starter",
            english: &["starter"],
            spanish: &["arranque"],
        },
        NamedPart {
            there: |detail| !detail.first_course,
            code: "course-below",
            english: &["course below", "board below", "board’s top edge"],
            spanish: &["hilada de abajo", "tabla de abajo"],
        },
    ];
    let (english, spanish) = (Phrases::for_language(Language::English), Phrases::for_language(Language::Spanish));
    for detail in penetrations() {
        let steps = detail.steps();
        for part in parts.iter().filter(|part| !(part.there)(&detail)) {
            for step in &steps {
                assert!(!step.code.contains(part.code), "{} in {detail:?}", step.code);
                for (phrases, words) in [(english, part.english), (spanish, part.spanish)] {
                    for text in [step.text, step.reason].map(|text| phrases.phrase(text, &[]).to_lowercase()) {
                        assert!(words.iter().all(|word| !text.contains(word)), "{}: {text:?} in {detail:?}", step.code);
                    }
                }
            }
        }
    }
}

#[test]
fn preparing_steps_stand_between_the_layers() {
    // What a step needs to have been done: the second never without the first before it.
    let order = [
        ("barrier-flap", "patch-hole"),
        ("clean-and-dry", "patch-lap"),
        ("patch-hole", "patch-slit"),
        ("patch-slit", "patch-lap"),
        ("patch-lap", "patch-roll"),
        ("patch-roll", "patch-cover"),
        ("block-hole", "block-split"),
        ("block-split", "block-prime"),
        ("block-prime", "block-bed"),
        ("block-bed", "block-lower"),
        ("block-bed", "block-slip"),
        ("block-lower", "block-bead"),
        ("block-bead", "block-upper"),
        ("trim-prime", "trim-bottom"),
        ("head-flashing", "barrier-down"),
        ("patch-cover", "barrier-down"),
        ("barrier-down", "boards-cut"),
        ("boards-prime", "boards-gap"),
        ("collar-bed", "collar-fix"),
        ("extension-ring", "fixture-on"),
        ("fixture-off", "fixture-on"),
        ("flange-fix", "sealant"),
        ("sealant", "paint"),
        ("sealant", "water-on"),
        ("sealant", "look-over"),
    ];
    for detail in penetrations() {
        let steps = detail.steps();
        for (before, after) in order {
            if let (Some(before_at), Some(after_at)) = (at(&steps, before), at(&steps, after)) {
                assert!(before_at < after_at, "{before} {after} {detail:?}");
            }
        }
    }
}

/// Codes that were given out stand in sign-offs in people's books: none of them may mean anything else one day.
#[test]
fn steps_that_are_gone_keep_their_codes_for_themselves() {
    for steps in lists() {
        assert_eq!(at(&steps, "patch-top"), None);
    }
}

#[test]
fn only_what_stays_is_split_and_only_what_comes_off_is_put_back() {
    for detail in penetrations() {
        let steps = detail.steps();
        let stays = detail.mounting == Mounting::Split;
        assert_eq!(at(&steps, "fixture-off").is_some(), !stays);
        assert_eq!(at(&steps, "fixture-on").is_some(), !stays);
        assert_eq!(at(&steps, "block-split").is_some(), stays && detail.finish == Finish::Block);
        assert_eq!(at(&steps, "paint").is_some(), detail.painted);
    }
}

/// What is tried at the end, by kind: water, gas, condensate, power; a hood's damper before the last joint is sealed.
#[test]
fn what_was_moved_is_tried() {
    for detail in penetrations() {
        let steps = detail.steps();
        let tried = match detail.kind {
            PenetrationKind::HoseBib => "water-on",
            PenetrationKind::Pipe => "leak-test",
            PenetrationKind::LineSet => "condensate",
            PenetrationKind::VentHood => "hood-free",
            PenetrationKind::ElectricalBox
            | PenetrationKind::Light
            | PenetrationKind::Conduit
            | PenetrationKind::Cable
            | PenetrationKind::MeterBase => "power-on",
        };
        assert!(at(&steps, tried) > at(&steps, "boards-gap"), "{detail:?}");
        let boxed = matches!(detail.kind, PenetrationKind::ElectricalBox | PenetrationKind::Light);
        assert_eq!(at(&steps, "extension-ring").is_some(), boxed);
    }
}

#[test]
fn what_gets_hidden_needs_a_reason_to_be_skipped() {
    for steps in lists() {
        for code in [
            "barrier-flap",
            "patch-lap",
            "patch-roll",
            "barrier-down",
            "block-bed",
            "patch-cover",
            "block-prime",
            "block-bead",
            "boards-prime",
            "board-prime",
            "board-backing",
            "collar-bed",
            "head-flashing",
        ] {
            if let Some(step) = at(&steps, code).map(|at| &steps[at]) {
                assert!(step.hidden_by_later && step.needs_reason(), "{code}");
            }
        }
    }
}

#[test]
fn cautions_stand_where_they_matter() {
    let has = |detail: PenetrationDetail, code: &str, caution: Caution| {
        let steps = detail.steps();
        at(&steps, code).is_some_and(|at| steps[at].cautions.contains(&caution))
    };
    for detail in penetrations() {
        assert!(has(detail, "boards-cut", Caution::Silica));
        assert!(has(detail, "sealant", Caution::WetSurface) && has(detail, "sealant", Caution::Label));
        assert!(has(detail, "clean-and-dry", Caution::WetSurface));
        let high =
            |caution: Caution| detail.steps().iter().any(|step| step.keeps_safe && step.cautions.contains(&caution));
        for caution in [Caution::Ladder, Caution::Fall, Caution::PowerLine] {
            assert_eq!(high(caution), detail.above_reach);
        }
        assert!(has(detail, "boards-gap", Caution::Nailer) && has(detail, "boards-gap", Caution::Lifting));
        let electric = matches!(
            detail.kind,
            PenetrationKind::ElectricalBox
                | PenetrationKind::Light
                | PenetrationKind::Conduit
                | PenetrationKind::Cable
                | PenetrationKind::MeterBase
        );
        if electric {
            let steps = detail.steps();
            let guard = steps.iter().position(|step| step.cautions.contains(&Caution::Electricity)).unwrap();
            assert!(steps[guard].keeps_safe && Some(guard) < at(&steps, "barrier-flap"));
        }
    }
}

#[test]
fn the_detail_text_tells_details_apart() {
    let all: BTreeSet<_> = penetrations().iter().map(PenetrationDetail::detail_text).collect();
    // A head flashing asked for at a collar is no other detail, as a collar has none.
    assert_eq!(all.len(), penetrations().len() - 9 * 2 * 2 * 32);
    let all: BTreeSet<_> = boards().iter().map(BoardDetail::detail_text).collect();
    assert_eq!(all.len(), 1_024);
}

fn sign(step: &str, act: Act, reason: &str) -> StepSignOff {
    StepSignOff {
        step: step.to_owned(),
        act,
        by: "Rosa".to_owned(),
        at_ms: 0,
        reason: reason.to_owned(),
        detail: "one".to_owned(),
        length: None,
        millidegrees: None,
        photo: String::new(),
    }
}

#[test]
fn signs_in_order_or_with_a_reason() {
    let steps = plain(PenetrationKind::HoseBib, ROUND, Finish::Block, Mounting::Split).steps();
    let mut history = Vec::new();
    let mut take = |next: StepSignOff| check(&steps, &history, &next).map(|()| history.push(next));

    let refused = take(sign("patch-roll", Act::Tick, "")).unwrap_err();
    let open = vec!["water-line", "barrier-flap", "clean-and-dry", "patch-lap"];
    assert_eq!(refused, SignError::EarlierOpen { step: "patch-roll".into(), earlier: open });
    take(sign("patch-roll", Act::Tick, "the roofer did the rest")).unwrap();
    assert_eq!(take(sign("patch-roll", Act::Tick, "")).unwrap_err().code(), "step-already");
    assert_eq!(take(sign("water-line", Act::Skip, " ")).unwrap_err().code(), "step-skip-reason");
    take(sign("water-line", Act::Skip, "new pipe, not filled yet")).unwrap();
    take(sign("slope-out", Act::Skip, "")).unwrap();
    take(sign("barrier-flap", Act::Tick, "")).unwrap();
    take(sign("barrier-flap", Act::Undo, "")).unwrap();
    assert_eq!(take(sign("barrier-flap", Act::Undo, "")).unwrap_err().code(), "step-nothing-to-undo");
    assert_eq!(take(sign("no-such", Act::Tick, "")).unwrap_err().code(), "step-unknown");
    let nobody = StepSignOff { by: String::new(), ..sign("barrier-flap", Act::Tick, "") };
    assert_eq!(take(nobody).unwrap_err().code(), "step-signer");

    assert_eq!(state_of("barrier-flap", &history).code(), "undone");
    assert_eq!(state_of("water-line", &history).code(), "skipped");
    assert_eq!(state_of("patch-roll", &history).code(), "done");
    assert_eq!(state_of("sealant", &history).code(), "open");
    let now = progress(&steps, &history);
    assert_eq!((now.done, now.skipped, now.next), (1, 2, Some("stands-off")));
    assert_eq!(now.passed_over, ["barrier-flap", "clean-and-dry", "patch-lap"]);
    assert!(!differs("patch-roll", &history, "one") && differs("patch-roll", &history, "two"));
    assert!(!differs("water-line", &history, "two") && !differs("sealant", &history, "two"));
}

#[test]
fn faults_are_said_in_both_languages() {
    let steps = plain(PenetrationKind::HoseBib, ROUND, Finish::Block, Mounting::Split).steps();
    let fault = check(&steps, &[], &sign("clean-and-dry", Act::Tick, "")).unwrap_err();
    let english = fault.text(&steps, Phrases::for_language(Language::English));
    let spanish = fault.text(&steps, Phrases::for_language(Language::Spanish));
    assert!(english.contains("Shut the water off") && english.contains("upside-down U"), "{english}");
    assert!(spanish.contains("Cierre el agua") && spanish.contains("U invertida"), "{spanish}");
}

proptest! {
    #[test]
    fn a_history_that_was_checked_adds_up(tries in proptest::collection::vec((0_usize..30, 0_u8..3, any::<bool>()), 0..60)) {
        let steps = plain(PenetrationKind::Pipe, ROUND, Finish::Block, Mounting::Split).steps();
        let mut history: Vec<StepSignOff> = Vec::new();
        for (step, act, reason) in tries {
            let act = [Act::Tick, Act::Skip, Act::Undo][usize::from(act)];
            let next = sign(steps[step % steps.len()].code, act, if reason { "so be it" } else { "" });
            if check(&steps, &history, &next).is_ok() {
                history.push(next);
            }
        }
        let now = progress(&steps, &history);
        prop_assert_eq!((now.done + now.skipped + now.open) as usize, steps.len());
        prop_assert_eq!(now.next.is_none(), now.open == 0);
        for step in &steps {
            let own: Vec<_> = history.iter().filter(|sign| sign.step == step.code).collect();
            // Signed and taken back by turns, beginning with a signature.
            for (n, sign) in own.iter().enumerate() {
                prop_assert_eq!(sign.act == Act::Undo, n % 2 == 1);
                prop_assert!(sign.act != Act::Skip || !step.needs_reason() || !sign.reason.is_empty());
            }
        }
    }
}

/// A list as a person reads it.
fn printed(steps: &[Step]) -> String {
    let phrases = Phrases::for_language(Language::English);
    let mut text = String::new();
    for (n, step) in steps.iter().enumerate() {
        let mut marks = Vec::new();
        if step.hidden_by_later {
            marks.push("hidden");
        }
        if step.keeps_safe {
            marks.push("safe");
        }
        marks.extend(step.puts.map(Layer::code));
        if step.photo {
            marks.push("photo");
        }
        writeln!(text, "{}. {} [{}] {}", n + 1, step.code, marks.join(" "), phrases.phrase(step.text, &[])).unwrap();
        writeln!(text, "   - {}", phrases.phrase(step.reason, &[])).unwrap();
        if let Some(measured) = step.measured {
            writeln!(text, "   # {} ({})", phrases.phrase(measured.phrase, &[]), measured.kind.code()).unwrap();
        }
        for caution in &step.cautions {
            writeln!(text, "   ! {}", phrases.phrase(caution.phrase(), &[])).unwrap();
        }
    }
    text
}

#[test]
fn printed_lists() {
    let cases = [
        ("hose_bib_split", plain(PenetrationKind::HoseBib, ROUND, Finish::Block, Mounting::Split).steps()),
        ("hose_bib_slip_over", plain(PenetrationKind::HoseBib, ROUND, Finish::Block, Mounting::SlipOver).steps()),
        ("pipe_collar_split", plain(PenetrationKind::Pipe, ROUND, Finish::Collar, Mounting::Split).steps()),
        ("light_slip_over", plain(PenetrationKind::Light, BOX, Finish::Block, Mounting::SlipOver).steps()),
        (
            "electrical_box_split_with_flashing",
            PenetrationDetail {
                head_flashing: true,
                bottom_open: true,
                ..plain(PenetrationKind::ElectricalBox, BOX, Finish::Block, Mounting::Split)
            }
            .steps(),
        ),
        (
            "vent_hood_trim",
            PenetrationDetail {
                head_flashing: true,
                above_reach: true,
                ..plain(PenetrationKind::VentHood, BOX, Finish::Trim, Mounting::SlipOver)
            }
            .steps(),
        ),
        (
            "meter_base_old_house",
            PenetrationDetail {
                head_flashing: true,
                old_house: true,
                ..plain(PenetrationKind::MeterBase, BOX, Finish::Block, Mounting::Split)
            }
            .steps(),
        ),
        (
            "line_set_first_course",
            PenetrationDetail {
                first_course: true,
                painted: false,
                ..plain(PenetrationKind::LineSet, ROUND, Finish::Block, Mounting::Split)
            }
            .steps(),
        ),
        ("cable_collar", plain(PenetrationKind::Cable, ROUND, Finish::Collar, Mounting::SlipOver).steps()),
        ("board_plain", BoardDetail::default().steps()),
        (
            "board_notched",
            BoardDetail { notched: true, joint: true, painted: true, above_reach: true, ..Default::default() }.steps(),
        ),
        ("board_first", BoardDetail { first_course: true, bevelled: true, ..Default::default() }.steps()),
    ];
    for (name, steps) in cases {
        insta::assert_snapshot!(name, printed(&steps));
    }
}
