//! The desk's pages in another engine than the one in which they were made.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use std::env;

use chatelaine::craft::Wearer;
use serde_json::json;

#[path = "browser/axe.rs"]
mod axe;
#[path = "desk/kit.rs"]
#[expect(dead_code, reason = "the desk's own tests need more of it")]
mod kit;
#[path = "firefox/marionette.rs"]
mod marionette;
#[path = "desk/seller.rs"]
#[expect(dead_code, reason = "the desk's own tests need more of it")]
mod seller;
mod support;

use kit::Table;
use marionette::Firefox;
use seller::Seller;

/// The pages there are, once a piece was sent and a bill was begun.
fn pages(table: &Table, seller: &Seller, ticket: &str) -> Vec<String> {
    let begun = seller.post(&format!("/tickets/{ticket}/bill"), &[]);
    let part = &table.catalog().drops[0].id;
    let mut pages: Vec<String> = [
        "/tickets",
        "/new",
        "/sales",
        "/trays",
        "/trays/cautions",
        "/show",
        "/show/about",
        "/show/close",
        "/practice",
        "/kiosks",
        "/staff",
        "/pin",
        "/sign-in",
        "/nowhere",
    ]
    .map(str::to_owned)
    .into();
    pages.extend([
        format!("/tickets/{ticket}"),
        format!("/tickets/{ticket}/missing/0"),
        begun.location,
        format!("/parts/{part}"),
    ]);
    pages
}

#[test]
fn every_page_works_in_firefox_and_satisfies_the_judge() {
    let Some(mut firefox) = Firefox::start() else {
        assert!(env::var_os("CI").is_none(), "Firefox is needed on a build server");
        println!("not run: Firefox is not installed");
        return;
    };
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let parts = kiosk.fitting();
    let sent = kiosk.ticket(7, &[&parts[0].id, &parts[1].id], Wearer::From3To5);
    kiosk.deliver(&sent, true);
    let (url, ticket) = (table.desk.url(), sent.id.to_string());
    let pages = pages(&table, &seller, &ticket);

    firefox.open(&format!("{url}/sign-in"));
    for one in seller.cookie.split("; ") {
        let (name, value) = one.split_once('=').expect("a cookie");
        firefox.command("WebDriver:AddCookie", &json!({"cookie": {"name": name, "value": value, "path": "/"}}));
    }
    let mut objections = Vec::new();
    // Firefox makes no window narrower than this.
    for (width, height) in [(500, 800), (1280, 900)] {
        firefox.command("WebDriver:SetWindowRect", &json!({"width": width, "height": height}));
        for page in &pages {
            firefox.open(&format!("{url}{page}"));
            firefox.wait("return document.fonts.status === 'loaded' && document.getElementById('main') !== null");
            let wide =
                firefox.run("return document.documentElement.scrollWidth - document.documentElement.clientWidth");
            if wide != 0 {
                objections.push(format!("{page} at {width}: {wide} px too wide"));
            }
            if let Some(axe) = axe::script() {
                firefox.run(&format!("{axe}; window.axe = window.axe ?? axe; return true"));
                let found = firefox.run_to_its_end(axe::JUDGE, &axe::options());
                if found != json!([]) {
                    objections.push(format!("{page} at {width}: {found}"));
                }
            }
        }
    }
    assert!(objections.is_empty(), "{objections:#?}");

    // A tick is entered in place, and a beat of the desk reaches the page.
    firefox.open(&format!("{url}/tickets/{ticket}"));
    firefox.run("document.querySelector('#base button[name=on][value=\"1\"]').click(); return true");
    firefox.wait("return document.querySelector('#base button[name=on][value=\"0\"]') !== null");
    assert_eq!(firefox.run("return location.pathname"), json!(format!("/tickets/{ticket}")));
    firefox.open(&format!("{url}/tickets"));
    let later = kiosk.ticket(8, &[&parts[0].id], Wearer::From13);
    kiosk.deliver(&later, true);
    firefox.wait(&format!("return document.body.innerText.includes('{}')", later.number));
}
