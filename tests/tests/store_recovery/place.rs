//! A book in a folder of its own that faults are put into.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use lapwright::store::{Account, BookOpening, Entry, Found, Hash, Lost, Opened, Store};
use lapwright_tests::book::{answer, entries, fill, open, options};
use tempfile::TempDir;

pub(crate) const PAGE: usize = 4096;

/// A closed book in a folder of its own, and what it holds.
pub(crate) struct Place {
    pub(crate) folder: TempDir,
    pub(crate) entries: Vec<Entry>,
}

impl Place {
    pub(crate) fn with(answers: i64) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let mut store = open(&folder.path().join("book")).unwrap().store;
        fill(&mut store, answers).unwrap();
        let entries = entries(&store).unwrap();
        Self { folder, entries }
    }

    pub(crate) fn book(&self) -> PathBuf {
        self.folder.path().join("book")
    }

    pub(crate) fn copies(&self) -> PathBuf {
        options(&self.book()).backups.unwrap()
    }

    pub(crate) fn aside(&self, number: usize) -> PathBuf {
        self.folder.path().join(format!("book.damaged-{number}"))
    }

    /// The same book in another place, taken up there by one more answer and a draft.
    pub(crate) fn taken_up(&self) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("book");
        fs::copy(self.book(), &path).unwrap();
        let mut store = open(&path).unwrap().store;
        store.draft_put("key", "typed").unwrap();
        answer(&mut store, 1_000_000).unwrap();
        let entries = entries(&store).unwrap();
        Self { folder, entries }
    }

    pub(crate) fn hashes(&self) -> BTreeSet<Hash> {
        self.entries.iter().map(|entry| entry.hash).collect()
    }

    /// Opens what is there: every answer is in the book or told of as lost, nothing is made up, and the account stays
    /// until it is acknowledged.
    pub(crate) fn opens(&self, what: &str) -> (Store, Option<Account>) {
        let Opened { store, opening } = open(&self.book()).unwrap_or_else(|error| panic!("{what}: {error}"));
        let report = store.check().unwrap();
        assert!(report.is_good(), "{what}: {report:?}");
        let here = hashes(&store);
        assert!(self.hashes().is_superset(&here), "{what}: something is made up");
        let account = store.accounts().unwrap().pop();
        assert_eq!(opening == BookOpening::Recovered, account.is_some(), "{what}: {opening:?}");
        let told = account.as_ref().map_or(0, lost);
        assert_eq!(here.len() + told, self.entries.len(), "{what}: {account:?}");
        if let Some(account) = &account {
            assert_eq!(account.saved as usize, here.len(), "{what}");
        }
        drop(store);
        let again = open(&self.book()).unwrap();
        assert_eq!(again.opening, BookOpening::Existing, "{what}: once is enough");
        assert_eq!(again.store.accounts().unwrap().pop(), account, "{what}: told until somebody has read it");
        (again.store, account)
    }
}

pub(crate) fn hashes(store: &Store) -> BTreeSet<Hash> {
    entries(store).unwrap().iter().map(|entry| entry.hash).collect()
}

pub(crate) fn lost(account: &Account) -> usize {
    account.lost.iter().map(Lost::count).sum::<u64>() as usize
}

impl Place {
    pub(crate) fn opens_missing(&self, at_least: usize) -> (Store, Account) {
        let opened = open(&self.book()).unwrap();
        assert_eq!(opened.opening, BookOpening::Recovered);
        let account = opened.store.accounts().unwrap().pop().unwrap();
        assert_eq!(account.found, Found::Missing);
        let here = entries(&opened.store).unwrap().len() + lost(&account);
        assert!(here >= at_least, "{account:?}");
        (opened.store, account)
    }
}

pub(crate) fn sources(account: &Account) -> Vec<String> {
    let name = |path: &str| Path::new(path).file_name().unwrap().to_str().unwrap().to_owned();
    account.sources.iter().map(|from| format!("{} from {}", from.answers, name(&from.path))).collect()
}
