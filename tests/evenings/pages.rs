//! The bench's pages: a lot that is recalled, cuts that are ticked off, packing, plans, and the year as the terminal has it.

use std::{fs, process::Command};

use chatelaine::{
    bench::{CUT_LISTS, CutLine, CutList},
    catalog::Catalog,
    ledger::{Ledger, LedgerError},
    money::Tender,
    ticket::SentTicket,
};
use serde_json::Value;
use uuid::Uuid;

use crate::{
    book::{check_all, sent},
    kit::Table,
    seller::Seller,
};

/// The value of the hidden field `name` in the first form after `before` on a page.
pub fn hidden(page: &str, before: &str, name: &str) -> String {
    let (_, rest) = page.split_once(before).unwrap_or_else(|| panic!("no {before} on the page"));
    let (_, rest) = rest.split_once(&format!("name=\"{name}\" value=\"")).unwrap_or_else(|| panic!("no {name}"));
    rest.split('"').next().expect("a value").to_owned()
}

/// The number of a ticket with a heart key that is sold now.
fn sells(table: &Table, sequence: u16) -> String {
    let catalog = table.catalog();
    let sold = move |ledger: &mut Ledger| -> Result<String, LedgerError> {
        let (show, now) = (ledger.show()?.id, jiff::Timestamp::now());
        let ticket = SentTicket { show, ..sent(&catalog, sequence, &["key-heart"]) };
        ledger.receive(&ticket, false, &catalog, now)?;
        check_all(ledger, ticket.id);
        ledger.ring_up(ticket.id, Tender::Card, now)?;
        Ok(ticket.number.to_string())
    };
    table.desk.with_ledger(sold).expect("the ledger").expect("sold")
}

pub fn object(table: &Table, words: &[&str]) -> Value {
    let mut command = Command::new(env!("CARGO_BIN_EXE_chatelaine"));
    command.args(words).arg("--json");
    // What needs no ledger asks for none.
    if words[1] != "lots" {
        command.args(["--data".as_ref(), table.dir.path().join("data").as_os_str()]);
    }
    // What is only kept in the ledger asks for no catalogue.
    let ledger_alone = ["packing", "plans", "orders", "made"].contains(&words[1]);
    if words[0] == "prep" && !ledger_alone || words.contains(&"stock") {
        command.args(["--catalog".as_ref(), table.dir.path().join("catalog").as_os_str()]);
    }
    let done = command.output().expect("it runs");
    assert!(done.status.success(), "{words:?}: {}", String::from_utf8_lossy(&done.stderr));
    serde_json::from_slice(&done.stdout).expect("one JSON object")
}

fn recount(table: &Table, part: &'static str, n: u32) {
    let counted = move |ledger: &mut Ledger| ledger.recount(part, n, jiff::Timestamp::now());
    table.desk.with_ledger(counted).expect("the ledger").expect("counted");
}

fn recalled(table: &Table, lot: &str) -> Vec<String> {
    let found = object(table, &["prep", "recall", lot]);
    let sold = found["recall"]["sold"].as_array().expect("pieces");
    sold.iter().map(|one| one["number"].as_str().expect("a number").to_owned()).collect()
}

/// Of lot K-26-1 came everything that was sold before the compartment was empty; the five that were made then are of K-26-2.
#[test]
fn a_recall_names_every_piece_that_can_have_the_lot_and_no_more() {
    let table = Table::new();
    let seller = table.seller();
    let file = table.catalog_file("parts.ron");
    let text = fs::read_to_string(&file).expect("parts.ron");
    let first = "(part: \"key-blank\", lot: \"K-26-1\", day: \"2026-03-02\", count: 50, price: \"40.00\"),";
    assert!(text.contains(first));
    let second = "(part: \"key-blank\", lot: \"K-26-2\", day: \"2026-04-02\", count: 50, price: \"40.00\"),";
    fs::write(&file, text.replacen(first, &format!("{first}\n        {second}"), 1)).expect("written");
    let before = [sells(&table, 0), sells(&table, 1)];
    recount(&table, "key-heart", 0);
    let page = seller.get("/bench/made").text;
    let form = hidden(&page, "action=\"/bench/made\"", "form");
    let made = [
        ("form", form.as_str()),
        ("of", "key-heart"),
        ("count", "5"),
        ("put_in", "1"),
        ("check", "loops_closed"),
        ("check", "pull"),
        ("lot", "key-blank|K-26-2"),
        ("note", "second shelf"),
    ];
    for _ in 0..2 {
        assert_eq!(seller.post("/bench/made", &made).status, 303, "sent twice");
    }
    let counts = table.desk.with_ledger(|ledger| ledger.counts()).expect("the ledger").expect("counts");
    assert_eq!(counts["key-heart"].on_hand, 5, "put in once");
    let after = sells(&table, 2);
    assert_eq!(recalled(&table, "K-26-1"), before);
    assert_eq!(
        recalled(&table, "k-26-2"),
        [before.as_slice(), std::slice::from_ref(&after)].concat(),
        "before nothing was noted"
    );
    let shown = seller.get("/bench/lots?lot=K-26-1").text;
    assert!(before.iter().all(|number| shown.contains(number)) && !shown.contains(&after), "{shown}");
    assert!(shown.contains("No test report or declaration") && shown.contains("accredited laboratory"));
    let told = seller.get("/bench/made").text;
    assert!(told.contains("second shelf") && told.contains("Lots: K-26-2.") && told.contains("Not checked:"), "{told}");
    let noted = object(&table, &["prep", "made", "key-heart", "--lot", "k-26-2"])["made"].clone();
    assert_eq!(noted.as_array().map(Vec::len), Some(1), "{noted}");
    assert_eq!((&noted[0]["count"], &noted[0]["lots"]["key-blank"][0]), (&5.into(), &"K-26-2".into()));
    assert_eq!(noted[0]["checked"], serde_json::json!(["loops_closed", "pull"]));
    assert_eq!(noted[0]["not_checked"], serde_json::json!(["wire_trimmed", "corks_glued", "end_rings"]));
    assert_eq!(object(&table, &["prep", "made", "charm-moon"])["made"], serde_json::json!([]));
    assert_eq!(seller.get("/bench/lots?lot=none").status, 404);
    for (of, count) in [("key-hart", "5"), ("key-heart", "x"), ("key-heart", "0")] {
        let fields = [("form", Uuid::now_v7().to_string()), ("of", of.into()), ("count", count.into())];
        let fields: Vec<(&str, &str)> = fields.iter().map(|(name, value)| (*name, value.as_str())).collect();
        assert_eq!(seller.post("/bench/made", &fields).status, 400, "{of} {count}");
    }
}

/// Ticks outlive the desk, and the next plan begins with what is left on the spools.
#[test]
fn cuts_are_kept_ticked_off_and_carried_on() {
    let table = Table::new();
    let seller = table.seller();
    let asked = "/bench/cuts?part=cable-brass&length=18in&count=12&length=24in&count=2";
    let page = seller.get(asked).text;
    let form = hidden(&page, "method=\"post\" action=\"/bench/cuts\"", "form");
    let seen = hidden(&page, "method=\"post\" action=\"/bench/cuts\"", "seen");
    let lines = [("length", "18in"), ("count", "12"), ("length", "24in"), ("count", "2")];
    let said = |seen: &str, form: &str| {
        let head = [("form", form.to_owned()), ("part", "cable-brass".to_owned()), ("seen", seen.to_owned())];
        let rest = lines.iter().map(|(name, value)| (*name, (*value).to_owned()));
        let all: Vec<(&str, String)> = head.into_iter().chain(rest).collect();
        let fields: Vec<(&str, &str)> = all.iter().map(|(name, value)| (*name, value.as_str())).collect();
        seller.post("/bench/cuts", &fields)
    };
    let other = said("another plan", &Uuid::now_v7().to_string());
    assert_eq!(other.status, 409, "{}", other.text);
    let kept = said(&seen, &form);
    assert_eq!((kept.status, kept.location.as_str()), (303, format!("/bench/cuts/{form}").as_str()), "{}", kept.text);
    assert_eq!(said(&seen, &form).location, kept.location, "sent twice it is one list");
    let list = seller.get(&kept.location).text;
    assert_eq!(
        list.matches("aria-pressed=\"false\" aria-label=\"Cut, line").count(),
        list.matches("Cut, line").count()
    );
    let ids: Vec<String> = (0..2).map(|_| Uuid::now_v7().to_string()).collect();
    for id in &ids {
        assert_eq!(seller.post(&kept.location, &[("form", id), ("line", "0"), ("on", "1")]).status, 303);
    }
    let ticked = seller.get(&kept.location).text;
    assert_eq!(ticked.matches("name=\"on\" value=\"0\"").count(), 1, "ticked by two phones it is cut once");
    assert!(seller.get("/bench/cuts").text.contains("1 of"), "the list is found again");
    // Another plan does not count on what is cut or is going to be, on the page as at the terminal.
    assert!(seller.get(asked).text.contains("Left out, since"), "what the list is going to cut");
    let other = object(&table, &["prep", "cuts", "--part", "cable-brass", "18in=12", "24in=2"]);
    let spools: Vec<f64> = list_of(&table, &form).iter().map(|line| line.from.mm()).collect();
    assert_eq!(other["promised_mm"].as_array().expect("lengths").len(), spools.len() - 1, "{other}");
    assert_ne!(hidden(&seller.get(asked).text, "method=\"post\" action=\"/bench/cuts\"", "seen"), seen);
    assert_eq!(said(&seen, &Uuid::now_v7().to_string()).status, 409);
    // Taken back and put away, all is as it was.
    let id = Uuid::now_v7().to_string();
    assert_eq!(seller.post(&kept.location, &[("form", &id), ("line", "0"), ("on", "0")]).status, 303);
    assert_ne!(hidden(&seller.get(asked).text, "method=\"post\" action=\"/bench/cuts\"", "seen"), seen);
    let id = Uuid::now_v7().to_string();
    assert_eq!(seller.post(&kept.location, &[("form", &id), ("away", "1")]).location, "/bench/cuts");
    assert_eq!(hidden(&seller.get(asked).text, "method=\"post\" action=\"/bench/cuts\"", "seen"), seen);
    assert_eq!(seller.get(&kept.location).status, 404);
}

/// The lines of a kept list of cuts.
fn list_of(table: &Table, id: &str) -> Vec<CutLine> {
    let lists =
        table.desk.with_ledger(|ledger| ledger.pages::<CutList>(CUT_LISTS)).expect("the ledger").expect("lists");
    lists.into_iter().find(|kept| kept.id == id).expect("the list").page.lines
}

fn post(seller: &Seller, path: &str, fields: &[(&str, &str)]) -> u16 {
    let form = Uuid::now_v7().to_string();
    let all: Vec<(&str, &str)> = std::iter::once(("form", form.as_str())).chain(fields.iter().copied()).collect();
    seller.post(path, &all).status
}

fn plans_at_the_terminal(table: &Table) {
    let show = object(table, &["prep", "plans"])["shows"][0].clone();
    let told =
        ["day", "place", "fee", "deadline", "permit"].map(|field| show[field].as_str().expect("words").to_owned());
    assert_eq!((told.join(" "), &show["over"]), ("2031-05-09 Mill Lane 45.50 2031-02-01 A-17".into(), &false.into()));
    let order = object(table, &["prep", "orders"])["orders"][0].clone();
    assert_eq!(
        (&order["due"], &order["number"], &order["late"], &order["done"]),
        (&"2020-01-02".into(), &"+4930901820".into(), &true.into(), &false.into())
    );
}

#[test]
fn what_was_forgotten_is_packed_first_and_plans_are_plain_fields() {
    let table = Table::new();
    let seller = table.seller();
    assert_eq!(post(&seller, "/bench/packing", &[("usual", "1")]), 303);
    assert_eq!(post(&seller, "/bench/packing", &[("what", "Spare fuse"), ("spare", "1")]), 303);
    assert_eq!(post(&seller, "/bench/packing", &[("what", "  ")]), 400);
    assert_eq!(post(&seller, "/bench/packing/none", &[("act", "packed")]), 404);
    let page = seller.get("/bench/packing").text;
    assert!(page.contains("13 things are still to be packed") && page.contains("Pliers"), "{page}");
    let (before, _) = page.split_once("Packed: Spare fuse").expect("the fuse");
    let (_, address) = before.rsplit_once("action=\"").expect("its form");
    let address = address.split('"').next().expect("an address").to_owned();
    assert_eq!(post(&seller, &address, &[("act", "forgotten")]), 303);
    assert_eq!(post(&seller, &address, &[("act", "packed")]), 303);
    let page = seller.get("/bench/packing").text;
    let at = |words: &str| page.find(words).unwrap_or_else(|| panic!("no {words}"));
    assert!(at("Spare fuse") < at("Pliers") && page.contains("forgotten once") && page.contains("12 things"), "{page}");
    let list = object(&table, &["prep", "packing"]);
    let first = serde_json::json!({ "what": "Spare fuse", "spare": true, "packed": true, "forgotten": 1 });
    assert_eq!((&list["left"], &list["items"][0]), (&12.into(), &first), "{list}");
    assert_eq!(post(&seller, "/bench/packing/all", &[("act", "again")]), 303);
    assert!(seller.get("/bench/packing").text.contains("13 things"));
    assert_eq!(post(&seller, &address, &[("act", "gone")]), 303);
    assert!(!seller.get("/bench/packing").text.contains("Spare fuse"));

    let show = [
        ("day", "2031-05-09"),
        ("place", "Mill Lane"),
        ("fee", "45,50"),
        ("deadline", "2031-02-01"),
        ("permit", "A-17"),
    ];
    assert_eq!(post(&seller, "/bench/plans/shows", &show), 303);
    for wrong in [
        [("day", "2031-13-09"), ("place", "x")],
        [("day", "2031-05"), ("place", "x")],
        [("day", "2031-05-09"), ("place", " ")],
    ] {
        assert_eq!(post(&seller, "/bench/plans/shows", &wrong), 400, "{wrong:?}");
    }
    assert_eq!(
        post(
            &seller,
            "/bench/plans/orders",
            &[("due", "2020-01-02"), ("agreed", "Two moons, 40 cm"), ("number", "+49 30/901820")]
        ),
        303
    );
    for number in ["Zoë", "1234567890123456", "zoe@shop.example"] {
        assert_eq!(
            post(&seller, "/bench/plans/orders", &[("due", "2031-01-02"), ("agreed", "x"), ("number", number)]),
            400
        );
    }
    let page = seller.get("/bench/plans").text;
    assert!(page.contains("Fee: 45.50") || page.contains("Fee: $45.50"), "{page}");
    assert!(page.contains("Permit: A-17.") && page.contains("+4930901820") && page.contains("late"), "{page}");
    plans_at_the_terminal(&table);
    let (_, address) = page.split_once("action=\"/bench/plans/orders/").expect("the order's form");
    let address = format!("/bench/plans/orders/{}", address.split('"').next().expect("an id"));
    assert_eq!(post(&seller, &address, &[("act", "done")]), 303);
    assert!(!seller.get("/bench/plans").text.contains(">late<"));
    assert_eq!(post(&seller, &address, &[("act", "gone")]), 303);
    assert!(!seller.get("/bench/plans").text.contains("Two moons"));
    assert_eq!(object(&table, &["prep", "orders"]), serde_json::json!({ "orders": [] }));
    assert_eq!(post(&seller, "/bench/plans/orders/none", &[("act", "gone")]), 404);
}

/// The page, its files and the terminal tell one year.
#[test]
fn the_years_page_and_files_say_what_the_terminal_says() {
    let table = Table::new();
    let seller = table.seller();
    let catalog: std::sync::Arc<Catalog> = table.catalog();
    let numbers = [sells(&table, 0), sells(&table, 1)];
    let year = jiff::Timestamp::now().to_zoned_datetime(jiff::tz::TimeZone::system()).year().to_string();
    let told = object(&table, &["show", "year", &year]);
    let net: rust_decimal::Decimal = told["tax"][0]["net"].as_str().expect("an amount").parse().expect("a number");
    let marked =
        catalog.base("chain-brass").expect("a chain").price + catalog.drop_kind("key-heart").expect("a key").price;
    assert_eq!((net, numbers.len()), (marked * rust_decimal::Decimal::TWO, 2));
    let page = seller.get(&format!("/bench/year?year={year}")).text;
    assert!(page.contains(&format!("{net}")), "{net}: {page}");
    let file = seller.get(&format!("/bench/year/{year}-tax.csv"));
    assert!(file.status == 200 && file.text.contains(&format!("{net}")), "{}", file.text);
    let whole: Value = serde_json::from_str(&seller.get(&format!("/bench/year/{year}.json")).text).expect("JSON");
    assert_eq!(whole, told);
    for missing in ["/bench/year/2026-none.csv", "/bench/year/2026-tax.json", "/bench/year/none"] {
        assert_eq!(seller.get(missing).status, 404, "{missing}");
    }
    for wrong in ["/bench/year?year=x", "/bench/year?on=2026-02-30", "/bench/year/20-tax.csv", "/bench/stock/today.csv"]
    {
        assert_eq!(seller.get(wrong).status, 400, "{wrong}");
    }
    // The stock at cost: what lies there now, by the parts in each.
    let today = jiff::Timestamp::now().to_zoned_datetime(jiff::tz::TimeZone::system()).date().to_string();
    let stock = object(&table, &["show", "stock", "--on", &today]);
    let key = stock["lines"]
        .as_array()
        .expect("lines")
        .iter()
        .find(|line| line["id"] == "key-heart")
        .expect("the key")
        .clone();
    // A blank of 40.00/50 and a ring of 19.00/494 for each, by parts.ron.
    let unit: rust_decimal::Decimal = key["unit_cost"].as_str().expect("a cost").parse().expect("a number");
    let by_hand = rust_decimal::Decimal::from(40) / rust_decimal::Decimal::from(50)
        + rust_decimal::Decimal::from(19) / rust_decimal::Decimal::from(494);
    assert_eq!(unit.round_dp(20), by_hand.round_dp(20));
    let there = catalog.drop_kind("key-heart").expect("a key").stock - 2;
    assert_eq!(key["count"].as_str(), Some(there.to_string().as_str()));
    let shown = seller.get("/bench/year").text;
    assert!(shown.contains("Stock at cost") && shown.contains("had cost"), "{shown}");
}

/// What the next order needs, on the page as in the command.
#[test]
fn the_shopping_list_is_that_of_the_terminal() {
    let table = Table::new();
    let seller = table.seller();
    let order = object(&table, &["prep", "parts"]);
    let page = seller.get("/bench/parts").text;
    for part in order["batch"]["parts"].as_array().expect("parts") {
        assert!(page.contains(part["name"].as_str().expect("a name")), "{part}");
    }
    let price: rust_decimal::Decimal = order["batch"]["price"].as_str().expect("an amount").parse().expect("a number");
    let mut price = price;
    price.rescale(2);
    assert!(price.is_zero() || page.contains(&price.to_string()), "{price}: {page}");
    fs::remove_file(table.catalog_file("parts.ron")).expect("gone");
    assert!(seller.get("/bench/parts").text.contains("parts.ron"));
}
