//! The card that goes along with a piece.

use std::{fs, process::Command};

use chatelaine::craft::Wearer;

use crate::kit::Table;

/// The words of a PDF, read by another program; none where it is not installed.
fn words_of(pdf: &[u8]) -> Option<String> {
    let dir = tempfile::tempdir().expect("a folder");
    let file = dir.path().join("card.pdf");
    fs::write(&file, pdf).expect("written");
    let read = Command::new("pdftotext").args(["-layout".as_ref(), file.as_os_str(), "-".as_ref()]).output().ok()?;
    assert!(read.status.success(), "{read:?}");
    Some(String::from_utf8(read.stdout).expect("UTF-8").split_whitespace().collect::<Vec<_>>().join(" "))
}

/// Maker, materials, care and the words of caution are on it, and no price: it goes along with a gift as well.
#[test]
fn a_card_tells_materials_care_and_cautions_and_no_price() {
    let table = Table::new();
    let seller = table.seller();
    let kiosk = table.kiosk();
    let ticket = kiosk.ticket(0, &["key-heart", "key-heart", "vial-sand"], Wearer::From6To12);
    kiosk.deliver(&ticket, true);
    let address = format!("/tickets/{}/card.pdf", ticket.id);
    assert!(seller.get(&format!("/tickets/{}", ticket.id)).text.contains(&address), "the way to it");
    let body = |path: &str| {
        let mut answer =
            seller.agent.get(format!("{}{path}", seller.url)).header("Cookie", &seller.cookie).call().expect("a PDF");
        assert_eq!(answer.status(), 200);
        answer.body_mut().read_to_vec().expect("a PDF")
    };
    let Some(words) = words_of(&body(&address)) else { return };
    let catalog = table.catalog();
    let key = catalog.drop_kind("key-heart").expect("the key");
    assert!(words.contains(&catalog.table.name) && words.contains(&ticket.number.to_string()), "{words}");
    assert!(words.contains(&key.name), "{words}");
    assert!(words.contains("Care") && words.to_lowercase().contains("small part"), "{words}");
    for price in [key.price, catalog.base("chain-brass").expect("a chain").price] {
        assert!(!words.contains(&format!("{price:.2}")), "{words}");
    }
    let german = words_of(&body(&format!("{address}?language=de"))).expect("words");
    assert!(german.contains("Heb diese Karte auf") && german.contains("Messing"), "{german}");
}
