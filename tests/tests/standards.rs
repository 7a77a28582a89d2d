//! Published numbers that come out of what the program computes with its rules.
//!
//! Each names its source, and how that is known: read in the source, quoted in another text, from memory (not verified), or
//! common practice, no source. That the table of rules holds what its sources print is not checked by typing it twice.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a check that cannot find its rule must fail")]

use lapwright::flashing::{
    Bead, BeadRequest, BeadShape, BeadWarning, BlockLimits, Cartridge, Patch, PatchBoard, PatchEnd, PatchError,
    PatchRequest, Pipe, WallRectangle,
};
use lapwright::measure::{Division, Length, Show};
use lapwright::notch::{Gap, Notch, Overcut};
use lapwright::phrases::{Language, Phrases};
use lapwright::rules::{Family, Quantity, RULES, Rule, RuleSet, RuleUnit, Status, keys};
use lapwright::siding::{Mode, Pole, PoleRequest, gap_takes, movement};
use lapwright::steps::{Caution, PenetrationDetail};
use lapwright::wall::{Finish, Mounting, PenetrationKind, Shape};
use num_rational::BigRational;

const US: Family = Family::UnitedStates;
const CA: Family = Family::Canada;
const AU: Family = Family::Australia;
const NZ: Family = Family::NewZealand;
const ANY: Family = Family::Common;

fn rule(key: &str, family: Family) -> &'static Rule {
    RULES
        .iter()
        .find(|rule| rule.key == key && rule.family == family)
        .unwrap_or_else(|| panic!("no rule {key} in {family:?}"))
}

fn inches(whole: i64, sixteenths: i64) -> Length {
    Length::from_inches_64(whole, 4 * sixteenths)
}

/// NIST SP 811: 1 in = 25.4 mm, 1 ft = 0.3048 m; 16 CFR 500.19: 1 US fl oz = 29.5735 mL.
#[test]
fn units_are_those_of_the_source() {
    assert_eq!(rule("unit.inch", ANY).value.length(), Some(Length::from_inches(1)));
    assert_eq!(rule("unit.foot", ANY).value.length(), Some(Length::from_inches(12)));
    assert_eq!(Show::FeetInches(16).text(Length::from_nm(304_800_000)), "1' 0\"");
    let reach = |cartridge| bead((1, 1), (1, 1), cartridge).per_cartridge.nm();
    let ounce = reach(Cartridge::fluid_ounces(share(1, 1)).unwrap());
    let printed = reach(Cartridge::millilitres(share(295_735, 10_000)).unwrap());
    // The source prints four decimals: half of the last one is 1.7 millionths of the whole.
    assert!((ounce - printed).abs() * 1_000_000 <= printed * 2, "{ounce} {printed}");
}

/// NIST Handbook 44, appendix C, and SP 811, appendix B.8 (quoted): a gallon is 3.785 412 L and covers a square foot of
/// 0.092 903 04 m2; a fluid ounce is 29.573 53 mL. A label's 350 sq ft a gallon are then 8.59 m2 a litre.
#[test]
fn what_a_can_holds_and_covers_in_metric() {
    let other = |value: i64, unit, other, places: u32| {
        let value = Quantity::new(value, 1, unit).unwrap().value_in(other).unwrap() * share(10_i64.pow(places), 1);
        value.round().to_integer()
    };
    assert_eq!(other(1, RuleUnit::Gallon, RuleUnit::Litre, 6), 3_785_412.into());
    assert_eq!(other(1, RuleUnit::FluidOunce, RuleUnit::Millilitre, 5), 2_957_353.into());
    assert_eq!(other(350, RuleUnit::SquareFootPerGallon, RuleUnit::SquareMetrePerLitre, 2), 859.into());
}

/// IRC 2024 R703.10.2 prints 1 1/4 in (32 mm): the rule is the inch value, 31.75 mm, so 32 mm passes and 31 mm does not.
#[test]
fn the_lap_is_compared_in_its_own_unit() {
    let lap = RuleSet::standard().get_length(keys::LAP_LEAST).unwrap();
    assert_eq!(lap, Length::from_nm(31_750_000));
    assert!(Length::from_mm(32) >= lap && Length::from_mm(31) < lap);
    assert_eq!(RuleSet::standard().get(keys::LAP_LEAST).unwrap().text(), "1 1/4 in");
}

/// IRC 2024 R703.10.2: a plank of 12 in at the least lap of 1 1/4 in shows 10 3/4 in; a wall 8 ft 1 in high then takes ten
/// courses, as nine would show 10 7/9 in.
#[test]
fn the_widest_plank_and_the_least_lap_give_the_greatest_reveal() {
    let rules = RuleSet::standard();
    let reveal = rules.get_length(keys::BOARD_HEIGHT_MOST).unwrap() - rules.get_length(keys::LAP_LEAST).unwrap();
    assert_eq!(reveal, inches(10, 12));
    let pole = |height| {
        Pole::lay_out(&PoleRequest {
            from: Length::ZERO,
            to: height,
            mode: Mode::Equal,
            reveal_max: reveal,
            reveal_min: None,
            marks: Vec::new(),
            division: Division::SIXTEENTH,
        })
        .unwrap()
    };
    assert_eq!(pole(inches(97, 0)).reveals.len(), 10);
    assert_eq!(pole(inches(96, 12)).reveals.len(), 9);
}

fn patch(nail_line: Length, lap: Length) -> Result<Patch, PatchError> {
    let rules = RuleSet::standard();
    let length = |key| rules.get_length(key).unwrap();
    Patch::cut(&PatchRequest {
        board: PatchBoard { height: inches(8, 4), lap, nail_line },
        bottoms: vec![Length::ZERO, inches(8, 4) - lap, inches(16, 8) - lap - lap],
        block: WallRectangle { left: inches(20, 0), right: inches(26, 0), bottom: inches(9, 0), top: inches(15, 0) },
        pipe: Pipe { shape: Shape::Round { diameter: inches(0, 14) }, x: inches(23, 0), y: inches(12, 0) },
        beyond_side: length(keys::PATCH_BEYOND_SIDE),
        beyond_top: length(keys::PATCH_BEYOND_TOP),
        snug: length(keys::PATCH_SNUG),
        slit: true,
        cover_beyond: length(keys::PATCH_COVER_BEYOND),
    })
}

/// IRC 2024 R703.10.2 against common practice: a nail line at most 1 in down is hidden by a lap of 1 1/4 in, by 1/4 in; a
/// patch that ends there never shows. NCC 2022 Housing Provisions 7.5.3: a lap of 25 mm does not hide a nail line 1 in
/// (25.4 mm) down, but one of 3/4 in.
#[test]
fn the_nail_line_is_hidden_by_the_least_lap() {
    let rules = RuleSet::standard();
    let (least, most) =
        (rules.get_length(keys::NAIL_LINE_LEAST).unwrap(), rules.get_length(keys::NAIL_LINE_MOST).unwrap());
    let found = patch(most, rules.get_length(keys::LAP_LEAST).unwrap()).unwrap();
    assert!(matches!(found.end, PatchEnd::Course { course: 1, hidden_by, .. } if hidden_by == inches(0, 4)));
    let australia = RuleSet::of(Family::Australia).get_length(keys::LAP_LEAST).unwrap();
    assert_eq!(patch(most, australia), Err(PatchError::NailLine));
    assert!(patch(least, australia).is_ok());
}

/// Engineering choice, no source: the patch runs 4 in past the block at the sides and the top.
#[test]
fn the_patch_runs_past_the_block_by_the_rule() {
    let outline = patch(inches(1, 0), inches(1, 4)).unwrap().outline;
    assert_eq!((outline.left, outline.right, outline.top), (inches(16, 0), inches(30, 0), inches(19, 0)));
}

fn share(n: i64, d: i64) -> BigRational {
    BigRational::new(n.into(), d.into())
}

/// A square bead of so many sixteenths of an inch.
fn bead(width: (i64, i64), depth: (i64, i64), cartridge: Cartridge) -> Bead {
    let size = |(n, d): (i64, i64)| Length::from_inches(n).scaled(1, d).unwrap();
    metric_bead(size(width), size(depth), cartridge)
}

fn metric_bead(width: Length, depth: Length, cartridge: Cartridge) -> Bead {
    let least = RuleSet::standard().get_length(keys::SEALANT_WIDTH_LEAST).unwrap();
    let length = Length::from_inches(12);
    let waste = share(0, 1);
    BeadRequest { width, depth, length, shape: BeadShape::Square, cartridge, waste, width_least: least }
        .amounts()
        .unwrap()
}

/// Allen & Rand, Architectural Detailing: a joint is at least 1/4 in wide. A painted bead of 1/16 to 1/8 in round a block is
/// narrower: the program says so.
#[test]
fn a_thin_bead_is_said_to_be_narrower_than_the_sealant_rule() {
    let cartridge = || Cartridge::millilitres(share(300, 1)).unwrap();
    for narrow in [(1, 16), (1, 8), (3, 16)] {
        assert_eq!(bead(narrow, (1, 16), cartridge()).warnings, [BeadWarning::Narrow], "{narrow:?}");
    }
    assert!(bead((1, 4), (1, 4), cartridge()).warnings.is_empty());
}

/// Reach of a cartridge of 10.1 US fl oz (231/128 cu in each, 16 CFR 500.19), in tenths of a foot, and of 300 mL, in
/// hundredths of a metre: volume over section, worked by hand.
#[test]
fn a_cartridge_reaches_as_far_as_its_volume() {
    let tenth_of_a_foot = Division::new(12 * Length::NM_PER_INCH, 10).unwrap();
    for (width, depth, tenths) in
        [((1, 4), (1, 4), 243), ((3, 8), (1, 4), 162), ((1, 2), (1, 4), 122), ((1, 2), (1, 2), 61)]
    {
        let (n, d) = rule("cartridge.ounces", US).value.fraction();
        let reach = bead(width, depth, Cartridge::fluid_ounces(share(n, d)).unwrap()).per_cartridge;
        assert_eq!(
            tenth_of_a_foot.count(reach, lapwright::measure::Rounding::Nearest),
            Some(tenths),
            "{width:?} {depth:?}"
        );
    }
    let centimetre = Division::new(10 * Length::NM_PER_MM, 1).unwrap();
    for (width, depth, hundredths) in [(5, 5, 1200), (6, 6, 833), (10, 5, 600), (10, 10, 300)] {
        let (n, d) = rule("cartridge.millilitres", ANY).value.fraction();
        let cartridge = Cartridge::millilitres(share(n, d)).unwrap();
        let reach = metric_bead(Length::from_mm(width), Length::from_mm(depth), cartridge).per_cartridge;
        assert_eq!(
            centimetre.count(reach, lapwright::measure::Rounding::Nearest),
            Some(hundredths),
            "{width} x {depth} mm"
        );
    }
}

/// NAVEDTRA 14044: a nail of 2 1/4 in through 3/8 in siding and 3/4 in sheathing goes 1 1/8 in into the stud, which IBC
/// 1405.16 (an older edition; 1 in, quoted) and NBC 9.27.5 (25 mm) accept and NCC 2022 Housing Provisions 7.5.3 (30 mm) does not.
#[test]
fn effective_nail_length_against_each_rule_set() {
    let into = inches(2, 4) - inches(0, 6) - inches(0, 12);
    assert_eq!(into, inches(1, 2));
    let enough = |family| into >= RuleSet::of(family).get_length(keys::NAIL_INTO_STUD).unwrap();
    assert!(enough(Family::UnitedStates) && enough(Family::Canada) && !enough(Family::Australia));
}

/// Clearances above the ground by rule set: NBC 9.27.2.4 200 mm, NCC 2022 7.5.7 150 mm, New Zealand 175 mm (quoted); the
/// IRC gives none for fibre cement, so the United States have the 6 in of common practice.
#[test]
fn each_rule_set_has_its_own_ground_clearance() {
    let text = |family| RuleSet::of(family).get(keys::CLEARANCE_GROUND).unwrap().text();
    let texts = [CA, AU, NZ, US].map(text);
    assert_eq!(texts, ["200 mm", "150 mm", "175 mm", "6 in"]);
    assert_eq!(RuleSet::standard().rule(keys::CLEARANCE_GROUND).unwrap().status, Status::CommonPractice);
}

/// Common practice, no source: joints at least one stud bay apart, at the 16 in of IRC R703.3.
#[test]
fn joints_are_staggered_by_stud_bays() {
    let rules = RuleSet::standard();
    let bay = rules.get_length(keys::STUD_SPACING).unwrap();
    let stagger = |key| bay.checked_mul(rules.get_whole(key).unwrap()).unwrap();
    assert_eq!(stagger(keys::JOINT_STAGGER_LEAST), inches(16, 0));
}

/// Common practice, no source: a saw led right on a line drawn tight to the block yields the gap of 1/16 to 1/8 in.
#[test]
fn the_default_saw_yields_the_default_gap() {
    let rules = RuleSet::standard();
    let length = |key| rules.get_length(key).unwrap();
    let gap = Gap { min: length(keys::GAP_BLOCK_LEAST), max: length(keys::GAP_BLOCK_MOST) };
    let saw = Overcut { min: length(keys::SAW_OVER_LEAST), max: length(keys::SAW_OVER_MOST) };
    let offset = gap.offset(saw, Division::SIXTEENTH);
    assert_eq!(offset, Length::ZERO);
    assert_eq!(Gap::predicted(offset, saw, Length::ZERO), Gap { min: inches(0, 1), max: inches(0, 2) });
}

/// Engineering choices of this program: the rooms that compute with them have the same defaults as the rule set.
#[test]
fn the_rooms_agree_with_the_rules() {
    let rules = RuleSet::standard();
    let length = |key| rules.get_length(key).unwrap();
    let limits = BlockLimits::default();
    assert_eq!(limits.bit_step, length(keys::BLOCK_BIT_STEP));
    assert_eq!(limits.side_least, length(keys::BLOCK_SIDE_LEAST));
    assert_eq!(limits.thickness_margin, length(keys::BLOCK_THICKNESS_MARGIN));
    let tolerance = length(keys::CROSS_CHECK_TOLERANCE);
    assert!(!Notch::is_off(tolerance) && Notch::is_off(tolerance + Length::from_nm(1)));
}

/// From memory, not verified (0.05 % from dry to wet): a board of 12 ft changes by 0.072 in, which the 1/8 in gap of common
/// practice takes up.
#[test]
fn movement_from_memory_is_taken_up_by_the_trim_gap() {
    let rules = RuleSet::standard();
    let (n, d) = rules.get_share(keys::MOVEMENT_STRAIN).unwrap();
    let change = movement(Length::from_inches(144), &share(n, d)).unwrap();
    assert_eq!(change, Length::from_nm(72 * Length::NM_PER_INCH / 1000));
    let gap = rules.get_length(keys::GAP_TRIM).unwrap();
    assert_eq!(gap_takes(Length::from_inches(144), &share(n, d), gap), Some(true));
}

/// The cautions say what their sources say: 29 CFR 1926.1053 (a quarter of the working length, 3 ft), 29 CFR 1926.451
/// (10 ft, quoted), 29 CFR 1926.501(b)(1) (6 ft, read) and 1926.451(g) (10 ft, from memory), 40 CFR 745 (1978, 20 sq ft;
/// 745.83: never for demolition or change of windows, read), 29 CFR 1926.1153 Table 1 (99 % filter, read); each names its
/// source.
#[test]
fn cautions_carry_the_numbers_of_their_sources() {
    for (caution, source, english, spanish) in [
        (Caution::Ladder, "29 CFR 1926.1053", ["a quarter", "3 ft"], ["una cuarta parte", "3 pies"]),
        (Caution::PowerLine, "29 CFR 1926.451", ["10 ft", "power lines"], ["10 pies", "líneas eléctricas"]),
        (Caution::Lead, "40 CFR 745", ["1978", "20 sq ft"], ["1978", "20 pies cuadrados"]),
        (Caution::Lead, "40 CFR 745", ["demolition", "certified firm"], ["demuelan", "empresa certificada"]),
        (Caution::Fall, "29 CFR 1926.501", ["6 ft", "10 ft"], ["6 pies", "10 pies"]),
        (Caution::Silica, "29 CFR 1926.1153", ["maker asks for", "99 %"], ["pide el fabricante", "99 %"]),
    ] {
        assert!(caution.source().unwrap().contains(source));
        for (language, parts) in [(Language::English, english), (Language::Spanish, spanish)] {
            let text = Phrases::for_language(language).phrase(caution.phrase(), &[]);
            assert!(parts.iter().all(|part| text.contains(part)), "{text}");
        }
    }
}

/// BRANZ guideline, September 2020 (quoted): a flange is sealed on its upper two thirds, the bottom stays open. IRC M1502.3:
/// a dryer's hood has no screen.
#[test]
fn steps_say_what_their_sources_say() {
    let round = Shape::Round { diameter: Length::from_mm(100) };
    let said = |kind, finish, code: &str| {
        let steps = PenetrationDetail::plain(kind, round, finish, Mounting::SlipOver).steps();
        let step = steps.into_iter().find(|step| step.code == code).unwrap_or_else(|| panic!("no step {code}"));
        Phrases::for_language(Language::English).phrase(step.text, &[])
    };
    assert!(said(PenetrationKind::Pipe, Finish::Collar, "collar-bed").contains("upper two thirds"));
    assert!(said(PenetrationKind::Pipe, Finish::Collar, "sealant").contains("bottom of the collar open"));
    assert!(said(PenetrationKind::VentHood, Finish::Block, "hood-free").contains("no screen"));
}
