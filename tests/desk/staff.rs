//! A helper at the desk: signing in by name, what is theirs, and what the seller approves of on their phone.

use chatelaine::{ledger::SELLER, money::quote};

use super::*;
use crate::helper::{helper, nobody, told_pin};

fn entries_by(table: &Table, id: uuid::Uuid) -> Vec<(String, Option<String>)> {
    let history = table.desk.with_ledger(move |ledger| ledger.history(id)).unwrap().unwrap();
    history.into_iter().map(|event| (event.kind, event.by)).collect()
}

#[test]
fn a_helper_signs_in_by_name_and_a_pin_told_once() {
    let table = Table::new();
    let seller = table.seller();
    assert!(!nobody(&table).get("/sign-in").text.contains("name=\"who\""), "the seller alone types a PIN and no more");
    let (mia, pin) = helper(&table, &seller, "Mia");
    let list = seller.get("/staff").text;
    assert!(list.contains("Mia") && !list.contains(&pin) && !list.contains(&format!("{} {}", &pin[..3], &pin[3..])));
    let kept = table.desk.with_ledger(|ledger| ledger.pin_of("Mia")).unwrap().unwrap().unwrap();
    assert!(!kept.contains(&pin), "only a hash is kept");
    assert_eq!(mia.get("/tickets").status, 200);

    // A PIN is good with its own name alone, and who gets it wrong does not learn which names there are.
    let stranger = nobody(&table);
    let mut told = Vec::new();
    for (who, typed) in [("", pin.as_str()), ("Seller", &pin), ("Jo", &pin), ("Mia", PIN), ("Mia", "999999")] {
        let answer = stranger.post("/sign-in", &[("who", who), ("pin", typed)]);
        assert_eq!(answer.status, 403, "{who} {typed}");
        assert!(!answer.text.contains("Mia"), "{}", answer.text);
        told.push(answer.text);
    }
    assert!(told.iter().all(|one| *one == told[0]));
    assert_eq!(stranger.post("/sign-in", &[("who", " mIA "), ("pin", &pin)]).status, 303);
    assert_eq!(stranger.post("/sign-in", &[("pin", PIN)]).status, 303, "the seller needs no name");
    for name in ["Seller", "Verkäuferin", "vendedora", "Vendeuse"] {
        assert_eq!(stranger.post("/sign-in", &[("who", name), ("pin", PIN)]).status, 303, "{name}");
        assert_eq!(stranger.post("/sign-in", &[("who", name), ("pin", &pin)]).status, 403, "{name}");
    }

    // Strangers are told no names; a browser that was signed in before has them as buttons, the last one chosen.
    let page = stranger.get("/sign-in").text;
    assert!(page.contains("name=\"who\"") && !page.contains("Mia"), "{page}");
    let answer = stranger.post("/sign-in", &[("who", "Mia"), ("pin", &pin)]);
    let cookies = answer.headers.get_all("set-cookie").iter().filter_map(|cookie| cookie.to_str().ok());
    let cookie: Vec<&str> = cookies.filter_map(|cookie| cookie.split(';').next()).collect();
    let known = Seller { cookie: cookie.join("; "), ..nobody(&table) };
    let page = known.get("/sign-in").text;
    assert!(page.contains("value=\"Mia\" checked") && page.contains("value=\"Seller\""), "{page}");

    // Names that would mislead are refused with the reason.
    for (name, status, words) in [
        ("mia", 409, "works here already"),
        ("SELLER", 409, "the seller’s own name"),
        ("verkäuferin", 409, "the seller’s own name"),
        (" ", 400, "1 to 30 characters"),
        ("Mia, approved by the seller", 400, "no comma"),
    ] {
        let answer = seller.post("/staff", &[("name", name)]);
        let words = words.replace('’', "'");
        assert!(answer.status == status && answer.text.replace('’', "'").contains(&words), "{name}: {}", answer.text);
    }
}

#[test]
fn a_helpers_pin_is_changed_set_anew_and_ended() {
    let table = Table::new();
    let seller = table.seller();
    let (mia, pin) = helper(&table, &seller, "Mia");
    let (jo, _) = helper(&table, &seller, "Jo");
    let own = "718204";
    let change = |now: &str| mia.post("/pin", &[("now", now), ("pin", own), ("again", own)]);
    assert!(mia.get("/pin").text.contains("the PIN of Mia"));
    assert_eq!(change(PIN).status, 403, "the seller's PIN is not hers");
    assert_eq!(change(&pin).status, 303);
    let may = |who: &str, pin: &str| nobody(&table).post("/sign-in", &[("who", who), ("pin", pin)]).status == 303;
    assert_eq!((may("Mia", &pin), may("Mia", own), may("", PIN)), (false, true, true));
    assert_eq!(
        [&mia, &jo, &seller].map(|one| one.get("/tickets").status),
        [200, 200, 200],
        "nobody else is signed out"
    );

    // She has forgotten it: the seller makes another.
    assert!(seller.get("/staff/pin?name=Mia").text.contains("A new PIN for Mia?"));
    let another = told_pin(&seller.post("/staff/pin", &[("name", "Mia")]).text);
    assert_eq!((may("Mia", own), may("Mia", &another), mia.get("/tickets").status), (false, true, 303));
    assert_eq!(seller.post("/staff/pin", &[("name", "Nobody")]).status, 409);
    assert_eq!(seller.post("/staff/pin", &[("name", SELLER)]).status, 400);
    assert!(may("", PIN), "the seller's own is changed by who knows it");

    // And the seller's own change ends the seller's sessions, not Jo's.
    let laptop = Seller { cookie: nobody(&table).post("/sign-in", &[("pin", PIN)]).cookie.unwrap(), ..nobody(&table) };
    assert_eq!(seller.post("/pin", &[("now", PIN), ("pin", "604183"), ("again", "604183")]).status, 303);
    assert_eq!([&seller, &laptop, &jo].map(|one| one.get("/tickets").status), [200, 303, 200]);

    assert!(seller.get("/staff/remove?name=Jo").text.contains("Remove Jo?"));
    assert_eq!(seller.post("/staff/remove", &[("name", "Jo")]).status, 303);
    assert_eq!(jo.get("/tickets").status, 303);
    assert!(!seller.get("/staff").text.contains("Jo"));
}

#[test]
fn the_seller_approves_of_one_act_on_a_helpers_phone() {
    let table = Table::new();
    let seller = table.seller();
    let (mia, pin) = helper(&table, &seller, "Mia");
    let asked = mia.post("/show/close", &[("show", "1")]);
    assert_eq!(asked.status, 403);
    assert!(
        asked.text.contains("This needs the seller’s PIN") && asked.text.contains("Closing a show"),
        "{}",
        asked.text
    );
    assert!(asked.text.contains("action=\"/show/close\"") && asked.text.contains("name=\"show\" value=\"1\""));
    assert!(asked.text.contains("name=\"seller_pin\"") && asked.text.contains("autocomplete=\"one-time-code\""));
    let show = || table.desk.with_ledger(|ledger| ledger.show()).unwrap().unwrap().id;
    assert_eq!(show(), 1, "nothing is done yet");
    for wrong in ["999999", &pin, ""] {
        let again = mia.post("/show/close", &[("show", "1"), ("seller_pin", wrong)]);
        assert!(again.status == 403 && again.text.contains("This is not the PIN"), "{}", again.text);
        assert!(again.text.contains("name=\"show\" value=\"1\""), "the form is still there");
        assert!(wrong.is_empty() || !again.text.contains(wrong), "a PIN is written into no page");
    }
    let done = mia.post("/show/close", &[("show", "1"), ("seller_pin", PIN)]);
    assert_eq!((done.status, done.location.as_str(), show()), (303, "/shows/1", 2));
    // Once, and she stays who she is.
    assert_eq!(mia.post("/show/close", &[("show", "2")]).status, 403);
    assert_eq!(mia.get("/staff").status, 403);
    let file = rusqlite::Connection::open(table.dir.path().join("data/ledger.sqlite")).unwrap();
    let by: String = file.query_row("SELECT by FROM events WHERE kind = 'show_closed'", [], |row| row.get(0)).unwrap();
    assert_eq!(by, "Mia, approved by the seller");
    // What the seller does needs nobody.
    assert_eq!(seller.post("/show/close", &[("show", "2")]).status, 303);
}

/// A browser without the pages' script that loads a page anew sends again what it sent to get there: a form with the seller's
/// PIN in it leads on to another address, refused or not.
#[test]
fn no_browser_sends_the_sellers_pin_again() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let (mia, _) = helper(&table, &seller, "Mia");
    let ticket = kiosk.ticket(0, &[&kiosk.fitting()[0].id], Wearer::From13);
    kiosk.deliver(&ticket, true);
    let page = format!("/tickets/{}", ticket.id);
    let reduce = format!("{page}/reduce");
    let much = [("how", "percent"), ("percent", "90"), ("reason", "a friend")];
    let asked = mia.post_from(&reduce, &page, &much);
    assert_eq!(asked.status, 403, "no PIN came, so nothing is led anywhere");
    assert!(asked.text.contains(&format!("name=\"stood_on\" value=\"{page}\"")), "{}", asked.text);
    assert!(asked.text.contains(&format!("href=\"{page}\">Go back")), "{}", asked.text);
    // The form of that page stands where its own form was sent to, and says where the first one stood.
    let with_pin = |pin, from: &str| {
        let more = [("seller_pin", pin), ("stood_on", page.as_str())];
        mia.post_from(&reduce, from, &[&much[..], &more].concat())
    };
    let wrong = with_pin("111222", &reduce);
    assert!(wrong.status == 303 && wrong.location.starts_with("/answers/"), "{} {}", wrong.status, wrong.location);
    assert!(wrong.text.is_empty());
    assert!(wrong.headers.contains_key("content-security-policy") && wrong.headers["cache-control"] == "no-store");
    let why = mia.get(&wrong.location);
    assert!(why.status == 403 && why.text.contains("This is not the PIN"), "{}", why.text);
    assert!(
        why.text.contains(&format!("href=\"{page}\">Go back")),
        "it leads where the first form stood: {}",
        why.text
    );
    assert!(!why.text.contains("111222"));
    assert_eq!(mia.get(&wrong.location).text, why.text, "loaded anew, it is the same");
    // Nobody else sees it, and what nobody has is nobody's.
    assert_eq!(seller.get(&wrong.location).location, "/tickets");
    assert!(nobody(&table).get(&wrong.location).location.starts_with("/sign-in"));
    assert_eq!(mia.get("/answers/0123").location, "/tickets");
    // Refused by the ledger after a good PIN: the piece was paid meanwhile.
    for part in ["base", "0"] {
        seller.post(&format!("{page}/tick"), &[("part", part), ("on", "1")]);
    }
    seller.post(&format!("{page}/told"), &[("told", "1")]);
    let total = ticket.quote.total.to_string();
    assert_eq!(seller.post(&format!("{page}/ring-up"), &[("tender", "cash"), ("total", &total)]).status, 303);
    let late = with_pin(PIN, &wrong.location);
    let why = mia.get(&late.location);
    assert!(why.status == 409 && why.text.contains("class=\"trouble\"") && !why.text.contains(PIN), "{}", why.text);
    // What stands on it and renews itself becomes the page that it belongs to; its forms stand there.
    let live = mia.agent.get(format!("{}{}", mia.url, late.location)).header("Cookie", &mia.cookie);
    assert_eq!(Answer::from(live.header("x-live", "1").call().unwrap()).location, page);
    let asked = mia.post_from(&format!("{page}/reduce"), &late.location, &much);
    assert!(asked.text.contains(&format!("href=\"{page}\">Go back")), "{}", asked.text);
    // The page's own script leaves nothing in the browser and goes on in place.
    let sent = mia.agent.post(format!("{}{reduce}", mia.url)).header("Cookie", &mia.cookie).header("x-in-place", "1");
    let fields = [&much[..], &[("seller_pin", "111222")]].concat();
    assert_eq!(sent.send_form(fields.iter().copied()).unwrap().status(), 403);
    // What a stranger says of where they came from leads nowhere else.
    let elsewhere = [("seller_pin", "111222"), ("stood_on", "//shop.example/x")];
    let led = mia.get(&mia.post_from(&reduce, "", &[&much[..], &elsewhere].concat()).location);
    assert!(led.text.contains("href=\"/tickets\">Go back") && !led.text.contains("shop.example"), "{}", led.text);
    // One's own PIN is no better kept by a browser.
    let own = seller.post_from("/pin", "/pin", &[("now", PIN), ("pin", "604183"), ("again", "604184")]);
    assert!(own.status == 303 && own.location.starts_with("/answers/"), "{}", own.status);
    assert_eq!(seller.get(&own.location).status, 400);
}

/// A sum that no list of this table gives is a price that somebody sets: a helper charges today's prices, the seller what the
/// guest saw.
#[test]
fn a_helper_sets_no_price() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let (mia, _) = helper(&table, &seller, "Mia");
    let catalog = table.catalog();
    let in_doubt = |sequence| {
        let mut ticket = kiosk.ticket(sequence, &[&kiosk.fitting()[0].id], Wearer::From13);
        let mut drops = ticket.quote.drops.clone();
        drops[0].price = "0.01".parse().unwrap();
        ticket.quote = quote(&catalog.table.prices, ticket.quote.base.clone(), drops).unwrap();
        kiosk.deliver(&ticket, true);
        (format!("/tickets/{}/sum", ticket.id), ticket.id)
    };
    let doubt = |id| table.desk.with_ledger(move |ledger| ledger.ticket(id)).unwrap().unwrap().sum_doubt;
    let ((seen, first), (today, second)) = (in_doubt(0), in_doubt(1));
    let asked = mia.post(&seen, &[("charge", "seen")]);
    assert_eq!(asked.status, 403, "{}", asked.text);
    assert!(asked.text.contains("Charging a sum that is none of this table’s is the seller’s to do"), "{}", asked.text);
    assert!(doubt(first).is_some(), "nothing is charged yet");
    assert_eq!(mia.post(&seen, &[("charge", "seen"), ("seller_pin", PIN)]).status, 303);
    assert_eq!(mia.post(&today, &[("charge", "today")]).status, 303, "the marked prices are nobody's to approve of");
    assert_eq!((doubt(first), doubt(second)), (None, None));
    let by = entries_by(&table, first).pop().unwrap();
    assert_eq!(by, ("sum_confirmed".to_owned(), Some("Mia, approved by the seller".to_owned())));
}

/// Whatever a phone says of itself: a helper has as many tries at the seller's PIN as anybody, wherever she is signed in, and
/// her own PIN gives none back.
#[test]
fn a_helper_does_not_guess_the_sellers_pin() {
    let table = Table::new();
    let seller = table.seller();
    let (mia, pin) = helper(&table, &seller, "Mia");
    let close = |phone: &Seller, pin: &str| phone.post("/show/close", &[("show", "1"), ("seller_pin", pin)]).status;
    let sign_in = || {
        let cookie = nobody(&table).post("/sign-in", &[("who", "Mia"), ("pin", &pin)]).cookie;
        Seller { cookie: cookie.expect("a session"), ..nobody(&table) }
    };
    assert_eq!([0; 3].map(|_| close(&mia, "999999")), [403; 3]);
    let other_phone = sign_in();
    assert_eq!([0; 3].map(|_| close(&other_phone, "999999")), [403, 403, 429]);
    assert_eq!(close(&sign_in(), PIN), 429, "also the right one has to wait");
    let words = mia.post("/show/close", &[("show", "1"), ("seller_pin", PIN)]).text;
    assert!(words.contains("Too many tries"), "{words}");
    // The seller is locked out of nothing.
    assert_eq!(nobody(&table).post("/sign-in", &[("pin", PIN)]).status, 303);
    assert_eq!(seller.post("/show/close", &[("show", "1")]).status, 303);
}

#[test]
fn entries_say_who_made_them_once_there_are_several() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let drop = kiosk.fitting()[0].id.clone();
    let ticket = kiosk.ticket(0, &[&drop], Wearer::From13);
    kiosk.deliver(&ticket, true);
    let page = format!("/tickets/{}", ticket.id);
    seller.post(&format!("{page}/call"), &[]);
    assert!(!seller.get(&page).text.contains("by Seller"), "alone, nobody has to be named");
    let (mia, _) = helper(&table, &seller, "Mia");
    mia.post(&format!("{page}/tick"), &[("part", "0"), ("on", "1")]);
    // What another did is looked at before it is undone.
    assert!(seller.get(&page).text.contains("by Mia"));
    seller.post(&format!("{page}/tick"), &[("part", "0"), ("on", "0")]);
    let by = |who: &str| Some(who.to_owned());
    assert_eq!(
        entries_by(&table, ticket.id),
        [
            ("sent".to_owned(), None),
            ("called".to_owned(), by(SELLER)),
            ("ticked".to_owned(), by("Mia")),
            ("unticked".to_owned(), by(SELLER)),
        ]
    );
    let text = seller.get(&page).text;
    let told: Vec<&str> = text.split("<li>").filter(|line| line.contains(" by ")).collect();
    assert!(told.iter().any(|line| line.contains("ticked off") && line.contains("by Mia")), "{told:?}");
    assert!(told.iter().any(|line| line.contains("tick taken back") && line.contains("by Seller")), "{told:?}");
    // Also once she is gone.
    seller.post("/staff/remove", &[("name", "Mia")]);
    assert!(seller.get(&page).text.contains("by Mia"));
}

#[test]
fn a_helper_sees_their_own_devices_and_their_own_pairing_code() {
    let table = Table::new();
    let seller = table.seller();
    let (mia, _) = helper(&table, &seller, "Mia");
    let (jo, _) = helper(&table, &seller, "Jo");
    let page = seller.get("/kiosks").text;
    assert!(page.contains("Mia: ") && page.contains("Jo: ") && page.contains("href=\"/staff\""), "{page}");
    assert_eq!(page.matches("action=\"/sessions/").count(), 3);
    let own = mia.get("/kiosks").text;
    assert!(!own.contains("Jo") && !own.contains("href=\"/staff\"") && !own.contains("/sign-out-all"), "{own}");
    assert_eq!(own.matches("action=\"/sessions/").count(), 1);
    // Another's is not there for her, whatever she asks for.
    let of_jo = table.desk.with_ledger(|ledger| ledger.browsers()).unwrap().unwrap();
    let of_jo = of_jo.into_iter().find(|browser| browser.whose() == "Jo").expect("Jo's phone");
    let path = format!("/sessions/{}/end", &of_jo.key_hash[..16]);
    assert_eq!((mia.post(&path, &[]).status, jo.get("/tickets").status), (404, 200));
    assert_eq!((seller.post(&path, &[]).status, jo.get("/tickets").status), (303, 303));

    // The code that pairs a tablet is told to the seller, and to who asked for it with the seller's PIN.
    let code = |who: &Seller| {
        let page = who.get("/kiosks").text;
        page.contains("<p class=\"code\">").then(|| told_pin(&page))
    };
    assert_eq!(seller.post("/kiosks/code", &[]).status, 303);
    assert!(code(&seller).is_some() && code(&mia).is_none());
    assert_eq!(mia.post("/kiosks/code", &[]).status, 403);
    assert_eq!(mia.post("/kiosks/code", &[("seller_pin", PIN)]).status, 303);
    assert!(code(&mia).is_some() && code(&mia) == code(&seller));
}

/// A tablet's settings are the seller's.
#[test]
fn a_helpers_pin_opens_no_tablet() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let (_, pin) = helper(&table, &seller, "Mia");
    let ask = |pin: &str| -> PinAnswer {
        let request = kiosk.agent.post(format!("{}/link/pin", kiosk.pairing.desk));
        let request = request.header("Authorization", kiosk.bearer());
        request.send_json(PinQuestion { pin: pin.to_owned() }).unwrap().body_mut().read_json().unwrap()
    };
    assert_eq!((ask(&pin), ask(PIN)), (PinAnswer::Wrong, PinAnswer::Right));
}
