//! What the demo table charges, and what its bases weigh: as at a real table of this kind.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

mod support;

use std::{
    collections::{BTreeMap, BTreeSet},
    sync::Arc,
};

use chatelaine::{
    catalog::{Catalog, read_folder},
    craft::{Base, BaseKind, Material, Piece, Wearer, bangle_weight, chain_g_per_m},
    guest::{Filters, amounts, surprise},
    link::{Snapshot, WaitingNews},
    money::TaxRule,
};
use rust_decimal::Decimal;

fn demo() -> Arc<Catalog> {
    read_folder(&support::demo_catalog()).unwrap_or_else(|mistakes| panic!("{mistakes}")).catalog
}

fn chains(catalog: &Catalog) -> impl Iterator<Item = &Base> {
    catalog.bases.iter().filter(|base| matches!(base.kind, BaseKind::Necklace(_)))
}

fn piece(base: &str, drops: Vec<String>) -> Piece {
    Piece { base: base.into(), length: None, wearer: Wearer::From6To12, neck: None, drops, looks: vec![] }
}

/// Everything is in stock.
fn snapshot(catalog: &Arc<Catalog>) -> Snapshot {
    let mut available: BTreeMap<String, u32> = BTreeMap::new();
    available.extend(catalog.drops.iter().map(|kind| (kind.id.clone(), kind.stock)));
    available.extend(catalog.bases.iter().map(|base| (base.id.clone(), base.stock)));
    Snapshot { catalog: Arc::clone(catalog), available, revision: "demo".into(), waiting: WaitingNews::default() }
}

/// Few marks that a child can add up, with the tax in them. Common practice, no source.
#[test]
fn marks_are_few_and_whole_with_the_tax_in_them() {
    let catalog = demo();
    let points: BTreeSet<Decimal> = catalog.drops.iter().map(|kind| kind.price).collect();
    assert!((3..=6).contains(&points.len()), "{points:?}");
    let of_chains: BTreeSet<Decimal> = chains(&catalog).map(|base| base.price).collect();
    assert_eq!(of_chains.len(), 1, "one mark for all chains: {of_chains:?}");
    let of_bangles: BTreeSet<Decimal> = catalog.bases.iter().map(|base| base.price).collect();
    let of_bangles: Vec<_> = of_bangles.difference(&of_chains).collect();
    assert!(of_bangles.len() <= 2, "one for bangles, and another for a child's at most: {of_bangles:?}");
    for amount in points.iter().chain(&of_chains).chain(of_bangles.iter().copied()) {
        assert!(amount.fract().is_zero() && *amount > Decimal::ONE, "{amount}");
    }
    let table = &catalog.table;
    assert!(matches!(table.prices.tax, TaxRule::Included { .. }), "{:?}", table.prices.tax);
    let quote = catalog.quote(&piece("chain-brass", vec!["charm-moon".into()])).expect("a quote");
    let marks = catalog.base("chain-brass").unwrap().price + catalog.drop_kind("charm-moon").unwrap().price;
    assert_eq!(quote.total, marks, "a guest pays what the marks add up to");
    assert!(quote.tax > Decimal::ZERO && quote.tax < quote.total, "and the tax is known: {quote:?}");
}

/// The first budget that a guest is offered is a child's, and it buys a finished piece on whatever base is for so small a
/// purse; every larger one buys more or the same.
#[test]
fn five_buys_a_child_a_finished_piece() {
    let catalog = demo();
    let snapshot = snapshot(&catalog);
    let budgets: Vec<Decimal> = amounts::budgets(catalog.table.prices.currency).collect();
    assert_eq!(budgets.first(), Some(&Decimal::from(5)));
    let mut bought = Vec::new();
    for budget in budgets {
        let filters = Filters { budget: Some(budget), ..Filters::default() };
        let ages = [Wearer::From3To5, Wearer::From6To12];
        let for_children = ages.into_iter().flat_map(|age| catalog.bases.iter().map(move |base| (age, base)));
        let mut most = 0;
        for (age, base) in for_children.filter(|(age, base)| catalog.base_suits(base, *age)) {
            for seed in 0..20 {
                let bare = Piece { wearer: age, ..piece(&base.id, vec![]) };
                let drops = surprise(&snapshot, &bare, &filters, seed);
                let total = catalog.quote(&piece(&base.id, drops.clone())).expect("a quote").total;
                assert!(drops.is_empty() || total <= budget, "{} {drops:?}: {total} of {budget}", base.id);
                most = most.max(drops.len());
            }
        }
        bought.push(most);
    }
    println!("drops that a surprise hangs by budget: {bought:?}");
    assert!(bought[0] >= 1 && bought.is_sorted(), "{bought:?}");
    for most in amounts::dearest_drops(catalog.table.prices.currency) {
        assert!(catalog.drops.iter().any(|kind| kind.price <= most), "nothing for {most}");
    }
}

/// A child looks for her own letter, and for the month of her mother.
#[test]
fn there_is_every_letter_and_every_month() {
    let catalog = demo();
    let every_language_names = |id: &str, told: &dyn Fn(&str) -> bool| {
        let kind = catalog.drop_kind(id).unwrap_or_else(|| panic!("{id} is missing"));
        assert!(kind.stock > 0 && kind.price <= Decimal::from(5), "{id}");
        assert!(told(&kind.name), "{}", kind.name);
        for language in ["de", "es", "fr"] {
            let name = catalog.names.find(language, id).unwrap_or_else(|| panic!("{id} has no name in {language}"));
            assert!(told(name) && name != kind.name, "{id}: {name}");
        }
    };
    for letter in 'a'..='z' {
        every_language_names(&format!("initial-{letter}"), &|name| {
            name.split(' ').next_back() == Some(letter.to_ascii_uppercase().to_string().as_str())
        });
    }
    let months = [
        "january",
        "february",
        "march",
        "april",
        "may",
        "june",
        "july",
        "august",
        "september",
        "october",
        "november",
        "december",
    ];
    let mut names = BTreeSet::new();
    for month in months {
        every_language_names(&format!("birthstone-{month}"), &|name| name.contains(", "));
        let kind = catalog.drop_kind(&format!("birthstone-{month}")).unwrap();
        assert!(names.insert(kind.name.clone()), "two are called {}", kind.name);
        // They are glass and say so, whatever stone they are coloured after.
        assert!(kind.facts.materials.contains(&Material::CrystalGlass), "{month}");
        let tray = catalog.trays.iter().find(|tray| tray.name.to_lowercase().contains("glass"));
        assert!(tray.is_some(), "their tray says what they are");
    }
}

/// A party pays less for its piece than the marks, and not less than half of what the dearest piece would be.
#[test]
fn a_partys_piece_is_a_whole_sum_between_the_usual_and_the_dearest() {
    let catalog = demo();
    for package in &catalog.table.till.packages {
        let mut prices: Vec<Decimal> = catalog.drops.iter().map(|kind| kind.price).collect();
        prices.sort();
        let chain = chains(&catalog).next().expect("a chain").price;
        let drops = usize::try_from(package.drops).expect("a few");
        let of = |price: Decimal| chain + price * Decimal::from(package.drops);
        let (middle, dearest) = (of(prices[prices.len() / 2]), of(prices[prices.len() - drops]));
        println!("{}: {}, by the marks {middle} to {dearest}", package.name, package.price);
        assert!(package.price.fract().is_zero());
        assert!(package.price < dearest && package.price * Decimal::TWO >= dearest / Decimal::TWO);
        assert!(package.price <= middle + Decimal::from(package.drops), "a usual piece is hardly dearer by its marks");
    }
}

/// Weights are those of the links as they are drawn: a stadium of round wire a quarter as thick as the link is wide, one to a
/// pitch, times the metal's density. Source of the densities: PNNL-15870 Rev. 1, Compendium of Material Composition Data;
/// brass 8.07, copper 8.96, steel 7.82 and stainless steel 8.00 g/cm³. Within 5 %: hammering and plating change as much.
#[test]
fn bases_weigh_what_their_drawn_metal_weighs() {
    println!("| base | in its file | as drawn |");
    for base in &demo().bases {
        let density = base.facts.materials[0].density().expect("a known metal");
        assert!(!density.from_memory, "{}", base.id);
        let (told, drawn) = match &base.kind {
            BaseKind::Necklace(n) => (n.chain.g_per_m(), chain_g_per_m(n.link_length, n.link_width, density.g_cm3)),
            BaseKind::Bangle(b) => {
                // As in brass, less the hook, which does not grow with the metal.
                let wire = bangle_weight(b.inside, b.wire, b.hook_weight).g() - b.hook_weight.g();
                (b.weight.g(), wire * density.g_cm3 / 8.07 + b.hook_weight.g())
            }
        };
        println!("| {} | {told} | {drawn:.2} |", base.id);
        assert!((told / drawn - 1.0).abs() < 0.05, "{}: {told} in its file, {drawn:.2} as drawn", base.id);
    }
}
