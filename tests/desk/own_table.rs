//! The seller's own table, from nothing, by the desk's pages, beside a hand that writes in the same files.

use std::{
    io::Cursor,
    time::{Duration, Instant},
};

use chatelaine::craft::{Guess, Home};
use image::{ImageFormat, Rgb, RgbImage};

use super::*;

/// The fields that a page's form carries unseen, with those that are typed.
pub fn with_marks<'a>(page: &'a str, action: &str, typed: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    let form = page.split(&format!("action=\"{action}\"")).nth(1).unwrap_or_else(|| panic!("no form for {action}"));
    let form = form.split("</form>").next().unwrap_or_default();
    let mut fields = typed.to_vec();
    for input in form.split("<input type=\"hidden\"").skip(1) {
        let of =
            |name: &str| input.split(&format!("{name}=\"")).nth(1).and_then(|rest| rest.split('"').next()).unwrap();
        fields.push((of("name"), of("value")));
    }
    fields
}

/// Looks at a page and sends its form with what is typed.
pub fn enter(seller: &Seller, page: &str, action: &str, typed: &[(&str, &str)]) -> Answer {
    let text = seller.get(page).text;
    seller.post(action, &with_marks(&text, action, typed))
}

/// A table with a base and a tray of two rows of three.
pub fn begun() -> (Table, Seller) {
    let table = Table::empty();
    let seller = table.seller();
    let answer = enter(
        &seller,
        "/table/facts",
        "/table/facts",
        &[("name", "Lantern"), ("currency", "EUR"), ("region", "EU"), ("tax", "19"), ("on_top", "no")],
    );
    assert_eq!((answer.status, answer.location.as_str()), (303, "/table"), "{}", answer.text);
    assert_eq!(seller.post("/table/bases", &[("form", "Necklace"), ("price", "12"), ("name", "Chain")]).status, 303);
    let answer = seller.post("/table/trays", &[("letter", "A"), ("name", "Charms"), ("rows", "2"), ("columns", "3")]);
    assert_eq!(answer.location, "/table/at/A1", "{}", answer.text);
    (table, seller)
}

pub fn lay(seller: &Seller, home: &str, typed: &[(&str, &str)]) -> Answer {
    let page = format!("/table/at/{home}");
    enter(seller, &page, &page, typed)
}

pub fn home(text: &str) -> Home {
    text.parse().unwrap()
}

#[test]
fn a_table_is_laid_from_nothing_and_guests_hear_of_it_at_once() {
    let table = Table::empty();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let bare = kiosk.news(-1, "");
    assert!(bare.content.is_some_and(|content| content.catalog.bases.is_empty() && content.catalog.drops.is_empty()));
    for page in [
        "/table",
        "/table/facts",
        "/table/bases",
        "/table/trays",
        "/table/prices",
        "/table/one-off",
        "/trays",
        "/tickets",
        "/new",
        "/show",
        "/trays/cautions",
    ] {
        let answer = seller.get(page);
        assert_eq!(answer.status, 200, "{page}: {}", answer.text);
    }
    drop(table);
    let (table, seller) = begun();
    let kiosk = table.kiosk();
    let before = kiosk.news(-1, "");
    let started = Instant::now();
    let answer = lay(&seller, "A1", &[("price", "3.00"), ("sort", "Key"), ("count", "7")]);
    assert_eq!((answer.status, answer.location.as_str()), (303, "/table/at/A2?kept=A1"), "{}", answer.text);
    let news = kiosk.news(before.change, &before.revision);
    assert!(started.elapsed() < Duration::from_secs(2), "{:?}", started.elapsed());
    let content = news.content.expect("another catalogue");
    let kind = content.catalog.drop_at(home("A1")).expect("a drop").clone();
    assert_eq!((kind.name.as_str(), kind.price.to_string().as_str()), ("Key", "3.00"));
    assert_eq!(news.available[&kind.id], 7);
    assert!(
        kind.guessed.contains(&Guess::Materials)
            && kind.guessed.contains(&Guess::Name)
            && !kind.guessed.contains(&Guess::Stock)
    );
    let page = seller.get("/table").text;
    assert!(page.contains("1 of 6 compartments") && page.contains("Still guessed") && page.contains("id=\"at-A6\""));
    // A price by hand as its language writes it, a name, and what is known of it.
    let typed = [
        ("typed", "4,50"),
        ("sort", "Charm"),
        ("name", "Small heart"),
        ("weight", "2,5"),
        ("material", "Brass"),
        ("material", "Glass"),
    ];
    assert_eq!(lay(&seller, "A2", &typed).status, 303);
    let catalog = table.catalog();
    let heart = catalog.drop_at(home("A2")).unwrap();
    assert_eq!((heart.id.as_str(), heart.price.to_string().as_str(), heart.weight.g()), ("small-heart", "4.50", 2.5));
    assert_eq!(heart.facts.materials.len(), 2);
    // The guest orders it, and the seller sees it on her table.
    let kiosk = table.kiosk();
    let piece = kiosk.ticket(0, &["small-heart"], Wearer::From13);
    assert!(matches!(kiosk.deliver(&piece, true), Receipt::Stored { .. }));
    for wrong in [
        &[("typed", "x")][..],
        &[("typed", "")],
        &[("price", "0")],
        &[("typed", "3"), ("count", "-1")],
        &[("typed", "3"), ("weight", "heavy")],
        &[("typed", "3"), ("weight", "9999")],
    ] {
        let answer = lay(&seller, "A3", wrong);
        assert_eq!(answer.status, 400, "{wrong:?}: {}", answer.location);
        assert!(answer.text.contains("role=\"alert\""));
    }
    assert_eq!(seller.get("/table/at/A7").status, 404);
    assert_eq!(seller.get("/table/at/Q1").status, 404);
}

#[test]
fn what_is_written_by_hand_and_what_is_typed_are_both_shown() {
    let (table, seller) = begun();
    lay(&seller, "A1", &[("price", "3.00"), ("name", "Heart")]);
    let page = seller.get("/table/at/A1").text;
    // Meanwhile somebody writes in the file.
    let file = table.catalog_file("trays/a.ron");
    let text = fs::read_to_string(&file).unwrap();
    fs::write(&file, text.replace("\"3.00\"", "\"3.20\" /* from the market */")).unwrap();
    let answer = seller.post("/table/at/A1", &with_marks(&page, "/table/at/A1", &[("typed", "5.00")]));
    assert_eq!(answer.status, 409, "{}", answer.location);
    assert!(
        answer.text.contains("from the market") && answer.text.contains("5.00") && answer.text.contains("Enter mine")
    );
    assert!(fs::read_to_string(&file).unwrap().contains("3.20"), "nothing was written");
    // She enters hers all the same, and the comment stays.
    let again = with_marks(&answer.text, "/table/at/A1", &[]);
    let answer = seller.post("/table/at/A1", &again);
    assert_eq!(answer.status, 303, "{}", answer.text);
    let text = fs::read_to_string(&file).unwrap();
    assert!(text.contains("\"5.00\" /* from the market */"), "{text}");
    // A file that does not read is told, and not written over.
    fs::write(&file, text.replacen("rows:", "rows", 1)).unwrap();
    let answer = seller.post("/table/at/A1", &[("typed", "6.00")]);
    assert_eq!(answer.status, 400);
    assert!(answer.text.contains("trays/a.ron"), "{}", answer.text);
}

#[test]
fn things_are_moved_copied_retired_repriced_restocked_and_undone() {
    let (table, seller) = begun();
    for (at, name, price) in [("A1", "One", "3.00"), ("A2", "Two", "4.00"), ("A4", "Four", "5.00")] {
        assert_eq!(lay(&seller, at, &[("price", price), ("name", name), ("count", "4")]).status, 303);
    }
    let at = |text: &str| table.catalog().drop_at(home(text)).map(|kind| kind.name.clone());
    let act = |from: &str, what: &str, typed: &[(&str, &str)]| {
        let answer = enter(&seller, &format!("/table/at/{from}"), &format!("/table/at/{from}/{what}"), typed);
        assert_eq!(answer.status, 303, "{from} {what}: {}", answer.text);
    };
    act("A1", "move", &[("to", "a2")]);
    assert_eq!((at("A1").as_deref(), at("A2").as_deref()), (Some("Two"), Some("One")));
    act("A4", "move", &[("to", "A6")]);
    assert_eq!((at("A4"), at("A6").as_deref()), (None, Some("Four")));
    act("A6", "copy", &[]);
    let copied = table.catalog().drops.iter().filter(|kind| kind.name == "Four").count();
    assert_eq!(copied, 2);
    act("A2", "retire", &[]);
    assert_eq!(at("A2"), None);
    // The same form once more takes nothing else.
    let stale = seller.post("/table/at/A1/retire", &[("seen", "at-A1 0000000000000000")]);
    assert_eq!((stale.status, at("A1").as_deref()), (409, Some("Two")));
    assert_eq!(seller.post("/table/at/A1/move", &[("to", "there")]).status, 400);
    assert_eq!(seller.post("/table/at/A1/move", &[("to", "Z1")]).status, 404);

    let page = seller.get("/table").text;
    let undo = with_marks(&page, "/table/undo", &[]);
    let answer = seller.post("/table/undo", &undo);
    assert!(answer.location.starts_with("/table?undone="), "{}", answer.text);
    assert!(seller.get(&answer.location).text.contains("Undone: A2 One taken off the table"));
    assert_eq!(at("A2").as_deref(), Some("One"));
    assert_eq!(seller.post("/table/undo", &undo).location, "/table", "sent twice it undoes once");
    assert_eq!(copied, table.catalog().drops.iter().filter(|kind| kind.name == "Four").count());

    let shown = seller.get("/table/prices?which=row-A-1&how=percent&amount=10&step=0.5").text;
    assert!(shown.contains("3 new prices") && shown.contains("3.50") && shown.contains("4.50"), "{shown}");
    let answer = seller
        .post("/table/prices", &with_marks(&shown.replacen("action=\"/table/prices\"", "", 1), "/table/prices", &[]));
    assert_eq!(answer.status, 303, "{}", answer.text);
    let price = |text: &str| table.catalog().drop_at(home(text)).map(|kind| kind.price.to_string());
    assert_eq!(
        (price("A1").as_deref(), price("A2").as_deref(), price("A6").as_deref()),
        (Some("4.50"), Some("3.50"), Some("5.00"))
    );
    assert!(seller.get("/table/prices?which=all&how=by&amount=-9").text.contains("role=\"alert\""));

    let id = table.catalog().drop_at(home("A1")).unwrap().id.clone();
    let page = seller.get("/table/at/A1").text;
    let restock = with_marks(&page, "/table/at/A1/restock", &[("more", "6")]);
    for _ in 0..2 {
        assert_eq!(seller.post("/table/at/A1/restock", &restock).status, 303);
    }
    let counts = table.desk.with_ledger(|ledger| ledger.counts()).unwrap().unwrap();
    assert_eq!(counts[&id].on_hand, 10);
    assert_eq!(seller.post("/table/at/A1/restock", &[("more", "0")]).status, 400);
}

pub fn photo(format: ImageFormat) -> Vec<u8> {
    let mut bytes = Vec::new();
    let ground = RgbImage::from_fn(640, 480, |x, y| {
        if (200..400).contains(&x) && (100..380).contains(&y) { Rgb([180, 40, 60]) } else { Rgb([240, 236, 228]) }
    });
    ground.write_to(&mut Cursor::new(&mut bytes), format).unwrap();
    bytes
}

/// A form with a photo. Source of its shape: RFC 7578 (from memory).
pub fn post_photo(seller: &Seller, path: &str, fields: &[(&str, &str)], photo: &[u8]) -> Answer {
    let boundary = "----a-boundary-of-the-tests";
    let mut body = Vec::new();
    for (name, value) in fields {
        body.extend(
            format!("--{boundary}\r\nContent-Disposition: form-data; name=\"{name}\"\r\n\r\n{value}\r\n").bytes(),
        );
    }
    body.extend(format!("--{boundary}\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"../p.jpg\"\r\nContent-Type: image/jpeg\r\n\r\n").bytes());
    body.extend(photo);
    body.extend(format!("\r\n--{boundary}--\r\n").bytes());
    let request = seller.agent.post(format!("{}{path}", seller.url)).header("Cookie", &seller.cookie);
    request.header("Content-Type", format!("multipart/form-data; boundary={boundary}")).send(&body).unwrap().into()
}

#[test]
fn one_of_a_kind_is_a_photo_a_price_and_a_home_and_is_gone_when_sold() {
    let (table, seller) = begun();
    let page = seller.get("/table/one-off").text;
    let fields = with_marks(&page, "/table/at/A1", &[("price", "15.00")]);
    let answer = post_photo(&seller, "/table/at/A1", &fields, &photo(ImageFormat::Jpeg));
    assert_eq!(answer.status, 303, "{}", answer.text);
    let catalog = table.catalog();
    let kind = catalog.drop_at(home("A1")).unwrap();
    assert_eq!((kind.stock, kind.price.to_string().as_str()), (1, "15.00"));
    assert!(kind.picture.starts_with("photo-") && kind.picture.ends_with(".jpg"), "{}", kind.picture);
    assert!((kind.width.mm() / kind.height.mm() - 640.0 / 480.0).abs() < 0.01, "as wide as its picture is");
    let kiosk = table.kiosk();
    let ticket = kiosk.ticket(0, &[&kind.id], Wearer::From13);
    kiosk.deliver(&ticket, true);
    assert_eq!(kiosk.news(-1, "").available[&kind.id], 0, "and for no other guest");
    // A photo for what lies there already, and one that is none.
    let page = seller.get("/table/at/A1").text;
    let fields = with_marks(&page, "/table/at/A1", &[]);
    assert_eq!(post_photo(&seller, "/table/at/A1", &fields, &photo(ImageFormat::WebP)).status, 303);
    assert_ne!(table.catalog().drop_at(home("A1")).unwrap().picture, kind.picture);
    let refused = post_photo(&seller, "/table/at/A2", &[("price", "3.00")], b"\0\0\0\x18ftypheic");
    assert!(refused.status == 400 && refused.text.contains("JPEG"), "{}", refused.text);
    assert!(table.catalog().drop_at(home("A2")).is_none());
    // Only the seller may send as much as a photo has; from others it is not even read.
    let stranger = Seller { agent: agent(), url: seller.url.clone(), cookie: String::new() };
    assert_eq!(post_photo(&stranger, "/table/at/A2", &[], &vec![0; 400_000]).status, 413);
}

/// A table of a whole fair stays quick for its maker.
#[test]
fn a_table_of_a_thousand_compartments_is_whole_on_its_page() {
    let table = Table::empty();
    let seller = table.seller();
    seller.post("/table/trays", &[("letter", "A"), ("name", "Large"), ("rows", "25"), ("columns", "39")]);
    let file = table.catalog_file("trays/a.ron");
    let mut n = 0;
    let text = fs::read_to_string(&file).unwrap();
    let filled: Vec<String> = text
        .lines()
        .map(|line| {
            if line.trim() != "Empty," {
                return line.to_owned();
            }
            n += 1;
            format!("            (id: \"d{n}\", price: \"3.00\"), // number {n}")
        })
        .collect();
    fs::write(&file, filled.join("\n")).unwrap();
    assert_eq!(n, 975);
    // What is written by hand is taken in a moment later.
    let began = Instant::now();
    while !seller.get("/table").text.contains("975 of 975 compartments") {
        assert!(began.elapsed() < Duration::from_secs(60), "it was never taken in");
        thread::sleep(Duration::from_millis(100));
    }
    let started = Instant::now();
    let answer = lay(&seller, "A500", &[("typed", "4.00")]);
    assert_eq!(answer.status, 303, "{}", answer.text);
    let page = seller.get("/table");
    println!("an edit and the page of {n} compartments took {:?}", started.elapsed());
    assert!(page.text.contains("id=\"at-A975\""));
    let after = fs::read_to_string(&file).unwrap();
    let other = after.lines().zip(&filled).filter(|(a, b)| a != &b.as_str()).count();
    assert_eq!(other, 1, "only the line of A500 is another");
}
