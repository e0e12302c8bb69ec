//! The demo catalogue reads without a mistake; broken ones are told with their place.

mod support;

use std::fs;

use chatelaine::{
    catalog::{Catalog, read_folder, read_piece},
    caution::{Gauge, Solid, gauge},
    craft::{Allergen, Body, UsualAllergen, Wearer},
    ron_tree::Mistake,
};
use support::{copy, demo_catalog};

#[test]
fn the_demo_catalogue_is_whole() {
    let loaded = read_folder(&demo_catalog()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    let catalog = &loaded.catalog;
    assert!(catalog.bases.len() >= 6 && catalog.trays.len() == 4 && catalog.drops.len() >= 48);
    for sort in chatelaine::craft::Sort::ALL {
        assert!(catalog.drops.iter().any(|kind| kind.sort == *sort), "no {}", sort.word());
    }
    assert_eq!(loaded.remarks, Vec::<String>::new(), "every drop goes onto some base");
    for base in &catalog.bases {
        let drops = catalog.drops.iter().take(5).map(|kind| kind.id.clone()).collect();
        let piece = chatelaine::craft::Piece {
            base: base.id.clone(),
            length: None,
            wearer: Default::default(),
            neck: None,
            drops,
        };
        let quote = catalog.quote(&piece).unwrap_or_else(|error| panic!("{}: {error}", base.id));
        assert_eq!(quote.total, quote.subtotal - quote.discount + quote.tax);
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
        for file in fs::read_dir(demo_catalog().join("../assets/lang")).expect("the languages") {
            let file = file.expect("a file").file_name();
            let language = file.to_str().and_then(|name| name.strip_suffix(".ftl")).expect("a language");
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
    copy(&demo_catalog(), dir.path()).expect("a copy");
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
    let loaded = read_folder(&demo_catalog()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
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
    copy(&demo_catalog(), dir.path()).expect("a copy");
    let path = dir.path().join("trays/d.ron");
    let text = fs::read_to_string(&path).expect("a file");
    fs::write(&path, text.replace("[Milk, Wheat]", "[Sesame, \"tree nuts\", \" carmine \"]")).expect("written");
    let loaded = read_folder(dir.path()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    let sweet = loaded.catalog.drop_kind("sweet-swirl").expect("the sweet");
    let (sesame, nuts) = (Allergen::Usual(UsualAllergen::Sesame), Allergen::Usual(UsualAllergen::TreeNuts));
    assert_eq!(sweet.facts.allergens, [sesame, nuts, Allergen::Own("carmine".into())]);
}

/// A mistake a seller would make: the file, the words changed into what, and what the message has to say.
/// The place is found from where the wrong words then stand.
const SLIPS: &[(&str, &str, &str, &str, &str)] = &[
    ("table.ron", "currency: \"USD\"", "currency: \"usd\"", "\"usd\"", "currency code"),
    ("table.ron", "currency: \"USD\"", "currency: USD", "USD", "in quotes"),
    ("table.ron", "region: US", "region: \"US\"", "\"US\"", "without quotes"),
    ("table.ron", "region: US", "region: USA", "USA", "region"),
    ("table.ron", "rho: 0.6", "rho: 6", "6,", "0.1 to 1.5"),
    ("table.ron", "rho: 0.6", "rho: \"0.6\"", "\"0.6\"", "without quotes"),
    ("table.ron", "hold_minutes: 45", "hold_minutes: 0", "0,", "1 to 1440"),
    ("table.ron", "hold_minutes: 45", "hold_minutes: soon", "soon", "whole number"),
    ("table.ron", "hold_minutes", "hold_minuts", "hold_minuts", "did you mean hold_minutes?"),
    ("table.ron", "idle_warning_seconds: 20", "idle_warning_seconds: 5", "5,\n)", "20 to 300"),
    ("table.ron", "percent: \"6.25\"", "percent: \"6,25\"", "\"6,25\"", "percentage"),
    ("table.ron", "percent: \"6.25\"", "percent: 6.25", "6.25", "in quotes"),
    ("table.ron", "Added(", "Plus(", "Plus", "Included"),
    ("table.ron", "rounding: HalfUp", "rounding: Up", "Up", "HalfUp"),
    (
        "bases.ron",
        "id: \"chain-silver\"",
        "id: \"chain-brass\"",
        "\"chain-brass\", name: \"Antique silver",
        "a second time",
    ),
    ("bases.ron", "id: \"chain-silver\"", "id: \"Chain Silver\"", "\"Chain Silver\"", "small letters"),
    ("bases.ron", "finish: Copper", "finish: Coper", "Coper", "did you mean Copper?"),
    ("bases.ron", "price: \"14.00\"", "price: \"14.005\"", "\"14.005\"", "at most 2 decimals"),
    ("bases.ron", "price: \"14.00\"", "price: \"-14\"", "\"-14\"", "a price"),
    ("bases.ron", "price: \"14.00\"", "price: \"0.00\"", "\"0.00\"", "above zero"),
    ("bases.ron", "price: \"14.00\"", "price: \"1400000\"", "\"1400000\"", "up to"),
    ("bases.ron", "usual_length: \"24in\"", "usual_length: \"24\"", "\"24\"", "with its unit"),
    ("bases.ron", "usual_length: \"24in\"", "usual_length: \"24 inch\"", "\"24 inch\"", "24in"),
    (
        "bases.ron",
        "outside: \"5mm\", wire: \"20awg\"",
        "outside: \"5mm\", wire: \"3mm\"",
        "(outside: \"5mm\", wire: \"3mm\"",
        "thinner",
    ),
    ("bases.ron", "link: Rolo", "link: Rollo", "Rollo", "did you mean Rolo?"),
    ("bases.ron", "Bangle(", "Bracelet(", "Bracelet", "Necklace(…) or Bangle(…)"),
    ("bases.ron", "free_arc_deg: 240", "free_arc_deg: 400", "400", "10 to 340"),
    ("bases.ron", "stock: 20", "stock: -2", "-2,", "0 to 100000"),
    ("bases.ron", "breakaway: false", "breakaway: no", "no,", "yes or no"),
    ("trays/a.ron", "letter: \"A\"", "letter: \"a\"", "\"a\"", "from \"A\" to \"Z\""),
    ("trays/d.ron", "letter: \"D\"", "letter: \"A\"", "\"A\"", "trays/a.ron"),
    ("trays/a.ron", "sort: Key", "sort: Keys", "Keys,", "did you mean Key?"),
    ("trays/a.ron", "materials: [ZincAlloy]", "materials: []", "[]", "at least one material"),
    ("trays/a.ron", "body: Box(", "body: Cube(", "Cube", "Cylinder(diameter, height)"),
    (
        "trays/a.ron",
        "picture: \"key-heart.png\"",
        "picture: \"key-hart.png\"",
        "\"key-hart.png\"",
        "did you mean \"key-heart.png\"?",
    ),
    ("trays/a.ron", "\"key-heart.png\"", "\"key-heart.png", "\"key-heart.png,", "closing quote"),
    ("trays/a.ron", "ring: (outside", "ring: outside", ": \"10mm\"", "comma"),
    ("names/de.ron", "id: \"key-heart\"", "id: \"key-hart\"", "\"key-hart\"", "did you mean \"key-heart\"?"),
    ("names/de.ron", "name: \"Feder\"", "name: \" \"", "\" \"", "1 to 60 letters"),
    ("names/fr.ron", "name: \"Plume\"", "nom: \"Plume\"", "nom", "the fields id, name"),
    (
        "names/es.ron",
        "id: \"key-round\"",
        "id: \"key-heart\"",
        "\"key-heart\", name: \"Llave con rueda",
        "a second name",
    ),
    ("trays/d.ron", "[Milk, Wheat]", "[Milk, Weat]", "Weat]", "did you mean Wheat?"),
    ("trays/d.ron", "[Milk, Wheat]", "[Milk, \"\"]", "\"\"]", "an allergen in 1 to 60 letters"),
    ("trays/d.ron", "[Milk, Wheat]", "[\"  \", Wheat]", "\"  \"", "an allergen in 1 to 60 letters"),
    ("trays/a.ron", "weight: \"4.", "weigth: \"4.", "weigth", "did you mean weight?"),
    // What is known of a part, in a drop and in a base.
    ("bases.ron", "plating: NickelFree", "plating: NickelFre", "NickelFre,", "did you mean NickelFree?"),
    ("bases.ron", "breakaway: true", "breakaway: true, magnet: strong", "strong", "Unknown, or (surface_kilogauss"),
    ("bases.ron", "dated: \"2026-02-20\"", "dated: \"2026-02-30\"", "\"2026-02-30\"", "a date as in"),
    ("bases.ron", "says: [Lead, Cadmium, Nickel]", "says: []", "[]", "at least one of Lead"),
    ("bases.ron", "says: [Lead, ", "says: [Leed, ", "Leed", "did you mean Lead?"),
    ("trays/c.ron", "comes_off: [Cylinder(", "comes_off: [Cork(", "Cork(", "a body: "),
    ("trays/c.ron", "lead_exempt: CrystalGlass", "lead_exempt: Crystal", "Crystal,\n", "did you mean CrystalGlass?"),
    ("trays/d.ron", "coin_cell: true", "coin_cell: true, liquid: some", "some", "yes or no"),
    // A body and its picture differ by a quarter at most; 16 cm for 16 mm asks again.
    (
        "trays/a.ron",
        "width: \"16mm\", height: \"38mm\", ring",
        "width: \"21mm\", height: \"38mm\", ring",
        "\"21mm\", height",
        "16 mm of the body",
    ),
    (
        "trays/a.ron",
        "width: \"16mm\", height: \"38mm\", ring",
        "width: \"16cm\", height: \"38mm\", ring",
        "\"16cm\", height",
        "write large: true",
    ),
];

/// Line and column, from 1, of `words` in `text`.
fn place(text: &str, words: &str) -> (usize, usize) {
    let at = text.find(words).unwrap_or_else(|| panic!("{words} does not stand in the file"));
    let line_start = text[..at].rfind('\n').map_or(0, |n| n + 1);
    (text[..at].matches('\n').count() + 1, text[line_start..at].chars().count() + 1)
}

#[test]
fn every_slip_is_told_with_its_place() {
    let dir = tempfile::tempdir().expect("a folder");
    copy(&demo_catalog(), dir.path()).expect("a copy");
    let mut faults = Vec::new();
    for (file, right, wrong, stands, says) in SLIPS {
        let path = dir.path().join(file);
        let whole = fs::read_to_string(&path).expect("a file");
        assert!(whole.contains(right), "{file} has no {right}");
        let broken = whole.replacen(right, wrong, 1);
        fs::write(&path, &broken).expect("written");
        let mistakes = read_folder(dir.path()).expect_err(&format!("{file}: {wrong} was taken")).0;
        let (line, column) = place(&broken, stands);
        let told =
            |m: &Mistake| m.file == *file && m.line == line && m.column == column && m.to_string().contains(says);
        if !mistakes.iter().any(told) {
            faults.push(format!("{file}:{line}:{column} should say {says:?}, told were {mistakes:?}"));
        }
        fs::write(&path, &whole).expect("written");
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn all_mistakes_of_a_folder_are_told_at_once() {
    let dir = tempfile::tempdir().expect("a folder");
    copy(&demo_catalog(), dir.path()).expect("a copy");
    for (file, right, wrong) in [
        ("table.ron", "rho: 0.6", "rho: 9"),
        ("bases.ron", "stock: 20", "stock: x"),
        ("trays/c.ron", "sort: Bead", "sort: Bed"),
    ] {
        let path = dir.path().join(file);
        let text = fs::read_to_string(&path).expect("a file").replacen(right, wrong, 1);
        fs::write(path, text).expect("written");
    }
    fs::write(dir.path().join("pictures/key-round.png"), b"no picture").expect("written");
    fs::remove_file(dir.path().join("trays/d.ron")).expect("removed");
    let mistakes = read_folder(dir.path()).expect_err("it is broken").0;
    let files: Vec<&str> = mistakes.iter().map(|mistake| mistake.file.as_str()).collect();
    assert_eq!(files, ["table.ron", "bases.ron", "trays/a.ron", "trays/c.ron"], "{mistakes:#?}");
}

#[test]
fn files_that_are_damaged_anywhere_end_in_a_message() {
    let dir = tempfile::tempdir().expect("a folder");
    copy(&demo_catalog(), dir.path()).expect("a copy");
    fs::remove_dir_all(dir.path().join("pictures")).expect("removed");
    let path = dir.path().join("bases.ron");
    let whole = fs::read(&path).expect("a file");
    for end in (0..whole.len()).step_by(7) {
        fs::write(&path, &whole[..end]).expect("written");
        assert!(read_folder(dir.path()).is_err(), "cut at byte {end}");
    }
    fs::write(&path, b"[ \xFF ]").expect("written");
    assert!(read_folder(dir.path()).is_err());
}

#[test]
fn a_piece_reads_from_a_file_and_its_slips_are_told() {
    let piece =
        read_piece("p.ron", "(base: \"chain-brass\", length: \"24in\", wearer: From6To12, drops: [\"key-heart\"])");
    assert_eq!(piece.expect("a piece").drops, ["key-heart"]);
    for (text, says) in [
        ("(base: \"chain-brass\")", "add the field drops"),
        ("(base: chain, drops: [])", "in quotes"),
        ("(base: \"x\", wearer: Adult, drops: [])", "wearer"),
        ("(base: \"x\", length: \"long\", drops: [])", "24in"),
        ("", "expected a value"),
    ] {
        let told = read_piece("p.ron", text).expect_err(text).to_string();
        assert!(told.contains(says) && told.starts_with("p.ron:1:"), "{told}");
    }
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

/// A copy of the demo catalogue with one file changed.
fn changed(file: &str, right: &str, wrong: &str) -> tempfile::TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    copy(&demo_catalog(), dir.path()).expect("a copy");
    let path = dir.path().join(file);
    let text = fs::read_to_string(&path).expect("a file");
    assert!(text.contains(right), "{file} has no {right}");
    fs::write(&path, text.replacen(right, wrong, 1)).expect("written");
    dir
}

#[test]
fn a_region_is_a_file_of_the_folder() {
    let dir = changed("table.ron", "region: US", "region: CA");
    let told = read_folder(dir.path()).expect_err("no such rules yet").to_string();
    assert!(told.contains("table.ron:9:13: CA is not a region with rules"), "{told}");

    let us = fs::read_to_string(demo_catalog().join("../assets/rules/us.ron")).expect("the rules");
    let canada = us.replace("\"US\"", "\"CA\"").replace("gauge: Inch", "gauge: Metric");
    fs::create_dir(dir.path().join("rules")).expect("a folder");
    fs::write(dir.path().join("rules/ca.ron"), &canada).expect("written");
    let loaded = read_folder(dir.path()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    assert_eq!(loaded.catalog.rules.region.code(), "CA");
    assert_eq!(loaded.catalog.sizes.gauge(), Gauge::Metric);
    let codes: Vec<&str> = loaded.rules.iter().map(|rules| rules.region.code()).collect();
    assert_eq!(codes, ["US", "EU", "UK", "CA"]);

    let broken = canada.replace("code: glass", "code: glas").replace("code: sharp", "code: sharpe");
    fs::write(dir.path().join("rules/ca.ron"), broken).expect("written");
    let told = read_folder(dir.path()).expect_err("two words nobody knows").0;
    assert!(told.len() == 2 && told.iter().all(|one| one.file == "rules/ca.ron" && one.line > 0), "{told:?}");
    fs::write(dir.path().join("rules/ca.ron"), &canada).expect("written");

    fs::write(dir.path().join("rules/ca2.ron"), &canada).expect("written");
    let told = read_folder(dir.path()).expect_err("twice").to_string();
    assert!(told.contains("rules/ca2.ron: the rules of CA a second time; rules/ca.ron has them"), "{told}");

    fs::write(dir.path().join("rules/ca2.ron"), us.replace("FluxBelow(50.0)", "AtMost(50.0)")).expect("written");
    let mistakes = read_folder(dir.path()).expect_err("the wrong limit").0;
    let (line, column) = place(&us, "FluxBelow(50.0)");
    assert!(mistakes.iter().any(|m| (m.line, m.column) == (line, column) && m.to_string().contains("FluxBelow(50.0)")));
}

/// What can't be read is told, and never passed over: the program's own rules would be taken in its place.
#[test]
fn a_rules_folder_that_cannot_be_read_is_a_mistake() {
    let dir = changed("table.ron", "region: US", "region: US");
    let rules = dir.path().join("rules");
    let told =
        || read_folder(dir.path()).map(|loaded| loaded.catalog.rules.name.clone()).unwrap_or_else(|m| m.to_string());
    assert_eq!(told(), "United States", "without such a folder the program's own");
    fs::write(&rules, "no folder").expect("written");
    let said = told();
    assert!(said.starts_with("rules: the folder can't be read") && said.contains("program's own"), "{said}");
    fs::remove_file(&rules).expect("removed");
    #[cfg(unix)]
    {
        use std::{ffi::OsStr, os::unix::ffi::OsStrExt};
        std::os::unix::fs::symlink(dir.path().join("nowhere"), &rules).expect("a link");
        assert!(told().starts_with("rules: the folder can't be read"), "a link to nowhere: {}", told());
        fs::remove_file(&rules).expect("removed");
        fs::create_dir(&rules).expect("a folder");
        let odd = rules.join(OsStr::from_bytes(b"us\xff.ron"));
        fs::write(&odd, "()").expect("written");
        assert!(told().starts_with("rules/us\u{fffd}.ron: a file name that is no UTF-8"), "{}", told());
        fs::remove_file(&odd).expect("removed");
        std::os::unix::fs::symlink(dir.path().join("nowhere"), rules.join("us.ron")).expect("a link");
        assert!(told().starts_with("rules/us.ron: "), "{}", told());
        fs::remove_dir_all(&rules).expect("removed");
    }
    fs::create_dir_all(rules.join("us.ron")).expect("a folder");
    assert!(told().starts_with("rules/us.ron: the file can't be read"), "a folder in place of a file: {}", told());
}

#[test]
fn rules_of_the_folder_replace_those_of_the_program() {
    let dir = changed("table.ron", "region: US", "region: US");
    let us = fs::read_to_string(demo_catalog().join("../assets/rules/us.ron")).expect("the rules");
    fs::create_dir(dir.path().join("rules")).expect("a folder");
    fs::write(dir.path().join("rules/us.ron"), us.replace("\"United States\"", "\"Here\"")).expect("written");
    let loaded = read_folder(dir.path()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    assert_eq!((loaded.catalog.rules.name.as_str(), loaded.rules.len()), ("Here", 3));
    let before = read_folder(&demo_catalog()).expect("the catalogue").revision;
    assert_ne!(loaded.revision, before, "an edited rule is another catalogue");
}

/// A box of zinc alloy 16 × 2.5 × 38 mm at 6.6 g/cm³ and 28.1 mm of 18 AWG brass: worked by hand, 10.03 + 0.19 g.
#[test]
fn a_weight_that_is_left_out_is_worked_out_and_said() {
    let dir = changed("trays/a.ron", "weight: \"4.1g\", ", "");
    let loaded = read_folder(dir.path()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    let weight = loaded.catalog.drop_kind("key-heart").expect("the key").weight.g();
    assert!((weight - 10.22).abs() < 0.01, "{weight}");
    let says = "\"key-heart\" (A1) has no weight; 10.2 g follow from its size in zinc alloy (its density from memory)";
    assert_eq!(loaded.remarks, [says]);

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
    assert_eq!(loaded.remarks, [wanted]);
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
    assert!(loaded.remarks.len() == 1 && loaded.remarks[0].contains("nothing is transparent"), "{:?}", loaded.remarks);
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
