//! The desk in a real browser, on a phone's screen and on a laptop's.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use std::{env, fs, path::PathBuf};

use chatelaine::{craft::Wearer, ledger::Ticket, photo, ticket::State};
use rust_decimal::Decimal;

#[path = "browser/axe.rs"]
mod axe;
#[path = "browser/bench.rs"]
mod bench;
#[path = "desk/bill_story.rs"]
mod bill_story;
#[path = "browser/by_hand.rs"]
mod by_hand;
#[path = "desk/driver.rs"]
mod driver;
#[path = "desk/empty_table.rs"]
mod empty_table;
#[path = "browser/evening.rs"]
mod evening;
#[path = "browser/glance.rs"]
mod glance;
#[path = "browser/judged.rs"]
mod judged;
#[path = "desk/kit.rs"]
mod kit;
#[path = "browser/languages.rs"]
mod languages;
#[path = "browser/light.rs"]
mod light;
#[path = "browser/line.rs"]
mod line;
#[path = "browser/month.rs"]
mod month;
#[path = "browser/own_table.rs"]
mod own_table;
#[path = "browser/paper.rs"]
mod paper;
#[path = "browser/people.rs"]
mod people;
#[path = "photo/scene.rs"]
#[allow(dead_code, reason = "the photos' own tests need more of it")]
mod scene;
#[path = "desk/seller.rs"]
#[allow(dead_code, reason = "the desk's own tests need more of it")]
mod seller;
#[path = "browser/shows.rs"]
mod shows;
#[path = "browser/sizes.rs"]
mod sizes;
#[path = "browser/stretched.rs"]
mod stretched;
mod support;
#[path = "browser/till.rs"]
mod till;
#[path = "browser/tray_photo.rs"]
mod tray_photo;
#[path = "desk/tray_scene.rs"]
#[allow(dead_code, reason = "the desk's own tests need more of it")]
mod tray_scene;

use driver::Browser;
use kit::{PIN, Table, agent};

const PHONE: (u32, u32) = (360, 740);
const TABLET: (u32, u32) = (768, 1024);
const LAPTOP: (u32, u32) = (1280, 800);

/// The browser, or `None` where none is installed, which only a build server has to have.
fn browser() -> Option<Browser> {
    let browser = Browser::start(agent());
    if browser.is_none() {
        assert!(env::var_os("CI").is_none(), "chromium and chromedriver are needed on a build server");
        println!("not run: chromium and chromedriver are not installed");
    }
    browser
}

/// What of the page sticks out sideways, as it is on the screen now.
fn sticks_out(browser: &Browser) -> serde_json::Value {
    browser.run(
        "const page = document.documentElement;
         return [...document.querySelectorAll('body *')]
           .filter((one) => one.getBoundingClientRect().right > page.clientWidth + 0.5 && !one.closest('.unseen'))
           .map((one) => one.tagName + '.' + one.getAttribute('class'))
           .concat(page.scrollWidth > page.clientWidth ? ['the page scrolls sideways'] : []);",
    )
}

/// A phone on which the seller has just chosen the PIN.
fn choose_a_pin(browser: &Browser, table: &Table) {
    browser.resize(PHONE.0, PHONE.1);
    browser.open(&table.desk.url());
    browser.wait_for("Choose the seller’s PIN");
    browser.fill("input[name=pin]", PIN);
    browser.fill("input[name=again]", PIN);
    browser.click("button.main");
    browser.wait_for("Nobody waits");
}

/// Looks at the page on both screens: nothing sticks out sideways, everything can be touched, inputs don't make a
/// phone zoom in, and the outside judge has nothing to object. Keeps a picture of each if a folder for them is named.
fn look(browser: &Browser, name: &str) {
    for (width, height) in [PHONE, TABLET, LAPTOP] {
        browser.resize(width, height);
        browser.wait("return document.readyState === 'complete' && [...document.images].every((one) => one.complete || one.loading === 'lazy')");
        browser.wait("return document.fonts.status === 'loaded'");
        assert_eq!(sticks_out(browser), serde_json::json!([]), "{name} at {width} px");
        let small = browser.run(
            "return [...document.querySelectorAll('button, a.button, a.missing, nav a, a.ticket, .cell a, input, select, summary')]
               .filter((one) => one.type !== 'hidden' && one.offsetParent !== null)
               .filter((one) => {
                 const touched = (one.matches('[type=radio]') ? one.closest('label') : one).getBoundingClientRect();
                 const zooms = one.matches('input, select') && parseFloat(getComputedStyle(one).fontSize) < 16;
                 return touched.height < 44 || touched.width < 44 || zooms;
               })
               .map((one) => one.outerHTML.slice(0, 120));",
        );
        assert_eq!(small, serde_json::json!([]), "{name} at {width} px");
        judged::by_axe(browser, &format!("{name} at {width} px"));
        keep_picture(browser, &format!("{name}-{width}"));
    }
    judged::keep_served(browser, name);
    browser.resize(PHONE.0, PHONE.1);
}

fn keep_picture(browser: &Browser, name: &str) {
    let Some(folder) = env::var_os("CHATELAINE_SHOTS").map(PathBuf::from) else { return };
    fs::create_dir_all(&folder).expect("the folder for pictures");
    fs::write(folder.join(format!("{name}.png")), from_base64(&browser.screenshot())).expect("a picture");
}

/// RFC 4648, section 4.
fn from_base64(text: &str) -> Vec<u8> {
    let value = |c: u8| match c {
        b'A'..=b'Z' => c - b'A',
        b'a'..=b'z' => c - b'a' + 26,
        b'0'..=b'9' => c - b'0' + 52,
        b'+' => 62,
        _ => 63,
    };
    let digits: Vec<u32> = text.bytes().filter(|c| *c != b'=').map(|c| u32::from(value(c))).collect();
    let mut bytes = Vec::with_capacity(digits.len() * 3 / 4);
    for group in digits.chunks(4) {
        let whole = group.iter().fold(0, |sum, digit| sum << 6 | digit) << (6 * (4 - group.len()));
        bytes.extend(&whole.to_be_bytes()[1..group.len()]);
    }
    bytes
}

/// The piece is not for its wearer: each hazard is confirmed by its name.
fn confirm_all(browser: &Browser, ticket: &Ticket) {
    let open = ticket.unconfirmed();
    assert!(!open.is_empty() && !ticket.verdict.suitable);
    for code in open {
        let form = format!("li:has(input[name=code][value={}])", code.code());
        browser.click(&format!("{form} button[value='1']"));
        browser.wait(&format!("return document.querySelector('{form} button[value=\\'0\\']') !== null"));
    }
}

#[test]
#[allow(clippy::too_many_lines, reason = "one story, in the order in which it happens")]
fn a_seller_checks_swaps_tells_and_rings_up() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let url = table.desk.url();
    browser.resize(PHONE.0, PHONE.1);
    browser.open(&url);
    browser.wait_for("Choose the seller’s PIN");
    look(&browser, "setup");
    browser.fill("input[name=pin]", PIN);
    browser.fill("input[name=again]", PIN);
    browser.click("button.main");
    browser.wait_for("Nobody waits");
    look(&browser, "tickets-empty");
    browser.click("footer form[action='/sign-out'] button");
    browser.wait_for("The seller’s desk");
    browser.fill("input[name=pin]", "000000");
    browser.click("button.main");
    browser.wait_for("This is not the PIN");
    look(&browser, "sign-in");
    browser.fill("input[name=pin]", PIN);
    browser.click("button.main");
    browser.wait_for("Nobody waits");

    // A ticket comes while the page is open, and the page shows it by itself.
    let kiosk = table.kiosk();
    let fitting = kiosk.fitting();
    let ids: Vec<&str> = fitting.iter().step_by(5).take(6).map(|kind| kind.id.as_str()).collect();
    let sent = kiosk.ticket(42, &ids, Wearer::From3To5);
    kiosk.deliver(&sent, true);
    browser.wait_for(&sent.number.to_string());
    for (sequence, count) in [(43, 1), (44, 9), (45, 3)] {
        kiosk.deliver(&kiosk.ticket(sequence, &ids.repeat(2)[..count], Wearer::From13), false);
    }
    browser.wait_for(&kiosk.ticket(45, &[], Wearer::From13).number.to_string());
    look(&browser, "tickets");

    // A wrong check digit is refused before anything is sent; a right one leads to the ticket.
    let number = sent.number.to_string();
    let last = number.chars().last().and_then(|c| c.to_digit(10)).expect("a check digit");
    let wrong = format!("{}{}", &number[..number.len() - 1], (last + 1) % 10);
    browser.fill("#number", &wrong);
    browser.click(".find button");
    browser.wait_for("one digit is wrong or two are swapped");
    assert_eq!(browser.run("return location.pathname"), "/tickets");
    browser.fill("#number", &number.replace('-', ""));
    browser.click(".find button");
    browser.wait_for("Tick off");
    look(&browser, "ticket");

    let id = sent.id;
    let now = || table.desk.with_ledger(move |ledger| ledger.ticket(id)).expect("open").expect("the ticket");
    let sum = |amount: Decimal| table.catalog().table.prices.currency.plain(amount);
    let shows_total = |amount: Decimal| {
        let words = serde_json::Value::from(sum(amount));
        browser.wait(&format!("return document.querySelector('[data-total]').textContent === {words}"));
    };
    shows_total(sent.quote.total);
    assert_eq!(
        browser.run("return document.querySelectorAll('.pay button:disabled').length"),
        3,
        "cash, card, voucher"
    );

    // The first drop is missing: another one hangs in its place, and the sum follows.
    let other = fitting.iter().find(|kind| !ids.contains(&kind.id.as_str()) && kind.price != fitting[0].price);
    let other = other.expect("a drop at another price");
    browser.click("#line-0 .missing");
    browser.wait_for("Or hang another one instead");
    look(&browser, "missing");
    browser.fill("#q", &other.name);
    browser.wait("return [...document.querySelectorAll('.choice')].filter((one) => one.offsetParent).length === 1");
    browser.click(".choice:not([hidden])");
    browser.wait_for("instead of");
    let swapped = now();
    assert_eq!(swapped.piece.drops[0], other.id);
    assert_ne!(swapped.quote.total, sent.quote.total);
    shows_total(swapped.quote.total);
    // The last one comes off.
    browser.click("#line-5 .missing");
    browser.click("form[action$='/remove'] button");
    browser.wait_for("taken off");
    shows_total(now().quote.total);
    // An inch longer, for nothing.
    browser.click("#length button[aria-label='an inch longer']");
    browser.wait_for("25\u{a0}in\u{a0}·\u{a0}64\u{a0}cm");
    shows_total(now().quote.total);

    browser.run("scrollTo(0, document.querySelector('#line-0').offsetTop)");
    let before = browser.run("return Math.round(scrollY)");
    for part in ["#base", "#line-0", "#line-1", "#line-2", "#line-3", "#line-4"] {
        browser.click(&format!("{part} .tick:not(.done)"));
        browser.wait(&format!("return document.querySelector('{part} .tick.done') !== null"));
        if part == "#line-0" {
            look(&browser, "ticket-half");
        }
    }
    assert_ne!(before, 0, "the lines are below the picture");
    assert_ne!(browser.run("return Math.round(scrollY)"), 0, "ticking does not jump to the top");
    assert_eq!(now().state, State::Checked);
    browser.wait_for("Tell the guest of the cautions");
    browser.click("#told button[name=told]");
    confirm_all(&browser, &now());
    browser.wait("return document.querySelectorAll('.pay button:disabled').length === 0");
    browser.run("document.querySelector('#till').scrollIntoView()");
    look(&browser, "ticket-ready");
    browser.click(".pay button[value=cash]");
    browser.wait_for("in cash");
    let paid = now();
    assert_eq!((paid.state, paid.charged), (State::RungUp, Some(paid.quote.total)));
    look(&browser, "ticket-paid");
    browser.click("#till button.main");
    browser.wait_for("and handed over");

    browser.open(&format!("{url}/trays"));
    browser.wait_for("Bases");
    look(&browser, "trays");
    browser.open(&format!("{url}/trays/cautions"));
    browser.wait_for("who can wear it?");
    assert_eq!(browser.run("return document.querySelectorAll('[data-prints]:not([hidden])').length"), 1);
    look(&browser, "cautions");
    browser.open(&format!("{url}/trays"));
    browser.click(".cell a");
    browser.wait_for("How many lie in the compartment");
    look(&browser, "part");
    browser.click("button.grave");
    browser.wait("return document.querySelector('.big').textContent === '0'");
    browser.open(&format!("{url}/kiosks"));
    browser.click("button.main");
    browser.wait_for("Type this on the tablet");
    look(&browser, "kiosks");
    browser.open(&format!("{url}/tickets"));
    look(&browser, "tickets-later");
    browser.open(&format!("{url}/show"));
    look(&browser, "show");
    browser.click("a.button.grave");
    browser.wait_for("Close show 1?");
    look(&browser, "show-close");
    browser.click("button.grave");
    browser.wait_for("Close-out of show 1");
    look(&browser, "close-out");

    // A broken catalogue shows on every page, by itself.
    fs::write(table.catalog_file("bases.ron"), "[ Necklace(id: \"x\" ]").expect("an edit");
    browser.open(&format!("{url}/trays"));
    browser.wait_for("Mistakes in the catalogue");
    look(&browser, "trays-broken");

    // Apart from the wrong PIN, nothing was refused: no file missing, nothing against the page's own policy.
    let complaints: Vec<String> = browser
        .complaints()
        .into_iter()
        .filter(|words| !words.contains("/sign-in") || !words.contains("403"))
        .collect();
    assert_eq!(complaints, Vec::<String>::new());
}

#[test]
fn every_step_works_without_script() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let kiosk = table.kiosk();
    let sent = kiosk.ticket(7, &[&kiosk.fitting()[0].id], Wearer::Under3);
    kiosk.deliver(&sent, true);
    browser.resize(PHONE.0, PHONE.1);
    browser.without_script();
    browser.open(&format!("{}/setup", table.desk.url()));
    browser.fill("input[name=pin]", PIN);
    browser.fill("input[name=again]", PIN);
    browser.click("button.main");
    browser.click("a.ticket");
    browser.click("#length button.step[value]:not([disabled])");
    browser.click("#base .tick:not(.done)");
    browser.click("#base .tick.done");
    browser.click("#base .tick:not(.done)");
    browser.click("#line-0 .tick:not(.done)");
    browser.click("#told button[name=told][value='1']");
    let id = sent.id;
    let now = || table.desk.with_ledger(move |ledger| ledger.ticket(id)).expect("open").expect("the ticket");
    confirm_all(&browser, &now());
    browser.click(".pay button[value=card]:not([disabled])");
    browser.click("#till button.main");
    browser.wait_for("and handed over");
    let ticket = now();
    assert_eq!((ticket.state, ticket.charged), (State::HandedOver, Some(sent.quote.total)));
    assert!(
        (ticket.piece.length.expect("a length").inches() - 23.0).abs() < 0.01,
        "the first button is an inch shorter"
    );
}
