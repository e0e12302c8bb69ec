//! Before and after a show: a maker's month through the commands, the same figures on the pages, and every slip in parts.ron.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "support/book.rs"]
mod book;
#[path = "desk/kit.rs"]
#[allow(dead_code, reason = "the desk's own tests need more of it")]
mod kit;
#[path = "desk/seller.rs"]
#[allow(dead_code, reason = "the desk's own tests need more of it")]
mod seller;
mod support;
#[path = "support/worded.rs"]
mod worded;

use std::{fs, path::Path, process::Command};

use chatelaine::{
    catalog::{Catalog, read_folder, read_workshop},
    ledger::{AboutShow, Ledger, ShowKind},
    money::Tender,
    ticket::SentTicket,
};
use rust_decimal::Decimal;
use serde_json::Value;

use book::{check_all, now, sent};
use kit::Table;
use support::{copy, test_table};

/// A show with the pieces that were sold at it, closed.
fn show(ledger: &mut Ledger, catalog: &Catalog, kind: ShowKind, fee: u32, pieces: &[&[&str]]) {
    let number = ledger.show().expect("a show").id;
    let currency = catalog.table.prices.currency;
    let about = AboutShow { kind: Some(kind), fee: Some(Decimal::from(fee)), ..AboutShow::default() };
    ledger.set_about(number, &about, currency, now()).expect("told");
    for (sequence, drops) in pieces.iter().enumerate() {
        let ticket = SentTicket { show: number, ..sent(catalog, sequence as u16, drops) };
        ledger.receive(&ticket, false, catalog, now()).expect("received");
        check_all(ledger, ticket.id);
        ledger.ring_up(ticket.id, Tender::Card, now()).expect("rung up");
    }
    ledger.close_show(currency, now()).expect("closed");
}

/// Three shows. Of the heart keys two were there at the second, and both were sold.
fn month(ledger: &mut Ledger, catalog: &Catalog) {
    let moon: &[&str] = &["charm-moon", "bead-jade"];
    show(ledger, catalog, ShowKind::Fair, 40, &[&["key-heart"], moon, moon, &["key-heart", "vial-sand"]]);
    ledger.recount("key-heart", 2, now()).expect("counted");
    show(ledger, catalog, ShowKind::Fair, 40, &[&["key-heart"], &["key-heart"], moon]);
    ledger.recount("key-heart", 9, now()).expect("counted");
    show(ledger, catalog, ShowKind::HomeParty, 0, &[&["key-heart"], moon]);
}

struct Terminal<'a>(&'a Path);

impl Terminal<'_> {
    fn run(&self, words: &[&str]) -> std::process::Output {
        let mut command = Command::new(env!("CARGO_BIN_EXE_chatelaine"));
        command.arg("prep").args(words).args(["--catalog".as_ref(), self.0.join("catalog").as_os_str()]);
        if ["how-many", "parts", "recall", "count", "cuts", "costs", "after", "packing", "plans", "orders", "made"]
            .contains(&words[0])
        {
            command.args(["--data".as_ref(), self.0.join("data").as_os_str()]);
        }
        command.output().expect("it runs")
    }

    fn object(&self, words: &[&str]) -> Value {
        let done = self.run(&[words, &["--json"]].concat());
        assert!(done.status.success(), "{words:?}: {}", String::from_utf8_lossy(&done.stderr));
        serde_json::from_slice(&done.stdout).expect("one JSON object")
    }

    fn refused(&self, words: &[&str]) -> String {
        let done = self.run(words);
        assert_eq!(done.status.code(), Some(2), "{words:?}");
        assert!(done.stdout.is_empty(), "{words:?}");
        String::from_utf8_lossy(&done.stderr).into_owned()
    }
}

fn number<'a>(numbers: &'a Value, id: &str) -> &'a Value {
    numbers["numbers"].as_array().expect("numbers").iter().find(|one| one["id"] == id).expect(id)
}

/// A recall, a quarter's tax and a count, at the terminal and on the pages.
fn recall_and_quarter(table: &Table, seller: &seller::Seller, terminal: &Terminal<'_>) {
    // Every heart key so far may be of the one lot that was bought: five pieces, of three shows.
    let recall = terminal.object(&["recall", "K-26-1"]);
    let sold = recall["recall"]["sold"].as_array().expect("pieces");
    let shows: Vec<i64> = sold.iter().map(|one| one["show"].as_i64().expect("a show")).collect();
    assert_eq!(shows, [1, 1, 2, 2, 3], "{recall}");
    assert_eq!(recall["recall"]["there"]["key-heart"], 8);
    assert!(seller.get("/bench/lots?lot=K-26-1").text.contains("5 sold pieces may have it"));
    // The tax of the quarter is that of the three shows: all of them were in June.
    let mut command = Command::new(env!("CARGO_BIN_EXE_chatelaine"));
    command.args(["show", "year", "2026", "--json", "--data"]).arg(terminal.0.join("data"));
    let done = command.output().expect("it runs");
    let year: Value = serde_json::from_slice(&done.stdout).expect("one JSON object");
    let of_shows = |ledger: &mut Ledger| {
        let closed = (1..=3).map(|show| ledger.closed_show(show).expect("read").expect("closed").sums);
        closed.fold((Decimal::ZERO, Decimal::ZERO), |sum, show| (sum.0 + show.totals, sum.1 + show.tax))
    };
    let (totals, tax) = table.desk.with_ledger(of_shows).expect("the ledger");
    let lines = year["tax"].as_array().expect("lines");
    let amount =
        |line: &Value, field: &str| line[field].as_str().expect("an amount").parse::<Decimal>().expect("a number");
    assert!(lines.iter().all(|line| line["quarter"] == 2), "{year}");
    assert_eq!(lines.iter().map(|line| amount(line, "gross")).sum::<Decimal>(), totals);
    assert_eq!(lines.iter().map(|line| amount(line, "tax")).sum::<Decimal>(), tax);
    let page = seller.get("/bench/year?year=2026").text;
    assert!(page.contains(&tax.to_string()) && page.contains("Q2"), "{tax}: {page}");
    // What should lie there is what the trays' page says.
    let count = terminal.object(&["count"]);
    let heart = count["parts"]
        .as_array()
        .expect("parts")
        .iter()
        .find(|part| part["id"] == "key-heart")
        .expect("the key")
        .clone();
    assert_eq!((&heart["expected"], &heart["counted"]), (&8.into(), &Value::Null));
}

/// Few prices, what another one would do and how many pieces earn the stall, reckoned once more from the costs of each piece.
fn prices_at_the_terminal(terminal: &Terminal<'_>, seller: &seller::Seller, costs: &Value) {
    let amount = |value: &Value| value.as_str().expect("an amount").parse::<Decimal>().expect("a number");
    let rows = costs["parts"].as_array().expect("parts");
    let row = |id: &str| rows.iter().find(|row| row["priced"]["id"] == id).expect(id);
    // Two, one and one were sold at the three shows.
    let moon = row("charm-moon");
    assert_eq!(amount(&moon["sold"]).round_dp(6), (Decimal::from(4) / Decimal::from(3)).round_dp(6));
    // By what is sold: the margins before their share of the stall, half a dollar a piece, weighed by how many were sold.
    let share = Decimal::new(5, 1);
    let known: Vec<&Value> = rows.iter().filter(|row| !row["priced"]["margin"].is_null()).collect();
    let sold: Decimal = known.iter().map(|row| amount(&row["sold"])).sum();
    let of_one = |row: &Value| amount(&row["sold"]) * (amount(&row["priced"]["margin"]) + share);
    let earned = known.iter().map(|row| of_one(row)).sum::<Decimal>() / sold;
    let even = &costs["break_even"];
    assert_eq!(amount(&even["earned"]).round_dp(10), earned.round_dp(10));
    let pieces = Decimal::from(even["pieces"].as_u64().expect("pieces"));
    assert!(pieces * earned >= Decimal::from(40) && (pieces - Decimal::ONE) * earned < Decimal::from(40), "{even}");
    // Few points, each a multiple of half a dollar; each piece has the nearest that pays its cost.
    let points: Vec<Decimal> = costs["points"].as_array().expect("points").iter().map(amount).collect();
    assert!((1..=5).contains(&points.len()) && points.is_sorted(), "{points:?}");
    assert!(points.iter().all(|point| (*point * Decimal::TWO).fract().is_zero()), "{points:?}");
    for row in &known {
        let total: Decimal =
            ["parts", "labour", "stall"].iter().map(|part| amount(&row["priced"]["cost"][*part])).sum();
        let wished = total * Decimal::TWO;
        let pays: Vec<Decimal> = points.iter().copied().filter(|point| *point >= total).collect();
        let nearest = pays.iter().map(|point| (*point - wished).abs()).min();
        let point = (!row["point"].is_null()).then(|| (amount(&row["point"]) - wished).abs());
        assert_eq!(point, nearest, "{row}");
    }
    // A chain in its longest length takes more of the spool at the same price, by 48.00 for 20 m.
    let chain = row("chain-brass");
    let total: Decimal = ["parts", "labour", "stall"].iter().map(|part| amount(&chain["priced"]["cost"][*part])).sum();
    let Some(chatelaine::craft::BaseKind::Necklace(necklace)) =
        read_folder(&test_table()).expect("a catalogue").catalog.base("chain-brass").map(|base| base.kind.clone())
    else {
        panic!("a chain")
    };
    let more = Decimal::try_from(necklace.lengths.longest.mm() - necklace.lengths.usual.mm()).expect("mm").round_dp(1);
    let longer = more * Decimal::from(48) / Decimal::from(20_000);
    assert_eq!((amount(&chain["longest"]) - total).round_dp(10), longer.round_dp(10));
    // At prices of today: every kind is at one of them, and the page says the same.
    let kinds: u64 =
        costs["prices"].as_array().expect("prices").iter().map(|at| at["kinds"].as_u64().expect("n")).sum();
    assert_eq!(kinds as usize, rows.len());
    let change = terminal.object(&["costs", "--stall", "40", "--pieces", "80", "--change", "charm-moon=9.50"]);
    let change = &change["changes"][0];
    let (now, then) = (amount(&change["margin_now"]), amount(&change["margin_then"]));
    assert_eq!((then - now).round_dp(10), amount(&change["to"]) - amount(&change["from"]));
    assert_eq!(change["sold"], 2);
    let same = Decimal::from(change["sold_for_the_same"].as_u64().expect("a number"));
    assert!(same * then >= now * Decimal::TWO && (same - Decimal::ONE) * then < now * Decimal::TWO, "{change}");
    let page = seller.get("/bench/prices?stall=30&travel=10&pieces=80&of=charm-moon&to=9,50").text;
    for figure in [format!("{same} "), format!("{pieces} pieces earn the stall")] {
        assert!(page.contains(&figure), "{figure}: {page}");
    }
    for point in &points {
        let mut point = *point;
        point.rescale(2);
        assert!(page.contains(&point.to_string()), "{point}: {page}");
    }
    for wrong in ["stall=x", "pieces=0", "points=99", "of=charm-moon&to=-3", "of=none&to=3", "travel=-1"] {
        assert_eq!(seller.get(&format!("/bench/prices?{wrong}")).status, 422, "{wrong}");
    }
    // What a show came to is what its page says.
    let after = terminal.object(&["after", "1"]);
    let left = amount(&after["after"]["left_for_work"]);
    let mut shown = left.round_dp(2);
    shown.rescale(2);
    assert!(seller.get("/bench/shows/1").text.contains(&shown.abs().to_string()), "{after}");
    assert!(terminal.refused(&["after", "9"]).contains("closed are"));
    assert!(terminal.refused(&["costs", "--change", "charm-moon"]).contains("key-heart=9.50"));
    assert!(terminal.refused(&["costs", "--change", "none=3"]).contains("in no tray and no base"));
}

#[test]
fn a_makers_month_through_the_commands_and_on_the_pages() {
    let table = Table::new();
    let (seller, catalog) = (table.seller(), table.catalog());
    table.desk.with_ledger(move |ledger| month(ledger, &catalog)).expect("the ledger");
    let terminal = Terminal(table.dir.path());
    // How many: sold out at one of three shows; what was never sold lies there and counts as none sold.
    let numbers = terminal.object(&["how-many"]);
    assert_eq!(numbers["shows"], 3);
    let heart = number(&numbers, "key-heart");
    assert_eq!(
        (&heart["basis"], &heart["shows"], &heart["on_hand"]),
        (&"shows".into(), &serde_json::json!([3, 1]), &8.into())
    );
    let (take, make) = (heart["take"].as_u64().expect("a number"), heart["make"].as_u64().expect("a number"));
    assert_eq!(make, take.saturating_sub(8));
    let round = number(&numbers, "key-round");
    assert!(round["take"].as_u64() < heart["take"].as_u64(), "what sells is taken along: {round} {heart}");
    assert!(heart["usually_to"].as_u64() >= Some(2) && heart["chance_sold_out"].as_f64() <= Some(0.5), "{heart}");
    // A home party was half as large as a fair or less, and asks for less.
    let party = terminal.object(&["how-many", "--kind", "home_party"]);
    assert!(number(&party, "chain-brass")["sold"].as_f64() < number(&numbers, "chain-brass")["sold"].as_f64());
    // Next order: the batch of the numbers, and one by hand.
    let order = terminal.object(&["parts"]);
    assert!(order["make"].as_object().is_some_and(|make| make.values().all(|count| count.as_u64() > Some(0))));
    let order = terminal.object(&["parts", "vial-sand=30", "bead-jade=60"]);
    let part = |id: &str| {
        let parts = order["batch"]["parts"].as_array().expect("parts");
        parts.iter().find(|part| part["part"] == id).expect(id).clone()
    };
    // By parts.ron: 18 bottles lie there, 25 in a lot of 9.50; 55 head pins of 60, 100 in a lot of 3.60; 90 rings of 230.
    assert_eq!((&part("bottle")["short"], &part("bottle")["buy"]["price"]), (&"12".into(), &"9.50".into()));
    assert_eq!((&part("head-pin-50")["short"], &part("head-pin-50")["buy"]["amount"]), (&"5".into(), &"100".into()));
    assert_eq!((&part("ring-10")["needed"], &part("ring-10")["short"]), (&"90".into(), &"0".into()));
    let stops = part("head-pin-50")["stops"].as_array().expect("ids").clone();
    assert!(stops.contains(&"bead-jade".into()) && !stops.contains(&"vial-sand".into()), "{stops:?}");
    // Costs: a bead of 28.00/80, a head pin of 3.60/96, a ring of 19.00/494, three minutes at 16.00 an hour.
    let costs = terminal.object(&["costs", "--stall", "40", "--pieces", "80"]);
    let jade =
        costs["parts"].as_array().expect("parts").iter().find(|one| one["priced"]["id"] == "bead-jade").expect("it");
    let amount = |value: &Value| value.as_str().expect("an amount").parse::<Decimal>().expect("a number");
    let parts = Decimal::new(28, 0) / Decimal::from(80)
        + Decimal::new(36, 1) / Decimal::from(96)
        + Decimal::from(19) / Decimal::from(494);
    assert_eq!(amount(&jade["priced"]["cost"]["parts"]).round_dp(20), parts.round_dp(20));
    assert_eq!(amount(&jade["priced"]["cost"]["labour"]), Decimal::new(8, 1));
    assert_eq!(amount(&jade["priced"]["cost"]["stall"]), Decimal::new(5, 1));
    prices_at_the_terminal(&terminal, &seller, &costs);
    // Cuts: all of it is there, and what is told adds up.
    let cuts = terminal.object(&["cuts", "--part", "cable-brass", "18in=12", "24in=10", "30in=3"]);
    assert_eq!(cuts["missing"], serde_json::json!([]));
    let cut: f64 = cuts["drawn_mm"].as_f64().expect("mm") - cuts["lost_mm"].as_f64().expect("mm");
    assert!((cut - (12.0 * 457.2 + 10.0 * 609.6 + 3.0 * 762.0)).abs() < 0.5, "{cuts}");
    assert!(cuts["gap_percent"].as_f64() < Some(1.0), "{cuts}");
    recall_and_quarter(&table, &seller, &terminal);
    // The pages say the same.
    let page = seller.get("/bench").text;
    assert!(page.contains(&format!("<strong>{make}</strong>")) && page.contains("<svg class=\"range\""), "{page}");
    let after = seller.get("/bench/shows/1").text;
    assert!(after.contains("40.00") && seller.get("/bench/shows/9").status == 404, "{after}");
    let list = seller.get("/bench/cuts?part=cable-brass&length=18in&count=12&length=24in&count=2");
    assert!(list.text.contains("Keep as a list to tick off"), "{}", list.text);
}

#[test]
fn what_cannot_be_prepared_is_told_in_words() {
    let dir = tempfile::tempdir().expect("a folder");
    copy(&test_table(), &dir.path().join("catalog")).expect("a copy");
    let terminal = Terminal(dir.path());
    for (words, told) in [
        (&["how-many", "--kind", "wedding"][..], "fair, open_house, home_party"),
        (&["parts", "key-heart"], "key-heart=12"),
        (&["parts", "key-hart=3"], "in no tray and no base"),
        (&["parts", "key-heart=99999999"], "up to 10000"),
        (&["cuts", "--part", "cable-brass", "18in"], "write 18in=12"),
        (&["cuts", "--part", "cable-brass", "18=12"], "24in"),
        (&["cuts", "--part", "cable-brass", "18in=0"], "not between 1 and 10000"),
        (&["cuts", "--part", "cable", "18in=2"], "cable-brass, cable-silver, silk"),
        (&["cuts", "--part", "cork", "18in=2"], "lies in a drawer"),
        (&["costs", "--stall", "forty", "--pieces", "80"], "8.50"),
    ] {
        let said = terminal.refused(words);
        assert!(said.contains(told), "{words:?}: {said}");
    }
    // A maker without a ledger has guesses, and without parts.ron no recipes.
    let numbers = terminal.object(&["how-many"]);
    assert_eq!((&numbers["shows"], &number(&numbers, "key-heart")["basis"]), (&0.into(), &"guess".into()));
    fs::remove_file(dir.path().join("catalog/parts.ron")).expect("gone");
    assert!(terminal.refused(&["parts"]).contains("parts.ron is missing"));
    assert_eq!(number(&terminal.object(&["how-many"]), "key-heart")["cost_known"], false);
}

/// The words changed into what, and what the message has to say.
const SLIPS: &[(&str, &str, &str)] = &[
    ("hour: \"16.00\"", "hour: 16", "a price in quotes"),
    ("hour: \"16.00\"", "our: \"16.00\"", "did you mean hour?"),
    ("factor: 2.0", "factor: 0.5", "a number from 1 to 100"),
    ("leftover: \"75\"", "leftover: \"175\"", "0 to 100"),
    ("id: \"ring-5\"", "id: \"ring-4\"", "a second time"),
    ("count: 200, price: \"4.20\")], drawer: 140", "count: 200, price: \"4.20\")], drawer: -1", "0 to 1000000"),
    ("keep_from: \"14in\"),\n        (id: \"cable-silver\"", "),\n        (id: \"cable-silver\"", "without keep_from"),
    ("spools: [\"50m\"", "drawer: 3, spools: [\"50m\"", "one of the two"),
    ("(part: \"silk\", length: \"2.4m\")", "(part: \"silk\", count: 2)", "goes by the length"),
    ("(part: \"silk\", length: \"2.4m\")", "(part: \"slik\", length: \"2.4m\")", "did you mean \"silk\"?"),
    ("(sort: Key,", "(sort: Keys,", "did you mean Key?"),
    ("(id: \"chain-brass\"", "(id: \"chain-bras\"", "in no tray and no base"),
    ("(sort: Locket,", "(sort: Key,", "a second recipe"),
    ("(sort: Locket,", "(", "of nobody, or of two"),
    ("minutes: 1.5", "minutes: -1.5", "0 to 600"),
    ("day: \"2026-02-11\"", "day: \"2026-02-30\"", "2026-03-02"),
    ("broken: 6", "broken: 600", "more broken than came"),
];

#[test]
fn every_slip_in_the_workshops_file_is_told_with_its_place() {
    let dir = tempfile::tempdir().expect("a folder");
    let folder = dir.path().join("catalog");
    copy(&test_table(), &folder).expect("a copy");
    let catalog = read_folder(&folder).expect("a good catalogue").catalog;
    let good = fs::read_to_string(folder.join("parts.ron")).expect("the file");
    let workshop = read_workshop(&folder, &catalog).expect("no mistakes").expect("a workshop");
    for part in workshop.parts.iter() {
        assert!(workshop.unit_costs().contains_key(&part.id), "no lot of {}", part.id);
        assert!(!part.offers.is_empty(), "no lots of {} are offered", part.id);
    }
    for (right, wrong, told) in SLIPS {
        assert!(good.contains(right), "{right} does not stand in the file");
        fs::write(folder.join("parts.ron"), good.replacen(right, wrong, 1)).expect("written");
        let mistakes = read_workshop(&folder, &catalog).expect_err(wrong);
        worded::all_in_every_language(&mistakes);
        let all = mistakes.to_string();
        assert!(all.contains(told), "{wrong}: {all}");
        assert!(mistakes.0.iter().all(|one| one.file == "parts.ron" && one.line > 0), "{wrong}: {all}");
        // What guests see goes on without it.
        assert!(read_folder(&folder).is_ok(), "{wrong}");
        let check = Command::new(env!("CARGO_BIN_EXE_chatelaine")).arg("check").arg("--catalog").arg(&folder).output();
        assert_eq!(check.expect("it runs").status.code(), Some(2), "{wrong}");
    }
}

/// A copy by one touch holds what the desk has entered, and opens as a ledger; nothing else of the folder can be had so.
#[test]
fn a_copy_is_made_in_one_touch_and_holds_everything() {
    let table = Table::new();
    let (seller, catalog) = (table.seller(), table.catalog());
    table.desk.with_ledger(move |ledger| month(ledger, &catalog)).expect("the ledger");
    assert!(seller.get("/bench").text.contains("no copy of the ledger"), "the reminder");
    let made = seller.post("/bench/backup", &[]);
    assert_eq!((made.status, made.location.as_str()), (303, "/bench/backup"));
    // Touched twice, it is a copy more or the same one, and no fault.
    assert_eq!(seller.post("/bench/backup", &[]).status, 303);
    assert!(!seller.get("/bench").text.contains("no copy of the ledger"));
    let page = seller.get("/bench/backup").text;
    let (_, rest) = page.split_once("/bench/backup/ledger-").expect("a copy on the page");
    let name = format!("ledger-{}", rest.split_once('"').expect("the end of the address").0);
    let saved = seller.get(&format!("/bench/backup/{name}"));
    assert_eq!(saved.status, 200);
    assert!(
        saved.headers.get("content-disposition").is_some_and(|one| one.to_str().is_ok_and(|one| one.contains(&name)))
    );
    assert!(saved.text.starts_with("SQLite format 3"), "the file itself");
    let copy = table.dir.path().join("data/backups").join(&name);
    let found = Ledger::beside_the_desk(&copy).expect("a ledger");
    let there = table.desk.with_ledger(|ledger| ledger.shows(99)).expect("the ledger").expect("shows");
    assert_eq!(found.shows(99).expect("shows"), there);
    for other in ["ledger.sqlite", "..%2Fledger.sqlite", "ledger-1.sqlite", "ledger-20260101-000000.sqlite"] {
        assert_eq!(seller.get(&format!("/bench/backup/{other}")).status, 404, "{other}");
    }
}
