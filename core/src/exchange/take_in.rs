//! Take in: what a colleague handed over is looked at first, its devices are compared, then it comes into the book.

use std::path::Path;

use crate::book::Book;
use crate::phrases::key;
use crate::store::{AHEAD, DeviceId, ExchangeOffer, Preview, StoreError};
use crate::views::{DifferencesView, SenderLine, TakeInView};

use super::{copied, differences, fault};
use crate::forms::context::Terms;
use crate::forms::error::Result;

pub(crate) fn view(book: &Book, terms: &Terms<'_>, file: &str) -> Result<TakeInView> {
    let preview = book.store().preview(&read(terms, file)?, None, terms.now())?;
    let Preview { senders, refused, .. } = &preview;
    let ready = refused.is_empty() && preview.new > 0 && senders.iter().all(|sender| sender.trusted);
    let senders = senders.iter().map(|sender| SenderLine {
        device: sender.device.to_string(),
        words: sender.device.words(),
        said: sender.text(terms.phrases),
        trusted: sender.trusted,
    });
    Ok(TakeInView {
        file: file.to_owned(),
        refused: preview.refused_lines(terms.phrases),
        lines: [preview.counted_lines(terms.phrases), preview.change_lines(terms.phrases)].concat(),
        senders: senders.collect(),
        ahead: preview.ahead_line(terms.phrases).unwrap_or_default(),
        ready,
    })
}

/// What a colleague's file holds; what is wrong with it is told by its name.
fn read(terms: &Terms<'_>, file: &str) -> Result<ExchangeOffer> {
    let file = Path::new(file);
    ExchangeOffer::read(file)
        .map_err(|error| fault::of_file(terms, (file, fault::file_name(file)), key("take-in-damaged"), error))
}

/// Notes that somebody has compared the words of a device with those that it shows of itself.
pub(crate) fn trust(book: &mut Book, terms: &Terms<'_>, device: &str) -> Result<()> {
    Ok(book.store_mut().trust(DeviceId(terms.id("device", device)?))?)
}

/// Takes a file in; gives what was answered differently, and that it was done; none where that cannot be shown.
pub(crate) fn take_in(
    book: &mut Book,
    terms: &Terms<'_>,
    file: &str,
    even_ahead: bool,
) -> Result<Option<DifferencesView>> {
    let now = terms.now();
    let offer = read(terms, file)?;
    let copies = book.store().backups_folder().ok_or(StoreError::NoFolder)?.to_owned();
    let latest = if even_ahead { i64::MAX } else { now.ms.saturating_add(AHEAD) };
    let (taken, before) = book.store_mut().take_in_offer(&offer, None, latest, copies, now)?;
    let args = [("count", taken.new.into()), ("when", terms.exact_moment(before.ms).into())];
    let mut done = vec![terms.phrase("take-in-done", &args)];
    done.extend(book.store().standing(&offer).map(|standing| standing.text(terms.phrases)).ok());
    let _ = copied::kept_one(book);
    Ok(differences::view(book, terms, done).ok())
}
