//! Parts without a text editor: written down, counted, added to, struck out, and taken back.

use std::fs;

use crate::{
    kit::Table,
    pages::{hidden, object},
    seller::Seller,
};

fn file(table: &Table) -> String {
    fs::read_to_string(table.catalog_file("parts.ron")).expect("parts.ron")
}

/// What the page of a part says of the place that it shows.
fn seen(seller: &Seller, part: &str) -> String {
    hidden(&seller.get(&format!("/bench/drawers/part/{part}")).text, "method=\"post\"", "seen")
}

fn acts(seller: &Seller, part: &str, act: &str, field: &str, value: &str) -> u16 {
    let seen = seen(seller, part);
    seller.post(&format!("/bench/drawers/part/{part}/{act}"), &[("seen", &seen), (field, value)]).status
}

fn undo(seller: &Seller) {
    let page = seller.get("/bench/drawers").text;
    let number = hidden(&page, "action=\"/table/undo\"", "number");
    let undone = seller.post("/table/undo", &[("number", &number), ("back", "/bench/drawers")]);
    assert_eq!(undone.location, format!("/bench/drawers?undone={number}"), "{}", undone.text);
}

/// Every act changes its figure and no other byte, and each is taken back.
#[test]
fn a_part_is_counted_added_to_written_down_and_struck_out() {
    let table = Table::new();
    let seller = table.seller();
    let by_hand = file(&table).replacen("drawer: 140)", "drawer: 140 /* blue box */)", 1);
    assert_ne!(by_hand, file(&table));
    fs::write(table.catalog_file("parts.ron"), &by_hand).expect("written");
    assert_eq!(acts(&seller, "ring-5", "count", "there", "97"), 303);
    assert_eq!(file(&table), by_hand.replacen("drawer: 140", "drawer: 97", 1));
    assert_eq!(acts(&seller, "ring-5", "add", "more", "200"), 303);
    assert_eq!(file(&table), by_hand.replacen("drawer: 140", "drawer: 297", 1));
    undo(&seller);
    undo(&seller);
    assert_eq!(file(&table), by_hand);
    assert_eq!(acts(&seller, "silk", "add", "more", "50m; 12,5m"), 303);
    let silk = object(&table, &["prep", "drawers"])["parts"].as_array().expect("parts").last().expect("silk").clone();
    assert_eq!(silk["spools_mm"], serde_json::json!([50000.0, 18000.0, 50000.0, 12500.0]));
    assert_eq!(acts(&seller, "silk", "count", "there", "18m"), 303);
    assert_eq!(file(&table), by_hand.replacen("[\"50m\", \"18m\"]", "[\"18m\"]", 1));
    undo(&seller);
    undo(&seller);
    // One that is new, and the same sent twice.
    let new = [("name", "Velvet ribbon"), ("measure", "length"), ("there", "10m; 3m"), ("keep_from", "40cm")];
    let new = [&new[..], &[("amount", "10m"), ("price", "6.50"), ("kerf", "")]].concat();
    for _ in 0..2 {
        assert_eq!(seller.post("/bench/drawers/new", &new).status, 303);
    }
    let entry = "(id: \"velvet-ribbon\", name: \"Velvet ribbon\", lots: [(length: \"10m\", price: \"6.50\")], \
                 spools: [\"10m\", \"3m\"], keep_from: \"400mm\"),";
    let lines: Vec<String> =
        file(&table).lines().filter(|line| !by_hand.contains(line.trim())).map(str::to_owned).collect();
    assert_eq!(lines.iter().map(|line| line.trim()).collect::<Vec<_>>(), [entry]);
    assert!(seller.get("/bench/cuts").text.contains("Velvet ribbon"), "it can be cut at once");
    assert_eq!(acts(&seller, "velvet-ribbon", "strike", "go", ""), 303);
    assert_eq!(file(&table), by_hand);
    // What something is made of stays.
    let refused = seller.post("/bench/drawers/part/ring-5/strike", &[("seen", &seen(&seller, "ring-5"))]);
    assert!(refused.status == 409 && refused.text.contains("stands in recipes"), "{}", refused.text);
    assert_eq!(file(&table), by_hand);
}

/// What was typed wrong is told in words; what a text editor did meanwhile is shown; two touches are one.
#[test]
fn what_can_be_no_count_is_told_and_nobody_is_overwritten() {
    let table = Table::new();
    let seller = table.seller();
    let before = file(&table);
    for (part, act, field, value) in [
        ("ring-5", "count", "there", "-1"),
        ("ring-5", "count", "there", "many"),
        ("ring-5", "add", "more", ""),
        ("ring-5", "add", "more", "0"),
        ("ring-5", "count", "there", "99999999999"),
        ("silk", "add", "more", "3"),
        ("silk", "add", "more", ""),
        ("silk", "count", "there", "10m; -1m"),
        ("silk", "count", "there", "9km"),
    ] {
        assert_eq!(acts(&seller, part, act, field, value), 400, "{part} {act} {value}");
    }
    for (name, measure, keep) in [("", "pieces", ""), ("Ribbon", "length", ""), (&"x".repeat(61), "pieces", "")] {
        let fields = [("name", name), ("measure", measure), ("keep_from", keep), ("there", "")];
        assert_eq!(seller.post("/bench/drawers/new", &fields).status, 400, "{name} {measure}");
    }
    assert_eq!(seller.get("/bench/drawers/part/none").status, 404);
    assert_eq!(seller.post("/bench/drawers/part/none/count", &[("there", "1")]).status, 404);
    assert_eq!(file(&table), before);
    let seen = seen(&seller, "ring-5");
    let twice = || seller.post("/bench/drawers/part/ring-5/add", &[("seen", &seen), ("more", "10")]);
    assert_eq!((twice().status, twice().status), (303, 409), "the second touch is told");
    assert_eq!(file(&table), before.replacen("drawer: 140", "drawer: 150", 1));
}

/// A maker who has no such file begins it on the page, writes a part down, and takes both back; nothing of what is there is
/// ever begun anew.
#[test]
fn the_file_is_begun_on_the_page() {
    let table = Table::new();
    let seller = table.seller();
    let there = file(&table);
    let begin = |hour: &str, step: &str| seller.post("/bench/drawers/begin", &[("hour", hour), ("step", step)]);
    assert_eq!(begin("15", "1").status, 303);
    assert_eq!(file(&table), there, "one that is there stays");
    fs::remove_file(table.catalog_file("parts.ron")).expect("removed");
    let page = seller.get("/bench/drawers").text;
    assert!(page.contains("action=\"/bench/drawers/begin\""), "{page}");
    for (hour, step) in [("", "1"), ("15", ""), ("0", "1"), ("15", "0"), ("much", "1"), ("-3", "1"), ("15.001", "1")] {
        let refused = begin(hour, step);
        assert!(refused.status == 400 && refused.text.contains("role=\"alert\""), "{hour} {step}: {}", refused.text);
    }
    assert!(!table.catalog_file("parts.ron").exists(), "what was typed wrong begins nothing");
    assert_eq!(begin("15", "0.50").status, 303);
    let begun = file(&table);
    assert!(begun.contains("hour: \"15.00\"") && begun.contains("price_step: \"0.50\""), "{begun}");
    for page in
        ["/bench", "/bench/drawers", "/bench/parts", "/bench/prices", "/bench/cuts", "/bench/lots", "/bench/made"]
    {
        assert_eq!(seller.get(page).status, 200, "{page} with nothing in the file");
    }
    let new = [("name", "Jump ring"), ("measure", "pieces"), ("there", "40"), ("amount", ""), ("price", "")];
    assert_eq!(seller.post("/bench/drawers/new", &new).status, 303);
    assert!(seller.get("/bench/drawers").text.contains("Jump ring"));
    undo(&seller);
    assert_eq!(file(&table), begun);
    undo(&seller);
    assert!(!table.catalog_file("parts.ron").exists());
}

/// The terminal does the same, with the same way back.
#[test]
fn the_terminal_counts_and_writes_parts_down() {
    let table = Table::new();
    let seller = table.seller();
    let before = file(&table);
    let counted = object(&table, &["prep", "drawers", "count", "ring-5", "97"]);
    assert_eq!((&counted["changed"], &counted["part"]["count"]), (&true.into(), &97.into()));
    let added = object(&table, &["prep", "drawers", "add", "silk", "50m"]);
    assert_eq!(added["part"]["spools_mm"], serde_json::json!([50000.0, 18000.0, 50000.0]));
    let new = ["prep", "drawers", "new", "Cord", "--keep-from", "30cm", "--spool", "5m", "--lot", "5m=4"];
    let new = object(&table, &new);
    assert_eq!((&new["part"]["part"], &new["part"]["spools_mm"]), (&"cord".into(), &serde_json::json!([5000.0])));
    assert!(seller.get("/bench/drawers").text.contains("Cord"));
    assert_eq!(object(&table, &["prep", "drawers", "strike", "cord"])["changed"], true);
    for undone in
        ["part cord struck out", "part Cord written down", "Silk thread added to", "Jump ring 5 mm, 20 gauge counted"]
    {
        assert_eq!(object(&table, &["prep", "undo"])["undone"], undone);
    }
    assert_eq!(file(&table), before);
}
