//! Backups, going back to one, and a colleague's file.

use std::io::Write as _;
use std::path::Path;

use lapwright::store::{AHEAD, DeviceId, ExchangeOffer, Id, Now, OpenOptions, Overwrite, Preview, backups};

use super::{Session, out};
use crate::book::store_options;
use crate::fault::Fault;

impl Session<'_> {
    fn now(&self) -> Result<Now, Fault> {
        let context = self.book.context()?;
        Ok(Now { ms: context.now_ms, utc_offset_minutes: context.utc_offset_minutes })
    }

    fn copies(&self) -> OpenOptions {
        store_options(&self.book.path)
    }

    /// Says sentences, or the same as JSON.
    fn say_lines(&self, lines: &[String]) -> Result<(), Fault> {
        if self.options.json {
            out(&format!("{:#}", serde_json::json!({ "lines": lines })))
        } else {
            out(&lines.join("\n"))
        }
    }

    /// The book and its photos as one file, checked.
    pub(super) fn pack(&self, file: &Path, force: bool) -> Result<(), Fault> {
        let overwrite = if force { Overwrite::PlainFiles } else { Overwrite::Never };
        let packed = self.book.inner.store().pack(file, overwrite, self.now()?).map_err(|error| error.at(file))?;
        self.say_lines(&[format!("{} {}", file.display(), packed.text(self.phrases()?))])
    }

    /// The copies that the book keeps of itself, newest first.
    pub(super) fn backups(&self) -> Result<(), Fault> {
        let folder = self.copies().backups.unwrap_or_default();
        let kept = backups(&folder).map_err(|error| error.at(&folder))?;
        let lines: Vec<String> = kept.iter().map(|backup| backup.path.display().to_string()).collect();
        if lines.is_empty() && !self.options.json {
            return out(&self.phrases()?.phrase("cli-no-backups", &[]));
        }
        self.say_lines(&lines)
    }

    /// What going back to a copy would do.
    pub(super) fn preview_restore(&self, file: &Path) -> Result<(), Fault> {
        let preview = self.book.inner.store().preview_restore(file).map_err(|error| error.at(file))?;
        let mut lines = preview.lines(self.phrases()?);
        lines.push(self.phrases()?.phrase("cli-yes", &[]));
        self.say_lines(&lines)
    }

    /// Puts a copy in the place of the book.
    pub(super) fn restore(&mut self, file: &Path) -> Result<(), Fault> {
        let now = self.now()?;
        let aside = self.book.inner.restore(file, now).map_err(|error| error.at(file))?;
        let args = [("path", aside.display().to_string().into())];
        self.say_lines(&[self.phrases()?.phrase("store-restored", &args)])
    }

    /// The words of this device, for somebody else to compare.
    pub(super) fn words(&mut self) -> Result<(), Fault> {
        let words = self.book.inner.store_mut().words()?;
        self.say_lines(&[self.phrases()?.phrase("store-words", &[("words", words.into())])])
    }

    pub(super) fn hand_over(&mut self, house: &str, file: &Path, new: bool, force: bool) -> Result<(), Fault> {
        let house: Id = self.job(house)?.parse().map_err(|_| Fault::unknown("house", house, &[]))?;
        let overwrite = if force { Overwrite::PlainFiles } else { Overwrite::Never };
        let handed =
            self.book.inner.store_mut().hand_over(house, file, !new, overwrite).map_err(|error| error.at(file))?;
        self.say_lines(&[handed.text(self.phrases()?)])
    }

    /// Looks at a colleague's file; takes it in where that is asked.
    pub(super) fn take_in(&mut self, file: &Path, how: &TakingIn) -> Result<(), Fault> {
        let house = how.house.as_deref().map(|house| self.offered(house)).transpose()?;
        let (now, phrases) = (self.now()?, self.phrases()?);
        let offer = ExchangeOffer::read(file).map_err(|error| error.at(file))?;
        let preview = self.book.inner.store().preview(&offer, house, now)?;
        let mut lines = Vec::new();
        if let Some(words) = &how.trust {
            let device = named_by(&preview, words)?;
            self.book.inner.store_mut().trust(device)?;
            lines.push(phrases.phrase("store-trusted", &[("words", device.words().into())]));
        }
        if !how.yes {
            // Whose words were compared just now is no stranger any more.
            let trusted = how.trust.is_some();
            let preview = if trusted { self.book.inner.store().preview(&offer, house, now)? } else { preview };
            lines.extend(preview.lines(phrases));
            lines.push(phrases.phrase("cli-yes", &[]));
            return self.say_lines(&lines);
        }
        let latest = if how.even_ahead { i64::MAX } else { now.ms.saturating_add(AHEAD) };
        let copies = self.copies().backups.unwrap_or_default();
        let store = self.book.inner.store_mut();
        let (taken, copy) = store.take_in_offer(&offer, house, latest, copies, now).inspect_err(|_| {
            // Which answer of whom is wrong is said by name.
            let _ = writeln!(std::io::stderr(), "{}", preview.lines(phrases).join("\n"));
        })?;
        let standing = self.book.inner.store().standing(&offer)?;
        lines.extend([taken.text(&copy, phrases), standing.text(phrases)]);
        self.say_lines(&lines)
    }

    /// A house of this book by name, or one of the other by its id.
    fn offered(&self, house: &str) -> Result<Id, Fault> {
        house.parse().or_else(|_| self.job(house)?.parse().map_err(|_| Fault::unknown("house", house, &[])))
    }
}

/// How a colleague's file is taken in.
#[derive(Clone, Debug, Default, clap::Args)]
pub(crate) struct TakingIn {
    #[arg(long, value_name = "HOUSE")]
    house: Option<String>,
    #[arg(long)]
    yes: bool,
    #[arg(long, value_name = "WORDS")]
    trust: Option<String>,
    #[arg(long)]
    even_ahead: bool,
}

/// The device in a file that somebody read these words off.
fn named_by(preview: &Preview, words: &str) -> Result<DeviceId, Fault> {
    let words = words.split_whitespace().map(str::to_lowercase).collect::<Vec<_>>().join(" ");
    let device = preview.senders.iter().map(|sender| sender.device).find(|device| device.words() == words);
    let known = || preview.senders.iter().map(|sender| sender.device.words()).collect::<Vec<_>>();
    device.ok_or_else(|| Fault::unknown("trust", &words, &known()))
}
