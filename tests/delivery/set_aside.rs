//! Tickets that the desk did not take: shown, taken in or put away, and told once.

use super::*;

#[test]
fn what_a_tablet_keeps_is_shown_at_the_desk_and_can_be_taken_in() {
    let dir = tempfile::tempdir().expect("a folder");
    let first = Table::new();
    let tablet = Tablet::open(dir.path(), Some(first.desk.pair_local().expect("a digit")));
    tablet.is_in_reach();
    drop(first);
    let (clash, free) = (tablet.send(), tablet.send());
    tablet.hear_waiting(free);

    // Another desk, which does not know the tablet and has given its digit away.
    let table = Table::new();
    let seller = table.seller();
    let other = table.kiosk();
    other.deliver(&other.ticket(clash.number.sequence(), &["key-heart"], Wearer::From13), false);
    assert_eq!(pair(&tablet, &table.desk, new_code(&seller)), Ok(2));
    until("both are set aside", || tablet.link.aside() == 2);
    let shows = |words: &str| until(words, || seller.get("/kiosks").text.contains(words));
    shows("2 tickets were not taken");
    let page = seller.get("/kiosks").text;
    for words in [&free.number.to_string(), &clash.number.to_string(), "another tablet’s digit", "Take it in"] {
        assert!(page.contains(words), "{words}: {page}");
    }
    assert!(seller.get("/tickets").text.contains("2 tickets on the tablets were not taken"), "said on every page");
    assert_eq!(numbers(&table.desk).len(), 1, "nothing comes in unasked");
    assert!(seller.get("/kiosks/2/release").text.contains(&free.number.to_string()), "said before it is released");

    // Somebody else may not.
    let nobody = Seller { agent: kit::agent(), url: table.desk.url(), cookie: String::new() };
    assert!(nobody.post(&format!("/kiosks/2/take-in/{}", free.id), &[]).location.starts_with("/sign-in"));
    let take_in = |kept: Kept| seller.post(&format!("/kiosks/2/take-in/{}", kept.id), &[]).status;
    let of = |kept: Kept| table.desk.with_ledger(move |ledger| ledger.ticket(kept.id)).expect("open").expect("there");
    // The other tablet has the digit and may have given the number, too: this guest gets a new one.
    assert_eq!(take_in(clash), 303);
    until("the first is in", || numbers(&table.desk).len() == 2);
    assert_eq!((of(clash).number.kiosk(), of(clash).show), (2, 1));
    // With that tablet gone nobody else can have the number.
    release(&table.desk, 1);
    until("it is still there", || take_in(free) == 303);
    until("both are in", || numbers(&table.desk).len() == 3);
    assert_eq!(of(free).number, free.number);
    until("nothing is left on the tablet", || tablet.link.aside() == 0);
    until("nothing is said any more", || !seller.get("/tickets").text.contains("not taken"));
    until("nothing is left on the page", || !seller.get("/kiosks").text.contains("not taken"));
    shows(&format!("{} came in as {}", clash.number, of(clash).number));
    // The tablet's own numbers go on behind.
    let next = tablet.send();
    tablet.hear_arrived(next);
    assert!(numbers(&table.desk).contains(&next.number.to_string()));
}

#[test]
fn a_tablets_words_are_no_more_than_words() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let report = |count: usize, trouble: &str| {
        let number = kiosk.ticket(0, &[], Wearer::From13).number;
        let one = TicketReport {
            id: Uuid::now_v7(),
            number,
            drops: 1,
            sum: "<b>$1</b>".into(),
            trouble: trouble.into(),
            why: None,
        };
        let report = KioskReport {
            aside: vec![one; count],
            unreadable: usize::MAX,
            version: Some("<b>9.9.9</b>".into()),
            ..KioskReport::default()
        };
        let request = kiosk.agent.post(format!("{}/link/report", kiosk.pairing.desk));
        request.header("Authorization", kiosk.bearer()).send_json(report).expect("an answer").status().as_u16()
    };
    assert_eq!(report(2, "<script>alert(1)</script>"), 200);
    let page = seller.get("/kiosks").text;
    assert!(page.contains("&lt;script&gt;alert(1)&lt;/script&gt;") && !page.contains("<script>alert"), "{page}");
    assert!(page.contains("&lt;b&gt;$1&lt;/b&gt;"));
    assert!(page.contains("Version &lt;b&gt;9.9.9&lt;/b&gt;, and the desk is"), "{page}");
    assert_eq!(report(1, &"long ".repeat(40_000)), 200);
    assert!(seller.get("/kiosks").text.len() < 20_000, "a long story is cut");
    assert_eq!(report(20_000, ""), 413);
    assert_eq!(report(1, ""), 200);
    // What does not lie on the tablet can't be asked for, and what nobody asked for does not come in.
    assert_eq!(seller.post(&format!("/kiosks/1/take-in/{}", Uuid::now_v7()), &[]).status, 404);
    assert_eq!(seller.post(&format!("/kiosks/7/take-in/{}", Uuid::now_v7()), &[]).status, 404);
    let ticket = kiosk.ticket(3, &[], Wearer::From13);
    let request = kiosk.agent.post(format!("{}/link/take-in", kiosk.pairing.desk));
    let mut answer = request.header("Authorization", kiosk.bearer()).send_json(&ticket).expect("an answer");
    let answer: Receipt = answer.body_mut().read_json().expect("an answer");
    assert!(matches!(answer, Receipt::Refused { .. }), "{answer:?}");
    assert!(numbers(&table.desk).is_empty());
}

/// kill -9 between setting a ticket aside and taking it off the outbox leaves it in both.
#[test]
fn a_ticket_that_lies_in_both_places_is_told_once_and_delivered_once() {
    let dir = tempfile::tempdir().expect("a folder");
    let (answers, usual, order) =
        (Arc::<Mutex<BTreeMap<Uuid, u16>>>::default(), Arc::new(Mutex::new(422)), Arc::default());
    let desk = fake(Arc::clone(&answers), Arc::clone(&usual), Arc::clone(&order));
    let pairing = Pairing { desk: format!("http://{}", desk.addr), key: "0".repeat(64), digit: 3 };
    let tablet = Tablet::open(dir.path(), Some(pairing));
    tablet.is_in_reach();
    let kept = tablet.send();
    tablet.hear("the refusal", |news| matches!(news, News::Refused { .. }).then_some(()));
    drop(tablet);
    let file = format!("{}.json", kept.id);
    std::fs::copy(dir.path().join("refused").join(&file), dir.path().join("outbox").join(&file)).expect("a copy");
    // Refused once more it is one, ...
    let tablet = Tablet::open(dir.path(), None);
    tablet.hear("the refusal", |news| matches!(news, News::Refused { .. }).then_some(()));
    assert_eq!((tablet.link.waiting(), tablet.link.aside()), (0, 1));
    drop(tablet);
    // ... and taken it is none.
    std::fs::copy(dir.path().join("refused").join(&file), dir.path().join("outbox").join(&file)).expect("a copy");
    *usual.lock().unwrap() = 200;
    let tablet = Tablet::open(dir.path(), None);
    tablet.hear_arrived(kept);
    assert_eq!((tablet.link.waiting(), tablet.link.aside()), (0, 0));
    assert_eq!(*order.lock().unwrap(), [kept.id]);
}

/// The desk words a tablet's reason in the language of its reader; what only an earlier tablet's English words say stays as it is.
#[test]
fn why_a_ticket_was_not_taken_is_said_in_the_readers_language() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let german =
        Seller { agent: kit::agent(), url: seller.url.clone(), cookie: format!("{}; language=de", seller.cookie) };
    let number = kiosk.ticket(0, &[], Wearer::From13).number;
    let told = |why: Option<serde_json::Value>| {
        let mut one = serde_json::json!({
            "id": Uuid::now_v7(), "number": number, "drops": 1, "sum": "$1", "trouble": "another ticket of the show has the number",
        });
        if let Some(why) = why {
            one["why"] = why;
        }
        let report = serde_json::json!({ "waiting": [], "aside": [one], "unreadable": 0 });
        let request = kiosk.agent.post(format!("{}/link/report", kiosk.pairing.desk));
        assert_eq!(request.header("Authorization", kiosk.bearer()).send_json(report).expect("an answer").status(), 200);
        german.get("/kiosks").text
    };
    let (english, words) =
        ("another ticket of the show has the number", "ein anderes Ticket des Markts hat die Nummer");
    let page = told(Some(serde_json::json!({ "code": "same_number" })));
    assert!(page.contains(words) && !page.contains(english), "{page}");
    for why in [None, Some(serde_json::json!({ "code": "eaten" })), Some(serde_json::json!(7))] {
        let page = told(why);
        assert!(page.contains(english) && !page.contains(words), "{page}");
    }
    assert!(told(None).contains("Seine Version ist nicht bekannt"), "an earlier tablet is served and told of");
}
