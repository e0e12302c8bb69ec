//! How a test's tablet starts: what it has seen of a catalogue, and whether a desk answers.

use std::{
    collections::BTreeMap,
    net::TcpListener,
    path::Path,
    sync::{
        Arc,
        atomic::{AtomicBool, Ordering},
        mpsc,
    },
};

use chatelaine::{
    catalog::read_folder,
    desk::Desk,
    kiosk::{KioskOptions, WakeCell},
    link::{
        Link, LinkConfig, News, Pairing,
        wire::{CatalogContent, DeskNews, WaitingNews},
    },
};

/// What keeps a tablet's surroundings alive, and a way to send it news of one's own.
pub struct Surroundings {
    /// The tablet's own folder.
    pub folder: tempfile::TempDir,
    /// News for the tablet.
    pub news: mpsc::Sender<News>,
    /// The link's own news of tickets is held back, so that a test can answer for the desk.
    pub desk_is_mine: Arc<AtomicBool>,
}

/// The test table with one drop sold out.
pub const SOLD_OUT: &str = "key-petal";

/// Options of a tablet that has seen the test table once and whose desk is away.
pub fn options() -> (KioskOptions, Surroundings) {
    options_with(Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/table")))
}

/// The same with the catalogue of another folder.
pub fn options_with(catalog: &Path) -> (KioskOptions, Surroundings) {
    let folder = tempfile::tempdir().unwrap();
    let loaded = read_folder(catalog).unwrap();
    let mut available: BTreeMap<String, u32> = BTreeMap::new();
    available.extend(loaded.catalog.drops.iter().map(|kind| (kind.id.clone(), kind.stock)));
    available.extend(loaded.catalog.bases.iter().map(|base| (base.id.clone(), base.stock)));
    available.insert(SOLD_OUT.into(), 0);
    let pictures = folder.path().join("pictures");
    std::fs::create_dir_all(&pictures).unwrap();
    let mut hashes = BTreeMap::new();
    for (name, picture) in &loaded.pictures {
        std::fs::write(pictures.join(&picture.sha256), picture.read().unwrap()).unwrap();
        hashes.insert(name.clone(), picture.sha256.clone());
    }
    let content = CatalogContent { catalog: (*loaded.catalog).clone(), pictures: hashes };
    let desk = DeskNews {
        practice: false,
        change: 1,
        show: 1,
        next_sequence: 0,
        revision: loaded.revision.clone(),
        available,
        content: None,
        wanted: vec![],
        put_away: vec![],
        waiting: WaitingNews::default(),
    };
    std::fs::write(folder.path().join("catalog.json"), serde_json::to_vec(&content).unwrap()).unwrap();
    std::fs::write(folder.path().join("desk.json"), serde_json::to_vec(&desk).unwrap()).unwrap();
    // A port where nobody listens.
    let port = TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap().port();
    let pairing = Pairing { desk: format!("http://127.0.0.1:{port}"), key: "k".into(), digit: 3 };
    let wake = WakeCell::default();
    let bell = wake.clone();
    let config =
        LinkConfig { dir: folder.path().to_owned(), pairing: Some(pairing), wake: Arc::new(move || bell.ring()) };
    let (link, from_link) = Link::open(config).unwrap();
    let (news, to_tablet) = mpsc::channel();
    let (forward, desk_is_mine) = (news.clone(), Arc::new(AtomicBool::new(false)));
    let mine = Arc::clone(&desk_is_mine);
    std::thread::spawn(move || {
        while let Ok(one) = from_link.recv() {
            let answer = matches!(one, News::Pin(_) | News::Waiting(_) | News::Delivered { .. });
            // How full the disk of this machine is, is no matter of the tablet's.
            let of_the_machine = matches!(one, News::DiskNearlyFull(_));
            let held_back = of_the_machine || answer && mine.load(Ordering::Relaxed);
            if !held_back && forward.send(one).is_err() {
                return;
            }
        }
    });
    let options = KioskOptions {
        link,
        news: to_tablet,
        window: None,
        fullscreen: false,
        language: Some("en".into()),
        settings_file: None,
        wake,
        desk_here: None,
    };
    (options, Surroundings { folder, news, desk_is_mine })
}

/// Options of a tablet paired with a desk that really answers.
pub fn options_beside(desk: &Desk) -> (KioskOptions, Surroundings) {
    let folder = tempfile::tempdir().unwrap();
    let wake = WakeCell::default();
    let bell = wake.clone();
    let pairing = Some(desk.pair_local().unwrap());
    let config = LinkConfig { dir: folder.path().to_owned(), pairing, wake: Arc::new(move || bell.ring()) };
    let (link, news) = Link::open(config).unwrap();
    let options = KioskOptions {
        link,
        news,
        window: None,
        fullscreen: false,
        language: Some("en".into()),
        settings_file: None,
        wake,
        desk_here: None,
    };
    // This desk answers for itself: what a test would say in its place goes nowhere.
    let (unheard, _) = mpsc::channel();
    (options, Surroundings { folder, news: unheard, desk_is_mine: Arc::default() })
}
