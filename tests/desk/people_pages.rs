//! The pages of people, tablets and trays in every language, with what is refused there; and fields that are what their labels
//! say.

use super::{languages::Readers, *};
use uuid::Uuid;

fn stranger(table: &Table) -> Seller {
    Seller { agent: agent(), url: table.desk.url(), cookie: String::new() }
}

#[test]
fn choosing_a_pin_and_signing_in_are_in_the_readers_language() {
    let table = Table::new();
    let strangers = Readers::new(&stranger(&table));
    strangers.look_at("/setup");
    for (pin, again) in [("1", "1"), ("123456", "123456"), (PIN, "482914")] {
        strangers.send("/setup", &[("pin", pin), ("again", again)]);
    }
    let seller = table.seller();
    strangers.look_at("/sign-in?lost=1");
    strangers.send("/sign-in", &[("pin", "000000")]);
    seller.post("/staff", &[("name", "Zoë")]);
    // Who helps is told to no stranger, so a name is typed.
    strangers.look_at("/sign-in");
    strangers.send("/sign-in", &[("pin", "000000"), ("who", "Zoë")]);
    strangers.look_at("/nowhere");
    strangers.are_content();
}

#[test]
fn people_tablets_and_trays_are_in_the_readers_language() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let readers = Readers::new(&seller);
    let part = format!("/parts/{}", kiosk.fitting()[0].id);
    readers.look_at("/kiosks");
    seller.post("/staff", &[("name", "Zoë")]);
    seller.post("/kiosks/code", &[]);
    kiosk.deliver(&kiosk.ticket(0, &[&kiosk.fitting()[0].id], Wearer::From13), true);
    let none = Uuid::nil();
    let (release, put_away) =
        (format!("/kiosks/{}/release", kiosk.pairing.digit), format!("/kiosks/9/put-away/{none}"));
    for path in ["/kiosks", "/staff", "/staff/pin?name=Zo%C3%AB", "/staff/remove?name=Zo%C3%AB", "/pin", "/trays"] {
        readers.look_at(path);
    }
    for path in
        [&part, &release, &put_away, "/trays/cautions", "/parts/none", "/nowhere", "/tickets/none", "/new?off=x"]
    {
        readers.look_at(path);
    }
    for name in ["a,b", "Zoë"] {
        readers.send("/staff", &[("name", name)]);
    }
    readers.send("/staff/pin", &[("name", "Seller")]);
    readers.send("/staff/pin", &[("name", "Etui 1")]);
    for (now, pin, again) in [("000000", PIN, PIN), (PIN, "1", "1"), (PIN, "123456", "123456"), (PIN, PIN, "482914")] {
        readers.send("/pin", &[("now", now), ("pin", pin), ("again", again)]);
    }
    readers.send(&format!("/kiosks/9/take-in/{none}"), &[]);
    readers.send("/sessions/0000000000000000/end", &[]);
    readers.send(&part, &[("free", "-1")]);
    readers.send("/language", &[("language", "none")]);
    assert_eq!(seller.post("/practice/begin", &[]).status, 303);
    readers.send("/kiosks/code", &[]);
    readers.are_content();
}

#[test]
fn a_field_is_what_its_label_says() {
    let table = Table::new();
    let (seller, stranger) = (table.seller(), stranger(&table));
    let german = Seller { cookie: format!("{}; language=de", seller.cookie), agent: agent(), url: seller.url.clone() };
    assert!(german.post("/sign-in", &[("pin", "000000")]).text.contains("Das ist nicht die PIN."));
    for (page, fields) in [
        (stranger.get("/sign-in").text, &["pin"][..]),
        (seller.get("/pin").text, &["now", "pin", "again"]),
        (seller.get("/staff").text, &["name"]),
    ] {
        for field in fields {
            let (label, input) = (format!("<label for=\"{field}\">"), format!("<input id=\"{field}\""));
            assert_eq!((page.matches(&label).count(), page.matches(&input).count()), (1, 1), "{field}: {page}");
        }
    }
}
