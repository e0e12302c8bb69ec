//! What a first visit weighs, and how long a tick takes, where the air is thin.

use std::time::Instant;

use serde_json::json;

use super::*;

/// A first visit's bytes with twelve tickets waiting, in all.
const FIRST_VISIT_BYTES: f64 = 400_000.0;
/// Bytes in a second of a phone at the edge of a network: 400 kbit/s.
const THIN_BYTES: u32 = 50_000;
/// What a tick may take there, in seconds.
const TICK_SECONDS: f64 = 1.2;

#[test]
fn a_first_visit_is_light_and_a_tick_is_soon_seen() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let kiosk = table.kiosk();
    let ids: Vec<String> = kiosk.fitting().iter().map(|kind| kind.id.clone()).collect();
    for sequence in 0..12 {
        let drops: Vec<&str> = ids.iter().skip(usize::from(sequence) * 3).take(5).map(String::as_str).collect();
        kiosk.deliver(&kiosk.ticket(sequence, &drops, Wearer::From13), true);
    }
    let url = table.desk.url();
    browser.resize(PHONE.0, PHONE.1);
    browser.open(&format!("{url}/setup"));
    browser.fill("input[name=pin]", PIN);
    browser.fill("input[name=again]", PIN);
    browser.click("button.main");
    browser.wait("return document.querySelectorAll('a.ticket').length === 12");
    // Everything is fetched anew, to the last picture.
    let devtools = |command: &str, parameters: serde_json::Value| {
        browser.command("/goog/cdp/execute", &json!({"cmd": command, "params": parameters})).expect("done")
    };
    devtools("Network.clearBrowserCache", json!({}));
    browser.open(&format!("{url}/tickets"));
    browser.run("scrollTo(0, document.body.scrollHeight)");
    browser.wait("return document.fonts.status === 'loaded' && [...document.images].every((one) => one.complete)");
    let fetched = browser.run(
        "const all = [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')];
         return all.filter((one) => !one.name.includes('/events')).map((one) => [one.name, one.transferSize, one.decodedBodySize]);",
    );
    let all = fetched.as_array().expect("what was fetched");
    let size = |part: usize| all.iter().filter_map(|one| one[part].as_f64()).sum::<f64>();
    println!("a first visit with 12 tickets: {} answers, {:.0} bytes, {:.0} unpacked", all.len(), size(1), size(2));
    assert!(all.len() > 14, "the portraits and typefaces are among them: {fetched}");
    assert!(size(1) > 20_000.0 && size(1) < FIRST_VISIT_BYTES, "{fetched}");
    assert!(!fetched.to_string().contains(".ttf"), "no page of these languages needs a whole typeface: {fetched}");

    browser.click("a.ticket");
    browser.wait_for("Tick off");
    devtools("Network.enable", json!({}));
    devtools(
        "Network.emulateNetworkConditions",
        json!({"offline": false, "latency": 100, "downloadThroughput": THIN_BYTES, "uploadThroughput": THIN_BYTES}),
    );
    let mut slowest: f64 = 0.0;
    for part in ["#base", "#line-0", "#line-1", "#line-2"] {
        let began = Instant::now();
        browser.click(&format!("{part} .tick:not(.done)"));
        browser.wait(&format!("return document.querySelector('{part} .tick.done') !== null"));
        slowest = slowest.max(began.elapsed().as_secs_f64());
    }
    println!("a tick at 400 kbit/s is seen after {slowest:.2} s at most");
    // No test fails by the clock alone: a busy machine is given three times as long.
    assert!(slowest < 3.0 * TICK_SECONDS, "{slowest} s");
}
