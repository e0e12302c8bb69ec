//! What to say of a piece and its wearer.

use std::collections::BTreeSet;

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::{
    CautionCode, Dated, Rules, Sizes, Status,
    find::{Finder, Finding, Judgable, Small, Worn},
    form::Form,
    rules::Source,
    say,
};
use crate::craft::{Base, BaseKind, DropKind, Facts, Wearer};

/// Said with every list of cautions.
pub const DEFERRAL: &str = "A guide, not a test report; local rules and a qualified safety assessment decide.";

/// One thing to be careful about, with the rule it rests on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Caution {
    /// What it is about.
    pub code: CautionCode,
    /// Id of the drop, or none for the base and the whole piece.
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
    /// The figure in its words: grams of something heavy, millimetres of a neck or hand, what a test found.
    #[serde(default)]
    pub number: Option<Decimal>,
    /// What that is compared with, in the same unit.
    #[serde(default)]
    pub limit: Option<Decimal>,
    /// Plain words for a guest, in English, without the name of the part.
    pub text: String,
    /// Plain words for the seller: what to say or to offer.
    #[serde(default)]
    pub seller: String,
    /// Whether it makes the piece unsuitable for the wearer.
    pub grave: bool,
    /// Whether what it is about may not be sold to anybody.
    #[serde(default)]
    pub forbidden: bool,
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
    /// What the drops hang on.
    pub base: &'a Base,
    /// Whole length of a necklace; without it, the usual one.
    pub length_mm: Option<f64>,
    /// The wearer's own neck, in millimetres, where they said it.
    pub neck_mm: Option<f64>,
    /// What hangs, from the left.
    pub drops: &'a [&'a DropKind],
    /// How drops and base stand to the test cylinder.
    pub sizes: &'a Sizes,
    /// Who it is for.
    pub wearer: Wearer,
    /// The rules by which it is judged.
    pub rules: &'a Rules,
}

impl Caution {
    fn of(finding: &Finding<'_>, drop: Option<&str>, facts: &Facts) -> Self {
        let milder = matches!(finding.form, Form::Within | Form::Together | Form::Apart);
        let source = finding.source;
        let practice = milder || source.status == Status::Practice;
        let cited = Some(source).filter(|_| !practice);
        Self {
            code: finding.rule.code,
            drop: drop.map(str::to_owned),
            rule: cited.map(|source| source.rule.to_owned()).unwrap_or_default(),
            title: cited.map(|source| source.title.to_owned()).unwrap_or_default(),
            dated: cited.map(|source| source.dated.clone()).unwrap_or_default(),
            status: Some(if practice { Status::Practice } else { source.status }),
            form: finding.form.code().to_owned(),
            number: finding.number,
            limit: finding.limit,
            text: say::text(finding, &facts.allergens),
            seller: say::seller(finding, facts),
            grave: finding.grave,
            forbidden: finding.forbidden,
        }
    }

    /// The rule in English with its date, and how far it is known where it was not read.
    pub fn cited(&self) -> String {
        let source = |status| Source { rule: &self.rule, title: &self.title, dated: &self.dated, status };
        self.status.map_or_else(|| self.rule.clone(), |status| source(status).cited())
    }
}

impl Verdict {
    /// What follows from these cautions, put in their order.
    pub fn of(mut cautions: Vec<Caution>) -> Self {
        cautions.sort_by_key(|caution| (!caution.forbidden, !caution.grave, caution.code));
        Self { suitable: cautions.iter().all(|caution| !caution.grave), cautions }
    }

    /// Whether it says the same sentences as gravely, if of other parts: who was told the one was told the other.
    pub fn says_the_same_as(&self, other: &Self) -> bool {
        let said = |verdict: &Self| -> BTreeSet<(CautionCode, String, bool, bool)> {
            let all = verdict.cautions.iter();
            all.map(|one| (one.code, one.text.clone(), one.grave, one.forbidden)).collect()
        };
        said(self) == said(other)
    }

    /// Whether something in it may not be sold to anybody.
    pub fn is_forbidden(&self) -> bool {
        self.cautions.iter().any(|caution| caution.forbidden)
    }
}

/// The cautions for a piece: one for each code, form and kind of drop, however many of it hang. A wearer who is not known
/// may be a young child.
pub fn cautions(facts: &PieceFacts<'_>) -> Verdict {
    let (wearer, rules, base) = (facts.wearer, facts.rules, facts.base);
    let holds_magnet = |one: &Facts| usize::from(one.magnet.is_some());
    let magnets = holds_magnet(&base.facts) + facts.drops.iter().map(|kind| holds_magnet(&kind.facts)).sum::<usize>();
    let mut all = Vec::new();
    for (i, kind) in facts.drops.iter().enumerate() {
        if !facts.drops[..i].iter().any(|earlier| earlier.id == kind.id) {
            all_of_drop(kind, facts.sizes, wearer, rules, magnets, &mut all);
        }
    }
    let size = facts.sizes.of_base(base);
    let small = match base.kind {
        BaseKind::Necklace(_) => Small::Ends(size),
        BaseKind::Bangle(_) => Small::Hoop(size),
    };
    let found = |finding: Finding<'_>| all.push(Caution::of(&finding, None, &base.facts));
    let mut finder = Finder { wearer, rules, found };
    finder.part(&Judgable { facts: &base.facts, body: None, small, mixed: false, magnets });
    let drops_g = facts.drops.iter().map(|kind| kind.weight.g()).sum();
    finder.worn(&Worn { base, length_mm: facts.length_mm, neck_mm: facts.neck_mm, drops_g });
    Verdict::of(all)
}

fn judgable<'a>(kind: &'a DropKind, sizes: &Sizes, magnets: usize) -> Judgable<'a> {
    let (small, mixed) = (Small::Drop(sizes.of(kind)), kind.is_assortment());
    Judgable { facts: &kind.facts, body: Some(&kind.body), small, mixed, magnets }
}

fn all_of_drop(kind: &DropKind, sizes: &Sizes, wearer: Wearer, rules: &Rules, magnets: usize, all: &mut Vec<Caution>) {
    let found = |finding: Finding<'_>| all.push(Caution::of(&finding, Some(&kind.id), &kind.facts));
    Finder { wearer, rules, found }.part(&judgable(kind, sizes, magnets));
}

/// The cautions of one drop by itself.
pub fn drop_cautions(kind: &DropKind, sizes: &Sizes, wearer: Wearer, rules: &Rules) -> Verdict {
    let mut all = Vec::new();
    all_of_drop(kind, sizes, wearer, rules, 1, &mut all);
    Verdict::of(all)
}

/// Whether nothing speaks plainly against one drop by itself: as [`drop_cautions`] says, without making its words.
pub fn drop_suits(kind: &DropKind, sizes: &Sizes, wearer: Wearer, rules: &Rules) -> bool {
    let mut suits = true;
    let found = |finding: Finding<'_>| suits &= !finding.grave;
    Finder { wearer, rules, found }.part(&judgable(kind, sizes, 1));
    suits
}
