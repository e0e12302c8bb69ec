//! Guests who wait for a seat: given numbers, called, come or not come, on the desk's page, the board and the tablets.

use super::*;
use chatelaine::{catalog::read_folder, link::wire::WaitingNews};
use kit::{Kiosk, config};

fn step(seller: &Seller, seen: usize, step: &str) -> Answer {
    seller.post("/waiting", &[("step", step), ("seen", &seen.to_string()), ("seats", "2")])
}

fn taken(seller: &Seller, seen: usize, what: &str) {
    let answer = step(seller, seen, what);
    assert_eq!((answer.status, &*answer.location), (303, "/waiting"), "{what}: {}", answer.text);
}

fn news(kiosk: &Kiosk) -> WaitingNews {
    kiosk.news(-1, "").waiting
}

/// The numbers on the board, in their order.
fn board(url: &str) -> Vec<String> {
    let text = Answer::from(agent().get(format!("{url}/board")).call().unwrap()).text;
    text.split("<span class=\"number\">").skip(1).map(|part| part.split('<').next().unwrap().to_owned()).collect()
}

#[test]
fn guests_are_called_one_after_the_other_and_everybody_sees_it() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let url = table.desk.url();
    assert!(seller.get("/waiting").text.contains("Say how many seats the table has"));
    assert_eq!((news(&kiosk), board(&url)), (WaitingNews::default(), vec![]));
    taken(&seller, 0, "seats");
    for seen in [1, 2] {
        taken(&seller, seen, "sit_down");
    }
    assert_eq!(step(&seller, 3, "sit_down").status, 409, "both seats are taken");
    taken(&seller, 3, "take");
    let page = seller.get("/waiting").text;
    assert!(page.contains("Number 1 is given: "), "{page}");
    taken(&seller, 4, "take");
    taken(&seller, 4, "take");
    assert_eq!(news(&kiosk).waiting, 2, "a form that is sent twice gives one number");
    let now = news(&kiosk);
    assert_eq!((now.seats, now.free, now.waiting, now.called.len()), (2, 0, 2, 0));
    let (from, to) = now.minutes.expect("a range");
    assert!(from < to && to % 5 == 0, "{from} {to}");
    taken(&seller, 5, "seat_free,call:1");
    assert_eq!((news(&kiosk).called, board(&url)), (vec![1], vec!["1".to_owned()]));
    assert_eq!(step(&seller, 7, "call:2").status, 409, "the seat is kept");
    taken(&seller, 7, "not_come:1");
    taken(&seller, 8, "call:2");
    assert_eq!(board(&url), ["2"]);
    taken(&seller, 9, "came:2");
    assert!(board(&url).is_empty());
    taken(&seller, 10, "late:1");
    let page = seller.get("/waiting").text;
    assert!(page.contains("A seat is free: call 1"), "too late is next: {page}");
    for (odd, status) in
        [("came:9", 409), ("call", 400), ("call:-1", 400), ("dance", 400), ("", 400), ("take,came:9", 409)]
    {
        assert_eq!(step(&seller, 11, odd).status, status, "{odd}");
    }
    assert_eq!(news(&kiosk).waiting, 1, "what is refused in part is refused as a whole");
    let seats = seller.post("/waiting", &[("step", "seats"), ("seen", "11"), ("seats", "a dozen")]);
    assert!(seats.status == 409 && seats.text.contains("1 to 99"), "{}", seats.text);
}

#[test]
fn two_phones_at_once_give_two_numbers() {
    let table = Table::new();
    let seller = table.seller();
    taken(&seller, 0, "seats");
    let (mia, _) = crate::helper::helper(&table, &seller, "Mia");
    taken(&seller, 1, "take");
    taken(&mia, 1, "take");
    let line = table.desk.with_ledger(|ledger| ledger.waiting()).unwrap().unwrap();
    assert_eq!(line.last(), 2, "her page had not seen the first");
}

#[test]
fn the_line_outlives_the_desk_and_begins_anew_with_the_next_show() {
    let table = Table::new();
    let seller = table.seller();
    taken(&seller, 0, "seats");
    taken(&seller, 1, "take");
    taken(&seller, 2, "take");
    taken(&seller, 3, "call:1");
    let Table { desk, dir } = table;
    drop(desk);
    let desk = Desk::start(config(dir.path())).unwrap();
    assert_eq!(board(&desk.url()), ["1"]);
    let line = desk.with_ledger(|ledger| ledger.waiting()).unwrap().unwrap();
    assert_eq!((line.waiting().collect::<Vec<_>>(), line.steps()), (vec![2], 4));
    let currency = read_folder(&dir.path().join("catalog")).unwrap().catalog.table.prices.currency;
    desk.with_ledger(move |ledger| ledger.close_show(currency, jiff::Timestamp::now())).unwrap().unwrap();
    assert!(board(&desk.url()).is_empty());
    let line = desk.with_ledger(|ledger| ledger.waiting()).unwrap().unwrap();
    assert_eq!((line.seats(), line.last()), (0, 0), "numbers begin anew, seats are each show's own");
}

/// The board needs no PIN, so it may tell nothing that is not on any table: no names, no tickets, no sums.
#[test]
fn the_board_tells_numbers_and_nothing_else_in_four_languages() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let drop = kiosk.fitting()[0].id.clone();
    let ticket = kiosk.ticket(7, &[&drop], Wearer::From13);
    kiosk.deliver(&ticket, true);
    taken(&seller, 0, "seats");
    taken(&seller, 1, "take");
    taken(&seller, 2, "call:1");
    for path in ["/board", "/board/now"] {
        let answer = Answer::from(agent().get(format!("{}{path}", table.desk.url())).call().unwrap());
        assert_eq!(answer.status, 200);
        for words in ["Please come to the table", "Bitte an den Tisch kommen", "À table", "Ven a la mesa"] {
            assert!(answer.text.contains(words), "{path}: {words}");
        }
        for secret in [ticket.number.to_string(), ticket.id.to_string(), "$".to_owned(), drop.clone()] {
            assert!(!answer.text.contains(&secret), "{path}: {secret}");
        }
        assert!(!answer.text.contains("<form"), "nothing can be done there");
    }
}
