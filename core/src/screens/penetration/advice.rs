use crate::book::{Book, Field, Operation, OperationKind, taped_code};
use crate::forms::ask::accept;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::measure::Length;
use crate::notch::Advice;
use crate::phrases::key;
use crate::store::{Id, Value};
use crate::views::{BlockAdvice, Code, Problem, Source};
use crate::work::{PenetrationSite, planned};

use super::name_key;

/// The advice for a block that is not made yet and whose boards are not cut; `None` where it sits well.
pub(super) fn of(terms: &Terms<'_>, site: &PenetrationSite) -> Result<Option<BlockAdvice>> {
    let Some(advice) = site.block_advice(terms.division)? else { return Ok(None) };
    let reading = |length: Length| terms.reading(length, Source::Planned, None);
    Ok(Some(BlockAdvice {
        width: reading(advice.block.size.width),
        height: reading(advice.block.size.height),
        hole_from_bottom: reading(advice.block.hole),
        gain: gain(terms, &advice),
    }))
}

/// Takes the advice, in one answer.
pub(super) fn take(book: &mut Book, terms: &Terms<'_>, site: &PenetrationSite) -> Result<Id> {
    let none = || Problem::new(Code::First, Field::BlockHeight.code(), terms.phrase(key("advice-none"), &[]));
    let block = site.block_advice(terms.division)?.ok_or_else(none)?.block;
    let (id, record) = (site.penetration.id(), &site.penetration.record);
    let size = format!("{} × {}", terms.shown(block.size.width), terms.shown(block.size.height));
    let (name, hole) = (name_key(site), terms.shown(block.hole));
    let mut operation = Operation::new(OperationKind::BlockAdvised, site.work.id(), [&name, &size, &hole]);
    for (field, length) in [
        (Field::BlockWidth, block.size.width),
        (Field::BlockHeight, block.size.height),
        (Field::HoleFromBottom, block.hole),
    ] {
        // What was measured of a block says what the block was; this is another one.
        if record.taped(field).is_some() {
            operation = operation.set_code(id, taped_code(field), Value::Absent);
        }
        operation = operation.set(id, field, planned(length));
    }
    Ok(accept(book, terms, operation, &[])?.group)
}

fn gain(terms: &Terms<'_>, Advice { seat, now, .. }: &Advice) -> String {
    let count = |count: usize| i64::try_from(count).unwrap_or(i64::MAX).into();
    let mut gains = Vec::new();
    for (phrase, was, then) in [
        (key("advice-boards"), now.boards, seat.boards),
        (key("advice-thin-legs"), now.thin_legs, seat.thin_legs),
        (key("advice-thin-strips"), now.thin_strips, seat.thin_strips),
    ] {
        if was != then {
            gains.push(terms.phrase(phrase, &[("now", count(was)), ("then", count(then))]));
        }
    }
    gains.join(" ")
}
