//! Damaged files in a tablet's folder, and copies of tickets as file managers make them: nothing that is whole is
//! overwritten or left lying, and what lies there twice is sent once.

use std::{fs, path::PathBuf};

use super::*;

/// A tablet with tickets that wait, and a desk that counts what it takes.
struct Place {
    dir: tempfile::TempDir,
    usual: Arc<Mutex<u16>>,
    order: Arc<Mutex<Vec<Uuid>>>,
    _desk: FakeDesk,
}

impl Place {
    /// A place where so many tickets have been sent with the desk not answering.
    fn with_waiting(count: usize) -> (Self, Vec<Kept>) {
        let dir = tempfile::tempdir().expect("a folder");
        let (usual, order) = (Arc::new(Mutex::new(0)), Arc::default());
        let desk = fake(Arc::default(), Arc::clone(&usual), Arc::clone(&order));
        let pairing = Pairing { desk: format!("http://{}", desk.addr), key: "0".repeat(64), digit: 3 };
        let place = Self { dir, usual, order, _desk: desk };
        let tablet = Tablet::open(place.dir.path(), Some(pairing));
        tablet.is_in_reach();
        let sent = (0..count)
            .map(|_| {
                let kept = tablet.send();
                tablet.hear_waiting(kept);
                kept
            })
            .collect();
        (place, sent)
    }

    fn file(&self, folder: &str, kept: Kept) -> PathBuf {
        self.dir.path().join(folder).join(format!("{}.json", kept.id))
    }

    /// The copy of a ticket's file that a file manager makes beside it.
    fn copy(&self, folder: &str, kept: Kept) -> PathBuf {
        let copy = self.dir.path().join(folder).join(format!("{} (1).json", kept.id));
        fs::copy(self.file(folder, kept), &copy).expect("a copy");
        copy
    }

    fn answers(&self, status: u16) {
        *self.usual.lock().expect("a status") = status;
    }

    fn taken(&self) -> Vec<Uuid> {
        self.order.lock().expect("tickets").clone()
    }

    fn open(&self) -> Tablet {
        Tablet::open(self.dir.path(), None)
    }

    fn names(&self, folder: &str) -> Vec<String> {
        let all = fs::read_dir(self.dir.path().join(folder)).expect("a folder").map(|file| file.expect("a file"));
        let mut names: Vec<String> = all.map(|file| file.file_name().into_string().expect("a name")).collect();
        names.sort();
        names
    }
}

/// Changes something in the JSON of a file.
fn change(file: &Path, change: impl FnOnce(&mut serde_json::Value)) {
    let mut value = serde_json::from_slice(&fs::read(file).expect("a file")).expect("JSON");
    change(&mut value);
    fs::write(file, value.to_string()).expect("written");
}

#[test]
fn moving_a_damaged_file_aside_overwrites_nothing() {
    let (place, sent) = Place::with_waiting(1);
    let kept = sent[0];
    place.answers(422);
    let tablet = place.open();
    tablet.hear("the refusal", |news| matches!(news, News::Refused { .. }).then_some(()));
    drop(tablet);
    let whole = fs::read(place.file("refused", kept)).expect("set aside");
    // A damaged file of the same name in the outbox, twice; and one where a ticket is set aside or put away.
    for damage in ["{\"ticket\":", "{\"tick"] {
        fs::write(place.file("outbox", kept), damage).expect("written");
        let tablet = place.open();
        assert_eq!((tablet.link.waiting(), tablet.link.aside()), (0, 1));
    }
    assert_eq!(fs::read(place.file("refused", kept)).expect("still there"), whole);
    assert_eq!(place.names("refused").len(), 3, "both damaged files are kept as well");
}

#[test]
fn a_ticket_that_is_set_aside_overwrites_no_damaged_file() {
    let (place, sent) = Place::with_waiting(1);
    fs::write(place.file("refused", sent[0]), "{\"ticket\":").expect("written");
    place.answers(422);
    let tablet = place.open();
    tablet.hear("the refusal", |news| matches!(news, News::Refused { .. }).then_some(()));
    assert_eq!(place.names("refused").len(), 2, "{:?}", place.names("refused"));
    drop(tablet);
    assert_eq!(place.open().link.aside(), 1);
}

#[test]
fn a_whole_copy_beside_a_damaged_ticket_is_sent_once() {
    let (place, sent) = Place::with_waiting(4);
    let [given, pending, both, beside] = *sent.as_slice() else { panic!("four tickets") };
    for kept in [given, pending, both] {
        place.copy("outbox", kept);
    }
    let copy = place.dir.path().join("outbox").join(format!("{} (1).json", pending.id));
    change(&copy, |entry| entry["number_given"] = false.into());
    for kept in [given, pending] {
        fs::write(place.file("outbox", kept), "{\"ticket\":{").expect("damaged");
    }
    // One was damaged and moved aside before somebody copied it there from elsewhere.
    let text = fs::read(place.file("outbox", beside)).expect("a ticket");
    fs::write(place.dir.path().join("refused").join(format!("{} (1).json", beside.id)), text).expect("a copy");
    fs::write(place.file("outbox", beside), "{\"ticket\":{").expect("damaged");
    place.answers(200);
    let tablet = place.open();
    until("all have arrived", || tablet.link.waiting() == 0 && place.taken().len() >= 4);
    thread::sleep(Duration::from_millis(300));
    drop(tablet);
    let mut taken = place.taken();
    taken.sort();
    let mut wanted: Vec<Uuid> = sent.iter().map(|kept| kept.id).collect();
    wanted.sort();
    assert_eq!(taken, wanted, "each once");
    assert_eq!(place.names("outbox"), Vec::<String>::new());
    assert_eq!(place.names("refused").len(), 3, "the damaged ones are kept");
    // Nor once more after a start.
    let tablet = place.open();
    tablet.is_in_reach();
    let next = tablet.send();
    tablet.hear_arrived(next);
    assert_eq!(place.taken().len(), 5);
}

#[test]
fn a_copy_of_a_ticket_that_was_set_aside_is_told_once() {
    let (place, sent) = Place::with_waiting(1);
    place.answers(422);
    let tablet = place.open();
    tablet.hear("the refusal", |news| matches!(news, News::Refused { .. }).then_some(()));
    drop(tablet);
    place.copy("refused", sent[0]);
    let tablet = place.open();
    assert_eq!((tablet.link.waiting(), tablet.link.aside()), (0, 1), "told once");
    drop(tablet);
    // Of the ticket itself only the copy reads: it was refused, so that is what is told.
    fs::write(place.file("refused", sent[0]), "{\"ticket\":{").expect("damaged");
    let tablet = place.open();
    assert_eq!((tablet.link.waiting(), tablet.link.aside()), (0, 1));
    drop(tablet);
    // In the outbox again, as after a crash, and taken this time: nothing is told any more.
    fs::rename(
        place.dir.path().join("refused").join(format!("{} (1).json", sent[0].id)),
        place.dir.path().join("refused").join("by hand.json"),
    )
    .expect("renamed");
    fs::copy(place.dir.path().join("refused/by hand.json"), place.file("outbox", sent[0])).expect("a copy");
    place.answers(200);
    let tablet = place.open();
    tablet.hear_arrived(sent[0]);
    assert_eq!((tablet.link.waiting(), tablet.link.aside()), (0, 0));
    drop(tablet);
    assert_eq!(place.open().link.aside(), 0);
}
