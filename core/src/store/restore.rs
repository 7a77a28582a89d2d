//! Going back to a copy: the book becomes what it was then, but for what was signed off since. What was cut, fixed and
//! signed stands on the wall, whatever the book says.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use super::account::Known;
use super::aside::{AsideCause, aside_name};
use super::change::LoggedChange;
use super::check::inspect;
use super::copy::book_in;
use super::entry::logged;
use super::image::Image;
use super::lock::Lock;
use super::merge::content_hash;
use super::open::own_place;
use super::pack::{Pack, book_of_file};
use super::project::deeds_of;
use super::recover::{carry_over, put_together, replace};
use super::{DeviceId, Entry, Hash, Id, Now, OpenOptions, Opened, Result, Store, StoreError};

/// What going back to a copy would do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Restoring {
    /// How many answers the copy holds.
    pub answers: usize,
    /// The newest answer in it.
    pub newest: Option<Known>,
    /// How many of them the book does not hold now.
    pub gained: usize,
    /// Later answers that would be kept: sign-offs, and what they need to stand on.
    pub carried: usize,
    /// Later answers that would be gone from the book, newest first; the copy that is made before holds them.
    pub dropped: Vec<Known>,
    /// Photos that come with the copy.
    pub photos: usize,
}

/// A copy, and what of the book is to be kept beside it.
struct RestorePlan {
    book: Id,
    entries: BTreeMap<(DeviceId, i64), Entry>,
    gained: usize,
    carried: usize,
    dropped: Vec<Entry>,
    pack: Option<Pack>,
}

impl RestorePlan {
    fn of(store: &Store, copy: &Path) -> Result<Self> {
        let read = || {
            let (image, pack) = book_of_file(copy)?.ok_or_else(|| StoreError::NotABook(copy.to_owned()))?;
            let conn = image.connect(copy)?;
            inspect(&conn)?.pass()?;
            Ok((book_in(&conn)?, logged(&conn)?, pack))
        };
        let (book, held, pack) = read().map_err(|error: StoreError| error.of_file(copy))?;
        let by_place = |entries: Vec<Entry>| -> BTreeMap<(DeviceId, i64), Entry> {
            entries.into_iter().map(|entry| ((entry.stamp.device, entry.sequence), entry)).collect()
        };
        let (mut entries, now) = (by_place(held), by_place(store.entries_since(&BTreeMap::new())?));
        // A book that nothing was answered in yet takes the copy of any.
        if book != store.book() && !now.is_empty() {
            return Err(StoreError::OtherBook(copy.to_owned()));
        }
        let gained = entries.keys().filter(|place| !now.contains_key(place)).count();
        let later = now.into_iter().filter(|(place, _)| !entries.contains_key(place)).map(|(_, entry)| entry);
        let (carried, dropped) = part(later.collect());
        let count = carried.len();
        entries.extend(by_place(carried));
        Ok(Self { book, entries, gained, carried: count, dropped, pack })
    }
}

/// Parts what came after a copy into what is kept and what is not. Kept are sign-offs, the undoing of these, and the making
/// of what they are about, with what that hangs under.
fn part(later: Vec<Entry>) -> (Vec<Entry>, Vec<Entry>) {
    let changes: Vec<Vec<LoggedChange>> = later.iter().map(|entry| deeds_of(entry.form, &entry.payload)).collect();
    let mut keep: BTreeSet<Hash> = BTreeSet::new();
    let mut groups: BTreeSet<Id> = BTreeSet::new();
    let mut needed: BTreeSet<Id> = BTreeSet::new();
    loop {
        let before = (keep.len(), needed.len());
        for (entry, changes) in later.iter().zip(&changes) {
            let signs = changes.iter().any(|change| matches!(change, LoggedChange::SignOff(_)));
            let makes = changes
                .iter()
                .any(|change| matches!(change, LoggedChange::Create { subject, .. } if needed.contains(subject)));
            if signs || makes || entry.undoes.is_some_and(|group| groups.contains(&group)) {
                keep.insert(entry.hash);
                groups.insert(entry.group());
                for change in changes {
                    needed.insert(change.subject());
                    if let LoggedChange::Create { parent: Some(parent), .. } = change {
                        needed.insert(*parent);
                    }
                }
            }
        }
        if (keep.len(), needed.len()) == before {
            break;
        }
    }
    later.into_iter().partition(|entry| keep.contains(&entry.hash))
}

impl Store {
    /// Says what going back to a copy of this book would do, and changes nothing. The copy is a book, a backup that was made
    /// by itself, or one that was made by hand.
    ///
    /// # Errors
    /// [`StoreError::Itself`] for the book's own file, [`StoreError::OtherBook`] for a copy of another one, [`StoreError::DamagedFile`] for one that does not pass its check,
    /// or what the file system said.
    pub fn preview_restore(&self, copy: impl AsRef<Path>) -> Result<Restoring> {
        let mut plan = RestorePlan::of(self, copy.as_ref())?;
        let mut photos = 0;
        if let Some(pack) = &mut plan.pack {
            let count = |_, _| {
                photos += 1;
                Ok(())
            };
            pack.photos(count).map_err(|error| error.of_file(copy.as_ref()))?;
        }
        let mut dropped = plan.dropped;
        dropped.sort_by_key(|entry| std::cmp::Reverse(entry.stamp));
        let newest = plan.entries.values().max_by_key(|entry| entry.stamp).map(Known::from);
        Ok(Restoring {
            answers: plan.entries.len() - plan.carried,
            newest,
            gained: plan.gained,
            carried: plan.carried,
            dropped: dropped.iter().map(Known::from).collect(),
            photos,
        })
    }

    /// Puts a copy in the place of a book that nobody has open, with the later sign-offs of the book kept, and opens it. A
    /// copy of the book as it is goes into its backups before, and one of what it becomes after; the file that was there
    /// is kept, too. A book that is damaged is put right before, as [`Store::repair`] does. Gives where the file is now.
    ///
    /// # Errors
    /// As [`Store::preview_restore`] and [`Store::open`]; [`StoreError::NoFolder`] without a folder for backups. The book
    /// is as it was.
    pub fn restore(
        path: impl AsRef<Path>,
        copy: impl AsRef<Path>,
        options: &OpenOptions,
        now: Now,
    ) -> Result<(Opened, PathBuf)> {
        let (path, copy) = (&own_place(path.as_ref())?, copy.as_ref());
        let backups = options.backups.as_deref().ok_or(StoreError::NoFolder)?;
        let mut store = Self::open(path, options)?.store;
        if store.is_read_only() {
            return Err(StoreError::ReadOnly);
        }
        let mut plan = RestorePlan::of(&store, copy)?;
        if let Err(error) = store.backup(backups, now) {
            let StoreError::Damaged(_) = error else { return Err(error) };
            // It is gone back from because something is wrong with it, and only what is whole is copied.
            drop(store);
            store = Self::repair(path, options)?.store;
            plan = RestorePlan::of(&store, copy)?;
            store.backup(backups, now)?;
        }
        let content = store.content_hash()?;
        if let Some(pack) = &mut plan.pack {
            pack.photos(|photo, bytes| store.photo_put(photo, &bytes))?;
        }
        drop(store);
        let alone = Lock::alone(path)?;
        let log = Image::read(path)?;
        let old = log.connect(path)?;
        if content_hash(&old)? != content {
            return Err(StoreError::Busy);
        }
        let conn = put_together(Some(plan.book), plan.entries.values())?;
        if !carry_over(&old, &conn)? {
            return Err(StoreError::Damaged("what was typed cannot be read".to_owned()));
        }
        let aside = aside_name(path, AsideCause::Replaced)?;
        replace(path, &aside, &conn, None)?;
        drop(alone);
        let opened = Self::open(path, options)?;
        // A second later by its name, so that a person can tell it from the one of before. The book is that copy by now: where
        // this one cannot be made, the next that is due is made instead.
        let _ = opened.store.backup(backups, Now { ms: now.ms.saturating_add(1_000), ..now });
        Ok((opened, aside))
    }
}
