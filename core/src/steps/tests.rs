use std::collections::BTreeSet;
use std::fmt::Write;

use proptest::prelude::*;

use super::*;
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
    (0..128_u8)
        .map(|flags| {
            let bit = |at: u8| flags & (1 << at) != 0;
            BoardDetail {
                notched: bit(0),
                first_course: bit(1),
                joint: bit(2),
                bevelled: bit(3),
                painted: bit(4),
                old_house: bit(5),
                above_reach: bit(6),
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

#[test]
fn layers_go_on_from_the_wall_outward() {
    // The order of work at a penetration: barrier, patch, block or trim, flashing, boards, sealant, paint.
    let order = [
        "old-house",
        "barrier-flap",
        "clean-and-dry",
        "patch-hole",
        "patch-slit",
        "patch-lap",
        "patch-roll",
        "patch-top",
        "patch-cover",
        "block-hole",
        "block-split",
        "block-prime",
        "block-lower",
        "block-bead",
        "block-upper",
        "block-slip",
        "trim-prime",
        "trim-bottom",
        "trim-sides",
        "trim-top",
        "head-flashing",
        "boards-cut",
        "boards-prime",
        "boards-gap",
        "collar-bed",
        "collar-fix",
        "fixture-on",
        "sealant",
        "paint",
        "look-over",
    ];
    for detail in penetrations() {
        let steps = detail.steps();
        let found: Vec<_> = order.iter().filter_map(|code| at(&steps, code)).collect();
        assert!(found.is_sorted(), "{detail:?}");
    }
}

#[test]
fn only_a_split_piece_has_the_steps_of_a_split() {
    for detail in penetrations() {
        let steps = detail.steps();
        let split = detail.mounting == Mounting::Split;
        for code in ["patch-slit", "patch-cover"] {
            assert_eq!(at(&steps, code).is_some(), split, "{code} {detail:?}");
        }
        for code in ["block-split", "block-lower", "block-bead", "block-upper"] {
            assert_eq!(at(&steps, code).is_some(), split && detail.finish == Finish::Block, "{code} {detail:?}");
        }
        assert_eq!(at(&steps, "fixture-off").is_some(), !split);
        assert_eq!(at(&steps, "head-flashing").is_some(), detail.head_flashing && detail.finish != Finish::Collar);
        assert_eq!(at(&steps, "paint").is_some(), detail.painted);
    }
}

#[test]
fn what_gets_hidden_needs_a_reason_to_be_skipped() {
    for steps in lists() {
        for code in [
            "barrier-flap",
            "patch-lap",
            "patch-roll",
            "patch-top",
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
        let first = &detail.steps()[0];
        assert_eq!(first.cautions.contains(&Caution::Ladder), detail.above_reach);
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
    assert_eq!(all.len(), 128);
}

fn sign(step: &str, act: Act, reason: &str) -> SignOff {
    SignOff {
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
    let mut take = |next: SignOff| check(&steps, &history, &next).map(|()| history.push(next));

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
    let nobody = SignOff { by: String::new(), ..sign("barrier-flap", Act::Tick, "") };
    assert_eq!(take(nobody).unwrap_err().code(), "step-signer");

    assert_eq!(state_of("barrier-flap", &history).code(), "undone");
    assert_eq!(state_of("water-line", &history).code(), "skipped");
    assert_eq!(state_of("patch-roll", &history).code(), "done");
    assert_eq!(state_of("sealant", &history).code(), "open");
    let now = progress(&steps, &history);
    assert_eq!((now.done, now.skipped, now.next), (1, 2, Some("barrier-flap")));
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
        let mut history: Vec<SignOff> = Vec::new();
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
fn printed(steps: &[Step], language: Language) -> String {
    let phrases = Phrases::for_language(language);
    let mut text = String::new();
    for (n, step) in steps.iter().enumerate() {
        let mut marks = Vec::new();
        if step.hidden_by_later {
            marks.push("hidden");
        }
        if step.keeps_safe {
            marks.push("safe");
        }
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
        for language in Language::ALL {
            insta::assert_snapshot!(format!("{name}_{}", language.code()), printed(&steps, *language));
        }
    }
}
