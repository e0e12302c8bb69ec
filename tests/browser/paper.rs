//! Receipt and slip on a ticket's page, and a printer on which there is no room.

use super::*;
use uuid::Uuid;

/// Linux has a device that is always full.
#[cfg(target_os = "linux")]
#[test]
fn paper_is_offered_and_a_full_printer_is_told() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    choose_a_pin(&browser, &table);
    browser.open(&format!("{}/new?wearer=from13&homes=A1+C2", table.desk.url()));
    browser.click("button.bar");
    browser.wait_for("Slip (PDF)");
    let path = browser.run("return location.pathname");
    let id: Uuid = path.as_str().expect("a path").trim_start_matches("/tickets/").parse().expect("a ticket");
    let ticket = move |table: &Table| table.desk.with_ledger(move |ledger| ledger.ticket(id)).unwrap().unwrap();
    if !ticket(&table).verdict.cautions.is_empty() {
        browser.click("#told button[name=told]");
    }
    for code in ticket(&table).unconfirmed() {
        browser.click(&format!("li:has(input[value={}]) button[value='1']", code.code()));
    }
    browser.click("button[name=tender][value=card]:enabled");
    browser.wait_for("Receipt (PDF)");
    assert_eq!(
        browser.run("return document.body.innerText.includes('Print receipt')"),
        false,
        "there is no printer yet"
    );
    // The table gets a printer while the desk runs.
    let file = table.catalog_file("table.ron");
    let text = fs::read_to_string(&file).unwrap();
    fs::write(&file, text.replace("paper: (", "paper: (printer: \"device:/dev/full\",")).unwrap();
    browser.wait_for("Print receipt");
    browser.click("#paper summary");
    look(&browser, "paper-offered");
    browser.click("form[action$='/print-receipt'] button:not([name])");
    browser.wait_for("There is no room left where it prints to.");
    look(&browser, "paper-not-printed");
    browser.click(".banner form[action='/printer/leave'] button");
    browser.wait("return document.querySelector('.banner') === null");
    // In the browser's own viewer, where it has one.
    browser.open(&format!("{}/tickets/{id}/receipt.pdf", table.desk.url()));
    std::thread::sleep(std::time::Duration::from_secs(2));
    keep_picture(&browser, "paper-viewer");
}
