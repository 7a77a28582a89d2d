//! Backups, going back to one, and a colleague's file.

use lapwright::phrases::{Language, Phrases};
use lapwright::store::{
    self, AHEAD, BadId, DeviceId, Id, Now, Offer, OpenOptions, Overwrite, Preview, Store, StoreError,
};
use lapwright::views::Context;

use crate::{Book, Refusal};

/// What taking in a colleague's file would do.
#[derive(Clone, Debug, PartialEq, Eq, uniffi::Record)]
pub struct TakeInPreview {
    /// It in sentences, in the reader's language.
    pub lines: Vec<String>,
    /// How many answers would be new.
    pub new: u64,
    /// Whether something in it is altered or forged: then nothing of it can be taken in.
    pub refused: bool,
    /// Whether an answer in it is dated more than a day ahead: to be asked about.
    pub ahead: bool,
    /// Devices whose words nobody has compared yet: to be done first.
    pub strangers: Vec<Stranger>,
}

/// A device whose words are to be compared once with those that it shows of itself.
#[derive(Clone, Debug, PartialEq, Eq, uniffi::Record)]
pub struct Stranger {
    /// Its id, for [`Book::trust`].
    pub device: String,
    /// Its four words.
    pub words: String,
    /// Whose answers come from it, in a sentence.
    pub said: String,
}

/// A copy that a book keeps of itself.
#[derive(Clone, Debug, PartialEq, Eq, uniffi::Record)]
pub struct BookCopy {
    /// Its file.
    pub path: String,
    /// When it was made, in milliseconds since 1970-01-01 UTC.
    pub at_ms: i64,
}

/// The copies in a folder, newest first.
///
/// # Errors
/// [`Refusal`] with the code `book` where the folder cannot be read.
#[uniffi::export]
pub fn book_copies(folder: &str) -> Result<Vec<BookCopy>, Refusal> {
    let told = |copy: store::Backup| BookCopy { path: copy.path.display().to_string(), at_ms: copy.ms };
    Ok(store::backups(folder)?.into_iter().map(told).collect())
}

fn phrases(context: &Context) -> &'static Phrases {
    Phrases::for_language(Language::from_code(&context.language).unwrap_or_default())
}

fn now(context: &Context) -> Now {
    Now { ms: context.now_ms, utc_offset_minutes: context.utc_offset_minutes }
}

fn id(field: &str, text: &str) -> Result<Id, Refusal> {
    text.parse().map_err(|error: BadId| Refusal::Refused {
        code: "unknown".to_owned(),
        field: field.to_owned(),
        text: error.to_string(),
    })
}

/// Says in the reader's language why not.
fn said(context: &Context) -> impl Fn(StoreError) -> Refusal {
    let phrases = phrases(context);
    move |error| Refusal::Refused { code: "book".to_owned(), field: String::new(), text: error.text(phrases) }
}

fn told(preview: &Preview, phrases: &Phrases) -> TakeInPreview {
    let strangers = preview.senders.iter().filter(|sender| !sender.trusted).map(|sender| Stranger {
        device: sender.device.to_string(),
        words: sender.device.words(),
        said: sender.text(phrases),
    });
    TakeInPreview {
        lines: preview.lines(phrases),
        new: preview.new as u64,
        refused: !preview.refused.is_empty(),
        ahead: preview.ahead.is_some(),
        strangers: strangers.collect(),
    }
}

#[uniffi::export]
impl Book {
    /// Puts a copy, or a backup made by hand, in the place of the book at `path`, which is not open, and opens it. Later
    /// sign-offs stay; a copy of the book as it was goes into `copies` before.
    ///
    /// # Errors
    /// [`Refusal`] with the code `book`; the book is as it was.
    #[uniffi::constructor]
    pub fn restore(path: &str, copies: &str, copy: &str, context: &Context) -> Result<Self, Refusal> {
        let options = OpenOptions { backups: Some(copies.into()) };
        let (opened, _) = Store::restore(path, copy, &options, now(context)).map_err(said(context))?;
        Ok(Self::of(opened.store.into()))
    }

    /// What going back to a copy would do, in sentences; changes nothing.
    ///
    /// # Errors
    /// [`Refusal`] with the code `book` where it is no sound copy of this book.
    pub fn preview_restore(&self, copy: &str, context: &Context) -> Result<Vec<String>, Refusal> {
        let restoring = self.book().store().preview_restore(copy).map_err(said(context))?;
        Ok(restoring.lines(phrases(context)))
    }

    /// Writes the book and its photos into one file at `path`, checked; gives what is in it, in a sentence.
    ///
    /// # Errors
    /// [`Refusal`] with the code `book`; a book is never written over.
    pub fn pack(&self, path: &str, context: &Context) -> Result<String, Refusal> {
        let packed = self.book().store().pack(path, Overwrite::PlainFiles, now(context)).map_err(said(context))?;
        Ok(packed.text(phrases(context)))
    }

    /// The four words of this device, for a colleague to compare.
    ///
    /// # Errors
    /// [`Refusal`] with the code `book` where the book cannot be written.
    pub fn words(&self) -> Result<String, Refusal> {
        Ok(self.book().store_mut().words()?)
    }

    /// Notes that somebody has compared the words of a device.
    ///
    /// # Errors
    /// [`Refusal`] with the code `unknown` for what is no id, and `book` where it cannot be noted.
    pub fn trust(&self, device: &str) -> Result<(), Refusal> {
        let device = DeviceId(id("device", device)?);
        Ok(self.book().store_mut().trust(device)?)
    }

    /// Writes the answers of a house to `path` for a colleague's phone: those since the last such file, or `all`; gives how
    /// many, in a sentence.
    ///
    /// # Errors
    /// [`Refusal`] with the code `unknown` for what is no id, and `book` where the file cannot be written.
    pub fn hand_over(&self, house: &str, path: &str, all: bool, context: &Context) -> Result<String, Refusal> {
        let house = id("house", house)?;
        let handed =
            self.book().store_mut().hand_over(house, path, all, Overwrite::PlainFiles).map_err(said(context))?;
        Ok(handed.text(phrases(context)))
    }

    /// Looks at what a colleague handed over, a copy of a book or a house; changes nothing.
    ///
    /// # Errors
    /// [`Refusal`] with the code `book` where it is neither, or was cut or changed.
    pub fn preview_take_in(&self, file: &str, context: &Context) -> Result<TakeInPreview, Refusal> {
        let offer = Offer::read(file).map_err(said(context))?;
        let preview = self.book().store().preview(&offer, None, now(context)).map_err(said(context))?;
        Ok(told(&preview, phrases(context)))
    }

    /// Takes in what a colleague handed over, all or nothing, with a copy put into `copies` before; gives what came of it,
    /// in sentences. `even_ahead` takes in answers whose clock is more than a day ahead.
    ///
    /// # Errors
    /// [`Refusal`] with the code `book`; nothing was taken in.
    pub fn take_in(
        &self,
        file: &str,
        copies: &str,
        even_ahead: bool,
        context: &Context,
    ) -> Result<Vec<String>, Refusal> {
        let (phrases, now) = (phrases(context), now(context));
        let offer = Offer::read(file).map_err(said(context))?;
        let latest = if even_ahead { i64::MAX } else { now.ms.saturating_add(AHEAD) };
        let mut book = self.book();
        let (taken, copy) = book.store_mut().take_in_offer(&offer, None, latest, copies, now).map_err(said(context))?;
        let standing = book.store().standing(&offer).map_err(said(context))?;
        Ok(vec![taken.text(&copy, phrases), standing.text(phrases)])
    }
}
