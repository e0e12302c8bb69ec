//! Cautions, the rules they rest on, and dates, in a guest's language.

use rust_decimal::Decimal;

use super::Texts;
use crate::{
    catalog::Catalog,
    caution::{Caution, Dated, OtherLimit, Rule, Rules, Status},
    craft::{Allergen, Day},
};

impl Texts {
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
    pub(super) fn allergen(&self, allergen: &Allergen) -> String {
        match allergen {
            Allergen::Usual(usual) => self.get(&format!("allergen-{}", usual.name())),
            Allergen::Own(words) => words.clone(),
        }
    }

    /// Whose rules they are: the name in the rules themselves where there is no translation.
    pub fn region(&self, rules: &Rules) -> String {
        self.find(&format!("region-{}", rules.region), &[]).unwrap_or_else(|| rules.name.clone())
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

    pub(super) fn dated(&self, dated: &Dated) -> String {
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
