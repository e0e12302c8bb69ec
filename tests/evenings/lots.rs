//! Lots that are written down: on the page, at the terminal, by hand, and what follows from them at once.

use std::fs;

use chatelaine::catalog::PartCount;
use rust_decimal::Decimal;
use serde_json::Value;

use crate::{
    kit::Table,
    pages::{hidden, object},
    seller::Seller,
};

const RINGS: [(&str, &str); 9] = [
    ("part", "ring-5"),
    ("lot", "R5-26-2 \"b\""),
    ("day", "2026-04-02"),
    ("amount", "500"),
    ("spools", ""),
    ("broken", "4"),
    ("price", "9.90"),
    ("paper", "declaration, blue folder"),
    ("put_away", "1"),
];

/// The fields with one of them changed.
fn with<'a>(name: &str, value: &'a str) -> Vec<(&'a str, &'a str)> {
    RINGS.iter().map(|(one, was)| (*one, if *one == name { value } else { was })).collect()
}

fn file(table: &Table) -> String {
    fs::read_to_string(table.catalog_file("parts.ron")).expect("parts.ron")
}

/// The lines that two texts do not share, each with its sign.
fn differ(before: &str, after: &str) -> Vec<String> {
    let (old, new): (Vec<&str>, Vec<&str>) = (before.lines().collect(), after.lines().collect());
    let gone = old.iter().filter(|line| !new.contains(line)).map(|line| format!("-{}", line.trim()));
    let come = new.iter().filter(|line| !old.contains(line)).map(|line| format!("+{}", line.trim()));
    gone.chain(come).collect()
}

fn amount(value: &Value) -> Decimal {
    value.as_str().expect("an amount").parse().expect("a number")
}

fn part(order: &Value, id: &str) -> Value {
    let parts = order["batch"]["parts"].as_array().expect("parts");
    parts.iter().find(|part| part["part"] == id).unwrap_or_else(|| panic!("no {id}")).clone()
}

fn change_address(page: &str, lot: &str) -> String {
    let (_, rest) = page.split_once("/bench/lots/change?").expect("a way to change");
    let all: Vec<&str> = std::iter::once(rest).chain(page.split("/bench/lots/change?").skip(2)).collect();
    let query = all.iter().map(|rest| rest.split('"').next().expect("an address")).find(|query| query.contains(lot));
    format!("/bench/lots/change?{}", query.unwrap_or_else(|| panic!("no {lot}")).replace("&amp;", "&"))
}

/// One entry comes, one drawer grows, every other byte stays; what is bought counts at once for costs, shopping and recall;
/// sent twice it is one; undone, the file is as it was.
#[test]
fn a_lot_is_written_down_once_and_counts_at_once() {
    let table = Table::new();
    let seller = table.seller();
    let by_hand = file(&table).replacen("bought: [", "bought: [ // by hand: from the yellow slips", 1);
    fs::write(table.catalog_file("parts.ron"), &by_hand).expect("written");
    let costs = object(&table, &["prep", "costs"]);
    assert_eq!(seller.post("/bench/lots/write", &RINGS).status, 303);
    let after = file(&table);
    let lines = differ(&by_hand, &after);
    assert_eq!(lines.len(), 3, "{lines:?}");
    assert!(lines[0].contains("drawer: 140"), "{lines:?}");
    assert_eq!(lines[1], lines[0].replacen('-', "+", 1).replace("drawer: 140", "drawer: 636"));
    assert_eq!(
        lines[2],
        "+(part: \"ring-5\", lot: \"R5-26-2 \\\"b\\\"\", day: \"2026-04-02\", count: 500, broken: 4, price: \"9.90\", \
         paper: \"declaration, blue folder\"),"
    );
    // Sent twice it is one lot, and the drawer grows once.
    assert_eq!(seller.post("/bench/lots/write", &RINGS).status, 303);
    assert_eq!(file(&table), after);
    // The same lot otherwise is refused in words, and what was typed is not lost.
    let other = seller.post("/bench/lots/write", &with("amount", "400"));
    assert_eq!(other.status, 409, "{}", other.text);
    assert!(other.text.contains("is written down already"), "{}", other.text);
    // Costs: (4.20 + 9.90) over (198 + 496) rings.
    let chain = |costs: &Value| {
        let parts = costs["parts"].as_array().expect("parts");
        let one = parts.iter().find(|one| one["priced"]["id"] == "chain-brass").expect("the chain");
        amount(&one["priced"]["cost"]["parts"])
    };
    let ring = Decimal::new(141, 1) / Decimal::from(694) - Decimal::new(42, 1) / Decimal::from(198);
    let dearer = chain(&object(&table, &["prep", "costs"])) - chain(&costs);
    assert_eq!(dearer.round_dp(12), ring.round_dp(12));
    // Shopping: there are as many as lie in the drawer now.
    let order = object(&table, &["prep", "parts", "chain-brass=600"]);
    assert_eq!(
        (amount(&part(&order, "ring-5")["there"]), amount(&part(&order, "ring-5")["short"])),
        (636.into(), 0.into())
    );
    // Recall finds it by its name, on the page and at the terminal.
    assert_eq!(object(&table, &["prep", "recall", "r5-26-2 \"B\""])["recall"]["parts"], serde_json::json!(["ring-5"]));
    assert!(seller.get("/bench/lots?lot=R5-26-2%20%22b%22").text.contains("Where lot R5-26-2 &quot;b&quot; may be"));
    assert!(seller.get("/bench/made").text.contains("ring-5|R5-26-2 &quot;b&quot;"));
    // The way back.
    let page = seller.get("/bench/lots").text;
    assert!(page.contains("declaration, blue folder"), "{page}");
    let number = hidden(&page, "action=\"/table/undo\"", "number");
    let undone = seller.post("/table/undo", &[("number", &number), ("back", "/bench/lots")]);
    assert_eq!(undone.location, format!("/bench/lots?undone={number}"), "{}", undone.text);
    assert_eq!(file(&table), by_hand);
    assert!(seller.get(&undone.location).text.contains("Undone: lot R5-26-2"));
}

/// What somebody typed wrong is said beside what was typed, and nothing is written.
#[test]
fn a_lot_that_cannot_be_is_told_in_words() {
    let table = Table::new();
    let seller = table.seller();
    let before = file(&table);
    let long = "x".repeat(61);
    for (name, value, told) in [
        ("part", "ring-6", "No part is called that"),
        ("lot", " ", "what the supplier calls the lot"),
        ("lot", long.as_str(), "in 60 letters at most"),
        ("day", "2026-02-30", "2026-02-30"),
        ("day", "2026-02", "is no day"),
        ("amount", "0", "Write how many of"),
        ("amount", "20m", "20m"),
        ("amount", "-3", "-3"),
        ("broken", "501", "More is broken than came"),
        ("price", "-1", "-1"),
        ("price", "cheap", "cheap"),
        ("paper", long.as_str(), "which paper it is"),
    ] {
        let answer = seller.post("/bench/lots/write", &with(name, value));
        assert_eq!(answer.status, 400, "{name} {value}: {}", answer.text);
        assert!(answer.text.contains(told), "{name} {value}: {}", answer.text);
        let kept = if name == "paper" { "value=\"9.90\"" } else { "value=\"declaration, blue folder\"" };
        assert!(answer.text.contains(kept), "{name}: what was typed is lost: {}", answer.text);
    }
    let chain = [("part", "cable-brass"), ("lot", "S9"), ("day", "2026-04-02"), ("price", "40"), ("put_away", "1")];
    for (amount, spools, told) in [
        ("20", "1", "is no length"),
        ("20m", "0", "from 1 to 100"),
        ("20m", "x", "from 1 to 100"),
        ("0m", "1", "is no length"),
    ] {
        let fields = [chain.as_slice(), &[("amount", amount), ("spools", spools)]].concat();
        let answer = seller.post("/bench/lots/write", &fields);
        assert!(answer.status == 400 && answer.text.contains(told), "{amount} {spools}: {}", answer.text);
    }
    // More in a drawer than is ever counted is the reader's to refuse.
    let many = with("amount", "100000");
    let full = file(&table).replacen("price: \"4.20\")], drawer: 140", "price: \"4.20\")], drawer: 999999", 1);
    fs::write(table.catalog_file("parts.ron"), &full).expect("written");
    let answer = seller.post("/bench/lots/write", &many);
    assert!(answer.status == 400 && answer.text.contains("1000000"), "{}", answer.text);
    assert_eq!(file(&table), full);
    // A file that somebody broke by hand is neither read nor written; the table's other files are.
    fs::write(table.catalog_file("parts.ron"), before.replacen("parts: [", "parts: ", 1)).expect("written");
    let broken = file(&table);
    assert_eq!(seller.post("/bench/lots/write", &RINGS).status, 409);
    assert_eq!(seller.post("/table/trays/name", &[("letter", "A"), ("name", "Keys, small")]).status, 303);
    assert_eq!(file(&table), broken);
}

/// A lot is corrected with the rest as somebody wrote it; what a text editor did meanwhile is shown, and neither is lost.
#[test]
fn a_lot_is_corrected_and_what_was_done_by_hand_is_not_lost() {
    let table = Table::new();
    let seller = table.seller();
    let before = file(&table);
    let page = seller.get("/bench/lots").text;
    let form = seller.get(&change_address(&page, "K-26-1")).text;
    let own = |name: &str| hidden(&form, "action=\"/bench/lots/change\"", name);
    let key = ["seen", "was_part", "was_lot", "was_day", "part", "lot", "day", "amount", "price"].map(|name| {
        let value = if ["lot", "day", "amount", "price"].contains(&name) {
            let (_, rest) = form.split_once(&format!("id=\"{name}\"")).expect("the field");
            let (_, rest) = rest.split_once("value=\"").expect("its value");
            rest.split('"').next().expect("a value").to_owned()
        } else {
            own(name)
        };
        (name, value)
    });
    let mut fields: Vec<(&str, &str)> = key.iter().map(|(name, value)| (*name, value.as_str())).collect();
    fields.extend([("broken", "3"), ("paper", "letter of 5 March")]);
    // Meanwhile a text editor tells another price.
    let line = "lot: \"K-26-1\", day: \"2026-03-02\", count: 50, price: \"40.00\"";
    assert!(before.contains(line));
    let by_hand = before.replacen(line, &line.replace("40.00", "41.00"), 1);
    fs::write(table.catalog_file("parts.ron"), &by_hand).expect("written");
    let conflict = seller.post("/bench/lots/change", &fields);
    assert_eq!(conflict.status, 409, "{}", conflict.text);
    assert!(conflict.text.contains("41.00") && conflict.text.contains("letter of 5 March"), "{}", conflict.text);
    assert_eq!(file(&table), by_hand);
    // All the same: only what is other is written.
    let seen = hidden(&conflict.text, "action=\"/bench/lots/change\"", "seen");
    fields.iter_mut().filter(|(name, _)| *name == "seen").for_each(|field| field.1 = &seen);
    assert_eq!(seller.post("/bench/lots/change", &fields).status, 303);
    let lines = differ(&by_hand, &file(&table));
    assert_eq!(lines.len(), 2, "{lines:?}");
    assert!(
        lines[1].contains("broken: 3")
            && lines[1].contains("price: \"40.00\"")
            && lines[1].contains("letter of 5 March")
    );
    assert!(lines[1].contains("count: 50,"), "{lines:?}");
    let written = file(&table);
    assert!([303, 409].contains(&seller.post("/bench/lots/change", &fields).status), "sent twice");
    assert_eq!(file(&table), written);
    // Struck out, it is gone from recall; the second time it is told.
    let page = seller.get(&change_address(&seller.get("/bench/lots").text, "K-26-1")).text;
    let seen = hidden(&page, "action=\"/bench/lots/strike\"", "seen");
    let gone = [("seen", seen.as_str()), ("was_part", "key-blank"), ("was_lot", "K-26-1"), ("was_day", "2026-03-02")];
    assert_eq!(seller.post("/bench/lots/strike", &gone).status, 303);
    assert_eq!(seller.get("/bench/lots?lot=K-26-1").status, 404);
    let again = seller.post("/bench/lots/strike", &gone).status;
    assert!([404, 409].contains(&again), "{again}");
}

/// Spools that come lie beside what cuts have left, and the undo of the lot brings neither back.
#[test]
fn spools_that_come_lie_beside_what_was_cut() {
    let table = Table::new();
    let seller = table.seller();
    let cut = cut_first_line(&table, &seller);
    let chain = [
        ("part", "cable-brass"),
        ("lot", "S9"),
        ("day", "2026-04-02"),
        ("amount", "20m"),
        ("spools", "2"),
        ("price", "48"),
        ("put_away", "1"),
    ];
    let before = file(&table);
    assert_eq!(seller.post("/bench/lots/write", &chain).status, 303);
    assert!(!file(&table).contains(&format!("\"{cut}\"")), "what was cut is not there again: {}", file(&table));
    let line = file(&table).lines().find(|line| line.contains("spools:")).expect("spools").to_owned();
    assert!(line.ends_with("\"10m\", \"10m\"], kerf: \"4.2mm\", keep_from: \"14in\"),"), "{line}");
    assert_eq!(seller.post("/bench/lots/write", &chain).status, 303);
    assert_eq!(line, file(&table).lines().find(|line| line.contains("spools:")).expect("spools"));
    let page = seller.get("/bench/lots").text;
    let number = hidden(&page, "action=\"/table/undo\"", "number");
    assert_eq!(seller.post("/table/undo", &[("number", &number), ("back", "/bench/lots")]).status, 303);
    assert_eq!(file(&table), before);
}

/// Keeps a list of cuts of brass chain and ticks its first line off; how long that spool was, as the file writes it.
fn cut_first_line(table: &Table, seller: &Seller) -> String {
    let asked = "/bench/cuts?part=cable-brass&length=18in&count=1";
    let page = seller.get(asked).text;
    let [form, seen] = ["form", "seen"].map(|name| hidden(&page, "method=\"post\" action=\"/bench/cuts\"", name));
    let fields =
        [("form", form.as_str()), ("part", "cable-brass"), ("seen", &seen), ("length", "18in"), ("count", "1")];
    let kept = seller.post("/bench/cuts", &fields);
    let id = uuid::Uuid::now_v7().to_string();
    assert_eq!(seller.post(&kept.location, &[("form", &id), ("line", "0"), ("on", "1")]).status, 303);
    let spools = table.desk.with_ledger(|ledger| chatelaine::bench::parts_now(ledger));
    let now = spools.expect("the ledger").expect("pages").remove(0).page;
    let PartCount::Spools(file) = &now.file else { panic!("{now:?}") };
    let gone: Vec<_> = file.iter().filter(|one| !now.spools().contains(one)).collect();
    assert_eq!(gone.len(), 1, "{now:?}");
    chatelaine::catalog::written_length(*gone[0])
}

/// What the terminal writes the desk has at once, by the same editor and with the same way back.
#[test]
fn the_terminal_writes_what_the_desk_has_at_once() {
    let table = Table::new();
    let seller = table.seller();
    let before = file(&table);
    let bought =
        ["prep", "bought", "bead", "--lot", "BD-26-2", "--day", "2026-05-01", "--amount", "40", "--price", "14.00"];
    let told = object(&table, &[&bought[..], &["--broken", "1", "--paper", "letter"]].concat());
    assert_eq!(
        (&told["written"], &told["there"]["count"], &told["lot"]["name"]),
        (&true.into(), &101.into(), &"Stone bead 10 mm".into())
    );
    assert_eq!(object(&table, &[&bought[..], &["--broken", "1", "--paper", "letter"]].concat())["written"], false);
    assert!(seller.get("/bench/lots").text.contains("BD-26-2"));
    let listed = object(&table, &["prep", "lots"]);
    let lots = listed["lots"].as_array().expect("lots");
    assert!(lots.iter().any(|lot| lot["lot"] == "BD-26-2" && lot["broken"] == 1 && lot["paper"] == "letter"));
    assert_eq!(object(&table, &["prep", "undo"])["undone"], "lot BD-26-2 written down");
    assert_eq!(file(&table), before);
    let struck = object(&table, &["prep", "strike", "bead", "--lot", "BD-26-1", "--day", "2026-03-02"]);
    assert_eq!(struck["struck"], "BD-26-1");
    // The desk takes back what the terminal did.
    let page = seller.get("/bench/lots").text;
    assert!(page.contains("Undo: lot BD-26-1 struck out"), "{page}");
    let number = hidden(&page, "action=\"/table/undo\"", "number");
    assert_eq!(seller.post("/table/undo", &[("number", &number), ("back", "/bench/lots")]).status, 303);
    assert_eq!(file(&table), before);
    let silk = [
        "prep",
        "bought",
        "silk",
        "--lot",
        "SK-2",
        "--day",
        "2026-05-01",
        "--amount",
        "100m",
        "--spools",
        "2",
        "--price",
        "24",
    ];
    assert_eq!(object(&table, &silk)["there"]["spools_mm"], serde_json::json!([50000.0, 18000.0, 50000.0, 50000.0]));
}

/// A drop or base that is taken off the table takes its own recipe along, so that the workshop's file stays right, and both
/// come back together.
#[test]
fn what_is_taken_off_the_table_takes_its_recipe_along() {
    let table = Table::new();
    let seller = table.seller();
    let before = file(&table);
    let page = seller.get("/table/bases/chain-silver").text;
    let seen = hidden(&page, "action=\"/table/bases/chain-silver/retire\"", "seen");
    assert_eq!(seller.post("/table/bases/chain-silver/retire", &[("seen", &seen)]).status, 303);
    assert!(!file(&table).contains("id: \"chain-silver\""));
    assert!(!seller.get("/bench/parts").text.contains("parts.ron has mistakes"));
    let number = hidden(&seller.get("/table").text, "action=\"/table/undo\"", "number");
    assert_eq!(seller.post("/table/undo", &[("number", &number)]).status, 303);
    assert_eq!(file(&table), before);
}
