//! The demo catalogue reads without a mistake; broken ones are told with their place.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "catalog/mistakes.rs"]
mod mistakes;
#[path = "catalog/rules.rs"]
mod rules;
mod support;
#[path = "support/worded.rs"]
mod worded;

use std::fs;

use chatelaine::{
    catalog::{Catalog, Loaded, read_folder, read_piece},
    caution::{Gauge, Solid, gauge},
    craft::{Allergen, Body, UsualAllergen, Wearer},
    lang::Lang,
    money::TaxRule,
    ron_tree::{Detail, Mistake, Mistakes},
};
use rust_decimal::Decimal;
use support::{copy, demo_catalog, test_table};

/// Line and column, from 1, of `words` in `text`.
fn place(text: &str, words: &str) -> (usize, usize) {
    let at = text.find(words).unwrap_or_else(|| panic!("{words} does not stand in the file"));
    let line_start = text[..at].rfind('\n').map_or(0, |n| n + 1);
    (text[..at].matches('\n').count() + 1, text[line_start..at].chars().count() + 1)
}

/// What the seller should know of a folder, in English; in every other language it is told as well.
fn remarks(loaded: &Loaded) -> Vec<&str> {
    loaded.remarks.iter().for_each(worded::in_every_language);
    loaded.remarks.iter().map(Detail::english).collect()
}

#[test]
fn the_demo_catalogue_is_whole() {
    let loaded = read_folder(&demo_catalog()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    let catalog = &loaded.catalog;
    assert!(catalog.bases.len() >= 6 && catalog.trays.len() == 6 && catalog.drops.len() >= 86);
    for sort in chatelaine::craft::Sort::ALL {
        assert!(catalog.drops.iter().any(|kind| kind.sort == *sort), "no {}", sort.word());
    }
    assert_eq!(remarks(&loaded), Vec::<&str>::new(), "every drop goes onto some base");
    for base in &catalog.bases {
        let drops = catalog.drops.iter().take(5).map(|kind| kind.id.clone()).collect();
        let piece = chatelaine::craft::Piece {
            base: base.id.clone(),
            length: None,
            wearer: Default::default(),
            neck: None,
            drops,
            looks: vec![],
        };
        let quote = catalog.quote(&piece).unwrap_or_else(|error| panic!("{}: {error}", base.id));
        let on_top = match catalog.table.prices.tax {
            TaxRule::Added { .. } => quote.tax,
            TaxRule::None | TaxRule::Included { .. } => Decimal::ZERO,
        };
        assert_eq!(quote.total, quote.subtotal - quote.discount + on_top);
    }
}

/// Everything of the demo table has a name in every language of the tablet; the seller's own is the fallback.
#[test]
fn the_demo_catalogue_speaks_every_language() {
    let catalog = read_folder(&demo_catalog()).unwrap_or_else(|mistakes| panic!("{mistakes}")).catalog;
    let drops = catalog.drops.iter().map(|kind| (kind.id.clone(), &kind.name));
    let bases = catalog.bases.iter().map(|base| (base.id.clone(), &base.name));
    let trays = catalog.trays.iter().map(|tray| (tray.letter.to_string(), &tray.name));
    for (id, own) in drops.chain(bases).chain(trays) {
        for language in Lang::ALL.map(Lang::code) {
            assert!(language == "en" || catalog.names.find(language, &id).is_some(), "{id} has no name in {language}");
        }
        assert_eq!(catalog.called("en", &id, own), own);
    }
    assert_eq!(catalog.called("de", "key-heart", "Heart-bow key"), "Herzschlüssel");
    assert_eq!(catalog.called("de", "no-such-drop", "its own name"), "its own name");
}

#[test]
fn a_file_of_names_for_no_language_is_told() {
    let dir = tempfile::tempdir().expect("a folder");
    copy(&test_table(), dir.path()).expect("a copy");
    fs::remove_dir_all(dir.path().join("names")).expect("removed");
    assert!(read_folder(dir.path()).is_ok(), "translations may be left out");
    fs::create_dir(dir.path().join("names")).expect("made");
    fs::write(dir.path().join("names/german.ron"), "[]").expect("written");
    let mistakes = read_folder(dir.path()).expect_err("it is broken").to_string();
    assert!(mistakes.contains("names/german.ron") && mistakes.contains("names/de.ron"), "{mistakes}");
}

/// The quick answer for thousands of drops, and the one with all its words, in every region.
#[test]
fn a_drop_suits_where_no_caution_speaks_against_it() {
    let loaded = read_folder(&test_table()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    let mut against = 0;
    for rules in &loaded.rules {
        let catalog = Catalog { rules: rules.clone(), ..loaded.catalog.as_ref().clone() };
        for (kind, wearer) in catalog.drops.iter().flat_map(|kind| Wearer::ANSWERS.map(|wearer| (kind, wearer))) {
            let verdict = catalog.drop_cautions(kind, wearer);
            assert_eq!(catalog.suits(kind, wearer), verdict.suitable, "{} {} {wearer:?}", rules.region, kind.id);
            against += usize::from(!verdict.suitable);
        }
    }
    assert!(against > 100, "{against}");
}

/// Usual allergens are known however they are written; others stay in the maker's words.
#[test]
fn allergens_are_usual_ones_or_own_words() {
    let dir = tempfile::tempdir().expect("a folder");
    copy(&test_table(), dir.path()).expect("a copy");
    let path = dir.path().join("trays/d.ron");
    let text = fs::read_to_string(&path).expect("a file");
    fs::write(&path, text.replace("[Milk, Wheat]", "[Sesame, \"tree nuts\", \" carmine \"]")).expect("written");
    let loaded = read_folder(dir.path()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    let sweet = loaded.catalog.drop_kind("sweet-swirl").expect("the sweet");
    let (sesame, nuts) = (Allergen::Usual(UsualAllergen::Sesame), Allergen::Usual(UsualAllergen::TreeNuts));
    assert_eq!(sweet.facts.allergens, [sesame, nuts, Allergen::Own("carmine".into())]);
}

/// The reference library for RON reads the demo files as well, and refuses what is cut off: our own reader, which
/// knows every place, keeps to the same language.
#[test]
fn the_reference_library_reads_the_same_files() {
    for file in ["table.ron", "bases.ron", "trays/a.ron", "trays/b.ron", "trays/c.ron", "trays/d.ron"] {
        let text = fs::read_to_string(demo_catalog().join(file)).expect("a file");
        ron::from_str::<ron::Value>(&text).unwrap_or_else(|error| panic!("{file}: {error}"));
        let cut = &text[..text.trim_end().len() - 1];
        assert!(ron::from_str::<ron::Value>(cut).is_err(), "{file} without its last bracket");
    }
}

/// A copy of the test table with one file changed.
fn changed(file: &str, right: &str, wrong: &str) -> tempfile::TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    copy(&test_table(), dir.path()).expect("a copy");
    let path = dir.path().join(file);
    let text = fs::read_to_string(&path).expect("a file");
    assert!(text.contains(right), "{file} has no {right}");
    fs::write(&path, text.replacen(right, wrong, 1)).expect("written");
    dir
}

/// A box of zinc alloy 16 × 2.5 × 38 mm at 6.6 g/cm³ and 28.1 mm of 18 AWG brass: worked by hand, 10.03 + 0.19 g.
#[test]
fn a_weight_that_is_left_out_is_worked_out_and_said() {
    let dir = changed("trays/a.ron", "weight: \"4.1g\", ", "");
    let loaded = read_folder(dir.path()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    let weight = loaded.catalog.drop_kind("key-heart").expect("the key").weight.g();
    assert!((weight - 10.22).abs() < 0.01, "{weight}");
    let says = "\"key-heart\" (A1) has no weight; 10.2 g follow from its size in zinc alloy (its density from memory)";
    assert_eq!(remarks(&loaded), [says]);

    let dir = changed("trays/d.ron", "weight: \"6.9g\", ", "");
    let told = read_folder(dir.path()).expect_err("nobody knows what old metal weighs").to_string();
    assert!(told.contains("a drop of unknown metal without weight; weigh it"), "{told}");

    // 2 kg of zinc by its size: the same limits as for a weight that is given.
    let slab = "body: Box(width: \"16mm\", depth: \"2.5mm\", height: \"38mm\"), width: \"16mm\", height: \"38mm\"";
    let dir = changed("trays/a.ron", "weight: \"4.1g\", ", "");
    let path = dir.path().join("trays/a.ron");
    let text = fs::read_to_string(&path).expect("a file");
    assert!(text.contains(slab));
    let huge = text.replacen("depth: \"2.5mm\", height: \"38mm\")", "depth: \"200mm\", height: \"100mm\")", 1);
    fs::write(&path, huge).expect("written");
    let told = read_folder(dir.path()).expect_err("two kilograms").to_string();
    assert!(told.contains("trays/a.ron:6:9: a drop without weight, of 21"), "{told}");
    assert!(told.contains("expected 0.01 g to 500 g: correct the size, or weigh it"), "{told}");
}

#[test]
fn a_drop_that_goes_onto_no_base_is_remarked_with_the_sizes() {
    let dir = changed(
        "trays/a.ron",
        "ring: (outside: \"10mm\", wire: \"18awg\")",
        "ring: (outside: \"6mm\", wire: \"20awg\")",
    );
    let loaded = read_folder(dir.path()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    let wanted = "the ring of \"key-heart\" (A1) goes onto no base: it opens 4.38 mm, and more than 5.00 mm are needed at \
                  the easiest end";
    assert_eq!(remarks(&loaded), [wanted]);
}

/// The picture's outline decides, not the box round it: a narrow leaf set aslant, 40√2 = 56.6 mm long and 5.7 mm wide,
/// fits by the closed form for plates (64.8 mm), a plate of 40 × 40 mm does not.
#[test]
fn an_outline_is_that_of_the_picture() {
    let body = "body: Box(width: \"16mm\", depth: \"2.5mm\", height: \"38mm\"), width: \"16mm\", height: \"38mm\"";
    let outline = "body: Outline(thickness: \"2mm\"), width: \"40mm\", height: \"40mm\"";
    let dir = changed("trays/a.ron", body, outline);
    // 79 diagonals of a picture of 400 × 400 dots, 30 040 dots of 0.01 mm² each.
    let slanting = |x: u32, y: u32| x.abs_diff(y) < 40;
    let picture =
        image::RgbaImage::from_fn(400, 400, |x, y| image::Rgba([120, 90, 40, if slanting(x, y) { 255 } else { 0 }]));
    let body_now = |dir: &tempfile::TempDir| {
        let loaded = read_folder(dir.path()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
        loaded.catalog.drop_kind("key-heart").expect("the key").body.clone()
    };
    let fits = |body: &Body| gauge(&Solid::of_body(body), Gauge::Inch);

    picture.save(dir.path().join("pictures/key-heart.png")).expect("saved");
    let leaf = body_now(&dir);
    let Body::Outline { shape: Some(shape), .. } = &leaf else { panic!("{leaf:?}") };
    assert!(shape.hull_mm.len() <= 12, "{:?}", shape.hull_mm);
    assert!((shape.area_mm2 - 300.4).abs() < 1e-9, "{}", shape.area_mm2);
    assert!(fits(&leaf).fits && fits(&leaf).margin_mm > 1.0, "{:?}", fits(&leaf));

    image::RgbaImage::from_pixel(400, 400, image::Rgba([120, 90, 40, 255]))
        .save(dir.path().join("pictures/key-heart.png"))
        .expect("saved");
    assert!(fits(&body_now(&dir)).margin_mm < -2.0, "{:?}", fits(&body_now(&dir)));
    // That picture shows no end of the drop: the seller hears of it, and it may be a small part.
    let loaded = read_folder(dir.path()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    assert!(
        remarks(&loaded).len() == 1 && loaded.remarks[0].english().contains("nothing is transparent"),
        "{:?}",
        loaded.remarks
    );
}

/// A base takes every fact that a drop takes; what nobody says of a finish that is not the metal's own is unknown plating.
#[test]
fn a_base_has_the_facts_of_a_drop() {
    use chatelaine::craft::{Magnet, Material, Plating};
    let facts = "magnet: Unknown, coin_cell: true, sharp: true, liquid: true, looks_like_food: true, painted: true, \
                 allergens: [Milk], comes_off: [Ball(diameter: \"6mm\")], lead_exempt: Enamel, plating: Nickel";
    let dir = changed("bases.ron", "breakaway: true", &format!("breakaway: true, {facts}"));
    let loaded = read_folder(dir.path()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    let found = &loaded.catalog.base("chain-apart").expect("the base").facts;
    assert_eq!((found.magnet, found.plating, found.comes_off.len()), (Some(Magnet::UNKNOWN), Plating::Nickel, 1));
    assert!(found.coin_cell && found.sharp && found.liquid && found.looks_like_food && found.painted);
    let gunmetal = &loaded.catalog.base("chain-gunmetal").expect("the base").facts;
    assert_eq!((gunmetal.plating, &gunmetal.materials[..]), (Plating::Unknown, &[Material::SteelMetal][..]));
    let brass = &loaded.catalog.base("chain-brass").expect("the base").facts;
    assert_eq!(brass.plating, Plating::None);
    // A drop as large as that is taken where it is said to be meant.
    let dir = changed("trays/a.ron", "height: \"38mm\", ring", "height: \"160mm\", large: true, ring");
    let told = read_folder(dir.path()).expect_err("its body is another").to_string();
    assert!(!told.contains("large: true") && told.contains("38 mm of the body"), "{told}");
}

/// The demo table sells nothing that its own rules, or those of another region, forbid; and it has something for a child.
#[test]
fn the_demo_table_keeps_its_own_rules() {
    let loaded = read_folder(&demo_catalog()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    let catalog = &loaded.catalog;
    for rules in &loaded.rules {
        for kind in &catalog.drops {
            for base in &catalog.bases {
                let piece = chatelaine::craft::Piece {
                    base: base.id.clone(),
                    length: base.usual_length(),
                    wearer: chatelaine::craft::Wearer::Unknown,
                    neck: None,
                    drops: vec![kind.id.clone()],
                    looks: vec![],
                };
                let Ok(verdict) = catalog.cautions_under(&piece, rules) else { continue };
                assert!(!verdict.is_forbidden(), "{} {} {}", rules.region, base.id, kind.id);
            }
        }
    }
    for wearer in [chatelaine::craft::Wearer::From3To5, chatelaine::craft::Wearer::From6To12] {
        assert!(catalog.drops.iter().filter(|kind| catalog.suits(kind, wearer)).count() > 20, "{wearer:?}");
        assert!(catalog.bases.iter().filter(|base| catalog.base_suits(base, wearer)).count() >= 3, "{wearer:?}");
    }
}
