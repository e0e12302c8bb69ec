//! Lengths that are cut at the table, from the first touch to the page that tells what is left.

use chatelaine::{
    bench::{PartNow, parts_now},
    catalog::{PartCount, read_workshop},
    craft::{Length, Piece},
    ledger::{Corrected, TakeBack},
    money::Tender,
    prep::cuts::Tenths,
    ticket::{SentTicket, State},
};
use serde_json::Value;

use crate::{
    book::{check_all, sent},
    kit::Table,
    pages::{hidden, object},
    seller::Seller,
};

/// A ticket for a chain of brass of this length, with everything ticked off.
fn checked(table: &Table, sequence: u16, inches: f64) -> SentTicket {
    let catalog = table.catalog();
    let plain = sent(&catalog, sequence, &["charm-moon"]);
    let piece = Piece { length: Some(Length::from_mm(inches * 25.4)), ..plain.piece.clone() };
    let show = table.desk.with_ledger(|ledger| ledger.show()).expect("the ledger").expect("a show").id;
    let ticket = SentTicket { show, piece, ..plain };
    let sends = ticket.clone();
    let done = table.desk.with_ledger(move |ledger| {
        ledger.receive(&sends, false, &catalog, jiff::Timestamp::now())?;
        check_all(ledger, sends.id);
        Ok::<_, chatelaine::ledger::LedgerError>(())
    });
    done.expect("the ledger").expect("entered");
    ticket
}

/// Rings a ticket up by card, as the seller's button does.
fn rings_up(table: &Table, seller: &Seller, ticket: &SentTicket) {
    let id = ticket.id;
    let total = table.desk.with_ledger(move |ledger| ledger.ticket(id)).expect("the ledger").expect("it").quote.total;
    let fields = [("tender", Tender::Card.name()), ("total", &total.to_string())];
    let answer = seller.post(&format!("/tickets/{id}/ring-up"), &fields);
    assert_eq!(answer.status, 303, "{}", answer.text);
}

fn on_hand(table: &Table, part: &str) -> (u32, u32) {
    let counts = table.desk.with_ledger(|ledger| ledger.counts()).expect("the ledger").expect("counts");
    (counts[part].on_hand, counts[part].held)
}

/// What lies there of a part now.
fn there(table: &Table, part: &str) -> PartCount {
    let workshop = read_workshop(&table.dir.path().join("catalog"), &table.catalog()).expect("whole").expect("there");
    let pages = table.desk.with_ledger(|ledger| parts_now(ledger)).expect("the ledger").expect("pages");
    PartNow::of(&workshop, part, &pages).expect("the part").now
}

fn spools(table: &Table, part: &str) -> Vec<Tenths> {
    let PartCount::Spools(lengths) = there(table, part) else { panic!("{part} lies in a drawer") };
    lengths
}

fn pieces(table: &Table, part: &str) -> u32 {
    let PartCount::Pieces(count) = there(table, part) else { panic!("{part} lies on spools") };
    count
}

/// How long the recipe makes a chain that is as long as it lies ready, with the cut and what is kept, by the file.
fn by_the_file(table: &Table) -> (f64, u32, Tenths, Tenths) {
    let catalog = table.catalog();
    let workshop = read_workshop(&table.dir.path().join("catalog"), &catalog).expect("whole").expect("there");
    let recipe = workshop.recipe(&catalog, "chain-brass").expect("a recipe");
    let need = recipe.needs.iter().find(|need| need.part == "cable-brass").expect("chain");
    let clasps = recipe.needs.iter().find(|need| need.part == "clasp-12").expect("a clasp");
    let chatelaine::catalog::There::Spools { kerf, keep_from, .. } = workshop.part("cable-brass").expect("it").there
    else {
        panic!("cable-brass lies in a drawer")
    };
    let number = |amount: rust_decimal::Decimal| amount.to_string().parse::<f64>().expect("a number");
    (number(need.amount), number(clasps.amount) as u32, kerf, keep_from)
}

/// The spool gets shorter by the chain and its cut, the clasp comes out of its drawer, no chain that lies ready is gone; the
/// same at the terminal; and what comes back brings nothing of it back.
#[test]
fn a_length_cut_at_the_table_comes_off_its_spool() {
    let table = Table::new();
    let seller = table.seller();
    let (ready, before, clasps) =
        (on_hand(&table, "chain-brass"), spools(&table, "cable-brass"), pieces(&table, "clasp-12"));
    let usual = table.catalog().base("chain-brass").expect("the chain").usual_length().expect("a length");
    let ticket = checked(&table, 0, 16.0);
    assert_eq!(on_hand(&table, "chain-brass"), ready, "none that lies ready is held");
    assert!(seller.get(&format!("/tickets/{}", ticket.id)).text.contains("Cut to length at the table"));
    rings_up(&table, &seller, &ticket);
    rings_up(&table, &seller, &ticket);
    assert_eq!(on_hand(&table, "chain-brass"), ready);
    let (recipe_mm, clasp, kerf, keep_from) = by_the_file(&table);
    let cut = Tenths::no_shorter(Length::from_mm(recipe_mm + 16.0 * 25.4 - usual.mm())).0 + kerf.0;
    let from = before.iter().filter(|one| one.0 >= cut).min().expect("a spool");
    let mut left: Vec<Tenths> = before.clone();
    left.remove(left.iter().position(|one| one == from).expect("it"));
    left.extend(Some(Tenths(from.0 - cut)).filter(|rest| *rest >= keep_from));
    left.sort_by(|a, b| b.cmp(a));
    assert_eq!(spools(&table, "cable-brass"), left, "by {cut} tenths of a millimetre, off {from}");
    assert_eq!(pieces(&table, "clasp-12"), clasps - clasp);
    let page = seller.get("/bench/drawers").text;
    assert!(page.contains(&ticket.number.to_string()) && page.contains("Cut at the table"), "{page}");
    let told = object(&table, &["prep", "drawers"]);
    let parts = told["parts"].as_array().expect("parts");
    let brass: &Value = parts.iter().find(|part| part["part"] == "cable-brass").expect("brass");
    assert_eq!(brass["spools_mm"], serde_json::json!(left.iter().map(|one| one.mm()).collect::<Vec<f64>>()));
    assert!(seller.get(&format!("/tickets/{}", ticket.id)).text.contains("length taken off the spool"));
    // It comes back: nothing of the chain does.
    let id = ticket.id;
    let back = table.desk.with_ledger(move |ledger| {
        let bill = ledger.ticket(id)?.bill.expect("its bill");
        let back = TakeBack { what: Corrected::Ticket(id), parts_home: true, reason: "too short".into() };
        ledger.take_back(bill, &back, Some(&Tender::Card), jiff::Timestamp::now())
    });
    back.expect("the ledger").expect("taken back");
    assert_eq!((on_hand(&table, "chain-brass"), spools(&table, "cable-brass")), (ready, left));
    assert!(seller.get(&format!("/tickets/{id}")).text.contains("nothing of it goes back"));
}

/// The length that lies ready is one that lies ready; made another at the table, it is free again, and back.
#[test]
fn what_lies_ready_is_held_as_long_as_it_is_meant() {
    let table = Table::new();
    let seller = table.seller();
    let usual = table.catalog().base("chain-brass").expect("the chain").usual_length().expect("a length");
    let (ready, before) = (on_hand(&table, "chain-brass"), spools(&table, "cable-brass"));
    let ticket = checked(&table, 0, usual.inches());
    assert_eq!(on_hand(&table, "chain-brass").1, ready.1 + 1);
    let makes = |mm: f64| {
        let answer = seller.post(&format!("/tickets/{}/length", ticket.id), &[("to", &mm.to_string())]);
        assert_eq!(answer.status, 303, "{}", answer.text);
    };
    makes(20.0 * 25.4);
    assert_eq!(on_hand(&table, "chain-brass"), ready, "it is cut, so none that lies ready is held");
    makes(usual.mm());
    assert_eq!(on_hand(&table, "chain-brass").1, ready.1 + 1);
    makes(20.0 * 25.4);
    assert_eq!(seller.post(&format!("/tickets/{}/let-go", ticket.id), &[]).status, 303);
    assert_eq!((on_hand(&table, "chain-brass"), spools(&table, "cable-brass")), (ready, before), "nothing was sold");
    // The last that lies ready is gone, and a length can still be cut.
    let gone = table.desk.with_ledger(|ledger| ledger.recount("chain-brass", 0, jiff::Timestamp::now()));
    gone.expect("the ledger").expect("counted");
    let cut = checked(&table, 1, 18.0);
    let id = cut.id;
    // And it can't become one that lies ready.
    let answer = seller.post(&format!("/tickets/{id}/length"), &[("to", &usual.mm().to_string())]);
    assert_eq!(answer.status, 409, "{}", answer.text);
    rings_up(&table, &seller, &cut);
    let state = table.desk.with_ledger(move |ledger| ledger.ticket(id)).expect("the ledger").expect("it").state;
    assert_eq!((state, on_hand(&table, "chain-brass")), (State::RungUp, (0, 0)));
}

/// Where no spool is that long the sale stands, nothing is less than nothing, and the page says that it has to be counted.
#[test]
fn what_no_spool_has_is_told_and_never_less_than_nothing() {
    let table = Table::new();
    let seller = table.seller();
    let file = table.catalog_file("parts.ron");
    let text = std::fs::read_to_string(&file).expect("parts.ron");
    let short = text.replace("\"10m\", \"7.35m\", \"1270mm\", \"985mm\", \"655mm\"", "\"300mm\"");
    assert_ne!(text, short);
    std::fs::write(&file, &short).expect("written");
    let ticket = checked(&table, 0, 20.0);
    rings_up(&table, &seller, &ticket);
    assert_eq!(spools(&table, "cable-brass"), [Tenths(3_000)]);
    assert!(seller.get("/bench/drawers").text.contains("there was not enough of “Brass cable chain”"));
}

/// A lot's spools are there, one of them is cut, the lot is taken back: refused in words, since there would be less than
/// nothing. Cut of another spool, it is taken back and the cut stays.
#[test]
fn a_lot_is_not_taken_back_once_it_was_cut() {
    let table = Table::new();
    let seller = table.seller();
    let file = table.catalog_file("parts.ron");
    let text = std::fs::read_to_string(&file).expect("parts.ron");
    let begun = text.replace("\"10m\", \"7.35m\", \"1270mm\", \"985mm\", \"655mm\"", "\"300mm\", \"600mm\"");
    std::fs::write(&file, &begun).expect("written");
    let lot = [("part", "cable-brass"), ("lot", "S9"), ("day", "2026-04-02"), ("amount", "2m"), ("spools", "1")];
    let lot = [&lot[..], &[("price", "48"), ("put_away", "1")]].concat();
    let undo = || {
        let page = seller.get("/bench/lots").text;
        let number = hidden(&page, "action=\"/table/undo\"", "number");
        seller.post("/table/undo", &[("number", &number), ("back", "/bench/lots")])
    };
    assert_eq!(seller.post("/bench/lots/write", &lot).status, 303);
    // What is short enough comes off the remnant of 60 cm: the lot is whole, so it is taken back and the remnant stays cut.
    let first = checked(&table, 0, 16.0);
    rings_up(&table, &seller, &first);
    let cut = spools(&table, "cable-brass");
    assert!(cut.contains(&Tenths(20_000)) && !cut.contains(&Tenths(6_000)), "{cut:?}");
    assert_eq!(undo().status, 303);
    let expected: Vec<Tenths> = cut.iter().copied().filter(|one| *one != Tenths(20_000)).collect();
    assert_eq!(spools(&table, "cable-brass"), expected, "the cut stays cut");
    // Again, and this time the lot itself is cut.
    assert_eq!(seller.post("/bench/lots/write", &lot).status, 303);
    let second = checked(&table, 1, 20.0);
    rings_up(&table, &seller, &second);
    let (left, written) = (spools(&table, "cable-brass"), std::fs::read_to_string(&file).expect("parts.ron"));
    let refused = undo();
    assert_eq!(refused.status, 409, "{}", refused.text);
    assert!(refused.text.contains("was cut or sold since"), "{}", refused.text);
    assert_eq!((spools(&table, "cable-brass"), std::fs::read_to_string(&file).expect("parts.ron")), (left, written));
    let mut command = std::process::Command::new(env!("CARGO_BIN_EXE_chatelaine"));
    command.args(["prep", "undo"]);
    for (name, folder) in [("--catalog", "catalog"), ("--data", "data")] {
        command.arg(name).arg(table.dir.path().join(folder));
    }
    let done = command.output().expect("it runs");
    assert!(!done.status.success() && String::from_utf8_lossy(&done.stderr).contains("was cut or sold since"));
}

/// A search that would go on tells how far it is and is stopped with the best so far, which is what is kept then; a page that
/// only renews itself begins no search.
#[test]
fn a_search_is_stopped_with_its_best_plan() {
    let table = Table::new();
    let seller = table.seller();
    let file = table.catalog_file("parts.ron");
    let text = std::fs::read_to_string(&file).expect("parts.ron");
    // So many pieces of a spool, and so many unlike spools, that no plan is soon known to be the best.
    let spools_mm: Vec<usize> = (0..190).map(|n| 8_003 + (13 * n * n + 571 * n) % 1_997).collect();
    let spools: Vec<String> = spools_mm.iter().map(|mm| format!("\"{mm}mm\"")).collect();
    let many = text.replace("\"10m\", \"7.35m\", \"1270mm\", \"985mm\", \"655mm\"", &spools.join(", "));
    assert_ne!(text, many);
    std::fs::write(&file, many).expect("written");
    let in_all_mm: usize = spools_mm.iter().sum();
    let lengths = [367, 461, 587, 709, 853, 991, 1153, 1399];
    let lengths: Vec<(String, usize)> =
        lengths.into_iter().map(|mm| (format!("{mm}mm"), in_all_mm * 97 / 100 / 8 / mm)).collect();
    let asked: String = lengths.iter().map(|(length, count)| format!("&length={length}&count={count}")).collect();
    let asked = format!("/bench/cuts?part=cable-brass{asked}&better=1");
    let looks_on = seller.agent.get(format!("{}{asked}", seller.url)).header("Cookie", &seller.cookie);
    let mut looks_on = looks_on.header("x-has", "none").call().expect("an answer");
    let looks_on = looks_on.body_mut().read_to_string().expect("a page");
    assert!(!looks_on.contains("/bench/cuts/stop"), "whoever looks on begins nothing: {looks_on}");
    let page = seller.get(&asked).text;
    assert!(page.contains("Looking for") && page.contains("action=\"/bench/cuts/stop\""), "{page}");
    let mut fields = vec![("part".to_owned(), "cable-brass".to_owned()), ("better".to_owned(), "1".to_owned())];
    for (length, count) in lengths {
        fields.extend([("length".to_owned(), length), ("count".to_owned(), count.to_string())]);
    }
    let said: Vec<(&str, &str)> = fields.iter().map(|(name, text)| (name.as_str(), text.as_str())).collect();
    let began = std::time::Instant::now();
    let stopped = seller.post("/bench/cuts/stop", &said);
    assert_eq!(stopped.status, 303, "{}", stopped.text);
    assert!(began.elapsed() < std::time::Duration::from_secs(10), "{:?}", began.elapsed());
    let best = seller.get(&stopped.location).text;
    assert!(!best.contains("/bench/cuts/stop"), "it has ended: {best}");
    assert!(best.contains("above the best plan") || best.contains("No plan loses less"), "{best}");
    let [form, seen] = ["form", "seen"].map(|name| hidden(&best, "method=\"post\" action=\"/bench/cuts\"", name));
    let kept = seller.post("/bench/cuts", &[&said[..], &[("form", form.as_str()), ("seen", seen.as_str())]].concat());
    assert_eq!((kept.status, kept.location), (303, format!("/bench/cuts/{form}")), "{}", kept.text);
}
