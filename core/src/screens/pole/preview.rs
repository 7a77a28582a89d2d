use crate::book::{Book, Field, Kind, Record, fields_of};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::{ask, lookup};
use crate::measure::Length;
use crate::phrases::key;
use crate::siding::{Mode, Pole, PoleError, PoleRequest, Want};
use crate::views::{Code, MarkLine, Note, PoleLine, PoleView, PoleWall, Problem, Source};
use crate::work::{WallSite, Work, WorkError, open_field};

use super::as_built;
use super::marks::{Wanted, wanted};

/// The view of a pole, with the layout that its answers lead to.
pub(super) fn view(book: &Book, terms: &Terms<'_>, work: &Work) -> Result<PoleView> {
    let wanted = wanted(terms, work, None)?;
    let unmet = || wanted.iter().map(|wanted| mark_line(terms, wanted, None)).collect();
    let unanswered = |kind| fields_of(kind).iter().map(|spec| ask::unanswered(terms, spec)).collect();
    let mut view = PoleView {
        job: lookup::job_id(work),
        questions: Vec::new(),
        asked: None,
        marks: Vec::new(),
        lines: Vec::new(),
        notes: Vec::new(),
        laid_out: work.lines().is_some(),
        up_to_date: false,
        proved: false,
        said: String::new(),
        as_built: as_built::lines(terms, work)?,
        as_built_questions: unanswered(Kind::AsBuilt),
        revision: 0,
        walls: Vec::new(),
    };
    if view.laid_out {
        let wall = |wall: &WallSite| PoleWall { wall: wall.id().to_string(), name: wall.name().to_owned() };
        view.walls = work.walls().iter().map(|site| wall(site)).collect();
    }
    let Some(pole) = work.pole() else {
        view.questions = unanswered(Kind::Pole);
        view.asked = ask::asked(&view.questions);
        view.marks = unmet();
        return Ok(view);
    };
    view.questions = ask::questions(book, terms, pole)?;
    view.asked = ask::asked(&view.questions);
    if open_field(pole).is_some() {
        view.marks = unmet();
        return Ok(view);
    }
    let request = request(terms, pole, &wanted)?;
    match Pole::lay_out(&request) {
        Ok(pole) => {
            let missed = |at: usize| pole.marks.get(at).map(|mark| mark.miss);
            view.marks = wanted.iter().enumerate().map(|(at, wanted)| mark_line(terms, wanted, missed(at))).collect();
            view.lines = pole_lines(terms, request.from, &pole);
            view.notes = notes(terms, work, &request, &pole)?;
            view.proved = matches!(request.mode, Mode::Fit { .. });
            view.up_to_date = work.lines().is_some_and(|kept| kept == heights(request.from, &pole));
            view.said = said(terms, &view);
        }
        Err(error) => {
            view.marks = unmet();
            view.notes.push(Note::stop("infeasible", terms.phrase(trouble(&error), &[])));
        }
    }
    Ok(view)
}

/// The heights to keep: the start, every line and the end, above the datum.
pub(super) fn lines(terms: &Terms<'_>, work: &Work, pole: &Record) -> Result<Vec<Length>> {
    let request = request(terms, pole, &wanted(terms, work, None)?)?;
    let least = Field::RevealMin.code();
    let pole = Pole::lay_out(&request)
        .map_err(|error| Problem::new(Code::Infeasible, least, terms.phrase(trouble(&error), &[])))?;
    Ok(heights(request.from, &pole))
}

fn heights(from: Length, pole: &Pole) -> Vec<Length> {
    std::iter::once(from).chain(pole.lines.iter().map(|line| from + *line)).collect()
}

fn request(terms: &Terms<'_>, pole: &Record, wanted: &[Wanted]) -> Result<PoleRequest> {
    let need = |field| pole.length(field).ok_or_else(|| WorkError::first(Kind::Pole, field));
    let mode = match pole.text(Field::Mode) {
        Some("equal") => Mode::Equal,
        Some("fixed") => Mode::Fixed { reveal: need(Field::Reveal)? },
        Some("fit") => Mode::Fit { change_max: pole.length(Field::ChangeMax) },
        _ => return Err(WorkError::first(Kind::Pole, Field::Mode).into()),
    };
    Ok(PoleRequest {
        from: need(Field::From)?,
        to: need(Field::To)?,
        mode,
        reveal_max: need(Field::RevealMax)?,
        reveal_min: pole.length(Field::RevealMin),
        marks: wanted.iter().map(|wanted| wanted.mark.clone()).collect(),
        division: terms.division,
    })
}

/// Whether the lines are kept, and whether there are better ones.
fn said(terms: &Terms<'_>, view: &PoleView) -> String {
    let kept = match (view.laid_out, view.up_to_date) {
        (true, true) => key("pole-kept"),
        (true, false) => key("pole-differs"),
        (false, _) => key("pole-not-kept"),
    };
    let proved = view.proved.then(|| terms.phrase("pole-proved", &[]));
    std::iter::once(terms.phrase(kept, &[])).chain(proved).collect::<Vec<_>>().join(" ")
}

fn mark_line(terms: &Terms<'_>, wanted: &Wanted, miss: Option<Length>) -> MarkLine {
    let want = terms.phrase(if wanted.mark.want == Want::Land { "pole-land" } else { "pole-clear" }, &[]);
    let how = miss.map(|miss| match miss {
        Length::ZERO => terms.phrase("pole-met", &[]),
        miss => terms.phrase("pole-missed", &[("miss", terms.shown(miss).into())]),
    });
    MarkLine {
        said: std::iter::once(want).chain(how).collect::<Vec<_>>().join(" "),
        mark: wanted.id.clone(),
        name: wanted.mark.name.clone(),
        at: terms.reading(wanted.mark.at, Source::Planned, None),
        want: if wanted.mark.want == Want::Land { "land" } else { "clear" }.to_owned(),
        miss: miss.map(|miss| terms.reading(miss, Source::Planned, None)),
    }
}

fn pole_lines(terms: &Terms<'_>, from: Length, pole: &Pole) -> Vec<PoleLine> {
    let reveals = pole.reveals.iter().map(Some).chain([None]);
    let line = |(at, (height, reveal)): (usize, (Length, Option<&Length>))| PoleLine {
        course: u32::try_from(at + 1).unwrap_or(u32::MAX),
        height: terms.reading(height, Source::Planned, None),
        reveal: reveal.map(|reveal| terms.reading(*reveal, Source::Planned, None)),
        said: match reveal {
            Some(reveal) => {
                let args = [("course", (at + 1).into()), ("reveal", terms.shown(*reveal).into())];
                terms.phrase("pole-line", &args)
            }
            None => terms.phrase("pole-end", &[]),
        },
    };
    heights(from, pole).into_iter().zip(reveals).enumerate().map(line).collect()
}

fn notes(terms: &Terms<'_>, work: &Work, request: &PoleRequest, pole: &Pole) -> Result<Vec<Note>> {
    let mut notes = Vec::new();
    let mut note = |code: &str, text: String| notes.push(Note::check(code, text));
    if request.reveal_min.is_some_and(|least| pole.top_strip() < least) {
        let strip = terms.shown(pole.top_strip());
        note("thin-strip", terms.phrase("pole-thin-strip", &[("strip", strip.into())]));
    }
    let most = work.board_height()? - work.lap()?;
    if let Some(reveal) = pole.reveals.iter().find(|reveal| **reveal > most) {
        let args = [("reveal", terms.shown(*reveal).into()), ("most", terms.shown(most).into())];
        note("lap-short", terms.phrase("pole-lap-short", &args));
    }
    Ok(notes)
}

fn trouble(error: &PoleError) -> &'static str {
    match error {
        PoleError::NoHeight => key("pole-no-height"),
        PoleError::UnderLeast { .. } => key("pole-under-least"),
        PoleError::NoLayout => key("pole-no-layout"),
        PoleError::RevealOrder => key("pole-reveal-order"),
        PoleError::TooManyCourses | PoleError::TooLarge => key("pole-too-large"),
        PoleError::RevealNotPositive | PoleError::Negative => key("figure-range-positive"),
    }
}
