//! Tickets on their way, a file each, and the numbers already given.

use std::{
    collections::BTreeMap,
    fs, io,
    path::{Path, PathBuf},
};

use serde::{Deserialize, Serialize};
use uuid::Uuid;

use crate::{
    disk::durable,
    ticket::{NumberError, SentTicket, TicketNumber},
};

/// A ticket on its way.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct Entry {
    pub ticket: SentTicket,
    /// The guest has the number, so the desk has to take the ticket in any case.
    pub number_given: bool,
    /// Why the desk did not take it, once it was set aside.
    #[serde(default)]
    pub reason: Option<String>,
}

/// The numbers given in one show.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
struct Numbers {
    show: i64,
    next: u16,
}

/// The outbox of a kiosk.
pub(super) struct Outbox {
    folder: PathBuf,
    refused: PathBuf,
    numbers_file: PathBuf,
    numbers: Numbers,
    entries: BTreeMap<PathBuf, Entry>,
    aside: BTreeMap<PathBuf, Entry>,
    unreadable: usize,
}

/// The entries in the files of `folder`, and the files that do not read.
fn read(folder: &Path) -> io::Result<(BTreeMap<PathBuf, Entry>, Vec<PathBuf>)> {
    let (mut entries, mut damaged) = (BTreeMap::new(), Vec::new());
    for file in fs::read_dir(folder)?.flatten() {
        let path = file.path();
        if path.extension().is_none_or(|end| end != "json") {
            continue;
        }
        match durable::read_json(&path) {
            Some(entry) => {
                entries.insert(path, entry);
            }
            None => damaged.push(path),
        }
    }
    Ok((entries, damaged))
}

impl Outbox {
    /// Opens the outbox below `root`. A file that does not read is moved aside, never deleted.
    pub(super) fn open(root: &Path) -> io::Result<Self> {
        let folder = root.join("outbox");
        let refused = root.join("refused");
        fs::create_dir_all(&folder)?;
        fs::create_dir_all(&refused)?;
        let numbers_file = root.join("numbers.json");
        let numbers = durable::read_json(&numbers_file).unwrap_or_default();
        let (entries, damaged) = read(&folder)?;
        for path in damaged {
            if let Some(name) = path.file_name() {
                durable::rename(&path, &refused.join(name))?;
            }
        }
        let (aside, damaged) = read(&refused)?;
        let unreadable = damaged.len();
        Ok(Self { folder, refused, numbers_file, numbers, entries, aside, unreadable })
    }

    /// The next number of kiosk `digit` in `show`; `at_least` is the first one the desk has not seen.
    /// It is used up even if the ticket is never sent.
    pub(super) fn next_number(
        &mut self,
        show: i64,
        digit: u8,
        at_least: u16,
    ) -> Result<TicketNumber, super::SendError> {
        let mine = if self.numbers.show == show { self.numbers.next } else { 0 };
        // Tickets of this show that still lie here count as well: the numbers file may be older than they are.
        let lying = self.entries.values().chain(self.aside.values()).filter(|entry| entry.ticket.show == show);
        let after_lying = lying.map(|entry| entry.ticket.number.sequence() + 1).max().unwrap_or(0);
        let sequence = mine.max(at_least).max(after_lying);
        let number = TicketNumber::new(digit, sequence).map_err(|_| NumberError::Range)?;
        let numbers = Numbers { show, next: sequence + 1 };
        durable::write_json(&self.numbers_file, &numbers)?;
        self.numbers = numbers;
        Ok(number)
    }

    /// Keeps a ticket; after `Ok` it survives a crash.
    pub(super) fn keep(&mut self, entry: Entry) -> io::Result<()> {
        // Version 7 ids sort by time, so the files' names are the order of sending.
        let path = self.folder.join(format!("{}.json", entry.ticket.id));
        durable::write_json(&path, &entry)?;
        self.entries.insert(path, entry);
        Ok(())
    }

    /// The guest gets the number now; after `Ok` that too survives a crash.
    pub(super) fn give_number(&mut self, id: Uuid) -> io::Result<()> {
        let Some(mut entry) = self.entries.values().find(|entry| entry.ticket.id == id).cloned() else { return Ok(()) };
        entry.number_given = true;
        self.keep(entry)
    }

    /// The ticket is at the desk, or was taken back.
    pub(super) fn release(&mut self, id: Uuid) -> io::Result<()> {
        if let Some(path) = self.path_of(id) {
            durable::remove(&path)?;
            self.entries.remove(&path);
        }
        // A crash may have left it in both places.
        self.release_aside(id)
    }

    /// The desk will never take the ticket, for this reason: it is kept aside.
    pub(super) fn set_aside(&mut self, id: Uuid, reason: String) -> io::Result<()> {
        let Some(path) = self.path_of(id) else { return Ok(()) };
        let Some(entry) = self.entries.get(&path) else { return Ok(()) };
        // Written first, then removed: after a crash between the two it is delivered, and refused, once more.
        let entry = Entry { reason: Some(reason), ..entry.clone() };
        let aside = self.refused.join(format!("{id}.json"));
        durable::write_json(&aside, &entry)?;
        self.aside.insert(aside, entry);
        durable::remove(&path)?;
        self.entries.remove(&path);
        Ok(())
    }

    /// The tickets that the desk did not take, oldest first.
    pub(super) fn aside(&self) -> impl Iterator<Item = &Entry> {
        self.aside.values()
    }

    /// How many files should be tickets and do not read. They are kept.
    pub(super) fn unreadable(&self) -> usize {
        self.unreadable
    }

    /// A ticket that was set aside is at the desk after all.
    pub(super) fn release_aside(&mut self, id: Uuid) -> io::Result<()> {
        let path = self.refused.join(format!("{id}.json"));
        if self.aside.contains_key(&path) {
            durable::remove(&path)?;
            self.aside.remove(&path);
        }
        Ok(())
    }

    /// A ticket that was set aside is not told any more. Its file is kept.
    pub(super) fn put_away(&mut self, id: Uuid) -> io::Result<()> {
        let name = format!("{id}.json");
        let path = self.refused.join(&name);
        if self.aside.contains_key(&path) {
            let folder = self.refused.join("put-away");
            fs::create_dir_all(&folder)?;
            durable::rename(&path, &folder.join(name))?;
            self.aside.remove(&path);
        }
        Ok(())
    }

    /// A ticket that was set aside was not taken once more, for this reason.
    pub(super) fn aside_because(&mut self, id: Uuid, reason: String) -> io::Result<()> {
        let path = self.refused.join(format!("{id}.json"));
        if let Some(entry) = self.aside.get_mut(&path) {
            entry.reason = Some(reason);
            durable::write_json(&path, entry)?;
        }
        Ok(())
    }

    /// The tickets on their way, oldest first.
    pub(super) fn entries(&self) -> impl Iterator<Item = &Entry> {
        self.entries.values()
    }

    fn path_of(&self, id: Uuid) -> Option<PathBuf> {
        self.entries.iter().find(|(_, entry)| entry.ticket.id == id).map(|(path, _)| path.clone())
    }
}
