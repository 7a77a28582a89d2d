//! Which entries a book holds: the numbers of each device, in unbroken runs. A run may begin late and stop early, where one house
//! alone was taken in, or where somebody went back to a copy.

use std::collections::BTreeMap;
use std::ops::RangeInclusive;

use rangemap::RangeInclusiveSet;
use rusqlite::Connection;

use super::{DeviceId, Entry, Result};

/// Entries by device and number.
pub(super) type EntryMap = BTreeMap<(DeviceId, i64), Entry>;

/// The entries that a book holds, or is known to have held.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Held(BTreeMap<DeviceId, RangeInclusiveSet<i64>>);

impl Held {
    /// What is in the rows of a log behind a row.
    pub(super) fn of(conn: &Connection, behind: i64) -> Result<Self> {
        // Of a few new rows each is looked at; all of them come in the order of their index.
        let sql = match behind {
            0 => "SELECT device, sequence FROM entry WHERE id > ?1 ORDER BY device, sequence",
            _ => "SELECT device, sequence FROM entry NOT INDEXED WHERE id > ?1 ORDER BY id",
        };
        let mut statement = conn.prepare_cached(sql)?;
        let mut rows = statement.query([behind])?;
        let (mut held, mut run) = (Self::default(), None::<(DeviceId, i64, i64)>);
        while let Some(row) = rows.next()? {
            let (device, sequence): (DeviceId, i64) = (row.get(0)?, row.get(1)?);
            run = Some(match run {
                Some((of, first, last)) if of == device && sequence == last.saturating_add(1) => {
                    (device, first, sequence)
                }
                Some((of, first, last)) => {
                    held.add(of, first..=last);
                    (device, sequence, sequence)
                }
                None => (device, sequence, sequence),
            });
        }
        if let Some((device, first, last)) = run {
            held.add(device, first..=last);
        }
        Ok(held)
    }

    pub(super) fn add(&mut self, device: DeviceId, numbers: RangeInclusive<i64>) {
        if !numbers.is_empty() {
            self.0.entry(device).or_default().insert(numbers);
        }
    }

    pub(super) fn add_entries(&mut self, entries: &EntryMap) {
        entries.keys().for_each(|(device, sequence)| self.add(*device, *sequence..=*sequence));
    }

    pub(super) fn add_all(&mut self, other: &Self) {
        other.runs().for_each(|(device, numbers)| self.add(device, numbers));
    }

    pub(super) fn without(mut self, device: DeviceId) -> Self {
        self.0.remove(&device);
        self
    }

    pub(super) fn contains(&self, (device, sequence): (DeviceId, i64)) -> bool {
        self.0.get(&device).is_some_and(|numbers| numbers.contains(&sequence))
    }

    pub(super) fn devices(&self) -> impl Iterator<Item = DeviceId> + '_ {
        self.0.keys().copied()
    }

    pub(super) fn runs(&self) -> impl Iterator<Item = (DeviceId, RangeInclusive<i64>)> + '_ {
        self.0.iter().flat_map(|(device, numbers)| numbers.iter().map(|run| (*device, run.clone())))
    }

    /// The last number of each device.
    pub(super) fn ends(&self) -> impl Iterator<Item = (DeviceId, i64)> + '_ {
        self.0.iter().filter_map(|(device, numbers)| Some((*device, *numbers.last()?.end())))
    }

    pub(super) fn end(&self, device: DeviceId) -> Option<i64> {
        Some(*self.0.get(&device)?.last()?.end())
    }

    /// How many entries these are.
    pub(super) fn count(&self) -> i64 {
        self.runs().fold(0, |count, (_, run)| count.saturating_add(run.end() - run.start()).saturating_add(1))
    }

    /// The runs of numbers up to the last of each device that are not among these.
    pub(super) fn holes(&self) -> Self {
        let mut holes = Self::default();
        for (device, numbers) in &self.0 {
            let all = 1..=numbers.last().map_or(0, |run| *run.end());
            numbers.gaps(&all).for_each(|gap| holes.add(*device, gap));
        }
        holes
    }

    /// Those of these that are not in another.
    pub(super) fn but(&self, other: &Self) -> Self {
        let mut rest = self.clone();
        for (device, run) in other.runs() {
            if let Some(numbers) = rest.0.get_mut(&device) {
                numbers.remove(run);
            }
        }
        rest.0.retain(|_, numbers| !numbers.is_empty());
        rest
    }

    /// A line for each device, as in the file beside a book.
    pub(super) fn lines(&self) -> impl Iterator<Item = String> + '_ {
        self.0.iter().map(|(device, numbers)| {
            let runs = numbers.iter().map(|run| format!(" {}-{}", run.start(), run.end()));
            format!("{device}{}", runs.collect::<String>())
        })
    }

    /// Adds what a line says.
    pub(super) fn read_line(&mut self, line: &str) -> Option<()> {
        let (device, runs) = line.split_once(' ')?;
        let device = DeviceId(device.parse().ok()?);
        for run in runs.split(' ') {
            let (first, last) = run.split_once('-')?;
            self.add(device, first.parse().ok()?..=last.parse().ok()?);
        }
        Some(())
    }
}

#[cfg(test)]
mod tests {
    use super::super::Id;
    use super::*;

    fn device(number: u8) -> DeviceId {
        DeviceId(Id::from_bytes([number; 16]))
    }

    #[test]
    fn what_is_held_is_told_and_read_in_runs() {
        let mut held = Held::default();
        for sequence in [1, 2, 3, 7, 9, 8] {
            held.add(device(1), sequence..=sequence);
        }
        held.add(device(2), 4..=5);
        let lines: Vec<String> = held.lines().collect();
        assert_eq!(lines, [format!("{} 1-3 7-9", device(1)), format!("{} 4-5", device(2))]);
        let mut read = Held::default();
        lines.iter().for_each(|line| read.read_line(line).unwrap());
        assert_eq!((&read, read.count()), (&held, 8));
        let holes: Vec<String> = held.holes().lines().collect();
        assert_eq!(holes, [format!("{} 4-6", device(1)), format!("{} 1-3", device(2))]);
        assert_eq!(held.but(&read), Held::default());
        assert!(held.contains((device(1), 7)) && !held.contains((device(1), 6)) && !held.contains((device(3), 1)));

        assert_eq!(read.read_line("nobody 1-2"), None);
        assert_eq!(read.read_line(&format!("{} 7", device(1))), None);
    }
}
