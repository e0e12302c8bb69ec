//! A tray of sixteen compartments by one photo, on a phone, with every touch counted; corners and strokes by finger; and the
//! same without script.

use std::{
    cell::Cell,
    path::PathBuf,
    thread,
    time::{Duration, Instant},
};

use super::{own_table::Thumb, tray_scene::sixteen, *};

/// Touches that one compartment may take once it is cut out.
const MOST_OF_ONE: usize = 6;
/// Taking the photo: the field, the camera's button, and "use it".
const OF_A_CAMERA: usize = 3;

/// The photo as a file that a browser can choose.
fn photo_file(table: &Table) -> PathBuf {
    let path = table.dir.path().join("tray.jpg");
    fs::write(&path, sixteen()).expect("the photo");
    path
}

/// A table with an empty tray A, and a seller who is signed in.
fn begun(browser: &Browser, rows: &str, columns: &str) -> Table {
    let table = Table::empty();
    browser.resize(PHONE.0, PHONE.1);
    browser.open(&format!("{}/setup", table.desk.url()));
    browser.fill("input[name=pin]", PIN);
    browser.fill("input[name=again]", PIN);
    browser.click("button.main");
    browser.wait("return location.pathname === '/table'");
    browser.open(&format!("{}/table/trays", table.desk.url()));
    browser.fill("#rows", rows);
    browser.fill("#columns", columns);
    browser.click("form[action='/table/trays'] button.main");
    browser.wait("return location.pathname === '/table/at/A1'");
    browser.open(&format!("{}/table", table.desk.url()));
    table
}

fn at_home(browser: &Browser, home: &str) {
    browser.wait(&format!("return document.querySelector('.priced [name=home]')?.value === '{home}'"));
    // A hand looks first; a touch that comes at once where another button has come to lie is not taken.
    thread::sleep(Duration::from_millis(700));
}

#[test]
#[allow(clippy::too_many_lines, reason = "one story, in the order in which it happens")]
fn a_tray_of_sixteen_is_on_the_table_with_few_touches() {
    let Some(browser) = browser() else { return };
    let table = begun(&browser, "4", "4");
    let photo = photo_file(&table);
    let thumb = Thumb { browser: &browser, touches: Cell::new(0) };
    let started = Instant::now();
    thumb.touches("a[href='/table/tray/A/photo']");
    browser.wait("return document.querySelector('#taken') !== null");
    look(&browser, "tray-photo");
    browser.choose_file("#taken", &photo);
    thumb.touches.set(thumb.touches.get() + OF_A_CAMERA);
    browser.wait("return document.querySelector('.tray-corners') !== null");
    look(&browser, "tray-corners");
    // A corner goes along with the finger, and the numbers with it.
    let x = || browser.run("return Number(document.querySelector('#x0').value)").as_f64().unwrap_or_default();
    let before = x();
    browser.drag(".tray-corners", (0.2, 0.25), (0.3, 0.25));
    assert!((x() - before - 10.0).abs() < 1.5, "{before} became {}", x());
    keep_picture(&browser, "tray-corners-dragged-360");
    browser.drag(".tray-corners", (0.3, 0.25), (0.2, 0.25));
    assert!((x() - before).abs() < 0.5, "{before} became {}", x());
    thumb.types("#width", "240");
    thumb.touches("form[data-stands] button.main");
    browser.wait("return location.pathname.endsWith('/pieces')");
    look(&browser, "tray-pieces");
    let counted = thumb.touches.get();

    // One is mended by a finger, which is not needed and not counted.
    browser.click("#at-A2 a");
    browser.wait("return document.querySelector('.strokes') !== null");
    browser.click("[data-stroke=drop]");
    browser.drag(".strokes", (0.1, 0.75), (0.9, 0.75));
    assert_eq!(browser.run("return JSON.parse(document.querySelector('[name=strokes]').value).length"), 1);
    look(&browser, "tray-mend");
    browser.click("[data-stroke=back]");
    assert_eq!(browser.run("return document.querySelector('[name=strokes]').value"), "[]");
    browser.click("[data-stroke=drop]");
    browser.drag(".strokes", (0.1, 0.8), (0.9, 0.8));
    browser.click("[data-strokes-form] button.main");
    browser.wait("return document.querySelector('polyline.drop') !== null && location.pathname.endsWith('/A2')");
    keep_picture(&browser, "tray-mended-360");
    browser.click("button[name=shown][value=tile]");
    browser.wait("return location.pathname.endsWith('/pieces')");
    browser.wait("return document.querySelector('#at-A2').innerText.includes('as a tile')");

    thumb.touches.set(counted);
    thumb.touches("a.button.main");
    for n in 1..=16 {
        at_home(&browser, &format!("A{n}"));
        if n == 3 {
            look(&browser, "tray-prices");
        }
        let before = thumb.touches.get();
        thumb.touches("[data-key='digit-9']");
        match n {
            1 => thumb.touches(".prices button[value='4.00']"),
            9 => thumb.touches(".prices button[value='6.00']"),
            _ => thumb.touches(".prices button.main"),
        }
        assert!(thumb.touches.get() - before <= MOST_OF_ONE);
    }
    browser.wait_for("All 16 have a price");
    look(&browser, "tray-all-priced");
    thumb.touches("form[action$='/lay'] button.main");
    thumb.is_at("/table");
    browser.wait_for("16 of 16 compartments");
    look(&browser, "table-by-photo");
    println!("{} touches for a tray of 16 by one photo, {:?} for the machine", thumb.touches.get(), started.elapsed());
    assert!(thumb.touches.get() <= 16 * MOST_OF_ONE, "{} touches", thumb.touches.get());
    let catalog = table.catalog();
    assert_eq!(catalog.drops.len(), 16);
    assert!(catalog.drops.iter().all(|kind| kind.stock == 9 && kind.picture.starts_with("tray-")));
    let prices: Vec<String> = catalog.drops.iter().map(|kind| kind.price.to_string()).collect();
    assert_eq!((prices[0].as_str(), prices[7].as_str(), prices[15].as_str()), ("4.00", "4.00", "6.00"));
    browser.click(".own-undo button");
    browser.wait_for("0 of 16 compartments");
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// Four compartments of four pieces each, without script.
#[test]
fn a_tray_by_one_photo_needs_no_script() {
    let Some(browser) = browser() else { return };
    let table = begun(&browser, "2", "2");
    let photo = photo_file(&table);
    browser.without_script();
    browser.open(&format!("{}/table/tray/A/photo", table.desk.url()));
    browser.choose_file("#chosen", &photo);
    browser.click("form button.main");
    browser.fill("#width", "240");
    browser.click("form[data-stands] button.main");
    browser.click("#at-A3 a");
    browser.click("button[name=shown][value=whole]");
    browser.click("a.button.main");
    for n in 1..=4 {
        browser.click(&format!(".priced[data-key=A{n}] #count"));
        browser.fill("#count", "3");
        browser.fill("#typed", "5.50");
        browser.click(".priced .row button");
    }
    browser.click("form[action$='/lay'] button.main");
    browser.wait_for("4 of 4 compartments");
    let catalog = table.catalog();
    assert_eq!(catalog.drops.iter().map(|kind| kind.price.to_string()).collect::<Vec<_>>(), ["5.50"; 4]);
    assert!(catalog.drops[2].picture.ends_with(".jpg"), "the whole compartment");
}

#[test]
fn the_pages_of_a_trays_photo_are_whole_in_other_languages_and_with_large_letters() {
    let Some(browser) = browser() else { return };
    let table = begun(&browser, "4", "4");
    let photo = photo_file(&table);
    browser.open(&format!("{}/table/tray/A/photo", table.desk.url()));
    browser.choose_file("#chosen", &photo);
    browser.wait("return document.querySelector('.tray-corners') !== null");
    let at = browser.run("return location.pathname").as_str().unwrap_or_default().to_owned();
    browser.fill("#width", "240");
    browser.click("form[data-stands] button.main");
    browser.wait("return location.pathname.endsWith('/pieces')");
    for lang in ["de", "fr", "es"] {
        browser.click(&format!("footer button[name=language][value={lang}]"));
        browser.wait(&format!("return document.documentElement.lang === '{lang}'"));
        for (page, name) in [
            ("/table/tray/A/photo".to_owned(), "tray-photo"),
            (at.clone(), "tray-corners"),
            (format!("{at}/pieces"), "tray-pieces"),
            (format!("{at}/pieces/A2"), "tray-mend"),
            (format!("{at}/prices?at=A2"), "tray-prices"),
        ] {
            browser.open(&format!("{}{page}", table.desk.url()));
            look(&browser, &format!("{name}-{lang}"));
            if lang == "de" {
                sizes::is_whole_at_200_percent(&browser, &format!("{name}-{lang}"));
            }
        }
    }
}
