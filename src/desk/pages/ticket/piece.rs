//! What of a piece can be changed at the table without a part more or less: its wearer and its length.

use maud::{Markup, html};

use super::view::View;
use crate::{
    craft::{BaseKind, Length, Wearer},
    desk::pages::words,
    lang::{Lang, Texts},
};

impl View {
    /// Who it is for, where that turns out to be somebody else at the table.
    pub(super) fn wearers(&self) -> Markup {
        let now = self.ticket.piece.wearer;
        if !self.open() {
            return html! {};
        }
        html! {
            form.length #wearer method="post" action=(self.action("wearer")) data-repeats {
                label for="who" { "Who it is for; the cautions follow" }
                div.row {
                    select #who name="wearer" data-submits {
                        @if now == Wearer::Unknown { option value=(now.code()) selected { (words::wearer(Texts::of(Lang::En), now)) } }
                        @for one in Wearer::ANSWERS {
                            option value=(one.code()) selected[one == now] { (words::wearer(Texts::of(Lang::En), one)) }
                        }
                    }
                    button.no-script { "Set" }
                }
            }
        }
    }

    /// The lengths the base is made in, an inch apart. A length in between stays as it is.
    pub(super) fn lengths(&self) -> Markup {
        let piece = &self.ticket.piece;
        let (Some(length), Some(base)) = (piece.length, self.catalog().base(&piece.base)) else { return html! {} };
        let BaseKind::Necklace(necklace) = &base.kind else { return html! {} };
        if !self.open() {
            return html! { p { "Length " strong { (words::length(Texts::of(Lang::En), length)) } } };
        }
        let steps: Vec<Length> = (1..=200)
            .map(|inches| Length::from_inches(f64::from(inches)))
            .filter(|step| {
                (necklace.lengths.shortest.mm() - 0.5..=necklace.lengths.longest.mm() + 0.5).contains(&step.mm())
            })
            .collect();
        let same = |step: &Length| (step.mm() - length.mm()).abs() < 0.5;
        let shorter = steps.iter().rev().find(|step| step.mm() < length.mm() - 0.5);
        let longer = steps.iter().find(|step| step.mm() > length.mm() + 0.5);
        html! {
            // A form of their own: Enter in the list must not press one of them.
            form #length-steps method="post" action=(self.action("length")) data-repeats {}
            form.length #length method="post" action=(self.action("length")) data-repeats {
                label for="mm" { "Length, free of charge" }
                div.row {
                    button.step form="length-steps" data-key="shorter" name="to" value=[shorter.map(|step| step.mm())] disabled[shorter.is_none()]
                        aria-label="an inch shorter" { "−" }
                    select #mm name="mm" data-submits {
                        @if !steps.iter().any(same) { option value=(length.mm()) selected { (words::length(Texts::of(Lang::En), length)) } }
                        @for step in &steps {
                            option value=(step.mm()) selected[same(step)] { (words::length(Texts::of(Lang::En), *step)) }
                        }
                    }
                    button.step form="length-steps" data-key="longer" name="to" value=[longer.map(|step| step.mm())] disabled[longer.is_none()]
                        aria-label="an inch longer" { "+" }
                    button.no-script { "Set" }
                }
            }
        }
    }
}
