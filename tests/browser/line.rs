//! Guests who wait for a seat, as helpers call them and as the board shows it; and the paper for the table.

use chatelaine::waiting::Step;

use super::*;

/// A phone of 360 px is 65 mm wide or more, so a pixel is 0.18 mm at least. From memory.
const MM_OF_A_PIXEL: f64 = 0.18;
/// What somebody with half the usual sight reads from four metres: a figure of ten minutes of arc. Source: ISO 8596, by which
/// usual sight reads five (from memory).
const READ_AT_FOUR_METRES_MM: f64 = 11.6;
/// Figures of the board's typeface are so much of their size high.
const FIGURE: f64 = 0.68;

fn steps(table: &Table, form: &str, steps: &[Step]) {
    let (form, steps) = (form.to_owned(), steps.to_vec());
    let done = table.desk.with_ledger(move |ledger| ledger.take_steps(&form, &steps, jiff::Timestamp::now()));
    done.expect("a ledger").expect("steps");
}

#[test]
fn the_line_and_the_board_on_every_screen() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let url = table.desk.url();
    sizes::set_up(&browser, &table);
    browser.open(&format!("{url}/waiting"));
    look(&browser, "waiting-seats");
    browser.fill("#seats", "3");
    browser.click("button[value=seats]");
    browser.wait_for("0 of 3 seats taken");
    for n in 1..=3 {
        browser.click("button[value=sit_down]");
        browser.wait_for(&format!("{n} of 3 seats taken"));
    }
    for n in 1..=4 {
        browser.click("button[value=take]");
        browser.wait_for(&format!("Number {n} is given"));
    }
    browser.click("button[value='seat_free,call:1']");
    browser.wait_for("Has not come");
    browser.click("button[value='not_come:1']");
    browser.wait_for("Called and not come");
    browser.click("button[value='call:2']");
    browser.wait_for("Is here");
    look(&browser, "waiting");
    sizes::is_whole_at_200_percent(&browser, "waiting");
    browser.open(&format!("{url}/board"));
    look(&browser, "board-one");
    is_read_from_afar(&browser, PHONE);
    is_read_from_afar(&browser, (740, 360));
    // It renews itself, without anything of it being touched.
    browser.run("window.same = true");
    steps(
        &table,
        "more",
        &[Step::Seats(9), Step::Call(3), Step::Call(4), Step::Take, Step::Call(5), Step::Take, Step::Call(6)],
    );
    browser.wait("return document.querySelectorAll('.number').length === 5");
    assert_eq!(browser.run("return window.same"), true, "the page is still the same");
    steps(&table, "yet more", &[Step::Take, Step::Call(7)]);
    browser.wait("return document.querySelectorAll('.number').length === 6");
    look(&browser, "board-six");
    is_read_from_afar(&browser, PHONE);
    is_read_from_afar(&browser, (740, 360));
    steps(&table, "hundreds", &vec![Step::Take; 120]);
    steps(
        &table,
        "calls",
        &[
            Step::Seats(40),
            Step::Call(101),
            Step::Call(102),
            Step::Call(103),
            Step::Call(104),
            Step::Call(105),
            Step::Call(106),
        ],
    );
    browser.wait("return document.querySelector('.number').textContent === '106'");
    look(&browser, "board-hundreds");
    is_read_from_afar(&browser, PHONE);
    // What stands there when the desk is gone is not taken for true.
    drop(table);
    for _ in 0..60 {
        if browser.run("return !document.getElementById('silent').hidden") == true {
            keep_picture(&browser, "board-silent");
            return;
        }
        std::thread::sleep(std::time::Duration::from_secs(1));
    }
    panic!("the board does not say that the desk is gone");
}

/// Every number on the board is whole on the screen and large enough.
fn is_read_from_afar(browser: &Browser, (width, height): (u32, u32)) {
    browser.resize(width, height);
    browser.wait("return document.fonts.status === 'loaded'");
    let sizes = browser.run(
        "return [...document.querySelectorAll('.number')].map((one) => {
           const box = one.getBoundingClientRect();
           const whole = box.left >= 0 && box.right <= innerWidth + 0.5 && box.top >= 0 && box.bottom <= innerHeight + 0.5;
           return whole ? parseFloat(getComputedStyle(one).fontSize) : 0;
         })",
    );
    let sizes: Vec<f64> = serde_json::from_value(sizes).expect("sizes");
    let smallest = sizes.iter().copied().fold(f64::INFINITY, f64::min) * FIGURE * MM_OF_A_PIXEL;
    println!("{} numbers at {width} × {height}: figures of {smallest:.1} mm", sizes.len());
    assert!(smallest >= READ_AT_FOUR_METRES_MM, "{width} × {height}: {smallest} mm, {sizes:?}");
    browser.resize(PHONE.0, PHONE.1);
}

#[test]
fn the_paper_for_the_table_is_asked_for_on_every_screen() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let url = table.desk.url();
    sizes::set_up(&browser, &table);
    browser.open(&format!("{url}/table/paper"));
    look(&browser, "paper-for-the-table");
    browser.click("button[formaction='/table/paper/printed']");
    browser.wait_for("All marks are as they were printed last.");
    look(&browser, "paper-printed");
    browser.open(&format!("{url}/put-back"));
    browser.click("#at-B3 a");
    browser.wait_for("belongs in B3");
    look(&browser, "put-back");
    browser.click("footer button[name=language][value=de]");
    browser.wait("return document.documentElement.lang === 'de'");
    browser.open(&format!("{url}/table/paper"));
    look(&browser, "paper-for-the-table-de");
    sizes::is_whole_at_200_percent(&browser, "paper-for-the-table-de");
    browser.open(&format!("{url}/waiting"));
    look(&browser, "waiting-de");
}
