//! What a tablet keeps in its folder: tickets on their way, settings, its pairing, and what it knows of the desk.

use std::{fs, path::Path, sync::Arc};

use chatelaine::{
    guest::Settings,
    link::{Link, LinkConfig, kept_pairing},
};

/// An entry of the outbox as a tablet writes it.
pub const GOOD_ENTRY: &[u8] = include_bytes!("../good/outbox.json");
/// Settings as a tablet writes them.
pub const GOOD_SETTINGS: &[u8] = include_bytes!("../good/settings.json");
/// A pairing as a tablet writes it.
pub const GOOD_PAIRING: &[u8] = include_bytes!("../good/pairing.json");

/// Opens the line on a folder, with nobody to talk to.
fn opened(dir: &Path) -> Link {
    let config = LinkConfig { dir: dir.to_owned(), pairing: None, wake: Arc::new(|| ()) };
    Link::open(config).unwrap_or_else(|error| panic!("{error}")).0
}

/// Opens a tablet with this file in its outbox. It is a ticket on its way, or it is moved aside as it is. Whether it is a
/// ticket.
pub fn is_ticket(data: &[u8]) -> bool {
    let dir = tempfile::tempdir().expect("a folder");
    let name = "0197f1c2-0000-7000-8000-000000000001.json";
    let (outbox, refused) = (dir.path().join("outbox"), dir.path().join("refused"));
    fs::create_dir(&outbox).expect("a folder");
    fs::write(outbox.join(name), data).expect("written");
    let (waiting, aside) = {
        let link = opened(dir.path());
        (link.waiting(), link.aside())
    };
    assert_eq!(aside, 0);
    if waiting == 0 {
        assert!(!outbox.join(name).exists(), "it lies there and is not told");
        assert_eq!(fs::read(refused.join(name)).expect("moved aside"), data, "kept as it is");
    } else {
        // A ticket whose number is given by starting is written anew; there is one at least, and none is lost.
        assert!((1..=2).contains(&waiting) && fs::read_dir(&outbox).expect("the outbox").count() >= 1);
    }
    assert_eq!(opened(dir.path()).waiting(), waiting, "after another start");
    waiting > 0
}

/// Opens a tablet with this file in its outbox, whatever it is.
pub fn outbox(data: &[u8]) {
    is_ticket(data);
}

/// The settings in a file. Reading changes nothing, and what is kept afterwards is read again.
pub fn settings_of(data: &[u8]) -> Settings {
    let dir = tempfile::tempdir().expect("a folder");
    let file = dir.path().join("kiosk.json");
    fs::write(&file, data).expect("written");
    let settings = Settings::open(Some(file.clone()), None);
    assert_eq!(fs::read(&file).expect("the file"), data, "reading changes nothing");
    if let Some(px) = settings.px_per_mm {
        assert!((1.0..=100.0).contains(&px), "{px} pixels a millimetre");
    }
    settings.keep().expect("kept");
    let again = Settings::open(Some(file), None);
    assert_eq!((again.lang, again.left_handed, again.looks), (settings.lang, settings.left_handed, settings.looks));
    assert_eq!(again.px_per_mm, settings.px_per_mm);
    settings
}

/// Reads settings, whatever they are.
pub fn settings(data: &[u8]) {
    settings_of(data);
}

/// Whether a tablet with this pairing file is paired. Reading changes nothing; a digit is one digit, and address and key can
/// stand in a request.
pub fn is_paired(data: &[u8]) -> bool {
    let dir = tempfile::tempdir().expect("a folder");
    let file = dir.path().join("pairing.json");
    fs::write(&file, data).expect("written");
    let pairing = kept_pairing(dir.path());
    assert_eq!(fs::read(&file).expect("the file"), data, "reading changes nothing");
    if let Some(pairing) = &pairing {
        assert!(pairing.digit <= 9, "{}", pairing.digit);
        for word in [&pairing.desk, &pairing.key] {
            assert!(!word.is_empty() && word.len() <= 300 && word.bytes().all(|b| b.is_ascii_graphic()), "{word:?}");
        }
    }
    pairing.is_some()
}

/// Reads a pairing, whatever it is.
pub fn pairing(data: &[u8]) {
    is_paired(data);
}

/// Opens a tablet with this file in the place of what it keeps of the desk, of its numbers and of its PIN.
pub fn kept(data: &[u8]) {
    for name in ["desk.json", "catalog.json", "numbers.json", "pin.json", "let-go.json"] {
        let dir = tempfile::tempdir().expect("a folder");
        fs::write(dir.path().join(name), data).expect("written");
        let link = opened(dir.path());
        assert!(!link.is_paired() && link.waiting() == 0);
        drop(link);
        assert_eq!(fs::read(dir.path().join(name)).expect("the file"), data, "{name} is as it was");
    }
}
