//! Pages in the languages with the longest words: nothing sticks out, and everything can be touched.

use super::*;

/// Long words, and long sentences.
const LONGEST: [&str; 2] = ["de", "fr"];

#[test]
fn bills_and_shows_fit_in_the_longest_languages() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let url = table.desk.url();
    browser.resize(PHONE.0, PHONE.1);
    browser.open(&url);
    browser.fill("input[name=pin]", PIN);
    browser.click("button.main");
    browser.wait_for("Nobody waits");
    let look_at = |name: &str, page: &str| {
        for lang in LONGEST {
            browser.open(&format!("{url}{page}"));
            browser.click(&format!("button[name=language][value={lang}]"));
            browser.wait(&format!("return document.documentElement.lang === '{lang}'"));
            browser.run("document.querySelectorAll('main details').forEach((one) => one.open = true)");
            look(&browser, &format!("{name}-{lang}"));
        }
    };
    let step = std::cell::Cell::new(0);
    let bills = bill_story::pages(&table, &seller, &kiosk, |page| {
        step.set(step.get() + 1);
        look_at(&format!("bill-{}", step.get()), page);
    });
    let names = ["bill-put-right", "take-back-piece", "take-back-goods", "not-on-bill", "bill-waits", "bill-empty"];
    for (name, page) in names.iter().zip(&bills) {
        look_at(name, page);
    }
    look_at("show-untold", "/show");
    let told = [("kind", "home_party"), ("place", "Mühlgasse"), ("tax", "7"), ("fee", "45"), ("host", "Zoë")];
    let told: Vec<(&str, &str)> = told.into_iter().chain([("show", "1"), ("float", "50")]).collect();
    assert_eq!(seller.post("/show/about", &told).status, 303);
    for (name, page) in [
        ("show", "/show"),
        ("show-about", "/show/about"),
        ("show-close", "/show/close"),
        ("practice-ask", "/practice"),
        ("sales", "/sales"),
        ("sales-wrong", "/sales?sum=1.000"),
    ] {
        look_at(name, page);
    }
    assert_eq!(seller.post("/show/close", &[("show", "1"), ("counted", "1")]).location, "/shows/1");
    look_at("show-closed", "/shows/1");
    assert_eq!(seller.post("/practice/begin", &[]).status, 303);
    look_at("practice-show", "/show");
}
