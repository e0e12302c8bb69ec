//! Every target with good input that is spoiled.

use crate::{
    checks::{
        catalogue::{self, good},
        delivery, desk, tablet, text,
    },
    spoiler::spoil,
};

const PIECE: &[u8] = include_bytes!("good/piece.ron");

#[test]
fn spoiled_quantities_and_numbers_are_told() {
    let quantities: [&[u8]; 12] = [
        b"24in",
        b"610.5mm",
        b"2.5 cm",
        b"18awg",
        b"20swg",
        b"3.4g",
        b"0.5oz",
        b"12.5g/m",
        b"8.50",
        b"6.25",
        b"B3",
        b"2026-02-28",
    ];
    spoil("quantities", 20_000, &quantities, |_, data| text::quantity(data));
    spoil("ticket numbers", 20_000, &[b"3-042-6", b"30426", b"3 042 6"], |_, data| text::ticket_number(data));
}

#[test]
fn spoiled_pieces_are_told() {
    spoil("pieces", 4000, &[PIECE], |_, data| text::piece(data));
}

#[test]
fn spoiled_rules_are_told() {
    let rules: [&[u8]; 2] = [include_bytes!("../../assets/rules/us.ron"), include_bytes!("../../assets/rules/eu.ron")];
    spoil("rules", 600, &rules, |_, data| text::rules(data));
}

#[test]
fn spoiled_catalogues_are_told() {
    let files = ["table.ron", "bases.ron", "trays/a.ron", "names/de.ron", "rules/us.ron"];
    let rules = include_bytes!("../../assets/rules/us.ron");
    let contents: Vec<&[u8]> =
        files.iter().map(|file| if *file == "rules/us.ron" { rules.as_slice() } else { good(file) }).collect();
    spoil("catalogue files", 2000, &contents, |which, data| catalogue::file(files[which], data));
}

#[test]
fn spoiled_pictures_are_told() {
    let pictures = ["pictures/key.png", "pictures/leaf.jpg", "pictures/key.normal.png"];
    let contents = pictures.map(good);
    spoil("pictures", 1500, &contents, |which, data| catalogue::file(pictures[which], data));
}

#[test]
fn spoiled_deliveries_change_nothing() {
    spoil("deliveries", 3000, &[delivery::GOOD], |_, data| delivery::delivery(data));
}

#[test]
fn spoiled_files_of_a_tablet_lose_nothing() {
    spoil("outbox", 400, &[tablet::GOOD_ENTRY], |_, data| tablet::outbox(data));
    spoil("settings", 400, &[tablet::GOOD_SETTINGS], |_, data| tablet::settings(data));
    spoil("pairing", 2000, &[tablet::GOOD_PAIRING], |_, data| tablet::pairing(data));
    spoil("what a tablet keeps", 40, &[tablet::GOOD_PAIRING, b"{\"show\":1,\"next\":42}"], |_, data| {
        tablet::kept(data);
    });
}

#[test]
fn spoiled_forms_and_messages_are_refused_in_words() {
    let desk = desk::AskedDesk::start();
    let asked = desk::asked();
    let bodies: Vec<&[u8]> = asked.iter().map(|(.., body)| body.as_slice()).collect();
    spoil("forms and messages", 1000, &bodies, |which, data| {
        let (who, line, _) = &asked[which];
        desk.ask(*who, line, data);
    });
}
