//! Who works at the desk, and whose a session is.

use chatelaine::ledger::{Role, SELLER, StaffError, Visitor};

use super::*;

fn refused<T: std::fmt::Debug>(done: Result<T, LedgerError>) -> StaffError {
    match done {
        Err(LedgerError::Staff(why)) => why,
        other => panic!("{other:?}"),
    }
}

fn visitor(key: &str, who: Option<&str>) -> Visitor {
    let who = who.map(str::to_owned);
    Visitor { key_hash: key.into(), name: "Phone".into(), address: "192.168.4.2".into(), who }
}

#[test]
fn a_name_belongs_to_one_person_and_can_be_read() {
    let mut ledger = Ledger::in_memory(now()).expect("a ledger");
    assert_eq!(ledger.add_helper(" Mia ", "aa:bb", now()).expect("added"), "Mia");
    assert_eq!(ledger.add_helper("Zoë-Ann O’Dell", "aa:cc", now()).expect("added"), "Zoë-Ann O’Dell");
    for name in ["", "   ", "a\nb", "M\u{202e}ia", "Mia\u{200b}", "Mia, approved by the seller", &"x".repeat(31)] {
        assert!(matches!(refused(ledger.add_helper(name, "aa:bb", now())), StaffError::Name(_)), "{name:?}");
    }
    assert_eq!(refused(ledger.add_helper("mIA", "aa:bb", now())), StaffError::Taken("Mia".into()));
    assert_eq!(refused(ledger.add_helper("seller", "aa:bb", now())), StaffError::Sellers);
    for n in 0..18 {
        ledger.add_helper(&format!("Helper {n}"), "aa:bb", now()).expect("added");
    }
    assert_eq!(refused(ledger.add_helper("One more", "aa:bb", now())), StaffError::Full);
    assert_eq!(ledger.staff().expect("read").len(), 20);
    assert!(ledger.staff().expect("read").iter().all(|one| one.role == Role::Helper));
    for (typed, who) in [("", SELLER), ("SELLER", SELLER), ("mia ", "Mia"), ("ZOË-ANN o’dell", "Zoë-Ann O’Dell")]
    {
        assert_eq!(ledger.who_is(typed).expect("read").as_deref(), Some(who), "{typed:?}");
    }
    assert_eq!(ledger.who_is("Nobody").expect("read"), None);
}

#[test]
fn a_session_is_somebodys_and_ends_with_their_work_here() {
    let mut ledger = Ledger::in_memory(now()).expect("a ledger");
    ledger.set_setting("pin", "00:11").expect("kept");
    ledger.add_helper("Mia", "aa:bb", now()).expect("added");
    assert_eq!(
        refused(ledger.begin_session("t0", &visitor("k0", Some("Nobody")), now())),
        StaffError::Unknown("Nobody".into())
    );
    ledger.begin_session("s1", &visitor("k1", None), now()).expect("begun");
    ledger.begin_session("s2", &visitor("k2", None), now()).expect("begun");
    ledger.begin_session("m1", &visitor("k3", Some("Mia")), now()).expect("begun");
    ledger.begin_session("m2", &visitor("k4", Some("Mia")), now()).expect("begun");
    let whose = |ledger: &Ledger, token: &str| ledger.session(token).expect("read").map(|one| (one.who, one.role));
    assert_eq!(whose(&ledger, "s1"), Some((SELLER.to_owned(), Role::Seller)));
    assert_eq!(whose(&ledger, "m1"), Some(("Mia".to_owned(), Role::Helper)));
    assert_eq!(
        ledger.browsers().expect("read").iter().map(|one| one.whose().to_owned()).collect::<Vec<_>>(),
        ["Mia", "Mia", SELLER, SELLER]
    );

    // Another PIN ends the other sessions of whose it is, and no others.
    ledger.change_pin("Mia", "aa:cc", Some("m1"), now()).expect("changed");
    assert_eq!(["s1", "s2", "m1", "m2"].map(|token| whose(&ledger, token).is_some()), [true, true, true, false]);
    ledger.change_pin(SELLER, "00:22", Some("s2"), now()).expect("changed");
    assert_eq!(["s1", "s2", "m1"].map(|token| whose(&ledger, token).is_some()), [false, true, true]);
    assert_eq!(ledger.pin_of("Mia").expect("read").as_deref(), Some("aa:cc"));
    assert_eq!(ledger.pin_of(SELLER).expect("read").as_deref(), Some("00:22"));
    assert_eq!(refused(ledger.change_pin("Nobody", "aa:cc", None, now())), StaffError::Unknown("Nobody".into()));

    ledger.remove_helper("Mia", now()).expect("removed");
    assert_eq!((whose(&ledger, "m1"), ledger.pin_of("Mia").expect("read")), (None, None));
    assert!(ledger.browsers().expect("read").iter().all(|one| one.whose() == SELLER), "her phones are strangers again");
    assert_eq!(refused(ledger.remove_helper("Mia", now())), StaffError::Unknown("Mia".into()));
    // Who comes later under the same name has none of what the first one had.
    ledger.add_helper("Mia", "aa:dd", now()).expect("added");
    assert_eq!(whose(&ledger, "m1"), None);
}
