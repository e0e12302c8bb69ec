//! A page that renews itself, a desk that does not answer, a session that ends: in a real browser, nothing moves under the
//! hand and nothing that was entered is lost without a word.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use std::{
    env,
    io::{BufRead, BufReader},
    process::{Child, Command, Stdio},
    thread,
    time::Duration,
};

use chatelaine::{
    catalog::read_folder, craft::Wearer, ledger::Part, link::wire::PairRequest, money::Tender, ticket::State,
};
use jiff::Timestamp;
use uuid::Uuid;

#[path = "desk/driver.rs"]
#[expect(dead_code, reason = "the walk through all pages needs more of it")]
mod driver;
#[path = "renewal/hands.rs"]
mod hands;
#[path = "desk/kit.rs"]
#[expect(dead_code, reason = "the desk's own tests need more of it")]
mod kit;
mod support;

use driver::Browser;
use hands::{DOWN, ENTER};
use kit::{Kiosk, PIN, Table, agent};

fn browser() -> Option<Browser> {
    let browser = Browser::start(agent());
    if browser.is_none() {
        assert!(env::var_os("CI").is_none(), "chromium and chromedriver are needed on a build server");
        println!("not run: chromium and chromedriver are not installed");
    }
    browser
}

/// A signed-in browser on a phone's screen, its desk and a tablet.
fn scene() -> Option<(Browser, Table, Kiosk)> {
    let browser = browser()?;
    let table = Table::new();
    let kiosk = table.kiosk();
    browser.resize(360, 740);
    set_up(&browser, &table.desk.url());
    Some((browser, table, kiosk))
}

fn set_up(browser: &Browser, url: &str) {
    browser.open(&format!("{url}/setup"));
    browser.fill("input[name=pin]", PIN);
    browser.fill("input[name=again]", PIN);
    browser.click("button.main");
    browser.wait_for("Nobody waits");
}

fn on<T: Send + 'static>(
    table: &Table,
    work: impl FnOnce(&mut chatelaine::ledger::Ledger) -> Result<T, chatelaine::ledger::LedgerError> + Send + 'static,
) -> T {
    table.desk.with_ledger(work).expect("open").unwrap_or_else(|error| panic!("{error}"))
}

/// A ticket on which only the money is missing.
fn ready(table: &Table, kiosk: &Kiosk, sequence: u16) -> Uuid {
    let sent = kiosk.ticket(sequence, &[&kiosk.fitting()[0].id], Wearer::From13);
    kiosk.deliver(&sent, true);
    let id = sent.id;
    on(table, move |ledger| {
        let now = Timestamp::now();
        ledger.tick(id, Part::Base, true, false, now)?;
        ledger.tick(id, Part::Line(0), true, false, now)?;
        ledger.set_told(id, true, now)
    });
    id
}

#[test]
fn the_focus_stays_on_what_it_was_on() {
    let Some((browser, table, kiosk)) = scene() else { return };
    let id = ready(&table, &kiosk, 0);
    browser.open(&format!("{}/tickets/{id}", table.desk.url()));
    browser.run("document.querySelector('.pay button[value=card]').focus()");
    for sequence in 1..4 {
        browser.count_renewals();
        kiosk.deliver(&kiosk.ticket(sequence, &[], Wearer::From13), true);
        // An entry more in what happened so far, so that the page is another one each time.
        on(&table, move |ledger| ledger.set_told(id, true, Timestamp::now()));
        browser.wait(&format!("return document.querySelectorAll('.past li').length === {}", 4 + sequence));
        assert!(browser.focus().ends_with("|card"), "{}", browser.focus());
    }
    browser.keys(&[ENTER]);
    browser.wait_for("by card");
    assert_eq!(on(&table, move |ledger| ledger.ticket(id)).tender, Some(Tender::Card));

    // A count that somebody else changes: + stays +, and adds one to the count as it is now.
    let part = kiosk.fitting()[1].id.clone();
    browser.open(&format!("{}/parts/{part}", table.desk.url()));
    let recount = |free: u32| {
        let part = part.clone();
        browser.count_renewals();
        on(&table, move |ledger| ledger.recount(&part, free, Timestamp::now()));
        browser.wait(&format!("return document.querySelector('.big').textContent === '{free}'"));
    };
    browser.run("document.querySelector('[aria-label=\"one more\"]').focus()");
    for free in [1, 0, 7] {
        recount(free);
        assert!(browser.focus().contains("|one more|"), "{}", browser.focus());
    }
    browser.keys(&[ENTER]);
    browser.wait("return document.querySelector('.big').textContent === '8'");
    assert!(browser.focus().contains("|one more|"), "{}", browser.focus());
    browser.run("document.querySelector('button.grave').focus()");
    recount(0);
    assert!(!browser.focus().contains("one less") && !browser.focus().contains("one more"), "{}", browser.focus());
}

#[test]
fn a_choice_that_is_gone_leaves_the_focus_to_nothing_that_acts() {
    let Some((browser, table, kiosk)) = scene() else { return };
    let sent = kiosk.ticket(0, &[&kiosk.fitting()[0].id], Wearer::From13);
    kiosk.deliver(&sent, true);
    browser.open(&format!("{}/tickets/{}/missing/0", table.desk.url(), sent.id));
    let value = |n: usize| browser.run(&format!("return document.querySelectorAll('.choice')[{n}].value"));
    let ids: Vec<String> = (0..6).map(|n| value(n).as_str().expect("an id").to_owned()).collect();
    browser.run("document.querySelectorAll('.choice')[4].focus()");
    let sell_out = |id: &str| {
        let part = id.to_owned();
        on(&table, move |ledger| ledger.recount(&part, 0, Timestamp::now()));
        browser.wait(&format!("return document.querySelector('.choice[value=\"{id}\"]') === null"));
    };
    sell_out(&ids[0]);
    sell_out(&ids[3]);
    assert!(browser.focus().ends_with(&format!("|{}", ids[4])), "{}", browser.focus());
    sell_out(&ids[4]);
    let focus = browser.focus();
    assert!(focus.starts_with("MAIN|") || focus.starts_with("BODY|"), "{focus}");
    let id = sent.id;
    browser.keys(&[ENTER]);
    thread::sleep(Duration::from_millis(300));
    assert_eq!(on(&table, move |ledger| ledger.ticket(id)).lines[0].instead_of, None, "Enter did something");
}

#[test]
fn what_lies_under_a_finger_stays_there() {
    let Some((browser, table, kiosk)) = scene() else { return };
    let send = |sequence: u16| {
        let sent = kiosk.ticket(sequence, &[], Wearer::From13);
        kiosk.deliver(&sent, true);
        browser.wait(&format!("return document.querySelector('a[href$=\"{}\"]') !== null", sent.id));
        (format!("a[href$=\"{}\"]", sent.id), sent.id)
    };
    let let_go = |id: Uuid| {
        on(&table, move |ledger| ledger.let_go(id, Timestamp::now()));
        let done = format!("section[aria-label=Done] a[href$=\"{id}\"]");
        browser.wait(&format!("return document.querySelector('{done}') !== null"));
    };
    let (first, _) = send(0);
    let place = |css: &str| {
        let top = browser.run(&format!("return document.querySelector('{css}').getBoundingClientRect().top"));
        top.as_f64().expect("a place")
    };
    let under = || {
        browser.run(
            "return document.elementFromPoint(...window.finger).closest('a, button, form, section')?.outerHTML.slice(0, 90)",
        )
    };
    let point = |css: &str| {
        browser.point_at(css);
        browser.run(&format!(
            "const box = document.querySelector('{css}').getBoundingClientRect();
             window.finger = [box.left + box.width / 2, box.top + box.height / 2]"
        ));
    };
    // Rounding loses a pixel, not more, however often the page changes.
    let stays = |css: &str, (was, lies): &(f64, serde_json::Value), when: &str| {
        let now = place(css);
        assert!((now - was).abs() <= 1.0, "{when}: from {was} to {now}");
        assert_eq!(under(), *lies, "{when}");
    };
    // On a page that is too short to scroll, at its top, ...
    point(&first);
    let before = (place(&first), under());
    let mut others = Vec::new();
    for sequence in 1..5 {
        others.push(send(sequence));
        stays(&first, &before, &format!("after {sequence} more"));
    }
    // Who came first stands first, and those that came where they can't be seen are told at the tab.
    let order = browser.run("return [...document.querySelectorAll('a.ticket')].map((one) => one.href.slice(-36))");
    let order: Vec<&str> = order.as_array().expect("cards").iter().filter_map(|one| one.as_str()).collect();
    let sent: Vec<String> = others.iter().map(|(_, id)| id.to_string()).collect();
    assert_eq!(order[1..], sent);
    assert_eq!(browser.run("return document.querySelector('.top a[aria-current]').title"), "2 new below");
    // ... below a list that grows, ...
    let (last, id) = others.pop().expect("four");
    let_go(id);
    browser.run(&format!("document.querySelector('{last}').scrollIntoView({{block: 'start'}}); scrollBy(0, -150)"));
    point(&last);
    let before = (place(&last), under());
    for sequence in 5..9 {
        send(sequence);
        stays(&last, &before, &format!("after {sequence} more"));
    }
    // ... and where something above goes away.
    let (newest, _) = send(9);
    browser.run(&format!("document.querySelector('{newest}').scrollIntoView({{block: 'center'}})"));
    point(&newest);
    let before = (place(&newest), under());
    for (_, id) in others {
        let_go(id);
        stays(&newest, &before, "after one was let go");
    }
    assert_eq!(browser.run("return location.pathname"), "/tickets");
}

#[test]
fn enter_and_arrows_do_what_they_say() {
    let Some((browser, table, kiosk)) = scene() else { return };
    let part = kiosk.fitting()[0].id.clone();
    let set = part.clone();
    on(&table, move |ledger| ledger.recount(&set, 14, Timestamp::now()));
    browser.open(&format!("{}/parts/{part}", table.desk.url()));
    browser.fill("#free", "9");
    // What somebody else does meanwhile does not throw away what is being typed.
    browser.count_renewals();
    kiosk.deliver(&kiosk.ticket(1, &[], Wearer::From13), true);
    browser.wait_for_renewal();
    assert_eq!(browser.run("return document.querySelector('#free').value"), "9");
    browser.keys(&[ENTER]);
    browser.wait("return document.querySelector('.big').textContent === '9'");
    let counted = part.clone();
    assert_eq!(on(&table, |ledger| ledger.counts())[&counted].free(), 9);

    let sent = kiosk.ticket(0, &[], Wearer::From13);
    kiosk.deliver(&sent, true);
    let id = sent.id;
    let piece = || on(&table, move |ledger| ledger.ticket(id)).piece;
    for (select, changed) in [("#who", "wearer"), ("#mm", "length")] {
        browser.open(&format!("{}/tickets/{id}", table.desk.url()));
        browser.run(&format!("document.querySelector('{select}').focus()"));
        let before = piece();
        let shown = browser.run(&format!("return document.querySelector('{select}').value"));
        let down = if changed == "wearer" { '\u{E013}' } else { DOWN };
        browser.keys(&[down, down]);
        browser.wait(&format!("return document.querySelector('{select}').value !== '{}'", shown.as_str().unwrap()));
        let chosen = browser.run(&format!("return document.querySelector('{select}').value"));
        // Another ticket comes: neither choice nor focus is lost.
        browser.count_renewals();
        kiosk.deliver(&kiosk.ticket(if changed == "wearer" { 2 } else { 3 }, &[], Wearer::From13), true);
        browser.wait_for_renewal();
        assert_eq!(piece(), before, "{changed}: nothing is sent on the way");
        assert_eq!(browser.run(&format!("return document.querySelector('{select}').value")), chosen);
        assert!(browser.focus().contains(&format!("SELECT|{}|", &select[1..])), "{}", browser.focus());
        browser.keys(&[ENTER]);
        browser.wait(&format!(
            "return document.querySelector('#{changed}').dataset.pending === undefined && window.renewals !== -1"
        ));
        for _ in 0..100 {
            if piece() != before {
                break;
            }
            thread::sleep(Duration::from_millis(50));
        }
        assert_ne!(piece(), before, "{changed}: Enter sets it");
        assert!(browser.focus().contains(&format!("SELECT|{}|", &select[1..])), "{}", browser.focus());
        assert_eq!(browser.run(&format!("return document.querySelector('{select}').value")), chosen);
    }
}

#[test]
fn a_double_touch_on_cash_charges_once_and_raises_no_alarm() {
    let Some((browser, table, kiosk)) = scene() else { return };
    for (sequence, times) in [(0, 2), (1, 3), (2, 5)] {
        let id = ready(&table, &kiosk, sequence);
        browser.open(&format!("{}/tickets/{id}", table.desk.url()));
        browser.run("document.querySelector('.pay').scrollIntoView({block: 'center'})");
        browser.touch_times(".pay button[value=cash]", times);
        browser.wait_for("in cash");
        let ticket = on(&table, move |ledger| ledger.ticket(id));
        assert_eq!((ticket.state, ticket.tender), (State::RungUp, Some(Tender::Cash)), "{times} touches");
        let history = on(&table, move |ledger| ledger.history(id));
        assert_eq!(history.iter().filter(|event| event.kind == "rung_up").count(), 1);
        assert_eq!(browser.run("return document.querySelectorAll('.trouble').length"), 0);
    }
}

#[test]
fn what_was_not_entered_waits_behind_the_sign_in_page() {
    let Some((browser, table, kiosk)) = scene() else { return };
    let sent = kiosk.ticket(0, &[&kiosk.fitting()[0].id], Wearer::From13);
    kiosk.deliver(&sent, true);
    let id = sent.id;
    browser.open(&format!("{}/tickets/{id}", table.desk.url()));
    browser.wait_for("Tick off");
    // What the delivery set off has been told by then, so that the page does not ask just when the session ends.
    thread::sleep(Duration::from_millis(800));
    // As time ends it: nobody is told.
    on(&table, |ledger| {
        let session = ledger.browsers()?[0].session.clone().expect("a session");
        ledger.use_session(&session, Timestamp::now() - jiff::SignedDuration::from_hours(13))
    });
    browser.click("#line-0 .tick");
    browser.wait_for("You were signed out before this was entered");
    browser.fill("input[name=pin]", PIN);
    browser.click("button.main");
    // The sign-in page says so as well, until it is left.
    browser.wait(&format!("return location.pathname === '/tickets/{id}'"));
    browser.wait_for("You were signed out before");
    assert!(!on(&table, move |ledger| ledger.ticket(id)).lines[0].ticked, "nothing by itself");
    browser.click("#line button");
    browser.wait("return document.querySelector('#line-0 .tick.done') !== null");
    assert!(on(&table, move |ledger| ledger.ticket(id)).lines[0].ticked);
    browser.wait("return document.querySelector('#line').hidden");
    // A page that only renews itself leads back as well.
    browser.open(&format!("{}/kiosks", table.desk.url()));
    on(&table, |ledger| ledger.end_sessions(None, Timestamp::now()));
    browser.wait("return location.pathname === '/sign-in'");
    browser.fill("input[name=pin]", PIN);
    browser.click("button.main");
    browser.wait("return location.pathname === '/kiosks'");
}

/// A desk in a process of its own, which can be made to hang.
struct OwnDesk {
    child: Child,
    url: String,
    _data: tempfile::TempDir,
}

impl OwnDesk {
    fn start() -> Self {
        let data = tempfile::tempdir().expect("a folder");
        let mut child = Command::new(env!("CARGO_BIN_EXE_chatelaine"))
            .args(["desk", "--listen", "127.0.0.1:0", "--catalog"])
            .arg(support::test_table())
            .arg("--data")
            .arg(data.path())
            .stdout(Stdio::piped())
            .spawn()
            .expect("a desk");
        let mut words = String::new();
        BufReader::new(child.stdout.as_mut().expect("its words")).read_line(&mut words).expect("a line");
        let url = words.split(' ').find(|word| word.starts_with("http://")).expect("its address").to_owned();
        Self { child, url, _data: data }
    }

    /// Pairs a tablet with a code off the Kiosks page.
    fn pair(&self, browser: &Browser) -> Kiosk {
        browser.open(&format!("{}/kiosks", self.url));
        browser.click("button.main");
        browser.wait_for("Type this on the tablet");
        let code = browser.run("return document.querySelector('.code').textContent");
        let request = PairRequest { code: code.as_str().expect("a code").to_owned(), key: None };
        let mut answer = agent().post(format!("{}/link/pair", self.url)).send_json(request).expect("an answer");
        let pairing = answer.body_mut().read_json().expect("a pairing");
        let catalog = read_folder(&support::test_table()).expect("a good catalogue").catalog;
        Kiosk { agent: agent(), pairing, catalog }
    }

    fn signal(&self, name: &str) {
        let sent = Command::new("kill").args([name, &self.child.id().to_string()]).status().expect("kill runs");
        assert!(sent.success());
    }
}

impl Drop for OwnDesk {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

#[cfg(unix)]
#[test]
fn a_desk_that_does_not_answer_is_told_and_tried_again() {
    let Some(browser) = browser() else { return };
    let desk = OwnDesk::start();
    browser.resize(360, 740);
    set_up(&browser, &desk.url);
    browser.open(&format!("{}/trays", desk.url));
    browser.click(".cell a");
    browser.wait_for("How many lie in the compartment");
    let count = || browser.run("return document.querySelector('.big').textContent");
    let before: u32 = count().as_str().expect("a count").parse().expect("a count");
    // It hangs while somebody counts: that is told, and what it means for the count.
    desk.signal("-STOP");
    browser.run("document.querySelector('[aria-label=\"one more\"]').click()");
    browser.wait_for("The desk has not answered yet");
    wait_long(&browser, "No answer from the desk since ");
    wait_long(&browser, "“one more” may not have arrived");
    desk.signal("-CONT");
    // It may have arrived all the same; so the seller is asked, with the page as it is now before them.
    wait_long(&browser, "Look whether it was done");
    browser
        .wait(&format!("return ['{before}', '{}'].includes(document.querySelector('.big').textContent)", before + 1));
    browser.click("#line button:last-child");
    browser.wait("return document.querySelector('#line').hidden");
    // A tick says the same however often it is said: it is entered by itself once the desk is back.
    let kiosk = desk.pair(&browser);
    let sent = kiosk.ticket(0, &["key-heart"], Wearer::From13);
    kiosk.deliver(&sent, true);
    browser.open(&format!("{}/tickets/{}", desk.url, sent.id));
    browser.wait_for("Tick off");
    desk.signal("-STOP");
    browser.click("#line-0 .tick");
    wait_long(&browser, "No answer from the desk since ");
    desk.signal("-CONT");
    browser.wait_long_until("return document.querySelector('#line-0 .tick.done') !== null");
    browser.wait_long_until("return document.querySelector('#line').hidden");
    // It hangs while nobody does anything.
    desk.signal("-STOP");
    wait_long(&browser, "No answer from the desk since ");
    desk.signal("-CONT");
    browser.wait_long_until("return document.querySelector('#line').hidden");
}

fn wait_long(browser: &Browser, words: &str) {
    browser.wait_long_until(&format!(
        "return document.querySelector('#line').innerText.includes({})",
        serde_json::Value::from(words)
    ));
}
