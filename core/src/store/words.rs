//! What the store has to say, in the reader's language.

use chrono::DateTime;

use super::StoreError;
use super::account::{Account, Found, Known};
use crate::phrases::Phrases;

impl StoreError {
    /// What is wrong and what is allowed.
    pub fn text(&self, phrases: &Phrases) -> String {
        let path = |key, path: &std::path::Path| phrases.phrase(key, &[("path", path.display().to_string().into())]);
        match self {
            Self::NewerBook { needs, reads } => {
                phrases.phrase("store-newer", &[("needs", (*needs).into()), ("reads", (*reads).into())])
            }
            Self::NotABook(at) => path("store-not-a-book", at),
            Self::InTheWay(at) => path("store-in-the-way", at),
            Self::Exists(at) => path("store-exists", at),
            Self::Damaged(why) => phrases.phrase("store-damaged", &[("why", why.as_str().into())]),
            Self::Busy => phrases.phrase("store-busy", &[]),
            Self::DiskFull => phrases.phrase("store-full", &[]),
            Self::Disk(why) => phrases.phrase("store-disk", &[("why", why.as_str().into())]),
            Self::Io(error) => phrases.phrase("store-disk", &[("why", error.to_string().into())]),
            Self::ReadOnly => phrases.phrase("store-read-only", &[]),
            other => phrases.phrase("store-other", &[("why", other.to_string().into())]),
        }
    }
}

impl Found {
    const fn key(self) -> &'static str {
        match self {
            Self::Damaged => "store-found-damaged",
            Self::Missing => "store-found-missing",
            Self::Older => "store-found-older",
            Self::Another => "store-found-another",
        }
    }
}

impl Account {
    /// The account in sentences: what was found, what was kept and saved, and what was lost, of when and by whom.
    pub fn lines(&self, phrases: &Phrases) -> Vec<String> {
        let mut lines = vec![phrases.phrase(self.found.key(), &[])];
        if let Some(kept) = &self.kept {
            lines.push(phrases.phrase("store-kept", &[("path", kept.as_str().into())]));
        }
        if let Some(copy) = &self.copy {
            let args = [("count", count(self.from_copies).into()), ("path", copy.as_str().into())];
            lines.push(phrases.phrase("store-from-copy", &args));
        }
        let (when, who) = told(phrases, self.newest.as_ref());
        lines.push(
            phrases.phrase(
                "store-saved",
                &[("count", count(self.saved).into()), ("when", when.into()), ("who", who.into())],
            ),
        );
        for lost in &self.lost {
            let (from, fromwho) = told(phrases, lost.after.as_ref());
            let (to, towho) = told(phrases, lost.before.as_ref());
            lines.push(phrases.phrase(
                "store-lost",
                &[
                    ("count", count(lost.count()).into()),
                    ("from", from.into()),
                    ("fromwho", fromwho.into()),
                    ("to", to.into()),
                    ("towho", towho.into()),
                ],
            ));
            for read in &lost.read {
                let (when, who) = told(phrases, Some(read));
                lines.push(phrases.phrase("store-lost-read", &[("when", when.into()), ("who", who.into())]));
            }
        }
        match self.found {
            Found::Missing if self.lost.is_empty() => lines.push(phrases.phrase("store-lost-unknown", &[])),
            Found::Damaged if self.lost.is_empty() => lines.push(phrases.phrase("store-lost-none", &[])),
            _ => {}
        }
        if self.typed_lost {
            lines.push(phrases.phrase("store-typed-lost", &[]));
        }
        lines
    }
}

/// When and by whom, as local time was there; `none` where nothing is known.
fn told(phrases: &Phrases, known: Option<&Known>) -> (String, String) {
    let Some(known) = known else { return ("none".to_owned(), String::new()) };
    let local = known.ms.saturating_add(i64::from(known.utc_offset).saturating_mul(60_000));
    let when = DateTime::from_timestamp_millis(local).map(|time| time.format("%Y-%m-%d %H:%M").to_string());
    let who = if known.signer.is_empty() { phrases.phrase("store-somebody", &[]) } else { known.signer.clone() };
    (when.unwrap_or_default(), who)
}

fn count(number: u64) -> i64 {
    i64::try_from(number).unwrap_or(i64::MAX)
}
