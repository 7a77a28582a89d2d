//! The book that the commands work on, and who speaks to it.

use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};

use chrono::{DateTime, Local, Offset as _, TimeZone as _};
use lapwright::book;
use lapwright::measure::{Reader, Show};
use lapwright::phrases::{Language, Phrases};
use lapwright::screens;
use lapwright::store::{OpenOptions, Store, create_private_folder};
use lapwright::views::{Action, Context, Outcome, Place, View};

use crate::fault::Fault;
use crate::locale;
use crate::options::Options;

/// An open book with the options that the command was given.
pub(crate) struct Book {
    /// The book itself.
    pub(crate) inner: book::Book,
    /// Where it lies.
    pub(crate) path: PathBuf,
    options: Options,
}

impl Book {
    /// Opens the book of the options, or the user's own; makes it where there is none.
    pub(crate) fn open(options: &Options) -> Result<Self, Fault> {
        Self::open_at(&chosen(options)?, options)
    }

    /// Opens a book at a place.
    pub(crate) fn open_at(path: &Path, options: &Options) -> Result<Self, Fault> {
        if let Some(folder) = path.parent().filter(|folder| !folder.as_os_str().is_empty()) {
            create_private_folder(folder).map_err(|error| Fault::file(folder, &error))?;
        }
        Self::of(Store::open(path, &store_options(path)).map_err(|error| error.at(path))?.store, path, options)
    }

    /// Checks the book of the options and puts it right.
    pub(crate) fn repair(options: &Options) -> Result<Self, Fault> {
        let path = chosen(options)?;
        Self::of(Store::repair(&path, &store_options(&path)).map_err(|error| error.at(&path))?.store, &path, options)
    }

    fn of(store: Store, path: &Path, options: &Options) -> Result<Self, Fault> {
        let book = Self { inner: store.into(), path: path.to_owned(), options: options.clone() };
        locale::choose(Language::from_code(&book.context()?.language).unwrap_or_default());
        Ok(book)
    }

    /// Signs as somebody, where nobody else was named.
    pub(crate) fn sign_as(&mut self, signer: &str) {
        self.options.signer = Some(signer.to_owned());
    }

    /// The texts in the language that is spoken here.
    pub(crate) fn phrases(&self) -> Result<&'static Phrases, Fault> {
        let language = Language::from_code(&self.context()?.language).unwrap_or_default();
        Ok(Phrases::for_language(language))
    }

    /// Who speaks, when, and how: what the device remembers, unless an option says otherwise.
    pub(crate) fn context(&self) -> Result<Context, Fault> {
        let remembered = screens::remembered(&self.inner);
        let pick = |option: &Option<String>, kept: String| option.clone().unwrap_or(kept);
        // The first choice of a setting is not a choice that somebody made: before one, the locale speaks.
        let language = pick(&self.options.language, self.inner.setting(&book::Setting::Language)?.unwrap_or_default());
        Ok(Context {
            now_ms: now_ms(),
            utc_offset_minutes: utc_offset_minutes(),
            signer: pick(&self.options.signer, remembered.signer),
            language: if language.is_empty() { locale::language().code().to_owned() } else { language },
            show: pick(&self.options.show, remembered.show),
            division: pick(&self.options.division, remembered.division),
            entropy: entropy()?,
        })
    }

    /// Reads lengths as every answer is read: in the unit and the language of the book.
    pub(crate) fn reader(&self) -> Result<Reader, Fault> {
        let context = self.context()?;
        let language = Language::from_code(&context.language).unwrap_or_default();
        Ok(Reader { unit: Show::from_code(&context.show).map(Show::unit), language })
    }

    /// What a screen shows.
    pub(crate) fn view(&self, place: &Place) -> Result<View, Fault> {
        Ok(screens::view(&self.inner, &self.context()?, place)?)
    }

    /// Keeps everything that `work` writes, or, where it fails, nothing.
    pub(crate) fn together<T>(&mut self, work: impl FnOnce(&mut Self) -> Result<T, Fault>) -> Result<T, Fault> {
        self.inner.begin_together();
        let done = work(self);
        let ended = self.inner.end_together(done.is_ok());
        let done = done?;
        ended?;
        Ok(done)
    }

    /// Carries out what was said, in one accepted answer.
    pub(crate) fn act(&mut self, action: &Action) -> Result<Outcome, Fault> {
        let context = self.context()?;
        Ok(screens::act(&mut self.inner, &context, action)?)
    }
}

/// The folder for the user's own data.
pub(crate) fn data_folder() -> Result<PathBuf, Fault> {
    dirs::data_dir().map(|folder| folder.join("lapwright")).ok_or_else(Fault::no_folder)
}

/// The file of the options, or the user's own book.
fn chosen(options: &Options) -> Result<PathBuf, Fault> {
    match &options.book {
        Some(path) => Ok(path.clone()),
        None => Ok(data_folder()?.join("book.lapwright")),
    }
}

/// `path` with something put behind its name.
pub(crate) fn beside(path: &Path, tail: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(tail);
    PathBuf::from(name)
}

/// What lies beside a book of the terminal and holds its copies. One folder a book: a copy of another book must never take its
/// place.
pub(crate) const COPIES: &str = ".copies";

/// How a book of the terminal is opened.
pub(crate) fn store_options(path: &Path) -> OpenOptions {
    OpenOptions { backups: Some(beside(path, COPIES)) }
}

/// What the clock says, in milliseconds since 1970 UTC: less than none where it stands before that.
fn now_ms() -> i64 {
    let ms = |duration: std::time::Duration| i64::try_from(duration.as_millis()).unwrap_or(i64::MAX);
    match SystemTime::now().duration_since(UNIX_EPOCH) {
        Ok(since) => ms(since),
        Err(before) => -ms(before.duration()),
    }
}

fn utc_offset_minutes() -> i32 {
    let now = DateTime::from_timestamp_millis(now_ms()).unwrap_or_default();
    Local.offset_from_utc_datetime(&now.naive_utc()).fix().local_minus_utc() / 60
}

fn entropy() -> Result<Vec<u8>, Fault> {
    let mut bytes = vec![0; 16];
    getrandom::fill(&mut bytes).map_err(|error| Fault::other(error.to_string()))?;
    Ok(bytes)
}
