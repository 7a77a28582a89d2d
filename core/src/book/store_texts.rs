//! What the store has to say, in the reader's language.

use chrono::DateTime;

use crate::phrases::{Phrases, key};
use crate::store::{
    Account, Backup, BackupContents, BadEntry, Found, HandedOver, Known, Preview, Refused, Restoring, Sender, Standing,
    StoreError, TakenIn,
};

impl StoreError {
    /// What is wrong and what is allowed.
    pub fn text(&self, phrases: &Phrases) -> String {
        let path = |key, path: &std::path::Path| phrases.phrase(key, &[("path", path.display().to_string().into())]);
        match self {
            Self::NewerBook { needs, reads } => {
                phrases.phrase("store-newer", &[("needs", (*needs).into()), ("reads", (*reads).into())])
            }
            Self::NotABook(at) => path("store-not-a-book", at),
            Self::SetAside { file, book } => {
                let name = |path: &std::path::Path| path.display().to_string();
                phrases.phrase("store-set-aside", &[("path", name(file).into()), ("book", name(book).into())])
            }
            Self::InTheWay(at) => path("store-in-the-way", at),
            Self::Exists(at) => path("store-exists", at),
            Self::DamagedFile { path: at, .. } => path("store-damaged-file", at),
            Self::Damaged(why) => phrases.phrase("store-damaged", &[("why", why.as_str().into())]),
            Self::Busy => phrases.phrase("store-busy", &[]),
            Self::DiskFull => phrases.phrase("store-full", &[]),
            Self::Disk(why) => phrases.phrase("store-disk", &[("why", why.as_str().into())]),
            Self::Io(error) => phrases.phrase("store-disk", &[("why", phrases.io_error(error).into())]),
            Self::File { path, error } => {
                let args = [("path", path.display().to_string().into()), ("why", phrases.io_error(error).into())];
                phrases.phrase("store-file", &args)
            }
            Self::NoPhoto(_) => phrases.phrase("store-no-photo", &[]),
            Self::CannotUndo(_) => phrases.phrase("store-cannot-undo", &[]),
            Self::ReadOnly => phrases.phrase("store-read-only", &[]),
            Self::Itself(at) => path("store-itself", at),
            Self::OtherBook(at) => path("store-other-book", at),
            Self::Untrusted { words } => phrases.phrase("store-untrusted", &[("words", words.as_str().into())]),
            Self::BadEntry { why, .. } => phrases.phrase("store-bad-entry", &[("why", why.text(phrases).into())]),
            Self::NoFolder => phrases.phrase("store-no-folder", &[]),
            Self::Ahead { ms, .. } => phrases.phrase("store-ahead", &[("when", day(*ms).into())]),
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
        for from in &self.sources {
            let args = [("count", count(from.answers).into()), ("path", from.path.as_str().into())];
            lines.push(phrases.phrase("store-taken-from", &args));
        }
        let (when, who) = told(phrases, self.newest.as_ref());
        lines.push(
            phrases.phrase(
                "store-saved",
                &[("count", count(self.saved).into()), ("when", when.into()), ("who", who.into())],
            ),
        );
        for from in &self.untaken {
            let args = [("count", count(from.answers).into()), ("path", from.path.as_str().into())];
            lines.push(phrases.phrase("store-untaken", &args));
        }
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
                let args = [("count", count(lost.count()).into()), ("when", when.into()), ("who", who.into())];
                lines.push(phrases.phrase("store-lost-read", &args));
            }
        }
        match self.found {
            Found::Missing if self.lost.is_empty() => lines.push(phrases.phrase("store-lost-unknown", &[])),
            Found::Damaged | Found::Older if self.lost.is_empty() => lines.push(phrases.phrase("store-lost-none", &[])),
            _ => {}
        }
        if self.typed_lost {
            lines.push(phrases.phrase("store-typed-lost", &[]));
        }
        lines
    }
}

impl BadEntry {
    fn text(self, phrases: &Phrases) -> String {
        let key = match self {
            Self::Altered => "store-altered",
            Self::Forged => "store-forged",
            Self::Unsigned => "store-unsigned",
            Self::PlaceTaken | Self::Unchained => "store-unchained",
            Self::Clock => "store-clock",
        };
        phrases.phrase(key, &[])
    }
}

impl Sender {
    /// Whose answers these are, and whether somebody has compared the words of the device.
    pub fn text(&self, phrases: &Phrases) -> String {
        let who: Vec<String> = self.signers.iter().map(|who| signer(phrases, who)).collect();
        let args = [
            ("count", count(self.answers as u64).into()),
            ("who", who.join(", ").into()),
            ("words", self.device.words().into()),
            ("trusted", if self.trusted { "yes" } else { "no" }.into()),
            ("signs", if self.signs { "yes" } else { "no" }.into()),
        ];
        phrases.phrase("store-sender", &args)
    }
}

impl Preview {
    /// What taking in would do, in sentences.
    pub fn lines(&self, phrases: &Phrases) -> Vec<String> {
        let mut lines = self.refused_lines(phrases);
        lines.extend(self.counted_lines(phrases));
        lines.extend(self.senders.iter().map(|sender| sender.text(phrases)));
        lines.extend(self.change_lines(phrases));
        lines.extend(self.ahead_line(phrases));
        lines
    }

    /// Each answer that is altered or forged, and why.
    pub fn refused_lines(&self, phrases: &Phrases) -> Vec<String> {
        let line = |refused: &Refused| {
            let (when, who) = told(phrases, Some(&refused.says));
            let what = if refused.signs_off { "sign-off" } else { "answer" };
            let why = refused.why.text(phrases);
            let args = [("what", what.into()), ("when", when.into()), ("who", who.into()), ("why", why.into())];
            phrases.phrase("store-refused", &args)
        };
        self.refused.iter().map(line).collect()
    }

    /// How many answers are new, and how many are here already.
    pub fn counted_lines(&self, phrases: &Phrases) -> Vec<String> {
        let mut lines = vec![phrases.phrase("store-offer-new", &[("count", self.new.into())])];
        if self.known > 0 {
            lines.push(phrases.phrase("store-offer-known", &[("count", self.known.into())]));
        }
        lines
    }

    /// What would change in this book; nothing where nothing can be taken in.
    pub fn change_lines(&self, phrases: &Phrases) -> Vec<String> {
        if !self.refused.is_empty() || self.new == 0 {
            return Vec::new();
        }
        let say = |key, number: usize| phrases.phrase(key, &[("count", number.into())]);
        vec![
            say(key("store-offer-changed"), self.changed),
            say(key("store-offer-clashes"), self.clashes),
            say(key("store-offer-sign-offs"), self.sign_offs),
        ]
    }

    /// The answer that is dated ahead, where one is.
    pub fn ahead_line(&self, phrases: &Phrases) -> Option<String> {
        let ahead = self.ahead.as_ref()?;
        let (when, who) = told(phrases, Some(ahead));
        Some(phrases.phrase("store-offer-ahead", &[("when", when.into()), ("who", who.into())]))
    }
}

impl TakenIn {
    /// What taking in did, in a sentence; `copy` is the one that was made before.
    pub fn text(&self, copy: &Backup, phrases: &Phrases) -> String {
        let args = [("count", count(self.new as u64).into()), ("path", copy.path.display().to_string().into())];
        phrases.phrase("store-taken-in", &args)
    }
}

impl HandedOver {
    /// What was written, in a sentence.
    pub fn text(&self, phrases: &Phrases) -> String {
        let args = [("count", count(self.answers as u64).into()), ("path", self.path.display().to_string().into())];
        phrases.phrase("store-handed-over", &args)
    }
}

impl Standing {
    /// Whether both phones hold the same of a house now, and what is to be done where they do not.
    pub fn text(self, phrases: &Phrases) -> String {
        let key = match self {
            Self::Unknown => "store-standing-unknown",
            Self::Same => "store-standing-same",
            Self::OtherLacks => "store-standing-other-lacks",
            Self::ThisLacks => "store-standing-this-lacks",
        };
        phrases.phrase(key, &[])
    }
}

impl Restoring {
    /// What going back to a copy would do, in sentences.
    pub fn lines(&self, phrases: &Phrases) -> Vec<String> {
        let (when, who) = told(phrases, self.newest.as_ref());
        let number = |number: usize| count(number as u64).into();
        let args = [("count", number(self.answers)), ("when", when.into()), ("who", who.into())];
        let mut lines = vec![phrases.phrase("store-restore-holds", &args)];
        lines.push(phrases.phrase("store-restore-gained", &[("count", number(self.gained))]));
        let (when, who) = told(phrases, self.dropped.first());
        let args = [("count", number(self.dropped.len())), ("when", when.into()), ("who", who.into())];
        lines.push(phrases.phrase("store-restore-dropped", &args));
        lines.push(phrases.phrase("store-restore-carried", &[("count", number(self.carried))]));
        if self.photos > 0 {
            lines.push(phrases.phrase("store-restore-photos", &[("count", number(self.photos))]));
        }
        lines
    }
}

impl BackupContents {
    /// What a backup made by hand holds, in a sentence.
    pub fn text(&self, phrases: &Phrases) -> String {
        let args = [
            ("answers", count(self.answers).into()),
            ("photos", count(self.photos).into()),
            ("missing", count(self.missing).into()),
        ];
        phrases.phrase("store-packed", &args)
    }
}

fn day(ms: i64) -> String {
    DateTime::from_timestamp_millis(ms).map(|time| time.format("%Y-%m-%d").to_string()).unwrap_or_default()
}

fn signer(phrases: &Phrases, signer: &str) -> String {
    if signer.is_empty() { phrases.phrase("store-somebody", &[]) } else { signer.to_owned() }
}

/// When and by whom, as local time was there; `none` where nothing is known.
fn told(phrases: &Phrases, known: Option<&Known>) -> (String, String) {
    let Some(known) = known else { return ("none".to_owned(), String::new()) };
    let local = known.ms.saturating_add(i64::from(known.utc_offset).saturating_mul(60_000));
    let when = DateTime::from_timestamp_millis(local).map(|time| time.format("%Y-%m-%d %H:%M").to_string());
    (when.unwrap_or_default(), signer(phrases, &known.signer))
}

fn count(number: u64) -> i64 {
    i64::try_from(number).unwrap_or(i64::MAX)
}
