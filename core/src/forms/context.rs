use sha2::{Digest, Sha256};

use crate::book::{Field, Record};
use crate::measure::{Division, Length, ParseErrorKind, Reader, Rounding, Show, Unit, WrittenLength};
use crate::phrases::{Arg, Language, Phrases, heard, misread, spoken};
use crate::store::{Author, Id, Now};
use crate::views::{Code, Context, Problem, Reading, Source};

use super::error::Result;
use super::moment;
use super::parts::join_nonempty;

/// A context that was read: the terms in which a view speaks.
pub(crate) struct Terms<'a> {
    pub(crate) context: &'a Context,
    pub(crate) phrases: &'static Phrases,
    pub(crate) language: Language,
    pub(crate) show: Show,
    pub(crate) division: Division,
    pub(crate) reader: Reader,
}

impl<'a> Terms<'a> {
    /// Reads a context.
    ///
    /// # Errors
    /// [`Problem`] naming the field of the context that is not among its choices.
    pub(crate) fn read(context: &'a Context) -> Result<Self, Problem> {
        let language = Language::from_code(&context.language).unwrap_or_default();
        let phrases = Phrases::for_language(language);
        let problem = |code, field, key, args: &[(&str, Arg<'_>)]| Problem::new(code, field, phrases.phrase(key, args));
        let show = Show::from_code(&context.show).ok_or_else(|| {
            problem(Code::Choice, "show", "figure-choice", &[("choices", Show::CODES.join(", ").into())])
        })?;
        let reader = Reader { unit: Some(show.unit()), language };
        let division = remembered(reader, &context.division)
            .and_then(|written| Division::from_exact(&written.exact))
            .ok_or_else(|| problem(Code::Range, "division", "figure-division", &[]))?;
        Ok(Self { context, phrases, language, show, division, reader })
    }

    /// A length that this device remembers, in whatever language it is read now.
    pub(crate) fn remembered(&self, text: &str) -> Option<WrittenLength> {
        remembered(self.reader, text)
    }

    /// A text with its values put in.
    pub(crate) fn phrase(&self, key: &str, args: &[(&str, Arg<'_>)]) -> String {
        self.phrases.phrase(key, args)
    }

    /// A length as it is shown.
    pub(crate) fn shown(&self, length: Length) -> String {
        self.show.text(length)
    }

    /// A length as it is shown where half a division of the tape matters: the marks of a notch.
    pub(crate) fn shown_finely(&self, length: Length) -> String {
        self.show.finer(self.division.half()).text(length)
    }

    /// A length as a view shows it; `unit` is the one it was typed in, if it was.
    ///
    /// Shown in a unit of the other system, or rounded, it carries a sign.
    pub(crate) fn reading(&self, length: Length, source: Source, unit: Option<Unit>) -> Reading {
        self.reading_as(length, source, unit, self.show)
    }

    /// The same in a way of showing of its own.
    pub(crate) fn reading_as(&self, length: Length, source: Source, unit: Option<Unit>, show: Show) -> Reading {
        let inches = |unit: Unit| matches!(unit, Unit::Inch | Unit::Foot);
        let shown_in_inches = !matches!(show, Show::Millimetres(_));
        let converted = unit.is_some_and(|unit| inches(unit) != shown_in_inches);
        let approximate = converted || show.shown(length, Rounding::Nearest) != length;
        let sign = if approximate { "≈ " } else { "" };
        Reading {
            text: format!("{sign}{}", show.text(length)),
            spoken: spoken(length, show, self.language),
            nm: length.nm(),
            source,
            approximate,
            signer: String::new(),
            at_ms: None,
            said: String::new(),
        }
    }

    /// A length of a record as a view shows it: taped beats planned.
    pub(crate) fn answer(&self, record: &Record, field: Field) -> Option<Reading> {
        let measured = record.measured(field)?;
        let source = if measured.taped { Source::Taped } else { Source::Planned };
        // Nobody typed a planned length in any unit, so that showing it converts nothing.
        let unit = Unit::from_code(measured.unit).filter(|_| measured.taped);
        let mut reading = self.reading(measured.length, source, unit);
        if measured.taped {
            self.by(&mut reading, &measured.written.signer, measured.written.stamp.ms);
        }
        Some(reading)
    }

    /// Says by whom and when a length was read.
    pub(crate) fn by(&self, reading: &mut Reading, signer: &str, at_ms: i64) {
        signer.clone_into(&mut reading.signer);
        reading.at_ms = Some(at_ms);
        reading.said = join_nonempty(&[signer, &self.moment(at_ms)]);
    }

    /// A moment as a person reads it here: the time, and the day where it is not today.
    pub(crate) fn moment(&self, at_ms: i64) -> String {
        let offset = self.context.utc_offset_minutes;
        let (day, today) = (moment::day(at_ms, offset), moment::day(self.context.now_ms, offset));
        let clock = moment::clock(at_ms, offset);
        if day == today { clock } else { format!("{day} {clock}") }
    }

    /// The same to the second, where two that lie near each other are to be told apart.
    pub(crate) fn exact_moment(&self, at_ms: i64) -> String {
        let offset = self.context.utc_offset_minutes;
        let (day, today) = (moment::day(at_ms, offset), moment::day(self.context.now_ms, offset));
        let clock = moment::exact_clock(at_ms, offset);
        if day == today { clock } else { format!("{day} {clock}") }
    }

    /// The time for the book.
    pub(crate) fn now(&self) -> Now {
        Now { ms: self.context.now_ms, utc_offset_minutes: self.context.utc_offset_minutes }
    }

    /// The id that a shell named.
    ///
    /// # Errors
    /// [`Problem`] naming `field` where it is not an id.
    pub(crate) fn id(&self, field: &str, text: &str) -> Result<Id, Problem> {
        text.parse().map_err(|_| Problem::new(Code::Unknown, field, self.phrase("screen-unknown", &[])))
    }

    /// The `n`th new id of this action.
    pub(crate) fn fresh(&self, n: u32) -> Id {
        let digest: [u8; 32] =
            Sha256::new().chain_update(&self.context.entropy).chain_update(n.to_be_bytes()).finalize().into();
        let (id, _) = digest.split_at(16);
        Id::from_bytes(id.try_into().unwrap_or_default())
    }

    /// Who speaks, for the book.
    pub(crate) fn author(&self) -> Author {
        Author { signer: self.context.signer.clone(), program: env!("CARGO_PKG_VERSION").to_owned() }
    }

    /// A length that somebody typed: its value and the unit it was typed in.
    ///
    /// # Errors
    /// [`Problem`] naming `field`, saying what was typed and what is allowed.
    pub(crate) fn typed(&self, field: &str, text: &str) -> Result<(Length, Unit), Problem> {
        let say = |code, key: &str, args: &[(&str, Arg<'_>)]| Problem::new(code, field, self.phrase(key, args));
        let written = self.reader.read(text).map_err(|error| match error.kind {
            ParseErrorKind::Empty => say(Code::Missing, "figure-missing", &[]),
            kind => {
                let code = if kind == ParseErrorKind::TooBig { Code::TooBig } else { Code::Length };
                let said =
                    say(code, misread(kind), &[("text", text.into()), ("position", (error.position + 1).into())]);
                // Words are the ear's to take; how the keys write them is told.
                match heard(text, self.language) {
                    Some(typed) if code == Code::Length => {
                        let typed = self.phrase("figure-length-typed", &[("text", typed.into())]);
                        Problem { text: format!("{} {typed}", said.text), ..said }
                    }
                    _ => said,
                }
            }
        })?;
        let too_far = || say(Code::TooBig, "figure-too-far", &[]);
        Ok((written.exact.to_length().ok_or_else(too_far)?, written.unit))
    }
}

/// What is remembered, and what crosses to a shell, is written as in English.
fn remembered(reader: Reader, text: &str) -> Option<WrittenLength> {
    Reader { language: Language::English, ..reader }.read(text).ok()
}

/// Reads the context, and puts into its language why something could not be done.
pub(crate) fn in_language<T>(context: &Context, work: impl FnOnce(&Terms<'_>) -> Result<T>) -> Result<T, Problem> {
    let terms = Terms::read(context)?;
    work(&terms).map_err(|trouble| trouble.into_problem(terms.phrases))
}
