//! Histories of a book at random: answers, what a colleague hands over of one house, copies, going back to one of them, and in
//! between its file is hurt, gone, or older than it was left. What was here and is not any more is told of, to the answer, and
//! nothing else is; what can be read comes back, and nothing that was taken out.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::PathBuf;

use lapwright::store::{Account, Entry, Hash, Now, Store, backups};
use lapwright_tests::book::{answer, below, count, entries, now, open, options, tell};
use lapwright_tests::random::Random;

use crate::place::{PAGE, Place};

type Answers = BTreeMap<(String, i64), Hash>;

fn answers(entries: &[Entry]) -> Answers {
    let place = |entry: &Entry| (entry.stamp.device.to_string(), entry.sequence);
    entries.iter().map(|entry| (place(entry), entry.hash)).collect()
}

fn told(account: &Account) -> BTreeSet<(String, i64)> {
    account.lost.iter().flat_map(|lost| (lost.first..=lost.last).map(|at| (lost.device.clone(), at))).collect()
}

/// A book with a colleague, and what it should hold.
struct History {
    place: Place,
    colleague: Place,
    theirs: Store,
    here: Answers,
    ms: i64,
    /// The files of the book as they were once.
    older: Option<Vec<u8>>,
    done: Vec<String>,
}

/// What became of the files.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Fault {
    Gone,
    Blank,
    Cut,
    Older,
}

impl History {
    fn new() -> Self {
        let place = Place::with(6);
        let colleague = place.taken_up();
        let theirs = open(&colleague.book()).unwrap().store;
        let here = answers(&place.entries);
        Self { place, colleague, theirs, here, ms: 1_000, older: None, done: Vec::new() }
    }

    fn now(&mut self) -> Now {
        self.ms += 3_000;
        now(self.ms)
    }

    fn says(&self) -> String {
        format!("{:?} in {}", self.done, self.colleague.folder.path().display())
    }

    fn closed(&mut self, work: impl FnOnce(&mut Store)) {
        let mut store = open(&self.place.book()).unwrap().store;
        assert_eq!(store.accounts().unwrap(), [], "{}", self.says());
        work(&mut store);
        self.here = answers(&entries(&store).unwrap());
    }

    fn step(&mut self, random: &mut Random) {
        let at = self.now();
        let which = below(random, 6);
        self.done.push(["answer", "answer", "take in", "copy", "go back", "keep a file"][which].to_owned());
        match which {
            // Where the making of the thing itself is lost, nothing can be answered about it.
            0 | 1 => self.closed(|store| drop(answer(store, at.ms))),
            2 => {
                (0..4).for_each(|more| drop(answer(&mut self.theirs, at.ms + more).unwrap()));
                let all = entries(&self.theirs).unwrap();
                let some: Vec<Entry> = all.into_iter().filter(|_| below(random, 3) > 0).collect();
                self.closed(|store| drop(store.take_in(&some, i64::MAX).unwrap()));
            }
            3 => {
                let copies = self.place.copies();
                self.closed(|store| drop(store.backup(copies, at).unwrap()));
            }
            4 => {
                let copies = backups(self.place.copies()).unwrap();
                if copies.is_empty() {
                    return;
                }
                let copy = &copies[below(random, copies.len())].path;
                let (opened, _) = Store::restore(self.place.book(), copy, &options(&self.place.book()), at).unwrap();
                self.here = answers(&entries(&opened.store).unwrap());
                self.ms += 3_000;
            }
            _ => self.older = Some(fs::read(self.place.book()).unwrap()),
        }
    }

    fn path(&self, tail: &str) -> PathBuf {
        self.place.folder.path().join(format!("book{tail}"))
    }

    /// Damages the files, opens them, and holds what came of it against what was here.
    fn fault(&mut self, random: &mut Random) -> (usize, usize) {
        let fault = [Fault::Gone, Fault::Blank, Fault::Cut, Fault::Older][below(random, 4)];
        let untold = below(random, 5) == 0;
        // Only a copy of what is here says what was here, where nothing beside the book does.
        let copied = untold || below(random, 2) == 0;
        if copied {
            let (at, copies) = (self.now(), self.place.copies());
            self.closed(|store| drop(store.backup(copies, at).unwrap()));
        }
        self.done.push(format!("{fault:?}, untold {untold}, copied {copied}"));
        let bytes = fs::read(self.place.book()).unwrap();
        match fault {
            Fault::Gone => ["", "-wal", "-shm"].into_iter().for_each(|tail| drop(fs::remove_file(self.path(tail)))),
            Fault::Blank => {
                let page = below(random, bytes.len() / PAGE);
                let mut bytes = bytes;
                bytes[page * PAGE..(page + 1) * PAGE].fill(0);
                fs::write(self.place.book(), bytes).unwrap();
            }
            Fault::Cut => fs::write(self.place.book(), &bytes[..below(random, bytes.len())]).unwrap(),
            Fault::Older => match &self.older {
                Some(older) => fs::write(self.place.book(), older).unwrap(),
                None => return (0, 0),
            },
        }
        if untold {
            fs::remove_file(self.path(".device")).unwrap();
        }
        // A file that nothing shows to be a book is left alone; the user takes it away.
        let opened = open(&self.place.book()).unwrap_or_else(|_| {
            fs::remove_file(self.place.book()).unwrap();
            open(&self.place.book()).unwrap()
        });
        let mut store = opened.store;
        let says = self.says();
        if !store.check().unwrap().is_good() {
            drop(store);
            store = Store::repair(self.place.book(), &options(&self.place.book())).unwrap().store;
        }
        let now = answers(&entries(&store).unwrap());
        let accounts = store.accounts().unwrap();
        let told: BTreeSet<(String, i64)> = accounts.iter().flat_map(told).collect();
        let gone: BTreeSet<(String, i64)> =
            self.here.keys().filter(|place| !now.contains_key(*place)).cloned().collect();
        // Nothing beside an older book says that it is one.
        if !(untold && fault == Fault::Older) {
            assert_eq!(told, gone, "{says}: {accounts:?}");
            assert!(!copied || gone.is_empty(), "{says}");
        }
        if fault != Fault::Older {
            assert!(now.iter().all(|(place, hash)| self.here.get(place) == Some(hash)), "{says}");
        }
        store.acknowledge().unwrap();
        self.here = now;
        (1, told.len())
    }
}

#[test]
fn whatever_becomes_of_a_book_what_was_in_it_comes_back_or_is_told_of() {
    let (mut faults, mut lost) = (0, 0);
    let histories = count(12, 300);
    for seed in 0..histories {
        let mut random = Random::new(seed as u64 + 1);
        let mut history = History::new();
        for _ in 0..4 {
            for _ in 0..below(&mut random, 6) {
                history.step(&mut random);
            }
            let (put, told) = history.fault(&mut random);
            (faults, lost) = (faults + put, lost + told);
        }
    }
    tell(
        "a book hurt, gone or older in histories at random",
        faults,
        &format!("{lost} answers told of as lost, the others here"),
    );
    assert!(faults > histories && lost > 0);
}
