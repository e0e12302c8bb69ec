//! Receipts against the ledger, and their two forms against each other.

use std::fs;

use crate::{
    kit::{PIN, Table},
    pdf_reader::{has_poppler, keep_picture, known, language, lines, typefaces},
    roll_reader::{plainly, read},
    scene::{act, bill, bill_of, file, paid, pay, ready, table_with, ticket, until_it_says, with_printer},
    seller::Seller,
};
use uuid::Uuid;

/// Two pieces, one of them a party's package with something off, and a box: a part of it by card, the rest in cash.
fn evening(table: &Table, seller: &Seller) -> Uuid {
    let first = ready(table, seller, "chain-brass", "A1 C2 C2");
    act(seller, &format!("/tickets/{first}/package"), &[("package", "Party piece")]);
    let a_tenth = [("how", "percent"), ("percent", "10"), ("reason", "a friend")];
    act(seller, &format!("/tickets/{first}/reduce"), &a_tenth);
    let second = ready(table, seller, "chain-silver", "B1");
    let on = bill_of(seller, first);
    act(seller, &format!("/bills/{on}/ticket"), &[("number", &ticket(table, second).number.to_string())]);
    act(seller, &format!("/bills/{on}/goods"), &[("words", "Gift box"), ("price", "10.99")]);
    pay(table, seller, on, &[("tender", "card"), ("amount", "20")]);
    pay(table, seller, on, &[("tender", "cash"), ("given", "40")]);
    on
}

/// The words of a receipt between two places.
fn between(lines: &[String], from: &str, to: &str) -> Vec<String> {
    let from = lines.iter().position(|line| line.starts_with(from)).unwrap_or_else(|| panic!("{from}: {lines:#?}"));
    let to = lines.iter().position(|line| line.starts_with(to)).unwrap_or_else(|| panic!("{to}: {lines:#?}"));
    lines[from..to].to_vec()
}

/// Prices are those of the catalogue's files. By hand: the first piece is marked with 14.00 + 4.50 + 2 × 3.00 = 24.50 and
/// costs 24.00 as a package; a tenth of that is 2.40, of 21.60 are 6.25 % exactly 1.35. The second: 16.00 + 3.00, the tax
/// 1.1875 and so 1.19. The box: 10.99, the tax 0.686875 and so 0.69 (Streamlined Sales and Use Tax Agreement §324). In all
/// 51.59 + 3.23 = 54.82, of which 20.00 by card and 34.82 in cash; of 40.00 come back 5.18.
#[test]
fn a_receipt_says_what_was_sold_taken_off_taxed_and_paid() {
    if !has_poppler() {
        return;
    }
    let table = table_with(&[]);
    let seller = table.seller();
    let on = evening(&table, &seller);
    let numbers: Vec<String> =
        bill(&table, on).tickets.iter().map(|one| ticket(&table, one.id).number.to_string()).collect();
    let pdf = file(&seller, &format!("/bills/{on}/receipt.pdf"));
    keep_picture(&pdf, "receipt-en");
    let all = lines(&pdf);
    assert_eq!(all[..3], ["The Lantern Lane Table", "12 Mill Lane", "Tax number 00-0000000"]);
    assert_eq!(all[3], format!("Receipt {}", numbers[0]));
    assert!(all[4].starts_with("Date ") && all[4].contains(", ") && all[5] == "Show 1", "{all:#?}");
    let sold = [
        &format!("Piece {}", numbers[0]),
        "Antique brass cable chain, 24 in · 61 cm $14.00",
        "Heart-bow key $4.50",
        "2 × Green stone bead $6.00",
        "Package “Party piece” −$0.50",
        "Taken off, a friend −$2.40",
        &format!("Piece {}", numbers[1]),
        "Antique silver-coloured cable chain, 24 in · 61 cm $16.00",
        "Crescent moon $3.00",
        "Other goods",
        "Gift box $10.99",
        "Subtotal $51.59",
        "Tax 6.25 % on $51.59 $3.23",
        // All together would be 3.224375 and so 3.22.
        "The tax is rounded for each piece by itself.",
        "Total $54.82",
        "A part of it paid: Card $20.00",
        "Paid: Cash $34.82",
        "Given $40.00",
        "Change $5.18",
    ];
    let said = between(&all, "Piece ", "Good to know").join(" ");
    assert_eq!(said, sold.join(" "));
    let last = between(&all, "Good to know", "Care").join(" ");
    let deferral = "A guide, not a test report; local rules and a qualified safety assessment decide.";
    assert!(last.contains("Small parts: keep away from children under 3.") && last.ends_with(deferral), "{last}");
    assert!(all.join(" ").ends_with("Keep it dry and away from perfume; a soft cloth brings the shine back."));
    // As a file: its name, its language, its sheet, its typefaces.
    assert_eq!(known(&pdf, "Title"), format!("Receipt {}", numbers[0]));
    assert_eq!((known(&pdf, "Pages").as_str(), known(&pdf, "Page size").as_str()), ("1", "612 x 792 pts (letter)"));
    assert_eq!(language(&pdf), "en");
    let typefaces = typefaces(&pdf);
    assert!(!typefaces.is_empty() && typefaces.iter().all(|one| one.contains("yes yes yes")), "{typefaces:#?}");
    assert!(pdf.len() < 120_000, "{} bytes", pdf.len());
    // The ticket leads to the same receipt.
    let by_ticket = file(&seller, &format!("/tickets/{}/receipt.pdf", bill(&table, on).tickets[1].id));
    assert_eq!(by_ticket, pdf);
}

/// The box is taken back for what was paid for it, 11.68; the rest comes to 43.14, its tax to 2.54.
#[test]
fn what_is_taken_back_leaves_the_sum_and_stands_below() {
    if !has_poppler() {
        return;
    }
    let table = table_with(&[]);
    let seller = table.seller();
    let on = evening(&table, &seller);
    let other = [("payment", "0"), ("tender", "Voucher"), ("reason", "touched the wrong button"), ("seller_pin", PIN)];
    act(&seller, &format!("/bills/{on}/other-way"), &other);
    let back = [("what", "goods:0"), ("reason", "it broke"), ("tender", "cash"), ("seller_pin", PIN)];
    act(&seller, &format!("/bills/{on}/take-back"), &back);
    let pdf = file(&seller, &format!("/bills/{on}/receipt.pdf"));
    keep_picture(&pdf, "receipt-taken-back");
    let said = between(&lines(&pdf), "Subtotal", "Good to know");
    let wanted = [
        "Subtotal $40.60",
        "Tax 6.25 % on $40.60 $2.54",
        "Total $43.14",
        "A part of it paid: Voucher $20.00",
        "Paid: Cash $34.82",
        "Given $40.00",
        "Change $5.18",
        "Paid out: Cash −$11.68",
        "Taken back, no longer in the sum above",
        "The way to pay was put right: touched the wrong button",
        "Gift box: it broke −$11.68",
    ];
    assert_eq!(said, wanted);
}

/// 120.00 with 20 % inside is 20.00 of tax on 100.00 (HMRC, VAT calculated from inclusive prices), on a European sheet, in the
/// guest's language, with the decimal mark of it.
#[test]
fn tax_that_is_inside_is_told_below_the_total_in_every_language() {
    if !has_poppler() {
        return;
    }
    let table = table_with(&[
        ("currency: \"USD\"", "currency: \"EUR\""),
        ("Added(percent: \"6.25\")", "Included(percent: \"20\")"),
        ("region: US", "region: EU"),
    ]);
    let seller = table.seller();
    let form = Uuid::now_v7().to_string();
    let on = act(&seller, "/bills", &[("id", &form)]).location.replace("/bills/", "");
    let unpaid = seller.get(&format!("/bills/{on}/receipt.pdf"));
    assert_eq!(unpaid.status, 409);
    assert!(unpaid.text.contains("Nothing was paid for this yet"), "{}", unpaid.text);
    act(&seller, &format!("/bills/{on}/goods"), &[("words", "Größe L – «étui»"), ("price", "120")]);
    pay(&table, &seller, on.parse().unwrap(), &[("tender", "card")]);
    for (code, total, tax, paid) in [
        ("en", "Total €120.00", "Tax in it, 20 % on €100.00 €20.00", "Paid: Card €120.00"),
        ("de", "Summe 120,00 €", "Darin Steuer, 20 % auf 100,00 € 20,00 €", "Bezahlt: Karte 120,00 €"),
        ("fr", "Total 120,00 €", "Dont taxe, 20 % sur 100,00 € 20,00 €", "Payé : carte 120,00 €"),
        ("es", "Total 120,00 €", "Impuesto incluido, 20 % sobre 100,00 € 20,00 €", "Pagado: tarjeta 120,00 €"),
    ] {
        let pdf = file(&seller, &format!("/bills/{on}/receipt.pdf?language={code}"));
        keep_picture(&pdf, &format!("receipt-inside-{code}"));
        let all = lines(&pdf);
        let at = all.iter().position(|line| line == total).unwrap_or_else(|| panic!("{total}: {all:#?}"));
        assert_eq!(all[at + 1..at + 3], [tax, paid], "{code}");
        assert!(all[at - 1].starts_with("Größe L – «étui» "), "{all:#?}");
        assert_eq!(known(&pdf, "Page size"), "595.276 x 841.89 pts (A4)");
        assert_eq!(language(&pdf), code);
    }
    let wrong = seller.get(&format!("/bills/{on}/receipt.pdf?language=pirate"));
    assert_eq!(wrong.status, 400);
}

#[test]
fn a_receipt_printer_gets_the_same_words_on_every_roll() {
    if !has_poppler() {
        return;
    }
    for (columns, language) in [(32, "en"), (42, "de"), (48, "fr"), (32, "es"), (32, "de"), (42, "fr")] {
        let prints = tempfile::tempdir().unwrap();
        let printer = format!("file:{}", prints.path().display());
        let table = with_printer(&printer, &format!("columns: {columns},"));
        let seller = table.seller();
        let on = evening(&table, &seller);
        let address = format!("/bills/{on}");
        act(&seller, &format!("{address}/print-receipt"), &[("language", language)]);
        until_it_says(&seller, &address, ": printed", 10);
        let number = bill(&table, on).number;
        let bytes = fs::read(prints.path().join(format!("receipt-{number}.bin"))).unwrap();
        let out = read(&bytes);
        out.keep(&format!("roll-{columns}-{language}"));
        assert!(out.fits(columns), "{columns}: {:#?}", out.lines);
        assert_eq!(out.cuts, 1);
        let pdf = lines(&file(&seller, &format!("{address}/receipt.pdf?language={language}"))).join(" ");
        assert_eq!(out.words(), plainly(&pdf), "{columns} {language}");
        let sum = out.lines.iter().find(|line| line.high == 2 && line.text.contains("54")).expect("the total");
        assert!(sum.bold && sum.text.chars().count() == columns, "{sum:?}");
        let amounts = out.lines.iter().filter(|line| line.text.ends_with(['0', '9', '$']) && line.text.contains("  "));
        assert!(amounts.clone().count() > 8 && amounts.clone().all(|line| line.text.chars().count() == columns));
    }
}

#[test]
fn a_long_receipt_goes_on_over_numbered_pages() {
    if !has_poppler() {
        return;
    }
    let table = table_with(&[]);
    let seller = table.seller();
    let form = Uuid::now_v7().to_string();
    let on = act(&seller, "/bills", &[("id", &form)]).location;
    for n in 1..=90 {
        act(&seller, &format!("{on}/goods"), &[("words", &format!("Thing number {n}")), ("price", "1")]);
    }
    pay(&table, &seller, on.replace("/bills/", "").parse().unwrap(), &[("tender", "card")]);
    let pdf = file(&seller, &format!("{on}/receipt.pdf"));
    keep_picture(&pdf, "receipt-long");
    let pages: usize = known(&pdf, "Pages").parse().unwrap();
    assert!((2..=3).contains(&pages), "{pages}");
    let all = lines(&pdf);
    for n in 1..=90 {
        assert!(all.contains(&format!("Thing number {n} $1.00")), "{n}");
    }
    // 90 at 6.25 % is 5.625, half a cent up.
    assert!(all.contains(&"Total $95.63".to_owned()), "{all:#?}");
    for page in 1..=pages {
        assert!(all.iter().any(|line| line.ends_with(&format!("· {page} / {pages}"))), "{all:#?}");
    }
}

#[test]
fn practice_gives_no_receipt() {
    if !has_poppler() {
        return;
    }
    let table = table_with(&[]);
    let mut seller = table.seller();
    act(&seller, "/practice/begin", &[]);
    let practice = seller.get("/tickets").cookie.expect("the practice's cookie");
    seller.cookie = format!("{}; {practice}", seller.cookie);
    let id = paid(&table, &seller, "A1");
    let pdf = file(&seller, &format!("/tickets/{id}/receipt.pdf"));
    keep_picture(&pdf, "receipt-practice");
    let said = lines(&pdf).into_iter().filter(|line| line == "Practice – no receipt").count();
    assert_eq!(said, 2, "above and below");
}
