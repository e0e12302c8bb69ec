//! The till on a phone: two pieces on one bill, cash with change, a refund, a sale found again.

use super::*;
use uuid::Uuid;

/// A piece opened at the desk, told, ready to be paid.
fn ready(browser: &Browser, table: &Table, homes: &str) -> Uuid {
    browser.open(&format!("{}/new?wearer=from13&homes={}", table.desk.url(), homes.replace(' ', "+")));
    browser.wait_for("Homes, left to right");
    browser.click("button.bar");
    browser.wait_for("Tick off");
    let path = browser.run("return location.pathname");
    let id: Uuid = path.as_str().expect("a path").trim_start_matches("/tickets/").parse().expect("a ticket");
    let told = table.desk.with_ledger(move |ledger| ledger.ticket(id)).expect("open").expect("the ticket").told;
    if !told && browser.run("return document.querySelector('#told button[name=told]') !== null") == true {
        browser.click("#told button[name=told]");
        browser.wait("return document.querySelectorAll('.pay button:disabled').length === 0");
    }
    id
}

#[test]
fn a_bill_is_paid_put_right_and_found_again() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    choose_a_pin(&browser, &table);
    let kiosk = table.kiosk();
    let catalog = table.catalog();
    let homes: Vec<String> = kiosk
        .fitting()
        .iter()
        .filter(|kind| catalog.suits(kind, Wearer::From13))
        .step_by(2)
        .take(6)
        .map(|kind| kind.home.to_string())
        .collect();
    let first = ready(&browser, &table, &homes[..4].join(" "));
    let second = ready(&browser, &table, &homes[4..].join(" "));
    look(&browser, "till-ready");
    browser.click("#price summary");
    look(&browser, "till-price");
    browser.fill("#reduce input[name=percent]", "10");
    browser.click("#reduce button[value=percent]");
    browser.wait_for("Taken off, a friend");
    browser.click("form[action$='/bill'] button");
    browser.wait_for("Add a ticket, by its number");
    look(&browser, "bill-begun");
    let of_first = table.desk.with_ledger(move |ledger| ledger.ticket(first)).expect("open").expect("the ticket");
    browser.fill("#number", &of_first.number.to_string());
    browser.click("#number + button");
    browser.wait("return document.querySelectorAll('.line.billed').length === 2");
    browser.fill("input[name=words]", "Gift box");
    browser.fill("form[action$='/goods'] input[name=price]", "2.50");
    browser.click("form[action$='/goods'] button");
    browser.wait_for("Other goods");
    browser.click(".line.billed button[name=gift]");
    browser.wait_for("Gifts, wrapped apart");
    look(&browser, "bill-full");
    browser.click("form.given button:last-of-type");
    browser.wait_for("change");
    look(&browser, "bill-paid");
    browser.resize(1280, 800);
    look(&browser, "bill-paid-wide");
    browser.resize(PHONE.0, PHONE.1);
    let bill = table.desk.with_ledger(move |ledger| ledger.ticket(second)).expect("open").expect("the ticket").bill;
    browser.click("a[href*='take-back']");
    browser.wait_for("What comes back");
    look(&browser, "take-back");
    browser.click("input[name=what][value^='line:']");
    browser.fill("#reason", "it broke");
    browser.click("input[name=home][value='0']");
    browser.click("button[name=tender][value=card]");
    browser.wait_for("Put right");
    look(&browser, "bill-put-right");
    browser.open(&format!("{}/sales?home={}", table.desk.url(), homes[0]));
    browser.wait_for("Find a paid sale");
    look(&browser, "sales");
    let found = browser.run("return document.querySelector('.line.billed a').getAttribute('href')");
    assert_eq!(found, format!("/bills/{}", bill.expect("a bill")));
    // Nothing is wider than the phone.
    assert_eq!(browser.run("return document.documentElement.scrollWidth <= window.innerWidth"), true);
    assert_eq!(browser.complaints(), Vec::<String>::new());
}
