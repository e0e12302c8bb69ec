//! From an empty folder to a guest's first ticket on the maker's own table, on a phone, with every touch counted.

use std::{cell::Cell, time::Instant};

use chatelaine::ticket::Receipt;

use super::*;

/// Touches that a table of 32 compartments may take.
const MOST_TOUCHES: usize = 300;

/// A thumb on a phone's screen. Each key of the phone's own keyboard is a touch as well.
pub struct Thumb<'a> {
    pub browser: &'a Browser,
    pub touches: Cell<usize>,
}

impl Thumb<'_> {
    pub fn touches(&self, css: &str) {
        self.touches.set(self.touches.get() + 1);
        self.browser.click(css);
    }

    pub fn types(&self, css: &str, text: &str) {
        // One to bring the keyboard up.
        self.touches.set(self.touches.get() + 1 + text.chars().count());
        self.browser.fill(css, text);
    }

    fn chooses(&self, css: &str, value: &str) {
        self.touches.set(self.touches.get() + 2);
        self.browser.click(&format!("{css} option[value={value}]"));
    }

    pub fn is_at(&self, path: &str) {
        self.browser.wait(&format!("return location.pathname === '{path}' && document.readyState === 'complete'"));
    }
}

#[test]
#[allow(clippy::too_many_lines, reason = "one story, in the order in which it happens")]
fn her_own_table_of_32_compartments_takes_300_touches_at_most() {
    let Some(browser) = browser() else { return };
    let started = Instant::now();
    let table = Table::empty();
    let thumb = Thumb { browser: &browser, touches: Cell::new(0) };
    browser.resize(PHONE.0, PHONE.1);
    browser.open(&table.desk.url());
    browser.wait_for("Choose the seller’s PIN");
    thumb.types("input[name=pin]", PIN);
    thumb.types("input[name=again]", PIN);
    thumb.touches("button.main");
    thumb.is_at("/table");
    look(&browser, "table-bare");

    thumb.touches(".steps a[href='/table/facts']");
    thumb.is_at("/table/facts");
    look(&browser, "table-facts");
    thumb.types("#name", "Mill Lane");
    thumb.types("#tax", "8.5");
    thumb.touches("form[action='/table/facts'] button.main");
    thumb.is_at("/table");
    thumb.touches(".steps a[href='/table/bases']");
    thumb.is_at("/table/bases");
    look(&browser, "table-bases");
    thumb.types("#price", "14");
    thumb.chooses("#finish", "AntiqueBrass");
    thumb.touches("form[action='/table/bases'] button.main");
    browser.wait_for("14.00");
    browser.open(&format!("{}/table", table.desk.url()));
    thumb.touches(".steps a[href='/table/trays']");
    for letter in ['A', 'B'] {
        thumb.is_at("/table/trays");
        if letter == 'A' {
            look(&browser, "table-trays");
        }
        thumb.touches("form[action='/table/trays'] button.main");
        thumb.is_at(&format!("/table/at/{letter}1"));
        if letter == 'A' {
            look(&browser, "table-compartment-empty");
            browser.open(&format!("{}/table/trays", table.desk.url()));
            thumb.touches.set(thumb.touches.get() + 2);
        }
    }
    // Both trays, one compartment after the other, without leaving the page.
    browser.open(&format!("{}/table/at/A1", table.desk.url()));
    thumb.touches.set(thumb.touches.get() + 2);
    let prices = ["3.00", "3.00", "4.00", "6.00"];
    let homes: Vec<String> = "AB".chars().flat_map(|tray| (1..=16).map(move |n| format!("{tray}{n}"))).collect();
    for (i, home) in homes.iter().enumerate() {
        thumb.is_at(&format!("/table/at/{home}"));
        if home == "B1" {
            thumb.chooses("#sort", "Bead");
        }
        thumb.types("#count", "9");
        thumb.touches(&format!(".prices button[value='{}']", prices[i % prices.len()]));
    }
    // When nothing is empty any more, the last one is shown.
    browser.wait_for("is guessed");
    look(&browser, "table-compartment-told");
    let catalog = table.catalog();
    assert_eq!((catalog.drops.len(), catalog.table.name.as_str()), (32, "Mill Lane"));
    assert!(catalog.drops.iter().all(|kind| kind.stock == 9 && !kind.guessed.is_empty()));

    // A guest's first piece.
    let kiosk = table.kiosk();
    let drops: Vec<&str> = catalog.drops.iter().step_by(12).map(|kind| kind.id.as_str()).collect();
    let ticket = kiosk.ticket(0, &drops, Wearer::From13);
    assert!(matches!(kiosk.deliver(&ticket, true), Receipt::Stored { .. }));
    browser.open(&format!("{}/table", table.desk.url()));
    browser.wait_for("32 of 32 compartments");
    look(&browser, "table-laid");
    browser.open(&format!("{}/tickets", table.desk.url()));
    browser.wait_for(&ticket.number.to_string());
    println!("{} touches, {:?} for the machine", thumb.touches.get(), started.elapsed());
    assert!(thumb.touches.get() <= MOST_TOUCHES, "{} touches", thumb.touches.get());
    browser.open(&format!("{}/table/one-off", table.desk.url()));
    look(&browser, "table-no-room");
    browser.open(&format!("{}/table/prices?which=all&how=percent&amount=10&step=0.5", table.desk.url()));
    look(&browser, "table-prices");
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

#[test]
fn her_pages_are_whole_in_other_languages_and_with_large_letters() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    sizes::set_up(&browser, &table);
    let path = |page: &str, lang: &str| format!("{}/{page}?lang={lang}", table.desk.url());
    for lang in ["de", "fr", "es"] {
        browser.click(&format!("footer button[name=language][value={lang}]"));
        browser.wait(&format!("return document.documentElement.lang === '{lang}'"));
        for page in [
            "table",
            "table/facts",
            "table/bases",
            "table/bases/chain-brass",
            "table/trays",
            "table/at/B1",
            "table/at/B16",
            "table/prices",
            "table/one-off",
        ] {
            browser.open(&path(page, lang));
            look(&browser, &format!("{}-{lang}", page.replace('/', "-")));
            if lang == "de" {
                sizes::is_whole_at_200_percent(&browser, &format!("{}-{lang}", page.replace('/', "-")));
            }
        }
    }
}
