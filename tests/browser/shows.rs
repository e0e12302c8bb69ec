//! A show from telling what it is to its close-out, and practice, on a phone's screen.

use chatelaine::money::Tender;

use super::*;
use crate::kit::Kiosk;

/// Sells one piece to whoever pays so.
fn sell(table: &Table, kiosk: &Kiosk, sequence: u16, tender: Tender) {
    let drops: Vec<String> =
        kiosk.fitting().iter().skip(usize::from(sequence)).take(2).map(|kind| kind.id.clone()).collect();
    let drops: Vec<&str> = drops.iter().map(String::as_str).collect();
    let ticket = kiosk.ticket(sequence, &drops, Wearer::From13);
    kiosk.deliver(&ticket, true);
    let id = ticket.id;
    let sold = table.desk.with_ledger(move |ledger| {
        let now = jiff::Timestamp::now();
        ledger.tick_all(id, now)?;
        for code in ledger.set_told(id, true, now)?.unconfirmed() {
            ledger.confirm_hazard(id, code, true, now)?;
        }
        ledger.ring_up(id, tender, now)
    });
    sold.expect("open").expect("sold");
}

#[test]
fn a_show_is_told_closed_and_practised_for_on_a_phone() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let kiosk = table.kiosk();
    let url = table.desk.url();
    choose_a_pin(&browser, &table);

    browser.open(&format!("{url}/practice"));
    browser.wait_for("Practise?");
    look(&browser, "practice-ask");
    browser.click("button.grave");
    browser.wait_for("Practice: nothing counts");
    look(&browser, "practice-tickets");
    browser.open(&format!("{url}/new"));
    browser.wait_for("Practice: nothing counts");
    look(&browser, "practice-new-sale");
    browser.open(&format!("{url}/show"));
    browser.wait_for("End practice");
    look(&browser, "practice-show");
    browser.click("form[action='/practice/end'] button");
    browser.wait("return !document.body.textContent.includes('nothing counts')");

    browser.wait_for("What is this show?");
    look(&browser, "show-untold");
    browser.click(".kinds a");
    browser.wait_for("Where the table stands");
    for (field, typed) in [("place", "Mill Lane, hall 2"), ("tax", "8.875"), ("float", "50"), ("fee", "45")] {
        browser.fill(&format!("#{field}"), typed);
    }
    look(&browser, "show-about");
    browser.click("button.main");
    browser.wait_for("Show 1, Mill Lane, hall 2");
    let kiosk = Kiosk {
        catalog: std::sync::Arc::new(kiosk.news(-1, "").content.expect("a catalogue").catalog),
        agent: kiosk.agent.clone(),
        pairing: kiosk.pairing.clone(),
    };
    for (sequence, tender) in [Tender::Cash, Tender::Card, Tender::Cash].into_iter().enumerate() {
        sell(&table, &kiosk, u16::try_from(sequence).expect("few"), tender);
    }
    browser.wait("return document.querySelector('[data-key=sold]') !== null");
    look(&browser, "show-told");
    browser.click("a.button.grave");
    browser.wait_for("Close show 1?");
    browser.click("details.pieces summary");
    browser.fill("input[name=n20]", "4");
    browser.fill("input[name=n5]", "1");
    look(&browser, "show-count");
    browser.click("button.grave");
    browser.wait_for("Close-out of show 1, Mill Lane, hall 2");
    browser.wait_for("$85.00");
    look(&browser, "show-closed");
    browser.open(&format!("{url}/show"));
    browser.wait_for("Earlier shows");
    look(&browser, "show-list");
    assert_eq!(browser.complaints(), Vec::<String>::new());
}
