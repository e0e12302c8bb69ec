//! Guessing the PIN, changing it, and forgetting it.

use super::*;

#[test]
fn guessing_strangers_do_not_lock_the_seller_out() {
    let table = Table::new();
    table.seller();
    let to = table.desk.addr();
    // A phone that was signed in once.
    let before = sign_in(9, to, PIN, "");
    let known = before.cookie("browser").expect("what the browser is known by");
    assert_eq!(before.status, 303);
    assert!(before.head.contains("HttpOnly; SameSite=Strict"), "{}", before.head);
    // Its address is the attackers', too.
    for last in [2, 3, 4, 5, 9] {
        let tries: Vec<u16> = (0..7).map(|_| sign_in(last, to, WRONG, "").status).collect();
        assert_eq!(tries, [403, 403, 403, 403, 403, 429, 429], "127.0.0.{last}");
    }
    let locked = sign_in(2, to, PIN, "");
    assert!(locked.status == 429 && locked.body.contains("Wait"), "{}", locked.body);
    assert_eq!(sign_in(2, to, PIN, &format!("browser={}", "0".repeat(64))).status, 429, "a made-up browser");
    assert_eq!(sign_in(9, to, PIN, "").status, 429);
    for round in 0..3 {
        assert_eq!(sign_in(9, to, PIN, &known).status, 303, "the phone, round {round}");
        assert_eq!(sign_in(1, to, PIN, "").status, 303, "the machine itself, round {round}");
        assert_eq!(sign_in(30 + round, to, PIN, "").status, 303, "another phone, round {round}");
    }
    // The machine itself always can, whatever was tried there.
    assert!((0..12).all(|_| sign_in(1, to, WRONG, "").status == 403));
    assert_eq!(sign_in(1, to, PIN, "").status, 303);
    // A known browser has no more tries than others.
    let tries: Vec<u16> = (0..6).map(|_| sign_in(9, to, WRONG, &known).status).collect();
    assert_eq!(tries, [403, 403, 403, 403, 403, 429]);
}

#[test]
fn wrong_pins_at_a_tablet_lock_nobody_but_the_tablet() {
    let table = Table::new();
    let (kiosk, other) = (table.kiosk(), table.kiosk());
    table.seller();
    let to = table.desk.addr();
    for _ in 0..5 {
        assert_eq!(ask_pin(&kiosk, WRONG), PinAnswer::Wrong);
    }
    assert!(matches!(ask_pin(&kiosk, PIN), PinAnswer::Wait { .. }));
    assert_eq!(sign_in(1, to, PIN, "").status, 303);
    assert_eq!(ask_pin(&other, PIN), PinAnswer::Right, "another tablet at the same address");
    // Nor do guesses at the desk lock a tablet.
    (0..8).for_each(|_| drop(sign_in(2, to, WRONG, "")));
    assert_eq!(ask_pin(&other, PIN), PinAnswer::Right);
}

#[test]
fn the_pin_is_changed_by_who_knows_it() {
    let table = Table::new();
    let seller = table.seller();
    let other = {
        let mut other = Seller { agent: agent(), url: table.desk.url(), cookie: String::new() };
        other.cookie = other.post("/sign-in", &[("pin", PIN)]).cookie.expect("a session");
        other
    };
    assert!(seller.get("/kiosks").text.contains("href=\"/pin\""));
    assert_eq!(seller.get("/pin").status, 200);
    let new = "718204";
    let change =
        |now: &str, pin: &str, again: &str| seller.post("/pin", &[("now", now), ("pin", pin), ("again", again)]);
    for (now, pin, again, words) in [
        (WRONG, new, new, "not the PIN"),
        (PIN, new, "718205", "not the same"),
        (PIN, "71820", "71820", "6 to 12 digits"),
        (PIN, "000000", "000000", "without a pattern"),
        (PIN, "123456", "123456", "without a pattern"),
    ] {
        let answer = change(now, pin, again);
        assert!([400, 403].contains(&answer.status) && answer.text.contains(words), "{pin}: {}", answer.text);
    }
    assert_eq!(sign_in(1, table.desk.addr(), PIN, "").status, 303, "nothing has changed");
    assert_eq!(change(PIN, new, new).status, 303);
    assert_eq!(sign_in(1, table.desk.addr(), PIN, "").status, 403);
    assert_eq!(sign_in(1, table.desk.addr(), new, "").status, 303);
    // Who changed it goes on; all others sign in anew.
    assert_eq!((seller.get("/tickets").status, other.get("/tickets").status), (200, 303));
    let nobody = Seller { agent: agent(), url: table.desk.url(), cookie: String::new() };
    assert!(nobody.post("/pin", &[("now", new), ("pin", PIN), ("again", PIN)]).location.starts_with("/sign-in"));
    // Guesses here are limited as well.
    let tries: Vec<u16> = (0..7)
        .map(|_| {
            let (body, cookie) = (format!("now={WRONG}&pin={PIN}&again={PIN}"), format!("cookie: {}", seller.cookie));
            let told = ask(2, table.desk.addr(), "POST /pin", &[FORM, &cookie], &body);
            // No page that a PIN was sent for can be sent again: the answer lies elsewhere.
            let answer =
                told.head.lines().find_map(|line| line.strip_prefix("location: ")).expect("where the answer is");
            assert!((told.status, answer.starts_with("/answers/")) == (303, true), "{}", told.head);
            ask(2, table.desk.addr(), &format!("GET {answer}"), &[&cookie], "").status
        })
        .collect();
    assert_eq!(tries, [403, 403, 403, 403, 403, 429, 429]);
}

#[test]
fn an_easy_pin_is_never_set() {
    let table = Table::new();
    let stranger = Seller { agent: agent(), url: table.desk.url(), cookie: String::new() };
    for pin in ["000000", "123456", "654321", "121212", "112233"] {
        let answer = stranger.post("/setup", &[("pin", pin), ("again", pin)]);
        assert!(answer.status == 400 && answer.text.contains("without a pattern"), "{pin}: {}", answer.text);
    }
    assert_eq!(stranger.get("/sign-in").location, "/setup");
}

#[test]
fn a_forgotten_pin_is_reset_by_who_owns_the_machine() {
    let home = tempfile::tempdir().expect("a folder");
    let data = home.path().join("desk");
    let desk = OwnDesk::on(home, &data, &[]);
    let set = ask(1, desk.addr, "POST /setup", &[FORM], &format!("pin={PIN}&again={PIN}"));
    let cookie = format!("cookie: {}", set.cookie("seller").expect("a session"));
    assert_eq!(ask(1, desk.addr, "GET /tickets", &[&cookie], "").status, 200);
    let mut desk = desk;
    let home = desk.home.take().expect("its folder");
    drop(desk);

    let desk = OwnDesk::on(home, &data, &["--reset-pin"]);
    assert_eq!(ask(1, desk.addr, "GET /tickets", &[&cookie], "").status, 303, "every session has ended");
    assert_eq!(sign_in(1, desk.addr, PIN, "").status, 303);
    assert!(sign_in(1, desk.addr, PIN, "").head.contains("location: /setup"), "the PIN is to be chosen anew");
    // From another machine only with the code that the terminal shows.
    let from_elsewhere = ask(2, desk.addr, "POST /setup", &[FORM], "code=00000000&pin=718204&again=718204");
    assert_eq!(from_elsewhere.status, 403);
    assert_eq!(ask(1, desk.addr, "POST /setup", &[FORM], "pin=718204&again=718204").status, 303);
    assert_eq!(sign_in(1, desk.addr, "718204", "").status, 303);
    let log = desk.log();
    assert!(!log.contains("panicked"), "{log}");
}
