//! Lots in a workshop's file that is also written by hand.

use std::{collections::BTreeMap, fs, thread};

use chatelaine::{
    catalog::{Act, EditRefusal, Fields, LotAmount, LotKey, LotTold, Place, PutAway, Seen, TableEditor, read_workshop},
    craft::Day,
    prep::cuts::Tenths,
};
use rust_decimal::Decimal;

use crate::{acts::Bench, random::Random};

const PARTS: &str = "parts.ron";

fn told(part: &str, lot: &str, amount: LotAmount) -> LotTold {
    let day = Day::from_iso("2026-05-04").unwrap();
    let price = Decimal::new(1250, 2);
    LotTold { part: part.into(), lot: lot.into(), day, amount, broken: 0, price, paper: None }
}

fn write(told: &LotTold) -> Act {
    Act::WriteLot { told: told.clone(), put_away: Some(told.put_away(2, None)) }
}

/// The test table's workshop with a comment behind every third line and above every entry that was bought.
fn commented(bench: &Bench) {
    let mut n = 0;
    let text = bench.text(PARTS);
    let lines = text.lines().map(|line| {
        n += 1;
        match line.trim() {
            words if words.starts_with("(part: ") && line.starts_with("        (") => {
                format!("        // {n}: from the slips ([{{\n{line}")
            }
            words if words.ends_with(',') && n % 3 == 0 => format!("{line} // {n}: \"sic\""),
            _ => line.to_owned(),
        }
    });
    let all: Vec<String> = lines.collect();
    bench.by_hand(PARTS, &(all.join("\r\n") + "\r\n// the end\r\n"));
}

fn comments(text: &str) -> Vec<String> {
    text.lines().filter_map(|line| line.split_once("// ").map(|(_, words)| words.trim().to_owned())).collect()
}

/// Forty acts by chance: every comment stays, every lot that was not touched is written as it was, and drawers grow by what
/// came; then the last ten are taken back one by one.
#[test]
fn forty_lots_leave_comments_and_other_entries_as_they_were() {
    for seed in [5, 2026] {
        let bench = Bench::new();
        commented(&bench);
        let mut random = Random(seed);
        let noted = comments(&bench.text(PARTS));
        assert!(noted.len() > 20, "{}", noted.len());
        let workshop = |bench: &Bench| read_workshop(bench.editor.root(), &bench.catalog()).unwrap().unwrap();
        let mut texts = vec![bench.text(PARTS)];
        let mut gone: Vec<String> = Vec::new();
        for step in 0..40 {
            let before = workshop(&bench);
            let keys: Vec<LotKey> = before.lots.iter().map(|lot| lot.key()).collect();
            let files = bench.editor.files().unwrap();
            let written: BTreeMap<LotKey, String> =
                keys.iter().map(|key| (key.clone(), files.written(&Place::Lot(key.clone())))).collect();
            let some = keys[random.of(keys.len())].clone();
            let name = format!("N {step} / \"{}\"", random.below(9));
            let act = match random.below(4) {
                0 => write(&told("silk", &name, LotAmount::Length(Tenths(100_000)))),
                1 => Act::StrikeLot { key: some.clone() },
                2 => Act::TellLot {
                    key: some.clone(),
                    fields: Fields::new().text("price", &format!("9.{step:02}")).text("paper", "letter \\ blue"),
                },
                _ => write(&told("bead", &name, LotAmount::Pieces(7))),
            };
            assert_eq!(bench.does(std::slice::from_ref(&act)).map_err(|error| error.to_string()), Ok(true), "{act:?}");
            let after = workshop(&bench);
            let files = bench.editor.files().unwrap();
            for (key, text) in written.iter().filter(|(key, _)| **key != some) {
                assert_eq!(files.written(&Place::Lot(key.clone())), *text, "seed {seed}, {act:?}");
            }
            let there =
                |part: &str| after.part(part).unwrap().there.amount() - before.part(part).unwrap().there.amount();
            let come = |part: &str, amount: i64| {
                let comes = matches!(&act, Act::WriteLot { told, .. } if told.part == part);
                assert_eq!(there(part), if comes { Decimal::from(amount) } else { Decimal::ZERO }, "{act:?}");
            };
            come("silk", 10_000);
            come("bead", 7);
            let now = comments(&bench.text(PARTS));
            if matches!(act, Act::StrikeLot { .. }) {
                gone.extend(noted.iter().filter(|one| !now.contains(one)).cloned());
            }
            let lost: Vec<&String> = noted.iter().filter(|one| !now.contains(one) && !gone.contains(one)).collect();
            assert!(lost.is_empty(), "seed {seed}, {act:?}: {lost:?}");
            texts.push(bench.text(PARTS));
        }
        for step in (texts.len() - 11..texts.len() - 1).rev() {
            bench.editor.undo("later").unwrap();
            assert_eq!(bench.text(PARTS), texts[step], "seed {seed}, back to {step}");
        }
    }
}

/// The same twice is one; another under the same name is refused; a lot that is told anew takes no other's name.
#[test]
fn one_lot_is_written_once() {
    let bench = Bench::new();
    let first = told("bead", "B2", LotAmount::Pieces(7));
    assert!(bench.does(&[write(&first)]).unwrap());
    let text = bench.text(PARTS);
    assert!(!bench.does(&[write(&first)]).unwrap());
    let other = LotTold { price: Decimal::ONE, ..first.clone() };
    assert!(matches!(bench.does(&[write(&other)]), Err(EditRefusal::LotThere(lot)) if lot == "B2"));
    let key = LotKey { part: "bead".into(), lot: "BD-26-1".into(), day: "2026-03-02".into() };
    let as_first = Fields::new().text("lot", "B2").text("day", "2026-05-04");
    assert!(matches!(
        bench.does(&[Act::TellLot { key: key.clone(), fields: as_first }]),
        Err(EditRefusal::LotThere(_))
    ));
    let nobody = LotKey { lot: "none".into(), ..key };
    assert!(matches!(bench.does(&[Act::StrikeLot { key: nobody }]), Err(EditRefusal::NoLot(_))));
    // A part that is none, and a part measured the wrong way, are the reader's to tell, with their place.
    for wrong in [told("beed", "B3", LotAmount::Pieces(1)), told("bead", "B3", LotAmount::Length(Tenths(50)))] {
        let refused = bench.does(&[Act::WriteLot { told: wrong, put_away: None }]);
        assert!(
            matches!(&refused, Err(EditRefusal::Mistakes(all)) if all.to_string().contains("parts.ron")),
            "{refused:?}"
        );
    }
    assert_eq!(bench.text(PARTS), text);
    fs::remove_file(bench.editor.root().join(PARTS)).unwrap();
    assert!(matches!(bench.does(&[write(&first)]), Err(EditRefusal::NoWorkshop)));
}

/// Where nothing was bought yet, the list begins with the first lot; spools that were cut are written as they are now.
#[test]
fn the_first_lot_begins_the_list_and_cut_spools_are_written_as_they_are() {
    let bench = Bench::new();
    let text = bench.text(PARTS);
    let at = text.find("    bought: [").unwrap();
    bench.by_hand(PARTS, &format!("{})\n", &text[..at]));
    let chain = told("cable-brass", "S9", LotAmount::Length(Tenths(200_000)));
    let put_away = PutAway::Spools { now: Some(vec![Tenths(54_286)]), more: vec![Tenths(100_000); 2] };
    bench.does(&[Act::WriteLot { told: chain, put_away: Some(put_away) }]).unwrap();
    let now = bench.text(PARTS);
    assert!(now.contains("spools: [\"5428.6mm\", \"10m\", \"10m\"], kerf: \"4.2mm\""), "{now}");
    let workshop = read_workshop(bench.editor.root(), &bench.catalog()).unwrap().unwrap();
    assert_eq!((workshop.lots.len(), workshop.lots[0].bought.amount), (1, Decimal::from(20_000)));
}

/// A terminal beside the desk: two editors of the same files write forty lots at once, and all of them are there.
#[test]
fn two_programs_that_write_at_once_lose_nothing() {
    let bench = Bench::new();
    let versions = bench.dir.path().join("versions");
    thread::scope(|scope| {
        for who in ["desk", "terminal"] {
            let editor = TableEditor::open(bench.editor.root().to_owned(), versions.clone()).unwrap();
            scope.spawn(move || {
                for n in 0..20 {
                    let act = write(&told("bead", &format!("{who} {n}"), LotAmount::Pieces(1)));
                    editor.change(&[act], &Seen::new(), &BTreeMap::new(), ("now", who)).unwrap();
                }
            });
        }
    });
    let workshop = read_workshop(bench.editor.root(), &bench.catalog()).unwrap().unwrap();
    assert_eq!(workshop.lots.iter().filter(|lot| lot.day.to_string() == "2026-05-04").count(), 40);
    assert_eq!(workshop.part("bead").unwrap().there.amount(), Decimal::from(62 + 40));
}
