//! A detail that every house has, shown and signed as a penetration is.

use std::collections::BTreeSet;
use std::sync::Arc;

use crate::book::{Book, Field, Kind};
use crate::flashing::{Layer, LayerKind, Pipe, WallLayers};
use crate::forms::ask::{self, keep_draft};
use crate::forms::context::Terms;
use crate::forms::error::{FormError, Result};
use crate::forms::lookup;
use crate::forms::penetration::layers::{point_out, told_as};
use crate::forms::penetration::shed;
use crate::forms::signing::{DetailHashes, Signing, sign, step_lines};
use crate::forms::{cautions, photo, step_asks};
use crate::measure::{Length, Show};
use crate::phrases::key;
use crate::rules::RuleUnit;
use crate::screens::result::ActionResult;
use crate::screens::revision::penetration_revision;
use crate::steps::Step;
use crate::store::Id;
use crate::views::{
    Code, DetailLine, LayerLine, Note, PenetrationAction, PenetrationView, Place, Problem, Question, Reading, Size,
    Source, StepSaid,
};
use crate::wall::{CornerKind, DetailPlace, Shape};
use crate::work::{DetailProgress, WallDetail, WallSite, Work};

/// What names a detail to a shell: what it is signed on, and its place there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct DetailName {
    id: Id,
    place: DetailPlace,
}

impl DetailName {
    /// The name that a text says; none for the id of a penetration.
    ///
    /// # Errors
    /// [`Problem`] where it names no place.
    pub(super) fn of(terms: &Terms<'_>, text: &str) -> Result<Option<Self>> {
        let Some((id, place)) = text.split_once('/') else { return Ok(None) };
        let unknown = || Problem::new(Code::Unknown, "penetration", terms.phrase("screen-unknown", &[]));
        let place = DetailPlace::from_code(place).ok_or_else(unknown)?;
        Ok(Some(Self { id: terms.id("penetration", id)?, place }))
    }

    fn of_detail(detail: &WallDetail) -> Self {
        Self { id: detail.record.id(), place: detail.place() }
    }

    fn text(self) -> String {
        format!("{}/{}", self.id, self.place.code())
    }

    fn place(self) -> Place {
        Place::Penetration { penetration: self.text() }
    }
}

/// A detail with its wall and its house.
struct FoundDetail {
    work: Arc<Work>,
    wall: Arc<WallSite>,
    detail: WallDetail,
    steps: Vec<Step>,
}

impl FoundDetail {
    fn of(book: &Book, name: DetailName) -> Result<Self> {
        let unknown = || FormError::unknown(Kind::Penetration);
        let house = book.house_of(name.id)?.ok_or_else(unknown)?;
        let work = book.derived(&house, |before| Work::of(&house, before));
        let record = house.any(name.id).ok_or_else(unknown)?;
        let wall = match record.kind {
            Kind::Wall => record.id(),
            _ => record.parent.ok_or_else(unknown)?,
        };
        let wall = Arc::clone(work.wall(wall)?);
        let detail = wall.detail(&work, name.id, name.place)?.ok_or_else(unknown)?;
        let steps = detail.steps.steps();
        Ok(Self { work, wall, detail, steps })
    }

    fn signing<'a>(&'a self, about: &'a str) -> Signing<'a> {
        let detail = DetailHashes { hash: self.detail.hash(), earlier: Vec::new() };
        Signing { work: &self.work, subject: self.detail.record.id(), about, steps: &self.steps, detail }
    }
}

fn name_key(place: DetailPlace) -> String {
    format!("detail-{}", place.code())
}

/// What a layer of a place is called. A door has no sill, and no casing below.
fn layer_name(terms: &Terms<'_>, place: DetailPlace, layer: Layer) -> String {
    match (place, told_as(layer)) {
        (DetailPlace::Door, "jamb-flashing") => terms.phrase(key("detail-layer-jamb-flashing-door"), &[]),
        (DetailPlace::Door, "trim") => terms.phrase(key("detail-layer-trim-door"), &[]),
        (_, told) => terms.phrase(&format!("detail-layer-{told}"), &[]),
    }
}

fn kind_name(terms: &Terms<'_>, place: DetailPlace, kind: LayerKind) -> String {
    match kind {
        LayerKind::Detail { layer } => layer_name(terms, place, layer),
        LayerKind::Board { .. } => terms.phrase(key("detail-layer-boards"), &[]),
        LayerKind::Base => terms.phrase(key("shed-layer-base"), &[]),
        kind => terms.phrase(&format!("detail-layer-{}", kind.code()), &[]),
    }
}

/// What names a detail to a shell.
pub(in crate::screens) fn name(detail: &WallDetail) -> String {
    DetailName::of_detail(detail).text()
}

/// What a detail is called.
pub(in crate::screens) fn title(terms: &Terms<'_>, detail: &WallDetail) -> String {
    terms.phrase(&name_key(detail.place()), &[])
}

/// The details of a wall, each with how far it is.
pub(in crate::screens) fn lines(terms: &Terms<'_>, details: &[DetailProgress]) -> Vec<DetailLine> {
    let line = |one: &DetailProgress| DetailLine {
        detail: name(&one.detail),
        name: title(terms, &one.detail),
        said: match one.open.len() {
            0 => terms.phrase(key("detail-done"), &[]),
            open => terms.phrase(key("detail-open"), &[("open", open.into())]),
        },
    };
    details.iter().map(line).collect()
}

pub(super) fn view(book: &Book, terms: &Terms<'_>, name: DetailName) -> Result<PenetrationView> {
    let found = FoundDetail::of(book, name)?;
    let detail = &found.detail;
    let sizes_of = |layer: Layer| -> Vec<Size> {
        detail.detail.sizes(layer).into_iter().map(|(code, length)| size(terms, code, length)).collect()
    };
    let layer_lines = layer_lines(terms, detail);
    let mut steps = step_lines(book, terms, &found.signing(""))?;
    for (line, step) in steps.iter_mut().zip(&found.steps) {
        line.sizes = step.puts.map(sizes_of).unwrap_or_default();
        point_out(line, step, &layer_lines);
    }
    let questions = questions(book, terms, &found)?;
    let layers = detail.detail.wall_layers();
    let mut seen = BTreeSet::new();
    let sizes = detail.layers().flat_map(sizes_of).filter(|size| seen.insert((size.code.clone(), size.reading.nm)));
    let mut view = PenetrationView {
        penetration: name.text(),
        wall: found.wall.id().to_string(),
        job: lookup::job_id(&found.work),
        name: title(terms, detail),
        what: detail.place().code().to_owned(),
        asked: step_asks::begun(&steps).or_else(|| ask::asked(&questions)),
        questions,
        layers: layer_lines,
        shedding: shed::check(terms, &layers, &|kind| kind_name(terms, detail.place(), kind)),
        patch: Vec::new(),
        patch_ends: String::new(),
        block: Vec::new(),
        split: false,
        head: Vec::new(),
        notes: notes(terms, detail),
        sizes: sizes.collect(),
        steps,
        revision: 0,
        advice: None,
        said: place_of(terms, &found)?,
    };
    let at = section(detail, &layers);
    view.revision = penetration_revision(terms.phrases, &view, Some((layers, at)));
    Ok(view)
}

/// The layers with their extents, and where a section goes through them: nothing pierces them.
pub(super) fn wall_layers(book: &Book, name: DetailName) -> Result<(WallLayers, Pipe)> {
    let found = FoundDetail::of(book, name)?;
    let layers = found.detail.detail.wall_layers();
    let at = section(&found.detail, &layers);
    Ok((layers, at))
}

fn section(detail: &WallDetail, layers: &WallLayers) -> Pipe {
    let nothing = Shape::Round { diameter: Length::ZERO };
    Pipe { shape: nothing, x: detail.detail.section_at(), y: layers.frame.bottom }
}

/// Its wall, and which of the wall's details it is.
fn place_of(terms: &Terms<'_>, found: &FoundDetail) -> Result<String> {
    let own = DetailName::of_detail(&found.detail);
    let all = found.wall.details(&found.work)?;
    let at = all.iter().position(|detail| DetailName::of_detail(detail) == own).map_or(0, |at| at + 1);
    let args = [("wall", found.wall.name().into()), ("nth", at.into()), ("all", all.len().into())];
    Ok(terms.phrase(key("detail-said"), &args))
}

/// How a corner is made is asked at the corner, too.
fn questions(book: &Book, terms: &Terms<'_>, found: &FoundDetail) -> Result<Vec<Question>> {
    let field = match found.detail.place() {
        DetailPlace::CornerLeft => Field::CornerLeft,
        DetailPlace::CornerRight => Field::CornerRight,
        _ => return Ok(Vec::new()),
    };
    let mut questions = ask::questions(book, terms, &found.detail.record)?;
    questions.retain(|question| question.field == field.code());
    Ok(questions)
}

fn layer_lines(terms: &Terms<'_>, detail: &WallDetail) -> Vec<LayerLine> {
    let mut lines: Vec<LayerLine> = Vec::new();
    for layer in detail.layers() {
        let code = told_as(layer);
        if lines.iter().any(|line| line.code == code) {
            continue;
        }
        let held = terms.phrase(&format!("detail-held-{}", layer.fastening().code()), &[]);
        let mut args = vec![("layer", layer_name(terms, detail.place(), layer).into()), ("held", held.into())];
        let text = match detail.steps.assembly.hidden_by(layer) {
            Some(over) => {
                args.push(("by", terms.phrase(&format!("detail-by-{}", told_as(over)), &[]).into()));
                key("detail-layer-line-hidden")
            }
            None => key("detail-layer-line"),
        };
        lines.push(LayerLine { number: 0, code: code.to_owned(), text: terms.phrase(text, &args) });
    }
    for (number, line) in (1..).zip(&mut lines) {
        line.number = number;
    }
    lines
}

fn notes(terms: &Terms<'_>, detail: &WallDetail) -> Vec<Note> {
    let note = |code: &str, text: &str| Note::know(code, terms.phrase(text, &[]));
    match (detail.place(), detail.steps.assembly.corner()) {
        (_, Some(CornerKind::Mitred)) => vec![note("miter", key("detail-mitre-approx"))],
        (
            DetailPlace::Window
            | DetailPlace::Door
            | DetailPlace::RoofSide
            | DetailPlace::RoofHead
            | DetailPlace::Ledger,
            _,
        ) => vec![note("maker-wins", key("detail-maker-wins"))],
        _ => Vec::new(),
    }
}

fn size(terms: &Terms<'_>, code: &str, length: Length) -> Size {
    let reading = terms.reading(length, Source::Planned, None);
    let reading = match code.starts_with("sheet-") {
        true => Reading { text: sheet(terms, length), spoken: sheet(terms, length), approximate: false, ..reading },
        false => reading,
    };
    Size { code: code.to_owned(), label: terms.phrase(&format!("detail-size-{code}"), &[]), reading }
}

/// The thickness of a sheet, which no tape reads: in thousandths of an inch or hundredths of a millimetre, rounded up, as it is
/// a least.
fn sheet(terms: &Terms<'_>, length: Length) -> String {
    let (part, places, unit) = match terms.show {
        Show::Millimetres(_) => (Length::from_mm(1).nm() / 100, 2, RuleUnit::Millimetre),
        Show::Inches(_) | Show::FeetInches(_) => (Length::NM_PER_INCH / 1_000, 3, RuleUnit::Inch),
    };
    let parts = (length.nm() + part - 1) / part;
    let scale = 10_i64.pow(places);
    let (whole, rest) = (parts / scale, parts % scale);
    let width = usize::try_from(places).unwrap_or_default();
    format!("{whole}.{rest:0width$} {}", unit.sign_in(terms.phrases.language()))
}

pub(super) fn act(
    book: &mut Book,
    terms: &Terms<'_>,
    name: DetailName,
    action: &PenetrationAction,
) -> Result<ActionResult> {
    let found = FoundDetail::of(book, name)?;
    let (record, steps) = (&found.detail.record, &found.steps);
    match action {
        PenetrationAction::Answer { field, text, .. } => {
            let group = match step_asks::said(book, terms, record.id(), steps, field, text)? {
                Some((step, said)) => sign_step(book, terms, &found, step, &said)?,
                None => ask::answer(book, terms, record, field, text)?.group,
            };
            Ok(ActionResult::at(name.place(), group))
        }
        PenetrationAction::KeepDraft { field, text, .. } => {
            if !step_asks::keep(book, record.id(), steps, field, text)? {
                keep_draft(book, terms, record, field, text)?;
            }
            Ok(ActionResult::without_answer(name.place()))
        }
        PenetrationAction::SignStep { step, said, .. } => {
            Ok(ActionResult::at(name.place(), sign_step(book, terms, &found, step, said)?))
        }
        PenetrationAction::ReadCautions { step, .. } => {
            cautions::keep_read_at(book, terms, found.work.id(), steps, step)?;
            Ok(ActionResult::without_answer(name.place()))
        }
        PenetrationAction::BeginPhoto { step, .. } => {
            photo::begin(book, terms, record.id(), steps, step)?;
            Ok(ActionResult::without_answer(name.place()))
        }
        PenetrationAction::TakePhotoIn { step, closed, .. } => {
            photo::take_in(book, terms, record.id(), step, *closed)?;
            Ok(ActionResult::without_answer(name.place()))
        }
        // It follows from its wall: it is like no other, and has no block.
        PenetrationAction::TakeSameAs { .. } | PenetrationAction::TakeAdvice { .. } => {
            Err(Problem::new(Code::Unknown, "penetration", terms.phrase("screen-unknown", &[])).into())
        }
    }
}

fn sign_step(book: &mut Book, terms: &Terms<'_>, found: &FoundDetail, step: &str, said: &StepSaid) -> Result<Id> {
    let about = name_key(found.detail.place());
    sign(book, terms, &found.signing(&about), step, said)
}
