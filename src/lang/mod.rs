//! The four languages: texts from Fluent files, numbers and money as each locale writes them.

use fluent_bundle::{FluentArgs, FluentResource, FluentValue, concurrent::FluentBundle};
use rust_decimal::Decimal;

use crate::{
    catalog::Catalog,
    caution::{Caution, Dated, OtherLimit, Rule, Status},
    craft::{Allergen, Day},
    money::Currency,
};

/// A language of tablet and printed card.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Lang {
    /// English.
    #[default]
    En,
    /// Spanish.
    Es,
    /// French.
    Fr,
    /// German.
    De,
}

impl Lang {
    /// All of them, in the order of the chooser.
    pub const ALL: [Self; 4] = [Self::En, Self::Es, Self::Fr, Self::De];

    /// The code, as in settings and file names.
    pub const fn code(self) -> &'static str {
        match self {
            Self::En => "en",
            Self::Es => "es",
            Self::Fr => "fr",
            Self::De => "de",
        }
    }

    /// The one called `code`.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|lang| lang.code() == code)
    }

    /// Its name in itself.
    pub const fn own_name(self) -> &'static str {
        match self {
            Self::En => "English",
            Self::Es => "Español",
            Self::Fr => "Français",
            Self::De => "Deutsch",
        }
    }

    /// Its Fluent file.
    pub const fn source(self) -> &'static str {
        match self {
            Self::En => include_str!("../../assets/lang/en.ftl"),
            Self::Es => include_str!("../../assets/lang/es.ftl"),
            Self::Fr => include_str!("../../assets/lang/fr.ftl"),
            Self::De => include_str!("../../assets/lang/de.ftl"),
        }
    }

    /// Decimal mark and thousands mark. Source: CLDR; the French group is its no-break space, wide because the
    /// narrow one is missing from many fonts.
    const fn marks(self) -> (&'static str, &'static str) {
        match self {
            Self::En => (".", ","),
            Self::Fr => (",", NBSP),
            Self::Es | Self::De => (",", "."),
        }
    }

    /// A number with exactly the decimals it carries.
    pub fn number(self, value: Decimal) -> String {
        let plain = value.abs().to_string();
        let (whole, fraction) = plain.split_once('.').unwrap_or((&plain, ""));
        let (decimal, thousand) = self.marks();
        // Spanish groups from five digits on (CLDR, minimum grouping digits 2).
        let least = if self == Self::Es { 5 } else { 4 };
        let mut text = String::new();
        if value.is_sign_negative() && !value.is_zero() {
            text.push('−');
        }
        for (i, digit) in whole.chars().enumerate() {
            if i > 0 && whole.len() >= least && (whole.len() - i) % 3 == 0 {
                text.push_str(thousand);
            }
            text.push(digit);
        }
        if !fraction.is_empty() {
            text.push_str(decimal);
            text.push_str(fraction);
        }
        text
    }

    /// An amount with all minor digits and its sign where the locale puts it.
    pub fn money(self, amount: Decimal, currency: Currency) -> String {
        let mut exact = amount;
        exact.rescale(currency.digits);
        let number = self.number(exact);
        match self {
            Self::En => {
                let (minus, digits) = number.strip_prefix('−').map_or(("", number.as_str()), |rest| ("−", rest));
                let gap = if currency.symbol.len() > 1 && currency.symbol.is_ascii() { NBSP } else { "" };
                format!("{minus}{}{gap}{digits}", currency.symbol)
            }
            _ => format!("{number}{NBSP}{}", currency.symbol),
        }
    }
}

/// No-break space.
const NBSP: &str = "\u{a0}";

/// A value for a place in a text.
pub type Arg<'a> = (&'static str, FluentValue<'a>);

/// The texts of one language.
pub struct Texts {
    /// Which.
    pub lang: Lang,
    bundle: FluentBundle<FluentResource>,
}

impl Texts {
    /// The texts of `lang`. What a file has wrong is left out; a test holds all files to the same keys.
    pub fn new(lang: Lang) -> Self {
        let locale = lang.code().parse().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![locale]);
        bundle.set_use_isolating(false);
        let resource = FluentResource::try_new(lang.source().to_owned()).unwrap_or_else(|(good, _)| good);
        bundle.add_resource_overriding(resource);
        Self { lang, bundle }
    }

    /// The texts of `lang` with accents and two fifths longer, as other languages may be: for trying whether they fit.
    pub fn stretched(lang: Lang) -> Self {
        let mut texts = Self::new(lang);
        texts.bundle.set_transform(Some(|text| stretch(text).into()));
        texts
    }

    /// The text called `key`.
    pub fn get(&self, key: &str) -> String {
        self.with(key, &[])
    }

    /// The text called `key` with values in its places; the key itself if there is none.
    pub fn with(&self, key: &str, args: &[Arg<'_>]) -> String {
        self.find(key, args).unwrap_or_else(|| key.to_owned())
    }

    fn find(&self, key: &str, args: &[Arg<'_>]) -> Option<String> {
        let pattern = self.bundle.get_message(key)?.value()?;
        let mut values = FluentArgs::new();
        for (name, value) in args {
            values.set(*name, value.clone());
        }
        Some(self.bundle.format_pattern(pattern, Some(&values), &mut vec![]).into_owned())
    }

    /// A caution in this language, without the name of the part it is about: its English words where there is no
    /// translation.
    pub fn caution(&self, caution: &Caution, catalog: &Catalog) -> String {
        let (code, form) = (caution.code.code(), &caution.form);
        let key = if form.is_empty() { format!("caution-{code}") } else { format!("caution-{code}-{form}") };
        let kind = caution.drop.as_deref().and_then(|id| catalog.drop_kind(id));
        // A base with food in it has no id here: what it contains stands in the English words alone.
        if caution.drop.is_none() && form == "known" {
            return caution.text.clone();
        }
        let allergens: Vec<String> =
            kind.iter().flat_map(|kind| &kind.facts.allergens).map(|allergen| self.allergen(allergen)).collect();
        let figure = |figure: Option<Decimal>| figure.map(|one| self.lang.number(one)).unwrap_or_default();
        let places = [
            ("allergens", allergens.join(", ").into()),
            ("number", figure(caution.number).into()),
            ("limit", figure(caution.limit).into()),
        ];
        self.find(&key, &places).unwrap_or_else(|| caution.text.clone())
    }

    /// A usual allergen in this language, another one as the maker wrote it.
    fn allergen(&self, allergen: &Allergen) -> String {
        match allergen {
            Allergen::Usual(usual) => self.get(&format!("allergen-{}", usual.name())),
            Allergen::Own(words) => words.clone(),
        }
    }

    /// The rule a caution rests on: its citation, its date and how far it is known in this language.
    pub fn cited(&self, caution: &Caution) -> String {
        let Some(status) = caution.status else { return caution.rule.clone() };
        self.cited_as(&caution.rule, &caution.dated, status)
    }

    /// A region's rule as [`Self::cited`] has that of a caution.
    pub fn cited_rule(&self, rule: &Rule) -> String {
        self.cited_as(&rule.rule, &rule.dated, rule.status)
    }

    /// The limit for other wearers as [`Self::cited`] has the rule of a caution.
    pub fn cited_other(&self, other: &OtherLimit) -> String {
        self.cited_as(&other.rule, &other.dated, other.status)
    }

    fn cited_as(&self, rule: &str, dated: &Dated, status: Status) -> String {
        let known = self.get(&format!("status-{}", status.code()));
        let dated = self.dated(dated);
        match status {
            Status::Practice => known,
            Status::Read => format!("{rule}, {dated}"),
            Status::SecondHand | Status::FromMemory => format!("{rule}, {dated} ({known})"),
        }
    }

    fn dated(&self, dated: &Dated) -> String {
        let day = dated.day().map(|day| self.day(day)).unwrap_or_default();
        let edition = if let Dated::Edition(edition) = dated { edition.clone() } else { String::new() };
        self.with(&format!("dated-{}", dated.code()), &[("day", day.into()), ("edition", edition.into())])
    }

    /// A year, a month of a year or a day, as the language writes it.
    pub fn day(&self, day: Day) -> String {
        let year = day.year.to_string();
        let Some(month) = day.month else { return year };
        let month = self.get(&format!("month-{month}"));
        match day.day {
            None => self.with("date-month", &[("month", month.into()), ("year", year.into())]),
            Some(day) => {
                let places = [("n", i64::from(day).into()), ("month", month.into()), ("year", year.into())];
                self.with("date-day", &places)
            }
        }
    }
}

/// Vowels with accents, and so many of them twice that the whole is two fifths longer.
fn stretch(text: &str) -> String {
    let mut owed = 0.0_f32;
    let mut long = String::new();
    for c in text.chars() {
        owed += 0.4;
        let accented = match c {
            'a' => 'á',
            'e' => 'ê',
            'i' => 'ï',
            'o' => 'ö',
            'u' => 'ü',
            'A' => 'Å',
            'E' => 'É',
            'O' => 'Ø',
            other => other,
        };
        long.push(accented);
        while accented != c && owed >= 1.0 {
            long.push(accented.to_lowercase().next().unwrap_or(accented));
            owed -= 1.0;
        }
    }
    // What the last word's vowels did not take up.
    if text.ends_with(char::is_alphabetic) {
        long.extend(std::iter::repeat_n('ë', owed.round() as usize));
    }
    long
}

/// The keys of a language's file, in its order.
pub fn keys(lang: Lang) -> Vec<String> {
    lang.source()
        .lines()
        .filter(|line| line.starts_with(|c: char| c.is_ascii_lowercase()))
        .filter_map(|line| line.split_once(" =").map(|(key, _)| key.to_owned()))
        .collect()
}

#[cfg(test)]
mod tests {
    use std::collections::{BTreeMap, BTreeSet};

    use super::*;
    use crate::{
        catalog::read_folder,
        caution::{self, CautionCode, Limit, PieceFacts, Region, Rules, Sizes},
        craft::{UsualAllergen, Wearer},
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
        for line in lang.source().lines() {
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
            assert!(FluentResource::try_new(lang.source().to_owned()).is_ok(), "{lang:?}");
            let unique: BTreeSet<String> = keys(lang).into_iter().collect();
            assert_eq!(unique.len(), keys(lang).len(), "{lang:?} has a key twice");
            assert_eq!(unique, keys(Lang::En).into_iter().collect(), "{lang:?}");
            assert_eq!(placeables(lang), english, "{lang:?}");
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
}
