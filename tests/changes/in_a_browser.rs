//! What the page's script makes of changes, in a real browser.

use std::{env, thread, time::Duration};

use chatelaine::{craft::Wearer, ledger::Part};
use jiff::Timestamp;

use crate::{
    driver::Browser,
    kit::{PIN, Table, agent},
    on,
};

fn browser() -> Option<Browser> {
    let browser = Browser::start(agent());
    if browser.is_none() {
        assert!(env::var_os("CI").is_none(), "chromium and chromedriver are needed on a build server");
        println!("not run: chromium and chromedriver are not installed");
    }
    browser
}

/// A queue that is longer than its page: what comes to its end has no card, and is told all the same; a card that moves up
/// where somebody was served is nothing new.
#[test]
fn what_comes_to_the_end_of_a_long_queue_is_told() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let kiosk = table.kiosk();
    // As many as there are chains of all sorts do not suffice for so many guests; what lies there counts for nothing here.
    let deliver = |sequence| {
        let sent = kiosk.ticket(sequence, &[], Wearer::From13);
        kiosk.deliver(&sent, false);
        sent.id
    };
    let first = deliver(0);
    (1..44).for_each(|sequence| {
        deliver(sequence);
    });
    browser.resize(360, 740);
    browser.open(&format!("{}/setup", table.desk.url()));
    browser.fill("input[name=pin]", PIN);
    browser.fill("input[name=again]", PIN);
    browser.click("button.main");
    browser.wait("return document.querySelectorAll('[data-key=waiting] a.ticket').length === 40");
    let says = |words: &str| browser.wait(&format!("return document.querySelector('#live').textContent === '{words}'"));
    let wait_for = |tally: u32| {
        browser.wait(&format!("return document.querySelector('[data-key=waiting] .tally').textContent === '{tally}'"));
    };
    wait_for(44);
    deliver(44);
    says("New tickets at the end; 45 are waiting");
    on(&table, move |ledger| ledger.let_go(first, Timestamp::now()));
    wait_for(44);
    assert_eq!(browser.run("return document.querySelectorAll('[data-key=waiting] a.ticket').length"), 40);
    says("New tickets at the end; 45 are waiting");
    deliver(45);
    deliver(46);
    says("New tickets at the end; 46 are waiting");
}

#[test]
fn after_twenty_arrivals_a_browsers_page_is_as_a_fresh_one() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let kiosk = table.kiosk();
    browser.resize(360, 740);
    browser.open(&format!("{}/setup", table.desk.url()));
    browser.fill("input[name=pin]", PIN);
    browser.fill("input[name=again]", PIN);
    browser.click("button.main");
    browser.wait_for("Nobody waits");
    browser.run(
        "window.answers = [];
         const theirs = window.fetch;
         window.fetch = async (address, options) => {
           const answer = await theirs(address, options);
           const kind = answer.status === 204 ? 'nothing' : (await answer.clone().text()).includes('<footer') ? 'all' : 'changes';
           if (String(address) === location.href) window.answers.push(kind);
           return answer;
         }",
    );
    let mut last = None;
    for sequence in 0..20 {
        let sent = kiosk.ticket(sequence, &[&kiosk.fitting()[usize::from(sequence) % 5].id], Wearer::From13);
        kiosk.deliver(&sent, false);
        if sequence % 5 == 4 {
            let id = sent.id;
            on(&table, move |ledger| ledger.let_go(id, Timestamp::now()));
        }
        last = Some(sent.id);
        thread::sleep(Duration::from_millis(120));
    }
    let done = format!("section[aria-label=Done] a[href$=\"{}\"]", last.expect("one"));
    browser.wait(&format!("return document.querySelector('{done}') !== null"));
    let answers = browser.run("return window.answers");
    let kinds: Vec<&str> = answers.as_array().expect("answers").iter().filter_map(|one| one.as_str()).collect();
    assert!(kinds.iter().filter(|kind| **kind == "changes").count() >= 4 && !kinds.contains(&"all"), "{kinds:?}");
    let shown = "const main = document.getElementById('main');
         return [main.textContent, main.querySelectorAll('*').length, [...main.querySelectorAll('a')].map((one) => one.href)]";
    let open = browser.run(shown);
    browser.run("location.reload()");
    browser.wait("return document.readyState === 'complete' && window.answers === undefined");
    assert_eq!(open, browser.run(shown));
    // A form's own answer is a whole page, and what follows it are changes again.
    let sent = kiosk.ticket(30, &[&kiosk.fitting()[0].id], Wearer::From13);
    kiosk.deliver(&sent, false);
    browser.open(&format!("{}/tickets/{}", table.desk.url(), sent.id));
    browser.click("#line-0 .tick:not(.done)");
    browser.wait("return document.querySelector('#line-0 .tick.done') !== null");
    let id = sent.id;
    on(&table, move |ledger| ledger.tick(id, Part::Base, true, true, Timestamp::now()));
    browser.wait("return document.querySelector('#base .tick.done') !== null");
    let open = browser.run(shown);
    browser.open(&format!("{}/tickets/{}", table.desk.url(), sent.id));
    assert_eq!(open, browser.run(shown));
}
