//! The rules behind the cautions, as data: one file for each region.

use std::sync::LazyLock;

use serde::{Deserialize, Serialize};

use super::{CautionCode, Gauge, Region, dated::Dated, read_rules};
use crate::{
    craft::{LeadExemption, Material, Plating, Wearer},
    ron_tree::Mistake,
};

/// One region's rules, as they stand in its file.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rules {
    /// The region whose rules they are.
    pub region: Region,
    /// The region's name for people.
    pub name: String,
    /// The drawing of the test cylinder.
    pub gauge: Gauge,
    /// One for every caution.
    pub rules: Vec<Rule>,
}

/// What a region says on one caution.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rule {
    /// The caution that it is about.
    pub code: CautionCode,
    /// The wearers who hear of it; who is not known counts as each of them, here and below. What a test found, and a
    /// magnet beyond its limit, is said to everyone.
    pub says: Vec<Wearer>,
    /// The wearers for whom it makes the piece unsuitable; with a [`Limit`] on a magnet or substance, beyond it only.
    pub against: Vec<Wearer>,
    /// Substances: the wearers for whom `materials`, `platings` or paint make the piece unsuitable without a test.
    #[serde(default)]
    pub untested: Vec<Wearer>,
    /// Materials that call for it; for substances those in which they are usual.
    #[serde(default)]
    pub materials: Vec<Material>,
    /// Platings in which the substance is usual.
    #[serde(default)]
    pub platings: Vec<Plating>,
    /// Lead: what the rule exempts.
    #[serde(default)]
    pub exempts: Vec<LeadExemption>,
    /// Whether what is beyond the limit may not be sold to anybody.
    #[serde(default)]
    pub forbids: bool,
    /// The rule's citation, the same in every language; empty for common practice.
    #[serde(default)]
    pub rule: String,
    /// What the rule is about, in English; empty for common practice.
    #[serde(default)]
    pub title: String,
    /// Its date or edition.
    #[serde(default)]
    pub dated: Dated,
    /// How far its words and figures are known.
    pub status: Status,
    /// The figure that the program compares with.
    #[serde(default)]
    pub limit: Limit,
    /// The figure in words, with its unit.
    pub figure: String,
    /// Plain words for the seller: what to say or to offer.
    pub seller: String,
    /// Magnets: what is said below the limit; necklaces: what is said of one that comes apart.
    #[serde(default)]
    pub within: Option<Within>,
    /// Substances: limits of their own for other wearers than the children of whom the rule speaks.
    #[serde(default)]
    pub others: Vec<OtherLimit>,
}

/// What is said of a magnet below the limit, or of a necklace that comes apart: common practice, no source.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Within {
    /// Necklaces: the wearers who still hear of it.
    #[serde(default)]
    pub says: Vec<Wearer>,
    /// The wearers for whom even that makes the piece unsuitable.
    pub against: Vec<Wearer>,
    /// Magnets: the wearers for whom two or more of them on one piece do so.
    #[serde(default)]
    pub together: Vec<Wearer>,
    /// Plain words for the seller.
    pub seller: String,
}

/// The limit of a substance for some wearers, with a citation of its own.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OtherLimit {
    /// The wearers for whom this limit stands in place of the rule's own.
    pub wearers: Vec<Wearer>,
    /// The rule's citation.
    pub rule: String,
    /// What the rule is about, in English.
    pub title: String,
    /// Its date or edition.
    #[serde(default)]
    pub dated: Dated,
    /// How far its words and figures are known.
    pub status: Status,
    /// Their limit; none where none is known.
    #[serde(default)]
    pub limit: Limit,
    /// The figure in words, with its unit.
    pub figure: String,
}

/// A citation, wherever it stands.
#[derive(Debug, Clone, Copy)]
pub(super) struct Source<'r> {
    pub rule: &'r str,
    pub title: &'r str,
    pub dated: &'r Dated,
    pub status: Status,
}

impl<'r> Source<'r> {
    /// The rule's own citation.
    pub(super) fn of(rule: &'r Rule) -> Self {
        Self { rule: &rule.rule, title: &rule.title, dated: &rule.dated, status: rule.status }
    }
}

impl Rule {
    /// The limit of a substance for `wearer`, with its citation: the children's where none of their own is given, and for
    /// who is not known.
    pub(super) fn limit_for(&self, wearer: Wearer) -> (Source<'_>, &Limit) {
        match self.others.iter().find(|other| other.wearers.contains(&wearer)) {
            Some(OtherLimit { rule, title, dated, status, limit, .. }) => {
                (Source { rule, title, dated, status: *status }, limit)
            }
            None => (Source::of(self), &self.limit),
        }
    }
}

/// How far a rule's words and figures are known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Status {
    /// Read in the rule itself.
    Read,
    /// Read in a report of the rule.
    SecondHand,
    /// Written down from memory.
    FromMemory,
    /// Common practice, no source.
    Practice,
}

impl Status {
    /// The name in language files.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Read => "read",
            Self::SecondHand => "second_hand",
            Self::FromMemory => "from_memory",
            Self::Practice => "practice",
        }
    }

    /// How far it is known, in English.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Read => "read",
            Self::SecondHand => "second-hand",
            Self::FromMemory => "from memory",
            Self::Practice => "common practice, no source",
        }
    }
}

/// A figure to compare with; the unit follows from the caution.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub enum Limit {
    /// None: it is there or not.
    #[default]
    None,
    /// What is round is a small ball below this diameter, in millimetres.
    BallBelowMm(f64),
    /// A magnet's flux index has to be below this, in kG²mm².
    FluxBelow(f64),
    /// A necklace is a long loop from this length on, in millimetres.
    LoopFromMm(f64),
    /// What hangs on the neck is heavy above this, in grams, by wearer.
    HeavierThanG(Vec<(Wearer, f64)>),
    /// What a test found has to be below this: lead, cadmium and paint in ppm, nickel in µg/cm² a week.
    Below(f64),
    /// What a test found may be this at most, in the same units.
    AtMost(f64),
}

impl Limit {
    /// The limit of a test, in its unit.
    pub(super) const fn figure(&self) -> Option<f64> {
        match *self {
            Self::Below(limit) | Self::AtMost(limit) => Some(limit),
            _ => None,
        }
    }

    /// Whether `found` breaks a limit of a test; what is no number does.
    pub fn is_broken_by(&self, found: f64) -> bool {
        match *self {
            Self::Below(limit) | Self::FluxBelow(limit) => found.is_nan() || found >= limit,
            Self::AtMost(limit) => found.is_nan() || found > limit,
            Self::None | Self::BallBelowMm(_) | Self::LoopFromMm(_) | Self::HeavierThanG(_) => false,
        }
    }

    /// What is right for `code`, as examples, where this is not it; none where no limit is.
    pub(super) fn unlike(&self, code: CautionCode) -> Option<&'static [&'static str]> {
        use CautionCode::{Cadmium, CordLoop, HeavyOnChild, Lead, Magnet, Nickel, Paint, SmallBall};
        let sound = |x: f64| x.is_finite() && x > 0.0;
        let (good, examples): (bool, &[&str]) = match code {
            SmallBall => (matches!(*self, Self::BallBelowMm(x) if sound(x)), &["limit: BallBelowMm(44.45)"]),
            Magnet => (matches!(*self, Self::FluxBelow(x) if sound(x)), &["limit: FluxBelow(50.0)"]),
            CordLoop => (matches!(*self, Self::LoopFromMm(x) if sound(x)), &["limit: LoopFromMm(380.0)"]),
            HeavyOnChild => (
                matches!(self, Self::HeavierThanG(all) if all.iter().all(|(_, g)| sound(*g))),
                &["limit: HeavierThanG([(Under3, 30.0)])"],
            ),
            Lead | Cadmium | Nickel | Paint => (
                matches!(*self, Self::Below(x) | Self::AtMost(x) if sound(x)),
                &["limit: Below(100.0)", "limit: AtMost(100.0)"],
            ),
            _ => (*self == Self::None, &[]),
        };
        (!good).then_some(examples)
    }
}

/// Whether what names `wearers` is about `wearer`. Who is not known may be each of them.
pub(super) fn is_about(wearers: &[Wearer], wearer: Wearer) -> bool {
    wearers.contains(&wearer) || wearer == Wearer::Unknown && !wearers.is_empty()
}

impl Rules {
    /// Reads a region's file; `file` is its name in the mistakes and `source` its text.
    ///
    /// # Errors
    /// Everything that does not read, and everything that a readable rule gets wrong: a caution without a rule or with two,
    /// a limit of the wrong kind, empty words, a wearer or material named to no effect. In the order of the places.
    pub fn from_ron(file: &str, source: &str) -> Result<Self, Vec<Mistake>> {
        read_rules::read(file, source)
    }

    /// What the region says on `code`.
    pub fn of(&self, code: CautionCode) -> Option<&Rule> {
        self.rules.iter().find(|rule| rule.code == code)
    }

    /// The rules that come with the program.
    pub fn built_in() -> &'static [Self] {
        static ALL: LazyLock<Vec<Rules>> = LazyLock::new(|| {
            SOURCES.iter().filter_map(|source| Rules::from_ron("the program's own rules", source).ok()).collect()
        });
        &ALL
    }

    /// The rules of `region` that come with the program.
    pub fn of_region(region: Region) -> Option<&'static Self> {
        Self::built_in().iter().find(|rules| rules.region == region)
    }
}

/// The files that come with the program; a test holds them to be whole.
pub(super) const SOURCES: [&str; 3] = [
    include_str!("../../assets/rules/us.ron"),
    include_str!("../../assets/rules/eu.ron"),
    include_str!("../../assets/rules/uk.ron"),
];

impl Rule {
    /// The rule with its date, and how far it is known where it was not read.
    pub fn cited(&self) -> String {
        Source::of(self).cited()
    }
}

impl OtherLimit {
    /// The rule with its date, and how far it is known where it was not read.
    pub fn cited(&self) -> String {
        Source { rule: &self.rule, title: &self.title, dated: &self.dated, status: self.status }.cited()
    }
}

impl Source<'_> {
    /// In English with its date, and how far it is known where it was not read.
    pub(super) fn cited(&self) -> String {
        let Self { rule, title, dated, status } = *self;
        let title = if title.is_empty() { String::new() } else { format!(" ({title})") };
        let dated = dated.english();
        match status {
            Status::Practice => status.word().to_owned(),
            Status::Read => format!("{rule}{title}, {dated}"),
            status => format!("{rule}{title}, {dated} ({})", status.word()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_files_that_come_with_the_program_are_whole() {
        for source in SOURCES {
            Rules::from_ron("a region", source).unwrap_or_else(|mistakes| panic!("{mistakes:?}"));
        }
        let regions: Vec<Region> = Rules::built_in().iter().map(|rules| rules.region).collect();
        assert_eq!(regions, [Region::US, Region::EU, Region::UK]);
        println!("| region | caution | rule | figure | status |");
        for rules in Rules::built_in() {
            for rule in &rules.rules {
                let (region, code, status) = (rules.region, rule.code.code(), rule.status.word());
                println!("| {region} | {code} | {} | {} | {status} |", rule.cited(), rule.figure);
            }
        }
    }

    #[test]
    fn each_region_has_its_own_small_parts_rule() {
        let part = |region| Rules::of_region(region).and_then(|rules| rules.of(CautionCode::SmallPart)).unwrap();
        assert_eq!(part(Region::US).cited(), "16 CFR 1501.4 (US small-parts rule), as of June 2026");
        assert!(part(Region::EU).cited().starts_with("EN 71-1, 8.2 (small parts cylinder)"));
        assert!(part(Region::UK).cited().ends_with("(from memory)"));
        let gauge = |region| Rules::of_region(region).unwrap().gauge;
        assert_eq!((gauge(Region::US), gauge(Region::UK)), (Gauge::Inch, Gauge::Metric));
    }

    /// Lead: CPSIA section 101, 100 ppm = 0.01 % in children's articles; REACH entry 63, below 0.05 %. Cadmium: REACH
    /// entry 23, 0.0099 % passes and 0.0100 % does not. Nickel: entry 27, 0.5 µg/cm² a week passes. Magnets: 16 CFR 1262.2(a), hazardous from 50 kG²mm².
    #[test]
    fn limits_at_their_edges() {
        let broken = |region, code, found| {
            Rules::of_region(region).and_then(|rules| rules.of(code)).unwrap().limit.is_broken_by(found)
        };
        println!("| region | caution | found | within the limit |");
        for (region, code, found, wanted) in [
            (Region::US, CautionCode::Lead, 100.0, false),
            (Region::US, CautionCode::Lead, 100.1, true),
            (Region::EU, CautionCode::Lead, 499.9, false),
            (Region::EU, CautionCode::Lead, 500.0, true),
            (Region::US, CautionCode::Cadmium, 300.0, false),
            (Region::US, CautionCode::Cadmium, 300.1, true),
            (Region::EU, CautionCode::Cadmium, 99.0, false),
            (Region::EU, CautionCode::Cadmium, 100.0, true),
            (Region::UK, CautionCode::Cadmium, 100.0, true),
            (Region::EU, CautionCode::Nickel, 0.50, false),
            (Region::EU, CautionCode::Nickel, 0.51, true),
            (Region::US, CautionCode::Magnet, 49.999, false),
            (Region::US, CautionCode::Magnet, 50.0, true),
            (Region::EU, CautionCode::Magnet, f64::NAN, true),
        ] {
            assert_eq!(broken(region, code, found), wanted, "{region} {} {found}", code.code());
            println!("| {region} | {} | {found} | {} |", code.code(), !wanted);
        }
    }
}
