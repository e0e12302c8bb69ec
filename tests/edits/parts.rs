//! Parts in a workshop's file that is also written by hand.

use chatelaine::{
    catalog::{Act, EditRefusal, LotAmount, PartCount, PartTold, PutAway, read_workshop},
    prep::cuts::Tenths,
};
use rust_decimal::Decimal;

use crate::{acts::Bench, random::Random};

const PARTS: &str = "parts.ron";

fn new(id: &str) -> PartTold {
    PartTold {
        id: id.into(),
        name: format!("The \"{id}\""),
        offer: Some((LotAmount::Pieces(50), Decimal::new(450, 2))),
        there: PartCount::Pieces(7),
        kerf: None,
        keep_from: None,
    }
}

/// Sixty acts by chance on a file full of comments: each changes the line of its part and no other.
#[test]
fn every_act_on_a_part_changes_its_line_and_no_other() {
    let bench = Bench::new();
    let mut n = 0;
    let text = bench.text(PARTS).lines().fold(String::new(), |text, line| {
        n += 1;
        let comment =
            if n % 2 == 0 && line.trim().ends_with(',') { format!(" // {n}: ([{{ \"sic\"") } else { String::new() };
        text + line + &comment + "\n"
    });
    bench.by_hand(PARTS, &text);
    let mut random = Random(18);
    let mut added: Vec<String> = Vec::new();
    for step in 0..60 {
        let before = bench.text(PARTS);
        let ids = ["ring-10", "ring-5", "cork", "bead"];
        let id = ids[random.of(ids.len())].to_owned();
        let act = match random.below(5) {
            0 => Act::CountPart { id, there: PartCount::Pieces(random.below(900) as u32) },
            1 => Act::AddToPart { id, more: PutAway::Pieces { now: None, more: 1 + random.below(9) as u32 } },
            2 => Act::AddToPart {
                id: "silk".into(),
                more: PutAway::Spools { now: None, more: vec![Tenths(1_000 + 10 * step)] },
            },
            3 if !added.is_empty() => Act::StrikePart { id: added.remove(random.of(added.len())) },
            _ => {
                let id = format!("new-{step}");
                added.push(id.clone());
                Act::NewPart { told: new(&id) }
            }
        };
        let changed = bench.does(std::slice::from_ref(&act)).map_err(|error| error.to_string());
        assert!(changed.is_ok(), "{act:?}: {changed:?}");
        let after = bench.text(PARTS);
        let (old, now): (Vec<&str>, Vec<&str>) = (before.lines().collect(), after.lines().collect());
        let same_from_the_top = old.iter().zip(&now).take_while(|(a, b)| a == b).count();
        let rest = old.iter().rev().zip(now.iter().rev()).take_while(|(a, b)| a == b).count();
        let others = old.len().min(now.len());
        assert!(same_from_the_top + rest + 1 >= others, "{act:?} changed more than one line");
        let workshop = read_workshop(bench.editor.root(), &bench.catalog()).unwrap().unwrap();
        assert!(added.iter().all(|id| workshop.part(id).is_some()), "{act:?}");
    }
    // What is so already changes nothing, also where it is written otherwise.
    let before = bench.text(PARTS);
    let brass = read_workshop(bench.editor.root(), &bench.catalog()).unwrap().unwrap();
    let there = PartCount::of(&brass.part("cable-brass").unwrap().there);
    assert_eq!(bench.does(&[Act::CountPart { id: "cable-brass".into(), there }]).map_err(|e| e.to_string()), Ok(false));
    assert_eq!(bench.text(PARTS), before);
}

#[test]
fn what_can_be_no_part_is_refused_and_nothing_is_written() {
    let bench = Bench::new();
    let before = bench.text(PARTS);
    let one = |act: Act| bench.does(&[act]);
    let other = PartTold { id: "ring-5".into(), ..new("x") };
    assert!(matches!(one(Act::NewPart { told: other }), Err(EditRefusal::PartThere(id)) if id == "ring-5"));
    let none = |id: &str| id.to_owned();
    let pieces = PartCount::Pieces(1);
    assert!(matches!(one(Act::CountPart { id: none("ring-6"), there: pieces.clone() }), Err(EditRefusal::NoPart(_))));
    assert!(matches!(one(Act::StrikePart { id: none("ring-6") }), Err(EditRefusal::NoPart(_))));
    let used = one(Act::StrikePart { id: none("ring-5") });
    assert!(matches!(used, Err(EditRefusal::PartUsed { recipes: 1.., lots: 1, .. })), "{used:?}");
    // Pieces of what lies on spools: the reader tells it.
    assert!(matches!(one(Act::CountPart { id: none("silk"), there: pieces }), Err(EditRefusal::Mistakes(_))));
    let no_id = PartTold { id: "No Id".into(), ..new("x") };
    assert!(matches!(one(Act::NewPart { told: no_id }), Err(EditRefusal::Mistakes(_))));
    assert_eq!(bench.text(PARTS), before);
}
