use crate::measure::Length;
use crate::notch::{
    Block, Board, CutKind, Edge, Gap, GapRule, Marks, Notch, NotchError, NotchRequest, Sides, Warning, marks,
};
use crate::phrases::{Arg, key};
use crate::rules::keys;
use crate::screens::ask;
use crate::screens::context::Terms;
use crate::screens::kept::Facts;
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::store::{Id, Store};
use crate::views::{Corner, LevelView, MarksView, NotchView, Note, Question, Reading, Size, Source};

use super::hand::{InHand, Met};
use super::{cross, habit};

/// A notch as it is known: what was taped, and what the plan says where it was not.
pub(super) struct Known<'a> {
    pub(super) taped: Option<&'a Facts>,
    pub(super) planned: Option<&'a Met>,
}

/// Every notch of the board: those that were taped, then those that the plan expects, from left to right.
pub(super) fn known(hand: &InHand) -> Vec<Known<'_>> {
    let of = |facts: &Facts| facts.reference("penetration");
    let mut known: Vec<Known<'_>> = Vec::new();
    for taped in &hand.taped {
        let planned = hand.met.iter().find(|met| of(taped) == Some(met.id));
        known.push(Known { taped: Some(taped), planned });
    }
    for planned in &hand.met {
        if !hand.taped.iter().any(|taped| of(taped) == Some(planned.id)) {
            known.push(Known { taped: None, planned: Some(planned) });
        }
    }
    known.sort_by_key(|known| known.reading(hand, "left"));
    known
}

impl Known<'_> {
    /// The id that answers go to.
    pub(super) fn id(&self) -> String {
        self.own().map(|id| id.to_string()).unwrap_or_default()
    }

    fn own(&self) -> Option<Id> {
        self.taped.map(Facts::id).or_else(|| self.planned.map(|met| met.id))
    }

    /// All ids that it goes by: the notch's own, and that of what it is planned round.
    fn ids(&self) -> Vec<String> {
        let (taped, planned) = (self.taped.map(Facts::id), self.planned.map(|met| met.id));
        taped.into_iter().chain(planned).map(|id| id.to_string()).collect()
    }

    /// A reading in the board's own frame: taped, else planned.
    pub(super) fn reading(&self, hand: &InHand, field: &str) -> Option<Length> {
        self.taped.and_then(|facts| facts.length(field)).or_else(|| self.planned_reading(hand, field))
    }

    fn planned_reading(&self, hand: &InHand, field: &str) -> Option<Length> {
        let Met { x, y, .. } = self.planned?;
        let place = hand.place()?;
        Some(match field {
            "left" => x.from - place.from,
            "right" => x.to - place.from,
            "bottom-left" => y.from - place.bottom_at(x.from),
            "bottom-right" => y.from - place.bottom_at(x.to),
            "top-left" => y.to - place.bottom_at(x.from),
            "top-right" => y.to - place.bottom_at(x.to),
            _ => return None,
        })
    }

    /// The block in the board's frame; `None` until four readings are there. Without a right one the block is level.
    pub(super) fn block(&self, hand: &InHand) -> Option<Block> {
        let of = |field: &str| self.reading(hand, field);
        let side = |left: &str, right: &str| {
            let left_side = of(left)?;
            let taped_right = self.taped.and_then(|facts| facts.length(right));
            let level = || {
                if self.taped.is_some_and(|facts| facts.length(left).is_some()) { Some(left_side) } else { of(right) }
            };
            Some(Sides::new(left_side, taped_right.or_else(level)?))
        };
        Some(Block {
            left: of("left")?,
            right: of("right")?,
            bottom: side("bottom-left", "bottom-right")?,
            top: side("top-left", "top-right")?,
        })
    }

    fn name(&self, terms: &Terms<'_>) -> String {
        match self.planned {
            Some(planned) => terms.phrase(&planned.name, &[]),
            None => terms.phrase(key("notch-loose-block"), &[]),
        }
    }

    /// The questions, each with its planned answer where nothing was taped.
    fn questions(&self, store: &Store, terms: &Terms<'_>, hand: &InHand) -> Kept<Vec<Question>> {
        let mut questions = match self.taped {
            Some(facts) => ask::questions(store, terms, facts)?,
            None => kinds::NOTCH_ASKS.iter().map(|question| ask::unanswered(terms, question)).collect(),
        };
        for question in &mut questions {
            question.subject = self.id();
            if question.answer.is_empty()
                && let Some(planned) = self.planned_reading(hand, &question.field)
            {
                let reading = terms.reading(planned, Source::Planned, None);
                question.answer.clone_from(&reading.text);
                question.reading = Some(reading);
            }
            if self.taped.is_none()
                && let Some(planned) = self.planned
            {
                question.draft = store.draft_get(&ask::draft_key(planned.id, &question.field))?.unwrap_or_default();
            }
        }
        if hand.state() != "planned" && self.block(hand).is_some() {
            questions.push(self.gap(store, terms, hand)?);
        }
        Ok(questions)
    }

    /// The question what gap came out, with what was said of it last.
    fn gap(&self, store: &Store, terms: &Terms<'_>, hand: &InHand) -> Kept<Question> {
        let open = ask::unanswered(terms, ask::ask_of(terms, kinds::FITTED, kinds::GAP)?);
        let said = habit::said(store, hand.facts.id(), &self.ids())?;
        let reading = said.and_then(|facts| facts.reading(terms, kinds::GAP));
        let draft = self.own().map(|id| store.draft_get(&ask::draft_key(id, kinds::GAP))).transpose()?;
        let answer = reading.as_ref().map(|reading| reading.text.clone()).unwrap_or_default();
        Ok(Question { subject: self.id(), answer, reading, draft: draft.flatten().unwrap_or_default(), ..open })
    }
}

/// What the notch of a block is laid out from.
pub(super) fn request(store: &Store, terms: &Terms<'_>, hand: &InHand, block: Block) -> Kept<NotchRequest> {
    let rule = |key: &str| hand.rules.get_length(key);
    Ok(NotchRequest {
        board: Board { height: hand.height, length: hand.length(terms)?, lap: hand.lap },
        block,
        gap: GapRule::One(Gap { min: rule(keys::GAP_BLOCK_LEAST)?, max: rule(keys::GAP_BLOCK_MOST)? }),
        overcut: habit::overcut(hand)?,
        tape: habit::tape(store, terms, hand)?,
        division: terms.division,
        leg_min: rule(keys::LEG_LEAST)?,
        below: hand.below,
    })
}

/// What the cuts of a board follow from, in one text: the blocks as they are measured from it, and the rules. Neither
/// the saw nor the hands are in it: the same board is right for whoever looks at it.
pub(super) fn basis(hand: &InHand, views: &[NotchView]) -> Kept<String> {
    let rule = |key: &str| hand.rules.get_length(key);
    let prior = habit::prior(hand)?;
    let rules = [rule(keys::GAP_BLOCK_LEAST)?, rule(keys::GAP_BLOCK_MOST)?, prior.min, prior.max];
    let mut parts = vec![nanometres(&[hand.facts.length("length").unwrap_or_default(), hand.height])];
    let known = known(hand);
    for view in views {
        let block = known.iter().find(|known| known.id() == view.notch).and_then(|known| known.block(hand));
        let sides = block.map(|Block { left, right, bottom, top }| {
            nanometres(&[left, right, bottom.left, bottom.right, top.left, top.right])
        });
        parts.push(format!("{}:{}:{}", view.cut, sides.unwrap_or_default(), nanometres(&rules)));
    }
    Ok(parts.join(";"))
}

/// The marks that a board is cut by, notch by notch, with the offset of each: for the record.
pub(super) fn marked(hand: &InHand, views: &[NotchView]) -> String {
    let known = known(hand);
    let corner = |corner: &Corner| format!("{},{}", corner.x, corner.y);
    let one = |view: &NotchView| {
        let corners: Vec<String> = view.face.iter().flat_map(|face| &face.corners).map(corner).collect();
        let offset = view.offset.as_ref().map_or(0, |offset| offset.nm);
        let ids = known.iter().find(|known| known.id() == view.notch).map(Known::ids).unwrap_or_default();
        format!("{}@{offset}@{}", ids.join(" "), corners.join(" "))
    };
    views.iter().map(one).collect::<Vec<_>>().join(";")
}

/// The offset that a notch was marked with, out of such a record.
pub(super) fn marked_offset(record: &str, known: &Known<'_>) -> Option<Length> {
    let ids = known.ids();
    record.split(';').find_map(|notch| {
        let mut parts = notch.split('@');
        let own = parts.next()?.split(' ').any(|id| ids.iter().any(|known| known == id));
        let offset = parts.next()?.parse().ok()?;
        own.then(|| Length::from_nm(offset))
    })
}

fn nanometres(lengths: &[Length]) -> String {
    lengths.iter().map(|length| length.nm().to_string()).collect::<Vec<_>>().join(",")
}

/// The views of every notch that cuts the board or is not told yet.
pub(super) fn views(store: &Store, terms: &Terms<'_>, hand: &InHand) -> Kept<Vec<NotchView>> {
    let mut views = Vec::new();
    for known in known(hand) {
        let mut view = NotchView {
            notch: known.id(),
            name: known.name(terms),
            taped: known.taped.is_some(),
            cut: String::new(),
            cut_text: String::new(),
            offset: None,
            gap_least: None,
            gap_most: None,
            face: None,
            back: None,
            legs: Vec::new(),
            notes: Vec::new(),
            questions: known.questions(store, terms, hand)?,
        };
        if let (Some(block), Some(_)) = (known.block(hand), hand.facts.length("length")) {
            let request = request(store, terms, hand, block)?;
            match Notch::lay_out(&request) {
                Ok(notch) => fill(terms, &mut view, &request, &notch),
                Err(error) => view.notes.push(note(terms, "readings", refused(error), &[])),
            }
            off_plan(terms, hand, &known, &mut view)?;
            view.notes.extend(cross::check(store, terms, hand, &known)?);
        }
        // A block that only comes near is no notch of this board, unless somebody taped it.
        if view.taped || view.cut != "none" || !view.notes.is_empty() {
            views.push(view);
        }
    }
    Ok(views)
}

fn fill(terms: &Terms<'_>, view: &mut NotchView, request: &NotchRequest, notch: &Notch) {
    let fine = |length: Length| fine(terms, length);
    view.cut = notch.kind.code().to_owned();
    view.cut_text = terms.phrase(&format!("notch-cut-{}", notch.kind.code()), &[]);
    view.offset = Some(fine(notch.offset.at(Edge::Sides)));
    let gap = notch.gap.at(Edge::Sides);
    view.gap_least = Some(fine(gap.min));
    view.gap_most = Some(fine(gap.max));
    view.face = marks(notch, &request.board, false).map(|marks| marks_view(terms, &marks));
    view.back = marks(notch, &request.board, true).map(|marks| marks_view(terms, &marks));
    let leg = |(name, length): (&str, Length)| Size {
        code: name.to_owned(),
        label: terms.phrase(&format!("notch-leg-{name}"), &[]),
        reading: terms.reading(length, Source::Planned, None),
    };
    view.legs = notch.legs.named().map(leg).collect();
    let warned = notch.warnings.iter().map(|warning| warned(terms, notch.kind, *warning, request.leg_min));
    view.notes.extend(warned);
}

/// Where the tape and the plan differ by more than the tolerance it is said, and which is right is asked; nothing is
/// overwritten.
fn off_plan(terms: &Terms<'_>, hand: &InHand, known: &Known<'_>, view: &mut NotchView) -> Kept<()> {
    let tolerance = hand.rules.get_length(keys::TAPE_PLAN_TOLERANCE)?;
    let Some(taped) = known.taped else { return Ok(()) };
    for question in kinds::NOTCH_ASKS {
        let (Some(read), Some(planned)) = (taped.length(question.field), known.planned_reading(hand, question.field))
        else {
            continue;
        };
        let by = (read - planned).abs();
        if by > tolerance {
            let args = [
                ("question", terms.phrase(question.title, &[]).into()),
                ("taped", terms.shown(read).into()),
                ("planned", terms.shown(planned).into()),
            ];
            view.notes.push(note(terms, "off-plan", key("notch-off-plan"), &args));
        }
    }
    Ok(())
}

fn marks_view(terms: &Terms<'_>, marks: &Marks) -> MarksView {
    let level = |mark: &crate::notch::Mark| LevelView {
        from: match mark.from {
            crate::notch::EdgeName::Bottom => "bottom",
            crate::notch::EdgeName::Top => "top",
        }
        .to_owned(),
        left: fine(terms, mark.at.left),
        right: fine(terms, mark.at.right),
    };
    MarksView {
        uprights: marks.uprights.iter().map(|upright| fine(terms, *upright)).collect(),
        levels: marks.levels.iter().map(level).collect(),
        corners: marks.cut.outline().iter().map(|point| Corner { x: point.x.nm(), y: point.y.nm() }).collect(),
    }
}

/// A reading of a mark: half a division of the tape matters here.
fn fine(terms: &Terms<'_>, length: Length) -> Reading {
    terms.reading_as(length, Source::Planned, None, terms.show.finer(terms.division.half()))
}

fn note(terms: &Terms<'_>, code: &str, text: &str, args: &[(&str, Arg<'_>)]) -> Note {
    Note { code: code.to_owned(), text: terms.phrase(text, args) }
}

fn warned(terms: &Terms<'_>, kind: CutKind, warning: Warning, leg_min: Length) -> Note {
    let fine = |length: Length| Arg::from(terms.shown_finely(length));
    match warning {
        Warning::GapTight { least, wanted, .. } => {
            let text = if kind == CutKind::None { key("notch-gap-near") } else { key("notch-gap-tight") };
            note(terms, "gap-tight", text, &[("least", fine(least)), ("wanted", fine(wanted))])
        }
        Warning::GapWide { most, wanted, .. } => {
            note(terms, "gap-wide", key("notch-gap-wide"), &[("most", fine(most)), ("wanted", fine(wanted))])
        }
        Warning::ThinLeg { width, .. } => {
            note(terms, "thin-leg", key("notch-thin-leg"), &[("width", fine(width)), ("least", fine(leg_min))])
        }
        Warning::OutOfLevel { by, .. } => note(terms, "out-of-level", key("notch-out-of-level"), &[("by", fine(by))]),
    }
}

fn refused(error: NotchError) -> &'static str {
    match error {
        NotchError::BlockWidth => key("notch-block-width"),
        NotchError::BlockHeight => key("notch-block-height"),
        NotchError::Lap => key("notch-lap"),
        _ => key("notch-trouble"),
    }
}
