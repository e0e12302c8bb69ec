//! Printers that are away, jammed, slow or full: selling goes on, and the page says what happened.

use std::{
    io::{Read, Write},
    net::{TcpListener, TcpStream},
    sync::mpsc,
    thread,
    time::{Duration, Instant},
};

use crate::{
    roll_reader::read,
    scene::{act, paid, ready, table_with, ticket, until_it_says, with_printer},
    seller::Seller,
};

/// The form field of the print that the page asks about.
fn asked(page: &str) -> String {
    let rest = page.split_once("name=\"print\" value=\"").unwrap_or_else(|| panic!("no question: {page}")).1;
    rest.split('"').next().unwrap().to_owned()
}

/// Prints the receipt of `of`, and rings up another piece while that hangs: no sale waits for a printer.
fn sells_meanwhile(table: &crate::kit::Table, seller: &Seller, of: uuid::Uuid) {
    let began = Instant::now();
    act(seller, &format!("/tickets/{of}/print-receipt"), &[]);
    assert!(began.elapsed() < Duration::from_secs(1), "asked to print, it took {:?}", began.elapsed());
    let page = seller.get(&format!("/tickets/{of}")).text;
    assert!(page.contains(": printing…"), "{page}");
    let next = ready(table, seller, "chain-brass", "B1");
    let total = ticket(table, next).quote.total.to_string();
    let began = Instant::now();
    act(seller, &format!("/tickets/{next}/ring-up"), &[("tender", "card"), ("total", &total)]);
    assert!(began.elapsed() < Duration::from_secs(1), "ringing up took {:?}", began.elapsed());
    assert!(seller.get(&format!("/tickets/{of}")).text.contains(": printing…"), "it hangs meanwhile");
}

#[test]
fn a_printer_that_takes_nothing_holds_nothing_up_and_is_told() {
    let printer = TcpListener::bind("127.0.0.1:0").unwrap();
    let table = with_printer(&format!("tcp:{}", printer.local_addr().unwrap()), "");
    let seller = table.seller();
    let id = paid(&table, &seller, "A1");
    sells_meanwhile(&table, &seller, id);
    // Every page says so, with the way to try again.
    let page = until_it_says(&seller, "/trays", "does not say that it is done", 15);
    let number = ticket(&table, id).number.to_string();
    assert!(page.contains(&format!("Receipt {number}")) && page.contains("Try again"), "{page}");
    act(&seller, "/printer/leave", &[("print", &asked(&page))]);
    assert!(!seller.get("/trays").text.contains("Try again"));
}

#[test]
fn a_printer_that_comes_back_prints_when_it_is_tried_again() {
    let printer = TcpListener::bind("127.0.0.1:0").unwrap();
    let at = printer.local_addr().unwrap();
    drop(printer);
    let table = with_printer(&format!("tcp:{at}"), "");
    let seller = table.seller();
    let id = paid(&table, &seller, "A1");
    act(&seller, &format!("/tickets/{id}/print-receipt"), &[]);
    let page = until_it_says(&seller, "/tickets", "The printer does not answer.", 5);
    assert!(page.contains(&format!("Receipt {} is not printed.", ticket(&table, id).number)), "{page}");
    // It ends the line before it has read anything.
    let printer = TcpListener::bind(at).unwrap();
    let (tell, told) = mpsc::channel();
    thread::spawn(move || {
        let mut lines = printer.incoming().flatten();
        drop(lines.next());
        for mut line in lines {
            let mut all = Vec::new();
            slowly(&mut line, &mut all);
            tell.send(all).unwrap();
        }
    });
    act(&seller, "/printer/again", &[("print", &asked(&page))]);
    let page = until_it_says(&seller, "/tickets", "The printer broke off", 5);
    act(&seller, "/printer/again", &[("print", &asked(&page))]);
    // One that is slow gets its time.
    sells_meanwhile(&table, &seller, paid(&table, &seller, "A2"));
    until_it_says(&seller, &format!("/tickets/{id}"), ": printed", 15);
    let out = read(&told.recv_timeout(Duration::from_secs(5)).unwrap());
    assert!(out.words().contains("Heart-bow key"), "{out:?}");
}

/// Reads as a printer does that warms up first.
fn slowly(line: &mut TcpStream, all: &mut Vec<u8>) {
    let mut some = [0; 200];
    while let Ok(count @ 1..) = line.read(&mut some) {
        all.extend_from_slice(&some[..count]);
        thread::sleep(Duration::from_millis(150));
    }
    // What it tells of itself is no part of anything.
    let _ = line.write_all(&[0x16]);
}

#[cfg(target_os = "linux")]
#[test]
fn a_device_that_is_full_or_not_there_is_told() {
    for (device, words) in [
        ("device:/dev/full", "There is no room left where it prints to."),
        ("device:/dev/usb/no-such-printer", "The printer is not there"),
        ("file:/no/such/folder", "The printer is not there"),
    ] {
        let table = with_printer(device, "");
        let seller = table.seller();
        let id = paid(&table, &seller, "A1");
        act(&seller, &format!("/tickets/{id}/print-receipt"), &[]);
        until_it_says(&seller, &format!("/tickets/{id}"), words, 5);
        // Also in the reader's own language.
        let cookie = format!("{}; language=de", seller.cookie);
        let german = Seller { agent: seller.agent.clone(), url: seller.url.clone(), cookie };
        until_it_says(&german, "/trays", "ist nicht gedruckt", 5);
    }
}

#[test]
fn without_a_printer_nothing_offers_to_print() {
    let table = table_with(&[]);
    let seller = table.seller();
    let id = paid(&table, &seller, "A1");
    let page = seller.get(&format!("/tickets/{id}")).text;
    assert!(page.contains(&format!("/tickets/{id}/receipt.pdf")) && page.contains(&format!("/tickets/{id}/slip.pdf")));
    assert!(!page.contains("print-receipt"), "{page}");
    let refused = seller.post(&format!("/tickets/{id}/print-receipt"), &[]);
    assert_eq!(refused.status, 409);
    assert!(refused.text.contains("no printer"), "{}", refused.text);
}
