//! A sort that is only guessed, as from a photo: what any sort has counts, until the maker tells it.

use std::collections::BTreeSet;

use chatelaine::{
    catalog::{Act, Catalog, Fields},
    caution::Rules,
    craft::{Guess, Home, Material, Sort, Wearer},
};

use super::acts::Bench;

fn home(text: &str) -> Home {
    text.parse().unwrap()
}

/// What is said of the drop at `at`, and what of it counts against the piece.
fn said(catalog: &Catalog, at: &str, wearer: Wearer) -> BTreeSet<(String, bool)> {
    let verdict = catalog.drop_cautions(catalog.drop_at(home(at)).unwrap(), wearer);
    verdict.cautions.iter().map(|caution| (caution.code.code().to_owned(), caution.grave)).collect()
}

#[test]
fn a_guess_at_the_sort_hears_of_what_any_sort_has() {
    for rules in Rules::built_in() {
        for sort in Sort::ALL {
            let bench = Bench::empty();
            let tray = Act::NewTray { letter: 'A', name: "First".into(), rows: 1, columns: 2 };
            let region = Fields::new().written("region", rules.region.code());
            let fields = |id: &str| Fields::new().text("id", id).text("price", "4.00").written("sort", sort.name());
            let told = Act::Lay { home: home("A1"), fields: fields("told") };
            let guess = fields("guess").written("guessed", "[sort]");
            let guessed = Act::Lay { home: home("A2"), fields: guess };
            assert!(bench.does(&[Act::Table { fields: region }, tray, told, guessed]).unwrap());
            let catalog = bench.catalog();
            let one = catalog.drop_kind("guess").unwrap();
            assert!(one.guessed.contains(&Guess::Sort) && one.sort == *sort, "it is shown as what it looks like");
            for wearer in Wearer::ANSWERS.into_iter().chain([Wearer::Unknown]) {
                let (sure, unsure) = (said(&catalog, "A1", wearer), said(&catalog, "A2", wearer));
                for (code, grave) in &sure {
                    // A ball of glass is said to be small as a part; that it is a ball is no more than that.
                    let as_grave = |(other, is_grave): &(String, bool)| other == code && is_grave >= grave;
                    let covered =
                        code == "small_ball" && unsure.iter().any(|one| one.0 == "small_part" && one.1 >= *grave);
                    assert!(covered || unsure.iter().any(as_grave), "{sort:?} {wearer:?}: {code} in {unsure:?}");
                }
            }
            // Told, it is what it is, though it was guessed right.
            let tell = Act::Tell { home: home("A2"), fields: Fields::new().written("sort", sort.name()) };
            assert!(bench.does(&[tell]).unwrap());
            let catalog = bench.catalog();
            assert!(!catalog.drop_kind("guess").unwrap().guessed.contains(&Guess::Sort));
            assert_eq!(said(&catalog, "A1", Wearer::Under3), said(&catalog, "A2", Wearer::Under3), "{sort:?}");
        }
    }
}

/// Who has told what it is made of has not told yet what it is.
#[test]
fn told_materials_are_no_told_sort() {
    let bench = Bench::empty();
    let tray = Act::NewTray { letter: 'A', name: "First".into(), rows: 1, columns: 1 };
    let fields = Fields::new().text("id", "one").text("price", "4.00").written("sort", "Charm");
    let lay =
        Act::Lay { home: home("A1"), fields: fields.written("materials", "[Brass]").written("guessed", "[sort]") };
    assert!(bench.does(&[tray, lay]).unwrap());
    let one = bench.catalog().drop_kind("one").unwrap().clone();
    assert!(one.facts.sharp && one.facts.liquid && one.facts.painted, "{:?}", one.facts);
    assert_eq!(one.facts.materials, [Material::Brass], "and of that nothing is guessed");
    // One danger is told, and the others when the sort is.
    let tell = |fields| Act::Tell { home: home("A1"), fields };
    assert!(bench.does(&[tell(Fields::new().written("liquid", "false"))]).unwrap());
    let one = bench.catalog().drop_kind("one").unwrap().clone();
    assert!(one.facts.sharp && !one.facts.liquid);
    assert!(bench.does(&[tell(Fields::new().written("sort", "Charm"))]).unwrap());
    let one = bench.catalog().drop_kind("one").unwrap().clone();
    assert!(!one.facts.sharp && !one.facts.painted && one.facts.comes_off.is_empty(), "{:?}", one.facts);
}

/// The list of what is guessed begins with what matters most to who wears the piece; the sort is among that.
#[test]
fn a_guess_at_the_sort_is_one_of_safety() {
    assert!(Guess::Sort.is_of_safety());
    assert!(Guess::Materials < Guess::Sort && Guess::Sort < Guess::Width && Guess::Sort < Guess::Finish);
}
