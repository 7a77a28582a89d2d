//! What a command names: a wall, a penetration or a board of any house, and what is said of its steps.

use std::path::Path;

use lapwright::book::{Field, Kind};
use lapwright::measure::{Length, Show};
use lapwright::phrases::Arg;
use lapwright::views::{
    Action, BoardAction, BoardLine, PenetrationAction, Place, StepHow, StepPhoto, StepSaid, View, WallView,
};

use super::Session;
use crate::fault::Fault;
use crate::find::{Named, one};
use crate::options::Answers;

impl Session<'_> {
    /// The houses that are not archived.
    pub(super) fn jobs(&self) -> Result<Vec<String>, Fault> {
        let View::JobsKind { view } = self.book.view(&Place::Jobs)? else { return Ok(Vec::new()) };
        Ok(view.jobs.into_iter().filter(|job| !job.archived).map(|job| job.job).collect())
    }

    /// The walls of every house that is not archived.
    fn walls(&self) -> Result<Vec<Named>, Fault> {
        let mut walls = Vec::new();
        for job in self.jobs()? {
            let house = self.house_view(&job)?;
            walls.extend(house.walls.into_iter().map(|wall| Named::new(wall.wall, wall.name).told(&house.name)));
        }
        Ok(walls)
    }

    /// The id of a wall.
    pub(super) fn wall_id(&self, text: &str) -> Result<String, Fault> {
        one("wall", text, &self.walls()?)
    }

    /// The views of the walls that have sizes to draw.
    fn wall_views(&self) -> Result<Vec<WallView>, Fault> {
        let drawn = |wall: Named| match self.book.view(&Place::Wall { wall: wall.id }) {
            Ok(View::WallKind { view }) => Some(view),
            _ => None,
        };
        Ok(self.walls()?.into_iter().filter_map(drawn).collect())
    }

    /// The id of a penetration: by what it is, alone or after its wall's name.
    pub(super) fn penetration_id(&self, text: &str) -> Result<String, Fault> {
        let walls = self.wall_views()?;
        let mut all = penetrations(&walls, text);
        all.extend(self.not_drawn(&walls, text)?);
        one("penetration", text, &all)
    }

    /// The penetrations of walls that have no sizes to draw yet.
    fn not_drawn(&self, drawn: &[WallView], text: &str) -> Result<Vec<Named>, Fault> {
        let phrases = self.phrases()?;
        let mut found = Vec::new();
        for job in self.jobs()? {
            let house = self.book.inner.house(job.parse().ok())?;
            for wall in
                house.own(Kind::Wall).iter().filter(|wall| drawn.iter().all(|own| own.wall != wall.id().to_string()))
            {
                let name = wall.text(Field::Name).unwrap_or_default();
                for penetration in house.under(wall.id(), Kind::Penetration) {
                    let what = penetration.text(Field::What).unwrap_or_default();
                    let what = phrases.phrase(&format!("wall-kind-{what}"), &[]);
                    found.push(on_wall(&penetration.id().to_string(), &what, name, text));
                }
            }
        }
        Ok(found)
    }

    /// The id of a board: by the beginning of its id, or by wall and course where there is one alone.
    pub(super) fn board_id(&self, text: &str) -> Result<String, Fault> {
        one("board", text, &self.boards(&self.wall_views()?)?)
    }

    fn boards(&self, walls: &[WallView]) -> Result<Vec<Named>, Fault> {
        let (show, phrases) = (Show::from_code(&self.book.context()?.show), self.phrases()?);
        let named = |(wall, board): (&WallView, &BoardLine)| {
            // Boards of a course may be as long as one another, but none begins where another does.
            let from = show.map(|show| show.text(Length::from_nm(board.at.left))).unwrap_or_default();
            let args = [("length", Arg::from(&board.length.text)), ("from", from.into())];
            let told = phrases.phrase("cli-board-told", &args);
            Named::new(&board.board, format!("{} {}", wall.name, board.course)).told(told)
        };
        let on_walls = walls.iter().flat_map(|wall| wall.boards.iter().map(move |board| (wall, board)));
        let mut boards: Vec<Named> = on_walls.map(named).collect();
        // Loose boards hang on no wall.
        let jobs = self.jobs()?.into_iter().filter_map(|job| job.parse().ok()).map(Some);
        for job in jobs.chain([None]) {
            let house = self.book.inner.house(job)?;
            let named = |id: String| Named::new(&id, short(&id));
            boards.extend(house.loose_boards().map(|board| named(board.id().to_string())));
        }
        Ok(boards)
    }

    pub(super) fn penetration(&mut self, text: &str, answers: &Answers) -> Result<(), Fault> {
        let penetration = self.penetration_id(text)?;
        self.answered(&Place::Penetration { penetration: penetration.clone() }, answers, |field, text| {
            let action = PenetrationAction::Answer { penetration: penetration.clone(), field, text };
            Action::PenetrationKind { action }
        })
    }

    /// Takes a photo in from a file, for the next tick of a step; gives its id.
    fn photo(&mut self, thing: &str, of_board: bool, step: &str, file: &Path) -> Result<String, Fault> {
        let (id, code) = (|| thing.to_owned(), || step.to_owned());
        let begin = match of_board {
            true => Action::BoardKind { action: BoardAction::BeginPhoto { board: id(), step: code() } },
            false => {
                Action::PenetrationKind { action: PenetrationAction::BeginPhoto { penetration: id(), step: code() } }
            }
        };
        let closed = match of_board {
            true => Action::BoardKind { action: BoardAction::TakePhotoIn { board: id(), step: code(), closed: true } },
            false => Action::PenetrationKind {
                action: PenetrationAction::TakePhotoIn { penetration: id(), step: code(), closed: true },
            },
        };
        let waiting = photo_of(&self.book.act(&begin)?.view, step)?;
        let copied = match std::fs::metadata(file) {
            Ok(data) if data.is_dir() => Err(std::io::ErrorKind::IsADirectory.into()),
            Ok(data) if !data.is_file() => Err(std::io::ErrorKind::InvalidInput.into()),
            Ok(_) => std::fs::copy(file, &waiting.file).map(|_| ()),
            Err(error) => Err(error),
        };
        // Where nothing came, taking it in gives it up.
        let taken = self.book.act(&closed);
        copied.map_err(|error| Fault::file(file, &error))?;
        Ok(photo_of(&taken?.view, step)?.photo)
    }

    /// The checks of a board that stand for several steps.
    fn checks(&self, board: &str) -> Result<Vec<String>, Fault> {
        let view = self.board_view(board)?;
        let of_steps = view.checks.into_iter().map(|check| check.code);
        Ok(of_steps.filter(|code| view.steps.iter().all(|step| step.code != *code)).collect())
    }

    /// Says something of steps of a board or a penetration, one after the other.
    pub(super) fn sign(&mut self, thing: &str, steps: &[String], said: &Said<'_>) -> Result<(), Fault> {
        let Said { how, note, measured, photo } = *said;
        let walls = self.wall_views()?;
        let (boards, mut things) = (self.boards(&walls)?, penetrations(&walls, thing));
        let of_board: Vec<String> = boards.iter().map(|board| board.id.clone()).collect();
        things.extend(boards);
        let id = one("thing", thing, &things)?;
        let photo = match (photo, steps) {
            (None, _) => None,
            (Some(file), [step]) => Some(self.photo(&id, of_board.contains(&id), step, file)?),
            _ => return Err(Fault::said("order", "photo", "cli-photo-one-step", &[])),
        };
        let said = StepSaid { how, note: note.to_owned(), measured: measured.to_owned(), photo };
        // With one tap several steps are checked, where no more is said of them.
        let plain = note.is_empty() && measured.is_empty() && said.photo.is_none();
        let checks = if plain && of_board.contains(&id) { self.checks(&id)? } else { Vec::new() };
        let action = |step: &String| {
            let (id, step, said) = (id.clone(), step.clone(), said.clone());
            let is_check = checks.contains(&step);
            if is_check && how == StepHow::Tick {
                Action::BoardKind { action: BoardAction::TickCheck { board: id, check: step } }
            } else if is_check && how == StepHow::TakeBack {
                Action::BoardKind { action: BoardAction::TakeCheckBack { board: id, check: step } }
            } else if of_board.contains(&id) {
                Action::BoardKind { action: BoardAction::SignStep { board: id, step, said } }
            } else {
                Action::PenetrationKind { action: PenetrationAction::SignStep { penetration: id, step, said } }
            }
        };
        let ticked = self.book.together(|book| {
            let mut last = None;
            for step in steps {
                last = Some(book.act(&action(step))?);
            }
            Ok(last)
        })?;
        ticked.map_or(Ok(()), |outcome| self.print_outcome(&outcome))
    }
}

/// What is said of steps.
pub(super) struct Said<'a> {
    pub(super) how: StepHow,
    pub(super) note: &'a str,
    pub(super) measured: &'a str,
    /// The file of a photo.
    pub(super) photo: Option<&'a Path>,
}

/// The photo of a step, as a view has it.
fn photo_of(view: &View, step: &str) -> Result<StepPhoto, Fault> {
    let steps = match view {
        View::BoardKind { view } => view.steps.as_slice(),
        View::PenetrationKind { view } => view.steps.as_slice(),
        _ => &[],
    };
    let photo = steps.iter().find(|line| line.code == step).and_then(|line| line.photo.clone());
    photo.ok_or_else(|| Fault::said("unknown", "photo", "signing-photo-not-here", &[]))
}

/// The penetrations of the walls; with their wall's name before them where `text` says one.
fn penetrations(walls: &[WallView], text: &str) -> Vec<Named> {
    let of = |wall: &WallView| {
        let named = |id: &str, name: &str| on_wall(id, name, &wall.name, text);
        // The details that every house has are shown and signed as penetrations are.
        let penetrations = wall.penetrations.iter().map(|line| named(&line.penetration, &line.name));
        penetrations.chain(wall.details.iter().map(|line| named(&line.detail, &line.name))).collect::<Vec<_>>()
    };
    walls.iter().flat_map(of).collect()
}

/// A thing of a wall, which the text may name before it.
fn on_wall(id: &str, name: &str, wall: &str, text: &str) -> Named {
    match text.to_lowercase().starts_with(&format!("{} ", wall.to_lowercase())) {
        true => Named::new(id, format!("{wall} {name}")),
        false => Named::new(id, name).told(wall),
    }
}

fn short(id: &str) -> String {
    id.chars().take(8).collect()
}
