//! The threads that talk to the desk, and the handle the kiosk holds.

use std::{
    fs::{self, File},
    io,
    path::PathBuf,
    sync::{
        Arc, Condvar, Mutex, MutexGuard, PoisonError,
        atomic::{AtomicBool, Ordering},
        mpsc,
    },
    thread::{self, JoinHandle},
    time::{Duration, Instant},
};

use serde::{Serialize, de::DeserializeOwned};

use super::{
    Draft, Kept, LinkConfig, News, NewsReceiver, Pairing, PinAnswer, SendError, Snapshot, disk, files,
    outbox::{Entry, Outbox},
    pin::PinMemory,
    wire::{CatalogContent, Delivery, DeliveryAnswer, DeskNews, PairRequest, PinQuestion},
};
use crate::ticket::SentTicket;

/// A guest waits for the number no longer than this; then it is given without the desk.
const DELIVERY_TIMEOUT: Duration = Duration::from_millis(2500);
/// Longer than the desk lets a question for news wait.
const NEWS_TIMEOUT: Duration = Duration::from_secs(25);
/// Pause after a failed try; the guest is not waiting any more.
const RETRY: Duration = Duration::from_secs(1);

/// The pairing kept in a kiosk's folder, if there is one.
pub fn kept_pairing(dir: &std::path::Path) -> Option<Pairing> {
    files::read_json(&dir.join("pairing.json"))
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
    _lock: File,
}

impl Drop for End {
    fn drop(&mut self) {
        self.shared.ended.store(true, Ordering::Relaxed);
        self.shared.outbox_changed.notify_all();
        // A delivery under way finishes first, so that nobody else opens the outbox meanwhile.
        if let Some(thread) = self.delivery.lock().unwrap_or_else(PoisonError::into_inner).take() {
            let _ = thread.join();
        }
    }
}

struct Shared {
    dir: PathBuf,
    news: Mutex<mpsc::Sender<News>>,
    wake: Arc<dyn Fn() + Send + Sync>,
    pairing: Mutex<Option<Pairing>>,
    desk: Mutex<Desk>,
    outbox: Mutex<Outbox>,
    outbox_changed: Condvar,
    pin: Mutex<PinMemory>,
    disk_nearly_full: AtomicBool,
    ended: AtomicBool,
}

/// What is known of the desk.
#[derive(Default)]
struct Desk {
    state: Option<DeskNews>,
    content: Option<Arc<CatalogContent>>,
    catalog: Option<Arc<crate::catalog::Catalog>>,
    in_reach: Option<bool>,
}

fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

impl Link {
    /// Opens the kiosk's folder, sends what was kept of the catalogue as news, and starts the line.
    ///
    /// # Errors
    /// The folder is used by another kiosk, or the disk refuses.
    pub fn open(config: LinkConfig) -> Result<(Self, NewsReceiver), LinkError> {
        let disk = |error| LinkError::Disk(config.dir.clone(), error);
        fs::create_dir_all(config.dir.join("pictures")).map_err(disk)?;
        let lock_file = File::create(config.dir.join("in-use")).map_err(disk)?;
        match lock_file.try_lock() {
            Ok(()) => {}
            Err(fs::TryLockError::WouldBlock) => return Err(LinkError::InUse(config.dir)),
            Err(fs::TryLockError::Error(error)) => return Err(disk(error)),
        }
        let outbox = Outbox::open(&config.dir).map_err(disk)?;
        let kept = kept_pairing(&config.dir);
        // What is kept already asks nothing of a disk that may be full.
        if let Some(pairing) = config.pairing.as_ref().filter(|pairing| kept.as_ref() != Some(*pairing)) {
            files::write_json(&config.dir.join("pairing.json"), pairing).map_err(disk)?;
        }
        let pairing = config.pairing.or(kept);
        let content: Option<CatalogContent> = files::read_json(&config.dir.join("catalog.json"));
        let desk = Desk {
            state: files::read_json(&config.dir.join("desk.json")).filter(|_| content.is_some()),
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
            ended: AtomicBool::new(false),
        });
        shared.tell_snapshot();
        shared.tell_pictures(None);
        // The number of a ticket from before a crash may never have been shown; it is good from now on.
        shared.give_pending_numbers();

        let for_delivery = Arc::clone(&shared);
        let delivery = spawn("delivery", move || for_delivery.deliver());
        let for_news = Arc::clone(&shared);
        spawn("news", move || for_news.follow());
        let end = End { shared: Arc::clone(&shared), delivery: Mutex::new(delivery), _lock: lock_file };
        Ok((Self { shared, _end: Arc::new(end) }, receiver))
    }

    /// Writes the ticket durably and starts its delivery. After `Ok` it can't be lost; one of
    /// [`News::Delivered`], [`News::Waiting`], [`News::Short`] and [`News::Refused`] follows within about 3 s.
    ///
    /// # Errors
    /// The kiosk is not paired, its numbers are used up, or the disk refuses; then nothing was sent.
    pub fn send(&self, draft: Draft) -> Result<Kept, SendError> {
        let digit = self.digit().ok_or(SendError::NotPaired)?;
        let (show, at_least) = {
            let desk = lock(&self.shared.desk);
            let state = desk.state.as_ref().ok_or(SendError::NotPaired)?;
            (state.show, state.next_sequence)
        };
        let mut outbox = lock(&self.shared.outbox);
        let number = outbox.next_number(show, digit, at_least)?;
        let ticket = SentTicket {
            id: draft.id,
            show,
            number,
            piece: draft.piece,
            quote: draft.quote,
            verdict: draft.verdict,
            grown_up_confirmed: draft.grown_up_confirmed,
        };
        let kept = Kept { id: ticket.id, number };
        outbox.keep(Entry { ticket, number_given: false })?;
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

/// Why the desk gave no answer.
#[derive(Debug)]
enum Unanswered {
    NotPaired,
    Away(String),
    Status(u16),
}

impl Shared {
    fn ended(&self) -> bool {
        self.ended.load(Ordering::Relaxed)
    }

    fn tell(&self, news: News) {
        // The receiver is gone only when the kiosk ends.
        let _ = lock(&self.news).send(news);
        (self.wake)();
    }

    /// The counts less what lies in the outbox, which the desk may not know of yet.
    fn tell_snapshot(&self) {
        let snapshot = {
            let desk = lock(&self.desk);
            let (Some(state), Some(catalog)) = (&desk.state, &desk.catalog) else { return };
            let mut available = state.available.clone();
            for entry in lock(&self.outbox).entries() {
                let piece = &entry.ticket.piece;
                for id in std::iter::once(&piece.base).chain(&piece.drops) {
                    if let Some(count) = available.get_mut(id) {
                        *count = count.saturating_sub(1);
                    }
                }
            }
            Snapshot { catalog: Arc::clone(catalog), available, revision: state.revision.clone() }
        };
        self.tell(News::Snapshot(Arc::new(snapshot)));
    }

    /// Tells every kept picture that was not the same `before`.
    fn tell_pictures(&self, before: Option<&CatalogContent>) {
        let Some(content) = lock(&self.desk).content.clone() else { return };
        for (name, hash) in &content.pictures {
            if before.is_some_and(|before| before.pictures.get(name) == Some(hash)) {
                continue;
            }
            if let Ok(bytes) = fs::read(self.dir.join("pictures").join(hash)) {
                self.tell(News::Picture { name: name.clone(), bytes: Arc::new(bytes) });
            }
        }
    }

    fn in_reach(&self, now: bool) {
        let before = lock(&self.desk).in_reach.replace(now);
        if before != Some(now) {
            self.tell(News::DeskInReach(now));
        }
    }

    fn look_at_disk(&self) {
        let now = disk::is_nearly_full(&self.dir);
        if self.disk_nearly_full.swap(now, Ordering::Relaxed) != now {
            self.tell(News::DiskNearlyFull(now));
        }
    }

    fn ask<T: DeserializeOwned>(
        &self,
        path: &str,
        body: Option<&impl Serialize>,
        timeout: Duration,
    ) -> Result<T, Unanswered> {
        let pairing = lock(&self.pairing).clone().ok_or(Unanswered::NotPaired)?;
        let away = |error: ureq::Error| Unanswered::Away(error.to_string());
        let url = format!("{}{path}", pairing.desk);
        let key = format!("Bearer {}", pairing.key);
        let agent = agent(timeout);
        let mut response = match body {
            Some(body) => agent.post(&url).header("authorization", &key).send_json(body),
            None => agent.get(&url).header("authorization", &key).call(),
        }
        .map_err(away)?;
        match response.status().as_u16() {
            200 => response.body_mut().with_config().limit(64 * 1024 * 1024).read_json().map_err(away),
            status => Err(Unanswered::Status(status)),
        }
    }

    fn pair(&self, desk: &str, code: String) -> Result<u8, String> {
        let desk = desk_url(desk);
        let mut response =
            agent(DELIVERY_TIMEOUT).post(format!("{desk}/link/pair")).send_json(&PairRequest { code }).map_err(
                |error| format!("no desk answers at {desk} ({error}); compare the address with the desk's page"),
            )?;
        if response.status() != 200 {
            return Err("the desk does not know this code; ask for a new one on its Kiosks page".into());
        }
        let mut pairing: Pairing =
            response.body_mut().read_json().map_err(|error| format!("{desk} does not answer as a desk ({error})"))?;
        // The address that was reached is the one that works from here.
        pairing.desk = desk;
        files::write_json(&self.dir.join("pairing.json"), &pairing)
            .map_err(|error| format!("the pairing could not be written to this tablet's disk ({error})"))?;
        let digit = pairing.digit;
        *lock(&self.pairing) = Some(pairing);
        self.outbox_changed.notify_all();
        Ok(digit)
    }

    /// Follows the desk's news until the end.
    fn follow(&self) {
        while !self.ended() {
            self.look_at_disk();
            let (have, revision) = {
                let desk = lock(&self.desk);
                match &desk.state {
                    // The first question after a start asks for everything that is new at once.
                    Some(state) if desk.in_reach == Some(true) => (state.change, state.revision.clone()),
                    Some(state) => (-1, state.revision.clone()),
                    None => (-1, String::new()),
                }
            };
            let path = format!("/link/news?have={have}&revision={revision}");
            match self.ask::<DeskNews>(&path, None::<&()>, NEWS_TIMEOUT) {
                Ok(_) if self.ended() => return,
                Ok(news) => {
                    if let Err(error) = self.take_in(news) {
                        tracing::warn!("the desk's news could not be kept: {error}");
                        thread::sleep(RETRY);
                    }
                    self.in_reach(true);
                }
                Err(Unanswered::NotPaired) => thread::sleep(RETRY / 5),
                Err(Unanswered::Away(reason)) => {
                    tracing::debug!("no desk: {reason}");
                    self.in_reach(false);
                    thread::sleep(RETRY);
                }
                Err(Unanswered::Status(status)) => {
                    tracing::warn!("the desk answers {status}; is this kiosk still paired?");
                    self.in_reach(false);
                    thread::sleep(RETRY);
                }
            }
        }
    }

    /// Keeps the desk's news on disk, then shows them.
    fn take_in(&self, mut news: DeskNews) -> io::Result<()> {
        let before = lock(&self.desk).content.clone();
        if let Some(content) = news.content.take() {
            self.fetch_pictures(&content)?;
            files::write_json(&self.dir.join("catalog.json"), &content)?;
            let mut desk = lock(&self.desk);
            desk.catalog = Some(Arc::new(content.catalog.clone()));
            desk.content = Some(Arc::new(content));
        }
        files::write_json(&self.dir.join("desk.json"), &news)?;
        lock(&self.desk).state = Some(news);
        self.tell_snapshot();
        if before.as_deref() != lock(&self.desk).content.as_deref() {
            self.tell_pictures(before.as_deref());
        }
        Ok(())
    }

    /// Fetches the pictures that are not kept yet. One that can't be had now is asked for again with the next catalogue.
    fn fetch_pictures(&self, content: &CatalogContent) -> io::Result<()> {
        let Some(pairing) = lock(&self.pairing).clone() else { return Ok(()) };
        let agent = agent(NEWS_TIMEOUT);
        let folder = self.dir.join("pictures");
        for (name, hash) in &content.pictures {
            let path = folder.join(hash);
            if !hash.bytes().all(|b| b.is_ascii_hexdigit()) || path.exists() {
                continue;
            }
            let answer = agent
                .get(format!("{}/link/picture/{name}", pairing.desk))
                .header("authorization", format!("Bearer {}", pairing.key))
                .call()
                .and_then(|mut response| response.body_mut().with_config().limit(32 * 1024 * 1024).read_to_vec());
            match answer {
                Ok(bytes) => files::write(&path, &bytes)?,
                Err(error) => tracing::warn!("picture {name}: {error}"),
            }
        }
        for file in fs::read_dir(&folder)?.flatten() {
            let name = file.file_name();
            if !content.pictures.values().any(|hash| name == hash.as_str()) {
                fs::remove_file(file.path())?;
            }
        }
        Ok(())
    }

    /// Delivers the outbox until the end, oldest first.
    fn deliver(&self) {
        let mut failed = false;
        loop {
            let entry = {
                let mut outbox = lock(&self.outbox);
                loop {
                    if self.ended() {
                        return;
                    }
                    // A guest who waits comes before tickets whose number is already given.
                    let waiting =
                        outbox.entries().find(|entry| !entry.number_given).or(outbox.entries().next()).cloned();
                    match waiting {
                        Some(entry) if !failed || !entry.number_given => break entry,
                        Some(_) => {
                            failed = false;
                            outbox = self
                                .outbox_changed
                                .wait_timeout(outbox, RETRY)
                                .map(|(outbox, _)| outbox)
                                .unwrap_or_else(|poisoned| poisoned.into_inner().0);
                        }
                        None => {
                            outbox = self.outbox_changed.wait(outbox).unwrap_or_else(PoisonError::into_inner);
                        }
                    }
                }
            };
            match self.deliver_one(&entry) {
                Ok(delivered) => failed = !delivered,
                Err(error) => {
                    tracing::error!("the outbox can't be written: {error}");
                    failed = true;
                    thread::sleep(RETRY);
                }
            }
        }
    }

    /// One try; whether the desk answered.
    fn deliver_one(&self, entry: &Entry) -> io::Result<bool> {
        let kept = Kept { id: entry.ticket.id, number: entry.ticket.number };
        let delivery = Delivery { ticket: entry.ticket.clone(), refuse_if_short: !entry.number_given };
        let answer = self.ask::<DeliveryAnswer>("/link/tickets", Some(&delivery), DELIVERY_TIMEOUT);
        let news = match answer {
            Ok(DeliveryAnswer::Stored { short }) => {
                lock(&self.outbox).release(kept.id)?;
                News::Delivered { kept, short }
            }
            Ok(DeliveryAnswer::Short { parts }) => {
                lock(&self.outbox).release(kept.id)?;
                News::Short { kept, parts }
            }
            Ok(DeliveryAnswer::Refused { reason }) => {
                lock(&self.outbox).set_aside(kept.id)?;
                News::Refused { kept, reason }
            }
            Err(reason) => {
                tracing::debug!("ticket {} waits: {reason:?}", kept.number);
                if !entry.number_given {
                    lock(&self.outbox).give_number(kept.id)?;
                    self.tell(News::Waiting(kept));
                    self.tell_snapshot();
                }
                return Ok(false);
            }
        };
        self.tell(news);
        Ok(true)
    }

    fn give_pending_numbers(&self) {
        let pending: Vec<Kept> = lock(&self.outbox)
            .entries()
            .filter(|entry| !entry.number_given)
            .map(|entry| Kept { id: entry.ticket.id, number: entry.ticket.number })
            .collect();
        for kept in pending {
            let given = lock(&self.outbox).give_number(kept.id);
            match given {
                Ok(()) => self.tell(News::Waiting(kept)),
                Err(error) => tracing::error!("the outbox can't be written: {error}"),
            }
        }
    }
}

fn agent(timeout: Duration) -> ureq::Agent {
    ureq::Agent::config_builder()
        .timeout_connect(Some(Duration::from_millis(1500)))
        .timeout_global(Some(timeout))
        .http_status_as_error(false)
        .build()
        .new_agent()
}

/// `192.168.4.1` typed on a tablet means `http://192.168.4.1:7345`.
fn desk_url(typed: &str) -> String {
    let typed = typed.trim().trim_end_matches('/');
    let (scheme, host) = typed.split_once("://").unwrap_or(("http", typed));
    let has_port = host.rsplit_once(':').is_some_and(|(_, port)| port.bytes().all(|b| b.is_ascii_digit()));
    if has_port { format!("{scheme}://{host}") } else { format!("{scheme}://{host}:{}", super::DESK_PORT) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_as_a_seller_types_it() {
        for (typed, url) in [
            ("192.168.4.1", "http://192.168.4.1:7345"),
            (" 192.168.4.1:8000/ ", "http://192.168.4.1:8000"),
            ("http://desk.local:7345", "http://desk.local:7345"),
        ] {
            assert_eq!(desk_url(typed), url);
        }
    }
}
