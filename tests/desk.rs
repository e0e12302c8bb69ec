//! The desk as kiosks and sellers meet it: over HTTP, with a real ledger on disk.

use std::{
    collections::BTreeSet,
    fs,
    io::Read,
    net::TcpStream,
    thread,
    time::{Duration, Instant},
};

use chatelaine::{
    catalog::relief_name,
    craft::{DropKind, Wearer},
    desk::{Desk, DeskError},
    lang::{Lang, Texts},
    link::{
        PinAnswer,
        wire::{PairRequest, Pairing, PinQuestion, Refused},
    },
    ticket::{Receipt, State, Tender},
};

use maud::html;

#[path = "desk/kit.rs"]
mod kit;

#[path = "desk/seller.rs"]
mod seller;
mod support;

use kit::{PIN, Table, agent, config};
use seller::{Answer, Seller};

/// The words that a page shows for an amount.
fn money(table: &Table, amount: rust_decimal::Decimal) -> String {
    table.catalog().table.prices.currency.plain(amount)
}

#[test]
fn a_kiosk_hears_of_the_catalogue_and_of_counts() {
    let table = Table::new();
    let kiosk = table.kiosk();
    let first = kiosk.news(-1, "");
    let content = first.content.as_ref().expect("the catalogue");
    let catalog = table.catalog();
    assert_eq!((&content.catalog.table, &content.catalog.trays), (&catalog.table, &catalog.trays));
    let marked = |drops: &[DropKind]| -> Vec<_> { drops.iter().map(|kind| (kind.id.clone(), kind.price)).collect() };
    assert_eq!(marked(&content.catalog.drops), marked(&catalog.drops));
    // Every drop of the demo catalogue has a picture and its relief.
    let both = catalog.drops.iter().flat_map(|kind| [kind.picture.clone(), relief_name(&kind.picture)]);
    assert!(content.pictures.keys().cloned().eq(both.collect::<BTreeSet<_>>()));
    let drop = kiosk.fitting()[0];
    assert_eq!(first.available[&drop.id], drop.stock);
    assert_eq!(first.next_sequence, 0);

    let url = format!("{}/link/picture/{}", kiosk.pairing.desk, drop.picture);
    let picture: Answer = kiosk.agent.get(url).header("Authorization", kiosk.bearer()).call().unwrap().into();
    assert_eq!((picture.status, picture.headers["content-type"].to_str().unwrap()), (200, "image/png"));

    // A question with everything known waits, and is answered by the next change.
    let (change, revision, id) = (first.change, first.revision.clone(), drop.id.clone());
    thread::scope(|scope| {
        let waiting = scope.spawn(|| {
            let started = Instant::now();
            (kiosk.news(change, &revision), started.elapsed())
        });
        thread::sleep(Duration::from_millis(300));
        let part = id.clone();
        table.desk.with_ledger(move |ledger| ledger.recount(&part, 1, jiff::Timestamp::now())).unwrap().unwrap();
        let (news, waited) = waiting.join().unwrap();
        assert!(waited >= Duration::from_millis(250) && waited < Duration::from_secs(2), "{waited:?}");
        assert!(news.change > change && news.content.is_none());
        assert_eq!(news.available[&id], 1);
    });
}

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

/// A tablet reads messages and a seller pages, also where something is refused.
#[test]
fn a_refusal_has_the_form_that_its_reader_reads() {
    let table = Table::new();
    let (kiosk, seller) = (table.kiosk(), table.seller());
    let (url, good) = (table.desk.url(), kiosk.bearer());
    let asked = |path: &str, key: &str| -> Answer {
        kiosk.agent.get(format!("{url}{path}")).header("Authorization", key).call().unwrap().into()
    };
    let delivered = |body: &str| -> Answer {
        let request = kiosk.agent.post(format!("{url}/link/tickets")).header("Authorization", &good);
        request.header("Content-Type", "application/json").send(body).unwrap().into()
    };
    for (answer, status, words) in [
        (asked("/link/news?have=-1", "Bearer 0"), 401, "pair it again"),
        (asked("/link/news?have=much", &good), 400, "have"),
        (asked("/link/picture/none.png", &good), 404, "none.png"),
        (asked("/link/nowhere", &good), 404, "/link/nowhere"),
        (delivered("{\"ticket\""), 400, "line 1"),
        (delivered("{\"ticket\": 3}"), 422, "ticket"),
    ] {
        let header = |name: &str| answer.headers.get(name).map(|value| value.to_str().unwrap().to_owned());
        assert_eq!((answer.status, header("content-type").as_deref()), (status, Some("application/json")), "{words}");
        let refused: Refused = serde_json::from_str(&answer.text).unwrap_or_else(|_| panic!("{}", answer.text));
        assert!(refused.reason.contains(words), "{words}: {}", refused.reason);
        assert_eq!(header("content-length"), Some(answer.text.len().to_string()), "{words}");
        assert_eq!(header("x-content-type-options").as_deref(), Some("nosniff"), "{words}");
    }
    let page = seller.get("/nowhere");
    assert_eq!((page.status, page.headers["content-type"].to_str().unwrap()), (404, "text/html; charset=utf-8"));
    assert!(page.text.contains("That was not done") && page.text.contains("There is no page /nowhere at this desk"));
}

/// The six digits on the Kiosks page.
fn code_on(page: &str) -> String {
    let after = page.split("class=\"code\">").nth(1).expect("a code on the page");
    after.split('<').next().unwrap_or_default().to_owned()
}

#[test]
fn a_code_pairs_one_kiosk() {
    let table = Table::new();
    let seller = table.seller();
    let pair = |code: &str| -> (u16, Option<Pairing>) {
        let request = agent().post(format!("{}/link/pair", table.desk.url()));
        let mut answer = request.send_json(PairRequest { code: code.to_owned() }).unwrap();
        let status = answer.status().as_u16();
        (status, answer.body_mut().read_json().ok())
    };
    assert_eq!(pair("000000").0, 403, "no code has been asked for");
    assert_eq!(seller.post("/kiosks/code", &[]).status, 303);
    let page = seller.get("/kiosks").text;
    let code = code_on(&page);
    assert!(page.contains(&table.desk.url()), "the address to type is on the page");
    let (status, pairing) = pair(&code);
    let pairing = pairing.expect("a pairing");
    assert_eq!((status, pairing.digit, pairing.desk.as_str()), (200, 1, table.desk.url().as_str()));
    assert_eq!(pair(&code).0, 403, "each code is good once");
    assert!(table.desk.knows(&pairing));
    assert!(!seller.get("/kiosks").text.contains("class=\"code\""), "a used code is not shown");

    let tries: Vec<u16> = (0..6).map(|n| pair(&format!("99999{n}")).0).collect();
    assert_eq!(tries, [403; 6]);
    seller.post("/kiosks/code", &[]);
    let code = code_on(&seller.get("/kiosks").text);
    assert_eq!(pair(&code).0, 403, "after too many tries even the right code has to wait");

    assert_eq!(seller.post("/kiosks/1/release", &[]).status, 303);
    assert!(!table.desk.knows(&pairing));
}

#[test]
fn a_delivery_counts_once() {
    let table = Table::new();
    let (kiosk, other) = (table.kiosk(), table.kiosk());
    let drop = kiosk.fitting()[0].id.clone();
    let ticket = kiosk.ticket(0, &[&drop], Wearer::From13);
    let stored = Receipt::Stored { short: vec![] };
    for _ in 0..3 {
        assert_eq!(kiosk.deliver(&ticket, true), stored);
    }
    let mut altered = ticket.clone();
    altered.grown_up_confirmed = true;
    assert!(matches!(kiosk.deliver(&altered, false), Receipt::Refused { .. }));
    assert!(matches!(other.deliver(&kiosk.ticket(1, &[&drop], Wearer::From13), false), Receipt::Refused { .. }));
    let (tickets, counts) = table.desk.with_ledger(|ledger| (ledger.tickets(), ledger.counts())).unwrap();
    assert_eq!(tickets.unwrap().len(), 1);
    assert_eq!(counts.unwrap()[&drop].held, 1);
    assert_eq!(kiosk.news(-1, "").next_sequence, 1);
}

#[test]
fn the_last_one_goes_to_one_guest() {
    let table = Table::new();
    let (one, two) = (table.kiosk(), table.kiosk());
    let drop = one.fitting()[0].id.clone();
    let part = drop.clone();
    table.desk.with_ledger(move |ledger| ledger.recount(&part, 1, jiff::Timestamp::now())).unwrap().unwrap();
    let (a, b) = (one.ticket(0, &[&drop], Wearer::From13), two.ticket(0, &[&drop], Wearer::From13));
    let answers = thread::scope(|scope| {
        let first = scope.spawn(|| one.deliver(&a, true));
        let second = scope.spawn(|| two.deliver(&b, true));
        [first.join().unwrap(), second.join().unwrap()]
    });
    let stored = answers.iter().filter(|answer| matches!(answer, Receipt::Stored { .. })).count();
    let short = Receipt::Short { parts: vec![drop.clone()] };
    assert_eq!((stored, answers.contains(&short)), (1, true), "{answers:?}");
    // A number that was given with the desk away is kept in any case, and says what is missing.
    let late = two.ticket(7, &[&drop], Wearer::From13);
    assert_eq!(two.deliver(&late, false), Receipt::Stored { short: vec![drop] });
}

#[test]
fn a_kiosk_asks_for_the_pin() {
    let table = Table::new();
    let kiosk = table.kiosk();
    let ask = |pin: &str| -> PinAnswer {
        let request =
            kiosk.agent.post(format!("{}/link/pin", kiosk.pairing.desk)).header("Authorization", kiosk.bearer());
        request.send_json(PinQuestion { pin: pin.to_owned() }).unwrap().body_mut().read_json().unwrap()
    };
    assert_eq!(ask(PIN), PinAnswer::NotSet);
    table.seller();
    assert_eq!(ask(PIN), PinAnswer::Right);
    let wrong: Vec<PinAnswer> = (0..5).map(|_| ask("111111")).collect();
    assert_eq!(wrong, [PinAnswer::Wrong; 5]);
    assert!(matches!(ask(PIN), PinAnswer::Wait { seconds: 1..=61 }));
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
        [200, 404, 400, 200, 404, 404, 303, 401, 405, 403]
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

#[test]
fn a_ticket_is_checked_and_rung_up_by_forms() {
    let table = Table::new();
    let seller = table.seller();
    let kiosk = table.kiosk();
    let fitting = kiosk.fitting();
    let [a, b, c, d] = [0, 1, 2, 3].map(|n| fitting[n].id.clone());
    let sent = kiosk.ticket(4, &[&a, &b, &c], Wearer::Under3);
    assert!(!sent.verdict.cautions.is_empty(), "a small child's piece with charms has cautions");
    kiosk.deliver(&sent, true);
    let id = sent.id;
    let now = || table.desk.with_ledger(move |ledger| ledger.ticket(id)).unwrap().unwrap();
    let page = format!("/tickets/{id}");
    let act = |verb: &str, fields: &[(&str, &str)]| seller.post(&format!("{page}/{verb}"), fields);

    let found = seller.get(&format!("/tickets/find?number={}", sent.number));
    assert_eq!(found.location, page);
    let wrong = seller.get("/tickets/find?number=3-042-8");
    assert!(wrong.status == 400 && wrong.text.contains("look at the ticket again"));
    assert_eq!(seller.get("/tickets/find?number=3-042-6").status, 404, "a good number that nobody sent");

    let text = seller.get(&page).text;
    for words in [sent.number.to_string(), money(&table, sent.quote.total), fitting[0].name.clone()] {
        assert!(text.contains(&words), "{words}");
    }
    assert!(text.contains(chatelaine::caution::DEFERRAL));
    let part = &sent.verdict.cautions[0];
    assert!(part.seller.starts_with("Ring and body fit") || part.seller.starts_with("The ring"), "{}", part.seller);
    for words in [&part.text, &part.seller, &part.rule] {
        assert!(text.contains(words.as_str()), "{words}");
    }
    let picture = seller.get(&format!("{page}/picture.png"));
    assert_eq!((picture.status, picture.headers["content-type"].to_str().unwrap()), (200, "image/png"));
    let tag = picture.headers["etag"].to_str().unwrap();
    let again = seller.agent.get(format!("{}{page}/picture.png", seller.url)).header("Cookie", &seller.cookie);
    assert_eq!(again.header("If-None-Match", tag).call().unwrap().status(), 304);

    assert_eq!(act("call", &[]).status, 303);
    assert_eq!(now().state, State::Called);
    let early = act("ring-up", &[("tender", "cash"), ("total", &sent.quote.total.to_string())]);
    assert!(early.status == 409 && early.text.contains("not ticked off yet"), "{}", early.status);

    // The second drop is missing: another one hangs in its place; the third comes off; the sum follows.
    let choices = seller.get(&format!("{page}/missing/1")).text;
    assert!(choices.contains(&format!("value=\"{d}\"")) && !choices.contains(&format!("value=\"{b}\"")));
    assert_eq!(seller.post(&format!("{page}/missing/1"), &[("to", &d)]).status, 303);
    assert_eq!(act("remove", &[("line", "2")]).status, 303);
    let changed = now();
    assert_eq!(changed.piece.drops, [a.clone(), d.clone()]);
    assert_eq!(changed.quote.total, table.catalog().quote(&changed.piece).unwrap().total);
    assert_eq!(act("length", &[("mm", "457.2")]).status, 303);
    assert!((now().piece.length.unwrap().mm() - 457.2).abs() < 1e-9);
    assert_eq!(act("length", &[("mm", "90000")]).status, 409);
    assert_eq!(act("length", &[("mm", "NaN")]).status, 400);
    // It turns out to be for a toddler: the cautions follow, and have to be told.
    assert_eq!(act("wearer", &[("wearer", "from13")]).status, 303);
    let adult = now().verdict;
    assert_eq!(act("told", &[("told", "1")]).status, 303);
    assert_eq!(act("wearer", &[("wearer", "under3")]).status, 303);
    let toddler = now();
    assert!(toddler.verdict.cautions.len() > adult.cautions.len() && !toddler.verdict.suitable && !toddler.told);
    let shown = seller.get(&page).text;
    assert!(shown.contains("it is for under 3") && shown.contains("This piece is not suitable"));
    assert_eq!(act("wearer", &[("wearer", "everybody")]).status, 400);

    for part in ["base", "0", "1"] {
        assert_eq!(act("tick", &[("part", part), ("on", "1")]).status, 303);
    }
    assert_eq!(act("tick", &[("part", "2"), ("on", "1")]).status, 409, "a drop that was taken off");
    assert_eq!(act("tick", &[("part", "lid"), ("on", "1")]).status, 400);
    let total = now().quote.total.to_string();
    let untold = act("ring-up", &[("tender", "card"), ("total", &total)]);
    assert!(untold.status == 409 && untold.text.contains("the guest was told"));
    assert_eq!(act("told", &[("told", "1")]).status, 303);
    let stale = act("ring-up", &[("tender", "card"), ("total", &sent.quote.total.to_string())]);
    assert!(stale.status == 409 && stale.text.contains("nothing was charged"), "another sum than the one looked at");
    assert_eq!(act("ring-up", &[("tender", "shells"), ("total", &total)]).status, 400);
    // It is not for a toddler: the ordinary tick does not sell it, each hazard is confirmed by its name.
    let unfit = act("ring-up", &[("tender", "card"), ("total", &total)]);
    assert!(unfit.status == 409 && unfit.text.contains("not for this wearer (small part"), "{}", unfit.text);
    assert_eq!(act("confirm", &[("code", "small_hole"), ("on", "1")]).status, 422);
    assert_eq!(act("confirm", &[("code", "coin_cell"), ("on", "1")]).status, 409, "nothing like it is in the piece");
    for code in now().unconfirmed() {
        let name = code.code().replace('_', " ");
        let shown = seller.get(&page).text;
        assert!(shown.contains(&format!("Sold for a grown-up: {name}")), "{name}");
        assert_eq!(act("confirm", &[("code", code.code()), ("on", "1")]).status, 303);
    }
    let shown = seller.get(&page).text;
    assert!(shown.contains("sold for a grown-up: small part"), "it stands in what happened");
    assert_eq!(act("ring-up", &[("tender", "card"), ("total", &total)]).status, 303);
    // A double touch is no reason for an alarm, another way to pay is.
    assert_eq!(act("ring-up", &[("tender", "card"), ("total", &total)]).status, 303);
    assert_eq!(act("ring-up", &[("tender", "cash"), ("total", &total)]).status, 409, "paid once");
    let paid = now();
    let history = table.desk.with_ledger(move |ledger| ledger.history(id)).unwrap().unwrap();
    assert_eq!(history.iter().filter(|event| event.kind == "rung_up").count(), 1);
    assert_eq!((paid.state, paid.tender, paid.charged), (State::RungUp, Some(Tender::Card), Some(changed.quote.total)));
    let counts = table.desk.with_ledger(|ledger| ledger.counts()).unwrap().unwrap();
    let stock = |id: &str| table.catalog().drop_kind(id).unwrap().stock;
    assert_eq!((counts[&a].on_hand, counts[&b].on_hand, counts[&d].on_hand), (stock(&a) - 1, stock(&b), stock(&d) - 1));
    assert_eq!((counts[&a].held, counts[&b].held, counts[&c].held), (0, 0, 0));
    assert_eq!(act("hand-over", &[]).status, 303);
    assert_eq!(act("let-go", &[]).status, 409);
    let history = seller.get(&page).text;
    for words in ["sent by the guest", "swapped for", "taken off", "made 18 in", "rung up, paid by card", "handed over"]
    {
        assert!(history.contains(words), "{words}");
    }
}

#[test]
fn a_drop_the_count_denies_can_still_be_there() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let drop = kiosk.fitting()[0].id.clone();
    let part = drop.clone();
    table.desk.with_ledger(move |ledger| ledger.recount(&part, 0, jiff::Timestamp::now())).unwrap().unwrap();
    let ticket = kiosk.ticket(0, &[&drop], Wearer::From13);
    assert_eq!(kiosk.deliver(&ticket, false), Receipt::Stored { short: vec![drop.clone()] });
    let page = format!("/tickets/{}", ticket.id);
    assert!(seller.get(&page).text.contains("It is here: count one more"));
    let denied = seller.post(&format!("{page}/tick"), &[("part", "0"), ("on", "1")]);
    assert!(denied.status == 409 && denied.text.contains("The count says that no"));
    assert_eq!(seller.post(&format!("{page}/tick"), &[("part", "0"), ("on", "1"), ("found", "1")]).status, 303);
    let counts = table.desk.with_ledger(|ledger| ledger.counts()).unwrap().unwrap();
    assert_eq!((counts[&drop].on_hand, counts[&drop].held), (1, 1));
}

#[test]
fn counts_are_set_and_the_show_is_closed_once() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let drop = kiosk.fitting()[0].id.clone();
    let part = format!("/parts/{drop}");
    assert_eq!(seller.post(&part, &[("free", "7")]).status, 303);
    assert!(seller.get(&part).text.contains("value=\"7\""));
    for wrong in ["-1", "a few", "", "10000"] {
        assert_eq!(seller.post(&part, &[("free", wrong)]).status, 400, "{wrong}");
    }
    assert_eq!(seller.post(&part, &[("free", "7"), ("to", "0")]).status, 303, "sold out by one touch");
    assert_eq!(kiosk.news(-1, "").available[&drop], 0);
    assert!(seller.get("/trays").text.contains("sold out"));
    seller.post(&part, &[("free", "5")]);

    let (one, two) = (kiosk.ticket(0, &[&drop], Wearer::From13), kiosk.ticket(1, &[&drop], Wearer::From13));
    kiosk.deliver(&one, true);
    kiosk.deliver(&two, true);
    let page = format!("/tickets/{}", one.id);
    for fields in [[("part", "base"), ("on", "1")], [("part", "0"), ("on", "1")]] {
        seller.post(&format!("{page}/tick"), &fields);
    }
    seller.post(&format!("{page}/told"), &[("told", "1")]);
    let total = one.quote.total.to_string();
    assert_eq!(seller.post(&format!("{page}/ring-up"), &[("tender", "cash"), ("total", &total)]).status, 303);
    let sum = money(&table, one.quote.total);
    assert!(seller.get("/show").text.contains(&sum));
    assert!(seller.get("/show/close").text.contains("1 ticket is still open"));
    assert_eq!(seller.post("/show/close", &[("show", "9")]).status, 409);
    for _ in 0..2 {
        assert_eq!(seller.post("/show/close", &[("show", "1")]).location, "/shows/1");
    }
    let sheet = seller.get("/shows/1").text;
    assert!(sheet.contains(&sum) && sheet.contains("1 of them at closing"));
    let show = table.desk.with_ledger(|ledger| ledger.show()).unwrap().unwrap();
    assert_eq!(show.id, 2, "the form sent twice closed one show");
    assert!(seller.get("/show").text.contains("/shows/1"));
    assert_eq!(seller.get("/shows/2").status, 404, "a show that still runs");
    let state = |id| table.desk.with_ledger(move |ledger| ledger.ticket(id)).unwrap().unwrap().state;
    assert_eq!((state(one.id), state(two.id)), (State::RungUp, State::LetGo));
}

#[test]
fn an_edited_catalogue_reaches_kiosks_and_a_broken_one_changes_nothing() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let before = kiosk.news(-1, "");
    let file = table.catalog_file("table.ron");
    let text = fs::read_to_string(&file).unwrap();
    let first_name = table.catalog().table.name.clone();
    let named = |name: &str| text.replace(&first_name, name);

    let (new, waited) = thread::scope(|scope| {
        let waiting = scope.spawn(|| kiosk.news(before.change, &before.revision));
        thread::sleep(Duration::from_millis(200));
        fs::write(&file, named("The Other Table")).unwrap();
        let edited = Instant::now();
        (waiting.join().unwrap(), edited.elapsed())
    });
    assert_eq!(new.content.expect("the new catalogue").catalog.table.name, "The Other Table");
    assert!(waited < Duration::from_secs(1), "seen after {waited:?}");

    let shows = |path: &str, words: &str, wanted: bool| {
        let started = Instant::now();
        while seller.get(path).text.contains(words) != wanted {
            assert!(started.elapsed() < Duration::from_secs(3), "{path}: {words:?} wanted: {wanted}");
            thread::sleep(Duration::from_millis(30));
        }
    };
    fs::write(&file, named("The Other Table").replace("rho: 0.6", "rho: much")).unwrap();
    shows("/trays", "table.ron, line ", true);
    shows("/tickets", "The catalogue has 1 mistake", true);
    shows("/tickets", "The Other Table", true);
    assert_eq!(kiosk.news(-1, "").revision, new.revision);
    fs::write(&file, named("The Third Table")).unwrap();
    shows("/tickets", "The Third Table", true);
    shows("/trays", "Mistakes in the catalogue", false);
}

#[test]
fn a_desk_starts_on_the_last_good_catalogue_or_says_what_is_wrong() {
    let Table { desk, dir } = Table::new();
    let good = desk.url();
    assert!(good.starts_with("http://127.0.0.1:"));
    let busy = Desk::start(config(dir.path())).err().expect("one desk to a folder");
    assert!(matches!(busy, DeskError::InUse(_)), "{busy}");
    let other = tempfile::tempdir().unwrap();
    support::copy(&dir.path().join("catalog"), &other.path().join("catalog")).unwrap();
    let mut same_port = config(other.path());
    same_port.listen = desk.addr();
    let taken = Desk::start(same_port).err().expect("one desk to a port");
    assert!(matches!(taken, DeskError::Listen(..)) && taken.to_string().contains("--listen"), "{taken}");
    desk.stop();

    fs::write(dir.path().join("catalog/table.ron"), "(name: \"Half").unwrap();
    let desk = Desk::start(config(dir.path())).expect("the copy is good");
    let table = Table { desk, dir };
    let seller = table.seller();
    assert!(seller.get("/trays").text.contains("Mistakes in the catalogue"));
    assert_eq!(seller.get("/tickets").status, 200);

    fs::write(other.path().join("catalog/table.ron"), "(name: \"Half").unwrap();
    fs::remove_file(other.path().join("catalog/bases.ron")).unwrap();
    let error = Desk::start(config(other.path())).err().expect("no copy yet").to_string();
    assert!(error.contains("table.ron:1:") && error.contains("bases.ron: the file is missing"), "{error}");
}

#[test]
fn open_pages_hear_of_changes_and_do_not_keep_the_desk_from_closing() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let request = seller.agent.get(format!("{}/events", seller.url)).header("Cookie", &seller.cookie);
    let mut stream = request.call().unwrap().into_body().into_reader();
    let mut next = || {
        let mut text = Vec::new();
        let mut byte = [0];
        while !text.ends_with(b"\n\n") && stream.read(&mut byte).expect("the stream") == 1 {
            text.push(byte[0]);
        }
        String::from_utf8(text).unwrap()
    };
    let first = next();
    assert!(first.starts_with("data:"), "{first:?}");
    let started = Instant::now();
    kiosk.deliver(&kiosk.ticket(0, &[&kiosk.fitting()[0].id], Wearer::From13), true);
    assert_ne!(next(), first);
    assert!(started.elapsed() < Duration::from_secs(1));

    let addr = table.desk.addr();
    let news = kiosk.news(-1, "");
    thread::scope(|scope| {
        // A kiosk's question waits, and a client that never says anything is connected.
        let silent = TcpStream::connect(addr).unwrap();
        scope.spawn(|| kiosk.news(news.change, &news.revision));
        thread::sleep(Duration::from_millis(200));
        let started = Instant::now();
        table.desk.stop();
        assert!(started.elapsed() < Duration::from_secs(3), "closing took {:?}", started.elapsed());
        drop(silent);
    });
    assert_eq!(next(), "", "the stream has ended");
    assert!(TcpStream::connect(addr).is_err(), "nobody answers any more");
}

/// Where nothing was found the guide is still no test report.
#[test]
fn a_ticket_without_cautions_defers_all_the_same() {
    let table = Table::new();
    let kiosk = table.kiosk();
    let mut bare = kiosk.ticket(7, &[], Wearer::From13);
    // A clasp and rings as no chain has them, so that there is nothing small.
    let mut bases = fs::read_to_string(table.catalog_file("bases.ron")).expect("the bases");
    bases = bases.replacen("clasp: (length: \"12mm\", width: \"6mm\"", "clasp: (length: \"66mm\", width: \"6mm\"", 1);
    for (small, large) in [("outside: \"5mm\"", "outside: \"40mm\""), ("outside: \"4mm\"", "outside: \"40mm\"")] {
        bases = bases.replacen(small, large, 1);
    }
    fs::write(table.catalog_file("bases.ron"), bases).expect("written");
    bare.verdict = table.catalog().cautions(&bare.piece).expect("cautions");
    assert!(bare.verdict.cautions.is_empty(), "{:?}", bare.verdict);
    kiosk.deliver(&bare, true);
    let seller = table.seller();
    let page = format!("/tickets/{}", bare.id);
    let until = Instant::now() + Duration::from_secs(10);
    let mut text = seller.get(&page).text;
    while !text.contains("Nothing to be careful about was found.") {
        assert!(Instant::now() < until, "the desk follows the edit: {text}");
        thread::sleep(Duration::from_millis(50));
        text = seller.get(&page).text;
    }
    assert!(text.contains(chatelaine::caution::DEFERRAL));
}

/// The card has every drop with what each wearer hears of it, each rule with how far it is known, and the deferral.
#[test]
fn the_card_of_cautions_has_everything_on_the_table() {
    let table = Table::new();
    let seller = table.seller();
    let catalog = table.catalog();
    assert!(seller.get("/trays").text.contains("href=\"/trays/cautions\""));
    for lang in Lang::ALL {
        let (texts, page) = (Texts::new(lang), seller.get(&format!("/trays/cautions?lang={}", lang.code())).text);
        let said = |words: &str| page.contains(&html! { (words) }.into_string());
        assert!(said(&texts.get("caution-deferral")) && said("United States"), "{lang:?}");
        let of_drops = catalog.drops.iter().flat_map(|kind| {
            Wearer::ANSWERS.into_iter().flat_map(|wearer| catalog.drop_cautions(kind, wearer).cautions)
        });
        let of_drops: Vec<_> = of_drops.collect();
        for one in &of_drops {
            assert!(said(&texts.caution(one, &catalog)), "{lang:?}: {}", one.text);
        }
        let shown = catalog.rules.rules.iter().filter(|rule| of_drops.iter().any(|one| one.code == rule.code));
        for rule in shown {
            let word = texts.get(&format!("code-{}", rule.code.code()));
            assert!(said(&word), "{lang:?}: {word}");
            assert!(said(&texts.cited_rule(rule)), "{lang:?} {}", rule.rule);
            assert_eq!(said(&rule.figure), lang == Lang::En, "{lang:?}: figures are written in English alone");
            assert!(!said(&rule.seller), "guests read it: {}", rule.seller);
        }
        for kind in &catalog.drops {
            assert!(said(catalog.called(lang.code(), &kind.id, &kind.name)), "{lang:?} {}", kind.id);
        }
        assert!(
            !["code-", "caution-", "card-", "wearer-"].iter().any(|key| page.contains(&format!(">{key}"))),
            "{lang:?}"
        );
    }
    let english = Texts::new(Lang::En);
    let text = seller.get("/trays/cautions").text;
    let row = |name: &str| {
        let rest =
            &text[text.find(&format!("<th scope=\"row\">{name}</th>")).unwrap_or_else(|| panic!("no row {name}"))..];
        rest[..rest.find("</tr>").expect("the row's end")].to_owned()
    };
    // Drops under their trays, bases under their own heading.
    let heads: Vec<&str> = text.split("<thead>").skip(1).filter_map(|rest| rest.split("</thead>").next()).collect();
    let (of_bases, of_trays) = heads.split_last().expect("tables");
    assert!(of_bases.contains("<th>Base</th>") && !of_bases.contains("Drop"), "{of_bases}");
    assert!(of_trays.len() == catalog.trays.len() && of_trays.iter().all(|head| head.contains("<th>Drop</th>")));
    for kind in &catalog.drops {
        let cells: Vec<String> = row(&kind.name).split("<td data-band").skip(1).map(str::to_owned).collect();
        assert_eq!(cells.len(), 4, "{}", kind.name);
        for (cell, wearer) in cells.iter().zip(Wearer::ANSWERS) {
            let verdict = catalog.drop_cautions(kind, wearer);
            let word = match (verdict.suitable, verdict.cautions.is_empty()) {
                (false, _) => "Not for this age",
                (true, false) => "With care",
                (true, true) => "Nothing found",
            };
            assert!(cell.contains(word), "{} {wearer:?}: {cell}", kind.name);
            for hazard in verdict.hazards() {
                let word = english.get(&format!("code-{}", hazard.code().code()));
                assert!(cell.contains(&word), "{} {wearer:?} {word}", kind.name);
            }
            assert!(
                (1..=verdict.hazards().len()).contains(&cell.matches("<li").count()) || verdict.cautions.is_empty()
            );
        }
    }
    assert!(!row("Brass bangle").contains("class=\"home\""), "a base lies on no tray");
    assert!(
        row("Lane lantern, lights up").contains("button cell")
            && row("Antique brass cable chain").contains("round the neck")
    );
}
