//! A tray by one photo, by the desk's pages: read, cut out, priced, laid as one act, undone; beside a hand that writes in the
//! same files, and another phone on the same tray.

use std::{io::Cursor, path::Path};

use chatelaine::craft::Guess;
use image::{ImageFormat, Rgb, RgbImage};

use super::{
    own_table::{begun, enter, home, lay, photo, post_photo, with_marks},
    tray_scene::{INNER_MM, PIECES, height_mm, sixteen, with_a_place},
    *,
};

/// A table with an empty tray B of four by four.
pub fn with_tray() -> (Table, Seller) {
    let (table, seller) = begun();
    let answer = seller.post("/table/trays", &[("letter", "B"), ("name", "Photo"), ("rows", "4"), ("columns", "4")]);
    assert_eq!(answer.location, "/table/at/B1", "{}", answer.text);
    (table, seller)
}

/// Sends a photo of tray B; the address of what is made of it.
pub fn taken(seller: &Seller, jpeg: &[u8]) -> String {
    let answer = post_photo(seller, "/table/tray/B/photo", &[], jpeg);
    assert_eq!(answer.status, 303, "{}", answer.text);
    answer.location
}

/// What stands in the fields of a page.
fn field<'a>(page: &'a str, name: &str) -> &'a str {
    let input = page.split(&format!("name=\"{name}\"")).nth(1).unwrap_or_else(|| panic!("no field {name}"));
    input.split("value=\"").nth(1).and_then(|rest| rest.split('"').next()).unwrap_or_default()
}

/// Takes the corners as they were found.
pub fn cut_out(seller: &Seller, at: &str) {
    cut_out_of(seller, at, INNER_MM);
}

/// Takes the corners of a tray as wide as this as they were found.
pub fn cut_out_of(seller: &Seller, at: &str, inner_mm: f64) {
    let page = seller.get(at).text;
    assert!(page.contains("The corners were found"), "{page}");
    let names: Vec<String> = (0..4).flat_map(|i| [format!("x{i}"), format!("y{i}")]).collect();
    let mut fields: Vec<(&str, &str)> = names.iter().map(|name| (name.as_str(), field(&page, name))).collect();
    let width = inner_mm.to_string();
    fields.push(("width", &width));
    let answer = seller.post(at, &fields);
    assert_eq!(answer.location, format!("{at}/pieces"), "{}", answer.text);
}

/// Prices everything that asks for one, from the first to the last.
pub fn price_all(seller: &Seller, at: &str, price: &str) -> usize {
    let prices = format!("{at}/prices");
    let (mut address, mut told) = (prices.clone(), 0);
    loop {
        let page = seller.get(&address).text;
        if !page.contains("name=\"count\"") {
            return told;
        }
        let answer = enter_from(seller, &page, &prices, &[("count", "7"), ("price", price)]);
        assert_eq!(answer.status, 303, "{}", answer.text);
        (address, told) = (answer.location, told + 1);
        assert!(told <= 16, "it never ends");
    }
}

fn enter_from(seller: &Seller, page: &str, action: &str, typed: &[(&str, &str)]) -> Answer {
    seller.post(action, &with_marks(page, action, typed))
}

/// Everything from photo to table; the answer of the last step.
fn laid(seller: &Seller, at: &str, price: &str) -> Answer {
    cut_out(seller, at);
    price_all(seller, at, price);
    let page = seller.get(&format!("{at}/prices")).text;
    enter_from(seller, &page, &format!("{at}/lay"), &[])
}

fn drafts(table: &Table) -> usize {
    fs::read_dir(table.dir.path().join("data/tray-photos")).map_or(0, Iterator::count)
}

/// Every file below a folder has none of these bytes.
fn nowhere(folder: &Path, bytes: &[u8]) {
    for entry in fs::read_dir(folder).unwrap().flatten() {
        if entry.path().is_dir() {
            nowhere(&entry.path(), bytes);
        } else {
            let found = fs::read(entry.path()).unwrap().windows(bytes.len()).any(|window| window == bytes);
            assert!(!found, "{}", entry.path().display());
        }
    }
}

#[test]
fn a_tray_of_sixteen_is_made_of_one_photo_and_undone_as_one_act() {
    let (table, seller) = with_tray();
    let before = fs::read_to_string(table.catalog_file("trays/b.ron")).unwrap();
    let at = taken(&seller, &with_a_place(sixteen()));
    cut_out(&seller, &at);
    let page = seller.get(&format!("{at}/pieces")).text;
    assert!(page.contains("Take all of these") && page.contains("sure"), "{page}");
    for picture in page.split("src=\"").skip(1).filter_map(|rest| rest.split('"').next()) {
        assert_eq!(seller.get(picture).status, 200, "{picture}");
    }
    // The price of the one before is the first that is offered.
    assert_eq!(price_all(&seller, &at, "4.00"), 16);
    assert!(seller.get(&format!("{at}/prices?at=B2")).text.contains("4.00 again"));
    nowhere(&table.dir.path().join("data"), b"MILLLANE");
    assert_eq!(fs::read_to_string(table.catalog_file("trays/b.ron")).unwrap(), before, "nothing is written so far");
    let page = seller.get(&format!("{at}/prices")).text;
    let lay = with_marks(&page, &format!("{at}/lay"), &[]);
    for _ in 0..2 {
        let answer = seller.post(&format!("{at}/lay"), &lay);
        assert_eq!((answer.status, answer.location.as_str()), (303, "/table#tray-B"), "{}", answer.text);
    }
    let catalog = table.catalog();
    let mut cut = 0;
    for (i, name) in PIECES.iter().enumerate() {
        let kind = catalog.drop_at(home(&format!("B{}", i + 1))).expect("a drop");
        assert_eq!((kind.stock, kind.price.to_string().as_str()), (7, "4.00"));
        assert!(kind.picture.starts_with("tray-"), "{}", kind.picture);
        assert!(kind.guessed.contains(&Guess::Materials), "nobody knows what it is made of");
        if !kind.picture.ends_with(".png") {
            continue;
        }
        cut += 1;
        println!(
            "| {name} | {} | {} | {:.1} × {:.1} mm, drawn {:.1} mm high |",
            kind.name,
            kind.id,
            kind.width.mm(),
            kind.height.mm(),
            height_mm(name)
        );
    }
    assert!(cut >= 12, "only {cut} were cut out");
    assert_eq!(catalog.trays[1].inner_width.map(|width| width.mm()), Some(INNER_MM));
    nowhere(&table.dir.path().join("catalog"), b"MILLLANE");
    assert_eq!(drafts(&table), 0, "what is laid is kept no longer");
    // One act, taken back at once.
    let page = seller.get("/table").text;
    assert!(page.contains("16 pictures from a photo of tray B"), "{page}");
    let answer = seller.post("/table/undo", &with_marks(&page, "/table/undo", &[]));
    assert_eq!(answer.status, 303, "{}", answer.text);
    assert_eq!(fs::read_to_string(table.catalog_file("trays/b.ron")).unwrap(), before);
    // Another photo of the tray knows how wide it is.
    let again = taken(&seller, sixteen());
    assert_eq!(field(&seller.get(&again).text, "width"), "");
}

#[test]
fn what_lies_there_gets_its_picture_and_undo_brings_the_earlier_one_back() {
    let (table, seller) = with_tray();
    assert_eq!(lay(&seller, "B2", &[("price", "9.00"), ("name", "Star of hers"), ("count", "3")]).status, 303);
    let page = seller.get("/table/at/B2").text;
    let marks = with_marks(&page, "/table/at/B2", &[]);
    assert_eq!(post_photo(&seller, "/table/at/B2", &marks, &photo(ImageFormat::Jpeg)).status, 303);
    let of = |at: &str| table.catalog().drop_at(home(at)).cloned();
    let before = of("B2").expect("a star");
    let at = taken(&seller, sixteen());
    assert!(laid(&seller, &at, "4.00").location.starts_with("/table"));
    let after = of("B2").expect("a star");
    assert_ne!(after.picture, before.picture);
    assert_eq!(
        (after.name.as_str(), after.price, after.stock, &after.id),
        ("Star of hers", before.price, 3, &before.id)
    );
    let page = seller.get("/table").text;
    assert_eq!(seller.post("/table/undo", &with_marks(&page, "/table/undo", &[])).status, 303);
    assert_eq!(of("B2").expect("a star"), before);
    assert_eq!(of("B1"), None);
}

#[test]
fn a_hand_that_writes_in_between_loses_nothing() {
    let (table, seller) = with_tray();
    let at = taken(&seller, sixteen());
    cut_out(&seller, &at);
    price_all(&seller, &at, "4.00");
    let file = table.catalog_file("trays/b.ron");
    let text = fs::read_to_string(&file).unwrap();
    fs::write(&file, text.replacen("Empty", "(price: \"12.00\") /* from the attic */", 1)).unwrap();
    let page = seller.get(&format!("{at}/prices")).text;
    let answer = enter_from(&seller, &page, &format!("{at}/lay"), &[]);
    assert_eq!(answer.status, 409, "{}", answer.location);
    assert!(answer.text.contains("12.00") && answer.text.contains("Enter mine in B1"), "{}", answer.text);
    assert_eq!(fs::read_to_string(&file).unwrap().matches("tray-").count(), 0, "nothing was written");
    let answer = enter_from(&seller, &answer.text, &format!("{at}/lay"), &[]);
    assert_eq!(answer.status, 303, "{}", answer.text);
    let text = fs::read_to_string(&file).unwrap();
    assert!(text.contains("/* from the attic */") && text.matches("tray-").count() == 16, "{text}");
}

#[test]
fn two_phones_on_one_tray_are_told_of_each_other() {
    let (table, seller) = with_tray();
    let (one, other) = (taken(&seller, sixteen()), taken(&seller, sixteen()));
    assert_ne!(one, other);
    assert!(seller.get("/table/tray/B/photo").text.contains("Go on with the photo of"));
    cut_out(&seller, &other);
    price_all(&seller, &other, "5.00");
    assert!(laid(&seller, &one, "4.00").location.starts_with("/table"));
    let price = || table.catalog().drop_at(home("B1")).unwrap().price.to_string();
    assert_eq!(price(), "4.00");
    // The other phone's page stands as it was made before.
    let page = seller.get(&format!("{other}/pieces")).text;
    let answer = enter_from(&seller, &page, &format!("{other}/lay"), &[]);
    assert_eq!(answer.status, 409, "{}", answer.location);
    assert_eq!(price(), "4.00");
    let answer = enter_from(&seller, &answer.text, &format!("{other}/lay"), &[]);
    assert_eq!((answer.status, price().as_str()), (303, "5.00"), "{}", answer.text);
}

#[test]
fn one_compartment_is_mended_or_shown_otherwise() {
    let (table, seller) = with_tray();
    let at = taken(&seller, sixteen());
    cut_out(&seller, &at);
    let page = seller.get(&format!("{at}/pieces/B2")).text;
    assert!(page.contains("Cut out again") && page.contains("Whole compartment"), "{page}");
    let whole = seller.get(&format!("{at}/picture/B2-cut.png")).text;
    // A finger takes the lower half away.
    let stroke = |keep: bool, y: f64| {
        let points: Vec<String> = (0..60).map(|i| format!("{{\"x\":{}.0,\"y\":{y}}}", i * 8)).collect();
        format!("{{\"keep\":{keep},\"points\":[{}],\"radius_mm\":2.0}}", points.join(","))
    };
    let rows: Vec<String> = (0..12).map(|i| stroke(false, 180.0 + 10.0 * f64::from(i))).collect();
    let answer =
        seller.post(&format!("{at}/pieces/B2"), &[("strokes", &format!("[{}]", rows.join(","))), ("shown", "cut")]);
    assert_eq!(answer.location, format!("{at}/pieces/B2"), "{}", answer.text);
    assert_ne!(seller.get(&format!("{at}/picture/B2-cut.png")).text, whole, "less is left of it");
    assert!(seller.get(&answer.location).text.contains("<polyline"));
    for (shown, words) in [("tile", "as a tile"), ("whole", "whole compartment"), ("nothing", "nothing seen")] {
        let answer = seller.post(&format!("{at}/pieces/B3"), &[("shown", shown)]);
        assert_eq!(answer.status, 303, "{}", answer.text);
        assert!(seller.get(&format!("{at}/pieces")).text.contains(words), "{shown}");
    }
    for odd in [
        "[",
        "[{\"keep\":1}]",
        "\u{0}",
        "[{\"keep\":true,\"points\":[{\"x\":1e308,\"y\":-1e308}],\"radius_mm\":1e300}]",
    ] {
        let answer = seller.post(&format!("{at}/pieces/B4"), &[("strokes", odd), ("shown", "odd")]);
        assert!([303, 400].contains(&answer.status), "{odd}: {} {}", answer.status, answer.text);
    }
    price_all(&seller, &at, "4.00");
    let page = seller.get(&format!("{at}/prices")).text;
    assert_eq!(enter_from(&seller, &page, &format!("{at}/lay"), &[]).status, 303);
    assert!(table.catalog().drop_at(home("B3")).is_none(), "what shows nothing stays empty");
    assert!(table.catalog().drop_at(home("B2")).is_some());
}

#[test]
fn what_is_no_photo_and_what_is_no_tray_is_refused_with_what_to_do() {
    let (table, seller) = with_tray();
    for (bytes, words) in [
        (&b"\0\0\0\x18ftypheic\0\0\0\0mif1heic"[..], "JPEG"),
        (b"%PDF-1.7", "JPEG"),
        (&sixteen()[..sixteen().len() / 3], "again"),
        (b"", "Choose a photo first"),
    ] {
        let answer = post_photo(&seller, "/table/tray/B/photo", &[], bytes);
        assert!(answer.status == 400 && answer.text.contains(words), "{}: {}", answer.status, answer.text);
    }
    assert_eq!(drafts(&table), 0);
    assert_eq!(post_photo(&seller, "/table/tray/Q/photo", &[], sixteen()).status, 404);
    let at = taken(&seller, sixteen());
    // Corners that make no tray, numbers that are none, a width that no tray has.
    let square = [
        ("x0", "10"),
        ("y0", "10"),
        ("x1", "90"),
        ("y1", "10"),
        ("x2", "90"),
        ("y2", "90"),
        ("x3", "10"),
        ("y3", "90"),
    ];
    let with = |name: &str, value: &'static str| {
        let mut fields = square.to_vec();
        fields.push(("width", "240"));
        fields.iter_mut().filter(|(one, _)| *one == name).for_each(|field| field.1 = value);
        fields
    };
    for (name, value, words) in [
        ("x1", "10", "make no tray"),
        ("x1", "NaN", "between 0 and 100"),
        ("x1", "-3", "between 0 and 100"),
        ("y2", "", "between 0 and 100"),
        ("width", "12", "from 40 to 2000"),
        ("width", "wide", "from 40 to 2000"),
    ] {
        let answer = seller.post(&at, &with(name, value));
        assert!(
            answer.status == 400 && answer.text.contains(words),
            "{name} {value}: {} {}",
            answer.status,
            answer.text
        );
    }
    // Turned by a quarter the second corner is the first.
    let mut turned = with("", "");
    turned.push(("turn", "1"));
    assert_eq!(seller.post(&at, &turned).status, 303);
    assert_eq!(field(&seller.get(&at).text, "x0"), "90");
    // What is another tray's, nobody's, or thrown away is said to be gone.
    assert_eq!(seller.get(&at.replace("/B/", "/A/")).status, 404);
    assert_eq!(seller.get("/table/tray/B/photo/..%2f..%2fledger").status, 404);
    assert_eq!(seller.get(&format!("{at}/picture/draft.json")).status, 404);
    assert_eq!(enter(&seller, &at, &format!("{at}/throw-away"), &[]).status, 303);
    assert_eq!((seller.get(&at).status, drafts(&table)), (404, 0));
    assert_eq!(seller.post(&format!("{at}/prices"), &[("home", "B1"), ("price", "3")]).status, 404);
}

#[test]
fn few_photos_are_kept_at_once() {
    let (table, seller) = with_tray();
    let tiny = {
        let mut bytes = Cursor::new(Vec::new());
        RgbImage::from_pixel(200, 160, Rgb([90, 80, 70])).write_to(&mut bytes, ImageFormat::Png).unwrap();
        bytes.into_inner()
    };
    let all: Vec<String> = (0..9).map(|_| taken(&seller, &tiny)).collect();
    assert_eq!(drafts(&table), 6);
    assert_eq!((seller.get(&all[0]).status, seller.get(&all[8]).status), (404, 200));
    assert!(seller.get(&all[8]).text.contains("The corners were not found"));
}
