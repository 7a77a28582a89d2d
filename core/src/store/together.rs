//! Several writes of one tap, kept together or not at all.

use std::fs;
use std::ops::Deref;
use std::path::PathBuf;

use rusqlite::{Connection, Savepoint, Transaction, TransactionBehavior};

use super::batch::Batch;
use super::device::{self, LastLine, SideFile, Tip};
use super::held::Held;
use super::{Result, Store};

/// An open write: the whole transaction, or a part of a batch.
pub(super) enum Writing<'a> {
    Alone(Transaction<'a>),
    Part(Savepoint<'a>),
}

impl Writing<'_> {
    pub(super) fn commit(self) -> Result<()> {
        match self {
            Self::Alone(tx) => tx.commit()?,
            Self::Part(savepoint) => savepoint.commit()?,
        }
        Ok(())
    }
}

impl Deref for Writing<'_> {
    type Target = Connection;

    fn deref(&self) -> &Connection {
        match self {
            Self::Alone(tx) => tx,
            Self::Part(savepoint) => savepoint,
        }
    }
}

impl Store {
    /// Begins to hold together what is written from now on, up to [`Store::end_together`]; may be nested.
    pub fn begin_together(&mut self) {
        self.batches.push(Batch::default());
    }

    /// Keeps what was written since [`Store::begin_together`], all of it, or takes all of it back.
    ///
    /// # Errors
    /// What SQLite said; nothing of it was kept.
    pub fn end_together(&mut self, keep: bool) -> Result<()> {
        let Some(batch) = self.batches.pop().filter(|batch| batch.begun) else { return Ok(()) };
        let sql = match (keep, self.batches.last().map(|outer| outer.begun)) {
            (true, None) => "COMMIT",
            // What is open goes on as that of the batch round it.
            (true, Some(false)) => "",
            (true, Some(true)) => "RELEASE batch",
            (false, _) if batch.within => "ROLLBACK TO batch; RELEASE batch",
            (false, _) => "ROLLBACK",
        };
        if let Err(error) = self.conn.execute_batch(sql) {
            // Some errors have ended the transaction already; the first of them is the one to tell.
            if !batch.within && !self.conn.is_autocommit() {
                let _ = self.conn.execute_batch("ROLLBACK");
            }
            return Err(error.into());
        }
        if !keep {
            return Ok(());
        }
        self.note(batch.tip);
        if batch.taken_in {
            self.note_taken_in();
        }
        match self.batches.last_mut() {
            Some(outer) => {
                if !outer.begun {
                    (outer.begun, outer.within) = (true, batch.within);
                }
                outer.spent.extend(batch.spent);
            }
            // A spent file that stays is read again and gives the same.
            None => batch.spent.iter().for_each(|file| drop(fs::remove_file(file))),
        }
        Ok(())
    }

    /// Makes ready to write: in a batch, its transaction is open from now on.
    pub(super) fn ready(&mut self) -> Result<()> {
        self.settle()?;
        let outer = self.batches.iter().rev().skip(1).any(|batch| batch.begun);
        if let Some(batch) = self.batches.last_mut().filter(|batch| !batch.begun) {
            self.conn.execute_batch(if outer { "SAVEPOINT batch" } else { "BEGIN IMMEDIATE" })?;
            (batch.begun, batch.within) = (true, outer);
        }
        Ok(())
    }

    pub(super) fn begin(&mut self) -> Result<Writing<'_>> {
        self.ready()?;
        Ok(if self.batches.is_empty() {
            Writing::Alone(self.conn.transaction_with_behavior(TransactionBehavior::Immediate)?)
        } else {
            Writing::Part(self.conn.savepoint()?)
        })
    }

    /// Notes the newest entry beside the book, once it is kept for good.
    pub(super) fn note(&mut self, tip: Option<Tip>) {
        if let Some(batch) = self.batches.last_mut() {
            batch.tip = tip.or(batch.tip);
            return;
        }
        // The answer is on the disk whatever becomes of the note.
        let _ = self.mark.as_mut().zip(tip).map(|(mark, tip)| mark.note(tip));
    }

    /// Notes beside the book what has come in from other devices, once it is kept for good.
    pub(super) fn note_taken_in(&mut self) {
        match self.batches.last_mut() {
            Some(batch) => batch.taken_in = true,
            // It is in the book whatever becomes of the note.
            None => drop(self.renew().and_then(|()| self.note_held(false))),
        }
    }

    /// Brings the file beside the book up with what has come in from other devices, or writes it `anew`. It is behind only
    /// where a program was stopped between the two.
    ///
    /// # Errors
    /// What SQLite or the file system said. What came in is in the book, and the next opening does it.
    pub(super) fn note_held(&mut self, anew: bool) -> Result<()> {
        let Some(path) = self.path.clone().filter(|_| self.settled) else { return Ok(()) };
        let is_own = |side: &SideFile| side.fits && side.book == self.book && side.device == self.device;
        let Some(side) = device::read(&path)?.filter(is_own) else { return Ok(()) };
        let (tip, rows) = (Tip::of(&self.conn, self.device)?, device::rows(&self.conn)?);
        let of_others = rows - tip.sequence;
        let is_up = side.held.count() == of_others && side.replaces.is_none() && side.tip == Some(tip);
        if is_up && !anew {
            return Ok(());
        }
        let mut held = side.held.clone();
        if held.count() != of_others {
            held.add_all(&Held::of(&self.conn, side.rows)?.without(self.device));
        }
        if anew || held.count() != of_others {
            held = Held::of(&self.conn, 0)?.without(self.device);
        }
        SideFile { tip: Some(tip), held, rows, replaces: None, ..side }.write(&path, &path)?;
        self.mark = LastLine::open(&path, self.device).ok();
        Ok(())
    }

    /// Removes a file that is of no use once what was written is kept.
    pub(super) fn spend(&mut self, file: PathBuf) -> std::io::Result<()> {
        if let Some(batch) = self.batches.last_mut() {
            batch.spent.push(file);
            return Ok(());
        }
        match fs::remove_file(file) {
            Err(error) if error.kind() != std::io::ErrorKind::NotFound => Err(error),
            _ => Ok(()),
        }
    }
}
