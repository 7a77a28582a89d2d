use std::any::Any;
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use crate::store::{
    Accepted, Account, Author, BookOpening, Clash, HistoryEntry, Id, Now, OpenOptions, PhotoState, Reopened, Result,
    Scope, Stamp, Store, StoreError, Undone,
};

use super::memory::Memory;
use super::{DraftKey, Field, Gaps, House, Kind, Operation, Record, Setting};

/// What typed keys are cut to: more is no answer to anything.
const LONGEST_DRAFT: usize = 200;

/// An open book and what of it is in memory.
///
/// [`Book::refresh`] is called once a tap, before anything is read: it tells whether another program has written meanwhile.
#[derive(Debug)]
pub struct Book {
    store: Store,
    memory: RefCell<Memory>,
    /// How many calls hold together what is written now.
    held: usize,
    /// What is asked before an answer is kept: it stays, though nothing else of the answer does.
    asked: Vec<(DraftKey, String)>,
    /// Whether the file could not be opened again after a restore that failed: nothing is shown of it.
    shut: bool,
}

/// A house among those of the book.
#[derive(Clone, Debug)]
pub struct JobRow {
    /// The house's own fields.
    pub record: Record,
    /// How many walls it has.
    pub walls: u32,
}

impl From<Store> for Book {
    fn from(store: Store) -> Self {
        Self { store, memory: RefCell::default(), held: 0, asked: Vec::new(), shut: false }
    }
}

impl Book {
    /// Opens a book, or makes one where nothing is.
    ///
    /// # Errors
    /// As [`Store::open`].
    pub fn open(path: impl AsRef<Path>, options: &OpenOptions) -> Result<(Self, BookOpening)> {
        let opened = Store::open(path, options)?;
        Ok((opened.store.into(), opened.opening))
    }

    /// A book in memory, for tests.
    ///
    /// # Errors
    /// As [`Store::in_memory`].
    pub fn in_memory() -> Result<Self> {
        Ok(Store::in_memory()?.into())
    }

    /// The store, for what is done to the book as a file: checks, copies, merging.
    pub fn store(&self) -> &Store {
        &self.store
    }

    /// The store, to write to it past the book: what is in memory is read again.
    pub fn store_mut(&mut self) -> &mut Store {
        self.memory.get_mut().forget();
        &mut self.store
    }

    /// Puts a copy in the place of this book, as [`Store::restore`] does, and goes on with it. Gives where the file that was
    /// there is now.
    ///
    /// # Errors
    /// As [`Store::restore`], and [`StoreError::NoFolder`] for a book without a file or a folder of copies. The book is as it
    /// was.
    pub fn restore(&mut self, copy: impl AsRef<Path>, now: Now) -> Result<PathBuf> {
        let (Some(path), Some(copies)) = (self.store.path(), self.store.backups_folder()) else {
            return Err(StoreError::NoFolder);
        };
        let (path, options) = (path.to_owned(), OpenOptions { backups: Some(copies.to_owned()) });
        // No file is replaced under somebody who has it open, which we are ourselves.
        let shut = Store::shut()?;
        self.memory.get_mut().forget();
        drop(std::mem::replace(&mut self.store, shut));
        match Store::restore(&path, copy, &options, now) {
            Ok((opened, aside)) => {
                self.store = opened.store;
                Ok(aside)
            }
            Err(error) => {
                match Store::open(&path, &options) {
                    Ok(opened) => self.store = opened.store,
                    Err(_) => self.shut = true,
                }
                Err(error)
            }
        }
    }

    /// Values that lost against another phone's and that nobody here has looked at yet.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn differences(&self) -> Result<Vec<Clash>> {
        let mut clashes = self.store.clashes()?;
        clashes.retain(|clash| clash.seen_by.is_empty());
        Ok(clashes)
    }

    /// Notes that somebody has looked at one.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn look_at(&mut self, difference: &Clash, signer: &str) -> Result<()> {
        self.store.clash_mark_seen(difference, signer)
    }

    /// Keeps everything that `work` writes, or, where it fails, nothing; may be nested.
    ///
    /// # Errors
    /// What `work` said, or what SQLite said at the end; nothing was changed.
    pub fn together<T, E: From<StoreError>>(&mut self, work: impl FnOnce(&mut Self) -> Result<T, E>) -> Result<T, E> {
        self.begin_together();
        let done = work(self);
        let ended = self.end_together(done.is_ok());
        let done = done?;
        ended?;
        Ok(done)
    }

    /// Begins to hold together what is written from now on, up to [`Book::end_together`].
    pub fn begin_together(&mut self) {
        self.held += 1;
        self.store.begin_together();
    }

    /// Keeps what was written since [`Book::begin_together`], or takes all of it back.
    ///
    /// # Errors
    /// What SQLite said; nothing of it was kept.
    pub fn end_together(&mut self, keep: bool) -> Result<()> {
        let ended = self.store.end_together(keep);
        if !keep || ended.is_err() {
            self.memory.get_mut().forget();
        }
        self.held = self.held.saturating_sub(1);
        if self.held == 0 && !self.asked.is_empty() {
            let asked = std::mem::take(&mut self.asked);
            return ended.and(
                self.together(|book| asked.into_iter().try_for_each(|(key, text)| book.put_long_draft(&key, text))),
            );
        }
        ended
    }

    /// Keeps what is asked of an answer that is refused until it is said once more: also where all else is taken back.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn put_asked(&mut self, key: DraftKey, text: String) -> Result<()> {
        if self.held == 0 {
            return self.put_long_draft(&key, text);
        }
        self.asked.push((key, text));
        Ok(())
    }

    /// Forgets what is in memory if another program has written since.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn refresh(&self) -> Result<()> {
        if self.shut {
            return Err(StoreError::Disk("the book could not be opened again".to_owned()));
        }
        let now = self.store.foreign_writes()?;
        let mut memory = self.memory.borrow_mut();
        if memory.seen != Some(now) {
            memory.forget();
            memory.seen = Some(now);
        }
        Ok(())
    }

    /// A house whole; `None` for what belongs to no house.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn house(&self, job: Option<Id>) -> Result<Arc<House>> {
        if let Some(house) = self.memory.borrow().house.as_ref().filter(|house| house.id() == job) {
            return Ok(Arc::clone(house));
        }
        let house = Arc::new(House::load(&self.store, job)?);
        self.memory.borrow_mut().house = Some(Arc::clone(&house));
        Ok(house)
    }

    /// The house that a thing belongs to; a loose board that was attached to a wall belongs to the wall's. `None` where
    /// the thing is not in the book.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn house_of(&self, id: Id) -> Result<Option<Arc<House>>> {
        let here = self.memory.borrow().house.as_ref().filter(|house| house.is_home_of(id)).map(Arc::clone);
        if here.is_some() {
            return Ok(here);
        }
        match self.store.job_of(id, Kind::Job.code(), Field::Wall.code())? {
            Some(job) => self.house(job).map(Some),
            None => Ok(None),
        }
    }

    /// What somebody above derives from a house, remembered until the house changes. `make` is given what was derived last, of whichever
    /// house, to take over what did not change.
    pub(crate) fn derived<T: Any + Send + Sync>(
        &self,
        house: &Arc<House>,
        make: impl FnOnce(Option<&T>) -> T,
    ) -> Arc<T> {
        let last = self.memory.borrow().derived.clone();
        let last = last.and_then(|(from, made)| Some((from, made.downcast::<T>().ok()?)));
        match last {
            Some((from, made)) if Arc::ptr_eq(&from, house) => made,
            last => {
                let made = Arc::new(make(last.as_ref().map(|(_, made)| &**made)));
                let kept: Arc<dyn Any + Send + Sync> = Arc::<T>::clone(&made);
                self.memory.borrow_mut().derived = Some((Arc::clone(house), kept));
                made
            }
        }
    }

    /// The houses of the book, in their order.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn jobs(&self) -> Result<Vec<JobRow>> {
        let scope = Scope::Book(Kind::Job.code());
        let counts: BTreeMap<Id, u32> =
            self.store.job_counts(Kind::Job.code(), Kind::Wall.code())?.into_iter().collect();
        let mut fields: BTreeMap<Id, Vec<_>> = BTreeMap::new();
        for (id, code, written) in self.store.fields_of(scope)? {
            fields.entry(id).or_default().push((code, written));
        }
        let rows = self.store.subjects_of(scope)?.into_iter().filter_map(|subject| {
            let walls = *counts.get(&subject.id)?;
            let mut record = Record::new(subject.id, Kind::Job, None, subject.parent, subject.sort_key);
            fields.remove(&record.id()).into_iter().flatten().for_each(|(code, written)| record.read(code, written));
            Some(JobRow { record, walls })
        });
        Ok(rows.collect())
    }

    /// Every gap that was measured after fitting.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn gaps(&self) -> Result<Arc<Gaps>> {
        if let Some(gaps) = &self.memory.borrow().gaps {
            return Ok(Arc::clone(gaps));
        }
        let gaps = Arc::new(Gaps::load(&self.store)?);
        self.memory.borrow_mut().gaps = Some(Arc::clone(&gaps));
        Ok(gaps)
    }

    /// What was typed and not yet accepted; empty where nothing was.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn draft(&self, key: &DraftKey) -> Result<String> {
        let mut memory = self.memory.borrow_mut();
        let drafts = match &mut memory.drafts {
            Some(drafts) => drafts,
            none => none.insert(self.store.drafts()?.into_iter().collect()),
        };
        Ok(drafts.get(key.code()).cloned().unwrap_or_default())
    }

    /// Keeps what is typed so far; nothing typed keeps nothing.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn put_draft(&mut self, key: &DraftKey, text: &str) -> Result<()> {
        let text: String = text.chars().take(LONGEST_DRAFT).collect();
        self.put_long_draft(key, text)
    }

    /// Keeps answers that wait for others, of any length.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn put_long_draft(&mut self, key: &DraftKey, text: String) -> Result<()> {
        if text.is_empty() {
            self.store.draft_clear(key.code())?;
        } else {
            self.store.draft_put(key.code(), &text)?;
        }
        if let Some(drafts) = &mut self.memory.get_mut().drafts {
            if text.is_empty() {
                drafts.remove(key.code());
            } else {
                drafts.insert(key.code().to_owned(), text);
            }
        }
        Ok(())
    }

    /// A setting of this device; none where it was never made.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn setting(&self, setting: &Setting<'_>) -> Result<Option<String>> {
        let mut memory = self.memory.borrow_mut();
        let settings = match &mut memory.settings {
            Some(settings) => settings,
            none => none.insert(self.store.settings()?.into_iter().collect()),
        };
        Ok(settings.get(&setting.code()).cloned())
    }

    /// Keeps a setting of this device.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn put_setting(&mut self, setting: &Setting<'_>, text: &str) -> Result<()> {
        self.store.setting_put(&setting.code(), text)?;
        if let Some(settings) = &mut self.memory.get_mut().settings {
            settings.insert(setting.code(), text.to_owned());
        }
        Ok(())
    }

    /// Drops a setting of this device.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn clear_setting(&mut self, setting: &Setting<'_>) -> Result<()> {
        self.store.setting_clear(&setting.code())?;
        if let Some(settings) = &mut self.memory.get_mut().settings {
            settings.remove(&setting.code());
        }
        Ok(())
    }

    /// Writes a checked copy of the book to `path`.
    ///
    /// # Errors
    /// As [`Store::copy`]; nothing was overwritten.
    pub fn copy(&self, path: impl AsRef<Path>) -> Result<()> {
        self.store.copy(path)
    }

    /// What was found wrong with this book on this device and nobody has read yet, oldest first.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn accounts(&self) -> Result<Vec<Account>> {
        Ok(Account::read_all(self.setting(&Setting::Account)?.as_deref()))
    }

    /// Drops what [`Book::accounts`] gives: somebody has read it.
    ///
    /// # Errors
    /// What SQLite said; it is all still there.
    pub fn acknowledge(&mut self) -> Result<()> {
        self.clear_setting(&Setting::Account)
    }

    /// Where a photo is now, looking at its file, and the file to show or to fill: `None` for one that nothing names.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn photo(&self, photo: Id) -> Result<Option<(PhotoState, PathBuf)>> {
        let mut memory = self.memory.borrow_mut();
        let photos = match &mut memory.photos {
            Some(photos) => photos,
            none => none.insert(self.store.photo_states()?.into_iter().collect()),
        };
        Ok(photos.get(&photo).and_then(|state| self.store.photo_at(photo, *state)))
    }

    /// Names the file for a photo that a camera is about to take.
    ///
    /// # Errors
    /// As [`Store::photo_begin`].
    pub fn begin_photo(&mut self, key: &DraftKey, photo: Id) -> Result<PathBuf> {
        self.forget_photos();
        self.store.photo_begin(key.code(), photo)
    }

    /// Takes in what the camera has left.
    ///
    /// # Errors
    /// As [`Store::photo_take_in`].
    pub fn take_photo_in(&mut self, key: &DraftKey, photo: Id) -> Result<Option<Id>> {
        self.forget_photos();
        self.store.photo_take_in(key.code(), photo)
    }

    /// Gives up a photo that did not come.
    ///
    /// # Errors
    /// As [`Store::photo_drop`].
    pub fn drop_photo(&mut self, key: &DraftKey, photo: Id) -> Result<()> {
        self.forget_photos();
        self.store.photo_drop(key.code(), photo)
    }

    fn forget_photos(&mut self) {
        let memory = self.memory.get_mut();
        (memory.photos, memory.drafts) = (None, None);
    }

    /// Accepts one answer and drops the drafts that it came from, all or nothing.
    ///
    /// # Errors
    /// As [`Store::transact`]; nothing was changed.
    pub fn transact(
        &mut self,
        operation: &Operation,
        author: &Author,
        now: Now,
        drafts: &[DraftKey],
    ) -> Result<Accepted> {
        let keys: Vec<&str> = drafts.iter().map(DraftKey::code).collect();
        let outcome = self.store.transact(operation.op(), author, now, &keys)?;
        if let Some(kept) = &mut self.memory.get_mut().drafts {
            keys.into_iter().for_each(|key| {
                kept.remove(key);
            });
        }
        self.follow(&outcome);
        Ok(outcome)
    }

    /// Takes an answer back; `reopen` gives the keys that open a question of it again, kept in the same transaction.
    ///
    /// # Errors
    /// As [`Store::undo`]; nothing was changed.
    pub fn undo(
        &mut self,
        group: Id,
        author: &Author,
        now: Now,
        reopen: impl Fn(&Reopened) -> Option<(DraftKey, String)>,
    ) -> Result<Undone> {
        self.memory.get_mut().drafts = None;
        let draft = |answer: &Reopened| reopen(answer).map(|(key, text)| (key.code().to_owned(), text));
        let undone = self.store.undo(group, author, now, draft)?;
        self.follow(&undone.outcome);
        Ok(undone)
    }

    /// Brings what is in memory up to date after an answer. The answer is on the disk: where this fails, the next tap reads
    /// everything anew.
    fn follow(&mut self, outcome: &Accepted) {
        let memory = self.memory.get_mut();
        // A sign-off may name a photo, a gap may have come or gone.
        memory.photos = None;
        let house = memory.house.take();
        let after = house.as_ref().map(|house| house.after(&self.store, &outcome.touched)).transpose();
        memory.house = after.ok().flatten().map(Arc::new);
        let elsewhere = |id: &&Id| !memory.house.as_ref().is_some_and(|house| house.has_or_had(**id));
        let others: Vec<Id> = outcome.touched.iter().filter(elsewhere).copied().collect();
        if let Some(gaps) = memory.gaps.take_if(|_| !others.is_empty()) {
            memory.gaps = gaps.after(&self.store, &others).ok().map(Arc::new);
        }
    }

    /// A page of the history of every house, newest first, from before a stamp on.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn history(&self, job: Option<Id>, before: Option<Stamp>, count: u32) -> Result<Vec<HistoryEntry>> {
        match job {
            Some(job) => self.store.done_in(Some(job), before, count),
            None => self.store.done(before, count),
        }
    }

    /// One entry of the history.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn history_entry(&self, group: Id) -> Result<Option<HistoryEntry>> {
        self.store.done_one(group)
    }

    /// What would lose its ground if an answer were taken back, newest first.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn dependents(&self, group: Id) -> Result<Vec<HistoryEntry>> {
        self.store.dependents(group)
    }
}
