use std::collections::BTreeSet;

use super::*;
use crate::flashing::{HeadRequest, ShedKind};
use crate::rules::{Family, Quantity, RuleChange, RuleUnit};

fn inch(whole: i64) -> Length {
    Length::from_inches(whole)
}

fn board() -> DetailBoard {
    DetailBoard {
        height: Length::from_inches_64(8, 16),
        thickness: Length::from_inches_64(0, 20),
        lap: Length::from_inches_64(1, 16),
    }
}

fn head(rules: &RuleSet, area: WallRectangle) -> HeadFlashing {
    let rule = |key| rules.get_length(key).unwrap();
    HeadFlashing::bend(&HeadRequest {
        block: area,
        thickness: inch(1),
        up_leg: rule(keys::HEAD_FLASHING_UP_LEG),
        gap: crate::flashing::head_gap(rules).unwrap(),
        slope: rules.get_share(keys::HEAD_FLASHING_SLOPE).unwrap(),
        end_dam: rule(keys::HEAD_FLASHING_END_DAM),
        down_lap: rule(keys::HEAD_FLASHING_DOWN_LAP),
        drip: rule(keys::HEAD_FLASHING_DRIP),
    })
    .unwrap()
}

/// A wall 20 ft long and 8 ft high with one thing on it, a place after the other.
fn detail(rules: &RuleSet, place: DetailPlace, corner: CornerKind) -> Detail {
    let wall = WallRectangle { left: inch(0), right: inch(240), bottom: inch(0), top: inch(96) };
    let area = match place {
        DetailPlace::Window => WallRectangle { left: inch(60), right: inch(100), bottom: inch(30), top: inch(80) },
        DetailPlace::Door => WallRectangle { left: inch(60), right: inch(100), bottom: inch(0), top: inch(80) },
        DetailPlace::CornerLeft => WallRectangle { right: inch(3), ..wall },
        DetailPlace::CornerRight => WallRectangle { left: inch(237), ..wall },
        DetailPlace::RoofSide | DetailPlace::RoofHead | DetailPlace::Ledger | DetailPlace::Ledge => {
            WallRectangle { left: inch(100), right: inch(200), bottom: inch(0), top: inch(20) }
        }
        _ => wall,
    };
    let opening = matches!(place, DetailPlace::Window | DetailPlace::Door);
    let request = DetailRequest {
        assembly: DetailAssembly::new(place, corner),
        board: board(),
        wall,
        area,
        casing: inch(1),
        head: opening.then(|| head(rules, area)),
        slope: (place == DetailPlace::RoofSide).then(|| (inch(6), inch(12))),
    };
    Detail::of(rules, request, inch(2)).unwrap()
}

fn all(rules: &RuleSet) -> Vec<Detail> {
    let of =
        |place: &DetailPlace| CornerKind::ALL.iter().map(|corner| detail(rules, *place, *corner)).collect::<Vec<_>>();
    DetailPlace::ALL.iter().flat_map(of).collect()
}

fn changed(key: &str, n: i64, d: i64) -> RuleSet {
    let mut rules = RuleSet::standard();
    let value = Quantity::new(n, d, RuleUnit::Inch).unwrap();
    rules.set(key, RuleChange { value, by: "Ana".into(), at_ms: 0, reason: "local code".into() }).unwrap();
    rules
}

#[test]
fn every_detail_sheds_under_the_rules_of_every_country() {
    for family in Family::ALL {
        for detail in all(&RuleSet::of(*family)) {
            assert_eq!(detail.wall_layers().faults(), Ok(Vec::new()), "{family:?} {:?}", detail.assembly());
        }
    }
}

/// A leg behind the boards grows with what the boards keep clear and the barrier laps: it is never told too short.
#[test]
fn a_detail_sheds_whatever_a_rule_is_changed_to() {
    for (key, n, d) in [
        (keys::CLEARANCE_ROOF, 8, 1),
        (keys::CLEARANCE_ROOF_STEP_FLASHED, 6, 1),
        (keys::BARRIER_LAP_HORIZONTAL, 6, 1),
        (keys::TRIM_WIDTH, 1, 2),
        (keys::PATCH_BEYOND_SIDE, 1, 1),
        (keys::STEP_FLASHING_LEG, 1, 1),
        (keys::FURRING_THICKNESS, 3, 4),
    ] {
        for detail in all(&changed(key, n, d)) {
            assert_eq!(detail.wall_layers().faults(), Ok(Vec::new()), "{key} {:?}", detail.assembly());
        }
    }
}

fn kinds(layers: &WallLayers) -> BTreeSet<ShedKind> {
    layers.faults().unwrap().iter().map(|fault| fault.kind).collect()
}

/// A barrier tucked behind the flashing instead of over it, at each place that has one.
#[test]
fn a_barrier_behind_the_flashing_is_found() {
    let rules = RuleSet::standard();
    for (place, flashing) in [
        (DetailPlace::RoofHead, Layer::Apron),
        (DetailPlace::RoofSide, Layer::StepFlashing),
        (DetailPlace::Ledger, Layer::LedgerFlashing),
        (DetailPlace::Ledge, Layer::LedgeFlashing),
        (DetailPlace::Base, Layer::BaseFlashing),
    ] {
        let mut layers = detail(&rules, place, CornerKind::Outside).wall_layers();
        let at = |kind| layers.layers.iter().position(|layer| layer.kind == kind).unwrap();
        let (low, high) = (at(LayerKind::Detail { layer: flashing }), at(LayerKind::BarrierFlap));
        layers.layers.swap(low, high);
        assert!(!kinds(&layers).is_empty(), "{place:?}");
    }
}

#[test]
fn a_short_leg_is_found() {
    let rules = RuleSet::standard();
    for place in [DetailPlace::RoofHead, DetailPlace::RoofSide, DetailPlace::Ledger, DetailPlace::Ledge] {
        let mut layers = detail(&rules, place, CornerKind::Outside).wall_layers();
        for layer in layers.layers.iter_mut().filter(|layer| layer.exposed && layer.profile.thickness == Length::ZERO) {
            layer.pieces.iter_mut().for_each(|piece| piece.top = piece.top - inch(1));
        }
        assert!(kinds(&layers).contains(&ShedKind::ShortLap), "{place:?}");
    }
}

/// A jamb's membrane that stops above the one under the sill.
#[test]
fn a_jamb_that_stops_short_is_found() {
    let mut layers = detail(&RuleSet::standard(), DetailPlace::Window, CornerKind::Outside).wall_layers();
    let sill = LayerKind::Detail { layer: Layer::SillFlashing };
    let at = layers.layers.iter().position(|layer| layer.kind == sill).unwrap();
    layers.layers.swap(at, at + 1);
    assert!(!kinds(&layers).is_empty());
}

#[test]
fn what_hides_a_layer_comes_after_it() {
    for place in DetailPlace::ALL {
        for corner in CornerKind::ALL {
            let assembly = DetailAssembly::new(*place, *corner);
            let layers = assembly.layers();
            assert_eq!(layers.iter().collect::<BTreeSet<_>>().len(), layers.len(), "{place:?}: a layer twice");
            for (at, layer) in layers.iter().enumerate() {
                let over = assembly.hidden_by(*layer);
                assert_eq!(over.is_some(), layer.is_hidden_later(), "{place:?} {layer:?}");
                let put_later = over.and_then(|over| layers.iter().position(|own| *own == over));
                assert!(put_later.is_none_or(|over| over > at), "{place:?} {layer:?} {over:?}");
            }
        }
    }
}

/// Building America (read): siding ends 1 in above a roof with step flashing. On a 6 in 12 slope that is, straight up,
/// 1 in x 13.42 / 12 (the framing square's unit rafter) = 1.118 in; a board 8 1/4 in high ends 16 1/2 in further along.
#[test]
fn the_clearance_along_a_roof_is_square_to_it() {
    let roof = detail(&RuleSet::standard(), DetailPlace::RoofSide, CornerKind::Outside);
    let up = roof.clearance_plumb();
    assert!(up > Length::from_nm(28_397_000) && up < Length::from_nm(28_409_000), "{up:?}");
    assert!(roof.sizes(Layer::Boards).contains(&("edges-differ", Length::from_inches_64(16, 32))));
}

/// IRC R905.2.8.3 (read): 4 in up the wall and 4 in out on the roof. IRC R507.9.1.5 (read): 2 in above the ledger, but its
/// leg must reach as high as the boards keep clear and the barrier laps: 2 + 2 in.
#[test]
fn a_leg_is_what_the_code_and_its_laps_ask_for() {
    let rules = RuleSet::standard();
    let leg = |place| detail(&rules, place, CornerKind::Outside).leg();
    assert_eq!((leg(DetailPlace::RoofSide), leg(DetailPlace::RoofHead)), (inch(4), inch(4)));
    assert_eq!(leg(DetailPlace::Ledger), inch(4));
    let wet = changed(keys::CLEARANCE_ROOF, 3, 1);
    assert_eq!(detail(&wet, DetailPlace::RoofHead, CornerKind::Outside).leg(), inch(5));
}
