//! What of a piece can be changed at the table: its wearer, its length, its base, and a drop more.

use maud::{Markup, html};

use super::view::View;
use crate::{
    craft::Wearer,
    desk::pages::{
        lengths::{choices, made_in},
        words,
    },
    lang::say,
};

impl View {
    /// What can be changed while the ticket is open.
    pub(super) fn more(&self) -> Markup {
        let texts = self.texts;
        html! {
            @if self.open() {
                section.card.changes data-key="more" aria-label=(say!(texts, "change-title")) {
                    h2 { (say!(texts, "change-title")) }
                    (self.wearers())
                    (self.lengths())
                    (self.another_drop())
                    (self.bases())
                }
            }
        }
    }

    /// Another drop onto the piece, by its home.
    fn another_drop(&self) -> Markup {
        let texts = self.texts;
        html! {
            form.length #add method="post" action=(self.action("add")) {
                label for="home" { (say!(texts, "change-add")) }
                div.row {
                    input #home name="home" autocomplete="off" autocapitalize="characters" spellcheck="false"
                        placeholder="B3" maxlength="8" required;
                    button { (say!(texts, "change-add-do")) }
                }
            }
        }
    }

    /// Another base under the drops.
    fn bases(&self) -> Markup {
        let (texts, now) = (self.texts, &self.ticket.piece.base);
        html! {
            form.length #other-base method="post" action=(self.action("base")) data-repeats {
                label for="other" { (say!(texts, "change-base")) }
                div.row {
                    select #other name="base" data-submits {
                        @if self.catalog().base(now).is_none() { option value=(now) selected { (now) } }
                        @for base in &self.catalog().bases {
                            option value=(base.id) selected[base.id == *now] { (self.name(&base.id)) " · " (self.money(base.price)) }
                        }
                    }
                    button.no-script { (say!(texts, "ticket-set")) }
                }
            }
        }
    }

    /// Who it is for, where that turns out to be somebody else at the table.
    fn wearers(&self) -> Markup {
        let (texts, now) = (self.texts, self.ticket.piece.wearer);
        html! {
            form.length #wearer method="post" action=(self.action("wearer")) data-repeats {
                label for="who" { (say!(texts, "ticket-who")) }
                div.row {
                    select #who name="wearer" data-submits {
                        @if now == Wearer::Unknown { option value=(now.code()) selected { (words::wearer(texts, now)) } }
                        @for one in Wearer::ANSWERS {
                            option value=(one.code()) selected[one == now] { (words::wearer(texts, one)) }
                        }
                    }
                    button.no-script { (say!(texts, "ticket-set")) }
                }
            }
        }
    }

    /// The lengths the base is made in.
    fn lengths(&self) -> Markup {
        let (texts, piece) = (self.texts, &self.ticket.piece);
        let (Some(length), Some(base)) = (piece.length, self.catalog().base(&piece.base)) else { return html! {} };
        let steps = made_in(base);
        let shorter = steps.iter().rev().find(|step| step.mm() < length.mm() - 0.5);
        let longer = steps.iter().find(|step| step.mm() > length.mm() + 0.5);
        html! {
            // A form of their own: Enter in the list must not press one of them.
            form #length-steps method="post" action=(self.action("length")) data-repeats {}
            form.length #length method="post" action=(self.action("length")) data-repeats {
                label for="mm" { (say!(texts, "ticket-length-free")) }
                div.row {
                    button.step form="length-steps" data-key="shorter" name="to" value=[shorter.map(|step| step.mm())] disabled[shorter.is_none()]
                        aria-label=(say!(texts, "ticket-shorter")) { "−" }
                    select #mm name="mm" data-submits { (choices(texts, &steps, length)) }
                    button.step form="length-steps" data-key="longer" name="to" value=[longer.map(|step| step.mm())] disabled[longer.is_none()]
                        aria-label=(say!(texts, "ticket-longer")) { "+" }
                    button.no-script { (say!(texts, "ticket-set")) }
                }
                @if self.ticket.cut_to_length { p.faint.hint { (say!(texts, "table-cuts-on-ticket")) } }
            }
        }
    }
}
