//! What codes ask for at a penetration, against what the program works out. Each check names its source and how it is known.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a check without its answer must fail")]

use lapwright::figure;
use lapwright::flashing::{HeadFlashing, HeadRequest, WallRectangle, duct_narrow, head_needed, way_between};
use lapwright::measure::Length;
use lapwright::phrases::{Language, Phrases};
use lapwright::rules::{Family, RuleSet, keys};
use lapwright::steps::{PenetrationDetail, Step};
use lapwright::wall::{Finish, Mounting, PenetrationKind, Shape};
use serde_json::{Value, json};

fn inch(whole: i64) -> Length {
    Length::from_inches(whole)
}

/// A shed of 12 ft under the rules of a country, with rules changed; what it needs of a material.
fn ordered(family: &str, thickness: &str, changed: &[(&str, &str)], material: &str) -> String {
    let changed: Vec<Value> =
        changed.iter().map(|(key, value)| json!({"key": key, "value": value, "reason": "as built"})).collect();
    let job = json!({"lapwright": 1, "name": "Shed", "rules": family, "board-height": "8 1/4 in",
        "board-thickness": thickness, "lap": "1 1/4 in", "nail-line": "3/4 in", "stock": [{"length": "12 ft"}],
        "rules-changed": changed,
        "pole": {"from": "0 in", "to": "14 in", "mode": "fixed", "reveal": "7 in", "reveal-max": "7 in",
            "reveal-min": "1 in", "lines": ["0 in", "7 in", "14 in"]},
        "walls": [{"name": "Front", "width": "12 ft", "left-height": "14 in", "right-height": "14 in", "base": "0 in",
            "first-stud": "0 in", "stud-spacing": "16 in", "trim-left": "3 1/2 in", "trim-right": "3 1/2 in"}]});
    let answered = figure::answer("amounts", &json!({"job": job}).to_string());
    let answer: Value = serde_json::from_str(&answered.json).unwrap();
    let names = answer["items"].as_array().unwrap_or_else(|| panic!("{}", answered.json)).iter();
    names.map(|item| item["name"].as_str().unwrap()).find(|name| name.starts_with(material)).unwrap().to_owned()
}

/// NAVEDTRA 14044 (read): 3/8 in of siding over 3/4 in of sheathing is nailed with 2 1/4 in. With the inch into the stud of
/// IBC 1405.16 (an older edition, quoted) 2 1/8 in would do, which is not sold.
#[test]
fn a_handbook_wall_takes_the_handbooks_nail() {
    let name = ordered("us", "3/8 in", &[("sheathing.thickness", "3/4 in")], "Siding nails");
    assert_eq!(name, "Siding nails, 2 1/4\" or longer");
}

/// IRC 2024 R703.3.4 (read): over foam a nail goes 1 1/2 in into the framing. 5/16 + 1 + 7/16 + 1 1/2 is 3 1/4 in.
#[test]
fn over_foam_the_nail_goes_deeper() {
    let name = ordered("us", "5/16 in", &[("foam.thickness", "1 in")], "Siding nails");
    assert_eq!(name, "Siding nails, 3 1/4\" or longer");
}

/// IRC 2018 Table R703.3(1) (read): over sheathing of any kind fibre cement takes 6d common, 2 in, also where less would go
/// 1 in into the stud: 5/16 + 7/16 + 1 is 1 3/4 in. Where the layers ask for more they decide: 5/16 + 3/4 + 1 is 2 1/16 in.
#[test]
fn over_sheathing_the_nail_is_that_of_the_table() {
    assert_eq!(ordered("us", "5/16 in", &[], "Siding nails"), "Siding nails, 2\" or longer");
    let thick = [("sheathing.thickness", "3/4 in")];
    assert_eq!(ordered("us", "5/16 in", &thick, "Siding nails"), "Siding nails, 2 1/4\" or longer");
}

/// IRC 2018 Table R703.3(1) (read): fibre cement 5/16 in thick is nailed right to the studs with 4d common, 1 1/2 in (the
/// row of panels).
#[test]
fn right_to_the_studs_the_nail_is_that_of_the_table() {
    let name = ordered("us", "5/16 in", &[("sheathing.thickness", "0 in")], "Siding nails");
    assert_eq!(name, "Siding nails, 1 1/2\" or longer");
}

/// NBC 9.27.5 (read): at least 51 mm long, 25 mm into the framing. Without sheathing a board of 8 mm would do with 33 mm;
/// NCC 2022 Housing Provisions 7.5.3 (read), 30 mm into timber: 38 mm, up to the next 1/4 in.
#[test]
fn each_country_has_its_nail() {
    let bare = [("sheathing.thickness", "0 in")];
    assert_eq!(ordered("ca", "8 mm", &bare, "Siding nails"), "Siding nails, 2 1/4\" or longer");
    assert_eq!(ordered("au", "8 mm", &bare, "Siding nails"), "Siding nails, 1 1/2\" or longer");
}

/// IRC R703.4, item 4 (read): flashing "continuously above all projecting wood trim", whatever its width; of a block no code
/// speaks, and up to 6 in it holds no water (common practice, no source).
#[test]
fn projecting_trim_is_flashed_whatever_its_width() {
    let rules = RuleSet::standard();
    let needed = |finish, width| head_needed(&rules, finish, width).unwrap();
    assert!((1..200).all(|width| needed(Finish::Trim, inch(width))));
    assert!(!needed(Finish::Block, inch(6)) && needed(Finish::Block, inch(7)));
}

/// NBC 9.27.3.8 (read): 6 % outward, 50 mm up behind the barrier, 10 mm down over the face, 5 mm out from it, end dams of
/// 25 mm. A block 45 mm thick and 200 mm wide: 50 mm out, so 3 mm of fall; the strip covers 250 mm with its dams.
#[test]
fn a_head_flashing_is_bent_as_the_code_has_it() {
    let rules = RuleSet::of(Family::Canada);
    let (mm, rule) = (Length::from_mm, |key| rules.get_length(key).unwrap());
    let head = HeadFlashing::bend(&HeadRequest {
        block: WallRectangle { left: mm(0), right: mm(200), bottom: mm(500), top: mm(700) },
        thickness: mm(45),
        up_leg: rule(keys::HEAD_FLASHING_UP_LEG),
        gap: mm(6),
        slope: rules.get_share(keys::HEAD_FLASHING_SLOPE).unwrap(),
        end_dam: rule(keys::HEAD_FLASHING_END_DAM),
        down_lap: rule(keys::HEAD_FLASHING_DOWN_LAP),
        drip: rule(keys::HEAD_FLASHING_DRIP),
    })
    .unwrap();
    assert_eq!((head.out, head.fall, head.cut_length), (mm(50), mm(3), mm(250)));
    assert_eq!((head.area.bottom, head.area.top - head.open_to), (mm(690), mm(50)));
}

/// IRC M1502.3.1 (from memory): 12.5 sq in; the usual 4 in duct has pi x 4 = 12.57 and passes, a 3 in one does not.
/// M1502.3 (read): 3 ft from openings.
#[test]
fn a_dryers_hood_keeps_its_distance_and_its_width() {
    let rules = RuleSet::standard();
    let narrow = |inches| duct_narrow(&rules, Shape::Round { diameter: inch(inches) }).unwrap();
    assert!(narrow(3) && !narrow(4));
    let area = |left: i64, bottom: i64| WallRectangle {
        left: inch(left),
        right: inch(left + 4),
        bottom: inch(bottom),
        top: inch(bottom + 4),
    };
    let (hood, least) = (area(0, 0), rules.get_length(keys::DRYER_FROM_OPENINGS).unwrap());
    // 36 in straight up, and 20 by 30 in across the corner: 36.06 in.
    assert_eq!(way_between(hood, area(0, 40)), least);
    assert!(way_between(hood, area(24, 34)) > least && way_between(hood, area(24, 33)) < least);
}

fn steps(kind: PenetrationKind, finish: Finish, mounting: Mounting) -> Vec<Step> {
    let shape = Shape::Rectangle { width: inch(4), height: inch(4) };
    PenetrationDetail::plain(kind, shape, finish, mounting).steps()
}

/// NEC 314.20 (2017, quoted): a box is flush in a combustible surface and at most 1/4 in back in a noncombustible one.
/// A block recesses it, whoever takes the fixture off: an extension ring goes on before the fixture does.
#[test]
fn a_box_is_not_left_recessed() {
    for finish in Finish::ALL {
        for kind in [PenetrationKind::ElectricalBox, PenetrationKind::Light] {
            let steps = steps(kind, *finish, Mounting::SlipOver);
            let at = |code: &str| steps.iter().position(|step| step.code == code).unwrap();
            assert!(at("boards-gap") < at("extension-ring") && at("extension-ring") < at("fixture-on"));
            let text = Phrases::for_language(Language::English).phrase(steps[at("extension-ring")].text, &[]);
            assert!(text.contains("flush in wood") && text.contains("1/4 in back"), "{text}");
        }
    }
}

/// Common practice, no source: gas, power, refrigerant and meters are the licensed trades' and the utility's, before the
/// work and after it.
#[test]
fn licensed_trades_are_named_before_and_after() {
    let phrases = Phrases::for_language(Language::English);
    for (kind, before, after, who) in [
        (PenetrationKind::Pipe, "what-it-carries", "leak-test", "licensed gas fitter"),
        (PenetrationKind::MeterBase, "meter", "power-on", "utility"),
        (PenetrationKind::LineSet, "fixture-off", "fixture-on", "licensed to handle the refrigerant"),
        (PenetrationKind::Light, "fixture-off", "fixture-on", "licensed"),
    ] {
        let steps = steps(kind, Finish::Block, Mounting::SlipOver);
        for code in [before, after] {
            let step = steps.iter().find(|step| step.code == code).unwrap();
            let text = phrases.phrase(step.text, &[]);
            assert!(text.contains(who), "{code}: {text}");
        }
    }
}
