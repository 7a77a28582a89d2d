use crate::flashing::SplitBlock;
use crate::measure::Length;
use crate::notch::{Advice, AdviceRequest, BlockSize, Gap, Overcut, PlacedBlock};
use crate::phrases::key;
use crate::rules::keys;
use crate::screens::ask::{accept, op};
use crate::screens::context::Terms;
use crate::screens::kept::Facts;
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::store::{Id, Store, Value};
use crate::views::{BlockAdvice, Code, Problem, Source};
use crate::wall::{Mounting, Shape};

use super::{Round, block};

/// The advice for a block that is not made yet and whose boards are not cut; `None` where it sits well.
pub(super) fn of(store: &Store, terms: &Terms<'_>, round: &Round) -> Kept<Option<BlockAdvice>> {
    let Some(advice) = advice(store, terms, round)? else { return Ok(None) };
    let reading = |length: Length| terms.reading(length, Source::Planned, None);
    Ok(Some(BlockAdvice {
        width: reading(advice.block.size.width),
        height: reading(advice.block.size.height),
        hole_from_bottom: reading(advice.block.hole),
        gain: gain(terms, &advice),
    }))
}

/// Takes the advice, in one answer.
pub(super) fn take(store: &mut Store, terms: &Terms<'_>, round: &Round) -> Kept<Id> {
    let none = || Problem::new(Code::First, "block-height", terms.phrase(key("advice-none"), &[]));
    let advice = advice(store, terms, round)?.ok_or_else(none)?;
    let id = round.penetration.id();
    let what = format!("wall-kind-{}", round.penetration.kind.code());
    let size = format!("{} × {}", terms.shown(advice.block.size.width), terms.shown(advice.block.size.height));
    let mut answer = op("block-advised", Some(round.job.id()), [&what, &size, &terms.shown(advice.block.hole)]);
    let fields = [
        ("block-width", advice.block.size.width),
        ("block-height", advice.block.size.height),
        ("hole-from-bottom", advice.block.hole),
    ];
    for (field, length) in fields {
        // What was measured of a block says what the block was; this is another one.
        let taped = format!("{field}-taped");
        if round.penetration.facts.field(&taped).is_some() {
            answer = answer.set(id, &taped, Value::Absent);
        }
        answer = answer.set(id, field, Value::Length { length, typed: String::new(), unit: "mm".to_owned() });
    }
    Ok(accept(store, terms, answer, &[])?.group)
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

fn advice(store: &Store, terms: &Terms<'_>, round: &Round) -> Kept<Option<Advice>> {
    let Some(block) = round.penetration.block else { return Ok(None) };
    let (Some(hole_least), Ok(board_height)) = (hole_least(terms, round)?, round.job.board_height(terms)) else {
        return Ok(None);
    };
    if round.courses.is_empty() || begun(store, round)? {
        return Ok(None);
    }
    let rule = |key: &str| round.job.rules.get_length(key);
    let side = rule(keys::BLOCK_SIDE_LEAST)?;
    let request = AdviceRequest {
        centre: round.penetration.centre.y,
        placed: PlacedBlock { size: BlockSize { width: block.x.length(), height: block.y.length() }, hole: block.hole },
        sizes: sizes(store, round)?,
        width_least: round.penetration.shape.width() + side + side,
        hole_least,
        // The first board may be ripped: its line is that of its full height.
        bottoms: round.courses.iter().map(|course| course.top() - board_height).collect(),
        board_height,
        lap: round.job.lap()?,
        gap: Gap { min: rule(keys::GAP_BLOCK_LEAST)?, max: rule(keys::GAP_BLOCK_MOST)? },
        overcut: Overcut { min: rule(keys::SAW_OVER_LEAST)?, max: rule(keys::SAW_OVER_MOST)? },
        leg_min: rule(keys::LEG_LEAST)?,
        strip_min: rule(keys::STRIP_LEAST)?,
        division: terms.division,
    };
    // Boards or a block that make no sense are said elsewhere on the screen.
    Ok(request.advise().unwrap_or(None))
}

/// The sizes of blocks that the house has.
fn sizes(store: &Store, round: &Round) -> Kept<Vec<BlockSize>> {
    let size = |facts: &Facts| Some(BlockSize { width: facts.length("width")?, height: facts.length("height")? });
    Ok(Facts::children(store, round.job.id(), kinds::BLOCK_SIZE)?.iter().filter_map(size).collect())
}

/// How far the hole's centre stays from the block's bottom and top: wood beside the hole, and room for the sloped cut.
fn hole_least(terms: &Terms<'_>, round: &Round) -> Kept<Option<Length>> {
    let Some(block) = round.penetration.block else { return Ok(None) };
    let rule = |key: &str| round.job.rules.get_length(key);
    let (side, gap) = (rule(keys::BLOCK_SIDE_LEAST)?, rule(keys::GAP_BLOCK_MOST)?);
    match (round.penetration.mounting, round.penetration.shape) {
        (Mounting::Split, Shape::Round { diameter }) => {
            let split = SplitBlock::lay_out(&block::split(terms, round, &block, diameter)?);
            // A cut that cannot be made at all is said at the block; the climb must end inside it.
            Ok(split.ok().map(|split| (split.bit.half() + side).max(split.climb.half() + terms.division.length())))
        }
        (_, shape) => Ok(Some(shape.height().half() + gap + side)),
    }
}

/// Whether the block stands already, or a board at it is cut or up.
fn begun(store: &Store, round: &Round) -> Kept<bool> {
    let signed = store.sign_offs(round.penetration.id())?;
    if signed.iter().any(|signed| !signed.undone) {
        return Ok(true);
    }
    let (x, y) = round.penetration.outer();
    let at_block = |board: &Facts| {
        let (from, to, bottom, height) =
            (board.length("from")?, board.length("to")?, board.length("bottom")?, board.length("height")?);
        Some(from < x.to && x.from < to && bottom < y.to && y.from < bottom + height)
    };
    let stands = |board: &Facts| board.text("state").is_some_and(|state| state != "planned");
    let boards = Facts::children(store, round.wall.id(), kinds::BOARD)?;
    Ok(boards.iter().any(|board| stands(board) && at_block(board) == Some(true)))
}
