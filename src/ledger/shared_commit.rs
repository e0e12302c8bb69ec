//! Changes that are entered together share one commit, so that many who send at once wait for one flush of the disk.

use std::{
    ops::Deref,
    panic::{AssertUnwindSafe, catch_unwind},
};

use rusqlite::{Connection, Savepoint, Transaction};

use super::{Ledger, LedgerError};

/// Tells whoever waits what became of their work, once it is kept; or that it was lost with all that was entered together.
pub type AfterCommit = Box<dyn FnOnce(Result<(), LedgerError>) + Send>;
/// Work that enters something and gives the answer that is due once that is kept.
pub type Work = Box<dyn FnOnce(&mut Ledger) -> AfterCommit + Send>;

/// One change of the ledger, and who makes it.
pub(super) struct Change<'a> {
    pub(super) within: Within<'a>,
    /// The name of who stands at the desk; none where a tablet or the desk itself does something.
    pub(super) by: Option<String>,
}

/// Where a change happens: in a transaction of its own, or as a part of one that holds several.
pub(super) enum Within<'a> {
    Alone(Transaction<'a>),
    Among(Savepoint<'a>),
}

impl Change<'_> {
    /// Enters the change. Without this it is taken back.
    pub(super) fn commit(self) -> Result<(), LedgerError> {
        // The moves of counts get the number of the change's last entry, once all of it is entered.
        self.prepare_cached(
            "UPDATE stock_moves SET seq = (SELECT coalesce(max(seq), 0) FROM events) WHERE seq IS NULL",
        )?
        .execute([])?;
        match self.within {
            Within::Alone(own) => own.commit()?,
            Within::Among(part) => part.commit()?,
        }
        Ok(())
    }
}

impl Deref for Change<'_> {
    type Target = Connection;
    fn deref(&self) -> &Connection {
        match &self.within {
            Within::Alone(own) => own,
            Within::Among(part) => part,
        }
    }
}

impl Ledger {
    /// Runs all `works` in their order with one commit, and then gives their answers. Work that fails or panics takes only
    /// its own changes back. Gives whether some of it panicked; whoever waits for that hears no answer.
    pub fn together(&mut self, works: Vec<Work>) -> bool {
        let mut answers: Vec<AfterCommit> = Vec::with_capacity(works.len());
        let (mut panicked, mut begun) = (false, false);
        // What comes alone needs no more than its own transaction.
        let alone = works.len() == 1;
        for work in works {
            begun = begun || (!alone && self.db.execute_batch("BEGIN IMMEDIATE").is_ok());
            let answer = if begun { self.one_of_many(work) } else { caught(self, work) };
            panicked |= answer.is_none();
            answers.extend(answer);
            if !begun {
                answers.drain(..).for_each(|answer| answer(Ok(())));
            } else if self.db.is_autocommit() {
                // SQLite takes a whole transaction back by itself, as where the disk is full.
                begun = false;
                let lost = || LedgerError::NotKept("the disk refused what was entered together".to_owned());
                answers.drain(..).for_each(|answer| answer(Err(lost())));
            }
        }
        if begun {
            let kept = self.db.execute_batch("COMMIT").map_err(LedgerError::from);
            if kept.is_err() && !self.db.is_autocommit() {
                let _ = self.db.execute_batch("ROLLBACK");
            }
            for answer in answers {
                answer(match &kept {
                    Ok(()) => Ok(()),
                    Err(error) => Err(error.told_again()),
                });
            }
        }
        panicked
    }

    /// One work among others; no answer where it panicked.
    fn one_of_many(&mut self, work: Work) -> Option<AfterCommit> {
        if let Err(error) = self.say("SAVEPOINT one") {
            tracing::error!("{error}");
        }
        let answer = caught(self, work);
        if !self.db.is_autocommit() {
            let taken_back = if answer.is_some() { Ok(()) } else { self.say("ROLLBACK TO one") };
            if let Err(error) = taken_back.and_then(|()| self.say("RELEASE one")) {
                // What can't be told apart is not kept.
                tracing::error!("changes entered together are taken back: {error}");
                let _ = self.db.execute_batch("ROLLBACK");
            }
        }
        answer
    }

    /// A statement that is the same for every work, read once.
    fn say(&self, sql: &str) -> rusqlite::Result<()> {
        self.db.prepare_cached(sql)?.execute([]).map(drop)
    }
}

/// A panic ends with the work that it came from.
fn caught(ledger: &mut Ledger, work: Work) -> Option<AfterCommit> {
    catch_unwind(AssertUnwindSafe(|| work(ledger))).ok()
}
