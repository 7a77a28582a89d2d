use std::sync::Arc;

use crate::book::{BoardState, Book, CutRecord, Field, Kind, Operation};
use crate::forms::ask::sort_key;
use crate::forms::board_shape::shape_view;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::misfits;
use crate::forms::signing::{DetailHashes, Signing};
use crate::forms::{lookup, stored_phrase};
use crate::measure::Length;
use crate::notch::{Edge, LearnedOvercut, Notch, Overcut};
use crate::phrases::key;
use crate::steps::Step;
use crate::store::{Hash, Id};
use crate::views::{Note, PoleWall, Reading, ShapeView, Source, StepHow};
use crate::work::{Board, BoardNotch, Misfits, Placement, Tools, WallBoard, Work};

use super::{earlier, overcut};

/// The board in hand, and with what it is cut.
pub(super) struct InHand {
    pub(super) work: Arc<Work>,
    pub(super) board: Board,
    /// What was learned of the signer's saw and hands.
    pub(super) learned: Option<LearnedOvercut>,
    pub(super) tools: Tools,
}

impl InHand {
    pub(super) fn of(book: &Book, terms: &Terms<'_>, id: Id) -> Result<Self> {
        let work = lookup::of(book, id, Kind::Board)?;
        let board = Board::of(&work, id)?;
        let (learned, tools) = (overcut::learned(book, terms)?, overcut::tools(book, terms, &board)?);
        Ok(Self { work, board, learned, tools })
    }

    pub(super) fn id(&self) -> Id {
        self.board.record.id()
    }

    /// The walls that a loose board can be attached to.
    pub(super) fn walls(&self) -> Vec<PoleWall> {
        if self.board.site.is_some() {
            return Vec::new();
        }
        let walls = self.work.walls().iter();
        walls.map(|wall| PoleWall { wall: wall.id().to_string(), name: wall.name().to_owned() }).collect()
    }

    /// Which of its wall's boards it is, and the next one that is not up, with its words; all empty for a loose board.
    pub(super) fn among_others(&self, terms: &Terms<'_>) -> (String, String, String) {
        let Some(wall) = &self.board.site else { return Default::default() };
        let boards = WallBoard::on_wall(&self.work, wall.id());
        let at = boards.iter().position(|board| board.id() == self.id());
        let said = at.map(|at| {
            let args = [("nth", (at + 1).into()), ("all", boards.len().into())];
            terms.phrase(key("frame-nth"), &args)
        });
        let after = boards.iter().skip(at.map_or(0, |at| at + 1)).chain(&boards);
        let next = after.filter(|board| board.id() != self.id()).find(|board| board.state != BoardState::Fixed);
        let length = |board: &WallBoard| terms.answer(&board.record, Field::Length).map(|length| length.text);
        let next_said = next.map(|board| {
            let length = length(board).unwrap_or_default();
            terms.phrase(key("board-next"), &[("course", board.course.into()), ("length", length.into())])
        });
        let id = next.map(|board| board.id().to_string()).unwrap_or_default();
        (said.unwrap_or_default(), id, next_said.unwrap_or_default())
    }

    /// Where its bottom edge will lie at its left and at its right end, above the datum of the pole.
    pub(super) fn line(&self, terms: &Terms<'_>) -> Option<(Reading, Reading)> {
        let (Placement { left, right, .. }, base) = (self.board.place()?, self.board.site.as_ref()?.base().ok()?);
        let reading = |bottom: Length| terms.reading(base + bottom, Source::Planned, None);
        Some((reading(left), reading(right)))
    }

    /// How its ends are cut, where they are not square: at a rake, or beside what leans.
    pub(super) fn bevels(&self, terms: &Terms<'_>) -> Vec<Note> {
        let ends = [(Field::BevelLeft, key("board-bevel-left")), (Field::BevelRight, key("board-bevel-right"))];
        let note = |(field, text): (Field, &str)| {
            let by = self.board.record.length(field)?;
            let way = if by.is_positive() { "right" } else { "left" };
            let args = [("by", terms.shown_finely(by.abs()).into()), ("way", way.into())];
            Some(Note::know(field.code(), terms.phrase(text, &args)))
        };
        ends.into_iter().filter_map(note).collect()
    }

    /// That it no longer fits the house as it is now.
    pub(super) fn misfit(&self, terms: &Terms<'_>) -> Option<Note> {
        let misfits = Misfits::of_board(&self.work, self.board.site.as_ref()?, &self.board.record);
        misfits::note_of(terms, &misfits, self.id())
    }

    /// What the crew calls it, as the book keeps it.
    pub(super) fn name(&self) -> String {
        match (&self.board.site, self.board.record.whole(Field::Course)) {
            (Some(wall), Some(course)) => {
                stored_phrase::keep(key("board-title"), &[("wall", wall.name()), ("course", &course.to_string())])
            }
            (Some(wall), None) => stored_phrase::keep(key("board-title-attached"), &[("wall", wall.name())]),
            (None, _) => stored_phrase::keep(key("board-title-loose"), &[]),
        }
    }

    /// What the crew calls it.
    pub(super) fn title(&self, terms: &Terms<'_>) -> String {
        stored_phrase::say(terms, &self.name())
    }

    pub(super) fn height_reading(&self, terms: &Terms<'_>) -> Reading {
        // A board that is ripped is no longer as high as its course.
        if self.board.record.length(Field::Height).is_some_and(|full| full != self.board.height) {
            return terms.reading(self.board.height, Source::Planned, None);
        }
        let ruled = || terms.reading(self.board.height, Source::Ruled, None);
        terms.answer(&self.board.record, Field::Height).unwrap_or_else(ruled)
    }

    /// Its shapes, with the names of what it goes round.
    pub(super) fn shapes(&self, terms: &Terms<'_>) -> Vec<ShapeView> {
        let name = |around: usize| self.board.names.get(around).map(|name| terms.phrase(name, &[])).unwrap_or_default();
        self.board.shapes.iter().map(|shape| shape_view(shape, name)).collect()
    }

    /// The steps of its work.
    pub(super) fn steps(&self) -> Result<Vec<Step>> {
        Ok(self.board.detail()?.steps())
    }

    /// What its steps are signed on.
    pub(super) fn signing<'a>(&'a self, book: &Book, about: &'a str, steps: &'a [Step]) -> Result<Signing<'a>> {
        let hash = Hash::of(self.board.canonical()?.detail_text());
        let fits = |signed: &crate::store::Signed| signed.sign_off.detail_hash == hash;
        let all_fit = self.work.house().signed(self.id()).all(fits);
        let earlier = if all_fit { Vec::new() } else { earlier::hashes(&self.board, self.overcuts(book)?)? };
        Ok(Signing { work: &self.work, subject: self.id(), about, steps, detail: DetailHashes { hash, earlier } })
    }

    /// The overcuts that somebody may have cut it with.
    fn overcuts(&self, book: &Book) -> Result<Vec<Overcut>> {
        let ruled = self.board.ruled_overcut()?;
        let mut all: Vec<Overcut> = book.gaps()?.habits().map(|habit| habit.overcut_or(ruled)).collect();
        all.push(ruled);
        Ok(all)
    }

    /// The shortest stock that the board comes out of.
    pub(super) fn stock(&self, terms: &Terms<'_>) -> Option<Reading> {
        let length = self.board.record.length(Field::Length)?;
        let long_enough = self.work.stock().into_iter().map(|(stock, _)| stock).filter(|stock| *stock >= length);
        Some(terms.reading(long_enough.min()?, Source::Planned, None))
    }

    /// What it was cut to, where it is cut.
    pub(super) fn cut(&self) -> Option<CutRecord> {
        let cut = self.board.state() != BoardState::Planned;
        CutRecord::of(self.work.house(), &self.board.record).filter(|_| cut)
    }

    /// What it would be cut to now.
    pub(super) fn cut_now(&self) -> Result<CutRecord> {
        Ok(self.board.cut_record(|notch| self.offset(notch))?)
    }

    /// What signing a step does to the board: cutting keeps the numbers that it was cut to; nailing makes it fixed.
    pub(super) fn with_state(
        &self,
        terms: &Terms<'_>,
        mut operation: Operation,
        step: &str,
        how: StepHow,
    ) -> Result<Operation> {
        let cut_step = if self.board.detail()?.notched { "board-notch" } else { "board-cut" };
        let state = match (step, how) {
            ("board-nail", StepHow::Tick) => Some(BoardState::Fixed),
            ("board-nail", StepHow::TakeBack) => Some(BoardState::Cut),
            (step, StepHow::Tick) if step == cut_step => Some(BoardState::Cut),
            (step, StepHow::TakeBack) if step == cut_step => Some(BoardState::Planned),
            _ => None,
        };
        if let Some(state) = state {
            operation = operation.set(self.id(), Field::State, state.into());
        }
        if step == cut_step && how == StepHow::Tick {
            let cut = self.cut_now()?;
            let ids: Vec<Id> = (0..).map(|n| terms.fresh(n)).take(cut.notches.len() + 1).collect();
            operation = cut.write(operation, self.id(), &ids, &sort_key(terms, 0));
        }
        Ok(operation)
    }

    /// How far outside a block the signer's saw wants the marks; none where the notch cannot be laid out.
    pub(super) fn offset(&self, notch: &BoardNotch) -> Length {
        let request = self.board.request(notch, &self.tools).ok().flatten();
        let notch = request.and_then(|request| Notch::lay_out(&request).ok());
        notch.map_or(Length::ZERO, |notch| notch.offset.at(Edge::Sides))
    }

    /// A note where the numbers are no longer those that it was cut to: what is cut is never rewritten.
    pub(super) fn cut_differs(&self, terms: &Terms<'_>) -> Result<Option<Note>> {
        let Some(cut) = self.cut() else { return Ok(None) };
        let text = terms.phrase("board-differs-from-cut", &[]);
        let differs = cut.differs(&self.cut_now()?);
        Ok(differs.then(|| Note::check("differs-from-cut", text)))
    }
}
