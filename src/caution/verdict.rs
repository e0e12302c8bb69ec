//! What to say of a piece and its wearer.

use serde::{Deserialize, Serialize};

use super::{
    CautionCode, Dated, Rule, Rules, Sizes, Status,
    find::{Finder, Finding, Form, Worn},
    rules::cited,
    say,
};
use crate::craft::{Base, DropKind, Wearer};

/// Said with every list of cautions.
pub const DEFERRAL: &str = "A guide, not a test report; local rules and a qualified safety assessment decide.";

/// One caution.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Caution {
    /// What it is about.
    pub code: CautionCode,
    /// Id of the drop, or none for the whole piece.
    pub drop: Option<String>,
    /// The citation of the rule it rests on, the same in every language; empty for common practice. On tickets kept from
    /// before `status`: all of it in English, with its date.
    pub rule: String,
    /// What the rule is about, in English.
    #[serde(default)]
    pub title: String,
    /// The rule's date or edition.
    #[serde(default)]
    pub dated: Dated,
    /// How far the rule is known; none on tickets kept from before it was noted.
    #[serde(default)]
    pub status: Option<Status>,
    /// Which of several ways to say it, as a language file's key `caution-CODE-FORM` has it; empty for the usual one.
    #[serde(default)]
    pub form: String,
    /// The figure in its words: whole grams of something heavy, whole millimetres of something short.
    #[serde(default)]
    pub number: Option<u32>,
    /// Plain words for a guest, in English.
    pub text: String,
    /// Plain words for the seller: what to say or to offer.
    #[serde(default)]
    pub seller: String,
    /// Whether it makes the piece unsuitable for the wearer.
    pub grave: bool,
}

/// All cautions of a piece for one wearer.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Verdict {
    /// Whether nothing speaks plainly against the piece for this wearer.
    pub suitable: bool,
    /// The cautions, those that speak against it first.
    pub cautions: Vec<Caution>,
}

/// What the rules look at.
#[derive(Debug, Clone, Copy)]
pub struct PieceFacts<'a> {
    /// The base.
    pub base: &'a Base,
    /// Whole length of a necklace; without it, the usual one.
    pub length_mm: Option<f64>,
    /// How much a necklace lacks to go round the wearer's neck, in millimetres.
    pub short_by_mm: Option<f64>,
    /// The drops.
    pub drops: &'a [&'a DropKind],
    /// How the drops stand to the test cylinder.
    pub sizes: &'a Sizes,
    /// Who it is for.
    pub wearer: Wearer,
    /// Whose rules.
    pub rules: &'a Rules,
}

impl Caution {
    fn of(finding: &Finding<'_>, drop: Option<&DropKind>, name: &str) -> Self {
        let rule = finding.rule;
        let practice = finding.form == Form::Within || rule.status == Status::Practice;
        let cited = Some(rule).filter(|_| !practice);
        Self {
            code: rule.code,
            drop: drop.map(|kind| kind.id.clone()),
            rule: cited.map(|rule| rule.rule.clone()).unwrap_or_default(),
            title: cited.map(|rule| rule.title.clone()).unwrap_or_default(),
            dated: cited.map(|rule: &Rule| rule.dated.clone()).unwrap_or_default(),
            status: Some(if practice { Status::Practice } else { rule.status }),
            form: finding.form.code().to_owned(),
            number: finding.number,
            text: say::text(finding, name, drop.map_or(&[], |kind| &kind.allergens)),
            seller: say::seller(finding),
            grave: finding.grave,
        }
    }

    /// The rule in English with its date, and how far it is known where it was not read.
    pub fn cited(&self) -> String {
        self.status.map_or_else(|| self.rule.clone(), |status| cited(&self.rule, &self.title, &self.dated, status))
    }
}

impl Verdict {
    /// What follows from these cautions, put in their order.
    pub fn of(mut cautions: Vec<Caution>) -> Self {
        cautions.sort_by_key(|caution| (!caution.grave, caution.code));
        Self { suitable: cautions.iter().all(|caution| !caution.grave), cautions }
    }
}

/// The cautions for a piece: one for each code and kind of drop, however many of it hang. A wearer who is not known may
/// be a young child.
pub fn cautions(facts: &PieceFacts<'_>) -> Verdict {
    let (wearer, rules) = (facts.wearer, facts.rules);
    let mut all = Vec::new();
    for (i, kind) in facts.drops.iter().enumerate() {
        if !facts.drops[..i].iter().any(|earlier| earlier.id == kind.id) {
            all_of_drop(kind, facts.sizes, wearer, rules, &mut all);
        }
    }
    let (base, length_mm, short_by_mm) = (facts.base, facts.length_mm, facts.short_by_mm);
    let drops_g = facts.drops.iter().map(|kind| kind.weight.g()).sum();
    let found = |finding: Finding<'_>| all.push(Caution::of(&finding, None, &base.name));
    Finder { wearer, rules, found }.base(&Worn { base, length_mm, short_by_mm, drops_g });
    Verdict::of(all)
}

fn all_of_drop(kind: &DropKind, sizes: &Sizes, wearer: Wearer, rules: &Rules, all: &mut Vec<Caution>) {
    let found = |finding: Finding<'_>| all.push(Caution::of(&finding, Some(kind), &kind.name));
    Finder { wearer, rules, found }.drop(kind, sizes);
}

/// The cautions of one drop by itself.
pub fn drop_cautions(kind: &DropKind, sizes: &Sizes, wearer: Wearer, rules: &Rules) -> Verdict {
    let mut all = Vec::new();
    all_of_drop(kind, sizes, wearer, rules, &mut all);
    Verdict::of(all)
}

/// Whether nothing speaks plainly against one drop by itself: as [`drop_cautions`] says, without making its words.
pub fn drop_suits(kind: &DropKind, sizes: &Sizes, wearer: Wearer, rules: &Rules) -> bool {
    let mut suits = true;
    Finder { wearer, rules, found: |finding: Finding<'_>| suits &= !finding.grave }.drop(kind, sizes);
    suits
}
