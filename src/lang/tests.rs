//! The languages say the same, each as its locale writes it.

use std::collections::{BTreeMap, BTreeSet};

use fluent_bundle::FluentResource;

use super::{Lang, Texts, keys, language::NBSP, texts::stretch};
use crate::{
    catalog::{Catalog, read_folder},
    caution::{self, Caution, CautionCode, Dated, Limit, PieceFacts, Region, Rules, Sizes},
    craft::{Allergen, Day, UsualAllergen, Wearer},
    money::Currency,
};

fn dollars(text: &str, lang: Lang) -> String {
    lang.money(text.parse().unwrap(), Currency::from_code("USD").unwrap())
}

/// Source: CLDR currency and number patterns of en, es, fr and de.
#[test]
fn money_as_each_locale_writes_it() {
    assert_eq!(dollars("1234.5", Lang::En), "$1,234.50");
    assert_eq!(dollars("1234.5", Lang::Es), "1234,50\u{a0}$");
    assert_eq!(dollars("12345.5", Lang::Es), "12.345,50\u{a0}$");
    assert_eq!(dollars("1234.5", Lang::Fr), "1\u{a0}234,50\u{a0}$");
    assert_eq!(dollars("-1234.5", Lang::De), "−1.234,50\u{a0}$");
    assert_eq!(Lang::De.money("850".parse().unwrap(), Currency::from_code("JPY").unwrap()), "850\u{a0}¥");
}

fn placeables(lang: Lang) -> BTreeMap<String, BTreeSet<String>> {
    let mut map = BTreeMap::new();
    let mut key = String::new();
    for line in lang.sources().iter().flat_map(|source| source.lines()) {
        if let Some((name, _)) = line.split_once(" =").filter(|(k, _)| !k.starts_with([' ', '#'])) {
            key = name.to_owned();
        }
        let places = line.split('$').skip(1).filter_map(|rest| rest.split([' ', '}']).next());
        map.entry(key.clone()).or_insert_with(BTreeSet::new).extend(places.map(str::to_owned));
    }
    map
}

#[test]
fn all_languages_have_the_same_keys_and_places() {
    let english = placeables(Lang::En);
    assert!(keys(Lang::En).len() > 100);
    for lang in Lang::ALL {
        for source in lang.sources() {
            if let Err((_, faults)) = FluentResource::try_new((*source).to_owned()) {
                panic!("{lang:?}: {faults:?}");
            }
        }
        let unique: BTreeSet<String> = keys(lang).into_iter().collect();
        assert_eq!(unique.len(), keys(lang).len(), "{lang:?} has a key twice");
        assert_eq!(unique, keys(Lang::En).into_iter().collect(), "{lang:?}");
        // Told one by one: all of them together fill a screen.
        for (key, places) in placeables(lang) {
            assert_eq!(Some(&places), english.get(&key), "{key} in {lang:?}");
        }
    }
}

#[test]
fn stretched_texts_are_two_fifths_longer() {
    for lang in Lang::ALL {
        let (plain, long) = (Texts::new(lang), Texts::stretched(lang));
        let length = |texts: &Texts| keys(lang).iter().map(|key| texts.get(key).chars().count()).sum::<usize>();
        let ratio = length(&long) as f64 / length(&plain) as f64;
        assert!((1.3..1.45).contains(&ratio), "{lang:?}: {ratio}");
        assert_eq!(stretch("Sent to the desk").chars().count(), 22, "16 and two fifths");
    }
}

#[test]
fn plurals_follow_the_language() {
    let say = |lang, n: i64| Texts::new(lang).with("caution-count", &[("n", n.into())]);
    for lang in Lang::ALL {
        assert_ne!(say(lang, 1), say(lang, 2).replace('2', "1"), "{lang:?}");
    }
}

/// Every caution in every form: the rows of the assessor's pages, and a region with limits of its own.
fn all_cautions() -> Vec<(Caution, Catalog)> {
    let demo = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog");
    let catalog = read_folder(&demo).unwrap_or_else(|mistakes| panic!("{mistakes}")).catalog;
    let mut own = Rules::of_region(Region::US).unwrap().clone();
    own.rules.iter_mut().filter(|rule| rule.code == CautionCode::Nickel).for_each(|rule| {
        rule.limit = Limit::AtMost(1.0);
    });
    own.rules.iter_mut().filter(|rule| rule.code == CautionCode::Lead).for_each(|rule| {
        rule.others[0].limit = Limit::None;
    });
    let [a, b, c, d] = Wearer::ANSWERS;
    let mut all = Vec::new();
    for rules in Rules::built_in().iter().chain([&own]) {
        let sizes = Sizes::empty(rules.gauge);
        for case in caution::cases(rules) {
            let drops: Vec<_> = case.drops.iter().collect();
            for wearer in [a, b, c, d, Wearer::Unknown] {
                let (base, length_mm, neck_mm) = (&case.base, case.length_mm, case.neck_mm);
                let facts = PieceFacts { base, length_mm, neck_mm, drops: &drops, sizes: &sizes, wearer, rules };
                for one in caution::cautions(&facts).cautions.into_iter().filter(|one| one.code == case.code) {
                    let (drops, bases) = (case.drops.clone(), vec![case.base.clone()]);
                    let own = Catalog { drops, bases, trays: vec![], ..catalog.as_ref().clone() };
                    all.push((one, own));
                }
            }
        }
    }
    all.dedup_by(|a, b| a.0 == b.0);
    all
}

/// The desk and the terminal say in English what the tablet says in English, and what it says everywhere is whole.
#[test]
fn the_tablet_and_the_desk_say_the_same() {
    let all = all_cautions();
    let plain = |text: &str| text.replace(NBSP, " ");
    let every = Lang::ALL.map(Texts::new);
    let mut seen = BTreeSet::new();
    for (one, catalog) in &all {
        let form = if one.form.is_empty() { String::new() } else { format!("-{}", one.form) };
        seen.insert(format!("caution-{}{form}", one.code.code()));
        let kind = one.drop.is_some().then(|| &catalog.drops[0]);
        for texts in &every {
            let lang = texts.lang;
            let (said, cited) = (texts.caution(one, catalog), texts.cited(one));
            if lang == Lang::En {
                assert_eq!(plain(&said), one.text, "{one:?}");
                let title = if one.title.is_empty() { String::new() } else { format!(" ({})", one.title) };
                assert_eq!(cited, one.cited().replacen(&title, "", 1), "{one:?}");
            } else if kind.is_some() || one.form != "known" {
                assert_ne!(said, one.text, "{lang:?} is not translated");
                assert_ne!(cited, every[0].cited(one), "{lang:?}: {cited}");
            }
            for number in [one.number, one.limit].into_iter().flatten() {
                assert!(said.contains(&lang.number(number)), "{lang:?}: {said}");
            }
            assert!(!said.contains(['{', '$']), "{lang:?}: {said}");
            assert!(cited.contains(&one.rule) && !cited.contains(['{', '$']), "{lang:?}: {cited}");
            for allergen in kind.iter().flat_map(|kind| &kind.facts.allergens).filter(|_| one.form == "known") {
                assert!(said.contains(&texts.allergen(allergen)), "{lang:?}: {said}");
            }
        }
    }
    let about = ["count", "none", "deferral", "title"].map(|key| format!("caution-{key}"));
    let texts = keys(Lang::En).into_iter().filter(|key| key.starts_with("caution-") && !about.contains(key));
    assert_eq!(seen, texts.collect(), "every text is said of something, and nothing is said without a text");
}

/// What is said to the seller: in English what the rules and the code say, elsewhere in other words, with nothing left out.
#[test]
fn the_seller_is_told_the_same_in_every_language() {
    let all = all_cautions();
    let every = Lang::ALL.map(Texts::new);
    let mut seen = BTreeSet::new();
    for (one, catalog) in &all {
        let facts = if one.drop.is_some() { &catalog.drops[0].facts } else { &catalog.bases[0].facts };
        let told = every.each_ref().map(|texts| texts.told_seller(one, Some(facts)));
        assert_eq!(told[0].as_ref(), Some(&one.seller), "{one:?}");
        for words in &told[1..] {
            let words = words.as_ref().unwrap_or_else(|| panic!("not translated: {one:?}"));
            assert!(*words != one.seller && !words.contains(['{', '$']), "{words}");
            assert!(!words.contains("seller-") && !words.contains("exempt-"), "{words}");
        }
        // A maker's own words stay the maker's.
        let own = Caution { seller: "Ask Ada.".into(), form: String::new(), ..one.clone() };
        assert_eq!(every[3].for_seller(&own, Some(facts)), "Ask Ada.");
        seen.insert(one.seller.clone());
    }
    assert!(seen.len() > 30, "{seen:#?}");
    for rules in Rules::built_in() {
        let english = &every[0];
        let keys = keys(Lang::En);
        let said: BTreeSet<String> =
            keys.iter().filter(|key| key.starts_with("seller-")).map(|key| english.get(key)).collect();
        for rule in &rules.rules {
            let within = rule.within.iter().map(|within| &within.seller);
            for words in within.chain([&rule.seller]) {
                assert!(said.contains(words), "no text says: {words}");
            }
        }
    }
}

/// Dates as each language writes them. Source: CLDR, long dates.
#[test]
fn dates_and_allergens_are_translated() {
    let day = |iso| Day::from_iso(iso).unwrap();
    let written = |iso| Lang::ALL.map(|lang| Texts::new(lang).day(day(iso)));
    assert_eq!(
        written("2023-10-23"),
        ["23 October 2023", "23 de octubre de 2023", "23 octobre 2023", "23. Oktober 2023"]
    );
    assert_eq!(written("2024-01-01")[2], "1er janvier 2024");
    assert_eq!(written("2026-06"), ["June 2026", "junio de 2026", "juin 2026", "Juni 2026"]);
    assert_eq!(written("2005"), ["2005"; 4]);
    for lang in Lang::ALL {
        let texts = Texts::new(lang);
        for usual in UsualAllergen::ALL {
            let word = texts.allergen(&Allergen::Usual(*usual));
            assert!(!word.starts_with("allergen-"), "{lang:?} {word}");
            assert!(lang != Lang::En || word == usual.word(), "{word}");
        }
        assert_eq!(texts.allergen(&Allergen::Own("carmine".into())), "carmine");
        let day = day("2022-10-21");
        for dated in [
            Dated::NotNoted,
            Dated::AsOf(day),
            Dated::Of(day),
            Dated::InForce(day),
            Dated::Applies(day),
            Dated::MadeAfter(day),
            Dated::Edition("2023".into()),
        ] {
            let said = texts.dated(&dated);
            assert_eq!(said == dated.english(), lang == Lang::En, "{lang:?} {said}");
            let year = if dated == Dated::NotNoted { "" } else { "202" };
            assert!(said.contains(year) && !said.starts_with("dated-") && !said.contains('$'), "{lang:?} {said}");
        }
    }
}

/// Source: RFC 9110, section 12.5.4, its example among them.
#[test]
fn a_browsers_languages_are_gone_through_in_their_order() {
    for (accepted, lang) in [
        ("da, en-gb;q=0.8, en;q=0.7", Some(Lang::En)),
        ("de-AT,de;q=0.9,en;q=0.8", Some(Lang::De)),
        ("pt-BR,es;q=0.5", Some(Lang::Es)),
        ("*", None),
        ("", None),
        (",é,", None),
    ] {
        assert_eq!(Lang::asked_for(accepted), lang, "{accepted}");
    }
}
