//! A ticket at the desk, by the forms of its page.

use super::*;

#[test]
#[allow(clippy::too_many_lines, reason = "one story, in the order in which it happens")]
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
    assert_eq!(act("length", &[("mm", "5000")]).status, 409);
    for no_length in ["90000", "0", "NaN"] {
        assert_eq!(act("length", &[("mm", no_length)]).status, 400, "{no_length}");
    }
    // It turns out to be for a toddler: the cautions follow, and have to be told.
    assert_eq!(act("wearer", &[("wearer", "from13")]).status, 303);
    let adult = now().verdict;
    let unsuitable = |text: &str| text.matches("Not for this wearer").count();
    let for_adults = unsuitable(&seller.get(&format!("{page}/missing/1")).text);
    assert_eq!(act("told", &[("told", "1")]).status, 303);
    assert_eq!(act("wearer", &[("wearer", "under3")]).status, 303);
    let toddler = now();
    assert!(toddler.verdict.cautions.len() > adult.cautions.len() && !toddler.verdict.suitable && !toddler.told);
    let shown = seller.get(&page).text;
    assert!(shown.contains("it is for under 3") && shown.contains("This piece is not suitable"));
    assert_eq!(act("wearer", &[("wearer", "everybody")]).status, 400);
    let choices = seller.get(&format!("{page}/missing/1")).text;
    assert!(unsuitable(&choices) > for_adults, "what hangs instead is judged as on the tablet");

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
    for words in
        ["sent by the guest", "swapped for", "taken off", "made 18\u{a0}in", "rung up, paid by card", "handed over"]
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
