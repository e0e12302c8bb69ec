//! A desk on a table of its own, and an evening on it.

use std::{
    fs,
    net::{Ipv4Addr, SocketAddr},
    thread,
    time::Duration,
};

use chatelaine::{
    desk::Desk,
    ledger::{Bill, Ticket},
};
use uuid::Uuid;

use crate::{
    kit::{Table, config},
    seller::{Answer, Seller},
    support::{copy, test_table},
};

/// A table whose `table.ron` is another in these words.
pub fn table_with(words: &[(&str, &str)]) -> Table {
    let dir = tempfile::tempdir().expect("a temporary folder");
    copy(&test_table(), &dir.path().join("catalog")).expect("a copy");
    edit(&dir.path().join("catalog/table.ron"), words);
    let desk = Desk::start(config(dir.path())).expect("the desk starts");
    Table { desk, dir }
}

fn edit(file: &std::path::Path, words: &[(&str, &str)]) {
    let mut text = fs::read_to_string(file).expect("the table");
    for (from, to) in words {
        assert!(text.contains(from), "no {from}");
        text = text.replace(from, to);
    }
    fs::write(file, text).expect("the table");
}

/// The same with a printer of this address, and more of the table's `paper`.
pub fn with_printer(printer: &str, more: &str) -> Table {
    table_with(&[("    paper: (\n", &format!("    paper: (\n        printer: \"{printer}\", {more}\n"))])
}

/// The same in every network of the machine, as a desk under a table answers.
pub fn in_a_network(printer: &str) -> Table {
    let dir = tempfile::tempdir().expect("a temporary folder");
    copy(&test_table(), &dir.path().join("catalog")).expect("a copy");
    let more = format!("    paper: (\n        printer: \"{printer}\", columns: 32,\n");
    edit(&dir.path().join("catalog/table.ron"), &[("    paper: (\n", &more)]);
    let mut open = config(dir.path());
    open.listen = SocketAddr::from((Ipv4Addr::UNSPECIFIED, 0));
    Table { desk: Desk::start(open).expect("the desk starts"), dir }
}

/// A file as the desk answers it.
pub fn file(seller: &Seller, path: &str) -> Vec<u8> {
    let request = seller.agent.get(format!("{}{path}", seller.url)).header("Cookie", &seller.cookie);
    let mut answer = request.call().expect("an answer");
    assert_eq!(answer.status(), 200, "{path}");
    assert_eq!(answer.headers()["content-type"], "application/pdf");
    answer.body_mut().read_to_vec().expect("a file")
}

pub fn ticket(table: &Table, id: Uuid) -> Ticket {
    table.desk.with_ledger(move |ledger| ledger.ticket(id)).expect("a ledger").expect("a ticket")
}

pub fn bill(table: &Table, id: Uuid) -> Bill {
    table.desk.with_ledger(move |ledger| ledger.bill(id)).expect("a ledger").expect("a bill").0
}

/// Does something that has to be done.
pub fn act(seller: &Seller, path: &str, fields: &[(&str, &str)]) -> Answer {
    let answer = seller.post(path, fields);
    assert_eq!(answer.status, 303, "{path}: {}", answer.text);
    answer
}

/// A piece threaded by hand, for a grown-up, told: ready for the till.
pub fn ready(table: &Table, seller: &Seller, base: &str, homes: &str) -> Uuid {
    let fields = [("id", &*Uuid::now_v7().to_string()), ("base", base), ("homes", homes), ("wearer", "from13")];
    let opened = act(seller, "/new", &fields);
    let id: Uuid = opened.location.strip_prefix("/tickets/").expect("a ticket's page").parse().expect("an id");
    act(seller, &format!("/tickets/{id}/told"), &[("told", "1")]);
    for code in ticket(table, id).unconfirmed() {
        act(seller, &format!("/tickets/{id}/confirm"), &[("code", code.code()), ("on", "1")]);
    }
    id
}

/// A piece that is paid in cash.
pub fn paid(table: &Table, seller: &Seller, homes: &str) -> Uuid {
    let id = ready(table, seller, "chain-brass", homes);
    let total = ticket(table, id).quote.total.to_string();
    act(seller, &format!("/tickets/{id}/ring-up"), &[("tender", "cash"), ("total", &total)]);
    id
}

/// The bill of a ticket.
pub fn bill_of(seller: &Seller, ticket: Uuid) -> Uuid {
    let answer = act(seller, &format!("/tickets/{ticket}/bill"), &[]);
    let place = answer.location.strip_prefix("/bills/").expect("a bill's page");
    place.split('#').next().expect("an id").parse().expect("an id")
}

/// Pays what is left on a bill.
pub fn pay(table: &Table, seller: &Seller, id: Uuid, fields: &[(&str, &str)]) {
    let (bill, _, sum) = table.desk.with_ledger(move |ledger| ledger.bill(id)).expect("a ledger").expect("a bill");
    let (left, payments) = (sum.left.to_string(), bill.payments.len().to_string());
    let seen = [("left", left.as_str()), ("payments", payments.as_str())];
    act(seller, &format!("/bills/{id}/pay"), &[&seen, fields].concat());
}

/// The page once it says `words`.
pub fn until_it_says(seller: &Seller, page: &str, words: &str, seconds: u32) -> String {
    for _ in 0..seconds * 10 {
        let text = seller.get(page).text;
        if text.contains(words) {
            return text;
        }
        thread::sleep(Duration::from_millis(100));
    }
    panic!("{page} does not say {words:?}: {}", seller.get(page).text);
}
