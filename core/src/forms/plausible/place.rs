//! Where things stand on a wall: no two in one place, and none beside the wall.

use crate::book::{Field, House, Kind, Operation, Record};
use crate::forms::context::Terms;
use crate::measure::Length;
use crate::rules::RuleSet;
use crate::rules::plausible::{Placed, Verdict, judge_block, judge_name, judge_place, off_wall};
use crate::store::Id;
use crate::wall::Span;
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
    moved.into_iter().filter_map(|(record, field)| finding(terms, after, (record, field), |_| true)).collect()
}

/// The same for everything on the walls of a house; of two in one place the later one is named.
pub(super) fn of_house(terms: &Terms<'_>, house: &House) -> Vec<Finding> {
    let walls = house.own(Kind::Wall).iter();
    let judged = |wall: Id| {
        let mut before = Vec::new();
        on(house, wall).filter_map(move |thing| {
            let found = finding(terms, house, (thing, Field::FromLeft), |other| before.contains(&other));
            before.push(thing.id());
            found
        })
    };
    walls.flat_map(|wall| judged(wall.id())).collect()
}

/// Of two walls that go by one name the later one is named.
pub(super) fn names(terms: &Terms<'_>, house: &House) -> Vec<Finding> {
    let mut taken: Vec<&str> = Vec::new();
    let mut findings = Vec::new();
    for wall in house.own(Kind::Wall) {
        let Some(name) = wall.text(Field::Name) else { continue };
        let verdict = judge_name(name, &taken);
        if !verdict.is_fine() {
            let text = verdict.text(name, &RuleSet::standard(), terms.phrases, terms.show);
            findings.push(Finding::of_place(wall, Field::Name, Length::ZERO, true, text));
        }
        taken.push(name);
    }
    findings
}

/// What stands on a wall and takes up room there.
fn on(house: &House, wall: Id) -> impl Iterator<Item = &Record> {
    let kinds = [Kind::Opening, Kind::Penetration].into_iter();
    kinds.flat_map(move |kind| house.under(wall, kind)).map(|record| &**record)
}

/// What is to be said of a thing's place against those others on its wall that count.
fn finding(
    terms: &Terms<'_>,
    house: &House,
    (record, field): (&Record, Field),
    counts: impl Fn(Id) -> bool,
) -> Option<Finding> {
    let own = sides(record)?;
    let wall = house.get(record.parent?, Kind::Wall).ok()?;
    let others = || on(house, wall.id()).filter(|other| other.id() != record.id() && counts(other.id()));
    let named: Vec<_> = others().filter_map(|other| Some((name(terms, other), sides(other)?, block(other)))).collect();
    let things: Vec<Placed<'_>> = named.iter().map(|(name, sides, _)| placed(name, *sides)).collect();
    let with_blocks = named.iter().filter_map(|(name, _, block)| Some(placed(name, (*block)?)));
    let blocks: Vec<Placed<'_>> = with_blocks.chain(things.iter().copied()).collect();
    let overlaps = judge_place(&placed("", own), &things);
    let stands = if overlaps.is_fine() { on_siding(house, wall, record, own) } else { overlaps };
    let (verdict, field) = match block(record) {
        Some(block) if stands.is_fine() => (judge_block(&placed("", block), &blocks), field),
        _ if matches!(field, Field::BlockWidth | Field::BlockHeight | Field::HoleFromBottom) => {
            (stands, Field::FromBase)
        }
        _ => (stands, field),
    };
    let is_impossible = match verdict {
        Verdict::Fine => return None,
        Verdict::Impossible { .. } => true,
        Verdict::Unlikely { .. } if record.is_sure(field, own.1.from) => return None,
        Verdict::Unlikely { .. } => false,
    };
    let shown = terms.shown(record.length(field).unwrap_or_default());
    let text = verdict.text(&shown, &RuleSet::standard(), terms.phrases, terms.show);
    Some(Finding::of_place(record, field, own.1.from, is_impossible, text))
}

/// What goes through a wall has siding beside it or above it, where its base line steps up; over a rake there is none.
fn on_siding(house: &House, wall: &Record, record: &Record, (x, y): (Span, Span)) -> Verdict {
    let steps = house.under(wall.id(), Kind::BaseStep).iter().map(|step| &**step);
    let Ok(outline) = outline_with(wall, steps) else { return Verdict::Fine };
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

/// From left to right and from bottom to top; of what goes through a wall, without its block.
fn sides(record: &Record) -> Option<(Span, Span)> {
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
fn block(record: &Record) -> Option<(Span, Span)> {
    let (width, height) = (record.length(Field::BlockWidth)?, record.length(Field::BlockHeight)?);
    let (left, bottom) = (record.length(Field::FromLeft)?, record.length(Field::FromBase)?);
    let under = record.length(Field::HoleFromBottom).unwrap_or_else(|| height.half());
    let from = |from: Length, size: Length| Span { from, to: from + size };
    Some((from(left - width.half(), width), from(bottom - under, height)))
}

fn placed(name: &str, (x, y): (Span, Span)) -> Placed<'_> {
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
