//! The handle that a kiosk holds on its line to the desk.

use std::{
    fs, io,
    path::PathBuf,
    sync::{
        Arc, Condvar, Mutex, PoisonError,
        atomic::{AtomicBool, Ordering},
        mpsc,
    },
    thread::{self, JoinHandle},
    time::Instant,
};

use super::{
    Draft, Kept, LinkConfig, LookedUp, News, NewsReceiver, Pairing, PinAnswer, SendError,
    ask::{Unanswered, was_let_go},
    outbox::{Entry, Outbox},
    own_key,
    pin_memory::PinMemory,
    shared::{DELIVERY_TIMEOUT, Desk, Shared, lock},
    wire::{CatalogContent, PieceToThread, PinQuestion},
};
use crate::{
    disk::{self, FolderLock, LockError, durable},
    ticket::{SentTicket, TicketNumber},
};

/// The pairing kept in a kiosk's folder, if there is one.
pub fn kept_pairing(dir: &std::path::Path) -> Option<Pairing> {
    durable::read_json(&dir.join("pairing.json"))
}

/// Why a kiosk's folder can't be opened.
#[derive(Debug, thiserror::Error)]
pub enum LinkError {
    /// Another kiosk uses it.
    #[error("another kiosk is running on {0}; close it first")]
    InUse(PathBuf),
    /// The disk refuses.
    #[error("the kiosk's folder {0} can't be used: {1}")]
    Disk(PathBuf, io::Error),
}

/// The handle. Clones share one line; the last one to go ends it.
#[derive(Clone)]
pub struct Link {
    shared: Arc<Shared>,
    // Last field: the threads end after the handle's own use of `shared`.
    _end: Arc<End>,
}

struct End {
    shared: Arc<Shared>,
    delivery: Mutex<Option<JoinHandle<()>>>,
    _lock: FolderLock,
}

impl Drop for End {
    fn drop(&mut self) {
        {
            // Whoever delivers looks whether it is the end with the outbox locked, and waits with the same lock: set without
            // it, the end could come between the two, and nobody would wake what waits.
            let _outbox = lock(&self.shared.outbox);
            self.shared.ended.store(true, Ordering::Relaxed);
        }
        self.shared.outbox_changed.notify_all();
        // A delivery under way finishes first, so that nobody else opens the outbox meanwhile.
        if let Some(thread) = self.delivery.lock().unwrap_or_else(PoisonError::into_inner).take() {
            let _ = thread.join();
        }
    }
}

impl Link {
    /// Opens the kiosk's folder, sends what was kept of the catalogue as news, and starts the line.
    ///
    /// # Errors
    /// The folder is used by another kiosk, or the disk refuses.
    pub fn open(config: LinkConfig) -> Result<(Self, NewsReceiver), LinkError> {
        let refused = |error| LinkError::Disk(config.dir.clone(), error);
        let ours = |name: &str| ["outbox", "refused", "pictures"].contains(&name) || name.ends_with(".json");
        disk::make_private(&config.dir, ours).map_err(refused)?;
        fs::create_dir_all(config.dir.join("pictures")).map_err(refused)?;
        let folder_lock = FolderLock::take(&config.dir).map_err(|error| match error {
            LockError::InUse => LinkError::InUse(config.dir.clone()),
            LockError::Disk(error) => refused(error),
        })?;
        let outbox = Outbox::open(&config.dir).map_err(refused)?;
        let kept = kept_pairing(&config.dir);
        // What is kept already asks nothing of a disk that may be full.
        if let Some(pairing) = config.pairing.as_ref().filter(|pairing| kept.as_ref() != Some(*pairing)) {
            durable::write_json(&config.dir.join("pairing.json"), pairing).map_err(refused)?;
            own_key::forget(&config.dir).map_err(refused)?;
        }
        let pairing = config.pairing.or(kept);
        let let_go = was_let_go(&config.dir, pairing.as_ref());
        let content: Option<CatalogContent> = durable::read_json(&config.dir.join("catalog.json"));
        let desk = Desk {
            state: durable::read_json(&config.dir.join("desk.json")).filter(|_| content.is_some()),
            catalog: content.as_ref().map(|content| Arc::new(content.catalog.clone())),
            content: content.map(Arc::new),
            in_reach: None,
        };
        let (sender, receiver) = mpsc::channel();
        let shared = Arc::new(Shared {
            pin: Mutex::new(PinMemory::open(&config.dir)),
            dir: config.dir,
            news: Mutex::new(sender),
            wake: config.wake,
            pairing: Mutex::new(pairing),
            desk: Mutex::new(desk),
            outbox: Mutex::new(outbox),
            outbox_changed: Condvar::new(),
            disk_nearly_full: AtomicBool::new(false),
            let_go: AtomicBool::new(let_go),
            tries: Mutex::default(),
            reported: Mutex::default(),
            ended: AtomicBool::new(false),
        });
        shared.tell_snapshot();
        shared.tell_pictures(None);
        if let_go {
            shared.tell(News::LetGo(true));
        }
        if lock(&shared.desk).practises() {
            shared.tell(News::Practice(true));
        }
        // The number of a ticket from before a crash may never have been shown; it is good from now on.
        shared.give_pending_numbers();

        let for_delivery = Arc::clone(&shared);
        let delivery = spawn("delivery", move || for_delivery.deliver());
        let for_news = Arc::clone(&shared);
        spawn("news", move || for_news.follow());
        let end = End { shared: Arc::clone(&shared), delivery: Mutex::new(delivery), _lock: folder_lock };
        Ok((Self { shared, _end: Arc::new(end) }, receiver))
    }

    /// Writes the ticket durably and starts its delivery. After `Ok` it can't be lost; one of
    /// [`News::Delivered`], [`News::Waiting`], [`News::Short`] and [`News::Refused`] follows within about 3 s.
    ///
    /// # Errors
    /// The kiosk is not paired or was let go, its numbers are used up, or the disk refuses; then nothing was sent.
    pub fn send(&self, draft: Draft) -> Result<Kept, SendError> {
        let digit = self.digit().ok_or(SendError::NotPaired)?;
        // Its number would be good for nothing.
        if self.shared.is_let_go() {
            return Err(SendError::LetGo);
        }
        let (show, at_least, practice) = {
            let desk = lock(&self.shared.desk);
            let state = desk.state.as_ref().ok_or(SendError::NotPaired)?;
            (state.show, state.next_sequence, state.practice)
        };
        let mut outbox = lock(&self.shared.outbox);
        let number = outbox.next_number(show, digit, at_least, practice)?;
        let ticket = SentTicket {
            id: draft.id,
            show,
            number,
            piece: draft.piece,
            quote: draft.quote,
            verdict: draft.verdict,
            grown_up_confirmed: draft.grown_up_confirmed,
            practice,
        };
        let kept = Kept { id: ticket.id, number };
        outbox.keep(Entry { ticket, number_given: false, reason: None, why: None })?;
        drop(outbox);
        self.shared.outbox_changed.notify_all();
        Ok(kept)
    }

    /// [`Link::send`] for a screen that must not wait for the disk. News follows in any case, also when it could not be
    /// kept: [`News::NotKept`].
    pub fn send_aside(&self, draft: Draft) {
        let (link, shared) = (self.clone(), Arc::clone(&self.shared));
        let id = draft.id;
        let sending = spawn("sending", move || {
            let sent = link.send(draft);
            // Whoever hears of it finds the folder free.
            drop(link);
            if let Err(error) = sent {
                shared.tell(News::NotKept { id, error });
            }
        });
        if sending.is_none() {
            let error = SendError::Disk("no thread could be started".into());
            self.shared.tell(News::NotKept { id, error });
        }
    }

    /// Asks whether this is the seller's PIN; the answer comes as [`News::Pin`].
    pub fn ask_pin(&self, pin: String) {
        let shared = Arc::clone(&self.shared);
        spawn("pin", move || {
            let asked = shared.ask::<PinAnswer>("/link/pin", Some(&PinQuestion { pin: pin.clone() }), DELIVERY_TIMEOUT);
            let mut memory = lock(&shared.pin);
            let answer = match asked {
                Ok(PinAnswer::Right) => {
                    memory.keep(&pin);
                    Some(PinAnswer::Right)
                }
                Ok(answer) => Some(answer),
                Err(_) => memory.ask(&pin, Instant::now()),
            };
            drop(memory);
            shared.tell(News::Pin(answer));
        });
    }

    /// Asks for the piece of a ticket, to thread it; the answer comes as [`News::LookedUp`]. What still lies here is found
    /// without the desk.
    pub fn look_up(&self, number: TicketNumber) {
        let shared = Arc::clone(&self.shared);
        spawn("looking up", move || {
            let waiting = lock(&shared.outbox)
                .entries()
                .find(|entry| entry.ticket.number == number)
                .map(|entry| entry.ticket.piece.clone());
            let path = format!("/link/piece/{number}");
            let found = match waiting {
                Some(piece) => LookedUp::Piece(piece),
                None => match shared.ask::<PieceToThread>(&path, None::<&()>, DELIVERY_TIMEOUT) {
                    Ok(found) => LookedUp::Piece(found.piece),
                    Err(Unanswered::Status(404, _)) => LookedUp::Unknown,
                    Err(_) => LookedUp::Away,
                },
            };
            shared.tell(News::LookedUp { number, found });
        });
    }

    /// Pairs this kiosk with the desk at `desk`; the answer comes as [`News::Paired`].
    pub fn pair(&self, desk: String, code: String) {
        let shared = Arc::clone(&self.shared);
        spawn("pairing", move || {
            let outcome = shared.pair(&desk, code);
            shared.tell(News::Paired(outcome));
        });
    }

    /// Whether this kiosk belongs to a desk.
    pub fn is_paired(&self) -> bool {
        lock(&self.shared.pairing).is_some()
    }

    /// Whether the desk does not know this kiosk any more.
    pub fn is_let_go(&self) -> bool {
        self.shared.is_let_go()
    }

    /// How many tickets the desk did not take; they are kept here until the seller has them taken in.
    pub fn aside(&self) -> usize {
        lock(&self.shared.outbox).aside().count()
    }

    /// How many tickets are not at the desk yet.
    pub fn waiting(&self) -> usize {
        lock(&self.shared.outbox).entries().count()
    }

    /// This kiosk's digit.
    pub fn digit(&self) -> Option<u8> {
        lock(&self.shared.pairing).as_ref().map(|pairing| pairing.digit)
    }

    /// The desk's address.
    pub fn desk(&self) -> Option<String> {
        lock(&self.shared.pairing).as_ref().map(|pairing| pairing.desk.clone())
    }
}

fn spawn(name: &str, work: impl FnOnce() + Send + 'static) -> Option<JoinHandle<()>> {
    match thread::Builder::new().name(name.to_owned()).spawn(work) {
        Ok(thread) => Some(thread),
        Err(error) => {
            tracing::error!("no thread for the {name}: {error}");
            None
        }
    }
}
