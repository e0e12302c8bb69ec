//! Practice: everything works, and nothing of it counts.

use std::path::Path;

use chatelaine::{
    craft::Wearer,
    desk::Desk,
    link::wire::{Delivery, DeskNews, PairRequest, Refused},
    ticket::{Receipt, SentTicket, State},
};

use crate::{
    kit::{Kiosk, PIN, Table, agent, config},
    seller::{Answer, Seller},
};

const BAND: &str = "Practice: nothing counts.";

/// Everything that stands in every table of the ledger's file, read beside the desk.
fn all_of(data: &Path) -> Vec<String> {
    let db = rusqlite::Connection::open(data.join("ledger.sqlite")).expect("the ledger");
    let names = "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name";
    let names: Vec<String> = {
        let mut names = db.prepare(names).expect("a question");
        names.query_map([], |row| row.get(0)).expect("names").map(|name| name.expect("a name")).collect()
    };
    assert!(names.len() > 8, "{names:?}");
    let mut all = Vec::new();
    for name in names {
        let mut rows = db.prepare(&format!("SELECT * FROM {name} ORDER BY rowid")).expect("a question");
        let width = rows.column_count();
        let mut rows = rows.query([]).expect("rows");
        while let Some(row) = rows.next().expect("a row") {
            let cell = |at| match row.get_ref(at).expect("a cell") {
                rusqlite::types::ValueRef::Text(text) => String::from_utf8_lossy(text).into_owned(),
                other => format!("{other:?}"),
            };
            let cells: Vec<_> = (0..width).map(cell).collect();
            all.push(format!("{name}: {}", cells.join(" ")));
        }
    }
    all
}

impl Table {
    /// Another browser in which somebody signs in.
    fn second_seller(&self) -> Seller {
        let mut seller = Seller { agent: agent(), url: self.desk.url(), cookie: String::new() };
        let answer = seller.post("/sign-in", &[("pin", PIN)]);
        assert_eq!(answer.status, 303, "{}", answer.text);
        seller.cookie = answer.cookie.expect("a session");
        seller
    }
}

impl Seller {
    /// Opens a page and keeps what it says of practice, as a browser does.
    pub fn open(&mut self, path: &str) -> Answer {
        let answer = self.get(path);
        if let Some(practice) = answer.cookie.as_ref().filter(|cookie| cookie.starts_with("practice=")) {
            let others = self.cookie.split("; ").filter(|cookie| !cookie.starts_with("practice="));
            self.cookie = others.chain([practice.as_str()]).collect::<Vec<_>>().join("; ");
        }
        answer
    }
}

impl Kiosk {
    fn news_in(&self, practice: bool) -> DeskNews {
        self.news(-1, &format!("&practice={practice}"))
    }

    /// The status and the words of an answer to a message.
    fn say(&self, path: &str, message: &impl serde::Serialize) -> (u16, String) {
        let request = self.agent.post(format!("{}{path}", self.pairing.desk)).header("Authorization", self.bearer());
        let mut answer = request.send_json(message).expect("an answer");
        (answer.status().as_u16(), answer.body_mut().read_to_string().expect("words"))
    }

    /// A ticket of practice, as a tablet sends it.
    fn practised(&self, show: i64, sequence: u16, drops: &[&str]) -> SentTicket {
        let ticket = self.ticket_in(show, sequence, drops, Wearer::From13);
        SentTicket { practice: true, ..ticket }
    }
}

/// Ticks a piece off and takes the money, by forms.
fn ring_up(seller: &Seller, ticket: &SentTicket) {
    let page = format!("/tickets/{}", ticket.id);
    for fields in [[("part", "base"), ("on", "1")], [("part", "0"), ("on", "1")]] {
        assert_eq!(seller.post(&format!("{page}/tick"), &fields).status, 303);
    }
    seller.post(&format!("{page}/told"), &[("told", "1")]);
    let total = ticket.quote.total.to_string();
    let paid = seller.post(&format!("{page}/ring-up"), &[("tender", "cash"), ("total", &total)]);
    assert_eq!(paid.status, 303, "{}", paid.text);
}

#[test]
fn everything_works_in_practice_and_nothing_of_it_is_left() {
    let table = Table::new();
    let data = table.dir.path().join("data");
    let (mut seller, mut helper, kiosk) = (table.seller(), table.second_seller(), table.kiosk());
    seller.post("/show/about", &[("show", "1"), ("kind", "fair"), ("place", "Mill Lane"), ("tax", "8.875")]);
    let drop = kiosk.fitting()[0].id.clone();
    let real = kiosk.ticket(0, &[&drop], Wearer::From13);
    kiosk.deliver(&real, true);
    helper.open("/tickets");
    let before = all_of(&data);

    assert!(seller.get("/practice").text.contains("The ticket that is open waits until practice ends."));
    assert_eq!(seller.post("/practice/begin", &[]).status, 303);
    assert_eq!(seller.post("/practice/begin", &[]).status, 303, "sent twice, it begins once");
    for page in
        ["/tickets", "/new", "/trays", "/show", "/kiosks", "/pin", &format!("/tickets/{}", real.id), "/show/about"]
    {
        assert!(seller.open(page).text.contains(BAND), "{page}");
    }
    let news = kiosk.news_in(false);
    assert!(news.practice && news.show == 2, "a show of its own, with nothing in it");
    assert!(!seller.get("/tickets").text.contains(&real.number.to_string()), "no real ticket waits in it");
    assert!(seller.get("/show").text.contains("8.875 % tax here"), "the tax of the place");

    // What is real waits on its tablet; what is practice comes in.
    let waits = Delivery { ticket: kiosk.ticket_in(1, 1, &[&drop], Wearer::From13), refuse_if_short: false };
    let (status, words) = kiosk.say("/link/tickets", &waits);
    assert!(status == 503 && words.contains("the desk practises now"), "{status} {words}");
    let one = kiosk.practised(2, 0, &[&drop]);
    assert_eq!(kiosk.deliver(&one, true), Receipt::Stored { short: vec![] });
    ring_up(&seller, &one);
    let home = kiosk.fitting()[0].home.to_string();
    let id = uuid::Uuid::now_v7().to_string();
    assert_eq!(seller.post("/new", &[("id", &id), ("homes", &home)]).status, 303, "a number of the desk's own digit");
    assert_eq!(seller.post(&format!("/parts/{drop}"), &[("free", "1")]).status, 303);
    assert_eq!(seller.post("/show/about", &[("show", "2"), ("tax", "5")]).status, 303, "another rate, also on tablets");
    assert_eq!(seller.post("/show/close", &[("show", "2"), ("counted", "12")]).location, "/shows/2");
    assert!(seller.get("/shows/2").text.contains(BAND), "also on what may be printed");

    // What would be missed afterwards is refused in words.
    for (path, fields) in [
        ("/pin", vec![("now", PIN), ("pin", "739155"), ("again", "739155")]),
        ("/kiosks/code", vec![]),
        ("/kiosks/1/release", vec![]),
    ] {
        let refused = seller.post(path, &fields);
        assert_eq!(refused.status, 409, "{path}");
        assert!(refused.text.contains("while somebody practises"), "{path}: {}", refused.text);
    }
    assert_eq!(kiosk.say("/link/pair", &PairRequest { code: "123456".into(), key: None }).0, 503);
    assert_eq!(kiosk.say("/link/take-in", &real).0, 503);
    // A page that the helper opened before practice began does nothing in it.
    let stale = helper.post(&format!("/tickets/{}/let-go", real.id), &[]);
    assert!(stale.status == 409 && stale.text.contains("Practice has begun since"), "{}", stale.text);

    helper.open("/tickets");
    assert_eq!(seller.post("/practice/end", &[]).status, 303);
    assert_eq!(seller.post("/practice/end", &[]).status, 303, "sent twice, it ends once");
    assert_eq!(all_of(&data), before, "every byte of every table is as it was");
    assert!(!data.join("practice.sqlite").exists() && !data.join("practice.sqlite-wal").exists());
    let stale = helper.post(&format!("/tickets/{}/let-go", real.id), &[]);
    assert!(stale.status == 409 && stale.text.contains("Practice has ended since"), "{}", stale.text);
    assert!(!seller.open("/tickets").text.contains(BAND));
    let news = kiosk.news_in(true);
    assert!(!news.practice && news.show == 1 && news.revision == kiosk.news(-1, "").revision);
    assert_eq!(kiosk.deliver(&one, false), Receipt::Practice, "a ticket of practice that comes afterwards");
    assert_eq!(all_of(&data), before);
    // And the real work goes on, on pages that are opened anew.
    helper.open("/tickets");
    assert_eq!(helper.post(&format!("/tickets/{}/let-go", real.id), &[]).status, 303);
    let id = real.id;
    assert_eq!(table.desk.with_ledger(move |ledger| ledger.ticket(id)).unwrap().unwrap().state, State::LetGo);
    assert_eq!(kiosk.deliver(&waits.ticket, false), Receipt::Stored { short: vec![] });
}

#[test]
fn a_tablet_that_does_not_know_practice_waits_for_the_real_desk() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    seller.post("/practice/begin", &[]);
    let url = format!("{}/link/news?have=-1&revision=", kiosk.pairing.desk);
    let mut answer = kiosk.agent.get(url).header("Authorization", kiosk.bearer()).call().expect("an answer");
    assert_eq!(answer.status(), 503);
    let refused: Refused = answer.body_mut().read_json().expect("words");
    assert!(refused.reason.contains("earlier version"), "{}", refused.reason);
}

#[test]
fn who_signs_in_during_practice_stays_signed_in_and_who_signs_out_stays_out() {
    let table = Table::new();
    let (seller, helper) = (table.seller(), table.second_seller());
    seller.post("/practice/begin", &[]);
    let newcomer = table.second_seller();
    assert_eq!(helper.post("/sign-out", &[]).status, 303);
    let mut seller = seller;
    seller.open("/show");
    assert_eq!(seller.post("/practice/end", &[]).status, 303);
    for (who, status) in [(&seller, 200), (&newcomer, 200), (&helper, 303)] {
        assert_eq!(who.get("/tickets").status, status);
    }
}

#[test]
fn a_desk_that_ends_during_practice_starts_on_the_real_ledger_and_says_so_once() {
    let Table { desk, dir } = Table::new();
    let table = Table { desk, dir };
    let data = table.dir.path().join("data");
    let (mut seller, kiosk) = (table.seller(), table.kiosk());
    let before = all_of(&data);
    seller.post("/practice/begin", &[]);
    seller.open("/tickets");
    let drop = kiosk.fitting()[0].id.clone();
    let one = kiosk.practised(2, 0, &[&drop]);
    assert_eq!(kiosk.deliver(&one, true), Receipt::Stored { short: vec![] });
    let Table { desk, dir } = table;
    drop_and_check(desk, &data);
    let desk = Desk::start(config(dir.path())).expect("again");
    let table = Table { desk, dir };
    assert!(!data.join("practice.sqlite").exists(), "the copy is gone");
    seller.url = table.desk.url();
    let page = seller.open("/show").text;
    assert!(!page.contains(BAND) && page.contains("ended while somebody practised"), "{page}");
    assert_eq!(seller.post("/practice/seen", &[]).status, 303);
    assert!(!seller.open("/show").text.contains("ended while somebody practised"), "once");
    assert_eq!(table.desk.with_ledger(|ledger| ledger.show()).unwrap().unwrap().id, 1);
    let after = all_of(&data);
    // Starting notes that the catalogue was read; nothing else.
    let is_start = |line: &&String| line.contains("catalog_read");
    let news: Vec<&String> = after.iter().filter(|line| !before.contains(line) && !is_start(line)).collect();
    assert!(news.is_empty() && before.iter().all(|line| after.contains(line)), "{news:#?}");
}

fn drop_and_check(desk: Desk, data: &Path) {
    drop(desk);
    assert!(data.join("practice.sqlite").exists(), "by this the next start knows");
}
