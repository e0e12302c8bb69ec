//! Odd forms and messages at a real desk.

use std::fs;

use chatelaine::{link::wire::Delivery, ticket::Receipt};
use serde_json::{Value, json};

use crate::checks::{
    catalogue::catalog,
    delivery::{self, GOOD},
    desk::{AskedDesk, Who, ticket_id},
};

/// One kept request: who asks, the line, the body, the status, and words of the answer.
type Asked = (String, String, String, u16, String);

#[test]
fn kept_forms_and_messages_are_refused_in_words() {
    let json = include_str!("kept/forms.json");
    let all: Vec<Asked> = serde_json::from_str(json).expect("the list");
    let desk = AskedDesk::start();
    let mut faults = Vec::new();
    for (who, line, body, status, words) in &all {
        let who = if who == "tablet" { Who::Tablet } else { Who::Seller };
        let told = desk.ask(who, &line.replace("ID", &ticket_id()), body.as_bytes());
        let reason = told.reason();
        if told.status != *status || !reason.contains(words.as_str()) || reason.chars().count() > 700 {
            faults
                .push(format!("{line:.80} {body:.60} should be {status} {words:?}, was {} {reason:.300}", told.status));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// The good delivery with one value changed.
fn changed(pointer: &str, value: Value) -> Vec<u8> {
    let mut delivery: Value = serde_json::from_slice(GOOD).expect("a delivery");
    *delivery.pointer_mut(pointer).unwrap_or_else(|| panic!("there is no {pointer}")) = value;
    serde_json::to_vec(&delivery).expect("a delivery")
}

/// The good delivery with the first drop of piece and sum under another id.
fn with_drop_id(id: &str) -> Vec<u8> {
    let one: Value = serde_json::from_slice(&changed("/ticket/piece/drops/0", json!(id))).expect("a delivery");
    let mut one = one;
    one["ticket"]["quote"]["drops"][0]["id"] = json!(id);
    serde_json::to_vec(&one).expect("a delivery")
}

/// Pieces that nobody can have made: the ledger says what is wrong, and nothing is entered.
#[test]
fn kept_deliveries_of_no_piece_are_refused() {
    let stored = delivery::answer(GOOD);
    assert_eq!(stored, Some(Receipt::Stored { short: vec![] }), "the good one is taken");
    for (data, words) in [
        (changed("/ticket/piece/length", json!(0.0)), "can't be made"),
        (changed("/ticket/piece/length", json!(-609.6)), "can't be made"),
        (changed("/ticket/piece/length", json!(1e308)), "can't be made"),
        (changed("/ticket/piece/length", json!(1e-300)), "can't be made"),
        (changed("/ticket/piece/neck", json!(0.0)), "is nobody's"),
        (changed("/ticket/piece/neck", json!(1e12)), "is nobody's"),
        (with_drop_id(""), "is the id of nothing"),
        (with_drop_id("key\0"), "is the id of nothing"),
        (with_drop_id("\u{202e}yek"), "is the id of nothing"),
        (with_drop_id(&"k".repeat(3000)), "is the id of nothing"),
        (changed("/ticket/quote/total", json!("1e10")), "sum"),
        (changed("/ticket/quote/total", json!("-1")), "sum"),
        (changed("/ticket/quote/base/price", json!("79228162514264337593543950335")), "is not between 0 and 1000000"),
        (changed("/ticket/quote/base/price", json!("0.0000000000000000000000000001")), "decimals"),
        (changed("/ticket/show", json!(i64::MAX)), "a show that this desk does not know"),
        (changed("/ticket/show", json!(i64::MIN)), "a show that this desk does not know"),
    ] {
        let Some(Receipt::Refused { reason, .. }) = delivery::answer(&data) else {
            panic!("taken: {:.3000}", String::from_utf8_lossy(&data));
        };
        assert!(reason.contains(words) && reason.chars().count() < 250, "{words}: {reason}");
    }
    let huge = catalog().drops.first().map(|kind| kind.id.clone()).expect("a drop");
    let mut many: Delivery = serde_json::from_slice(GOOD).expect("a delivery");
    many.ticket.piece.drops = vec![huge; 1001];
    many.ticket.quote.drops = vec![many.ticket.quote.drops[0].clone(); 1001];
    let data = serde_json::to_vec(&many).expect("a delivery");
    assert!(matches!(delivery::answer(&data), Some(Receipt::Refused { reason, .. }) if reason.contains("1001 drops")));
}

/// A desk whose ledger stands at the last show that there can be: its pages come, and closing is refused in words.
#[test]
fn a_desk_at_the_last_show_shows_its_pages() {
    let desk = AskedDesk::start();
    let at_the_last_show = "PRAGMA foreign_keys = OFF;
         UPDATE shows SET id = 9223372036854775807;
         UPDATE tickets SET show = 9223372036854775807;
         UPDATE sums SET show = 9223372036854775807, body = replace(body, '\"show\":1', '\"show\":9223372036854775807');
         UPDATE events SET body = '9223372036854775807' WHERE kind = 'show_opened';";
    let file = rusqlite::Connection::open(desk.ledger_file());
    file.and_then(|db| db.execute_batch(at_the_last_show)).expect("changed behind the desk's back");
    for page in ["/show", "/tickets", "/show/close"] {
        assert_eq!(desk.ask(Who::Seller, &format!("GET {page}"), b"").status, 200, "{page}");
    }
    let told = desk.ask(Who::Seller, "POST /show/close", b"show=9223372036854775807");
    assert!(told.status == 409 && told.reason().contains("no other can follow it"), "{told:?}");
    assert_eq!(desk.ask(Who::Seller, "GET /shows/9223372036854775807", b"").status, 404);
}

/// Names that an address can't hold as they are: each picture comes, at the seller's page and at the tablet's address.
#[test]
fn a_picture_comes_whatever_its_name_is() {
    for name in ["my key 1.png", "key#1.png", "100%.png", "key?.png", "a&b=c+d.png", "clé \u{1f511}.png", "%23.png"] {
        let desk = AskedDesk::on(|folder| {
            fs::rename(folder.join("pictures/key.png"), folder.join("pictures").join(name)).expect("renamed");
            let tray = folder.join("trays/a.ron");
            let text = fs::read_to_string(&tray).expect("a file").replace("\"key.png\"", &format!("\"{name}\""));
            fs::write(tray, text).expect("written");
        });
        let page = desk.ask(Who::Seller, "GET /parts/key", b"").body;
        let address = page.split("src=\"/pictures/").nth(1).and_then(|rest| rest.split('"').next()).expect("a picture");
        let told = desk.ask(Who::Seller, &format!("GET /pictures/{}", address.replace("&amp;", "&")), b"");
        assert_eq!(told.status, 200, "{name}: {address}");
        assert!(told.head.contains("image/png") && told.body.contains("PNG"), "{name}: {}", told.head);
    }
}
