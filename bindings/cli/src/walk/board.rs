//! A board of the demo house: measured, marked, cut, primed and hung.

use lapwright::phrases::key;
use lapwright::views::{
    Action, BoardAction, BoardView, NotchView, Place, Rectangle, ShapeView, Source, StepState, View, WallView,
};

use super::ask::{self, Said};
use super::readings::{self, Reading};
use super::{Goes, Walk, tick};
use crate::fault::Fault;
use crate::paper::{Ink, Paper};
use crate::show;

/// The step that asks for the gap that came out.
const GAP: &str = "board-gap";

/// What came out at the blocks of the demo house (invented).
const CAME_OUT: &str = "1/8\"";

/// Whether an edge of a shape is neither level nor plumb.
fn slants(shape: &ShapeView) -> bool {
    let next = shape.shape.iter().cycle().skip(1);
    shape.shape.iter().zip(next).any(|(from, to)| from.x != to.x && from.y != to.y)
}

impl Walk {
    fn board(&self, board: &str) -> Result<BoardView, Fault> {
        match self.book.view(&Place::Board { board: board.to_owned() })? {
            View::BoardKind { view } => Ok(view),
            _ => Err(Fault::unknown("board", board, &[])),
        }
    }

    fn wall(&self, wall: &str) -> Result<WallView, Fault> {
        match self.book.view(&Place::Wall { wall: wall.to_owned() })? {
            View::WallKind { view } => Ok(view),
            _ => Err(Fault::unknown("wall", wall, &[])),
        }
    }

    /// Finishes boards that were hung when an earlier run was ended, before their last steps.
    pub(super) fn finish_boards(&mut self) -> Result<(), Fault> {
        for wall in self.house()?.walls {
            if wall.fixed == 0 {
                continue;
            }
            for board in self.wall(&wall.wall)?.boards.iter().filter(|board| board.state == "fixed") {
                let view = self.board(&board.board)?;
                if view.steps.iter().any(|step| step.state == StepState::Open) {
                    self.print(|paper| show::board::head(paper, &view))?;
                    self.tick_all(view, true)?;
                }
            }
        }
        Ok(())
    }

    /// Hangs a board: one without a notch in a line, one with a notch step by step.
    pub(super) fn hang(&mut self, board: &str, wall: &str, name: &str) -> Result<Goes, Fault> {
        self.shown.clear();
        let view = self.board(board)?;
        if view.notches.is_empty() {
            let length = view.length.as_ref().map(|length| length.text.clone()).unwrap_or_default();
            let title = view.title.clone();
            self.tick_all(view, false)?;
            self.say("cli-demo-board-up", &[("board", title.into()), ("length", length.into())])?;
            return Ok(Goes::On);
        }
        self.print(|paper| {
            paper.gap();
            show::board::head(paper, &view);
        })?;
        if view.state == "planned" && self.measure(&view, wall, name)? == Goes::Enough {
            return self.leave();
        }
        let view = self.board(board)?;
        self.print(|paper| {
            for notch in &view.notches {
                paper.gap();
                if view.notches.len() > 1 {
                    paper.title(&notch.name);
                }
                show::board::answer(paper, &view, notch);
            }
        })?;
        self.print(Paper::gap)?;
        if self.asks && !ask::go_on(&self.phrase("cli-demo-cut-it", &[])) {
            return self.leave();
        }
        self.tick_all(view, true)?;
        if !self.asks {
            self.print(Paper::gap)?;
            self.say("cli-demo-again", &[])?;
            self.show_shaped()?;
            return Ok(Goes::Enough);
        }
        if ask::go_on(&self.phrase("cli-demo-go-on", &[])) { Ok(Goes::On) } else { self.leave() }
    }

    /// Shows a board that is ripped and one that is cut along a rake.
    fn show_shaped(&self) -> Result<(), Fault> {
        let (mut ripped, mut raked) = (None, None);
        for wall in self.house()?.walls {
            for line in self.wall(&wall.wall)?.boards {
                let is_ripped = line.shapes.iter().any(|shape| shape.rip.is_some_and(|rip| rip.top.is_some()));
                if ripped.is_none() && is_ripped && !line.shapes.iter().any(slants) {
                    ripped = Some(line.board.clone());
                }
                if raked.is_none() && line.shapes.iter().any(slants) {
                    raked = Some(line.board.clone());
                }
            }
        }
        for board in [ripped, raked].into_iter().flatten() {
            let view = self.board(&board)?;
            self.print(|paper| {
                paper.gap();
                show::board::head(paper, &view);
                show::board::cuts(paper, &view);
            })?;
        }
        Ok(())
    }

    /// Asks the tape for every reading of every notch that it has not given yet; each answer is kept at once.
    fn measure(&mut self, view: &BoardView, wall: &str, name: &str) -> Result<Goes, Fault> {
        let walls = self.wall(wall)?;
        let at = walls.boards.iter().find(|board| board.board == view.board).map(|board| board.at);
        let at = at.unwrap_or(Rectangle { left: 0, right: 0, bottom: 0, top: 0 });
        let read = readings::of_board(name, view.course.unwrap_or(0), &at);
        let mut known: Vec<String> = view.notches.iter().map(|notch| notch.notch.clone()).collect();
        for n in 0..view.notches.len() {
            self.print(|paper| {
                if let Some(notch) = view.notches.get(n) {
                    paper.gap();
                    paper.title(&notch.name);
                }
            })?;
            let left = view.notches.get(n).and_then(|notch| notch.questions.iter().find(|asked| asked.field == "left"));
            let left = left.and_then(|question| question.reading.as_ref()).map(|reading| reading.nm);
            let reading = left.and_then(|left| read.iter().find(|reading| reading.is_at(left, &at)));
            let mut notch = view.notches.get(n).cloned();
            while let Some(current) = notch {
                let Some(question) = open(&current) else { break };
                let Some(text) = self.answer(question, reading, &at)? else { return Ok(Goes::Enough) };
                let said = BoardAction::AnswerNotch {
                    board: view.board.clone(),
                    notch: current.notch.clone(),
                    field: question.field.clone(),
                    text,
                };
                match self.book.act(&Action::BoardKind { action: said }) {
                    Ok(outcome) => {
                        let View::BoardKind { view } = outcome.view else { break };
                        let after = view.notches.iter().find(|after| after.notch == current.notch);
                        // The first answer to a planned notch makes it a taped one with an id of its own.
                        let after = after.or_else(|| view.notches.iter().find(|after| !known.contains(&after.notch)));
                        self.answered(after, &question.field)?;
                        known.extend(after.map(|after| after.notch.clone()));
                        notch = after.cloned();
                    }
                    Err(fault) if self.asks => {
                        fault.say(false);
                        notch = Some(current);
                    }
                    Err(fault) => return Err(fault),
                }
            }
        }
        Ok(Goes::On)
    }
}

impl Walk {
    /// The answer to a question: asked at a terminal, else what the demo's tape reads, else what is planned.
    fn answer(
        &self,
        question: &lapwright::views::Question,
        reading: Option<&Reading>,
        at: &Rectangle,
    ) -> Result<Option<String>, Fault> {
        let planned = question.answer.trim_start_matches(['≈', ' ']).to_owned();
        let read = reading.and_then(|reading| reading.answer(&question.field, at));
        if !self.asks {
            return Ok(Some(read.unwrap_or(planned)));
        }
        let paper = Paper::new(self.phrases);
        Ok(match ask::question(&paper, question, &planned) {
            Said::Answer(text) => Some(text),
            Said::Leave => None,
        })
    }

    /// Says an answer that the book has.
    fn answered(&self, notch: Option<&NotchView>, field: &str) -> Result<(), Fault> {
        let questions = notch.map(|notch| notch.questions.as_slice()).unwrap_or_default();
        let Some(question) = questions.iter().find(|question| question.field == field) else { return Ok(()) };
        if self.asks {
            return Ok(());
        }
        self.print(|paper| {
            let answer = question.reading.as_ref().map(|reading| paper.reading(reading)).unwrap_or_default();
            let answer = paper.set(Ink::Strong, &answer);
            paper.line(&format!("  {} {answer}", question.title));
        })
    }

    /// Ticks every open step in its order, aloud or not; at the gap's step the gap that came out is learned from.
    fn tick_all(&mut self, view: BoardView, aloud: bool) -> Result<(), Fault> {
        let board = view.board.clone();
        for step in view.steps.iter().filter(|step| step.state == StepState::Open) {
            self.caution(&view.steps, &step.code)?;
            let gap = step.code == GAP;
            let measured = match gap {
                true if self.asks => self.gap()?,
                true => CAME_OUT.to_owned(),
                false => String::new(),
            };
            let said = tick(&measured);
            let action = BoardAction::SignStep { board: board.clone(), step: step.code.clone(), said };
            let mut after = self.book.act(&Action::BoardKind { action })?.view;
            if gap && !measured.is_empty() {
                for notch in &view.notches {
                    let (board, notch, text) = (board.clone(), notch.notch.clone(), measured.clone());
                    let action = BoardAction::AnswerNotch { board, notch, field: "gap".to_owned(), text };
                    after = self.book.act(&Action::BoardKind { action })?.view;
                }
            }
            if aloud && let View::BoardKind { view } = after {
                self.ticked(&view.steps, &step.code)?;
                if gap {
                    self.print(|paper| paper.notes(&view.notes))?;
                }
            }
        }
        Ok(())
    }

    /// Asks for the gap until it can be read; nothing where the person leaves it out.
    fn gap(&self) -> Result<String, Fault> {
        let paper = Paper::new(self.phrases);
        let text = self.phrase(key("ask-gap"), &[]);
        crate::run::out(&format!("  {}", paper.set(Ink::Chalk, &text)))?;
        let reader = self.book.reader()?;
        Ok(ask::typed(CAME_OUT).filter(|text| reader.read(text).is_ok()).unwrap_or_default())
    }
}

/// The first question of a notch that the tape has not answered.
fn open(notch: &NotchView) -> Option<&lapwright::views::Question> {
    let taped = |question: &&lapwright::views::Question| {
        question.reading.as_ref().is_some_and(|reading| reading.source == Source::Taped)
    };
    let needed = |question: &&lapwright::views::Question| !question.optional || !question.answer.is_empty();
    notch.questions.iter().filter(needed).find(|question| !taped(question))
}
