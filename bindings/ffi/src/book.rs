use std::sync::{Mutex, MutexGuard, PoisonError};

use lapwright::book;
use lapwright::phrases::{Language, Phrases};
use lapwright::screens;
use lapwright::store::{Account, BadId, Lost, Now, OpenOptions, Overwrite, Store, StoreError};
use lapwright::views::{
    Action, Context, Drawing, Frame, FrameView, Outcome, Place, Problem, Remembered, Subject, View,
};

use crate::Refusal;

/// What was found wrong with a book when it was opened, and what became of it.
#[derive(Clone, Debug, PartialEq, Eq, uniffi::Record)]
pub struct BookAccount {
    /// The account in sentences, in the reader's language.
    pub lines: Vec<String>,
    /// Where the file that was found is now.
    pub kept: Option<String>,
    /// How many answers the book holds.
    pub saved: u64,
    /// How many accepted answers are known to be lost.
    pub lost: u64,
}

/// An open book. One at a time uses it: call it from one background thread.
#[derive(uniffi::Object)]
pub struct Book {
    book: Mutex<book::Book>,
}

#[uniffi::export]
impl Book {
    /// Opens the book at `path`, or makes one where nothing is and nothing was; `copies` is the folder of this book's own
    /// copies. A book that is damaged, missing or older than it was left is put together again: [`Book::accounts`] tell. What
    /// the book itself remembers of its language cannot be read where it cannot be opened: then it is said in `language`, `en`
    /// or `es`; in any other, in English.
    ///
    /// # Errors
    /// [`Refusal`] with the code `book` where it is not a book, is newer, or cannot be read.
    #[uniffi::constructor(default(language = ""))]
    pub fn open(path: &str, copies: Option<String>, language: &str) -> Result<Self, Refusal> {
        let options = OpenOptions { backups: copies.map(Into::into) };
        let (book, _) = book::Book::open(path, &options).map_err(|error| refused(&error, language))?;
        Ok(Self::of(book))
    }

    /// Checks a book that is not open from end to end, puts it right from its own log and its copies, and opens it; the
    /// file as it was is kept, and [`Book::accounts`] say what was done.
    ///
    /// # Errors
    /// As [`Book::open`]; and where the book is open.
    #[uniffi::constructor(default(language = ""))]
    pub fn repair(path: &str, copies: Option<String>, language: &str) -> Result<Self, Refusal> {
        let options = OpenOptions { backups: copies.map(Into::into) };
        let opened = Store::repair(path, &options).map_err(|error| refused(&error, language))?;
        Ok(Self::of(opened.store.into()))
    }

    /// What was found wrong with the book and nobody has acknowledged, oldest first: to be shown until somebody does.
    ///
    /// # Errors
    /// [`Refusal`] with the code `book` where it cannot be read.
    pub fn accounts(&self, context: &Context) -> Result<Vec<BookAccount>, Refusal> {
        let phrases = Phrases::for_language(Language::from_code(&context.language).unwrap_or_default());
        let told = |account: &Account| BookAccount {
            lines: account.lines(phrases),
            kept: account.kept.clone(),
            saved: account.saved,
            lost: account.lost.iter().map(Lost::count).sum(),
        };
        let book = self.book();
        Ok(said(&book, book.store().accounts())?.iter().map(told).collect())
    }

    /// Drops the accounts: somebody has read them.
    ///
    /// # Errors
    /// [`Refusal`] with the code `book` where it cannot be written; they are still there.
    pub fn acknowledge(&self) -> Result<(), Refusal> {
        let mut book = self.book();
        let done = book.store_mut().acknowledge();
        said(&book, done)
    }

    /// Everything that is wrong with the book, a line each, in words for who repairs it; none where it is sound.
    ///
    /// # Errors
    /// [`Refusal`] with the code `book` where it cannot be read.
    pub fn check(&self) -> Result<Vec<String>, Refusal> {
        let book = self.book();
        Ok(said(&book, book.store().check())?.lines().map(str::to_owned).collect())
    }

    /// What this device remembers: who holds it and how it speaks.
    pub fn remembered(&self) -> Remembered {
        screens::remembered(&self.book())
    }

    /// Takes the language of the phone, `en` or `es`, where nobody has chosen one yet; any other changes nothing.
    ///
    /// # Errors
    /// [`Refusal`] with the code `book` where it cannot be written.
    pub fn speak_first(&self, language: &str) -> Result<(), Refusal> {
        screens::speak_first(&mut self.book(), language).map_err(|error| refused(&error, language))
    }

    /// What stands round every screen: the same until the context's language or unit changes.
    ///
    /// # Errors
    /// [`Refusal`] where the context is not among its choices.
    pub fn frame(&self, context: &Context) -> Result<FrameView, Refusal> {
        Ok(screens::frame(context)?)
    }

    /// What a screen shows.
    ///
    /// # Errors
    /// [`Refusal`] where the place names nothing in the book, or something else must be answered first.
    pub fn view(&self, context: &Context, place: &Place) -> Result<View, Refusal> {
        Ok(screens::view(&self.book(), context, place)?)
    }

    /// Goes to a screen: what it shows. The signer is there from now on, and finds it again when the phone comes back to
    /// them.
    ///
    /// # Errors
    /// [`Refusal`] as for a view, or where the book cannot be written; the signer is where they were.
    pub fn go(&self, context: &Context, place: &Place) -> Result<View, Refusal> {
        let mut book = self.book();
        let view = screens::view(&book, context, place)?;
        screens::remember_place(&mut book, context, place)?;
        Ok(view)
    }

    /// Carries out what was tapped: one accepted answer, and the whole view to show then. The signer is at its place from
    /// now on, but for settings: they are about the phone.
    ///
    /// # Errors
    /// [`Refusal`]; nothing was changed.
    pub fn act(&self, context: &Context, action: &Action) -> Result<Outcome, Refusal> {
        let mut book = self.book();
        let outcome = screens::act(&mut book, context, action)?;
        if !matches!(action, Action::SettingsKind { .. }) {
            // The answer is kept: an error now would say that nothing was changed.
            let _ = screens::remember_place(&mut book, context, &outcome.place);
        }
        Ok(outcome)
    }

    /// What a screen draws, laid out for a frame: asked for again where the view's revision or the frame changed.
    ///
    /// # Errors
    /// [`Refusal`] where the subject names nothing in the book, or something else must be answered first.
    pub fn drawing(&self, context: &Context, subject: &Subject, frame: &Frame) -> Result<Drawing, Refusal> {
        Ok(screens::drawing(&self.book(), context, subject, frame)?)
    }

    /// What a phone heard, as what would have been typed into the field.
    ///
    /// # Errors
    /// [`Refusal`] saying what was heard, where it is no length.
    pub fn heard(&self, context: &Context, text: &str) -> Result<String, Refusal> {
        Ok(screens::heard(context, text)?)
    }

    /// Writes a checked copy of the book to `path`, where nothing is or an older copy of this book, and remembers `now_ms` as
    /// the time of the last copy.
    ///
    /// # Errors
    /// [`Refusal`] with the code `book`; nothing was overwritten.
    pub fn copy(&self, path: &str, now_ms: i64) -> Result<(), Refusal> {
        let mut book = self.book();
        let done = screens::copy(&mut book, now_ms, path);
        said(&book, done)
    }

    /// Writes a checked copy of the book into `folder` under the name of the moment, if something was answered since the last
    /// one, and thins this book's copies there by day, week and month; gives the path of the newest. Where that fails, the houses
    /// say so, too, until a copy can be kept.
    ///
    /// # Errors
    /// [`Refusal`] with the code `book`.
    pub fn keep_copy(&self, folder: &str, now_ms: i64) -> Result<String, Refusal> {
        let mut book = self.book();
        let kept = screens::keep_copy(&mut book, folder, Now { ms: now_ms, utc_offset_minutes: 0 });
        Ok(said(&book, kept)?.path.display().to_string())
    }

    /// Writes a photo for others to `path`: without the place where it was taken.
    ///
    /// # Errors
    /// [`Refusal`] with the code `unknown` for what is no id, and with `book` where the photo is not here.
    pub fn export_photo(&self, photo: &str, path: &str) -> Result<(), Refusal> {
        let photo = photo.parse().map_err(|error: BadId| Refusal::Refused {
            code: "unknown".to_owned(),
            field: "photo".to_owned(),
            text: error.to_string(),
        })?;
        let book = self.book();
        said(&book, book.store().photo_export(photo, path, Overwrite::PlainFiles))
    }
}

impl Book {
    pub(crate) fn of(book: book::Book) -> Self {
        Self { book: Mutex::new(book) }
    }

    /// A panic in another call leaves the book as its last transaction left it, so it can be used on.
    pub(crate) fn book(&self) -> MutexGuard<'_, book::Book> {
        self.book.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl From<Problem> for Refusal {
    fn from(problem: Problem) -> Self {
        Self::Refused { code: problem.code, field: problem.field, text: problem.text }
    }
}

/// What an open book did, or what its store refused, in the language that it speaks.
fn said<T>(book: &book::Book, done: Result<T, StoreError>) -> Result<T, Refusal> {
    done.map_err(|error| refused(&error, &screens::remembered(book).language))
}

/// What the store refused, in a language by its code; in one that is none of ours, in English.
fn refused(error: &StoreError, language: &str) -> Refusal {
    let phrases = Phrases::for_language(Language::from_code(language).unwrap_or_default());
    Refusal::Refused { code: "book".to_owned(), field: String::new(), text: error.text(phrases) }
}
