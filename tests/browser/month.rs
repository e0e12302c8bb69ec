//! A maker's month: three shows, what is made again, the next order, a lot that is recalled, a quarter's tax. The pages say on a
//! phone and on a laptop what the commands print.

use std::process::Command;

use chatelaine::ledger::{AboutShow, Ledger, Part, ShowKind};
use serde_json::Value;

use super::*;

/// The object that a command prints about this table.
fn object(table: &Table, words: &[&str]) -> Value {
    let mut command = Command::new(env!("CARGO_BIN_EXE_chatelaine"));
    command.args(words).args(["--json".as_ref(), "--data".as_ref(), table.dir.path().join("data").as_os_str()]);
    if words[0] == "prep" {
        command.args(["--catalog".as_ref(), table.dir.path().join("catalog").as_os_str()]);
    }
    let done = command.output().expect("it runs");
    assert!(done.status.success(), "{words:?}: {}", String::from_utf8_lossy(&done.stderr));
    serde_json::from_slice(&done.stdout).expect("one JSON object")
}

/// A show at which these pieces are sold, closed.
fn a_show(table: &Table, kind: ShowKind, fee: i64, pieces: &[&[&str]]) {
    let kiosk = table.kiosk();
    let catalog = table.catalog();
    let currency = catalog.table.prices.currency;
    let about =
        AboutShow { kind: Some(kind), fee: Some(fee.into()), place: Some("Mill Lane".into()), ..AboutShow::default() };
    let told = move |ledger: &mut Ledger| {
        let show = ledger.show()?.id;
        ledger.set_about(show, &about, currency, jiff::Timestamp::now())
    };
    table.desk.with_ledger(told).expect("the ledger").expect("told");
    for (sequence, drops) in pieces.iter().enumerate() {
        let ticket = kiosk.ticket(sequence as u16, drops, Wearer::From13);
        kiosk.deliver(&ticket, false);
        let id = ticket.id;
        let sold = move |ledger: &mut Ledger| {
            let now = jiff::Timestamp::now();
            let ticket = ledger.tick(id, Part::Base, true, true, now)?;
            for (at, _) in ticket.live_lines() {
                ledger.tick(id, Part::Line(at), true, true, now)?;
            }
            ledger.set_told(id, true, now)?;
            ledger.ring_up(id, chatelaine::money::Tender::Card, now)
        };
        table.desk.with_ledger(sold).expect("the ledger").expect("sold");
    }
    let closed = move |ledger: &mut Ledger| ledger.close_show(currency, jiff::Timestamp::now());
    table.desk.with_ledger(closed).expect("the ledger").expect("closed");
}

/// The cells of the page's tables, and all of its words, with nothing folded away.
fn read(browser: &Browser, url: &str, (width, height): (u32, u32)) -> (Vec<Vec<String>>, String) {
    browser.resize(width, height);
    browser.open(url);
    browser.wait("return document.readyState === 'complete'");
    browser.run("document.querySelectorAll('details').forEach((one) => { one.open = true; })");
    let cells = browser.run(
        "return [...document.querySelectorAll('table.made tbody tr')].map((row) => [...row.cells].map((cell) => cell.innerText.trim()))",
    );
    let words = browser.run("return document.querySelector('main').innerText");
    (serde_json::from_value(cells).expect("cells"), words.as_str().expect("words").to_owned())
}

fn amount(value: &Value) -> Decimal {
    value.as_str().unwrap_or_else(|| panic!("no amount: {value}")).parse().expect("a number")
}

/// An amount as the English pages write it, without its sign and currency.
fn as_shown(amount: Decimal) -> String {
    let mut amount = amount.abs().round_dp(2);
    amount.rescale(2);
    amount.to_string()
}

/// Homes with what lies there and what is to be made, as a command has them.
fn to_make(numbers: &Value) -> Vec<(String, String, String)> {
    let numbers = numbers["numbers"].as_array().expect("numbers");
    let mut all: Vec<_> = numbers
        .iter()
        .map(|one| {
            let home = one["home"].as_str().unwrap_or_default().to_owned();
            (home, one["on_hand"].to_string(), one["make"].to_string())
        })
        .collect();
    all.sort();
    all
}

struct Month<'a> {
    browser: &'a Browser,
    table: &'a Table,
    url: String,
}

impl Month<'_> {
    /// The page's tables and words, on a phone as on a laptop.
    fn page(&self, path: &str, name: &str) -> (Vec<Vec<String>>, String) {
        let url = format!("{}{path}", self.url);
        let phone = read(self.browser, &url, PHONE);
        keep_picture(self.browser, &format!("month-{name}-{}", PHONE.0));
        let laptop = read(self.browser, &url, LAPTOP);
        keep_picture(self.browser, &format!("month-{name}-{}", LAPTOP.0));
        assert_eq!(phone.0, laptop.0, "{path}: the figures are the same on both");
        phone
    }

    fn how_many(&self, name: &str) -> Vec<(String, String, String)> {
        let told = to_make(&object(self.table, &["prep", "how-many"]));
        let (rows, _) = self.page("/bench", name);
        let mut shown: Vec<_> = rows.iter().map(|row| (row[0].clone(), row[2].clone(), row[3].clone())).collect();
        shown.sort();
        assert_eq!(shown, told);
        told
    }

    fn order(&self, name: &str) -> Value {
        let order = object(self.table, &["prep", "parts"]);
        let (rows, words) = self.page("/bench/parts", name);
        let parts = order["batch"]["parts"].as_array().expect("parts");
        for part in parts {
            let called = part["name"].as_str().expect("a name");
            let row = rows.iter().filter(|row| row[0].starts_with(called)).collect::<Vec<_>>();
            assert!(!row.is_empty(), "{called}: {rows:?}");
            if amount(&part["short"]) > Decimal::ZERO && !part["buy"].is_null() {
                let price = as_shown(amount(&part["buy"]["price"]));
                assert!(row.iter().any(|row| row[2].contains(&price)), "{called} {price}: {row:?}");
            }
        }
        let price = amount(&order["batch"]["price"]);
        assert!(price.is_zero() || words.contains(&as_shown(price)), "{price}: {words}");
        order
    }

    fn after(&self, show: i64) {
        let told = object(self.table, &["prep", "after", &show.to_string()]);
        let (_, words) = self.page(&format!("/bench/shows/{show}"), &format!("show-{show}"));
        for field in ["net", "fee", "left_for_work"] {
            let figure = as_shown(amount(&told["after"][field]));
            assert!(words.contains(&figure), "{field} {figure}: {words}");
        }
    }

    fn prices(&self) {
        let told = object(self.table, &["prep", "costs", "--stall", "40", "--travel", "12"]);
        let (rows, words) = self.page("/bench/prices?stall=40&travel=12", "prices");
        for row in told["parts"].as_array().expect("parts") {
            let price = as_shown(amount(&row["priced"]["price"]));
            let margin = &row["priced"]["margin"];
            let margin = if margin.is_null() { "?".to_owned() } else { as_shown(amount(margin)) };
            assert!(
                rows.iter().any(|cells| cells.len() == 2 && cells[0].contains(&price) && cells[1].contains(&margin)),
                "{row}"
            );
        }
        let pieces = &told["break_even"]["pieces"];
        assert!(words.contains(&format!("{pieces} pieces earn the stall of $52.00")), "{pieces}: {words}");
    }

    fn recall(&self) {
        let told = object(self.table, &["prep", "recall", "K-26-1"]);
        let sold = told["recall"]["sold"].as_array().expect("pieces");
        let (_, words) = self.page("/bench/lots?lot=K-26-1", "recall");
        assert!(!sold.is_empty() && words.contains(&format!("{} sold pieces may have it", sold.len())), "{words}");
        assert!(sold.iter().all(|one| words.contains(one["number"].as_str().expect("a number"))), "{words}");
    }

    fn quarter(&self) {
        let today = jiff::Timestamp::now().to_zoned_datetime(jiff::tz::TimeZone::system()).date();
        let year = today.year().to_string();
        let told = object(self.table, &["show", "year", &year]);
        let (rows, _) = self.page(&format!("/bench/year?year={year}"), "year");
        let lines = told["tax"].as_array().expect("lines");
        assert!(!lines.is_empty());
        for line in lines {
            let quarter = format!("Q{}", line["quarter"]);
            let [net, tax] = ["net", "tax"].map(|field| as_shown(amount(&line[field])));
            let is_it = |row: &&Vec<String>| {
                row[0].starts_with(&quarter)
                    && row.iter().any(|cell| cell.contains(&net))
                    && row.iter().any(|cell| cell.contains(&tax))
            };
            assert!(rows.iter().any(|row| is_it(&row)), "{line}: {rows:?}");
        }
    }
}

#[test]
#[allow(clippy::too_many_lines, reason = "one story, in the order in which it happens")]
fn a_makers_month_is_the_same_on_the_pages_as_at_the_terminal() {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    sizes::set_up(&browser, &table);
    let moon: &[&str] = &["charm-moon", "bead-jade"];
    let heart: &[&str] = &["key-heart"];
    a_show(&table, ShowKind::Fair, 40, &[heart, moon, moon, &["key-heart", "vial-sand"]]);
    a_show(&table, ShowKind::Fair, 40, &[heart, heart, moon, moon, moon]);
    a_show(&table, ShowKind::HomeParty, 0, &[heart, moon]);
    // Little is left of what sold best, so that there is something to make and to buy.
    for id in ["key-heart", "charm-moon", "bead-jade", "vial-sand", "chain-brass"] {
        let counted = move |ledger: &mut Ledger| ledger.recount(id, 0, jiff::Timestamp::now());
        table.desk.with_ledger(counted).expect("the ledger").expect("counted");
    }
    let month = Month { browser: &browser, table: &table, url: table.desk.url() };
    let before = month.how_many("how-many");
    (1..=3).for_each(|show| month.after(show));
    month.prices();
    // What sold is made again, noted on the phone: so many more are there, and fewer are to be made.
    browser.resize(PHONE.0, PHONE.1);
    browser.open(&format!("{}/bench/made", month.url));
    browser.run(
        "const of = document.querySelector('#of'); of.value = 'charm-moon';
         for (const told of ['input', 'change']) of.dispatchEvent(new Event(told, { bubbles: true }));",
    );
    // A guest sends a piece meanwhile, and the page is made anew: what was chosen stays chosen.
    let kiosk = table.kiosk();
    kiosk.deliver(&kiosk.ticket(0, &["bead-jade"], Wearer::From13), false);
    std::thread::sleep(std::time::Duration::from_millis(1500));
    assert_eq!(browser.run("return document.querySelector('#of').value"), "charm-moon");
    browser.fill("#count", "4");
    browser.click("form[action='/bench/made'] button.main");
    browser.wait_for("What was made before");
    keep_picture(&browser, "month-made-360");
    let home = table.catalog().drop_kind("charm-moon").expect("the moon").home.to_string();
    let of =
        |all: &[(String, String, String)]| all.iter().find(|one| one.0 == home).expect("its home").1.parse::<u32>();
    assert_eq!(of(&month.how_many("made-again")).expect("a count"), of(&before).expect("a count") + 4);
    // The next order comes, is written down on the phone, and lies in its drawer.
    let order = month.order("order");
    let rings = |order: &Value| {
        let parts = order["batch"]["parts"].as_array().expect("parts");
        parts.iter().find(|part| part["part"] == "ring-10").map(|part| amount(&part["there"])).expect("rings")
    };
    browser.resize(PHONE.0, PHONE.1);
    browser.open(&format!("{}/bench/lots", month.url));
    browser.click("a[href='/bench/lots/write']");
    browser.wait_for("Write down a lot");
    look(&browser, "bench-lot-write");
    browser.fill("#lot", "R10-26-2");
    browser.fill("#amount", "500");
    browser.fill("#broken", "5");
    browser.fill("#price", "19.00");
    browser.fill("#paper", "declaration, blue folder");
    browser.click("form[action='/bench/lots/write'] button.main");
    browser.wait_for("R10-26-2");
    look(&browser, "bench-lots");
    assert_eq!(rings(&month.order("order-come")), rings(&order) + Decimal::from(495));
    browser.open(&format!("{}/bench/lots", month.url));
    browser.click("a[href*='/bench/lots/change'][href*='R10-26-2']");
    browser.wait_for("Strike this lot out");
    look(&browser, "bench-lot-change");
    browser.click("form[action='/bench/lots/strike'] button");
    browser.wait_for("Undo: lot R10-26-2 struck out");
    browser.click(".own-undo button");
    // It stands there again, and what could be taken back next is that it was written down.
    browser.wait_for("Undo: lot R10-26-2 written down");
    month.recall();
    month.quarter();
    browser.open(&format!("{}/bench/prices?stall=40&of=charm-moon&to=3.50", month.url));
    look(&browser, "bench-prices");
    browser.click("footer button[name=language][value=de]");
    browser.wait("return document.documentElement.lang === 'de'");
    for path in ["bench/prices?stall=40&of=charm-moon&to=3.50", "bench/lots/write", "bench/lots"] {
        browser.open(&format!("{}/{path}", month.url));
        let name = path.split('?').next().expect("a path").replace('/', "-");
        sizes::is_whole_at_200_percent(&browser, &format!("{name}-de"));
    }
    assert_eq!(browser.complaints(), Vec::<String>::new());
}
