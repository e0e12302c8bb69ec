//! The evenings before and after a show, on a phone and a laptop.

use super::*;

/// Everything that is counted on one page, and a reason for what differs. Enter keeps the typed figure.
#[test]
fn all_trays_are_counted_on_one_page() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    sizes::set_up(&browser, &table);
    let url = table.desk.url();
    browser.open(&format!("{url}/trays/count"));
    browser.wait_for("Count the trays");
    browser.fill("input[name='n-key-heart']", "3");
    browser.fill("input[name='r-key-heart']", "4");
    browser.fill("input[name='n-charm-moon']", "99\u{e007}");
    browser.wait_for("What differs");
    let counts = table.desk.with_ledger(|ledger| ledger.counts()).expect("the ledger").expect("counts");
    assert_eq!((counts["key-heart"].on_hand, counts["charm-moon"].on_hand), (7, 99));
    // What was kept is not typed a second time.
    let left = "return [...document.querySelectorAll('.counting input')].every((one) => one.type === 'hidden' || one.value === '')";
    browser.wait(left);
    look(&browser, "bench-count");
    browser.click(".differences li:has(input[value='key-heart']) button[value=broken]");
    browser.wait("return document.querySelectorAll('.differences li').length === 1");
    browser.fill("#home", "B1");
    browser.click("form[action='/trays/count/change'] button[value=stray]");
    browser.wait_for("put home");
    sizes::is_whole_at_200_percent(&browser, "bench-count");
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// What is made, bought, packed and planned, the year and safe keeping, looked at in German, whose words are long.
#[test]
#[allow(clippy::too_many_lines, reason = "one story, in the order in which it happens")]
fn the_benchs_pages_fit_a_phone_and_a_laptop() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    sizes::set_up(&browser, &table);
    let url = table.desk.url();
    let kiosk = table.kiosk();
    let catalog = table.catalog();
    for sequence in 0..3_u16 {
        let ticket = kiosk.ticket(sequence, &["key-heart"], Wearer::From13);
        kiosk.deliver(&ticket, true);
        let id = ticket.id;
        let sold = move |ledger: &mut chatelaine::ledger::Ledger| {
            let now = jiff::Timestamp::now();
            let ticket = ledger.tick(id, chatelaine::ledger::Part::Base, true, false, now)?;
            for (at, _) in ticket.live_lines() {
                ledger.tick(id, chatelaine::ledger::Part::Line(at), true, false, now)?;
            }
            ledger.set_told(id, true, now)?;
            ledger.ring_up(id, chatelaine::money::Tender::Card, now)
        };
        table.desk.with_ledger(sold).expect("the ledger").expect("sold");
    }
    let currency = catalog.table.prices.currency;
    let closed = move |ledger: &mut chatelaine::ledger::Ledger| ledger.close_show(currency, jiff::Timestamp::now());
    table.desk.with_ledger(closed).expect("the ledger").expect("closed");
    browser.open(&format!("{url}/bench/packing"));
    browser.click("button[name=usual]");
    browser.wait_for("Pliers");
    browser.click(".differences button[value=packed]");
    browser.click(".differences button[value=forgotten]");
    browser.wait_for("forgotten once");
    browser.open(&format!("{url}/bench/plans"));
    browser.run(
        "document.querySelector('#day').value = '2031-05-09'; document.querySelector('#deadline').value = '2031-02-01'",
    );
    browser.fill("#place", "Mill Lane");
    browser.fill("#fee", "45.50");
    browser.fill("#permit", "A-17");
    browser.click("form[action='/bench/plans/shows'] button.main");
    browser.wait_for("Permit: A-17");
    browser.run("document.querySelector('#due').value = '2031-01-02'");
    browser.fill("#agreed", "Two moons on a chain of 40 cm, silver-coloured");
    browser.fill("#number", "+49 30 901820");
    browser.click("form[action='/bench/plans/orders'] button.main");
    browser.wait_for("Two moons");
    browser.open(&format!("{url}/bench/made"));
    browser.fill("#count", "5");
    browser.click("details summary");
    browser.click("input[value='key-blank|K-26-1']");
    browser.click("form[action='/bench/made'] button.main");
    browser.wait_for("What was made before");
    browser.open(&format!("{url}/bench/cuts?part=cable-brass&length=18in&count=12&length=24in&count=2"));
    browser.click("form[action='/bench/cuts'] button.main");
    browser.wait_for("Tick off each spool");
    browser.click("button[name=on]");
    browser.wait("return document.querySelector('button[name=on][aria-pressed=true]') !== null");
    let list = browser.run("return location.pathname");
    let list = list.as_str().expect("a path").trim_start_matches('/').to_owned();
    browser.open(&format!("{url}/bench/backup"));
    browser.click("form[action='/bench/backup'] button");
    browser.wait_for("Save it elsewhere");
    browser.click("footer button[name=language][value=de]");
    browser.wait("return document.documentElement.lang === 'de'");
    let pages = [
        "bench",
        "bench/parts",
        "bench/prices",
        "bench/lots/write",
        "bench/drawers",
        "bench/drawers/new",
        "bench/drawers/part/cable-brass",
        "bench/cuts",
        "bench/made",
        "bench/packing",
        "bench/plans",
        "bench/year",
        "bench/backup",
    ];
    for path in pages.into_iter().chain(["bench/lots?lot=K-26-1", "trays/count", &list]) {
        browser.open(&format!("{url}/{path}"));
        let name = path.split('?').next().expect("a path").replace('/', "-");
        let name = if name.starts_with("bench-cuts-") { "bench-cut-list".to_owned() } else { name };
        look(&browser, &format!("{name}-de"));
        sizes::is_whole_at_200_percent(&browser, &format!("{name}-de"));
    }
    assert_eq!(browser.complaints(), Vec::<String>::new());
}
