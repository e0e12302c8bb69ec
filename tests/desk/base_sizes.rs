//! Sizes, weights, ring and clasp of a base, told at the desk without a text editor.

use chatelaine::{
    catalog::read_folder,
    craft::{Base, BaseKind, Guess, Necklace},
    lang::Lang,
};

use super::{
    own_table::{begun, enter},
    *,
};

/// The base as the file has it now.
fn base(table: &Table, id: &str) -> Base {
    let loaded = read_folder(&table.dir.path().join("catalog")).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    loaded.catalog.base(id).unwrap_or_else(|| panic!("no {id}")).clone()
}

fn necklace(table: &Table, id: &str) -> Necklace {
    match base(table, id).kind {
        BaseKind::Necklace(necklace) => necklace,
        BaseKind::Bangle(_) => panic!("{id} is a bangle"),
    }
}

/// Ticks at all that is a guess, as a browser sends them with the page.
fn ticks(base: &Base) -> Vec<(&'static str, &'static str)> {
    base.guessed.iter().map(|guess| ("guess", guess.field())).collect()
}

#[test]
fn sizes_of_a_base_are_told_and_are_no_guesses_any_more() {
    let (table, seller) = begun();
    let page = "/table/bases/chain";
    let before = base(&table, "chain");
    for guess in [Guess::Clasp, Guess::EndRing, Guess::Chain, Guess::UsualLength] {
        assert!(before.guessed.contains(&guess), "{guess:?}");
    }
    let text = seller.get(page).text;
    assert!(text.contains("<details open") && text.contains("value=\"24in\"") && text.contains("name=\"clasp_wire\""));
    // The page as it is, sent back: nothing is another, and what is guessed stays so.
    let written = fs::read_to_string(table.catalog_file("bases.ron")).unwrap();
    assert_eq!(enter(&seller, page, page, &ticks(&before)).status, 303);
    assert_eq!(fs::read_to_string(table.catalog_file("bases.ron")).unwrap(), written);

    // Numbers alone, as the language writes them, and with a unit of their own.
    let mut typed = ticks(&before);
    typed.extend([
        ("end_outside", "5,5"),
        ("end_wire", "18awg"),
        ("chain", "3.8g/ft"),
        ("usual_length", "45 cm"),
        ("shortest", "14in"),
        ("link_length", "4"),
        ("breakaway", "true"),
    ]);
    let answer = enter(&seller, page, page, &typed);
    assert_eq!(answer.status, 303, "{}", answer.text);
    let (now, told) = (necklace(&table, "chain"), base(&table, "chain"));
    assert_eq!((now.end_ring.outside.mm(), now.lengths.usual.mm(), now.link_length.mm()), (5.5, 450.0, 4.0));
    assert!((now.end_ring.wire.mm() - 1.0237).abs() < 1e-3, "18 AWG by the gauge's formula: {:?}", now.end_ring.wire);
    assert!((now.chain.g_per_m() - 12.467).abs() < 1e-3, "3.8 g to a foot of 304.8 mm: {:?}", now.chain);
    assert!((now.lengths.shortest.inches() - 14.0).abs() < 1e-9 && now.breakaway);
    for guess in [Guess::EndRing, Guess::Chain, Guess::UsualLength, Guess::Shortest, Guess::LinkLength] {
        assert!(!told.guessed.contains(&guess), "{guess:?}");
    }
    assert!(told.guessed.contains(&Guess::Clasp) && told.guessed.contains(&Guess::Longest), "nobody told those");

    // A guess that is right is told by taking its tick away, and a figure that is not sure gets one.
    let mut typed: Vec<_> = ticks(&told).into_iter().filter(|(_, field)| *field != "clasp").collect();
    typed.push(("guess", "chain"));
    assert_eq!(enter(&seller, page, page, &typed).status, 303);
    let (then, told) = (necklace(&table, "chain"), base(&table, "chain"));
    assert_eq!((then.clasp, then.chain), (now.clasp, now.chain), "the figures stay");
    assert!(!told.guessed.contains(&Guess::Clasp) && told.guessed.contains(&Guess::Chain));

    // One step back takes one change back.
    let undo = seller.get("/table").text;
    assert!(undo.contains("/table/undo"));
    assert_eq!(enter(&seller, "/table", "/table/undo", &[]).status, 303);
    assert!(base(&table, "chain").guessed.contains(&Guess::Clasp));
}

#[test]
fn what_is_no_size_is_refused_with_what_would_be_right() {
    let (table, seller) = begun();
    let page = "/table/bases/chain";
    let written = fs::read_to_string(table.catalog_file("bases.ron")).unwrap();
    let all = ticks(&base(&table, "chain"));
    for (field, typed, says) in [
        ("end_outside", "thick", "write it as 24in, 61cm, 20awg"),
        ("chain", "heavy", "write it as 12.5g/m, 3.8g/ft"),
        ("clasp_length", "-3", "can’t be read"),
        ("usual_length", "24 feet", "can’t be read"),
        // A wire that leaves no opening, a length outside of the others, a chain like a rope.
        ("end_wire", "3", "thinner than half the ring"),
        ("shortest", "30in", "usual_length between shortest"),
        ("chain", "900", "chain from 0.1 g/m to 500 g/m"),
        ("usual_length", "1e3", "can’t be read"),
    ] {
        let mut fields = all.clone();
        fields.push((field, typed));
        let answer = enter(&seller, page, page, &fields);
        assert_eq!(answer.status, 400, "{field} {typed}");
        let text = answer.text.replace('\u{a0}', " ");
        assert!(text.contains(says), "{field} {typed} should say {says}: {text}");
        assert_eq!(fs::read_to_string(table.catalog_file("bases.ron")).unwrap(), written, "{field} {typed}");
    }
    // The same in the reader's language, down to what the file's reader says.
    let german = Seller {
        agent: agent(),
        url: seller.url.clone(),
        cookie: format!("{}; language={}", seller.cookie, Lang::De.code()),
    };
    let mut fields = all;
    fields.push(("end_wire", "3"));
    let text = enter(&german, page, page, &fields).text;
    assert!(text.contains("Der Draht muss dicker als nichts und dünner als der halbe Ring sein"), "{text}");
}

/// What was written by hand stays as it was written where nobody changes it, and a bangle has its own figures.
#[test]
fn figures_of_the_table_stay_as_they_were_written() {
    let table = Table::new();
    let seller = table.seller();
    let before = fs::read_to_string(table.catalog_file("bases.ron")).unwrap();
    for id in ["chain-brass", "chain-apart", "bangle-silver"] {
        let page = format!("/table/bases/{id}");
        assert_eq!(enter(&seller, &page, &page, &[]).status, 303);
    }
    assert_eq!(fs::read_to_string(table.catalog_file("bases.ron")).unwrap(), before);
    let page = "/table/bases/bangle-silver";
    let text = seller.get(page).text;
    assert!(text.contains("name=\"free_arc_deg\"") && !text.contains("name=\"clasp_wire\""), "{text}");
    assert_eq!(enter(&seller, page, page, &[("inside", "62"), ("free_arc_deg", "200")]).status, 303);
    let after = fs::read_to_string(table.catalog_file("bases.ron")).unwrap();
    let changed = before.replacen("inside: \"60mm\"", "inside: \"62mm\"", 1);
    let (head, tail) = changed.split_at(changed.find("bangle-silver").unwrap());
    assert_eq!(after, format!("{head}{}", tail.replacen("free_arc_deg: 240", "free_arc_deg: 200", 1)));
    // A form that never had these fields, as one of an older page, changes none of them.
    assert_eq!(seller.post(page, &[("price", "13.00")]).status, 303);
    let without_fields = fs::read_to_string(table.catalog_file("bases.ron")).unwrap();
    assert_eq!(without_fields, after.replacen("price: \"12.50\"", "price: \"13.00\"", 1));
}
