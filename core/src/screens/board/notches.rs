use crate::book::{BoardState, Book, DraftKey, Field, FieldSpec, Kind, field_of, fields_of};
use crate::forms::ask;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::plausible::{about_new, posed};
use crate::measure::Length;
use crate::notch::{CutKind, Edge, FaceMarks, Notch, NotchError, NotchRequest, Warning, marks};
use crate::phrases::{Arg, key};
use crate::rules::keys;
use crate::views::{
    AnswerKind, Choice, Corner, LevelView, MarksView, NotchView, Note, Question, Reading, Size, Source,
};
use crate::work::{BoardNotch, LaidNotch, LaidOut, cross_check};

use super::hand::InHand;
use super::right;

/// The views of every notch that cuts the board or is not told yet.
pub(super) fn views(book: &Book, terms: &Terms<'_>, hand: &InHand) -> Result<Vec<NotchView>> {
    let cut = hand.board.cut_notches()?;
    let laid = LaidOut::of(&hand.board, &hand.tools)?;
    let mut views = Vec::new();
    for (at, notch) in hand.board.notches.iter().enumerate() {
        let mut view = view(book, terms, hand, notch, laid.notches.get(at).and_then(Option::as_ref))?;
        let beside = laid.thin_between.iter().filter(|(first, second, _)| [*first, *second].contains(&at));
        view.notes.extend(beside.filter_map(|between| thin_between(terms, hand, between)));
        view.notes.sort_by_key(|note| note.level);
        // A block that only comes near is no notch of this board, unless somebody taped it.
        if cut.iter().any(|cut| std::ptr::eq(*cut, notch)) || view.cut != "none" || !view.notes.is_empty() {
            views.push(view);
        }
    }
    Ok(views)
}

/// A thin leg between two notches, told at both of them.
fn thin_between(terms: &Terms<'_>, hand: &InHand, (first, second, width): &(usize, usize, Length)) -> Option<Note> {
    let named = |at: &usize| Some(name(terms, hand.board.notches.get(*at)?));
    let (first, second) = (named(first)?, named(second)?);
    let args = [
        ("width", fine_arg(terms, *width)),
        ("least", fine_arg(terms, hand.board.rules.get_length(keys::LEG_LEAST).ok()?)),
        ("first", first.into()),
        ("second", second.into()),
    ];
    Some(note(terms, "thin-between", key("notch-thin-between"), &args))
}

fn view(
    book: &Book,
    terms: &Terms<'_>,
    hand: &InHand,
    notch: &BoardNotch,
    laid: Option<&LaidNotch>,
) -> Result<NotchView> {
    let mut view = NotchView {
        notch: id(notch),
        name: name(terms, notch),
        taped: notch.is_taped(),
        cut: String::new(),
        cut_text: String::new(),
        offset: None,
        gap_least: None,
        gap_most: None,
        face: None,
        back: None,
        legs: Vec::new(),
        notes: Vec::new(),
        questions: questions(book, terms, hand, notch)?,
    };
    if let Some(LaidNotch { request, notch: laid }) = laid {
        match laid {
            Ok(laid) => fill(terms, &mut view, request, laid),
            Err(error) => view.notes.push(Note::stop("readings", terms.phrase(refused(*error), &[]))),
        }
        view.notes.extend(off_plan(terms, hand, notch)?);
        if let Some(miss) = cross_check(&hand.work, &hand.board, notch)? {
            let args = [("by", terms.shown_finely(miss).into())];
            view.notes.push(note(terms, "cross-check", key("notch-cross-check"), &args));
        }
    }
    Ok(view)
}

/// The id that answers go to.
pub(super) fn id(notch: &BoardNotch) -> String {
    notch.id().map(|id| id.to_string()).unwrap_or_default()
}

fn name(terms: &Terms<'_>, notch: &BoardNotch) -> String {
    match &notch.planned {
        Some(planned) => terms.phrase(&planned.name, &[]),
        None => terms.phrase(key("notch-loose-block"), &[]),
    }
}

/// The questions, each with its planned answer where nothing was taped.
fn questions(book: &Book, terms: &Terms<'_>, hand: &InHand, notch: &BoardNotch) -> Result<Vec<Question>> {
    let mut questions = match &notch.taped {
        Some(record) => ask::questions(book, terms, record)?,
        None => fields_of(Kind::Notch).iter().map(|spec| ask::unanswered(terms, spec)).collect(),
    };
    for (question, spec) in questions.iter_mut().zip(fields_of(Kind::Notch)) {
        question.subject = id(notch);
        question.title = terms.phrase(title(notch, spec), &[]);
        if question.answer.is_empty()
            && let Some(planned) = notch.planned_reading(spec.field)
        {
            let reading = terms.reading(planned, Source::Planned, None);
            question.answer.clone_from(&reading.text);
            question.reading = Some(reading);
        }
        if let (None, Some(planned)) = (&notch.taped, &notch.planned) {
            question.draft = book.draft(&DraftKey::field(planned.id, spec.field))?;
            *question = posed(book, terms, &about_new(Some(hand.id())), question.clone())?;
        }
    }
    ask::count(terms, &name(terms, notch), &mut questions);
    if notch.taped.is_some() && !differing(hand, notch)?.is_empty() {
        questions.push(which_is_right(terms, notch));
    }
    if hand.board.state() != BoardState::Planned && notch.block.is_some() {
        questions.extend(gap(book, terms, hand, notch)?);
    }
    Ok(questions)
}

/// What is asked of a notch: at a window or a door of its trim, else of the block.
fn title(notch: &BoardNotch, spec: &FieldSpec) -> &'static str {
    let opening = notch.planned.as_ref().is_some_and(|planned| planned.opening);
    match spec.field {
        Field::Left if opening => key("ask-notch-left-trim"),
        Field::Right if opening => key("ask-notch-right-trim"),
        Field::BottomLeft if opening => key("ask-notch-bottom-left-trim"),
        Field::BottomRight if opening => key("ask-notch-bottom-right-trim"),
        Field::TopLeft if opening => key("ask-notch-top-left-trim"),
        Field::TopRight if opening => key("ask-notch-top-right-trim"),
        _ => spec.title,
    }
}

/// The question what gap came out, with what was said of it last.
fn gap(book: &Book, terms: &Terms<'_>, hand: &InHand, notch: &BoardNotch) -> Result<Option<Question>> {
    let Some(spec) = field_of(Kind::Gap, Field::Gap) else { return Ok(None) };
    let gaps = book.gaps()?;
    let reading = gaps.last(hand.id(), &notch.ids()).and_then(|gap| terms.answer(gap, Field::Gap));
    let draft = notch.id().map_or(Ok(String::new()), |id| book.draft(&DraftKey::field(id, Field::Gap)))?;
    let answer = reading.as_ref().map(|reading| reading.text.clone()).unwrap_or_default();
    let about = name(terms, notch);
    let question = Question { subject: id(notch), answer, reading, draft, about, ..ask::unanswered(terms, spec) };
    posed(book, terms, &about_new(None), question).map(Some)
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
    if request.open_above && notch.cut.is_some_and(|cut| cut.top.most() < request.board.height) {
        let gap = notch.gap.at(Edge::Top);
        let args = [("least", fine_arg(terms, gap.min)), ("most", fine_arg(terms, gap.max))];
        view.notes.push(Note::know("open-above", terms.phrase(key("notch-open-above"), &args)));
    }
    let warned = notch.warnings.iter().map(|warning| warned(terms, notch.kind, *warning, request.leg_min));
    view.notes.extend(warned);
}

/// The readings of a notch that differ from the plan by more than the tolerance: the question, the tape, the plan.
fn differing(hand: &InHand, notch: &BoardNotch) -> Result<Vec<(&'static FieldSpec, Length, Length)>> {
    let tolerance = hand.board.rules.get_length(keys::TAPE_PLAN_TOLERANCE)?;
    let Some(taped) = &notch.taped else { return Ok(Vec::new()) };
    let both = |spec: &'static FieldSpec| Some((spec, taped.length(spec.field)?, notch.planned_reading(spec.field)?));
    let far = |(_, read, planned): &(_, Length, Length)| (*read - *planned).abs() > tolerance;
    Ok(fields_of(Kind::Notch).iter().filter_map(both).filter(far).collect())
}

/// Where the tape and the plan differ by more than the tolerance it is said, and which is right is asked; nothing is
/// overwritten.
fn off_plan(terms: &Terms<'_>, hand: &InHand, notch: &BoardNotch) -> Result<Vec<Note>> {
    let says = |(spec, read, planned): (&FieldSpec, Length, Length)| {
        let args = [
            ("question", terms.phrase(title(notch, spec), &[]).into()),
            ("taped", terms.shown(read).into()),
            ("planned", terms.shown(planned).into()),
        ];
        note(terms, "off-plan", key("notch-off-plan"), &args)
    };
    Ok(differing(hand, notch)?.into_iter().map(says).collect())
}

/// The question which of the two is right.
fn which_is_right(terms: &Terms<'_>, notch: &BoardNotch) -> Question {
    let choice = |code: &str, text: &str| Choice { code: code.to_owned(), label: terms.phrase(text, &[]) };
    Question {
        subject: id(notch),
        field: right::RIGHT.to_owned(),
        title: terms.phrase(right::TITLE, &[]),
        hint: terms.phrase(key("notch-which-is-right-hint"), &[]),
        kind: AnswerKind::ChoiceKind,
        choices: vec![choice(right::TAPE, key("notch-right-tape")), choice(right::PLAN, key("notch-right-plan"))],
        optional: true,
        ..Question::default()
    }
}

fn marks_view(terms: &Terms<'_>, marks: &FaceMarks) -> MarksView {
    let level = |mark: &crate::notch::NotchMark| LevelView {
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
    Note::check(code, terms.phrase(text, args))
}

fn fine_arg(terms: &Terms<'_>, length: Length) -> Arg<'static> {
    terms.shown_finely(length).into()
}

fn warned(terms: &Terms<'_>, kind: CutKind, warning: Warning, leg_min: Length) -> Note {
    let fine = |length: Length| fine_arg(terms, length);
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
        Warning::OutOfLevel { by, .. } => {
            Note::know("out-of-level", terms.phrase(key("notch-out-of-level"), &[("by", fine(by))]))
        }
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
