use std::sync::{Mutex, MutexGuard, PoisonError};

use lapwright::book;
use lapwright::screens;
use lapwright::store::{BadId, Now, OpenOptions, StoreError};
use lapwright::views::{
    Action, Context, Drawing, Frame, FrameView, Outcome, Place, Problem, Remembered, Subject, View,
};

use crate::Refusal;

/// An open book. One at a time uses it: call it from one background thread.
#[derive(uniffi::Object)]
pub struct Book {
    book: Mutex<book::Book>,
}

#[uniffi::export]
impl Book {
    /// Opens the book at `path`, or makes one where nothing is; `copies` is the folder of this book's own copies.
    ///
    /// # Errors
    /// [`Refusal`] with the code `book` where it is not a book, is newer, or cannot be read.
    #[uniffi::constructor]
    pub fn open(path: &str, copies: Option<String>) -> Result<Self, Refusal> {
        let options = OpenOptions { backups: copies.map(Into::into) };
        let (book, _) = book::Book::open(path, &options)?;
        Ok(Self { book: Mutex::new(book) })
    }

    /// What this device remembers: who holds it and how it speaks.
    pub fn remembered(&self) -> Remembered {
        screens::remembered(&self.book())
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
        Ok(screens::copy(&mut self.book(), now_ms, path)?)
    }

    /// Writes a checked copy of the book into `folder` under the name of the moment, and thins this book's copies there by
    /// day, week and month; gives its path.
    ///
    /// # Errors
    /// [`Refusal`] with the code `book`.
    pub fn keep_copy(&self, folder: &str, now_ms: i64) -> Result<String, Refusal> {
        let copy = self.book().store().backup(folder, Now { ms: now_ms, utc_offset_minutes: 0 })?;
        Ok(copy.path.display().to_string())
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
        Ok(self.book().store().photo_export(photo, path)?)
    }
}

impl Book {
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

impl From<StoreError> for Refusal {
    fn from(error: StoreError) -> Self {
        Self::Refused { code: "book".to_owned(), field: String::new(), text: error.to_string() }
    }
}
