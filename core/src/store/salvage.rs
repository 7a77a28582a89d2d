//! Entries out of the bytes of a damaged book, whatever SQLite still makes of it. An entry proves itself by its hash, so
//! every place that may be the beginning of one is tried; no index, page header or schema is needed.
//!
//! The record format is that of <https://www.sqlite.org/fileformat2.html>, section 2.1; how a long record goes on in
//! overflow pages, section 1.6.

use std::collections::{BTreeMap, BTreeSet};

use super::image::Image;
use super::sign::{Seal, seal_of};
use super::{DeviceId, Entry, Hash, Id, Stamp};

/// Columns of the table `entry`: its row number, which a record leaves empty, and seventeen more with the group.
const COLUMNS: usize = 19;
/// The serial types of an empty column and of 16 and 32 bytes.
const EMPTY: u64 = 0;
const ID: u64 = 12 + 2 * 16;
const HASH: u64 = 12 + 2 * 32;
/// An answer is far shorter; what claims to be longer is none.
const LONGEST: usize = 16 << 20;

/// Where a page of a number is.
type Chain<'a> = dyn Fn(u32) -> Option<&'a [u8]> + 'a;

/// A page, the last of which a cut may have left short, and how long a whole one is.
#[derive(Clone, Copy)]
struct PageBytes<'a> {
    bytes: &'a [u8],
    usable: usize,
}

/// What was found.
#[derive(Default)]
pub(super) struct Salvage {
    /// Entries that fit their hash.
    pub(super) entries: BTreeMap<(DeviceId, i64), Entry>,
    /// What reads like an entry and does not fit its hash: where no other copy of it is found, something is known of it.
    pub(super) hurt: BTreeMap<(DeviceId, i64), Entry>,
}

impl Salvage {
    /// Everything that is in these bytes.
    pub(super) fn of(image: &Image) -> Self {
        let logged = image.logged();
        let newest: BTreeMap<u32, &[u8]> = logged.iter().copied().collect();
        let mut found: Vec<Entry> = Vec::new();
        let mut salvage = Self::default();
        for page in image.pages().chain(logged.iter().map(|(_, page)| *page)) {
            let page = PageBytes { bytes: page, usable: image.page_size() };
            for at in begins(page.bytes) {
                // A page of the file may go on in pages of the file or in newer ones of the log.
                let chains: [&Chain<'_>; 2] =
                    [&|number| newest.get(&number).copied().or_else(|| image.page(number)), &|number| {
                        image.page(number)
                    }];
                let tried = chains.into_iter().filter_map(|chain| record(page, at, chain));
                for (entry, fits) in tried {
                    if fits {
                        found.push(entry);
                        break;
                    }
                    salvage.hurt.insert((entry.stamp.device, entry.sequence), entry);
                }
            }
        }
        salvage.settle(found);
        salvage
    }

    /// Two entries may claim one place where one of them was never accepted for good; the one that the next entry follows
    /// was, else the one that was written last.
    fn settle(&mut self, found: Vec<Entry>) {
        let followed: BTreeSet<Hash> = found.iter().map(|entry| entry.previous).collect();
        for entry in found {
            let place = (entry.stamp.device, entry.sequence);
            self.hurt.remove(&place);
            let stands = self
                .entries
                .get(&place)
                .is_some_and(|other| followed.contains(&other.hash) && !followed.contains(&entry.hash));
            if !stands {
                self.entries.insert(place, entry);
            }
        }
    }
}

/// Where the header of an entry's record may begin: its length, an empty column, a device of 16 bytes.
fn begins(page: &[u8]) -> impl Iterator<Item = usize> + '_ {
    page.windows(3).enumerate().filter_map(|(at, three)| match three {
        [length, 0, device] if u64::from(*device) == ID && (COLUMNS..=127).contains(&usize::from(*length)) => Some(at),
        _ => None,
    })
}

/// Reads the record whose header begins at `at` and tells whether the entry fits its hash.
fn record(page: PageBytes<'_>, at: usize, chain: &Chain<'_>) -> Option<(Entry, bool)> {
    let length = usize::from(*page.bytes.get(at)?);
    let mut header = page.bytes.get(at + 1..at + length)?;
    let mut types = Vec::with_capacity(COLUMNS);
    while !header.is_empty() {
        types.push(varint(&mut header)?);
    }
    let shapes: &[u64; COLUMNS] = types.as_slice().try_into().ok()?;
    let [row, device, _, _, _, _, job, group, .., signer, program, previous, hash, signature] = shapes;
    let id = |shape: u64| shape == EMPTY || shape == ID;
    let texts = [signer, program].into_iter().all(|shape| *shape >= 13 && shape % 2 == 1);
    if *row != EMPTY || *device != ID || *group != ID || !id(*job) || !texts {
        return None;
    }
    if *previous != HASH || *hash != HASH || *signature < 12 || signature % 2 == 1 {
        return None;
    }
    let mut size = length;
    for shape in shapes {
        size = size.checked_add(width(*shape)?).filter(|size| *size <= LONGEST)?;
    }
    let bytes = whole(page, at, size, chain)?;
    let mut body = bytes.get(length..)?;
    let mut columns = shapes.iter().map(|shape| {
        let (column, rest) = body.split_at_checked(width(*shape)?)?;
        body = rest;
        Some((*shape, column))
    });
    let mut next = || columns.next().flatten();
    next()?;
    let device = DeviceId(an_id(next()?)??);
    let (sequence, ms, counter) = (whole_number(next()?)?, whole_number(next()?)?, whole_number(next()?)?);
    let utc_offset = whole_number(next()?)?.try_into().ok()?;
    let job = an_id(next()?)?;
    let group = an_id(next()?)??;
    let (kind, kind_version) = (text(next()?)?, whole_number(next()?)?);
    let (subject, form, payload) = (an_id(next()?)?, whole_number(next()?)?, text(next()?)?);
    let (undoes, signer, program) = (an_id(next()?)?, text(next()?)?, text(next()?)?);
    let (previous, hash, signature) = (a_hash(next()?)?, a_hash(next()?)?, next()?.1.to_vec());
    let entry = Entry {
        stamp: Stamp { ms, counter, device },
        sequence,
        utc_offset,
        job,
        kind,
        kind_version,
        subject,
        form,
        payload,
        undoes,
        signer,
        program,
        previous,
        hash,
        signature,
    };
    let fits =
        sequence > 0 && entry.hash == entry.true_hash() && entry.group() == group && seal_of(&entry) != Seal::Bad;
    Some((entry, fits))
}

/// The whole record: what lies on this page, and the rest from the overflow pages.
fn whole(
    PageBytes { bytes: page, usable }: PageBytes<'_>,
    at: usize,
    size: usize,
    chain: &Chain<'_>,
) -> Option<Vec<u8>> {
    let most = usable.checked_sub(35)?;
    if size <= most {
        return page.get(at..at + size).map(<[u8]>::to_vec);
    }
    let least = (usable - 12) * 32 / 255 - 23;
    let fitting = least + (size - least) % (usable - 4);
    let local = if fitting <= most { fitting } else { least };
    let mut bytes = page.get(at..at + local)?.to_vec();
    let mut next = number(page.get(at + local..at + local + 4)?)?;
    while bytes.len() < size {
        let overflow = chain(next)?;
        next = number(overflow.get(..4)?)?;
        let rest = overflow.get(4..)?;
        let take = rest.len().min(size - bytes.len());
        if take == 0 {
            return None;
        }
        bytes.extend_from_slice(rest.get(..take)?);
    }
    Some(bytes)
}

fn number(bytes: &[u8]) -> Option<u32> {
    Some(u32::from_be_bytes(bytes.try_into().ok()?))
}

fn varint(bytes: &mut &[u8]) -> Option<u64> {
    let mut value: u64 = 0;
    for at in 0..9 {
        let (byte, rest) = bytes.split_first()?;
        *bytes = rest;
        if at == 8 {
            return Some(value << 8 | u64::from(*byte));
        }
        value = value << 7 | u64::from(byte & 0x7f);
        if byte & 0x80 == 0 {
            return Some(value);
        }
    }
    None
}

/// How many bytes a column of a serial type takes.
fn width(shape: u64) -> Option<usize> {
    Some(match shape {
        0 | 8 | 9 => 0,
        1..=4 => usize::try_from(shape).ok()?,
        5 => 6,
        6 | 7 => 8,
        10 | 11 => return None,
        _ => usize::try_from((shape - 12) / 2).ok()?,
    })
}

fn whole_number((shape, bytes): (u64, &[u8])) -> Option<i64> {
    match shape {
        8 => Some(0),
        9 => Some(1),
        1..=6 => {
            let start = if bytes.first()? & 0x80 == 0 { 0 } else { -1_i64 };
            Some(bytes.iter().fold(start, |value, byte| value << 8 | i64::from(*byte)))
        }
        _ => None,
    }
}

fn text((shape, bytes): (u64, &[u8])) -> Option<String> {
    (shape >= 13 && shape % 2 == 1).then(|| String::from_utf8(bytes.to_vec()).ok())?
}

/// `Some(None)` for an empty column.
fn an_id((shape, bytes): (u64, &[u8])) -> Option<Option<Id>> {
    if shape == EMPTY { Some(None) } else { Some(Some(Id::from_bytes(bytes.try_into().ok()?))) }
}

fn a_hash((_, bytes): (u64, &[u8])) -> Option<Hash> {
    Some(Hash(bytes.try_into().ok()?))
}
