//! Pairing, letting go, and pairing again: what becomes of numbers, digits and what lies on the tablet.

use super::*;

#[test]
fn a_tablet_that_was_let_go_gives_no_numbers_and_says_so() {
    let (table, dir) = (Table::new(), tempfile::tempdir().expect("a folder"));
    let pairing = table.desk.pair_local().expect("a digit");
    let tablet = Tablet::open(dir.path(), Some(pairing.clone()));
    tablet.is_in_reach();
    let first = tablet.send();
    tablet.hear_arrived(first);
    release(&table.desk, pairing.digit);
    // The guest who sends before the tablet has noticed: nothing is sent, and no number is shown.
    let draft = tablet.draft();
    let id = draft.id;
    tablet.link.send_aside(draft);
    let error = tablet.hear("what became of the piece", |news| match news {
        News::NotKept { id: of, error } if of == id => Some(error),
        News::Waiting(kept) | News::Delivered { kept, .. } => panic!("{} was given", kept.number),
        _ => None,
    });
    assert_eq!(error, SendError::LetGo);
    assert_eq!((tablet.link.waiting(), tablet.link.aside()), (0, 0));
    // And whoever comes later, also after a start with the desk away.
    assert_eq!(tablet.link.send(tablet.draft()).expect_err("no number"), SendError::LetGo);
    assert!(tablet.link.is_let_go());
    drop(tablet);
    drop(table);
    let tablet = Tablet::open(dir.path(), None);
    tablet.hear("being let go", |news| (news == News::LetGo(true)).then_some(()));
    assert_eq!(tablet.link.send(tablet.draft()).expect_err("no number"), SendError::LetGo);
}

#[test]
fn paired_again_it_delivers_under_its_own_digit() {
    let Table { desk, dir: home } = Table::new();
    let (dir, other_dir) = (tempfile::tempdir().expect("a folder"), tempfile::tempdir().expect("a folder"));
    let pairing = desk.pair_local().expect("a digit");
    let addr = desk.addr();
    let tablet = Tablet::open(dir.path(), Some(pairing.clone()));
    tablet.is_in_reach();
    drop(desk);
    let kept = tablet.send();
    tablet.hear_waiting(kept);
    let desk = Desk::start(chatelaine::desk::DeskConfig { listen: addr, ..config(home.path()) }).expect("again");
    // Let go before it could deliver; the next tablet does not get the digit.
    release(&desk, pairing.digit);
    let table = Table { desk, dir: home };
    let seller = table.seller();
    let other = Tablet::open(other_dir.path(), None);
    assert_eq!(pair(&other, &table.desk, new_code(&seller)), Ok(pairing.digit + 1));
    other.is_in_reach();
    let of_other = other.send();
    other.hear_arrived(of_other);
    assert_ne!(of_other.number, kept.number);

    tablet.hear("being let go", |news| (news == News::LetGo(true)).then_some(()));
    assert_eq!(pair(&tablet, &table.desk, new_code(&seller)), Ok(pairing.digit), "its own digit again");
    tablet.hear_arrived(kept);
    assert!(!tablet.link.is_let_go());
    let late = tablet.send();
    tablet.hear_arrived(late);
    let mut all = [kept, of_other, late].map(|kept| kept.number.to_string());
    all.sort();
    assert_eq!(numbers(&table.desk), all);
}

#[test]
fn a_released_digit_rests_until_the_show_closes() {
    let now = Timestamp::now();
    let mut ledger = Ledger::in_memory(now).expect("a ledger");
    assert_eq!(ledger.pair_kiosk("one", None, now).expect("a digit"), 1);
    assert_eq!(ledger.pair_kiosk("two", None, now).expect("a digit"), 2);
    ledger.release_kiosk(1, now).expect("released");
    assert_eq!(ledger.pair_kiosk("three", None, now).expect("a digit"), 3, "the first rests");
    assert_eq!(ledger.pair_kiosk("stranger", Some("guess"), now).expect("a digit"), 4, "who does not know its key");
    assert_eq!(ledger.pair_kiosk("again", Some("one"), now).expect("a digit"), 1, "who comes back has it again");
    // Released and back, over and over, it stays the same tablet.
    ledger.release_kiosk(1, now).expect("released");
    assert_eq!(ledger.pair_kiosk("once more", Some("again"), now).expect("a digit"), 1);
    // A key that is paired already is the same tablet, which has not heard it; nothing is entered once more.
    let entries = ledger.change().expect("a number");
    assert_eq!(ledger.pair_kiosk("once more", None, now).expect("a digit"), 1);
    assert_eq!(ledger.change().expect("a number"), entries);
    // A tablet that is still paired and pairs anew keeps its digit, too, and its old key is worth nothing.
    assert_eq!(ledger.pair_kiosk("changed", Some("once more"), now).expect("a digit"), 1);
    assert_eq!(ledger.kiosk_by_key("once more").expect("read"), None);
    for n in 5..=9 {
        ledger.pair_kiosk(&format!("more {n}"), None, now).expect("a digit");
    }
    ledger.release_kiosk(7, now).expect("released");
    assert!(matches!(ledger.pair_kiosk("late", None, now), Err(LedgerError::NineKiosks)), "all are given or rest");
    ledger.close_show(Currency::from_code("USD").expect("a currency"), now).expect("closed");
    assert_eq!(ledger.pair_kiosk("late", None, now).expect("a digit"), 7);
}

#[test]
fn a_pairing_is_refused_for_what_is_really_wrong() {
    let (table, dir) = (Table::new(), tempfile::tempdir().expect("a folder"));
    let seller = table.seller();
    let tablet = Tablet::open(dir.path(), None);
    assert_eq!(pair(&tablet, &table.desk, "123456".into()), Err(PairError::NoCode));
    let code = new_code(&seller);
    let wrong: String = code.chars().filter(|c| !c.is_whitespace()).rev().collect::<String>() + "1";
    assert_eq!(pair(&tablet, &table.desk, wrong), Err(PairError::WrongCode));
    for _ in 0..8 {
        table.desk.pair_local().expect("a digit");
    }
    table.desk.pair_local().expect("the ninth; one digit is the desk's own");
    assert_eq!(pair(&tablet, &table.desk, new_code(&seller)), Err(PairError::NoDigit));
    let no_desk = FakeDesk::start(|_: &Asked| Some((200, "[]".into())));
    tablet.link.pair(format!("http://{}", no_desk.addr), "123456".into());
    let answer = tablet.hear("the pairing", |news| match news {
        News::Paired(outcome) => Some(outcome),
        _ => None,
    });
    assert!(matches!(answer, Err(PairError::NotADesk { .. })), "{answer:?}");
    tablet.link.pair("127.0.0.1:1".into(), "123456".into());
    let answer = tablet.hear("the pairing", |news| match news {
        News::Paired(outcome) => Some(outcome),
        _ => None,
    });
    assert!(matches!(&answer, Err(PairError::NotReached { desk, .. }) if desk.contains("127.0.0.1:1")), "{answer:?}");
}

/// Another desk under the address, or one that was put back to an older day, may not know the tablet for a while.
#[test]
fn a_tablet_that_is_known_again_goes_on_by_itself() {
    let dir = tempfile::tempdir().expect("a folder");
    let (answers, usual, order) = (Arc::default(), Arc::new(Mutex::new(0)), Arc::default());
    let knows = Arc::new(AtomicBool::new(true));
    let inner = fake_answers(answers, Arc::clone(&usual), Arc::clone(&order));
    let known = Arc::clone(&knows);
    let desk = FakeDesk::start(
        move |asked: &Asked| {
            if known.load(Ordering::Relaxed) { inner(asked) } else { Some((401, String::new())) }
        },
    );
    let pairing = Pairing { desk: format!("http://{}", desk.addr), key: "0".repeat(64), digit: 3 };
    let tablet = Tablet::open(dir.path(), Some(pairing));
    tablet.is_in_reach();
    let kept = tablet.send();
    tablet.hear_waiting(kept);
    *usual.lock().unwrap() = 200;
    knows.store(false, Ordering::Relaxed);
    tablet.hear("being let go", |news| (news == News::LetGo(true)).then_some(()));
    assert_eq!(tablet.link.send(tablet.draft()).expect_err("no number"), SendError::LetGo);
    assert_eq!(tablet.link.waiting(), 1, "what has a number is kept");
    knows.store(true, Ordering::Relaxed);
    tablet.hear_arrived(kept);
    until("it gives numbers again", || !tablet.link.is_let_go());
    let next = tablet.send();
    tablet.hear_arrived(next);
    assert_ne!(next.number, kept.number);
}
