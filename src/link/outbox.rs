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
    ticket::{NotTaken, NumberError, SentTicket, TicketNumber},
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
    /// The same as a code with its facts, where the desk or this tablet knew one.
    #[serde(default, deserialize_with = "NotTaken::known_or_none", skip_serializing_if = "Option::is_none")]
    pub why: Option<NotTaken>,
}

/// The numbers given in one show.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
struct Numbers {
    show: i64,
    next: u16,
}

/// A ticket that lies here, with the files that it lies in: one, and what copies of that somebody has made.
struct Lying {
    entry: Entry,
    files: Vec<PathBuf>,
}

/// Tickets by their ids. Version 7 ids sort by time, so their order is the order of sending.
type Tickets = BTreeMap<Uuid, Lying>;

/// The outbox of a kiosk.
pub(super) struct Outbox {
    folder: PathBuf,
    refused: PathBuf,
    numbers_file: PathBuf,
    numbers: Numbers,
    /// The numbers given to practise. They are nobody's, so the disk need not know them.
    practice: Numbers,
    entries: Tickets,
    aside: Tickets,
    unreadable: usize,
}

fn file_of(folder: &Path, id: Uuid) -> PathBuf {
    folder.join(format!("{id}.json"))
}

/// The tickets in the files of `folder`, whatever the files are called, and the files that hold none: what does not read,
/// and another ticket under the id of one that is there.
fn read(folder: &Path) -> io::Result<(Tickets, Vec<PathBuf>)> {
    let mut paths: Vec<PathBuf> = fs::read_dir(folder)?.flatten().map(|file| file.path()).collect();
    paths.retain(|path| path.extension().is_some_and(|end| end == "json"));
    paths.sort();
    let (mut tickets, mut strange) = (Tickets::new(), Vec::new());
    for path in paths {
        let Some(entry) = durable::read_json::<Entry>(&path) else {
            strange.push(path);
            continue;
        };
        let id = entry.ticket.id;
        match tickets.get_mut(&id) {
            None => {
                tickets.insert(id, Lying { entry, files: vec![path] });
            }
            Some(known) if known.entry.ticket == entry.ticket => {
                known.entry.number_given |= entry.number_given;
                if known.entry.reason.is_none() {
                    (known.entry.reason, known.entry.why) = (entry.reason, entry.why);
                }
                known.files.push(path);
            }
            // The one in the file of its name is the ticket.
            Some(known) if path == file_of(folder, id) => {
                strange.append(&mut known.files);
                *known = Lying { entry, files: vec![path] };
            }
            Some(_) => strange.push(path),
        }
    }
    Ok((tickets, strange))
}

impl Outbox {
    /// Opens the outbox below `root`. A file that holds no ticket is moved aside, never deleted.
    pub(super) fn open(root: &Path) -> io::Result<Self> {
        let folder = root.join("outbox");
        let refused = root.join("refused");
        fs::create_dir_all(&folder)?;
        fs::create_dir_all(&refused)?;
        let numbers_file = root.join("numbers.json");
        let numbers = durable::read_json(&numbers_file).unwrap_or_default();
        let (entries, strange) = read(&folder)?;
        for path in strange {
            durable::move_into(&path, &refused)?;
        }
        let (aside, strange) = read(&refused)?;
        let unreadable = strange.len();
        let mut outbox =
            Self { folder, refused, numbers_file, numbers, practice: Numbers::default(), entries, aside, unreadable };
        outbox.send_copies_of(&strange)?;
        Ok(outbox)
    }

    /// What lies aside only since somebody put it beside a ticket's damaged file was never refused: it is on its way.
    fn send_copies_of(&mut self, damaged: &[PathBuf]) -> io::Result<()> {
        let is_copy = |(id, lying): &(&Uuid, &Lying)| {
            lying.entry.reason.is_none() && damaged.contains(&file_of(&self.refused, **id))
        };
        let copies: Vec<Uuid> = self.aside.iter().filter(is_copy).map(|(id, _)| *id).collect();
        for id in copies {
            let Some(entry) = self.aside.get(&id).map(|lying| lying.entry.clone()) else { continue };
            if !self.entries.contains_key(&id) {
                self.keep(entry)?;
            }
            self.release_aside(id)?;
        }
        Ok(())
    }

    /// The next number of kiosk `digit` in `show`; `at_least` is the first one the desk has not seen.
    /// It is used up even if the ticket is never sent. What is given in practice uses up no real one.
    pub(super) fn next_number(
        &mut self,
        show: i64,
        digit: u8,
        at_least: u16,
        practice: bool,
    ) -> Result<TicketNumber, super::SendError> {
        let given = if practice { self.practice } else { self.numbers };
        let mine = if given.show == show { given.next } else { 0 };
        // Tickets of this show that still lie here count as well: the numbers file may be older than they are.
        let lying = self.entries().chain(self.aside()).map(|entry| &entry.ticket);
        let lying = lying.filter(|ticket| ticket.show == show && ticket.practice == practice);
        let after_lying = lying.map(|ticket| ticket.number.sequence() + 1).max().unwrap_or(0);
        let sequence = mine.max(at_least).max(after_lying).max(TicketNumber::FIRST);
        let number = TicketNumber::new(digit, sequence).map_err(|_| NumberError::Range)?;
        let numbers = Numbers { show, next: sequence + 1 };
        if practice {
            self.practice = numbers;
        } else {
            durable::write_json(&self.numbers_file, &numbers)?;
            self.numbers = numbers;
        }
        Ok(number)
    }

    /// Practice is over: its numbers begin anew the next time.
    pub(super) fn forget_practice(&mut self) {
        self.practice = Numbers::default();
    }

    /// Keeps a ticket; after `Ok` it survives a crash.
    pub(super) fn keep(&mut self, entry: Entry) -> io::Result<()> {
        let (id, path) = (entry.ticket.id, file_of(&self.folder, entry.ticket.id));
        durable::write_json(&path, &entry)?;
        let mut files = self.entries.remove(&id).map(|lying| lying.files).unwrap_or_default();
        if !files.contains(&path) {
            files.push(path);
        }
        self.entries.insert(id, Lying { entry, files });
        Ok(())
    }

    /// The guest gets the number now; after `Ok` that too survives a crash.
    pub(super) fn give_number(&mut self, id: Uuid) -> io::Result<()> {
        let Some(mut entry) = self.entries.get(&id).map(|lying| lying.entry.clone()) else { return Ok(()) };
        entry.number_given = true;
        self.keep(entry)
    }

    /// The ticket is at the desk, or was taken back.
    pub(super) fn release(&mut self, id: Uuid) -> io::Result<()> {
        remove(&mut self.entries, id)?;
        // A crash may have left it in both places.
        self.release_aside(id)
    }

    /// The desk will never take the ticket, for this reason: it is kept aside.
    pub(super) fn set_aside(&mut self, id: Uuid, reason: String, why: Option<NotTaken>) -> io::Result<()> {
        let Some(lying) = self.entries.get(&id) else { return Ok(()) };
        // Written first, then removed: after a crash between the two it is delivered, and refused, once more.
        let entry = Entry { reason: Some(reason), why, ..lying.entry.clone() };
        let path = file_of(&self.refused, id);
        let mut files = self.aside.get(&id).map(|lying| lying.files.clone()).unwrap_or_default();
        if !files.contains(&path) {
            if path.exists() {
                durable::move_into(&path, &self.refused)?;
            }
            files.push(path.clone());
        }
        durable::write_json(&path, &entry)?;
        self.aside.insert(id, Lying { entry, files });
        remove(&mut self.entries, id)
    }

    /// The tickets that the desk did not take, oldest first.
    pub(super) fn aside(&self) -> impl Iterator<Item = &Entry> {
        self.aside.values().map(|lying| &lying.entry)
    }

    /// How many files should be tickets and do not read. They are kept.
    pub(super) fn unreadable(&self) -> usize {
        self.unreadable
    }

    /// A ticket that was set aside is at the desk after all.
    pub(super) fn release_aside(&mut self, id: Uuid) -> io::Result<()> {
        remove(&mut self.aside, id)
    }

    /// A ticket that was set aside is not told any more. Its files are kept.
    pub(super) fn put_away(&mut self, id: Uuid) -> io::Result<()> {
        let Some(lying) = self.aside.get_mut(&id) else { return Ok(()) };
        let folder = self.refused.join("put-away");
        fs::create_dir_all(&folder)?;
        while let Some(path) = lying.files.last() {
            durable::move_into(path, &folder)?;
            lying.files.pop();
        }
        self.aside.remove(&id);
        Ok(())
    }

    /// A ticket that was set aside was not taken once more, for this reason.
    pub(super) fn aside_because(&mut self, id: Uuid, reason: String, why: Option<NotTaken>) -> io::Result<()> {
        let Some(lying) = self.aside.get_mut(&id) else { return Ok(()) };
        (lying.entry.reason, lying.entry.why) = (Some(reason), why);
        lying.files.iter().try_for_each(|path| durable::write_json(path, &lying.entry))
    }

    /// The tickets on their way, oldest first.
    pub(super) fn entries(&self) -> impl Iterator<Item = &Entry> {
        self.entries.values().map(|lying| &lying.entry)
    }
}

/// Removes a ticket for good, with every file that it lies in.
fn remove(tickets: &mut Tickets, id: Uuid) -> io::Result<()> {
    let Some(lying) = tickets.get_mut(&id) else { return Ok(()) };
    while let Some(path) = lying.files.last() {
        match durable::remove(path) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(error),
            _ => lying.files.pop(),
        };
    }
    tickets.remove(&id);
    Ok(())
}
