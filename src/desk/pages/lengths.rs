//! The lengths that a base is made in, as forms offer them.

use maud::{Markup, html};

use super::words;
use crate::{
    craft::{Base, BaseKind, Length},
    lang::Texts,
};

/// The longest that is offered, in inches.
const LONGEST_INCHES: u32 = 200;

/// The lengths `base` is made in, an inch apart; none of a bangle.
pub(super) fn made_in(base: &Base) -> Vec<Length> {
    let BaseKind::Necklace(necklace) = &base.kind else { return Vec::new() };
    let made = necklace.lengths.shortest.mm() - 0.5..=necklace.lengths.longest.mm() + 0.5;
    let all = (1..=LONGEST_INCHES).map(|inches| Length::from_inches(f64::from(inches)));
    all.filter(|step| made.contains(&step.mm())).collect()
}

/// Whether the two are one length for whoever cuts a chain.
pub(super) fn is_same(one: Length, other: Length) -> bool {
    (one.mm() - other.mm()).abs() < 0.5
}

/// The choices of a list, of which `chosen` is taken; one that lies between the steps stays as it is.
pub(super) fn choices(texts: &Texts, steps: &[Length], chosen: Length) -> Markup {
    html! {
        @if !steps.iter().any(|step| is_same(*step, chosen)) {
            option value=(chosen.mm()) selected { (words::length(texts, chosen)) }
        }
        @for step in steps {
            option value=(step.mm()) selected[is_same(*step, chosen)] { (words::length(texts, *step)) }
        }
    }
}
