//! A phone in one hand and a queue: what the seller sees and reaches of a ticket of nine drops without searching.

use chatelaine::ledger::Part;
use serde_json::{Value, json};

use super::*;

/// Emulates what a reader's system or paper asks for.
fn media(browser: &Browser, media: &str, features: Value) {
    let body = json!({"cmd": "Emulation.setEmulatedMedia", "params": {"media": media, "features": features}});
    browser.command("/goog/cdp/execute", &body).expect("another medium");
}

/// Chooses the pages' language in this browser.
fn in_language(browser: &Browser, url: &str, lang: &str) {
    let cookie = json!({"url": url, "name": "language", "value": lang});
    browser.command("/goog/cdp/execute", &json!({"cmd": "Network.setCookie", "params": cookie})).expect("a cookie");
}

/// How many sheets of A4 the page takes.
fn sheets(browser: &Browser) -> usize {
    let paper = json!({"printBackground": false, "preferCSSPageSize": true, "paperWidth": 8.27, "paperHeight": 11.69});
    let printed =
        browser.command("/goog/cdp/execute", &json!({"cmd": "Page.printToPDF", "params": paper})).expect("paper");
    let pdf = from_base64(printed["data"].as_str().expect("a PDF file"));
    // Each page is an object of the type Page (ISO 32000-1, section 7.7.3.3); the tree of them is of the type Pages.
    let text = String::from_utf8_lossy(&pdf);
    text.matches("/Type /Page").count() - text.matches("/Type /Pages").count()
}

#[test]
#[allow(clippy::too_many_lines, reason = "one story, in the order in which it happens")]
fn a_ticket_of_nine_drops_is_ticked_told_and_paid_at_a_glance() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let (url, kiosk, catalog) = (table.desk.url(), table.kiosk(), table.catalog());
    choose_a_pin(&browser, &table);
    let suits = kiosk.fitting().into_iter().filter(|kind| catalog.suits(kind, Wearer::From13));
    let nine: Vec<String> = suits.step_by(3).take(9).map(|kind| kind.id.clone()).collect();
    let sent = kiosk.ticket(1, &nine.iter().map(String::as_str).collect::<Vec<_>>(), Wearer::From13);
    kiosk.deliver(&sent, true);
    // Who can't see the page hears that somebody has come.
    browser.wait(&format!("return document.querySelector('#live').textContent === 'New ticket {}'", sent.number));
    let id = sent.id;
    let page = format!("{url}/tickets/{id}");

    // Base and drops stand on one screen, between the head and the bar, in every language.
    for lang in ["es", "fr", "de", "en"] {
        in_language(&browser, &url, lang);
        browser.open(&page);
        browser.wait("return document.fonts.status === 'loaded'");
        let places = browser.run(
            "const box = (one) => document.querySelector(one).getBoundingClientRect();
             document.querySelector('#parts').scrollIntoView();
             const parts = [...document.querySelectorAll('.part')].map((one) => one.getBoundingClientRect());
             return [parts.length, box('.top').bottom, Math.min(...parts.map((one) => one.top)),
               Math.max(...parts.map((one) => one.bottom)), box('.bar').top, box('.bar').bottom, innerHeight]",
        );
        let at: Vec<f64> = places.as_array().expect("places").iter().filter_map(Value::as_f64).collect();
        assert_eq!(at[0], 10.0);
        assert!(at[1] <= at[2] && at[3] <= at[4] && (at[5] - at[6]).abs() < 1.0, "{lang}: {at:?}");
        look(&browser, &format!("nine-{lang}"));
    }

    let touches = std::cell::Cell::new(0);
    let touch = |css: &str| {
        touches.set(touches.get() + 1);
        browser.click(css);
    };
    // What a colleague ticks is heard as well.
    table
        .desk
        .with_ledger(move |ledger| {
            let now = jiff::Timestamp::now();
            (0..8).try_for_each(|at| ledger.tick(id, Part::Line(at), true, false, now).map(|_| ()))
        })
        .expect("open")
        .expect("ticked");
    browser.wait("return document.querySelector('#live').textContent === '2 to tick'");
    // Ticked and not ticked differ in more than colour, also where a reader has colours of their own.
    media(&browser, "", json!([{"name": "forced-colors", "value": "active"}]));
    let signs = browser.run(
        "const look = (one) => [one.querySelectorAll('.tick-sign').length, one.getAttribute('aria-pressed'),
           parseFloat(getComputedStyle(one).borderTopWidth)];
         return [look(document.querySelector('#line-0 .tick')), look(document.querySelector('#base .tick'))]",
    );
    assert_eq!((&signs[0][0], &signs[0][1]), (&json!(1), &json!("true")));
    assert_eq!((&signs[1][0], &signs[1][1]), (&json!(0), &json!("false")));
    assert!(signs[0][2].as_f64() > signs[1][2].as_f64(), "{signs}");
    keep_picture(&browser, "nine-forced-colours");
    media(&browser, "", json!([]));

    touch("form[action$='/all-here'] button");
    browser.wait("return document.querySelectorAll('.tick.done').length === 10");
    touch("#told button[name=told]");
    browser.wait("return document.querySelector('form.bar button[value=cash]') !== null");
    let in_reach = browser.run(
        "const box = document.querySelector('form.bar button[value=cash]').getBoundingClientRect();
         return box.top >= 0 && box.bottom <= innerHeight",
    );
    assert_eq!(in_reach, true, "without scrolling");
    look(&browser, "nine-ready");
    touch("form.bar button[value=cash]");
    browser.wait_for("Paid");
    touch("form.bar button");
    browser.wait_for("and handed over");
    println!("{} touches for nine drops from a tablet", touches.get());
    assert!(touches.get() <= 4);

    // On paper: the ticks, the time of day, and no bar; two sheets at most.
    browser.open(&page);
    media(&browser, "print", json!([]));
    let printed = browser.run(
        "const shown = (one) => one.getClientRects().length > 0;
         return [[...document.querySelectorAll('.tick.done .tick-sign')].filter(shown).length,
           [...document.querySelectorAll('.bar, .missing')].filter(shown).length,
           /^.[0-9]{2}:[0-9]{2}.$/.test(getComputedStyle(document.querySelector('.piece time'), '::after').content)
             || getComputedStyle(document.querySelector('.piece time'), '::after').content]",
    );
    assert_eq!(printed, json!([10, 0, true]));
    media(&browser, "", json!([]));
    let count = sheets(&browser);
    println!("{count} sheets of paper");
    assert!((1..=2).contains(&count), "{count} sheets");
    assert_eq!(browser.complaints(), Vec::<String>::new());
}
