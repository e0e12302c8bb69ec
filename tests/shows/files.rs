//! A show in files: read back by a library that knows nothing of us, and figures added up anew.

use std::process::Command;

use chatelaine::{
    export::DecimalMark,
    ledger::{AboutShow, Closing, Ledger, ShowKind, ShowTable},
    money::{RewardRule, Tender},
};
use rust_decimal::Decimal;

use crate::{
    book::{catalog, check_all, now, opened, sent},
    kit::Table,
};

/// A closed show with three pieces sold and one let go.
fn with_sales(ledger: &mut Ledger) {
    let catalog = catalog();
    let currency = catalog.table.prices.currency;
    let about = AboutShow {
        // What a spreadsheet would take for a formula.
        place: Some("=HYPERLINK(\"x\")".into()),
        kind: Some(ShowKind::HomeParty),
        fee: Some(Decimal::from(20)),
        float: Some(Decimal::from(50)),
        ..AboutShow::default()
    };
    ledger.set_about(1, &about, currency, now()).expect("told");
    for (sequence, drops) in [(0, &["key-heart", "charm-moon"][..]), (1, &["key-heart"]), (2, &["bead-jade"])] {
        let ticket = sent(&catalog, sequence, drops);
        ledger.receive(&ticket, false, &catalog, now()).expect("received");
        check_all(ledger, ticket.id);
        let tender = if sequence == 0 { Tender::Cash } else { Tender::Card };
        ledger.ring_up(ticket.id, tender, now()).expect("rung up");
    }
    ledger.receive(&sent(&catalog, 3, &["charm-moon"]), false, &catalog, now()).expect("received");
    let rule = RewardRule::Percent(Decimal::TEN);
    let reward = Some((rule, catalog.table.prices.clone()));
    ledger.close_counted(&Closing { counted: Some(Decimal::ONE_HUNDRED), reward, currency }, now()).expect("closed");
}

/// The rows of a table, by a library's reader; the head first.
fn rows(bytes: &[u8], separator: u8) -> Vec<Vec<String>> {
    let text = bytes.strip_prefix("\u{feff}".as_bytes()).expect("UTF-8 says that it is");
    let mut reader = csv::ReaderBuilder::new().has_headers(false).delimiter(separator).from_reader(text);
    reader.records().map(|row| row.expect("a row").iter().map(str::to_owned).collect()).collect()
}

#[test]
fn the_tables_of_a_show_agree_with_what_was_sold() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    with_sales(&mut ledger);
    let report = ledger.report(1).expect("read").expect("a show");
    let table = |table, mark| report.table(table, mark).expect("a table");
    let lines = rows(&table(ShowTable::Lines, DecimalMark::Point), b',');
    assert_eq!(lines[0], ["part", "id", "home", "sort", "sold", "taken back", "as marked (USD)"]);
    let line = |id: &str| lines.iter().find(|row| row[1] == id).unwrap_or_else(|| panic!("no {id}")).clone();
    let heart = catalog.drop_kind("key-heart").expect("a drop");
    assert_eq!(
        line("key-heart")[2..],
        [&heart.home.to_string(), "key", "2", "0", &(heart.price * Decimal::TWO).to_string()]
    );
    assert_eq!(line("chain-brass")[2..5], ["", "base", "3"]);
    // Tray by tray, as one walks along the table.
    let homes: Vec<String> = lines[1..].iter().map(|row| row[2].clone()).filter(|home| !home.is_empty()).collect();
    let mut walked = homes.clone();
    walked.sort_by_key(|home| home.parse::<chatelaine::craft::Home>().expect("a home"));
    assert_eq!(homes, walked);
    let marked: Decimal = lines[1..].iter().map(|row| row[6].parse::<Decimal>().expect("an amount")).sum();
    let expected =
        ["key-heart", "key-heart", "charm-moon", "bead-jade"].map(|id| catalog.drop_kind(id).expect("a drop").price);
    let base = catalog.base("chain-brass").expect("a base").price;
    assert_eq!(marked, expected.iter().sum::<Decimal>() + base * Decimal::from(3));

    let comma = table(ShowTable::Lines, DecimalMark::Comma);
    let comma = rows(&comma, b';');
    assert_eq!(comma[1][6].replace(',', "."), lines[1][6], "the same figures");
    assert!(comma[1][6].contains(','));

    let tickets = rows(&table(ShowTable::Tickets, DecimalMark::Point), b',');
    assert_eq!(tickets.len(), 1 + 4);
    let total: Decimal = tickets[1..].iter().map(|row| row[6].parse::<Decimal>().expect("a sum")).sum();
    assert_eq!(total, report.sums.totals, "the tickets add up to the show");
    assert_eq!(tickets[1..].iter().filter(|row| row[2] == "let go").count(), 1);

    let money = rows(&table(ShowTable::Money, DecimalMark::Point), b',');
    let amount = |what: &str, of: &str| -> Decimal {
        let row = money.iter().find(|row| row[0] == what && row[1] == of).unwrap_or_else(|| panic!("no {what} {of}"));
        row[2].parse().expect("an amount")
    };
    let taken = amount("taken", "cash") + amount("taken", "card");
    assert_eq!(taken - amount("sold", "cash rounding"), amount("sold", "totals, less what was taken back"));
    assert_eq!(amount("cash box", "counted"), Decimal::ONE_HUNDRED);
    // A tenth of what was sold without the tax, to whole cents with halves up.
    let tenth = (amount("sold", "totals, less what was taken back") - amount("sold", "tax in it")) / Decimal::TEN;
    let half_up = rust_decimal::RoundingStrategy::MidpointAwayFromZero;
    assert_eq!(amount("reward", "of the host"), tenth.round_dp_with_strategy(2, half_up));

    let left = rows(&table(ShowTable::Left, DecimalMark::Point), b',');
    assert_eq!(left.len() - 1, catalog.drops.len() + catalog.bases.len());
    for table in ShowTable::ALL {
        let bytes = report.table(table, DecimalMark::Point).expect("a table");
        let text = String::from_utf8(bytes).expect("UTF-8");
        // RFC 4180, section 2: each line ends with CRLF.
        assert_eq!(text.matches('\n').count(), text.matches("\r\n").count(), "{table:?}");
    }
}

#[test]
fn the_desk_and_the_terminal_give_the_same_files() {
    let table = Table::new();
    let seller = table.seller();
    table.desk.with_ledger(with_sales).expect("the ledger");
    for path in
        ["/shows/1.csv", "/shows/1/lines.csv", "/shows/1/tax.csv", "/shows/1/money.csv?decimal=comma", "/shows/2.csv"]
    {
        let answer = seller.get(path);
        assert_eq!(answer.status, 200, "{path}: {}", answer.text);
        let header = |name| answer.headers.get(name).expect("a header").to_str().expect("words").to_owned();
        assert!(header("content-type").starts_with("text/csv"), "{path}");
        assert!(header("content-disposition").contains(".csv"), "{path}");
    }
    for path in ["/shows/9.csv", "/shows/1/wages.csv", "/shows/x.csv", "/shows/1.exe", "/shows/1/tax"] {
        assert_eq!(seller.get(path).status, 404, "{path}");
    }
    let whole: serde_json::Value = serde_json::from_str(&seller.get("/shows/1.json").text).expect("JSON");
    assert_eq!((&whole["show"], &whole["about"]["kind"]), (&1.into(), &"HomeParty".into()));
    assert!(whole["sums"]["totals"].is_string(), "amounts are texts, exact to the last digit");
    // The terminal reads beside the running desk.
    let data = table.dir.path().join("data");
    let run = |words: &[&str]| {
        let mut command = Command::new(env!("CARGO_BIN_EXE_chatelaine"));
        command.arg("show").args(words).arg("--data").arg(&data).output().expect("it runs")
    };
    let exported = run(&["export", "1", "--csv"]);
    assert!(exported.status.success(), "{}", String::from_utf8_lossy(&exported.stderr));
    assert_eq!(String::from_utf8_lossy(&exported.stdout), seller.get("/shows/1.csv").text);
    let exported = run(&["export", "1", "--csv", "tax", "--comma"]);
    assert_eq!(String::from_utf8_lossy(&exported.stdout), seller.get("/shows/1/tax.csv?decimal=comma").text);
    let exported = run(&["export", "1", "--json"]);
    let other: serde_json::Value = serde_json::from_slice(&exported.stdout).expect("one JSON object");
    assert_eq!(other, whole);
    let listed = run(&["list", "--json"]);
    let listed: serde_json::Value = serde_json::from_slice(&listed.stdout).expect("one JSON object");
    assert_eq!(listed["shows"].as_array().map(Vec::len), Some(2));
    for (words, told) in [
        (&["export", "9", "--json"][..], "there is no show 9"),
        (&["export", "1", "--csv", "wages"], "lines, tickets, money, tax, left"),
        (&["export", "1"], "--json"),
    ] {
        let refused = run(words);
        assert_eq!(refused.status.code(), Some(2), "{words:?}");
        let said = String::from_utf8_lossy(&refused.stderr);
        assert!(said.contains(told) && refused.stdout.is_empty(), "{words:?}: {said}");
    }
}

#[test]
fn a_place_that_looks_like_a_formula_is_only_words() {
    let mut ledger = opened(&catalog());
    let currency = catalog().table.prices.currency;
    // Source: OWASP, "CSV Injection": =, +, -, @, tab and carriage return begin what a spreadsheet reads as a formula.
    let file = "+1+1";
    let mut other = (*catalog()).clone();
    for kind in other.drops.iter_mut().filter(|kind| kind.id == "key-heart") {
        kind.name = file.into();
    }
    ledger.take_catalog(&other, "second", now()).expect("taken");
    let ticket = sent(&catalog(), 0, &["key-heart"]);
    ledger.receive(&ticket, false, &other, now()).expect("received");
    check_all(&mut ledger, ticket.id);
    ledger.ring_up(ticket.id, Tender::Card, now()).expect("rung up");
    ledger.close_show(currency, now()).expect("closed");
    let report = ledger.report(1).expect("read").expect("a show");
    for table in [ShowTable::Lines, ShowTable::Left] {
        let rows = rows(&report.table(table, DecimalMark::Point).expect("a table"), b',');
        let row = rows.iter().find(|row| row[1] == "key-heart").expect("the drop");
        assert!(row[0].contains(file) && !row[0].starts_with(['=', '+', '-', '@', '\t', '\r']), "{:?}", row[0]);
    }
}
