//! A piece threaded by hand, from nothing to paid, with every touch counted.

use std::cell::Cell;

use super::*;

/// Touches that a piece of nine drops may take.
const MOST_TOUCHES: u32 = 14;

#[test]
fn a_piece_of_nine_drops_takes_fourteen_touches_at_most() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    choose_a_pin(&browser, &table);
    let touches = Cell::new(0);
    let touch = |css: &str| {
        touches.set(touches.get() + 1);
        browser.click(css);
    };
    touch("a[href='/new']");
    browser.wait_for("Homes, left to right");
    look(&browser, "new-sale");
    let kiosk = table.kiosk();
    let catalog = table.catalog();
    let free = table.desk.with_ledger(|ledger| ledger.counts()).expect("open").expect("counts");
    let stocked = kiosk.fitting().into_iter().filter(|kind| free[&kind.id].free() > 0);
    // Nothing that speaks against a grown-up's piece, and no two of a kind.
    let nine: Vec<_> = stocked.filter(|kind| catalog.suits(kind, Wearer::From13)).step_by(3).take(9).collect();
    assert_eq!(nine.len(), 9);
    touch("button[name='for'][value=from13]");
    // The next one is touched before the desk has answered; none is lost.
    for kind in &nine {
        touch(&format!("button[name=add][value={}]", kind.home));
    }
    browser.wait("return document.querySelectorAll('.chosen-drops li').length === 9");
    look(&browser, "new-sale-nine");
    touch("button.bar");
    browser.wait_for("Tick off");
    let path = browser.run("return location.pathname");
    let id: uuid::Uuid = path.as_str().expect("a path").trim_start_matches("/tickets/").parse().expect("a ticket");
    let now = || table.desk.with_ledger(move |ledger| ledger.ticket(id)).expect("open").expect("the ticket");
    let drops: Vec<String> = nine.iter().map(|kind| kind.id.clone()).collect();
    assert_eq!(now().piece.drops, drops, "in the order in which they were touched");
    look(&browser, "ticket-by-hand");
    if !now().verdict.cautions.is_empty() {
        touch("#told button[name=told]");
        browser.wait("return document.querySelectorAll('.pay button:disabled').length === 0");
    }
    // The ways to pay are in reach of a thumb, wherever the page is scrolled to.
    browser.wait("return document.querySelector('form.bar button[value=cash]') !== null");
    touch("form.bar button[value=cash]");
    browser.wait_for("Handed over");
    assert_eq!((now().state, now().tender), (State::RungUp, Some(chatelaine::money::Tender::Cash)));
    println!("{} touches", touches.get());
    assert!(touches.get() <= MOST_TOUCHES, "{} touches", touches.get());
    // A key of the table's own letters begins the next home.
    browser.open(&format!("{}/new", table.desk.url()));
    browser.wait_for("Homes, left to right");
    browser.fill("#homes", "A1");
    browser.click(".keypad button[data-key=letter-B]");
    browser.click(".keypad button[data-key=digit-3]");
    assert_eq!(browser.run("return document.querySelector('#homes').value"), "A1 B3");
    browser.click(".keypad button[data-key=rub-out]");
    browser.click(".keypad button[data-key=digit-4]");
    browser.click("#homes + button");
    browser.wait("return document.querySelectorAll('.chosen-drops li').length === 2");
    browser.click(".chosen-drops li:first-child button[name=off]");
    browser.wait("return document.querySelectorAll('.chosen-drops li').length === 1");
    assert_eq!(browser.run("return document.querySelector('#homes').value"), "B4");
    assert_eq!(browser.complaints(), Vec::<String>::new());
}
