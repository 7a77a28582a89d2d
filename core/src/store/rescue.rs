//! A book that is put together anew: its entries, wherever they lie, and what of it is known to have been here.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use super::account::{Account, AnswersFrom, Found, Known, lost};
use super::aside::AsideCause;
use super::check::inspect;
use super::copy::book_in;
use super::device::{self, SideFile};
use super::held::{EntryMap, Held};
use super::image::Image;
use super::salvage::Salvage;
use super::{DeviceId, Id, Result};

/// What was found wrong with a book, before anything is done about it.
#[derive(Debug)]
pub(super) struct Wrong {
    pub(super) found: Found,
    pub(super) detail: String,
}

impl Wrong {
    pub(super) fn damaged(why: &str) -> Self {
        Self { found: Found::Damaged, detail: why.to_owned() }
    }
}

/// Where a file comes from that entries may be in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Origin {
    /// The book's own.
    Own,
    /// It was set aside, and a program was stopped before anything took its place.
    CutOff,
    /// A copy.
    Copy,
    /// It was set aside.
    Aside(AsideCause),
}

/// A file that entries may be in.
pub(super) struct EntrySource {
    path: PathBuf,
    origin: Origin,
    pub(super) book: Option<Id>,
    salvage: Salvage,
}

impl EntrySource {
    pub(super) fn read(path: &Path, origin: Origin) -> Result<Self> {
        Ok(Self::of(path, origin, &Image::read(path)?))
    }

    pub(super) fn of(path: &Path, origin: Origin, image: &Image) -> Self {
        let inside = image.connect(path).and_then(|conn| book_in(&conn)).ok();
        // What lies beside a file that was set aside says of which book it was, too.
        let beside = || device::read(path).ok().flatten().map(|side| side.book).filter(|_| origin != Origin::Own);
        Self { path: path.to_owned(), origin, book: inside.or_else(beside), salvage: Salvage::of(image) }
    }

    /// Whether it is the book itself, or was until a program was stopped.
    fn is_left(&self) -> bool {
        matches!(self.origin, Origin::Own | Origin::CutOff)
    }

    fn gave(&self, answers: u64) -> AnswersFrom {
        AnswersFrom { path: self.path.display().to_string(), answers }
    }

    fn devices(&self) -> BTreeSet<DeviceId> {
        self.salvage.entries.keys().chain(self.salvage.hurt.keys()).map(|(device, _)| *device).collect()
    }

    /// Whether it is a copy that passes its check.
    fn is_good_copy(&self) -> bool {
        let check = || inspect(&Image::read(&self.path)?.connect(&self.path)?)?.pass();
        self.origin == Origin::Copy && check().is_ok()
    }
}

/// What is being put together.
#[derive(Default)]
pub(super) struct Rescue {
    pub(super) book: Option<Id>,
    pub(super) entries: EntryMap,
    hurt: EntryMap,
    /// The entries that are known to have been here, and no others: what else a copy or a file that was set aside holds, somebody
    /// may have taken out by going back to a copy.
    pub(super) known: Held,
    /// Where answers came from that the file itself no longer gave.
    pub(super) from: Vec<AnswersFrom>,
    untaken: Vec<AnswersFrom>,
}

impl Rescue {
    /// Puts together what is known to have been in a book from what is left of it, its copies, the newest first, and the files
    /// that were set aside, the last first.
    pub(super) fn of(mut sources: Vec<EntrySource>, side: Option<&SideFile>) -> Self {
        let left = || sources.iter().filter(|source| source.is_left());
        let mut devices: BTreeSet<DeviceId> = left().flat_map(EntrySource::devices).collect();
        devices.extend(side.iter().flat_map(|side| side.held.devices().chain([side.device])));
        let told = side.map(|side| side.book).or_else(|| left().find_map(|source| source.book));
        // Where nothing says which book was here, its folder does.
        let newest = || {
            sources.iter().find(|source| source.is_good_copy()).or_else(|| sources.iter().find(|s| s.book.is_some()))
        };
        let book = told.or_else(|| newest().filter(|_| devices.is_empty()).and_then(|source| source.book));
        sources.retain(|source| match (book, source.book) {
            _ if source.is_left() => true,
            (Some(own), Some(other)) => own == other,
            _ => !source.devices().is_disjoint(&devices),
        });
        let known = known(side, &sources);
        let book = book.or_else(|| sources.iter().find_map(|source| source.book));
        let mut rescue = Self { book, known, ..Self::default() };
        let own = side.map(|side| side.device);
        for source in &sources {
            let answers = rescue.take(source, own);
            if answers > 0 && source.origin != Origin::Own {
                rescue.from.push(source.gave(answers));
            }
        }
        if let Some((device, end)) = own.and_then(|own| Some((own, rescue.last_of(own)?))) {
            rescue.known.add(device, 1..=end);
        }
        rescue.untaken = rescue.untaken(&sources, own);
        rescue
    }

    /// In which files how many further answers lie, each told once. Where the file beside the book says what it held, that is only
    /// what it cannot say: answers of its own device in another line of these.
    fn untaken(&self, sources: &[EntrySource], own: Option<DeviceId>) -> Vec<AnswersFrom> {
        let mut told = BTreeSet::new();
        let mut untaken = Vec::new();
        for source in sources {
            let further = source.salvage.entries.iter().filter(|(place, entry)| {
                let here = self.entries.get(*place);
                match own {
                    None => here.is_none(),
                    Some(own) => place.0 == own && here.is_none_or(|here| here.hash != entry.hash),
                }
            });
            let answers = further.filter(|(_, entry)| told.insert(entry.hash)).count() as u64;
            untaken.extend((answers > 0).then(|| source.gave(answers)));
        }
        untaken
    }

    fn last_of(&self, device: DeviceId) -> Option<i64> {
        Some(self.entries.range((device, 0)..=(device, i64::MAX)).next_back()?.0.1)
    }

    /// Takes what is known to have been here, is missing, and fits the entries that are here; of the device `own`, whatever
    /// goes on from these.
    fn take(&mut self, source: &EntrySource, own: Option<DeviceId>) -> u64 {
        let mut taken = 0;
        let mut parted = None;
        for (place, entry) in &source.salvage.entries {
            let (device, sequence) = *place;
            let neighbour = |sequence: i64| self.entries.get(&(device, sequence));
            let fits = neighbour(sequence).is_none_or(|here| here.hash == entry.hash)
                && neighbour(sequence.saturating_sub(1)).is_none_or(|before| before.hash == entry.previous)
                && neighbour(sequence.saturating_add(1)).is_none_or(|after| after.previous == entry.hash);
            // Where the numbers of a device were used twice, what comes behind is of the other line, too.
            if !fits {
                parted = Some(device);
            }
            if (self.known.contains(*place) || own == Some(device))
                && parted != Some(device)
                && neighbour(sequence).is_none()
            {
                self.entries.insert(*place, entry.clone());
                taken += 1;
            }
        }
        for (place, entry) in source.salvage.hurt.iter().filter(|(place, _)| self.known.contains(**place)) {
            self.hurt.entry(*place).or_insert_with(|| entry.clone());
        }
        taken
    }

    /// What is known to have been here and was found nowhere.
    fn missing(&self) -> Held {
        let mut here = Held::default();
        here.add_entries(&self.entries);
        self.known.but(&here)
    }

    /// Whether something is lost.
    pub(super) fn is_short(&self) -> bool {
        self.missing().count() > 0
    }

    pub(super) fn account(&self, wrong: Wrong, kept: Option<&Path>, typed_lost: bool) -> Account {
        Account {
            found: wrong.found,
            detail: wrong.detail,
            kept: kept.map(|kept| kept.display().to_string()),
            saved: self.entries.len() as u64,
            sources: self.from.clone(),
            untaken: self.untaken.clone(),
            newest: self.entries.values().max_by_key(|entry| entry.stamp).map(Known::from),
            lost: lost(&self.entries, &self.hurt, &self.missing()),
            typed_lost,
        }
    }
}

/// How far a device is known to have come: its entries, and those that can be read though they are hurt, as long as they go on
/// where the others stop.
fn reached(known: &Held, device: DeviceId, sources: &[EntrySource]) -> i64 {
    let mut end = known.end(device).unwrap_or(0);
    for source in sources.iter().filter(|source| source.is_left()) {
        for (of, sequence) in source.salvage.hurt.keys() {
            if *of == device && *sequence == end.saturating_add(1) {
                end = *sequence;
            }
        }
    }
    end
}

/// What is known to have been here: by the file beside the book, where there is one, and by what is left of it. What is hurt was
/// here, too.
fn known(side: Option<&SideFile>, sources: &[EntrySource]) -> Held {
    let mut known = match side {
        Some(side) => known_beside(side, sources),
        None => known_without(sources),
    };
    let hurt = sources.iter().filter(|source| source.is_left()).flat_map(|source| source.salvage.hurt.keys());
    for (device, sequence) in hurt {
        if known.end(*device).is_some_and(|end| *sequence < end) {
            known.add(*device, *sequence..=*sequence);
        }
    }
    known
}

/// By the file beside the book. That is flushed for what others made and not for each answer of the device itself: whatever goes
/// on from these was here, too.
fn known_beside(side: &SideFile, sources: &[EntrySource]) -> Held {
    let mut known = side.held.clone();
    sources.iter().filter(|source| source.is_left()).for_each(|source| known.add_entries(&source.salvage.entries));
    known.add(side.device, 1..=side.tip.map_or(0, |tip| tip.sequence));
    known.add(side.device, 1..=reached(&known, side.device, sources));
    known
}

/// What was here where nothing beside the book says so: what is left of it, and its newest good copy. What the numbers of a
/// device pass over was here too, unless the copy passes over it as well.
fn known_without(sources: &[EntrySource]) -> Held {
    let good = sources.iter().position(EntrySource::is_good_copy);
    let mut gone_back = 0;
    let counts = sources.iter().enumerate().filter(|(at, source)| match source.origin {
        Origin::Own | Origin::CutOff => true,
        Origin::Copy => good.is_none_or(|good| *at <= good),
        // What was found damaged after somebody last went back to a copy; where no copy is left, what he went back from.
        Origin::Aside(cause) => {
            gone_back += usize::from(cause == AsideCause::Replaced);
            gone_back == 0 || cause == AsideCause::Replaced && gone_back == 1 && good.is_none()
        }
    });
    let mut known = Held::default();
    counts.for_each(|(_, source)| known.add_entries(&source.salvage.entries));
    let mut copied = Held::default();
    if let Some(copy) = good.and_then(|at| sources.get(at)) {
        copied.add_entries(&copy.salvage.entries);
    }
    for device in known.devices().collect::<Vec<_>>() {
        let end = reached(&known, device, sources);
        known.add(device, end..=end);
    }
    let holes = known.holes().but(&copied.holes());
    known.add_all(&holes);
    known
}
