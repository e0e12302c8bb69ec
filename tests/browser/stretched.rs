//! Every page with words two fifths longer than English ones, as other languages may have them, and with letters of twice the
//! size: nothing sticks out of the screen.

use serde_json::json;

use super::{
    sizes::{is_whole_at_200_percent, set_up},
    *,
};

/// Makes every word of three letters and more two fifths longer, where it stands.
const LONGER: &str = "
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) {
      const text = texts.currentNode;
      text.data = text.data.replace(/\\p{L}{3,}/gu, (word) => word + 'ë'.repeat(Math.round(word.length * 0.4)));
    }
    return document.body.innerText.length;";

#[test]
fn every_page_has_room_for_longer_words_and_larger_letters() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let kiosk = table.kiosk();
    let fitting = kiosk.fitting();
    let ids: Vec<&str> = fitting.iter().step_by(5).take(9).map(|kind| kind.id.as_str()).collect();
    let sent = kiosk.ticket(1, &ids, Wearer::From3To5);
    kiosk.deliver(&sent, true);
    kiosk.deliver(&kiosk.ticket(2, &ids[..2], Wearer::From13), true);
    browser.resize(PHONE.0, PHONE.1);
    set_up(&browser, &table);
    let (url, ticket) = (table.desk.url(), format!("tickets/{}", sent.id));
    browser.open(&format!("{url}/{ticket}"));
    browser.click("form[action$='/bill'] button");
    browser.wait("return location.pathname.startsWith('/bills/')");
    let bill = browser.run("return location.pathname.slice(1)").as_str().expect("a bill").to_owned();
    let (missing, part) = (format!("{ticket}/missing/0"), format!("parts/{}", ids[0]));
    let pages = [
        "tickets",
        &ticket,
        &missing,
        &bill,
        "new",
        "sales",
        "show",
        "show/about",
        "show/close",
        "practice",
        "kiosks",
        "staff",
        "pin",
        "trays",
        "trays/cautions",
        &part,
    ];
    for page in pages {
        for (width, height) in [PHONE, LAPTOP] {
            browser.resize(width, height);
            browser.open(&format!("{url}/{page}"));
            browser.wait("return document.fonts.status === 'loaded'");
            let letters = browser.run("return document.body.innerText.length").as_f64().expect("a number");
            let longer = browser.run(LONGER).as_f64().expect("a number");
            // What stands in lists of choices stays as it is: the system lays it out.
            assert!(longer > letters * 1.1, "{page} has {letters} letters and then {longer}");
            assert_eq!(sticks_out(&browser), json!([]), "{page} with longer words at {width} px");
        }
        browser.resize(PHONE.0, PHONE.1);
        browser.open(&format!("{url}/{page}"));
        is_whole_at_200_percent(&browser, page);
    }
}
