//! The split mounting block against a solid model of it, written apart in floats: a box, a round or rectangular hole
//! through it, and a saw's slab through the hole's axis, tilted about the level line. Every size is measured on that solid by meeting planes
//! and walking along lines; none is taken from the formulas under test. Source: plane geometry alone.
//!
//! x runs along the wall, y up, z from the face to the wall; a nanometre is the unit.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a check without its answer must fail")]

use lapwright::figure;
use lapwright::flashing::{BlockError, BlockLimits, BlockWarning, SplitBlock, SplitRequest};
use lapwright::measure::{Division, Length};
use lapwright::wall::Shape;
use lapwright_tests::random::Random;
use num_rational::BigRational;
use serde_json::{Value, json};

const EIGHTH: f64 = 3_175_000.0;
const SIXTEENTH: f64 = 1_587_500.0;
/// Two lengths this near are one, in nanometres; where a yes or no hangs on less, the solid does not decide.
const NEAR: f64 = 4.0;

/// The blank with its hole and cut, heights from the hole's axis.
struct Solid {
    thickness: f64,
    /// The slab's normal: the cut rises toward the wall.
    normal: [f64; 2],
    kerf: f64,
}

impl Solid {
    fn new(request: &SplitRequest, degrees: f64) -> Self {
        let tilt = degrees.to_radians();
        Self { thickness: nm(request.thickness), normal: [tilt.cos(), -tilt.sin()], kerf: nm(request.kerf) }
    }

    /// Where the vertical line at depth `z` meets the slab's side `side` (-1 the lower piece's cut, 1 the upper's).
    fn cut_at(&self, z: f64, side: f64) -> f64 {
        let along = self.normal[1] * (z - self.thickness / 2.0);
        (side * self.kerf / 2.0 - along) / self.normal[0]
    }

    fn kerf_up(&self) -> f64 {
        self.cut_at(0.0, 1.0) - self.cut_at(0.0, -1.0)
    }

    fn climb(&self) -> f64 {
        self.cut_at(self.thickness, -1.0) - self.cut_at(0.0, -1.0)
    }

    /// The highest point of the lower piece over all its slices, seen along the pipe.
    fn crest(&self) -> f64 {
        (0..=32).map(|i| self.cut_at(self.thickness * f64::from(i) / 32.0, -1.0)).fold(f64::MIN, f64::max)
    }

    /// The deepest point of the upper piece, which goes on from above as the lower does from below.
    fn trough(&self) -> f64 {
        (0..=32).map(|i| self.cut_at(self.thickness * f64::from(i) / 32.0, 1.0)).fold(f64::MAX, f64::min)
    }

    /// The narrowest way to the axis between the walls of the hole, past all levels at which wood stands; nothing where
    /// wood stands across.
    fn mouth(&self, hole: Hole) -> Option<f64> {
        let crest = self.crest().max(0.0);
        let mut narrowest = f64::MAX;
        for i in 0..=64 {
            let level = crest * f64::from(i) / 64.0;
            narrowest = narrowest.min(opening(level, hole)?);
        }
        Some(narrowest)
    }
}

/// A hole in the blank.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Hole {
    round: bool,
    width: f64,
    height: f64,
}

impl Hole {
    fn of(shape: Shape) -> Self {
        let round = matches!(shape, Shape::Round { .. });
        Self { round, width: nm(shape.width()), height: nm(shape.height()) }
    }

    fn is_in(self, x: f64, level: f64) -> bool {
        let (x, level) = (x / self.width, level / self.height);
        if self.round { x * x + level * level < 0.25 } else { x.abs() < 0.5 && level.abs() < 0.5 }
    }
}

/// From wall to wall of the hole at a level from its axis: by halving, out from the middle; nothing past the hole.
fn opening(level: f64, hole: Hole) -> Option<f64> {
    if !hole.is_in(0.0, level) {
        return None;
    }
    let (mut low, mut high) = (0.0, hole.width);
    for _ in 0..80 {
        let middle = (low + high) / 2.0;
        if hole.is_in(middle, level) { low = middle } else { high = middle }
    }
    Some(low + high)
}

/// What the solid says of a request at an angle.
enum Goes {
    On,
    Narrow,
    Ring,
    NoBit,
    /// Nearer than [`NEAR`] to the one or the other.
    Undecided,
}

fn judge(request: &SplitRequest, degrees: f64, hole: Option<Hole>) -> Goes {
    let Some(hole) = hole else { return Goes::NoBit };
    let (solid, through) = (Solid::new(request, degrees), nm(request.through.width()));
    if (2.0 * solid.crest() - hole.height).abs() < NEAR {
        return Goes::Undecided;
    }
    match solid.mouth(hole) {
        None => Goes::Ring,
        Some(mouth) if (mouth - through).abs() < NEAR => Goes::Undecided,
        Some(mouth) if mouth < through => Goes::Narrow,
        Some(_) => Goes::On,
    }
}

/// The least hole round whose closed height the gap stays above and below the pipe: the hole less the saw's loss.
fn least_hole(request: &SplitRequest, degrees: f64) -> Option<Hole> {
    let loss = Solid::new(request, degrees).kerf_up();
    let stays = |size: f64, loss: f64, through: Length| (size - loss - nm(through)) / 2.0 >= nm(request.gap) - 0.01;
    let steps = |step: f64| (1..20_000).map(move |count| f64::from(count) * step);
    match request.through {
        Shape::Rectangle { width, height } => Some(Hole {
            round: false,
            width: steps(SIXTEENTH).find(|size| stays(*size, 0.0, width))?,
            height: steps(SIXTEENTH).find(|size| stays(*size, loss, height))?,
        }),
        Shape::Round { diameter } => {
            let bit = match &request.bits {
                Some(bits) => {
                    bits.iter().map(|bit| nm(*bit)).filter(|bit| stays(*bit, loss, diameter)).min_by(f64::total_cmp)
                }
                None => steps(EIGHTH).find(|bit| stays(*bit, loss, diameter)),
            }?;
            Some(Hole { round: true, width: bit, height: bit })
        }
    }
}

/// Whether wood is left on all sides of a hole in the finished block.
fn fits(request: &SplitRequest, degrees: f64, hole: Hole) -> bool {
    let half = (hole.height - Solid::new(request, degrees).kerf_up()) / 2.0;
    let center = nm(request.center);
    hole.width < nm(request.width) && center - half > 0.0 && nm(request.height) - center - half > 0.0
}

fn nm(length: Length) -> f64 {
    length.nm() as f64
}

fn near(got: Length, want: f64) -> bool {
    (nm(got) - want).abs() <= NEAR
}

/// A block such as a yard's offcuts give, its angle in tenths of a degree.
fn thrown(random: &mut Random) -> (SplitRequest, i64) {
    let mut between = |low: i64, high: i64| Length::from_nm(random.between(low, high));
    let (width, thickness, pipe) =
        (between(90_000_000, 300_000_000), between(15_000_000, 65_000_000), between(12_000_000, 60_000_000));
    let rectangle = Shape::Rectangle { width: between(12_000_000, 90_000_000), height: pipe };
    let (height, kerf, gap) = (between(120_000_000, 400_000_000), between(0, 4_000_000), between(0, 5_000_000));
    let center = Length::from_nm(height.nm() / 2) + between(-20_000_000, 20_000_000);
    let bits = [6, 8, 10, 11, 12, 14, 16, 20].map(|eighths| Length::from_nm(eighths * 3_175_000)).to_vec();
    let bits = (random.between(0, 3) == 0).then_some(bits);
    let through = if random.between(0, 2) == 0 { rectangle } else { Shape::Round { diameter: pipe } };
    let tenths = if random.between(0, 1) == 0 { 450 } else { random.between(0, 750) };
    let request = SplitRequest {
        width,
        height,
        thickness,
        through,
        center,
        angle: BigRational::new(tenths.into(), 10.into()),
        kerf,
        gap,
        bits,
        board_thickness: None,
        division: Division::SIXTEENTH,
        limits: BlockLimits::default(),
    };
    (request, tenths)
}

fn check_sizes(request: &SplitRequest, degrees: f64, block: &SplitBlock) {
    let solid = Solid::new(request, degrees);
    let (drill, blank) = (nm(block.drill_at), nm(block.blank_height));
    let depths = [0.0, solid.thickness];
    let lower = depths.map(|z| drill + solid.cut_at(z, -1.0));
    let upper = depths.map(|z| blank - drill - solid.cut_at(z, 1.0));
    // Closed, the two stand as high at the face as at the wall; what is too much comes off the upper one.
    let closed = [lower[0] + upper[0], lower[1] + upper[1]];
    let excess = closed[0] - nm(request.height);
    assert!((closed[0] - closed[1]).abs() < 1.0);
    assert!(excess > -NEAR && excess < 1_587_500.0 + NEAR, "{excess} comes off");
    let sixteenths = blank / 1_587_500.0;
    assert!((sixteenths - sixteenths.round()).abs() * 1_587_500.0 <= 0.51, "{blank}");
    assert!(near(block.lower.face, lower[0]) && near(block.lower.back, lower[1]), "{lower:?}");
    assert!(near(block.upper.face, upper[0] - excess) && near(block.upper.back, upper[1] - excess), "{upper:?}");
    assert!(near(block.kerf_up, blank - closed[0]), "lost to the saw");
    assert!(near(block.climb, solid.climb()));
    // The pipe lies midway between the closed hole's bottom and top.
    let hole = Hole::of(block.hole);
    let (low, high) = (drill - hole.height / 2.0, drill + hole.height / 2.0 - solid.kerf_up());
    assert!(near(request.center, f64::midpoint(low, high)));
    let least = least_hole(request, degrees).unwrap();
    assert!((least.width - hole.width).abs() < 1.0 && (least.height - hole.height).abs() < 1.0, "{least:?} {hole:?}");
    // Both pieces open alike: what stands over the axis of the one stands under that of the other.
    assert!((solid.crest() + solid.trough()).abs() < 1.0);
    let mouth = solid.mouth(hole).unwrap();
    assert!(near(block.mouth, mouth), "{mouth}");
    let play = mouth - nm(request.through.width()) - nm(request.gap);
    if play.abs() > NEAR {
        assert_eq!(block.warnings.contains(&BlockWarning::MouthTight), play < 0.0);
    }
}

/// Whether the pieces go on at so many half degrees, with a hole narrower than the block.
fn goes(request: &SplitRequest, half_degrees: i64) -> Goes {
    let degrees = half_degrees as f64 / 2.0;
    judge(request, degrees, least_hole(request, degrees).filter(|hole| hole.width < nm(request.width)))
}

/// The way out: the steepest half degree goes on, none over it does; and so with the bit.
fn check_way_out(request: &SplitRequest, tenths: i64, half_degrees: i64, hole: Option<Length>) {
    assert!(matches!(goes(request, half_degrees), Goes::On | Goes::Undecided));
    for half in half_degrees + 1..=tenths / 5 {
        assert!(!matches!(goes(request, half), Goes::On), "{half} half degrees go on too");
    }
    let asked = tenths as f64 / 10.0;
    let Some(at_hand) = least_hole(&SplitRequest { bits: None, ..request.clone() }, asked) else { return };
    let step = if at_hand.round { EIGHTH } else { SIXTEENTH };
    let larger = |count: i32| {
        let height = at_hand.height + f64::from(count) * step;
        Hole { height, width: if at_hand.round { height } else { at_hand.width }, ..at_hand }
    };
    let on = |hole: &Hole| matches!(judge(request, asked, Some(*hole)), Goes::On | Goes::Undecided);
    let least = (0..100_000).map(larger).find(on);
    let want = least.filter(|hole| fits(request, asked, *hole)).map(|hole| hole.height);
    let told = hole.map(nm);
    assert_eq!(told.is_some(), want.is_some(), "{told:?} {want:?} {request:?}");
    assert!(told.zip(want).is_none_or(|(told, want)| (told - want).abs() < 1.0), "{told:?} {want:?}");
}

#[test]
fn every_size_is_that_of_the_solid() {
    let mut random = Random::new(20_261);
    let [mut made, mut narrow, mut ring, mut other, mut undecided] = [0; 5];
    for case in 0..3_000 {
        let (request, tenths) = thrown(&mut random);
        let degrees = tenths as f64 / 10.0;
        let judged = judge(&request, degrees, least_hole(&request, degrees));
        match (SplitBlock::lay_out(&request), judged) {
            (_, Goes::Undecided) => undecided += 1,
            (Ok(block), Goes::On) => {
                check_sizes(&request, degrees, &block);
                made += 1;
            }
            (Err(BlockError::MouthNarrow { way_out, .. }), Goes::Narrow) => {
                check_way_out(&request, tenths, way_out.half_degrees, way_out.hole);
                narrow += 1;
            }
            (Err(BlockError::RingClosed(way_out)), Goes::Ring) => {
                check_way_out(&request, tenths, way_out.half_degrees, way_out.hole);
                ring += 1;
            }
            (Err(BlockError::NoBit { .. }), Goes::NoBit) => other += 1,
            (Err(BlockError::HoleTooWide { .. } | BlockError::HoleTooHigh { .. }), _) => {
                assert!(!fits(&request, degrees, least_hole(&request, degrees).unwrap()));
                other += 1;
            }
            (Err(BlockError::CutLeaves { face, back }), _) => {
                let half = Solid::new(&request, degrees).climb() / 2.0;
                assert!(near(face, nm(request.center) - half) && near(back, nm(request.center) + half));
                assert!(nm(face) <= NEAR || nm(back) >= nm(request.height) - NEAR);
                other += 1;
            }
            (got, _) => panic!("case {case}: the solid says otherwise of {request:?}: {got:?}"),
        }
    }
    assert!(made > 500 && narrow > 100 && ring > 100 && undecided < 5, "{made} {narrow} {ring} {other} {undecided}");
}

/// The question gives the same block as the room, and its refusals name the way out.
#[test]
fn the_question_tells_what_the_solid_says() {
    let mut random = Random::new(5);
    let mut refusals = 0;
    for _ in 0..200 {
        let (request, tenths) = thrown(&mut random);
        let text = |length: Length| format!("{}.{:06} mm", length.nm() / 1_000_000, length.nm() % 1_000_000);
        let pipe = match request.through {
            Shape::Round { diameter } => json!(text(diameter)),
            Shape::Rectangle { width, height } => json!({"width": text(width), "height": text(height)}),
        };
        let mut asked = json!({"width": text(request.width), "height": text(request.height),
            "thickness": text(request.thickness), "pipe": pipe, "center": text(request.center),
            "kerf": text(request.kerf), "gap": text(request.gap), "angle": tenths as f64 / 10.0});
        if let (Shape::Round { .. }, Some(bits)) = (request.through, &request.bits) {
            asked["bits"] = bits.iter().copied().map(text).collect();
        }
        let answered = figure::answer("block", &asked.to_string());
        let answer: Value = serde_json::from_str(&answered.json).unwrap();
        let degrees = tenths as f64 / 10.0;
        let (code, field) = (&answer["error"]["code"], &answer["error"]["field"]);
        if code == "range" {
            continue;
        }
        match judge(&request, degrees, least_hole(&request, degrees)) {
            Goes::On => {
                let solid = Solid::new(&request, degrees);
                let got = |path: &str| Length::from_nm(answer.pointer(path).unwrap()["nm"].as_i64().unwrap());
                assert!(near(got("/climb"), solid.climb()) && near(got("/kerf_up"), solid.kerf_up()));
                let hole = match request.through {
                    Shape::Round { .. } => Shape::Round { diameter: got("/bit") },
                    Shape::Rectangle { .. } => {
                        Shape::Rectangle { width: got("/opening/width"), height: got("/opening/height") }
                    }
                };
                assert!(near(got("/mouth"), solid.mouth(Hole::of(hole)).unwrap()));
                assert!(near(got("/lower/back") - got("/lower/face"), solid.climb()));
            }
            refused @ (Goes::Narrow | Goes::Ring) => {
                let want = if matches!(refused, Goes::Ring) { "ring-closed" } else { "mouth-narrow" };
                assert_eq!((code, field), (&json!(want), &json!("angle")));
                let steepest = (0..=tenths / 5).rev().find(|half| matches!(goes(&request, *half), Goes::On)).unwrap();
                let told = format!(" {} degrees", steepest as f64 / 2.0);
                let text = answer["error"]["text"].as_str().unwrap();
                assert!(text.contains(&told), "{told}: {text}");
                refusals += 1;
            }
            Goes::NoBit => assert_eq!((code, field), (&json!("infeasible"), &json!("bits"))),
            Goes::Undecided => {}
        }
    }
    assert!(refusals > 20, "{refusals}");
}
