use crate::measure::Length;
use crate::notch::Habit;
use crate::phrases::key;
use crate::rules::{RuleSet, keys};
use crate::screens::context::Terms;
use crate::screens::kept::{Facts, Job, Penetration, Wall, first};
use crate::screens::kept_phrase;
use crate::screens::kinds;
use crate::screens::signing::Signing;
use crate::screens::trouble::Kept;
use crate::steps::{BoardDetail, Step};
use crate::store::{Hash, Id, Store};
use crate::views::{NotchView, Note, PoleWall, Reading, Source};
use crate::wall::Span;

use super::{habit, notches};

/// What the board is cut round: a block, a window or a door.
pub(super) struct Met {
    /// The penetration or the opening.
    pub(super) id: Id,
    /// The key of its name.
    pub(super) name: String,
    /// Left to right on the wall.
    pub(super) x: Span,
    /// Bottom to top on the wall.
    pub(super) y: Span,
}

/// Where a board lies on its wall. Its bottom edge is straight; where the course is out of level, it slopes.
#[derive(Clone, Copy)]
pub(super) struct OnWall {
    pub(super) from: Length,
    pub(super) to: Length,
    /// Its bottom edge at the left end.
    pub(super) left: Length,
    /// Its bottom edge at the right end.
    pub(super) right: Length,
}

impl OnWall {
    pub(super) fn of(board: &Facts) -> Option<Self> {
        let left = board.length("bottom")?;
        let right = board.length("bottom-right").unwrap_or(left);
        Some(Self { from: board.length("from")?, to: board.length("to")?, left, right })
    }

    /// Its bottom edge at `x` on the wall.
    pub(super) fn bottom_at(&self, x: Length) -> Length {
        let (along, over) = ((x - self.from).nm(), (self.to - self.from).nm());
        if self.left == self.right || over <= 0 {
            return self.left;
        }
        (self.right - self.left).scaled(along, over).map_or(self.left, |rise| self.left + rise)
    }
}

/// The board in hand with what stands round it: its wall and house, where it has them.
pub(super) struct InHand {
    pub(super) facts: Facts,
    pub(super) wall: Option<Wall>,
    pub(super) job: Option<Job>,
    pub(super) rules: RuleSet,
    pub(super) height: Length,
    /// How far it laps over the course below; `None` where nobody said.
    pub(super) lap: Option<Length>,
    /// Whether there is a course under it.
    pub(super) below: bool,
    /// The blocks, windows and doors of its wall that it meets.
    pub(super) met: Vec<Met>,
    /// The notches that were taped.
    pub(super) taped: Vec<Facts>,
    /// What was learned of the signer's saw and hands.
    pub(super) habit: Option<Habit>,
}

impl InHand {
    pub(super) fn of(store: &Store, terms: &Terms<'_>, id: Id) -> Kept<Self> {
        let facts = Facts::of(store, terms, id, kinds::BOARD)?;
        let wall = facts.subject.parent.or_else(|| facts.reference("wall"));
        let wall = wall.map(|wall| Wall::of(store, terms, wall)).transpose()?;
        let job = wall.as_ref().map(|wall| wall.job).or(facts.subject.job);
        let job = job.map(|job| Job::of(store, terms, job)).transpose()?;
        let height = match (facts.length("height"), &job) {
            (Some(height), _) => height,
            (None, Some(job)) => job.board_height(terms)?,
            (None, None) => return Err(first(terms, "height", key("ask-board-height")).into()),
        };
        let lap = match (facts.length("lap"), &job) {
            (Some(lap), _) => Some(lap),
            (None, Some(job)) => Some(job.lap()?),
            (None, None) => None,
        };
        let rules = job.as_ref().map_or_else(RuleSet::standard, |job| job.rules.clone());
        let taped = Facts::children(store, id, kinds::NOTCH)?;
        let habit = habit::habit(store, terms)?;
        let mut hand = Self { facts, wall, job, rules, height, lap, below: true, met: Vec::new(), taped, habit };
        hand.look_round(store, terms)?;
        Ok(hand)
    }

    /// What of the wall it meets, and whether it is the first course where it lies.
    fn look_round(&mut self, store: &Store, terms: &Terms<'_>) -> Kept<()> {
        let (Some(wall), Some(job), Some(place)) = (&self.wall, &self.job, self.place()) else {
            return Ok(());
        };
        let OnWall { from, to, .. } = place;
        let (bottom, top) = (place.left.min(place.right), place.left.max(place.right) + self.height);
        let outline = wall.outline(store, terms)?;
        let middle = from + (to - from).half();
        let under = outline.spans_at(bottom - Length::from_nm(1));
        self.below = under.iter().any(|span| span.from <= middle && middle <= span.to);
        let gap = self.rules.get_length(keys::GAP_BLOCK_MOST)?;
        let near = |x: Span, y: Span, gap: Length| {
            x.from < to + gap && from < x.to + gap && y.from < top + gap && bottom < y.to + gap
        };
        let mut met = Vec::new();
        for penetration in Penetration::on_wall(store, terms, job, wall.id())? {
            let (x, y) = penetration.outer();
            if near(x, y, gap) {
                met.push(Met { id: penetration.id(), name: format!("wall-kind-{}", penetration.kind.code()), x, y });
            }
        }
        // A board that ends at a window's trim with its gap does not meet it; one that runs under its sill does.
        for (id, opening) in wall.openings(store)? {
            let y = Span { from: opening.bottom, to: opening.top };
            if near(opening.narrowest(bottom, top), y, Length::ZERO) {
                let x = opening.widest(bottom, top);
                met.push(Met { id, name: format!("wall-opening-{}", opening.kind.code()), x, y });
            }
        }
        self.met = met;
        Ok(())
    }

    /// The walls that a loose board can be attached to.
    pub(super) fn walls(&self, store: &Store) -> Kept<Vec<PoleWall>> {
        let (None, Some(job)) = (&self.wall, &self.job) else { return Ok(Vec::new()) };
        let named = |wall: &Wall| PoleWall { wall: wall.id().to_string(), name: wall.name().to_owned() };
        Ok(Wall::of_job(store, job.id())?.iter().map(named).collect())
    }

    /// Where it lies on the wall, for a board of a plan.
    pub(super) fn place(&self) -> Option<OnWall> {
        OnWall::of(&self.facts)
    }

    /// Where its bottom edge will lie at its left and at its right end, above the datum of the pole.
    pub(super) fn line(&self, terms: &Terms<'_>) -> Option<(Reading, Reading)> {
        let (OnWall { left, right, .. }, base) = (self.place()?, self.wall.as_ref()?.base(terms).ok()?);
        let reading = |bottom: Length| terms.reading(base + bottom, Source::Planned, None);
        Some((reading(left), reading(right)))
    }

    /// How its ends are cut, where they are not square: at a rake, or beside what leans.
    pub(super) fn bevels(&self, terms: &Terms<'_>) -> Vec<Note> {
        let ends = [("bevel-left", key("board-bevel-left")), ("bevel-right", key("board-bevel-right"))];
        let note = |(field, text): (&str, &str)| {
            let by = self.facts.length(field)?;
            let way = if by.is_positive() { "right" } else { "left" };
            let args = [("by", terms.shown_finely(by.abs()).into()), ("way", way.into())];
            Some(Note { code: field.to_owned(), text: terms.phrase(text, &args) })
        };
        ends.into_iter().filter_map(note).collect()
    }

    /// Its length, which the work cannot go on without.
    pub(super) fn length(&self, terms: &Terms<'_>) -> Kept<Length> {
        self.facts.need(terms, "length", key("ask-board-length"))
    }

    pub(super) fn state(&self) -> &str {
        self.facts.text("state").unwrap_or("planned")
    }

    /// What the crew calls it, as the book keeps it.
    pub(super) fn name(&self) -> String {
        match (&self.wall, self.facts.whole("course")) {
            (Some(wall), Some(course)) => {
                kept_phrase::keep(key("board-title"), &[("wall", wall.name()), ("course", &course.to_string())])
            }
            (Some(wall), None) => kept_phrase::keep(key("board-title-attached"), &[("wall", wall.name())]),
            (None, _) => kept_phrase::keep(key("board-title-loose"), &[]),
        }
    }

    /// What the crew calls it.
    pub(super) fn title(&self, terms: &Terms<'_>) -> String {
        kept_phrase::say(terms, &self.name())
    }

    pub(super) fn height_reading(&self, terms: &Terms<'_>) -> Reading {
        self.facts.reading(terms, "height").unwrap_or_else(|| terms.reading(self.height, Source::Ruled, None))
    }

    /// What its steps are made from.
    pub(super) fn detail(&self, notched: bool) -> BoardDetail {
        let bevel = |field: &str| self.facts.length(field).is_some_and(|bevel| bevel != Length::ZERO);
        BoardDetail {
            notched,
            first_course: !self.below,
            joint: self.facts.text("joint") == Some("yes"),
            bevelled: bevel("bevel-left") || bevel("bevel-right"),
            painted: false,
            old_house: self.job.as_ref().is_some_and(|job| job.facts.text("old-house") == Some("yes")),
            above_reach: self.facts.length("bottom").is_some_and(|bottom| bottom > ABOVE_REACH),
        }
    }

    /// The steps of its work.
    pub(super) fn steps(&self, store: &Store, terms: &Terms<'_>) -> Kept<Vec<Step>> {
        let notched = !notches::views(store, terms, self)?.is_empty();
        Ok(self.detail(notched).steps())
    }

    /// What its steps are signed on.
    pub(super) fn signing<'a>(&self, about: &'a str, steps: &'a [Step], detail: Hash) -> Signing<'a> {
        Signing { subject: self.facts.id(), job: self.job.as_ref().map(Job::id), about, steps, detail }
    }

    /// The shortest stock that the board comes out of.
    pub(super) fn stock(&self, store: &Store, terms: &Terms<'_>) -> Kept<Option<Reading>> {
        let (Some(job), Some(length)) = (&self.job, self.facts.length("length")) else { return Ok(None) };
        let long_enough = job.stock(store)?.into_iter().map(|(stock, _)| stock).filter(|stock| *stock >= length);
        Ok(long_enough.min().map(|stock| terms.reading(stock, Source::Planned, None)))
    }

    /// What it was last cut with, where it was cut: what the cut follows from, and the marks.
    pub(super) fn cut_with(&self) -> Option<(&str, &str)> {
        let cut = self.facts.iter().filter(|(name, _)| name.starts_with(CUT)).last()?;
        self.facts.text(cut.0)?.split_once(BESIDE)
    }

    /// A note where the numbers are no longer those that it was cut with: what is cut is never rewritten.
    pub(super) fn cut_differs(&self, terms: &Terms<'_>, notches: &[NotchView]) -> Kept<Option<Note>> {
        let Some((cut, _)) = self.cut_with().filter(|_| self.state() != "planned") else { return Ok(None) };
        let text = terms.phrase("board-differs-from-cut", &[]);
        let differs = cut != notches::basis(self, notches)?;
        Ok(differs.then(|| Note { code: "differs-from-cut".to_owned(), text }))
    }

    /// The numbers of a cut for the record, in nanometres: what it follows from, then the marks.
    pub(super) fn numbers(&self, notches: &[NotchView]) -> Kept<String> {
        Ok(format!("{}{BESIDE}{}", notches::basis(self, notches)?, notches::marked(self, notches)))
    }

    /// The hash of what the sign-offs are made under: the detail, the lengths and the blocks.
    pub(super) fn hash(&self, detail: &BoardDetail, notches: &[NotchView]) -> Kept<Hash> {
        let basis = notches::basis(self, notches)?;
        Ok(Hash::of(detail.canonical().text("numbers", &basis).detail_text()))
    }
}

/// Between the two halves of a record.
const BESIDE: char = '|';

/// The beginning of the fields that keep what a board was cut with, one a cut.
pub(super) const CUT: &str = "cut/";

/// What is higher above the base line is worked at from a ladder or a scaffold (common practice, no source).
const ABOVE_REACH: Length = Length::from_inches_64(78, 0);
