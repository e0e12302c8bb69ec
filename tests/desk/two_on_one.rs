//! Two people on one ticket: each sees that the other has it open, and is told what the other changed before the own act counts.

use std::io::{BufRead, BufReader};

use super::{helper::helper, *};
use uuid::Uuid;

/// Waits until `seller`'s page of the ticket says `words`, or does not.
fn wait_until(seller: &Seller, page: &str, words: &str, said: bool) {
    let until = Instant::now() + Duration::from_secs(30);
    while seller.get(page).text.contains(words) != said {
        assert!(Instant::now() < until, "{words}: {said}");
        thread::sleep(Duration::from_millis(50));
    }
}

/// A page that listens for beats, as a browser's script does; gone with this value.
fn listening(seller: &Seller, page: &str) -> BufReader<impl std::io::Read + use<>> {
    let request = seller.agent.get(format!("{}/events?page={page}", seller.url)).header("Cookie", &seller.cookie);
    BufReader::new(request.call().expect("a stream").into_body().into_reader())
}

impl Seller {
    /// Sends a form from a page that says which entry was the last that it shows.
    fn post_having_seen(&self, path: &str, seen: i64, fields: &[(&str, &str)]) -> Answer {
        let request = self.agent.post(format!("{}{path}", self.url)).header("Cookie", &self.cookie);
        request.header("x-seen", seen.to_string()).send_form(fields.iter().copied()).expect("an answer").into()
    }
}

/// A table with a ticket of two unlike drops, the seller and a helper who both look at it; and the address of its page.
fn both_look() -> (Table, Seller, Seller, Uuid, String) {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let (mia, _) = helper(&table, &seller, "Mia");
    let fitting = kiosk.fitting();
    let ticket = kiosk.ticket(0, &[&fitting[0].id, &fitting[1].id], Wearer::From13);
    assert_eq!(kiosk.deliver(&ticket, true), Receipt::Stored { short: vec![] });
    let page = format!("/tickets/{}", ticket.id);
    for who in [&seller, &mia] {
        assert_eq!(who.get(&page).status, 200);
    }
    (table, seller, mia, ticket.id, page)
}

fn kinds(table: &Table, id: Uuid) -> Vec<String> {
    let history = table.desk.with_ledger(move |ledger| ledger.history(id)).unwrap().unwrap();
    history.into_iter().map(|event| event.kind).collect()
}

fn last(table: &Table, id: Uuid) -> i64 {
    let history = table.desk.with_ledger(move |ledger| ledger.history(id)).unwrap().unwrap();
    history.last().map_or(0, |event| event.seq)
}

const CHANGED: &str = "Somebody else has changed this ticket";

#[test]
fn each_sees_that_the_other_has_the_ticket_open_as_long_as_it_is() {
    let (table, seller, mia, id, page) = both_look();
    let open = "Mia has this ticket open as well";
    assert!(!seller.get(&page).text.contains(open));
    let mut stream = listening(&mia, &page);
    let mut beat = String::new();
    stream.read_line(&mut beat).expect("a beat");
    wait_until(&seller, &page, open, true);
    assert!(!mia.get(&page).text.contains("has this ticket open"), "a page of one's own is no company");
    // The same person on two devices is told so, and no other ticket's page says anything.
    let beside = Seller { agent: agent(), url: table.desk.url(), cookie: String::new() };
    let again = beside.post("/sign-in", &[("pin", PIN)]);
    let beside = Seller { cookie: again.cookie.expect("a session"), ..beside };
    let on_another = listening(&beside, &page);
    wait_until(&seller, &page, "on another device as well", true);
    wait_until(&mia, &page, "Seller has this ticket open as well", true);
    assert!(!seller.get("/tickets").text.contains("open as well"));
    // A page without a ticket, and one with nonsense in its place, listen as before.
    for page in ["/tickets", "/tickets/none", "%2Ftickets%2F..%2F..", ""] {
        let mut beat = String::new();
        listening(&seller, page).read_line(&mut beat).expect("a beat");
    }
    drop((stream, on_another));
    wait_until(&seller, &page, "open as well", false);
    assert_eq!(kinds(&table, id), ["sent"], "looking leaves nothing in the ledger");
}

#[test]
fn what_another_changed_is_told_before_the_own_act_counts() {
    let (table, seller, mia, id, page) = both_look();
    let act = |verb: &str| format!("{page}/{verb}");
    assert_eq!(mia.post(&act("remove"), &[("line", "0")]).status, 303);
    let wearer = Wearer::ANSWERS[1].code();
    let refused = seller.post(&act("wearer"), &[("wearer", wearer)]);
    assert_eq!(refused.status, 409, "{}", refused.text);
    assert!(refused.text.contains(CHANGED) && refused.text.contains("by Mia"), "{}", refused.text);
    assert!(!kinds(&table, id).contains(&"wearer".to_owned()));
    // The answer was the page as it is now: what is asked for again counts.
    assert_eq!(seller.post(&act("wearer"), &[("wearer", wearer)]).status, 303);
    // And now it is Mia who has not seen that; her own change is no news to her.
    let refused = mia.post(&act("told"), &[("told", "1")]);
    assert_eq!(refused.status, 409);
    assert!(refused.text.contains("by the seller") || refused.text.contains("by Seller"), "{}", refused.text);
    let told = refused.text.split(CHANGED).nth(1).and_then(|rest| rest.split("</ul>").next()).expect("a list");
    assert!(!told.contains("by Mia"), "{told}");
    assert_eq!(mia.post(&act("told"), &[("told", "1")]).status, 303);
}

#[test]
fn money_is_taken_once_though_two_touch_the_button() {
    let (table, seller, mia, id, page) = both_look();
    assert_eq!(seller.post(&format!("{page}/all-here"), &[]).status, 303);
    assert_eq!(seller.post(&format!("{page}/told"), &[("told", "1")]).status, 303);
    let total = table.desk.with_ledger(move |ledger| ledger.ticket(id)).unwrap().unwrap().quote.total.to_string();
    let seen = last(&table, id);
    let pay = |who: &Seller, way: &str| {
        who.post_having_seen(&format!("{page}/ring-up"), seen, &[("tender", way), ("total", &total)])
    };
    assert_eq!(pay(&seller, "card").status, 303);
    assert_eq!(pay(&seller, "card").status, 303, "a second touch of the same hand means the first");
    let refused = pay(&mia, "cash");
    assert_eq!(refused.status, 409);
    assert!(refused.text.contains(CHANGED), "{}", refused.text);
    assert_eq!(kinds(&table, id).iter().filter(|kind| *kind == "rung_up").count(), 1);
}

#[test]
fn two_who_check_a_piece_together_are_not_in_each_others_way() {
    let (table, seller, mia, id, page) = both_look();
    let seen = last(&table, id);
    let tick = |who: &Seller, part: &str, on: &str| {
        who.post_having_seen(&format!("{page}/tick"), seen, &[("part", part), ("on", on)]).status
    };
    assert_eq!(tick(&mia, "0", "1"), 303);
    assert_eq!(tick(&seller, "1", "1"), 303, "another part");
    assert_eq!(tick(&seller, "0", "1"), 303, "both say the same of it");
    assert_eq!(tick(&seller, "0", "0"), 409, "they say different things of it");
    assert_eq!(tick(&mia, "base", "1"), 303);
    // Another piece is another matter, also for a tick.
    let loaded = table.catalog();
    let other = loaded.bases.iter().find(|base| base.id != loaded.bases[0].id).expect("another base");
    let changed = mia.post(&format!("{page}/base"), &[("base", &other.id)]).status;
    assert_eq!(changed, if changed == 409 { 409 } else { 303 });
    if changed == 303 {
        assert_eq!(tick(&seller, "base", "1"), 409);
    }
}

#[test]
fn nobody_is_kept_from_acting_by_what_the_desk_does_or_by_a_page_that_says_nothing() {
    let (table, seller, mia, id, page) = both_look();
    // What the desk enters by itself is nobody's change.
    table
        .desk
        .with_ledger(move |ledger| ledger.end_holds(jiff::Timestamp::now() + jiff::SignedDuration::from_hours(100)))
        .unwrap()
        .unwrap();
    assert!(kinds(&table, id).contains(&"hold_ended".to_owned()));
    assert_eq!(seller.post(&format!("{page}/call"), &[]).status, 303);
    // Nonsense in place of a number is as if nothing was said.
    let request = mia.agent.post(format!("{}{page}/told", mia.url)).header("Cookie", &mia.cookie);
    let answer: Answer = request.header("x-seen", "-1e9; DROP").send_form([("told", "1")]).expect("an answer").into();
    assert_eq!(answer.status, 409, "by what was shown to her");
    // Somebody to whom the ticket was never shown is believed to have it in their hands.
    let beside = Seller { agent: agent(), url: table.desk.url(), cookie: String::new() };
    let again = beside.post("/sign-in", &[("pin", PIN)]);
    let beside = Seller { cookie: again.cookie.expect("a session"), ..beside };
    assert_eq!(beside.post(&format!("{page}/told"), &[("told", "1")]).status, 303);
}
