//! Penetration: make it weathertight.

mod advice;
mod block;
mod layers;
mod patch;
mod shed;

use crate::flashing::{Pipe, Rectangle, WallLayers};
use crate::siding::CourseLine;
use crate::steps::{PenetrationDetail, Step};
use crate::store::{Hash, Id, Store};
use crate::views::{PenetrationAction, PenetrationView, Place, StepSaid};

use super::ask::{self, accept, keep_draft, op};
use super::context::Terms;
use super::drawing::penetration_revision;
use super::kept::{Facts, Job, Penetration, Wall};
use super::signing::{Signing, sign, step_lines};
use super::step_asks;
use super::trouble::Kept;
use super::{Done, kinds, photo};

/// A penetration with what stands round it.
struct Round {
    job: Job,
    wall: Wall,
    penetration: Penetration,
    /// The wall's courses; empty without a pole.
    courses: Vec<CourseLine>,
    detail: PenetrationDetail,
}

impl Round {
    fn of(store: &Store, terms: &Terms<'_>, id: Id) -> Kept<Self> {
        let facts = Facts::of(store, terms, id, kinds::PENETRATION)?;
        let wall = Wall::of(store, terms, facts.subject.parent.unwrap_or(id))?;
        let job = Job::of(store, terms, wall.job)?;
        let penetration = Penetration::of(store, terms, &job, id)?;
        let courses = match (job.lines(store)?, wall.outline(store, terms)) {
            (Some(lines), Ok(outline)) => {
                let lines = wall.lines_at(store, &lines, penetration.centre.x, outline.width())?;
                wall.courses(terms, &job, &lines, &outline).unwrap_or_default()
            }
            _ => Vec::new(),
        };
        let detail = penetration.detail(&job, &courses);
        Ok(Self { job, wall, penetration, courses, detail })
    }

    /// What the boards end at, on the wall.
    fn outer(&self) -> Rectangle {
        let (x, y) = self.penetration.outer();
        Rectangle { left: x.from, right: x.to, bottom: y.from, top: y.to }
    }

    /// What goes through the wall. A box is cut round itself; the slit and the cover go by its smaller side.
    fn pipe(&self) -> Pipe {
        let Penetration { shape, centre, .. } = self.penetration;
        Pipe { diameter: shape.width().min(shape.height()), x: centre.x, y: centre.y }
    }

    /// The number on the pole of a course that is counted from one on this wall.
    fn course_number(&self, course: usize) -> usize {
        let line = course.checked_sub(1).and_then(|index| self.courses.get(index));
        line.and_then(|line| usize::try_from(line.course).ok()).unwrap_or(course)
    }

    fn name(&self, terms: &Terms<'_>) -> String {
        terms.phrase(&format!("wall-kind-{}", self.penetration.kind.code()), &[])
    }

    /// The hash of what the sign-offs are made under: place, block and patch, so that a step that was signed for other
    /// sizes says so.
    fn hash(&self, terms: &Terms<'_>) -> Kept<Hash> {
        let centre = self.penetration.centre;
        let mut detail = self.detail.canonical().length("centre.x", centre.x).length("centre.y", centre.y);
        if let Some(block) = self.penetration.block {
            detail = detail
                .length("block.width", block.x.length())
                .length("block.height", block.y.length())
                .length("block.thickness", block.thickness)
                .length("block.hole", block.hole);
        }
        // The notes are the view's own affair.
        let (patch, _) = patch::sizes(terms, self, &mut Vec::new())?;
        for size in patch {
            detail = detail.whole(&format!("patch.{}", size.code), size.reading.nm);
        }
        Ok(Hash::of(detail.detail_text()))
    }
}

pub(super) fn view(store: &Store, terms: &Terms<'_>, penetration: &str) -> Kept<PenetrationView> {
    let round = Round::of(store, terms, terms.id("penetration", penetration)?)?;
    let mut notes = Vec::new();
    let (patch, patch_ends) = patch::sizes(terms, &round, &mut notes)?;
    let (block, split) = block::sizes(terms, &round, &mut notes)?;
    let head = shed::head_sizes(terms, &round)?;
    let shedding = shed::check(terms, &round)?;
    let steps = round.detail.steps();
    let steps = step_lines(store, terms, &signing(terms, &round, "", &steps)?)?;
    let questions = ask::questions(store, terms, &round.penetration.facts)?;
    let mut view = PenetrationView {
        penetration: round.penetration.id().to_string(),
        wall: round.wall.id().to_string(),
        job: round.job.id().to_string(),
        name: round.name(terms),
        what: round.penetration.kind.code().to_owned(),
        asked: step_asks::begun(&steps).or_else(|| ask::asked(&questions)),
        questions,
        layers: layers::lines(terms, &round.detail),
        shedding,
        patch,
        patch_ends,
        block,
        split,
        head,
        notes,
        steps,
        revision: 0,
        advice: advice::of(store, terms, &round)?,
    };
    view.revision = penetration_revision(terms.phrases, &view, drawn_layers(terms, &round)?);
    Ok(view)
}

/// The layers of a penetration with their extents, and what goes through them, as a drawing shows them; `None` where
/// they cannot be told yet.
pub(super) fn wall_layers(store: &Store, terms: &Terms<'_>, penetration: &str) -> Kept<Option<(WallLayers, Pipe)>> {
    drawn_layers(terms, &Round::of(store, terms, terms.id("penetration", penetration)?)?)
}

fn drawn_layers(terms: &Terms<'_>, round: &Round) -> Kept<Option<(WallLayers, Pipe)>> {
    Ok(shed::layers(terms, round)?.map(|layers| (layers, round.pipe())))
}

/// What the shedding check says once the layers were spoilt.
#[cfg(test)]
pub(super) fn spoilt(
    store: &Store,
    terms: &Terms<'_>,
    penetration: &str,
    spoil: impl FnOnce(&mut WallLayers),
) -> Kept<crate::views::Shedding> {
    let round = Round::of(store, terms, terms.id("penetration", penetration)?)?;
    let mut layers = shed::layers(terms, &round)?.unwrap();
    spoil(&mut layers);
    let faults = layers.faults().unwrap();
    Ok(shed::said(terms, &round, &layers, &faults))
}

pub(super) fn act(store: &mut Store, terms: &Terms<'_>, action: &PenetrationAction) -> Kept<Done> {
    let facts = |store: &Store, id: &str| Facts::of(store, terms, terms.id("penetration", id)?, kinds::PENETRATION);
    let here = |id: &str| Place::Penetration { penetration: id.to_owned() };
    match action {
        PenetrationAction::Answer { penetration, field, text } => {
            let round = Round::of(store, terms, terms.id("penetration", penetration)?)?;
            let facts = &round.penetration.facts;
            let group = match step_asks::said(store, terms, facts.id(), &round.detail.steps(), field, text)? {
                Some((step, said)) => sign_step(store, terms, &round, step, &said)?,
                None => ask::answer(store, terms, facts, field, text)?.group,
            };
            Ok(Done::at(here(penetration), group))
        }
        PenetrationAction::KeepDraft { penetration, field, text } => {
            let round = Round::of(store, terms, terms.id("penetration", penetration)?)?;
            let (facts, steps) = (&round.penetration.facts, round.detail.steps());
            if !step_asks::keep(store, facts.id(), &steps, field, text)? {
                keep_draft(store, terms, facts, field, text)?;
            }
            Ok(Done::without_answer(here(penetration)))
        }
        PenetrationAction::TakeSameAs { penetration, like } => {
            let (facts, model) = (facts(store, penetration)?, facts(store, like)?);
            let mut answer = op("penetration-same", facts.subject.job, []);
            for field in SAME {
                if let Some(kept) = model.field(field) {
                    answer = answer.set(facts.id(), field, kept.value.clone());
                }
            }
            let outcome = accept(store, terms, answer, &[])?;
            Ok(Done::at(here(penetration), outcome.group))
        }
        PenetrationAction::TakeAdvice { penetration } => {
            let round = Round::of(store, terms, terms.id("penetration", penetration)?)?;
            let group = advice::take(store, terms, &round)?;
            Ok(Done::at(here(penetration), group))
        }
        PenetrationAction::SignStep { penetration, step, said } => {
            let round = Round::of(store, terms, terms.id("penetration", penetration)?)?;
            Ok(Done::at(here(penetration), sign_step(store, terms, &round, step, said)?))
        }
        PenetrationAction::BeginPhoto { penetration, step } => {
            let round = Round::of(store, terms, terms.id("penetration", penetration)?)?;
            photo::begin(store, terms, round.penetration.id(), &round.detail.steps(), step)?;
            Ok(Done::without_answer(here(penetration)))
        }
        PenetrationAction::TakePhotoIn { penetration, step, closed } => {
            let facts = facts(store, penetration)?;
            photo::take_in(store, terms, facts.id(), step, *closed)?;
            Ok(Done::without_answer(here(penetration)))
        }
    }
}

fn sign_step(store: &mut Store, terms: &Terms<'_>, round: &Round, step: &str, said: &StepSaid) -> Kept<Id> {
    let about = format!("wall-kind-{}", round.penetration.kind.code());
    let steps = round.detail.steps();
    sign(store, terms, &signing(terms, round, &about, &steps)?, step, said)
}

fn signing<'a>(terms: &Terms<'_>, round: &Round, about: &'a str, steps: &'a [Step]) -> Kept<Signing<'a>> {
    let detail = round.hash(terms)?;
    Ok(Signing { subject: round.penetration.id(), job: Some(round.job.id()), about, steps, detail })
}

/// What one penetration has in common with the next: not its place.
const SAME: [&str; 8] =
    ["mounting", "finish", "block-width", "block-height", "block-thickness", "hole-from-bottom", "painted", "height"];
