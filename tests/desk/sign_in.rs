//! Who comes in at the desk, for how long, and what every answer carries.

use super::*;

#[test]
fn strangers_learn_nothing() {
    let table = Table::new();
    let agent = agent();
    let url = table.desk.url();
    for path in ["/link/news?have=-1", "/link/picture/key-heart.png"] {
        let without: Answer = agent.get(format!("{url}{path}")).call().unwrap().into();
        assert_eq!(without.status, 401, "{path}");
        let wrong = agent.get(format!("{url}{path}")).header("Authorization", format!("Bearer {}", "0".repeat(64)));
        assert_eq!(wrong.call().unwrap().status(), 401, "{path}");
    }
    let kiosk = table.kiosk();
    let ticket = kiosk.ticket(0, &[&kiosk.fitting()[0].id], Wearer::From13);
    let delivery = chatelaine::link::wire::Delivery { ticket, refuse_if_short: false };
    assert_eq!(agent.post(format!("{url}/link/tickets")).send_json(&delivery).unwrap().status(), 401);
    for path in
        ["/", "/tickets", "/trays", "/show", "/kiosks", "/events", "/pictures/key-heart.png", "/parts/key-heart"]
    {
        let answer: Answer = agent.get(format!("{url}{path}")).call().unwrap().into();
        assert_eq!(answer.status, 303, "{path}");
        let leads = [format!("/sign-in?back={path}"), "/sign-in".to_owned(), "/tickets".to_owned()];
        assert!(leads.contains(&answer.location), "{path} leads to {}", answer.location);
    }
    // A released kiosk is a stranger again.
    let digit = kiosk.pairing.digit;
    table.desk.with_ledger(move |ledger| ledger.release_kiosk(digit, jiff::Timestamp::now())).unwrap().unwrap();
    let answer = agent.get(format!("{url}/link/news?have=-1")).header("Authorization", kiosk.bearer()).call().unwrap();
    assert_eq!(answer.status(), 401);
}

#[test]
fn the_pin_opens_the_desk() {
    let table = Table::new();
    let mut seller = Seller { agent: agent(), url: table.desk.url(), cookie: String::new() };
    assert_eq!(seller.get("/sign-in").location, "/setup");
    for (pin, again, words) in
        [("12345", "12345", "6 to 12 digits"), ("12345x", "12345x", "6 to 12 digits"), (PIN, "482914", "not the same")]
    {
        let answer = seller.post("/setup", &[("pin", pin), ("again", again)]);
        assert!(answer.status == 400 && answer.text.contains(words), "{pin}: {}", answer.text);
    }
    let set = seller.post("/setup", &[("pin", PIN), ("again", PIN)]);
    let cookie = set.headers["set-cookie"].to_str().unwrap().to_owned();
    assert!(cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict") && cookie.contains("Path=/"), "{cookie}");
    seller.cookie = set.cookie.unwrap();
    assert_eq!(seller.get("/tickets").status, 200);
    // Only hashes are kept.
    let pin = table.desk.with_ledger(|ledger| ledger.setting("pin")).unwrap().unwrap().unwrap();
    assert!(!pin.contains(PIN));
    assert_eq!(seller.post("/setup", &[("pin", "999999"), ("again", "999999")]).location, "/sign-in");

    let mut other = Seller { agent: agent(), url: table.desk.url(), cookie: String::new() };
    let right = other.post("/sign-in", &[("pin", PIN)]);
    assert_eq!((right.status, right.location.as_str()), (303, "/tickets"));
    other.cookie = right.cookie.unwrap();
    assert_ne!(other.cookie, seller.cookie);
    // Strangers' guesses are limited (tests/attack.rs); the machine itself is never locked out.
    let tries: Vec<u16> = (0..12).map(|_| other.post("/sign-in", &[("pin", "999999")]).status).collect();
    assert_eq!(tries, [403; 12]);
    let again = other.post("/sign-in", &[("pin", PIN)]);
    assert_eq!(again.status, 303);
    other.cookie = again.cookie.unwrap();
    assert_eq!(seller.get("/tickets").status, 200, "who is signed in is not locked out");

    assert_eq!(other.post("/sign-out", &[]).location, "/sign-in");
    assert_eq!((other.get("/tickets").status, seller.get("/tickets").status), (303, 200));
    assert_eq!(seller.post("/sign-out-all", &[]).location, "/sign-in");
    assert_eq!(seller.get("/tickets").status, 303);
}

#[test]
fn a_session_ends_by_itself() {
    let table = Table::new();
    let seller = table.seller();
    // As if the session had last been used 13 hours ago, which SQLite is told directly.
    let token = seller.cookie.split('=').nth(1).unwrap().to_owned();
    let hours_ago = |hours: i64| jiff::Timestamp::now() - jiff::SignedDuration::from_hours(hours);
    let hash = table
        .desk
        .with_ledger(move |ledger| {
            let hash: String = sha2_hex(&token);
            ledger.use_session(&hash, hours_ago(13)).map(|()| ledger.session(&hash))
        })
        .unwrap()
        .unwrap();
    assert!(hash.unwrap().is_some(), "the session is in the ledger under its hash");
    assert_eq!(seller.get("/tickets").location, "/sign-in");
}

fn sha2_hex(text: &str) -> String {
    use sha2::Digest;
    sha2::Sha256::digest(text.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect()
}

#[test]
fn other_sites_change_nothing() {
    let table = Table::new();
    let seller = table.seller();
    let kiosk = table.kiosk();
    let ticket = kiosk.ticket(0, &[&kiosk.fitting()[0].id], Wearer::From13);
    kiosk.deliver(&ticket, true);
    let id = ticket.id;
    let path = format!("{}/tickets/{id}/let-go", seller.url);
    let post = |name: &str, value: &str| -> Answer {
        let request = seller.agent.post(&path).header("Cookie", &seller.cookie).header(name, value);
        request.send_form([("a", "b")]).unwrap().into()
    };
    for (name, value) in [
        ("Origin", "http://shop.example"),
        ("Origin", "null"),
        ("Sec-Fetch-Site", "cross-site"),
        ("Host", "shop.example"),
    ] {
        assert_eq!(post(name, value).status, 403, "{name}: {value}");
    }
    assert_eq!(seller.get(&format!("/tickets/{id}/let-go")).status, 200, "a look changes nothing");
    let state = || table.desk.with_ledger(move |ledger| ledger.ticket(id).map(|ticket| ticket.state)).unwrap().unwrap();
    assert_eq!(state(), State::Sent);
    assert_eq!(post("Origin", &seller.url).status, 303, "the desk's own page may");
    assert_eq!(state(), State::LetGo);
}

#[test]
fn every_answer_carries_the_same_guard() {
    let table = Table::new();
    let seller = table.seller();
    let stranger = Seller { agent: agent(), url: table.desk.url(), cookie: String::new() };
    let mut answers: Vec<Answer> =
        ["/tickets", "/nowhere", "/tickets/not-a-ticket", "/assets/desk/desk.css", "/parts/nothing", "/shows/9"]
            .iter()
            .map(|path| seller.get(path))
            .collect();
    answers.push(stranger.get("/tickets"));
    answers.push(stranger.get("/link/news?have=1"));
    answers.push(seller.post("/tickets", &[]));
    answers.push(stranger.post("/sign-in", &[("pin", "1")]));
    assert_eq!(
        answers.iter().map(|answer| answer.status).collect::<Vec<_>>(),
        [200, 404, 404, 200, 404, 404, 303, 401, 405, 403]
    );
    for answer in answers {
        let policy = answer.headers["content-security-policy"].to_str().unwrap();
        assert!(policy.starts_with("default-src 'none'") && policy.contains("frame-ancestors 'none'"), "{policy}");
        assert_eq!(answer.headers["x-content-type-options"], "nosniff");
        assert_eq!(answer.headers["referrer-policy"], "same-origin");
    }
    let too_large = "x".repeat(300 * 1024);
    assert_eq!(seller.post("/sign-in", &[("pin", &too_large)]).status, 413);
    // Nothing is fetched from elsewhere, and nothing is written into the page that the policy would refuse.
    for page in ["/tickets", "/trays", "/trays/cautions", "/show", "/kiosks"] {
        let text = seller.get(page).text;
        assert!(!text.contains("style=\"") && !text.contains("onclick"), "{page}");
        let outside =
            text.match_indices("http").filter(|(at, _)| !text[*at..].starts_with(seller.url.as_str())).count();
        assert_eq!(outside, 0, "{page} names another site");
    }
}
