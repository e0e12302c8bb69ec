//! Slips for whoever threads a piece.

use std::fs;

use crate::{
    pdf_reader::{codes_in, has_poppler, keep_picture, known, lines, scanned},
    roll_reader::{plainly, read},
    scene::{act, file, in_a_network, ready, table_with, ticket, until_it_says, with_printer},
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
    assert_eq!(scanned(&pdf, 1), [number.as_str()], "no phone reaches a desk that answers its own machine alone");
    assert_eq!((known(&pdf, "Title"), known(&pdf, "Pages")), (format!("Slip {number}"), "1".to_owned()));
    keep_picture(&file(&seller, &format!("/tickets/{id}/slip.pdf?language=de")), "slip-de");
}

/// What a scanner reads on a slip is where a phone in the same network finds the ticket, on a sheet as on a roll.
#[test]
fn a_slip_is_scanned() {
    let prints = tempfile::tempdir().unwrap();
    let table = in_a_network(&format!("file:{}", prints.path().display()));
    let seller = table.seller();
    let id = ready(&table, &seller, "chain-brass", "A1");
    let number = ticket(&table, id).number;
    let wanted = format!("http://192.168.4.1:{}/number/{number}", table.desk.addr().port());
    let host = format!("192.168.4.1:{}", table.desk.addr().port());
    if has_poppler() {
        let asked = seller.agent.get(format!("{}/tickets/{id}/slip.pdf", seller.url));
        let mut answer = asked.header("Cookie", &seller.cookie).header("Host", &host).call().unwrap();
        let pdf = answer.body_mut().read_to_vec().unwrap();
        assert_eq!(scanned(&pdf, 1), [wanted.as_str()]);
    }
    let print = seller.agent.post(format!("{}/tickets/{id}/print-slip", seller.url));
    let answer = print.header("Cookie", &seller.cookie).header("Host", &host).send_form([("language", "en")]).unwrap();
    assert_eq!(answer.status(), 303);
    until_it_says(&seller, &format!("/tickets/{id}"), ": printed", 20);
    let out = read(&fs::read(prints.path().join(format!("slip-{number}.bin"))).unwrap());
    let code = &out.pictures[0];
    let pixel = |x: usize, y: usize| if code[y][x] { 0 } else { 255 };
    assert_eq!(codes_in(code[0].len(), code.len(), pixel), [wanted]);
    assert!(out.fits(32), "a roll of 58 mm is wide enough");
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
    let [picture, _code] = &out.pictures[..] else { panic!("{} pictures", out.pictures.len()) };
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
