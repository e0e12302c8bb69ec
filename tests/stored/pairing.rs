//! What a tablet keeps of its pairing: desk, key and digit; that it was let go; the key with which it asked.

use chatelaine::link::{News, Pairing, kept_pairing, own_key};

use super::{
    copied,
    fake_desk::{Asked, FakeDesk},
    fixture, hear, json, open,
};

fn wanted() -> Pairing {
    Pairing { desk: "http://192.168.4.1:7345".into(), key: "3f".repeat(32), digit: 3 }
}

#[test]
fn pairings_of_every_version_are_read() {
    for (version, let_go) in [("first", false), ("let-go", true), ("today", true)] {
        let dir = copied(&format!("pairing/{version}"));
        assert_eq!(kept_pairing(dir.path()), Some(wanted()), "{version}");
        let (link, news) = open(dir.path(), None);
        assert_eq!((link.digit(), link.desk()), (Some(3), Some(wanted().desk)), "{version}");
        assert_eq!(link.is_let_go(), let_go, "{version}");
        if let_go {
            hear(&news, "being let go", |news| (news == News::LetGo(true)).then_some(()));
        }
    }
    assert_eq!(own_key(copied("pairing/today").path()).expect("the key"), "5a".repeat(32));
}

#[test]
fn a_pairing_is_written_in_the_form_of_its_fixture() {
    let today = |name: &str| json(&fixture(&format!("pairing/today/{name}")));
    let dir = tempfile::tempdir().expect("a folder");
    let key = own_key(dir.path()).expect("a key");
    let mut asked = today("asked.json");
    asked["key"] = key.clone().into();
    assert_eq!(json(&dir.path().join("asked.json")), asked);
    assert!(key.len() == 64 && key.bytes().all(|byte| byte.is_ascii_hexdigit()), "{key}");
    drop(open(dir.path(), Some(wanted())));
    assert_eq!(json(&dir.path().join("pairing.json")), today("pairing.json"));
    assert!(!dir.path().join("asked.json").exists(), "it is paired");

    // Let go, by a desk at another address.
    let desk = FakeDesk::start(|_: &Asked| Some((401, String::new())));
    let here = Pairing { desk: format!("http://{}", desk.addr), ..wanted() };
    let (link, news) = open(dir.path(), Some(here.clone()));
    hear(&news, "being let go", |news| (news == News::LetGo(true)).then_some(()));
    assert!(link.is_let_go());
    let mut kept = json(&dir.path().join("let-go.json"));
    assert_eq!(kept["desk"], here.desk);
    kept["desk"] = wanted().desk.into();
    assert_eq!(kept, today("let-go.json"));
}
