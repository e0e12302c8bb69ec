//! What a kiosk asks of the desk, and what it is answered.

use super::*;

#[test]
fn a_kiosk_hears_of_the_catalogue_and_of_counts() {
    let table = Table::new();
    let kiosk = table.kiosk();
    let first = kiosk.news(-1, "");
    let content = first.content.as_ref().expect("the catalogue");
    let catalog = table.catalog();
    // What is printed at the desk is the desk's: where the printer stands is no guest's business.
    assert_ne!(catalog.table.paper, Default::default());
    let told = chatelaine::catalog::Table { paper: Default::default(), ..catalog.table.clone() };
    assert_eq!((&content.catalog.table, &content.catalog.trays), (&told, &catalog.trays));
    let marked = |drops: &[DropKind]| -> Vec<_> { drops.iter().map(|kind| (kind.id.clone(), kind.price)).collect() };
    assert_eq!(marked(&content.catalog.drops), marked(&catalog.drops));
    // Every drop of the test table has a picture and its relief.
    let both = catalog.drops.iter().flat_map(|kind| [kind.picture.clone(), relief_name(&kind.picture)]);
    assert!(content.pictures.keys().cloned().eq(both.collect::<BTreeSet<_>>()));
    let drop = kiosk.fitting()[0];
    assert_eq!(first.available[&drop.id], drop.stock);
    assert_eq!(first.next_sequence, 1);

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
    assert!(
        page.text.contains("There is no such page") && page.text.contains("There is no page /nowhere at this desk")
    );
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
        let mut answer = request.send_json(PairRequest { code: code.to_owned(), key: None }).unwrap();
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
    // Until a PIN is chosen, only the setup code opens a tablet's menu; it can't be guessed for long, and is no PIN.
    assert_eq!([ask(PIN), ask(""), ask("00000000")], [PinAnswer::NotSet; 3]);
    let code = table.desk.setup_code().to_owned();
    assert_eq!(ask(&code), PinAnswer::SetupCode);
    let wrong: Vec<PinAnswer> = (0..6).map(|n| ask(&format!("{n}"))).collect();
    assert!(matches!(wrong[5], PinAnswer::Wait { .. }), "{wrong:?}");
    assert!(matches!(ask(&code), PinAnswer::Wait { .. }));
    table.seller();
    assert_eq!(ask(&code), PinAnswer::Wrong);
    assert_eq!(ask(PIN), PinAnswer::Right);
    let wrong: Vec<PinAnswer> = (0..5).map(|_| ask("111111")).collect();
    assert_eq!(wrong, [PinAnswer::Wrong; 5]);
    assert!(matches!(ask(PIN), PinAnswer::Wait { seconds: 1..=61 }));
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
    assert!(waited < Duration::from_secs(10), "seen after {waited:?}");

    let shows = |path: &str, words: &str, wanted: bool| {
        let started = Instant::now();
        while seller.get(path).text.contains(words) != wanted {
            assert!(started.elapsed() < Duration::from_secs(15), "{path}: {words:?} wanted: {wanted}");
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

/// Whoever threads a piece types its number on any tablet; what was swapped since is as it is now, and what was let go or is
/// of an earlier show is not there.
#[test]
fn any_tablet_finds_a_piece_by_its_number() {
    let table = Table::new();
    let (seller, maker, other) = (table.seller(), table.kiosk(), table.kiosk());
    let find = |number: &str| {
        let url = format!("{}/link/piece/{number}", other.pairing.desk);
        let mut answer = other.agent.get(url).header("Authorization", other.bearer()).call().unwrap();
        let status = answer.status().as_u16();
        let text = answer.body_mut().read_to_string().unwrap();
        (status, text)
    };
    let parts = maker.fitting();
    let sent = maker.ticket(4, &[&parts[0].id, &parts[1].id], Wearer::From13);
    let number = sent.number.to_string();
    assert_eq!(find(&number).0, 404);
    assert_eq!(find("30425").0, 400, "a wrong check digit");
    assert_eq!(find("..%2F..%2Fpin").0, 400);
    maker.deliver(&sent, true);
    let (status, text) = find(&number);
    let found: chatelaine::link::wire::PieceToThread = serde_json::from_str(&text).unwrap();
    assert_eq!((status, &found.piece), (200, &sent.piece));
    assert!(!text.contains("quote") && !text.contains("total"), "nothing but the piece is told: {text}");
    let id = sent.id;
    let loaded = table.catalog();
    let to = parts[2].id.clone();
    let now = jiff::Timestamp::now();
    table.desk.with_ledger(move |ledger| ledger.swap(id, 0, &to, &loaded, now)).unwrap().unwrap();
    let (_, text) = find(&number);
    let found: chatelaine::link::wire::PieceToThread = serde_json::from_str(&text).unwrap();
    assert_eq!(found.piece.drops[0], parts[2].id, "as the seller has changed it");
    seller.post(&format!("/tickets/{id}/let-go"), &[]);
    assert_eq!(find(&number).0, 404, "it came to nothing");
    let mut nobody = other.agent.get(format!("{}/link/piece/{number}", other.pairing.desk)).call().unwrap();
    assert_eq!((nobody.status().as_u16(), nobody.body_mut().read_to_string().unwrap().contains("drops")), (401, false));
}
