//! The pages in languages with long words, with large letters, between a phone's width and a laptop's, and in the reader's own
//! colours.

use serde_json::{Value, json};

use super::*;

/// The seller with a PIN, signed in.
pub fn set_up(browser: &Browser, table: &Table) {
    browser.open(&format!("{}/setup", table.desk.url()));
    browser.fill("#pin", PIN);
    browser.fill("#again", PIN);
    browser.click("button.main");
    browser.wait("return location.pathname === '/tickets'");
}

fn choose(browser: &Browser, lang: &str) {
    browser.click(&format!("footer button[name=language][value={lang}]"));
    browser.wait(&format!("return document.documentElement.lang === '{lang}'"));
}

/// Letters of twice the size, as a reader may want them. Source: WCAG 2.2, success criterion 1.4.4.
pub fn is_whole_at_200_percent(browser: &Browser, name: &str) {
    browser.run("document.documentElement.style.fontSize = '200%'");
    browser.wait("return document.fonts.status === 'loaded'");
    assert_eq!(sticks_out(browser), json!([]), "{name} with letters of twice the size");
    let cut = browser.run(
        "return [...document.querySelectorAll('main *, footer *')]
           .filter((one) => one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).overflowX !== 'visible')
           .filter((one) => !one.closest('.unseen') && !one.matches('input, select'))
           .map((one) => one.outerHTML.slice(0, 120))",
    );
    assert_eq!(cut, json!([]), "{name} with letters of twice the size");
    keep_picture(browser, &format!("{}-large", name.replace('/', "-")));
}

#[test]
fn the_sellers_way_in_is_whole_in_every_language_and_with_large_letters() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let url = table.desk.url();
    browser.resize(PHONE.0, PHONE.1);
    browser.open(&format!("{url}/setup"));
    for lang in ["en", "fr", "es", "de"] {
        choose(&browser, lang);
        look(&browser, &format!("setup-{lang}"));
        is_whole_at_200_percent(&browser, &format!("setup-{lang}"));
    }
    set_up(&browser, &table);
    let part = table.catalog().drops[0].id.clone();
    for path in ["kiosks", "staff", "pin", "trays", "trays/cautions", "nowhere"] {
        browser.open(&format!("{url}/{path}"));
        look(&browser, &format!("{}-de", path.replace('/', "-")));
        is_whole_at_200_percent(&browser, &format!("{}-de", path.replace('/', "-")));
    }
    browser.open(&format!("{url}/parts/{part}"));
    is_whole_at_200_percent(&browser, "part-de");
    browser.open(&format!("{url}/kiosks"));
    browser.click("footer form[action='/sign-out'] button");
    browser.wait_for("Die Kasse der Verkäuferin");
    look(&browser, "sign-in-de");
    is_whole_at_200_percent(&browser, "sign-in-de");
}

/// Between a phone and a laptop a table of four wearers is as wide as its longest words.
#[test]
fn the_card_of_cautions_fits_at_every_width() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    set_up(&browser, &table);
    for lang in ["de", "fr", "es", "en"] {
        browser.open(&format!("{}/trays/cautions?lang={lang}", table.desk.url()));
        browser.wait("return document.fonts.status === 'loaded'");
        for width in [360, 480, 639, 641, 706, 750, 804, 895, 897, 960, 1100] {
            browser.resize(width, 800);
            assert_eq!(sticks_out(&browser), json!([]), "{lang} at {width} px");
        }
    }
}

/// In the reader's own colours no ground is painted, so what is chosen has to be told in another way. Source: CSS Color
/// Adjustment Module Level 1, section 3.1 (from memory).
#[test]
fn in_the_readers_own_colours_nothing_lies_about_its_state() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let url = table.desk.url();
    set_up(&browser, &table);
    browser.open(&format!("{url}/staff"));
    browser.fill("#name", "Mia");
    browser.click("form.stack button.main");
    browser.wait_for("The PIN of Mia");
    let forced = json!({"features": [{"name": "forced-colors", "value": "active"}]});
    let body = json!({"cmd": "Emulation.setEmulatedMedia", "params": forced});
    browser.command("/goog/cdp/execute", &body).expect("other colours");
    browser.open(&format!("{url}/kiosks"));
    assert_eq!(browser.run("return matchMedia('(forced-colors: active)').matches"), true);
    let style = |css: &str, what: &str| -> Value {
        browser.run(&format!("return getComputedStyle(document.querySelector({})).{what}", Value::from(css)))
    };
    assert_ne!(
        style("nav a[aria-current]", "borderBottomColor"),
        style("nav a:not([aria-current])", "borderBottomColor")
    );
    assert_eq!(style("nav a:not([aria-current])", "borderBottomColor"), style("body", "backgroundColor"));
    let pressed = |value: bool| format!("footer button[aria-pressed={value}]");
    assert_ne!(style(&pressed(true), "backgroundColor"), style(&pressed(false), "backgroundColor"));
    browser.click("footer form[action='/sign-out'] button");
    browser.wait_for("Who are you?");
    let pill = |is: &str| format!(".who input{is} + span");
    assert_ne!(style(&pill(":checked"), "backgroundColor"), style(&pill(":not(:checked)"), "backgroundColor"));
    keep_picture(&browser, "sign-in-forced");
}
