//! A helper and the seller on one phone: added, signed in by name, the seller's PIN for one act, and taken off the list.

use super::*;

pub fn sign_out(browser: &Browser) {
    browser.click("footer form[action='/sign-out'] button");
    browser.wait_for("PIN");
}

/// The seller chooses a PIN on this phone and adds two helpers; the PIN of the first.
pub fn add_helpers(browser: &Browser, table: &Table, sent: &dyn Fn()) -> String {
    let url = table.desk.url();
    choose_a_pin(browser, table);
    browser.open(&format!("{url}/kiosks"));
    browser.wait_for("Signed-in devices");
    browser.click("a[href='/staff']");
    browser.wait_for("Add a helper");
    look(browser, "people-alone");
    browser.fill("form.stack input[name=name]", "Seller");
    browser.click("form.stack button.main");
    browser.wait_for("the seller's own name");
    browser.fill("form.stack input[name=name]", "Mia");
    browser.click("form.stack button.main");
    browser.wait_for("The PIN of Mia");
    look(browser, "people-pin");
    // Whatever happens at the desk meanwhile, it stands there until it has been read.
    sent();
    std::thread::sleep(std::time::Duration::from_millis(900));
    let pin = browser.run("return document.querySelector('p.code').textContent.replaceAll(' ', '')");
    let pin = pin.as_str().expect("a PIN").to_owned();
    assert_eq!(pin.len(), 6);
    browser.click("a[href='/staff']");
    browser.wait_for("helps since");
    browser.fill("form.stack input[name=name]", "Wilhelmina-Charlotte Overton");
    browser.click("form.stack button.main");
    browser.wait_for("The PIN of Wilhelmina");
    browser.click("a[href='/staff']");
    browser.wait_for("Wilhelmina");
    look(browser, "people");
    pin
}

#[test]
fn a_helper_comes_in_is_helped_by_the_seller_and_goes() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let (url, kiosk) = (table.desk.url(), table.kiosk());
    let ticket = kiosk.ticket(1, &[&kiosk.fitting()[0].id], Wearer::From13);
    let pin = add_helpers(&browser, &table, &|| drop(kiosk.deliver(&ticket, true)));

    // This phone has seen the seller: it offers the names, the last one chosen.
    sign_out(&browser);
    browser.wait_for("Who are you?");
    look(&browser, "sign-in-names");
    assert_eq!(browser.run("return document.querySelector('input[name=who]:checked').value"), "Seller");
    browser.click("input[name=who][value=Mia]");
    browser.fill("input[name=pin]", &pin);
    browser.click("button.main");
    browser.wait_for(&ticket.number.to_string());
    browser.open(&format!("{url}/tickets/{}", ticket.id));
    browser.click("#line-0 .tick");
    browser.wait("return document.querySelector('#line-0 .tick.done') !== null");
    browser.click("details.past summary");
    browser.wait_for("ticked off – by Mia");
    browser.run("document.querySelector('details.past').scrollIntoView()");
    keep_picture(&browser, "ticket-by-mia");
    browser.open(&format!("{url}/kiosks"));
    browser.wait_for("Where you are signed in");
    look(&browser, "kiosks-helper");

    // Closing is the seller's. The page that asks for the PIN stays while it is typed, whatever is sent meanwhile.
    browser.open(&format!("{url}/show/close"));
    browser.click("button.grave");
    browser.wait_for("This needs the seller’s PIN");
    look(&browser, "sellers-pin");
    browser.fill("input[name=seller_pin]", "4829");
    kiosk.deliver(&kiosk.ticket(2, &[], Wearer::From13), false);
    std::thread::sleep(std::time::Duration::from_millis(900));
    assert_eq!(browser.run("return document.querySelector('input[name=seller_pin]').value"), "4829");
    browser.fill("input[name=seller_pin]", &pin);
    browser.click("form.stack button.main");
    browser.wait_for("This is not the PIN");
    browser.wait("return document.querySelector('input[name=seller_pin]').value === ''");
    look(&browser, "sellers-pin-wrong");
    browser.fill("input[name=seller_pin]", PIN);
    browser.click("form.stack button.main");
    browser.wait_for("Close-out of show 1");
    assert_eq!(browser.run("return location.pathname"), "/shows/1");
    browser.open(&format!("{url}/staff"));
    browser.wait_for("you are signed in as Mia");
    browser.click("a[href='/tickets']");
    browser.wait_for("Nobody waits");

    // The seller's PIN once is not the seller for good; and who is removed is out at once.
    sign_out(&browser);
    browser.wait("return document.querySelector('input[name=who]:checked').value === 'Mia'");
    browser.click("input[name=who][value=Seller]");
    browser.fill("input[name=pin]", PIN);
    browser.click("button.main");
    browser.wait_for("Nobody waits");
    browser.open(&format!("{url}/staff"));
    browser.click("button[aria-label='Remove – Mia']");
    browser.wait_for("Remove Mia?");
    look(&browser, "people-remove");
    browser.click("button.grave");
    browser.wait("return !document.body.innerText.includes('Mia')");
    // It tells every refusal, and that the names have no field; neither is a mistake of the page.
    let told = |line: &str| line.contains("with a status of 40") || line.contains("[DOM] Password forms");
    let complaints: Vec<String> = browser.complaints().into_iter().filter(|line| !told(line)).collect();
    assert_eq!(complaints, Vec::<String>::new());
}

#[test]
fn the_sellers_pin_is_typed_on_a_helpers_phone_without_script_too() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let url = table.desk.url();
    browser.resize(PHONE.0, PHONE.1);
    browser.without_script();
    browser.open(&url);
    browser.fill("input[name=pin]", PIN);
    browser.fill("input[name=again]", PIN);
    browser.click("button.main");
    browser.wait_for("Nobody waits");
    browser.open(&format!("{url}/staff"));
    browser.fill("form.stack input[name=name]", "Jo");
    browser.click("form.stack button.main");
    browser.wait_for("The PIN of Jo");
    let pin = browser.run("return document.querySelector('p.code').textContent.replaceAll(' ', '')");
    browser.click("footer form[action='/sign-out'] button");
    browser.wait_for("Who are you?");
    browser.click("input[name=who][value=Jo]");
    browser.fill("input[name=pin]", pin.as_str().expect("a PIN"));
    browser.click("button.main");
    browser.wait_for("Nobody waits");
    browser.open(&format!("{url}/kiosks"));
    browser.click("form[action='/kiosks/code'] button");
    browser.wait_for("This needs the seller’s PIN");
    // What was refused stands at an address of its own: loaded anew, it sends no PIN again and asks nothing.
    browser.fill("input[name=seller_pin]", "111222");
    browser.click("form.stack button.main");
    browser.wait_for("This is not the PIN");
    let is_kept = "return location.pathname.startsWith('/answers/')";
    assert_eq!(browser.run(is_kept), true);
    browser.run("window.before = true; location.reload()");
    browser.wait("return window.before === undefined && document.readyState === 'complete'");
    browser.wait_for("This is not the PIN");
    assert_eq!(browser.run(is_kept), true);
    assert_eq!(browser.run("return new URL(document.querySelector('form.stack a.button').href).pathname"), "/kiosks");
    browser.fill("input[name=seller_pin]", PIN);
    browser.click("form.stack button.main");
    browser.wait_for("Type this on the tablet");
    assert_eq!(browser.run("return location.pathname"), "/kiosks");
}
