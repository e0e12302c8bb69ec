//! Slips for whoever threads a piece.

use std::fs;

use crate::{
    pdf_reader::{has_poppler, keep_picture, known, lines},
    roll_reader::{plainly, read},
    scene::{act, file, ready, table_with, ticket, until_it_says, with_printer},
};

/// Homes in walking order are by tray and number, so that A4 comes before A10 (common practice, no source).
#[test]
fn a_slip_leads_past_the_homes_and_has_no_prices() {
    if !has_poppler() {
        return;
    }
    let table = table_with(&[]);
    let seller = table.seller();
    let id = ready(&table, &seller, "chain-brass", "C2 B1 A1 C2 A10");
    act(&seller, &format!("/tickets/{id}/plain"), &[("words", "Her own locket"), ("price", "0")]);
    let number = ticket(&table, id).number.to_string();
    let pdf = file(&seller, &format!("/tickets/{id}/slip.pdf"));
    keep_picture(&pdf, "slip-en");
    let all = lines(&pdf);
    let at = |start: &str| all.iter().position(|line| line.starts_with(start)).unwrap_or_else(|| panic!("{all:#?}"));
    assert_eq!(all[0], number);
    let homes: Vec<&str> = all
        .iter()
        .filter_map(|line| line.split(' ').next())
        .filter(|word| word.len() < 4 && word.starts_with(['A', 'B', 'C']) && word[1..].parse::<u16>().is_ok())
        .collect();
    assert_eq!(homes, ["A1", "A10", "B1", "C2"], "{all:#?}");
    assert!(all.contains(&"C2 2 × Green stone bead".to_owned()), "{all:#?}");
    assert!(at("Antique brass cable chain,") < at("A1"));
    assert!(at("Without a home") < at("Her own locket"));
    assert!(all.contains(&"For 13 or older".to_owned()), "{all:#?}");
    assert!(all.join(" ").contains("Small parts"), "{all:#?}");
    assert!(!all.join(" ").contains('$'), "no prices: {all:#?}");
    assert_eq!((known(&pdf, "Title"), known(&pdf, "Pages")), (format!("Slip {number}"), "1".to_owned()));
    keep_picture(&file(&seller, &format!("/tickets/{id}/slip.pdf?language=de")), "slip-de");
}

#[test]
fn a_receipt_printer_gets_the_slip_with_the_picture() {
    let prints = tempfile::tempdir().unwrap();
    let table = with_printer(&format!("file:{}", prints.path().display()), "columns: 42, slip_picture: true,");
    let seller = table.seller();
    let id = ready(&table, &seller, "chain-brass", "C2 B1 A1");
    act(&seller, &format!("/tickets/{id}/print-slip"), &[("language", "fr")]);
    until_it_says(&seller, &format!("/tickets/{id}"), ": printed", 20);
    let number = ticket(&table, id).number.to_string();
    let out = read(&fs::read(prints.path().join(format!("slip-{number}.bin"))).unwrap());
    out.keep("roll-slip-fr");
    assert!(out.fits(42), "{:#?}", out.lines);
    let huge = out.lines.iter().find(|line| line.text == number).expect("the number");
    assert_eq!((huge.wide, huge.high, huge.middle), (4, 4, true));
    // Something is drawn, and not all of it is black: a necklace is mostly air.
    let picture = out.picture.as_ref().expect("a picture");
    let black = picture.iter().flatten().filter(|dot| **dot).count();
    let share = black as f64 / (picture.len() * picture[0].len()) as f64;
    assert!((0.01..0.4).contains(&share) && picture.len() > 200, "{share} of {} rows", picture.len());
    if has_poppler() {
        let pdf = lines(&file(&seller, &format!("/tickets/{id}/slip.pdf?language=fr"))).join(" ");
        assert_eq!(out.words(), plainly(&pdf));
    }
    // Another print is another file.
    act(&seller, &format!("/tickets/{id}/print-slip"), &[]);
    let second = prints.path().join(format!("slip-{number}-2.bin"));
    for _ in 0..100 {
        if second.exists() {
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(100));
    }
    panic!("no second file");
}
