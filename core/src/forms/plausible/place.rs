//! Where things stand on a wall: no two in one place, and none beside the wall.

use std::collections::BTreeMap;

use crate::book::{Field, House, Kind, Operation, Record};
use crate::forms::context::Terms;
use crate::measure::Length;
use crate::rules::RuleSet;
use crate::rules::plausible::{Placed, Verdict, judge_block, judge_name, judge_place, off_wall, plain_name};
use crate::store::Id;
use crate::wall::{Outline, Span};
use crate::work::{head_of, outline_with};

use super::finding::Finding;

/// What says where something, or its block, stands.
const PLACE: [Field; 7] = [
    Field::FromLeft,
    Field::FromBase,
    Field::Width,
    Field::Height,
    Field::BlockWidth,
    Field::BlockHeight,
    Field::HoleFromBottom,
];

/// What is to be said of where an operation puts something.
pub(super) fn findings(terms: &Terms<'_>, after: &House, operation: &Operation) -> Vec<Finding> {
    let placed = |(subject, code, _): (Id, &str, &_)| {
        let field = Field::from_code(code).filter(|field| PLACE.contains(field))?;
        Some((after.any(subject)?, field))
    };
    let mut moved: Vec<(&Record, Field)> = Vec::new();
    for (record, field) in operation.writes().filter_map(placed) {
        match moved.iter_mut().find(|(known, _)| known.id() == record.id()) {
            Some(known) => known.1 = field,
            None => moved.push((record, field)),
        }
    }
    let judged = |(record, field): (&Record, Field)| {
        let wall = OnWall::of(after, after.get(record.parent?, Kind::Wall).ok()?);
        let others = wall.things.iter().filter(|other| other.record.id() != record.id());
        finding(terms, &wall, &Occupant::of(record)?, others, field)
    };
    moved.into_iter().filter_map(judged).collect()
}

/// The same for everything on the walls of a house; of two in one place the later one is named.
pub(super) fn of_house(terms: &Terms<'_>, house: &House) -> Vec<Finding> {
    let mut findings = Vec::new();
    for wall in house.own(Kind::Wall) {
        let wall = OnWall::of(house, wall);
        for ((at, thing), meets) in wall.things.iter().enumerate().zip(meeting(&wall.things)) {
            // Whoever meets nobody need not be held against everybody.
            let before = if meets { at } else { 0 };
            findings.extend(finding(terms, &wall, thing, wall.things.iter().take(before), Field::FromLeft));
        }
    }
    findings
}

/// Of two walls that go by one name the later one is named.
pub(super) fn names(terms: &Terms<'_>, house: &House) -> Vec<Finding> {
    let mut taken: BTreeMap<String, &str> = BTreeMap::new();
    let mut findings = Vec::new();
    for wall in house.own(Kind::Wall) {
        let Some(name) = wall.text(Field::Name) else { continue };
        let plain = plain_name(name);
        let verdict = judge_name(name, taken.get(&plain).copied().as_slice());
        if !verdict.is_fine() {
            let text = verdict.text(name, &RuleSet::standard(), terms.phrases, terms.show);
            findings.push(Finding::of_place(wall, Field::Name, Length::ZERO, true, text));
        }
        taken.entry(plain).or_insert(name);
    }
    findings
}

/// From left to right and from bottom to top.
type SpanPair = (Span, Span);

/// Something that takes up room on a wall.
struct Occupant<'a> {
    record: &'a Record,
    sides: SpanPair,
    /// The sides of its block, where somebody said its size.
    block: Option<SpanPair>,
}

impl<'a> Occupant<'a> {
    fn of(record: &'a Record) -> Option<Self> {
        Some(Self { record, sides: sides(record)?, block: block(record) })
    }

    /// Its sides, with its block.
    fn extent(&self) -> SpanPair {
        let hull = |one: Span, other: Span| Span { from: one.from.min(other.from), to: one.to.max(other.to) };
        let (x, y) = self.sides;
        self.block.map_or((x, y), |block| (hull(x, block.0), hull(y, block.1)))
    }
}

/// A wall, and what stands on it.
struct OnWall<'a> {
    outline: Option<Outline>,
    things: Vec<Occupant<'a>>,
}

impl<'a> OnWall<'a> {
    fn of(house: &'a House, wall: &Record) -> Self {
        let steps = house.under(wall.id(), Kind::BaseStep).iter().map(|step| &**step);
        let kinds = [Kind::Opening, Kind::Penetration].into_iter();
        let things = kinds.flat_map(|kind| house.under(wall.id(), kind));
        let things = things.filter_map(|record| Occupant::of(record)).collect();
        Self { outline: outline_with(wall, steps).ok(), things }
    }
}

/// Of each thing whether it may meet another one: each is held only against those that begin before it ends, from left to
/// right.
fn meeting(things: &[Occupant<'_>]) -> Vec<bool> {
    let mut from_left: Vec<(usize, SpanPair)> = things.iter().map(Occupant::extent).enumerate().collect();
    from_left.sort_by_key(|(_, (x, _))| x.from);
    let mut meeting = vec![false; things.len()];
    let mut mark = |at: usize| {
        if let Some(meets) = meeting.get_mut(at) {
            *meets = true;
        }
    };
    for (place, (one, own)) in from_left.iter().enumerate() {
        let behind = from_left.iter().skip(place + 1).take_while(|(_, (x, _))| x.from < own.0.to);
        for (other, sides) in behind {
            if placed("", *own).meets(&placed("", *sides)) {
                mark(*one);
                mark(*other);
            }
        }
    }
    meeting
}

/// What is to be said of one thing's place on a wall, held against `others` there.
fn finding<'a>(
    terms: &Terms<'_>,
    wall: &OnWall<'_>,
    thing: &Occupant<'_>,
    others: impl Iterator<Item = &'a Occupant<'a>> + Clone,
    field: Field,
) -> Option<Finding> {
    let record = thing.record;
    // Only what is met is put into words.
    let met = |own: SpanPair, of: fn(&Occupant<'_>) -> Option<SpanPair>| {
        let there = others.clone().filter_map(|other| Some((other, of(other)?)));
        let met = |(_, sides): &(_, SpanPair)| placed("", own).meets(&placed("", *sides));
        there.clone().find(met).map(|(other, sides)| (name(terms, other.record), sides))
    };
    let stands = match met(thing.sides, |other| Some(other.sides)) {
        Some((name, sides)) => judge_place(&placed("", thing.sides), &[placed(&name, sides)]),
        None => on_siding(wall.outline.as_ref(), record, thing.sides),
    };
    let (verdict, field) = match thing.block {
        Some(block) if stands.is_fine() => {
            let met = met(block, |other| other.block).or_else(|| met(block, |other| Some(other.sides)));
            let others: Vec<_> = met.iter().map(|(name, sides)| placed(name, *sides)).collect();
            (judge_block(&placed("", block), &others), field)
        }
        _ if matches!(field, Field::BlockWidth | Field::BlockHeight | Field::HoleFromBottom) => {
            (stands, Field::FromBase)
        }
        _ => (stands, field),
    };
    let bottom = thing.sides.1.from;
    let is_impossible = match verdict {
        Verdict::Fine => return None,
        Verdict::Impossible { .. } => true,
        Verdict::Unlikely { .. } if record.is_sure(field, bottom) => return None,
        Verdict::Unlikely { .. } => false,
    };
    let shown = terms.shown(record.length(field).unwrap_or_default());
    let text = verdict.text(&shown, &RuleSet::standard(), terms.phrases, terms.show);
    Some(Finding::of_place(record, field, bottom, is_impossible, text))
}

/// What goes through a wall has siding beside it or above it, where its base line steps up; over a rake there is none.
fn on_siding(outline: Option<&Outline>, record: &Record, (x, y): SpanPair) -> Verdict {
    let Some(outline) = outline else { return Verdict::Fine };
    let just_under = |height: Length| height - Length::from_nm(1);
    let holds = |height: Length| outline.spans_at(height).iter().any(|span| span.from <= x.from && x.to <= span.to);
    let corners = outline.points().iter().map(|point| point.y);
    // Some of it must go through siding at all.
    let in_siding = outline.spans_at(just_under(y.to)).iter().any(|span| span.from < x.to && x.from < span.to);
    if record.kind == Kind::Penetration && !in_siding && y.to <= outline.top() {
        return off_wall(outline.points().iter().map(|point| point.y).min().unwrap_or_default());
    }
    let mut above = corners.filter(|height| *height > y.to).chain([y.to]).map(just_under);
    if record.kind != Kind::Penetration || above.any(holds) { Verdict::Fine } else { off_wall(outline.top()) }
}

/// The sides of what stands on a wall; of what goes through it, without its block.
fn sides(record: &Record) -> Option<SpanPair> {
    let (left, bottom) = (record.length(Field::FromLeft)?, record.length(Field::FromBase)?);
    let width = record.length(Field::Width)?;
    if record.kind == Kind::Opening {
        let head = head_of(record, left, width);
        // A side that leans is nowhere else than between its two readings.
        let x = Span { from: left.max(head.from), to: (left + width).min(head.to) };
        return Some((x, Span { from: bottom, to: bottom + record.length(Field::Height)? }));
    }
    let height = record.length(Field::Height).unwrap_or(width);
    let around = |centre: Length, size: Length| Span { from: centre - size.half(), to: centre + size.half() };
    Some((around(left, width), around(bottom, height)))
}

/// The sides of a block whose size somebody said.
fn block(record: &Record) -> Option<SpanPair> {
    let (width, height) = (record.length(Field::BlockWidth)?, record.length(Field::BlockHeight)?);
    let (left, bottom) = (record.length(Field::FromLeft)?, record.length(Field::FromBase)?);
    let under = record.length(Field::HoleFromBottom).unwrap_or_else(|| height.half());
    let from = |from: Length, size: Length| Span { from, to: from + size };
    Some((from(left - width.half(), width), from(bottom - under, height)))
}

fn placed(name: &str, (x, y): SpanPair) -> Placed<'_> {
    Placed { name, left: x.from, right: x.to, bottom: y.from, top: y.to }
}

/// What a thing on a wall is called.
pub(super) fn name(terms: &Terms<'_>, record: &Record) -> String {
    let what = record.text(Field::What).unwrap_or_default();
    let key = match record.kind {
        Kind::Opening => format!("wall-opening-{what}"),
        Kind::Penetration => format!("wall-kind-{what}"),
        kind => format!("wall-part-{kind}"),
    };
    terms.phrase(&key, &[])
}
