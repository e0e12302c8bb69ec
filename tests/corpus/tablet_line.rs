//! What a spoiled folder or an odd catalogue makes of the line between a tablet and its desk.

use std::{
    fs,
    path::Path,
    sync::{Arc, mpsc},
    thread,
    time::{Duration, Instant},
};

use chatelaine::{
    desk::{Desk, DeskConfig},
    link::{Link, LinkConfig, News, NewsReceiver},
};
use serde_json::{Value, json};

use crate::checks::catalogue::{good, write_good};

fn desk_on(dir: &Path) -> Desk {
    let config = DeskConfig {
        catalog_dir: dir.join("catalog"),
        data_dir: dir.join("data"),
        listen: "127.0.0.1:0".parse().expect("an address"),
    };
    Desk::start(config).unwrap_or_else(|error| panic!("{error}"))
}

fn tablet_on(dir: &Path) -> (Link, NewsReceiver) {
    let config = LinkConfig { dir: dir.to_owned(), pairing: None, wake: Arc::new(|| ()) };
    Link::open(config).unwrap_or_else(|error| panic!("{error}"))
}

/// The next news that `wanted` takes.
fn hear<T>(news: &NewsReceiver, what: &str, mut wanted: impl FnMut(News) -> Option<T>) -> T {
    let began = Instant::now();
    while began.elapsed() < Duration::from_secs(30) {
        if let Some(found) = news.recv_timeout(Duration::from_millis(200)).ok().and_then(&mut wanted) {
            return found;
        }
    }
    panic!("{what} is not heard");
}

/// Blanks, hashes, percent signs and question marks are names of files like any other; the tablet gets the pictures.
#[test]
fn pictures_reach_the_tablet_whatever_their_names_are() {
    let (home, dir) = (tempfile::tempdir().expect("a folder"), tempfile::tempdir().expect("a folder"));
    let catalog = home.path().join("catalog");
    write_good(&catalog);
    let names = ["my key.png", "key#1.png", "100%.png", "key?.png", "%23.png", "a&b=c+d.png", "clé \u{1f511}.png"];
    let drop = |n: usize, name: &str| {
        format!(
            "(id: \"key-{n}\", name: \"Key {n}\", sort: Key, colours: [Golden], materials: [Brass], \
             body: Box(width: \"16mm\", depth: \"2.5mm\", height: \"38mm\"), width: \"16mm\", height: \"38mm\", \
             ring: (outside: \"10mm\", wire: \"18awg\"), weight: \"4.1g\", price: \"4.50\", stock: 12, picture: \"{name}\"),"
        )
    };
    let mut drops = String::new();
    for (n, name) in names.iter().enumerate() {
        fs::write(catalog.join("pictures").join(name), good("pictures/key.png")).expect("written");
        drops.push_str(&drop(n, name));
    }
    let tray = format!("(letter: \"B\", name: \"Odd names\", rows: [[{drops}]])");
    fs::write(catalog.join("trays/b.ron"), tray).expect("written");
    let desk = desk_on(home.path());
    let pairing = desk.pair_local().expect("a digit");
    fs::write(dir.path().join("pairing.json"), serde_json::to_vec(&pairing).expect("a pairing")).expect("written");
    let (_link, news) = tablet_on(dir.path());
    let mut missing: Vec<&str> = names.to_vec();
    hear(&news, "every picture", |news| {
        if let News::Picture { name, file } = news {
            missing.retain(|one| *one != name);
            let right = names.contains(&name.as_str()).then(|| good("pictures/key.png"));
            assert!(right.is_none_or(|right| fs::read(&file).expect("the file") == right), "{name} is another picture");
        }
        missing.is_empty().then_some(())
    });
}

/// What a spoiled file says of the revision goes into no address as it stands: the tablet asks, and gets the catalogue.
#[test]
fn a_spoiled_revision_keeps_no_tablet_from_its_catalogue() {
    let (home, dir) = (tempfile::tempdir().expect("a folder"), tempfile::tempdir().expect("a folder"));
    write_good(&home.path().join("catalog"));
    let desk = desk_on(home.path());
    let pairing = desk.pair_local().expect("a digit");
    fs::write(dir.path().join("pairing.json"), serde_json::to_vec(&pairing).expect("a pairing")).expect("written");
    let (link, news) = tablet_on(dir.path());
    let right = hear(&news, "the catalogue", |news| match news {
        News::Snapshot(snapshot) => Some(snapshot.revision.clone()),
        _ => None,
    });
    drop((link, news));
    let file = dir.path().join("desk.json");
    for odd in ["a b", "x&have=9223372036854775807", "\r\nx: y", "#", "%zz", "é\u{202e}", &"r".repeat(100_000)] {
        let mut kept: Value = serde_json::from_slice(&fs::read(&file).expect("the file")).expect("the news");
        kept["revision"] = json!(odd);
        fs::write(&file, kept.to_string()).expect("written");
        let (link, news) = tablet_on(dir.path());
        hear(&news, "the catalogue again", |news| match news {
            News::Snapshot(snapshot) if snapshot.revision == right => Some(()),
            _ => None,
        });
        assert!(link.is_paired(), "{odd:?}");
    }
}

/// The end may come at any moment after the start, also just before whoever delivers begins to wait. Found by a fuzz target:
/// one of some thousand tablets that were closed at once never ended.
#[test]
fn a_tablet_that_is_closed_at_once_ends() {
    let dir = tempfile::tempdir().expect("a folder");
    let folder = dir.path().to_owned();
    let (tell, told) = mpsc::channel();
    thread::spawn(move || {
        for n in 0..400 {
            drop(tablet_on(&folder));
            let _ = tell.send(n);
        }
    });
    for n in 0..400 {
        assert_eq!(told.recv_timeout(Duration::from_secs(20)), Ok(n), "the tablet does not end");
    }
}

/// A pairing with a digit that no ticket number has is none: the tablet says that it is not paired, and the file stays.
#[test]
fn a_pairing_with_two_digits_is_none() {
    let dir = tempfile::tempdir().expect("a folder");
    let file = dir.path().join("pairing.json");
    let odd = r#"{"desk":"http://127.0.0.1:1","key":"0","digit":10}"#;
    fs::write(&file, odd).expect("written");
    let (link, _news) = tablet_on(dir.path());
    assert_eq!((link.is_paired(), link.digit()), (false, None));
    assert_eq!(fs::read_to_string(&file).expect("the file"), odd);
}
