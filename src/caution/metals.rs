//! Lead, cadmium, nickel and the lead in paint: a test, a supplier's word, or what is usual.

use super::{
    CautionCode, Rule, Rules,
    form::Form,
    rules::{Source, is_about},
};
use crate::craft::{Facts, Substance, Wearer};

/// What follows for one substance in one part.
pub(super) struct Judged<'r> {
    pub source: Source<'r>,
    pub form: Form,
    pub grave: bool,
    pub forbidden: bool,
    pub number: Option<f64>,
    pub limit: Option<f64>,
}

/// Judges `substance` in a part by `rule` for `wearer`; `None` where there is nothing to say.
pub(super) fn judge<'r>(rule: &'r Rule, substance: Substance, facts: &Facts, wearer: Wearer) -> Option<Judged<'r>> {
    match facts.tested.unwrap_or_default().of(substance) {
        Some(found) => by_test(rule, substance, facts, wearer, found),
        None => without_test(rule, substance, facts, wearer),
    }
}

/// A figure beyond the limit for this wearer speaks against the part, unless the rule exempts it. One within it is still
/// said to everybody where it is beyond what any region that comes with the program allows for children.
fn by_test<'r>(rule: &'r Rule, substance: Substance, facts: &Facts, wearer: Wearer, found: f64) -> Option<Judged<'r>> {
    let (source, limit) = rule.limit_for(wearer);
    let figure = limit.figure();
    let said =
        |form, grave, forbidden, limit| Some(Judged { source, form, grave, forbidden, number: Some(found), limit });
    if limit.is_broken_by(found) {
        if substance == Substance::Lead && is_exempt(rule, facts) {
            return said(Form::Exempt, false, false, figure);
        }
        return said(Form::Found, is_about(&rule.against, wearer), rule.forbids, figure);
    }
    if rule.limit.is_broken_by(found) || is_beyond_childrens_limit(rule.code, found) {
        return match figure {
            Some(_) => said(Form::Elsewhere, false, false, figure),
            None => said(Form::Children, false, false, rule.limit.figure()),
        };
    }
    None
}

/// Whether the rule exempts the lead of a part: what is exempt is in it, and nothing else that usually holds lead, since a
/// test of the whole does not say where it was found.
fn is_exempt(rule: &Rule, facts: &Facts) -> bool {
    let exempt = facts.lead_exempt.filter(|one| rule.exempts.contains(one));
    let covers = exempt.is_some_and(|exempt| facts.materials.iter().any(|one| exempt.covers(*one)));
    covers && !is_usual(rule, Substance::Lead, facts)
}

/// Whether a region that comes with the program does not allow this for children: every region's own limit is theirs.
fn is_beyond_childrens_limit(code: CautionCode, found: f64) -> bool {
    let rules = Rules::built_in().iter().filter_map(|rules| rules.of(code));
    rules.into_iter().any(|rule| rule.limit.is_broken_by(found))
}

fn without_test<'r>(rule: &'r Rule, substance: Substance, facts: &Facts, wearer: Wearer) -> Option<Judged<'r>> {
    if !is_about(&rule.says, wearer) || !is_usual(rule, substance, facts) {
        return None;
    }
    let declared = facts.declares(substance);
    let (form, grave) =
        if declared { (Form::Declared, false) } else { (Form::Usual, is_about(&rule.untested, wearer)) };
    Some(Judged { source: Source::of(rule), form, grave, forbidden: false, number: None, limit: None })
}

/// Whether the substance is usual in the part's materials, plating or paint. An exemption lifts what it covers.
fn is_usual(rule: &Rule, substance: Substance, facts: &Facts) -> bool {
    if substance == Substance::Paint {
        return facts.painted;
    }
    let exempt = facts.lead_exempt.filter(|one| substance == Substance::Lead && rule.exempts.contains(one));
    let mut counted = facts.materials.iter().filter(|one| !exempt.is_some_and(|exempt| exempt.covers(**one)));
    let plated = rule.platings.contains(&facts.plating) && exempt != Some(crate::craft::LeadExemption::Before1961);
    plated || counted.any(|one| rule.materials.contains(one))
}
