use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;
use crate::screens::ask;
use crate::screens::context::Terms;
use crate::screens::kept::{Facts, Job, Penetration, Wall, first};
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::siding::{Mark, Mode, Pole, PoleError, PoleRequest, Want};
use crate::store::{Id, Store};
use crate::views::{Code, MarkLine, Note, PoleLine, PoleView, PoleWall, Problem, Source};

use super::{as_built, pole};

/// A mark with the id of its own subject, where it has one.
struct Wanted {
    id: String,
    mark: Mark,
}

/// The view of a pole, with the layout that its answers lead to.
pub(super) fn view(store: &Store, terms: &Terms<'_>, job: &Job) -> Kept<PoleView> {
    let kept = job.lines(store)?;
    let wanted = wanted(store, terms, job, None)?;
    let mut view = PoleView {
        job: job.id().to_string(),
        questions: Vec::new(),
        asked: None,
        marks: Vec::new(),
        lines: Vec::new(),
        notes: Vec::new(),
        laid_out: kept.is_some(),
        up_to_date: false,
        proved: false,
        said: String::new(),
        as_built: as_built::lines(store, terms, job)?,
        as_built_questions: kinds::AS_BUILT_ASKS.iter().map(|question| ask::unanswered(terms, question)).collect(),
        revision: 0,
        walls: Vec::new(),
    };
    if view.laid_out {
        let wall = |wall: &Wall| PoleWall { wall: wall.id().to_string(), name: wall.name().to_owned() };
        view.walls = Wall::of_job(store, job.id())?.iter().map(wall).collect();
    }
    let Some(facts) = pole(store, job)? else {
        view.questions = kinds::POLE_ASKS.iter().map(|question| ask::unanswered(terms, question)).collect();
        view.asked = ask::asked(&view.questions);
        view.marks = wanted.iter().map(|wanted| mark_line(terms, wanted, None)).collect();
        return Ok(view);
    };
    view.questions = ask::questions(store, terms, &facts)?;
    view.asked = ask::asked(&view.questions);
    if ask::open_question(&view.questions).is_some() {
        view.marks = wanted.iter().map(|wanted| mark_line(terms, wanted, None)).collect();
        return Ok(view);
    }
    let request = request(terms, &facts, &wanted)?;
    match Pole::lay_out(&request) {
        Ok(pole) => {
            let missed = |at: usize| pole.marks.get(at).map(|mark| mark.miss);
            view.marks = wanted.iter().enumerate().map(|(at, wanted)| mark_line(terms, wanted, missed(at))).collect();
            view.lines = pole_lines(terms, request.from, &pole);
            view.notes = notes(terms, job, &request, &pole)?;
            view.proved = matches!(request.mode, Mode::Fit { .. });
            view.up_to_date = kept.is_some_and(|kept| kept == heights(request.from, &pole));
            view.said = said(terms, &view);
        }
        Err(error) => {
            view.marks = wanted.iter().map(|wanted| mark_line(terms, wanted, None)).collect();
            view.notes.push(Note { code: "infeasible".to_owned(), text: terms.phrase(trouble(&error), &[]) });
        }
    }
    Ok(view)
}

/// The heights to keep: the start, every line and the end, above the datum.
pub(super) fn lines(store: &Store, terms: &Terms<'_>, job: &Job, facts: &Facts) -> Kept<Vec<Length>> {
    let request = request(terms, facts, &wanted(store, terms, job, None)?)?;
    let pole = Pole::lay_out(&request)
        .map_err(|error| Problem::new(Code::Infeasible, "reveal-min", terms.phrase(trouble(&error), &[])))?;
    Ok(heights(request.from, &pole))
}

fn heights(from: Length, pole: &Pole) -> Vec<Length> {
    std::iter::once(from).chain(pole.lines.iter().map(|line| from + *line)).collect()
}

fn request(terms: &Terms<'_>, facts: &Facts, wanted: &[Wanted]) -> Kept<PoleRequest> {
    let need = |field, title| facts.need(terms, field, title);
    let mode = match facts.text("mode") {
        Some("equal") => Mode::Equal,
        Some("fixed") => Mode::Fixed { reveal: need("reveal", key("ask-reveal"))? },
        Some("fit") => Mode::Fit { change_max: facts.length("change-max") },
        _ => return Err(first(terms, "mode", key("ask-pole-mode")).into()),
    };
    Ok(PoleRequest {
        from: need("from", key("ask-pole-from"))?,
        to: need("to", key("ask-pole-to"))?,
        mode,
        reveal_max: need("reveal-max", key("ask-reveal-max"))?,
        reveal_min: facts.length("reveal-min"),
        marks: wanted.iter().map(|wanted| wanted.mark.clone()).collect(),
        division: terms.division,
    })
}

/// The marks that a wall's lines should meet: its own and the job's.
pub(super) fn marks(store: &Store, terms: &Terms<'_>, job: &Job, wall: Option<Id>) -> Kept<Vec<Mark>> {
    Ok(wanted(store, terms, job, wall)?.into_iter().map(|wanted| wanted.mark).collect())
}

/// What the walls, or one of them, ask for (sills and heads to land on, block edges to stay clear of), then the job's own
/// marks.
fn wanted(store: &Store, terms: &Terms<'_>, job: &Job, only: Option<Id>) -> Kept<Vec<Wanted>> {
    let mut wanted = Vec::new();
    let clear = Want::Clear(job.rules.get_length(keys::LEG_LEAST)?.half());
    for wall in Wall::of_job(store, job.id())?.into_iter().filter(|wall| only.is_none_or(|only| only == wall.id())) {
        let Ok(base) = wall.base(terms) else { continue };
        let mut put = |name: &str, text: &str, at: Length, want: Want| {
            let what = terms.phrase(name, &[]);
            let name = terms.phrase(text, &[("what", what.into()), ("wall", wall.name().into())]);
            wanted.push(Wanted { id: String::new(), mark: Mark { name, at: base + at, want, weight: 1 } });
        };
        for (_, opening) in wall.openings(store)? {
            let name = format!("wall-opening-{}", opening.kind.code());
            if opening.bottom.is_positive() {
                put(&name, key("pole-mark-sill"), opening.bottom, Want::Land);
            }
            put(&name, key("pole-mark-head"), opening.top, Want::Land);
        }
        for penetration in Penetration::on_wall(store, terms, job, wall.id())? {
            let name = format!("wall-kind-{}", penetration.kind.code());
            let (_, y) = penetration.outer();
            put(&name, key("pole-mark-bottom"), y.from, clear);
            put(&name, key("pole-mark-top"), y.to, clear);
        }
    }
    let own = match pole(store, job)? {
        Some(pole) => Facts::children(store, pole.id(), kinds::MARK)?,
        None => Vec::new(),
    };
    for facts in own {
        let (Some(name), Some(at)) = (facts.text("name"), facts.length("at")) else { continue };
        let want = match facts.text("want") {
            Some("clear") => Want::Clear(facts.length("clear").unwrap_or_default()),
            _ => Want::Land,
        };
        let weight = facts.whole("weight").and_then(|weight| u16::try_from(weight).ok()).unwrap_or(1);
        wanted.push(Wanted { id: facts.id().to_string(), mark: Mark { name: name.to_owned(), at, want, weight } });
    }
    Ok(wanted)
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

fn notes(terms: &Terms<'_>, job: &Job, request: &PoleRequest, pole: &Pole) -> Kept<Vec<Note>> {
    let mut notes = Vec::new();
    let mut note = |code: &str, text: String| notes.push(Note { code: code.to_owned(), text });
    if request.reveal_min.is_some_and(|least| pole.top_strip() < least) {
        let strip = terms.shown(pole.top_strip());
        note("thin-strip", terms.phrase("pole-thin-strip", &[("strip", strip.into())]));
    }
    let most = job.board_height(terms)? - job.lap()?;
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
