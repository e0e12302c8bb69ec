//! Starting and stopping the desk.

use std::{
    net::{IpAddr, Ipv4Addr, SocketAddr, TcpListener},
    path::{Path, PathBuf},
    sync::{Arc, Mutex, OnceLock, PoisonError},
    thread::{self, JoinHandle},
    time::Duration,
};

use axum::Router;
use jiff::Timestamp;
use tokio::sync::{oneshot, watch};
use tower_http::{
    CompressionLevel,
    catch_panic::CatchPanicLayer,
    compression::{CompressionLayer, DefaultPredicate, Predicate, predicate::NotForContentType},
};

use super::{
    alarms::Alarms,
    answers::{self, lead_away_from_pins},
    assets,
    auth::Auth,
    clock::Clock,
    connections::{Caller, GuardedListener, receive_body},
    cut_search::CutSearches,
    editing::take_in,
    end_holds,
    error::DeskError,
    events::{self, BETWEEN_BEATS},
    fragments::send_changes,
    gallery::Gallery,
    guard::{after_panic, guard},
    kept_answers::Answers,
    kiosk_interface, language,
    ledger_thread::LedgerThread,
    live_catalog::LiveCatalog,
    outward::outward,
    pages,
    photos::let_photos_in,
    practice::Practice,
    practising::keep_apart,
    printing::Printing,
    refusal_forms::put_into_form,
    state::{DeskState, is_ours},
    table_cuts::TableCuts,
    tablets::Tablets,
    tray_drafts::TrayDrafts,
};
use crate::{
    catalog::{TableEditor, Watch, watch},
    disk::{self, FolderLock, LockError, digest::sha256_hex},
    ledger::{Ledger, LedgerError, restore_now},
    link::Pairing,
};

/// How a desk starts.
#[derive(Debug, Clone)]
pub struct DeskConfig {
    /// The catalogue's folder.
    pub catalog_dir: PathBuf,
    /// The folder for ledger and copies.
    pub data_dir: PathBuf,
    /// Where to answer; port 0 takes a free one.
    pub listen: SocketAddr,
}

/// A running desk; it stops when dropped.
pub struct Desk {
    state: Arc<DeskState>,
    close: watch::Sender<bool>,
    server: Mutex<Option<JoinHandle<()>>>,
    _watch: Option<Watch>,
    _lock: FolderLock,
}

/// Requests under way when the desk closes get this long.
const LAST_ANSWERS: Duration = Duration::from_secs(1);

/// Takes in what is edited in the catalogue's folder, for as long as the desk runs.
fn watch_folder(desk: &Arc<DeskState>, folder: &Path) -> Option<Watch> {
    let desk = Arc::downgrade(desk);
    let watching = watch(folder, move || {
        if let Some(desk) = desk.upgrade() {
            take_in(&desk);
        }
    });
    watching
        .inspect_err(|error| {
            tracing::warn!("the catalogue's folder can't be watched, edits count after a restart: {error}");
        })
        .ok()
}

/// The ledger in the data folder, after a backup that was to take its place at the next start has taken it.
fn open_ledger(data_dir: &Path, now: Timestamp) -> Result<Ledger, DeskError> {
    let file = data_dir.join("ledger.sqlite");
    if let Some(kept) = restore_now(&file).map_err(|error| DeskError::Restore(Box::new(error)))? {
        tracing::info!("a backup has taken the ledger's place; what was there lies in {}", kept.display());
    }
    Ok(Ledger::open(&file, now)?)
}

impl Desk {
    /// Reads the catalogue, opens the ledger, and answers.
    ///
    /// # Errors
    /// What is in the way, in words for the seller.
    pub fn start(config: DeskConfig) -> Result<Self, DeskError> {
        Self::start_by(config, Clock::of_this_machine())
    }

    /// The same for a desk that goes by another clock than the machine's.
    ///
    /// # Errors
    /// As for [`Desk::start`].
    pub fn start_by(config: DeskConfig, clock: Clock) -> Result<Self, DeskError> {
        // From the very beginning: on a busy machine starting takes long enough for somebody to set the clock meanwhile.
        let watched = clock.clone().watched();
        let data = |error| DeskError::Data(config.data_dir.clone(), error);
        disk::make_private(&config.data_dir, is_ours).map_err(data)?;
        let lock = FolderLock::take(&config.data_dir).map_err(|error| match error {
            LockError::InUse => DeskError::InUse(config.data_dir.clone()),
            LockError::Disk(error) => data(error),
        })?;
        let listen = |error| DeskError::Listen(config.listen, error);
        let listener = TcpListener::bind(config.listen).map_err(listen)?;
        listener.set_nonblocking(true).map_err(listen)?;
        let addr = listener.local_addr().map_err(listen)?;
        // Finishes what was cut short before the catalogue is read.
        let editor = TableEditor::open(config.catalog_dir.clone(), config.data_dir.join("versions")).map_err(data)?;
        let catalog = LiveCatalog::open(config.catalog_dir.clone(), &config.data_dir)?;
        let now = clock.now();
        let mut ledger = open_ledger(&config.data_dir, now)?;
        let cut_short = ledger.practice_was_cut_short(now);
        catalog.show_is(ledger.about_show(ledger.show()?.id)?);
        let loaded = catalog.loaded();
        match ledger.take_catalog(&loaded.catalog, &loaded.revision, now) {
            // What is stored can still be read and shown; counts that are new come with the next start.
            Err(LedgerError::DiskFull) => tracing::error!("{}", LedgerError::DiskFull),
            taken => taken?,
        }
        // Once more for what has come since; nobody could enter meanwhile.
        disk::make_private(&config.data_dir, is_ours).map_err(data)?;
        let (close, closing) = watch::channel(false);
        let auth = Auth::new()?;
        // Begins at the time, so that no beat of an earlier run is taken for one of this.
        let pulse = watch::Sender::new(now.as_millisecond().unsigned_abs());
        let for_printing = pulse.clone();
        let desk = Arc::new(DeskState {
            ledger: LedgerThread::open(ledger, watched)?,
            clock,
            editor,
            catalog,
            auth,
            alarms: Alarms::default(),
            answers: Answers::default(),
            gallery: Gallery::default(),
            data_dir: config.data_dir.clone(),
            tablets: Tablets::default(),
            company: Arc::default(),
            tray_drafts: TrayDrafts::new(&config.data_dir),
            practice: Practice::new(cut_short),
            cut_searches: CutSearches::default(),
            printing: Printing::open(move || for_printing.send_modify(|beat| *beat += 1))?,
            pulse,
            closing,
            addr,
            way_back: OnceLock::new(),
        });

        let cuts = TableCuts::of(&desk);
        if let Some(Err(error)) = desk.ledger.run_blocking(move |ledger, _| cuts.tell(ledger)) {
            tracing::error!("{error}");
        }
        let watching = watch_folder(&desk, &config.catalog_dir);
        let (ready, is_ready) = oneshot::channel();
        let for_server = Arc::clone(&desk);
        let server = thread::Builder::new()
            .name("desk".into())
            .spawn(move || serve(listener, for_server, ready))
            .map_err(|error| DeskError::System(error.to_string()))?;
        is_ready.blocking_recv().map_err(|_| DeskError::System("its thread ended".into()))??;
        Ok(Self { state: desk, close, server: Mutex::new(Some(server)), _watch: watching, _lock: lock })
    }

    /// Where it answers.
    pub fn addr(&self) -> SocketAddr {
        self.state.addr
    }

    /// Its address for a browser on this machine.
    pub fn url(&self) -> String {
        let ip = match self.addr().ip() {
            ip if ip.is_unspecified() => IpAddr::V4(Ipv4Addr::LOCALHOST),
            ip => ip,
        };
        format!("http://{}", SocketAddr::new(ip, self.addr().port()))
    }

    /// The one-time code by which the PIN is set from another machine.
    pub fn setup_code(&self) -> &str {
        self.state.auth.setup_code()
    }

    /// What shows the window of the kiosk that runs in the same process: from then on the pages on this machine lead back
    /// to it.
    pub fn set_way_back(&self, show: impl Fn() + Send + Sync + 'static) {
        if self.state.way_back.set(Box::new(show)).is_err() {
            tracing::warn!("the way back to the kiosk was known already");
        }
    }

    /// The address by which a phone in the same network reaches the desk; none where it is in no network, or answers on this
    /// machine alone.
    pub fn address_outward(&self) -> Option<String> {
        let bound = self.state.addr;
        let ip = if bound.ip().is_unspecified() { *outward().first()? } else { bound.ip() };
        (!ip.is_loopback()).then(|| format!("http://{}", SocketAddr::new(ip, bound.port())))
    }

    /// Pairs a kiosk that runs in the same process.
    ///
    /// # Errors
    /// All digits are given, or the ledger refuses.
    pub fn pair_local(&self) -> Result<Pairing, DeskError> {
        self.paired(None, None)
    }

    /// The same for a kiosk that keeps its own key and may have been paired before, with the key that it had: it gets its
    /// own digit back, also where the program ended before the kiosk had kept the answer.
    ///
    /// # Errors
    /// As for [`Desk::pair_local`].
    pub fn pair_local_again(&self, own_key: String, before: Option<&Pairing>) -> Result<Pairing, DeskError> {
        self.paired(Some(own_key), before.map(|before| before.key.clone()))
    }

    fn paired(&self, own_key: Option<String>, before: Option<String>) -> Result<Pairing, DeskError> {
        let paired = self
            .state
            .ledger
            .run_blocking(move |ledger, now| kiosk_interface::pair(ledger, own_key, before.as_deref(), now));
        let (digit, key) = paired.ok_or_else(|| DeskError::System("the desk is closing".into()))??;
        Ok(Pairing { desk: self.url(), key, digit })
    }

    /// Whether the key of `pairing` is still good here.
    pub fn knows(&self, pairing: &Pairing) -> bool {
        let hash = sha256_hex(&pairing.key);
        self.with_ledger(move |ledger| ledger.kiosk_by_key(&hash)).is_some_and(|found| matches!(found, Ok(Some(_))))
    }

    /// Forgets the PIN and ends every session: the next visitor of this machine, or who knows the setup code, chooses
    /// another.
    ///
    /// # Errors
    /// The ledger refuses.
    pub fn forget_pin(&self) -> Result<(), DeskError> {
        let forgotten = self.state.ledger.run_blocking(|ledger, now| ledger.forget_pin(now));
        Ok(forgotten.ok_or_else(|| DeskError::System("the desk is closing".into()))??)
    }

    /// Runs `work` on the ledger; `None` once the desk is closing.
    pub fn with_ledger<T: Send + 'static>(&self, work: impl FnOnce(&mut Ledger) -> T + Send + 'static) -> Option<T> {
        self.state.ledger.run_blocking(move |ledger, _| work(ledger))
    }

    /// Ends open streams, finishes what is under way and closes the ledger; dropping the desk does the same.
    pub fn stop(self) {}

    /// The same for a desk that others hold as well: it answers nobody any more.
    pub fn close(&self) {
        let _ = self.close.send(true);
        if let Some(server) = self.server.lock().unwrap_or_else(PoisonError::into_inner).take() {
            let _ = server.join();
        }
        self.state.printing.close();
        self.state.ledger.close();
    }
}

impl Drop for Desk {
    fn drop(&mut self) {
        self.close();
    }
}

fn serve(listener: TcpListener, desk: Arc<DeskState>, ready: oneshot::Sender<Result<(), DeskError>>) {
    let runtime = match tokio::runtime::Builder::new_current_thread().enable_all().build() {
        Ok(runtime) => runtime,
        Err(error) => {
            let _ = ready.send(Err(DeskError::System(error.to_string())));
            return;
        }
    };
    runtime.block_on(async move {
        let listener = match tokio::net::TcpListener::from_std(listener) {
            Ok(listener) => listener,
            Err(error) => {
                let _ = ready.send(Err(DeskError::System(error.to_string())));
                return;
            }
        };
        let _ = ready.send(Ok(()));
        tokio::spawn(end_holds::end_holds(Arc::clone(&desk)));
        tokio::spawn(follow_ledger(Arc::clone(&desk)));
        let (mut closing, mut closed) = (desk.closing.clone(), desk.closing.clone());
        let service = router(desk).into_make_service_with_connect_info::<Caller>();
        let server = axum::serve(GuardedListener::new(listener), service).with_graceful_shutdown(async move {
            let _ = closing.wait_for(|closed| *closed).await;
        });
        tokio::select! {
            ended = server => if let Err(error) = ended {
                tracing::error!("the desk stopped answering: {error}");
            },
            () = async {
                let _ = closed.wait_for(|closed| *closed).await;
                tokio::time::sleep(LAST_ANSWERS).await;
            } => {}
        }
    });
}

/// Lets an entry in the ledger be a beat at once, and those that follow it closely one more.
async fn follow_ledger(desk: Arc<DeskState>) {
    let mut changes = desk.ledger.changes();
    while changes.changed().await.is_ok() {
        desk.beat();
        tokio::time::sleep(BETWEEN_BEATS).await;
    }
}

/// What tablets ask has a shorter way than pages: it is asked by programs, over and over, and guests wait for it.
fn router(desk: Arc<DeskState>) -> Router {
    let tablets = kiosk_interface::routes()
        .layer(axum::middleware::from_fn_with_state(Arc::clone(&desk), keep_apart))
        .layer(CatchPanicLayer::custom(after_panic))
        .layer(axum::middleware::from_fn(receive_body))
        .layer(axum::middleware::from_fn_with_state(Arc::clone(&desk), guard))
        .layer(axum::middleware::from_fn(put_into_form));
    for_browsers(&desk).merge(tablets).with_state(desk)
}

fn for_browsers(desk: &Arc<DeskState>) -> Router<Arc<DeskState>> {
    Router::new()
        .merge(pages::routes())
        .merge(events::routes())
        .merge(assets::routes())
        .merge(language::routes())
        .merge(answers::routes())
        .fallback(pages::nowhere)
        .layer(axum::middleware::from_fn_with_state(Arc::clone(desk), pages::mistyped))
        .layer(axum::middleware::from_fn_with_state(Arc::clone(desk), keep_apart))
        .layer(axum::middleware::from_fn(send_changes))
        .layer(CatchPanicLayer::custom(after_panic))
        .layer(axum::middleware::from_fn(receive_body))
        .layer(axum::middleware::from_fn_with_state(Arc::clone(desk), let_photos_in))
        .layer(axum::middleware::from_fn_with_state(Arc::clone(desk), guard))
        .layer(axum::middleware::from_fn(put_into_form))
        .layer(axum::middleware::from_fn_with_state(Arc::clone(desk), lead_away_from_pins))
        // A page is a fifth of its size then, and a phone's radio takes longer than the desk. Streams of beats and pictures go
        // as they are, and so do typefaces that are packed already.
        .layer(
            CompressionLayer::new()
                .quality(CompressionLevel::Fastest)
                .compress_when(DefaultPredicate::new().and(NotForContentType::const_new("font/woff2"))),
        )
}
