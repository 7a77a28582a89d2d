//! What another phone hands over as a file: a copy of its book, or the answers of one house. It is looked at first, then
//! taken in, all of it or one house of it, with a copy made before.
//!
//! An exchange file is text: a line that says what it is, a line for each entry, and a line with the hash of all of these,
//! so that a file that was cut or changed is none.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use rusqlite::Connection;

use super::account::Known;
use super::at_rest::memory_of;
use super::canon::Canon;
use super::change::LoggedChange;
use super::check::inspect;
use super::entry::{COLUMNS, logged};
use super::merge::{devices, hash_at, signing};
use super::overwrite::{Overwrite, write_file};
use super::pack::book_of_file;
use super::project::{deeds_of, lines_of};
use super::sign::{Seal, seals_of};
use super::{AHEAD, Backup, BadEntry, DeviceId, Entry, Hash, Id, Now, Result, Store, StoreError, TakenIn};

/// The most bytes of an exchange file.
const LONGEST: u64 = 256 << 20;

/// How far the answers of a house were handed over: by rows of the log, so that a log which is written anew forgets it.
pub(super) const MARK: &str = "exchanged/";

/// What another phone handed over.
#[derive(Clone, Debug)]
pub struct ExchangeOffer {
    entries: Vec<Entry>,
    house: Option<WholeHouse>,
}

/// What the phone that wrote an exchange file had of its house.
#[derive(Clone, Copy, Debug)]
struct WholeHouse {
    house: Id,
    count: i64,
    hash: Hash,
}

/// What taking in would do.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Preview {
    /// Answers that are not here.
    pub new: usize,
    /// Answers that are here already.
    pub known: usize,
    /// The new ones by who made them.
    pub senders: Vec<Sender>,
    /// Sign-offs among them.
    pub sign_offs: usize,
    /// Fields that would hold something else than now.
    pub changed: usize,
    /// Values of this phone or the other that would lose unseen, and be shown.
    pub clashes: usize,
    /// Answers that are altered or forged: nothing can be taken in with them.
    pub refused: Vec<Refused>,
    /// The latest answer that is dated more than a day ahead of this phone's clock: to be asked about.
    pub ahead: Option<Known>,
}

/// The device that made some of the answers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sender {
    /// The device; its words are to be compared once.
    pub device: DeviceId,
    /// Whether somebody here has compared them.
    pub trusted: bool,
    /// Whether it signs what it makes.
    pub signs: bool,
    /// Who answered on it.
    pub signers: BTreeSet<String>,
    /// How many answers.
    pub answers: usize,
}

/// An answer that is not what it says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused {
    /// Its device.
    pub device: DeviceId,
    /// Its number there.
    pub sequence: i64,
    /// What it says of itself.
    pub says: Known,
    /// Whether a step is signed off by it.
    pub signs_off: bool,
    /// What is wrong.
    pub why: BadEntry,
}

impl Refused {
    fn new(entry: &Entry, why: BadEntry) -> Self {
        let (device, sequence) = (entry.stamp.device, entry.sequence);
        let signs_off = changes(entry).iter().any(|change| matches!(change, LoggedChange::SignOff(_)));
        Self { device, sequence, says: entry.into(), signs_off, why }
    }
}

/// An exchange file that was written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HandedOver {
    /// How many answers are in it.
    pub answers: usize,
    /// The file.
    pub path: PathBuf,
}

/// How a house stands on both phones after an exchange.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// The other phone had not said what it has.
    Unknown,
    /// Both hold the same.
    Same,
    /// This phone has answers that the other has not seen.
    OtherLacks,
    /// The other phone has answers that were not in the file: it must hand over all of the house.
    ThisLacks,
}

impl ExchangeOffer {
    /// Reads a book, a copy of one, a backup made by hand, or an exchange file, without changing it.
    ///
    /// # Errors
    /// [`StoreError::NotABook`] for anything else, [`StoreError::Itself`] for a book that is open here, [`StoreError::DamagedFile`] where it was cut or changed.
    pub fn read(path: impl AsRef<Path>) -> Result<Self> {
        let path = path.as_ref();
        let read = || match book_of_file(path)? {
            Some((image, _)) => Self::of_book(&image.connect(path)?),
            None if fs::metadata(path).is_ok_and(|data| data.is_file() && data.len() <= LONGEST) => {
                Self::parse(&fs::read(path)?).ok_or_else(|| StoreError::NotABook(path.to_owned()))?
            }
            None => Err(StoreError::NotABook(path.to_owned())),
        };
        read().map_err(|error| error.of_file(path))
    }

    fn of_book(conn: &Connection) -> Result<Self> {
        // What is altered or forged in its log is named when it is looked at; a book that cannot be read is none.
        let mut report = inspect(conn)?;
        report.chain.clear();
        report.pass()?;
        Ok(Self { entries: logged(conn)?, house: None })
    }

    /// `None` for what is no exchange file at all.
    fn parse(bytes: &[u8]) -> Option<Result<Self>> {
        const OURS: &[u8] = br#"{"count":"#;
        if !bytes.starts_with(OURS) {
            return None;
        }
        Some(Self::parse_whole(bytes).ok_or_else(|| StoreError::Damaged("the file was cut or changed".to_owned())))
    }

    fn parse_whole(bytes: &[u8]) -> Option<Self> {
        let text = std::str::from_utf8(bytes).ok()?;
        let (body, end) = text.strip_suffix('\n')?.rsplit_once('\n')?;
        if end.parse::<Hash>().ok()? != Hash::of(body) {
            return None;
        }
        let mut lines = body.split('\n');
        let head = Canon::read(lines.next()?)?;
        if head.whole("exchange")? != 1 {
            return None;
        }
        let house =
            WholeHouse { house: head.parsed("house")?, count: head.whole("count")?, hash: head.parsed("hash")? };
        let entries = lines.map(Entry::from_text).collect::<Option<Vec<_>>>()?;
        Some(Self { entries, house: Some(house) })
    }

    /// The house that an exchange file is about.
    pub fn house(&self) -> Option<Id> {
        self.house.map(|whole| whole.house)
    }

    /// The answers of one house, or all.
    fn of(&self, house: Option<Id>) -> Vec<&Entry> {
        match house {
            Some(house) => of_house(&self.entries, house),
            None => self.entries.iter().collect(),
        }
    }
}

fn changes(entry: &Entry) -> Vec<LoggedChange> {
    deeds_of(entry.form, &entry.payload)
}

/// The answers of a house among these, in their order: those that name it, and those of the book itself that are about the
/// same things, such as the making of a board that was loose at first, or take one of them back.
fn of_house(entries: &[Entry], house: Id) -> Vec<&Entry> {
    let subjects = |entry: &Entry| changes(entry).iter().map(LoggedChange::subject).collect::<BTreeSet<Id>>();
    let mut all: Vec<(&Entry, BTreeSet<Id>, bool)> =
        entries.iter().map(|entry| (entry, subjects(entry), false)).collect();
    let (mut about, mut groups): (BTreeSet<Id>, BTreeSet<Id>) = Default::default();
    loop {
        let before = groups.len();
        for (entry, subjects, taken) in all.iter_mut().filter(|(_, _, taken)| !taken) {
            let own = entry.job == Some(house) || entry.subject == Some(house);
            let same = || !subjects.is_disjoint(&about) || entry.undoes.is_some_and(|group| groups.contains(&group));
            if own || (entry.job.is_none() && same()) {
                *taken = true;
                about.append(subjects);
                groups.insert(entry.group());
            }
        }
        if groups.len() == before {
            return all.into_iter().filter_map(|(entry, _, taken)| taken.then_some(entry)).collect();
        }
    }
}

fn hash_of<'a>(entries: impl Iterator<Item = &'a Entry>) -> (i64, Hash) {
    let hashes: BTreeSet<Hash> = entries.map(|entry| entry.hash).collect();
    let bytes: Vec<u8> = hashes.iter().flat_map(|hash| hash.0).collect();
    (i64::try_from(hashes.len()).unwrap_or(i64::MAX), Hash::of(bytes))
}

fn mark(house: Id) -> String {
    format!("{MARK}{house}")
}

impl Store {
    /// Says what taking in would do, and changes nothing: the whole offer, or one house of it.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn preview(&self, offer: &ExchangeOffer, house: Option<Id>, now: Now) -> Result<Preview> {
        let here: BTreeSet<DeviceId> = devices(&self.conn)?.into_iter().collect();
        let offered = offer.of(house);
        let seals = seals_of(&offered);
        let mut signing = signing(&self.conn)?;
        signing.extend(offered.iter().filter(|entry| !entry.signature.is_empty()).map(|entry| entry.stamp.device));
        let mut preview = Preview::default();
        let mut senders: BTreeMap<DeviceId, Sender> = BTreeMap::new();
        let mut fresh = Vec::new();
        for (entry, seal) in offered.into_iter().zip(seals) {
            let device = entry.stamp.device;
            let known = hash_at(&self.conn, device, entry.sequence)?;
            let why = match seal {
                _ if entry.sequence < 1 || entry.hash != entry.true_hash() => Some(BadEntry::Altered),
                _ if known == Some(entry.hash) => {
                    preview.known += 1;
                    continue;
                }
                _ if known.is_some() => Some(BadEntry::PlaceTaken),
                Seal::Bad => Some(BadEntry::Forged),
                Seal::Absent if signing.contains(&device) => Some(BadEntry::Unsigned),
                Seal::Absent | Seal::Good => None,
            };
            if let Some(why) = why {
                preview.refused.push(Refused::new(entry, why));
                continue;
            }
            preview.new += 1;
            let sender = senders.entry(device).or_insert_with(|| Sender {
                device,
                trusted: false,
                signs: !entry.signature.is_empty(),
                signers: BTreeSet::new(),
                answers: 0,
            });
            sender.answers += 1;
            sender.signers.insert(entry.signer.clone());
            let latest = preview.ahead.as_ref().map_or(now.ms.saturating_add(AHEAD), |ahead| ahead.ms);
            if entry.stamp.ms > latest {
                preview.ahead = Some(entry.into());
            }
            fresh.push(entry.clone());
        }
        for sender in senders.values_mut() {
            sender.trusted = here.contains(&sender.device) || self.is_trusted(sender.device)?;
        }
        preview.senders = senders.into_values().collect();
        if preview.refused.is_empty() {
            self.compare(&fresh, &mut preview)?;
        }
        Ok(preview)
    }

    /// Counts what would change, by taking in on a copy in memory.
    fn compare(&self, fresh: &[Entry], preview: &mut Preview) -> Result<()> {
        let mut other = Self::in_memory()?;
        other.conn = memory_of(&self.conn)?;
        let taken = match other.take_in(fresh, i64::MAX) {
            Ok(taken) => taken,
            Err(StoreError::BadEntry { device, sequence, why }) => {
                let bad = fresh.iter().find(|entry| entry.stamp.device.0 == device && entry.sequence == sequence);
                preview.refused.extend(bad.map(|entry| Refused::new(entry, why)));
                return Ok(());
            }
            Err(error) => return Err(error),
        };
        let (before, after) = (lines_of(&self.conn, &taken.touched)?, lines_of(&other.conn, &taken.touched)?);
        let gone = |table: &str| before.difference(&after).filter(|line| line.starts_with(table)).count();
        let come = |table: &str| after.difference(&before).filter(|line| line.starts_with(table)).count();
        preview.changed = gone("field ");
        preview.clashes = come("clash ");
        preview.sign_offs = come("sign_off ");
        Ok(())
    }

    /// Takes in an offer, or one house of it, all or nothing, with a copy of the book put into `copies` before: going back to
    /// it takes all of it back. Entries stamped after `latest` are refused: it is now and [`AHEAD`], unless somebody was asked.
    ///
    /// # Errors
    /// [`StoreError::Untrusted`] where nobody has compared the words of a device that answers are of; else as
    /// [`Store::backup`] and [`Store::take_in`]; nothing was taken in.
    pub fn take_in_offer(
        &mut self,
        offer: &ExchangeOffer,
        house: Option<Id>,
        latest: i64,
        copies: impl AsRef<Path>,
        now: Now,
    ) -> Result<(TakenIn, Backup)> {
        let entries: Vec<Entry> = offer.of(house).into_iter().cloned().collect();
        let devices: BTreeSet<DeviceId> = entries.iter().map(|entry| entry.stamp.device).collect();
        let here = self.peers()?;
        for device in devices {
            if !here.contains_key(&device) && !self.is_trusted(device)? {
                return Err(StoreError::Untrusted { words: device.words() });
            }
        }
        let backup = self.backup(copies, now)?;
        Ok((self.take_in(&entries, latest)?, backup))
    }

    /// How a house stands on this phone and on the one that made the offer.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn standing(&self, offer: &ExchangeOffer) -> Result<Standing> {
        let Some(whole) = offer.house else { return Ok(Standing::Unknown) };
        let (_, here): (Vec<i64>, Vec<Entry>) = self.logged_about(whole.house)?.into_iter().unzip();
        let (count, hash) = hash_of(of_house(&here, whole.house).into_iter());
        Ok(match count.cmp(&whole.count) {
            _ if hash == whole.hash => Standing::Same,
            std::cmp::Ordering::Less => Standing::ThisLacks,
            _ => Standing::OtherLacks,
        })
    }

    /// Writes the answers of one house for another phone: those that came here since the last such file of this house, or
    /// `all`. Photos go apart.
    ///
    /// # Errors
    /// As [`write_file`]; the next file will hold the same answers again.
    pub fn hand_over(
        &mut self,
        house: Id,
        to: impl AsRef<Path>,
        all: bool,
        overwrite: Overwrite,
    ) -> Result<HandedOver> {
        let behind = match self.setting_get(&mark(house))? {
            Some(row) if !all => row.parse().unwrap_or(0),
            _ => 0,
        };
        let rows = self.logged_about(house)?;
        let last = rows.last().map_or(behind, |(row, _)| *row);
        let old: BTreeSet<Hash> = rows.iter().filter(|(row, _)| *row <= behind).map(|(_, entry)| entry.hash).collect();
        let entries: Vec<Entry> = rows.into_iter().map(|(_, entry)| entry).collect();
        let whole = of_house(&entries, house);
        let (count, hash) = hash_of(whole.iter().copied());
        let head = Canon::map([
            ("exchange", Some(Canon::Whole(1))),
            ("house", Canon::text(house.to_string())),
            ("count", Some(Canon::Whole(count))),
            ("hash", Canon::text(hash.to_string())),
        ]);
        let new: Vec<&&Entry> = whole.iter().filter(|entry| !old.contains(&entry.hash)).collect();
        let mut body = head.write();
        for entry in &new {
            body.push('\n');
            body.push_str(&entry.to_text());
        }
        let text = format!("{body}\n{}\n", Hash::of(&body));
        write_file(&to, text.as_bytes(), overwrite)?;
        let handed = HandedOver { answers: new.len(), path: to.as_ref().to_owned() };
        self.setting_put(&mark(house), &last.to_string())?;
        Ok(handed)
    }

    /// The entries that may be about a house, with their rows: its own, and those of no house at all.
    fn logged_about(&self, house: Id) -> Result<Vec<(i64, Entry)>> {
        let sql = format!(
            "SELECT {COLUMNS}, e.id FROM entry e WHERE e.job = ?1 OR e.job IS NULL OR e.subject = ?1 ORDER BY e.id"
        );
        let mut statement = self.conn.prepare_cached(&sql)?;
        let rows = statement.query_map([house], |row| Ok((row.get(17)?, Entry::from_row(row)?)))?;
        Ok(rows.collect::<rusqlite::Result<_>>()?)
    }

    /// The four words of this device, for somebody else to compare.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn words(&mut self) -> Result<String> {
        self.ready()?;
        Ok(self.device.words())
    }

    /// The same, where the file is a book of this device by now; what is only looked into has none.
    pub fn known_words(&self) -> Option<String> {
        self.settled.then(|| self.device.words())
    }

    /// Notes that somebody has compared the words of a device with those that it shows itself.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn trust(&mut self, device: DeviceId) -> Result<()> {
        self.setting_put(&format!("trusted/{device}"), "words")
    }

    /// Whether this is the device itself, or one whose words somebody has compared.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn is_trusted(&self, device: DeviceId) -> Result<bool> {
        Ok(device == self.device || self.setting_get(&format!("trusted/{device}"))?.is_some())
    }
}
