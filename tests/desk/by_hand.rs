//! A piece that was threaded by hand: opened at the desk, checked, changed, paid.

use chatelaine::{craft::Length, ticket::TicketNumber};
use uuid::Uuid;

use super::*;

/// The id in the form of the page for a new sale.
fn form_id(text: &str) -> Uuid {
    let (_, rest) = text.split_once(r#"name="id" value=""#).expect("an id in the form");
    rest[..36].parse().expect("an id")
}

fn ticket_of(answer: &Answer) -> Uuid {
    assert_eq!(answer.status, 303, "{}", answer.text);
    answer.location.strip_prefix("/tickets/").expect("a ticket's page").parse().expect("an id")
}

#[test]
fn a_piece_threaded_by_hand_is_opened_told_and_paid() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let fitting = kiosk.fitting();
    let (a, b) = (fitting[0], fitting[1]);
    let before = table.desk.with_ledger(|ledger| ledger.counts()).unwrap().unwrap();
    // What was touched stands in the address, and is shown with its sum before anything is entered.
    let chosen = seller.get(&format!("/new?homes={}&add={}", a.home, b.home));
    let id = form_id(&chosen.text);
    assert!(chosen.text.contains(&format!("{} {}", a.home, b.home)), "{}", chosen.text);
    assert_eq!(table.desk.with_ledger(|ledger| ledger.counts()).unwrap().unwrap(), before);
    // Small letters and commas will do; said twice, it is one ticket.
    let typed = format!("{},{}", a.home.to_string().to_lowercase(), b.home);
    let id_text = id.to_string();
    let fields = [("id", id_text.as_str()), ("base", ""), ("homes", typed.as_str())];
    let opened = seller.post("/new", &fields);
    assert_eq!(ticket_of(&opened), id);
    assert_eq!(ticket_of(&seller.post("/new", &fields)), id);
    let now = || table.desk.with_ledger(move |ledger| ledger.ticket(id)).unwrap().unwrap();
    let ticket = now();
    assert_eq!((ticket.number.kiosk(), ticket.number.sequence()), (0, 1), "the desk's own digit, and nobody is 000");
    assert_eq!((ticket.state, ticket.unticked(), ticket.not_held().len()), (State::Checked, 0, 0));
    assert_eq!(ticket.quote, table.catalog().quote(&ticket.piece).unwrap(), "today's prices");
    let page = seller.get(&opened.location).text;
    assert!(page.contains(&money(&table, ticket.quote.total)) && page.contains("opened at the desk"));
    // The cautions have to be told here as anywhere; who it is for is not known, so there are some.
    assert!(!ticket.verdict.cautions.is_empty());
    let act = |verb: &str, fields: &[(&str, &str)]| seller.post(&format!("/tickets/{id}/{verb}"), fields);
    let total = ticket.quote.total.to_string();
    assert_eq!(act("ring-up", &[("tender", "cash"), ("total", &total)]).status, 409);
    act("wearer", &[("wearer", "from13")]);
    act("told", &[("told", "1")]);
    for code in now().unconfirmed() {
        let code = serde_json::to_value(code).unwrap();
        act("confirm", &[("code", code.as_str().unwrap()), ("on", "1")]);
    }
    let paid = act("ring-up", &[("tender", "cash"), ("total", &total)]);
    assert_eq!(paid.status, 303, "{}", paid.text);
    let after = table.desk.with_ledger(|ledger| ledger.counts()).unwrap().unwrap();
    for part in [&ticket.piece.base, &a.id, &b.id] {
        assert_eq!((after[part].on_hand, after[part].held), (before[part].on_hand - 1, 0), "{part}");
    }
    // The next one has the next number; a form that the browser kept and that was filled in anew is a new sale.
    let other = ticket_of(&seller.post("/new", &[("id", &id_text), ("homes", &b.home.to_string())]));
    assert_ne!(other, id);
    let other = table.desk.with_ledger(move |ledger| ledger.ticket(other)).unwrap().unwrap();
    assert_eq!(other.number.sequence(), 2);
    assert_eq!(other.piece.drops, [b.id.as_str()]);
}

#[test]
fn the_length_is_chosen_with_the_base_and_costs_nothing() {
    let table = Table::new();
    let seller = table.seller();
    let catalog = table.catalog();
    let chain = catalog.bases.iter().find(|base| base.usual_length().is_some()).unwrap();
    let bangle = catalog.bases.iter().find(|base| base.usual_length().is_none()).unwrap();
    let (usual, other) = (chain.usual_length().unwrap(), Length::from_inches(20.0));
    assert_ne!(usual, other);
    let chosen = |answer: &Answer| {
        let list = answer.text.split("<select id=\"length\"").nth(1)?.split("</select>").next()?.to_owned();
        let marked = list.split("<option value=\"").find(|one| one.contains(" selected"))?.to_owned();
        marked.split('"').next()?.parse::<f64>().ok()
    };
    let with = |base: &str, mm: &str| seller.get(&format!("/new?base={base}&length={mm}"));
    assert_eq!(chosen(&with(&chain.id, "")), Some(usual.mm()));
    assert_eq!(chosen(&with(&chain.id, "508")), Some(508.0));
    assert_eq!(chosen(&with(&bangle.id, "508")), None, "a bangle has no length");
    for odd in ["12345678", "-1", "NaN", "inf", "20in"] {
        assert_eq!(chosen(&with(&chain.id, odd)), Some(usual.mm()), "{odd}");
    }
    let open = |base: &str, mm: &str| {
        let id = Uuid::now_v7().to_string();
        let opened = ticket_of(&seller.post("/new", &[("id", &id), ("base", base), ("length", mm)]));
        table.desk.with_ledger(move |ledger| ledger.ticket(opened)).unwrap().unwrap()
    };
    let (short, usually, ring) = (open(&chain.id, "508"), open(&chain.id, ""), open(&bangle.id, "508"));
    assert_eq!([short.piece.length, usually.piece.length, ring.piece.length], [Some(other), Some(usual), None]);
    assert_eq!(short.quote.total, usually.quote.total);
    // Another one like it is as long.
    let again = seller.get(&format!("/new?from={}", short.id));
    assert_eq!((again.status, chosen(&again)), (200, Some(508.0)));
    assert!(seller.get(&format!("/tickets/{}", short.id)).text.contains(&format!("/new?from={}", short.id)));
    assert_eq!(seller.get(&format!("/new?from={}", Uuid::now_v7())).status, 404);
}

/// A slip's code holds an address that ends with the number: a phone's camera opens it, a scanner types it into a field.
#[test]
fn a_scanned_number_is_found_and_begun_with() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let ticket = kiosk.ticket(0, &[&kiosk.fitting()[0].id], Wearer::From13);
    kiosk.deliver(&ticket, true);
    let (page, number) = (format!("/tickets/{}", ticket.id), ticket.number);
    assert_eq!(seller.get(&format!("/number/{number}")).location, page);
    let typed = format!("http%3A%2F%2F192.168.4.1%3A8080%2Fnumber%2F{number}");
    assert_eq!(seller.get(&format!("/tickets/find?number={typed}")).location, page);
    let begun = seller.get(&format!("/new?from={typed}"));
    assert!(begun.status == 200 && begun.text.contains(&kiosk.fitting()[0].home.to_string()), "{}", begun.text);
    // Whoever is not signed in is led there by signing in.
    let nobody = Seller { agent: agent(), url: table.desk.url(), cookie: String::new() };
    assert_eq!(nobody.get(&format!("/number/{number}")).location, format!("/sign-in?back=/number/{number}"));
    for wrong in ["/number/3-042-7", "/number/none", "/number/%2Fetc%2Fpasswd"] {
        assert_eq!(seller.get(wrong).status, 400, "{wrong}");
    }
    assert_eq!(seller.get(&format!("/number/{}", TicketNumber::new(8, 8).unwrap())).status, 404);
}

#[test]
fn a_piece_begins_with_an_earlier_one_and_a_drop_that_the_count_misses_is_asked_for() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let fitting = kiosk.fitting();
    let (a, b) = (fitting[0], fitting[1]);
    let sent = kiosk.ticket(9, &[&a.id, &b.id], Wearer::From13);
    kiosk.deliver(&sent, true);
    let begun = seller.get(&format!("/new?from={}", sent.number));
    assert!(begun.text.contains(&format!("value=\"{} {}\"", a.home, b.home)), "{}", begun.text);
    assert!(begun.text.contains("name=\"wearer\" value=\"from13\""), "{}", begun.text);
    assert_eq!(seller.get("/new?from=9-999-9").status, 400, "a slip of the finger");
    let unknown = chatelaine::ticket::TicketNumber::new(9, 1).unwrap();
    assert_eq!(seller.get(&format!("/new?from={unknown}")).status, 400);
    // One that the count does not know of is asked for, and counted when it is here.
    let id = sent.id;
    seller.post(&format!("/parts/{}", b.id), &[("free", "0")]);
    let home = b.home.to_string();
    let asked = seller.post(&format!("/tickets/{id}/add"), &[("home", &home)]);
    assert!(asked.status == 409 && asked.text.contains("It is here: count one more"), "{}", asked.text);
    let lines = || table.desk.with_ledger(move |ledger| ledger.ticket(id)).unwrap().unwrap().live_lines().count();
    assert_eq!(lines(), 2);
    assert_eq!(seller.post(&format!("/tickets/{id}/add"), &[("home", &home), ("found", "1")]).status, 303);
    assert_eq!(lines(), 3);
}

#[test]
fn what_can_be_no_piece_is_told_and_nothing_is_entered() {
    let table = Table::new();
    let seller = table.seller();
    let change = || table.desk.with_ledger(|ledger| ledger.change()).unwrap().unwrap();
    let before = change();
    for (typed, words) in [
        ("Z99", "No drop lives at “Z99”"),
        ("A1 b0 Q7", "No drops live at “B0”, “Q7”"),
        ("<script>", "No drop lives at “&lt;SCRIPT&gt;”"),
        ("\u{202e}A1", "No drop lives at"),
    ] {
        let refused = seller.post("/new", &[("homes", typed)]);
        assert!(refused.status == 400 && refused.text.contains(words), "{typed:?}: {}", refused.text);
        let coded: String = typed.bytes().map(|byte| format!("%{byte:02X}")).collect();
        let shown = seller.get(&format!("/new?homes={coded}"));
        assert_eq!(shown.status, 200, "{typed:?}");
    }
    let endless = vec!["A1"; 5000].join(" ");
    assert!(matches!(seller.post("/new", &[("homes", &endless)]).status, 303 | 409), "two hundred at most");
    let opened = change() - before;
    assert!(opened <= 2, "{opened} entries for one piece");
    assert_eq!(seller.get("/new?off=99999999999999999999").status, 400);
    let stranger = Seller { agent: agent(), url: table.desk.url(), cookie: String::new() };
    assert_eq!(stranger.get("/new").location, "/sign-in?back=/new");
}

#[test]
fn what_the_count_says_is_gone_is_asked_about() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let kind = kiosk.fitting()[0];
    let (id, home) = (kind.id.clone(), kind.home.to_string());
    table.desk.with_ledger(move |ledger| ledger.recount(&id, 0, jiff::Timestamp::now())).unwrap().unwrap();
    let asked = seller.post("/new", &[("homes", &home)]);
    assert!(asked.status == 409 && asked.text.contains("Does it lie before you?"), "{}", asked.text);
    assert!(asked.text.contains(r#"name="found" value="1""#));
    let counts = || table.desk.with_ledger(|ledger| ledger.counts()).unwrap().unwrap();
    assert!(counts().values().all(|count| count.held == 0), "nothing is held of what was not opened");
    ticket_of(&seller.post("/new", &[("homes", &home), ("found", "1")]));
    assert_eq!((counts()[&kind.id].on_hand, counts()[&kind.id].held), (1, 1));
}

#[test]
fn all_of_a_piece_is_here_a_drop_comes_on_and_the_base_is_changed() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let fitting = kiosk.fitting();
    let sent = kiosk.ticket(4, &[&fitting[0].id, &fitting[1].id], Wearer::From13);
    kiosk.deliver(&sent, true);
    let id = sent.id;
    let now = || table.desk.with_ledger(move |ledger| ledger.ticket(id)).unwrap().unwrap();
    let act = |verb: &str, fields: &[(&str, &str)]| seller.post(&format!("/tickets/{id}/{verb}"), fields);
    assert!(seller.get(&format!("/tickets/{id}")).text.contains("All here"));
    assert_eq!(act("all-here", &[]).status, 303);
    assert_eq!((now().state, now().unticked()), (State::Checked, 0));
    // Said twice it is the same.
    assert_eq!(act("all-here", &[]).status, 303);
    assert_eq!(now().unticked(), 0);
    // A drop more, by its home; it is there, so it is ticked, and sum and cautions follow.
    assert_eq!(act("add", &[("home", &fitting[2].home.to_string().to_lowercase())]).status, 303);
    let more = now();
    assert_eq!(more.piece.drops, [&fitting[0].id, &fitting[1].id, &fitting[2].id].map(Clone::clone));
    assert_eq!(more.quote.total, table.catalog().quote(&more.piece).unwrap().total);
    assert_eq!(more.unticked(), 0);
    let nowhere = act("add", &[("home", "Z99")]);
    assert!(nowhere.status == 400 && nowhere.text.contains("No drop lives at"), "{}", nowhere.text);
    // Another base: the price follows, the old one is free again, the new one has to be ticked off.
    let catalog = table.catalog();
    let kinds: Vec<&DropKind> = fitting[..3].to_vec();
    let goes_onto = |base: &&chatelaine::craft::Base| {
        base.id != sent.piece.base && kinds.iter().all(|kind| chatelaine::craft::fit_on(base, kind.ring).passes)
    };
    let other = catalog.bases.iter().find(goes_onto).expect("another base");
    assert_eq!(act("base", &[("base", &other.id)]).status, 303);
    let changed = now();
    assert_eq!((changed.piece.base.as_str(), changed.quote.base.price), (other.id.as_str(), other.price));
    assert_eq!(changed.piece.length, other.length_like(sent.piece.length));
    assert_eq!((changed.unticked(), changed.base_held), (1, true));
    let counts = table.desk.with_ledger(|ledger| ledger.counts()).unwrap().unwrap();
    assert_eq!((counts[&sent.piece.base].held, counts[&other.id].held), (0, 1));
    let unknown = act("base", &[("base", "no-such-base")]);
    assert!(unknown.status == 409 && unknown.text.contains("no base"), "{}", unknown.text);
    let told = seller.get(&format!("/tickets/{id}")).text;
    for words in ["all ticked off", "added", "base changed to"] {
        assert!(told.contains(words), "{words}");
    }
}

/// The desk's digit is no tablet's, and a desk whose tablets have all ten, as earlier versions gave them, says so.
#[test]
fn the_desk_has_a_digit_of_its_own() {
    let table = Table::new();
    let seller = table.seller();
    ticket_of(&seller.post("/new", &[("homes", "")]));
    let digits: Vec<u8> = (0..9).map(|_| table.desk.pair_local().expect("a digit").digit).collect();
    assert_eq!(digits, [1, 2, 3, 4, 5, 6, 7, 8, 9]);
    assert!(table.desk.pair_local().is_err());
    let other = Table::new();
    let agent = other.seller();
    let file = other.dir.path().join("data/ledger.sqlite");
    let db = rusqlite::Connection::open(file).expect("the ledger");
    for digit in 0..=9 {
        let key = format!("an earlier tablet {digit}");
        db.execute(
            "INSERT INTO kiosks (digit, key_hash, paired) VALUES (?, ?, '2026-01-01T00:00:00Z')",
            rusqlite::params![digit, key],
        )
        .expect("paired");
    }
    let refused = agent.post("/new", &[("homes", "")]);
    assert!(refused.status == 409 && refused.text.contains("release a tablet"), "{}", refused.text);
    // With one of them released and the show closed there is one again.
    other.desk.with_ledger(|ledger| ledger.release_kiosk(4, jiff::Timestamp::now())).unwrap().unwrap();
    assert_eq!(agent.post("/new", &[("homes", "")]).status, 409, "it rests until the show closes");
    agent.post("/show/close", &[("show", "1")]);
    let id = ticket_of(&agent.post("/new", &[("homes", "")]));
    let ticket = other.desk.with_ledger(move |ledger| ledger.ticket(id)).unwrap().unwrap();
    assert_eq!(ticket.number.kiosk(), 4);
}
