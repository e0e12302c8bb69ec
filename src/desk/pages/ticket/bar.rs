//! The bar at the foot of the screen: the sum with what is still to do, or the ways to pay, in reach of a thumb.

use maud::{Markup, html};

use super::view::View;
use crate::{
    desk::pages::paying::way_words,
    lang::say,
    ledger::Bill,
    money::{Tender, cash_total},
    ticket::State as TicketState,
};

impl View {
    /// The bar; none where nothing is left to do.
    pub(super) fn bar(&self) -> Markup {
        let shared = self.bill.as_ref().map(|(bill, _)| bill).filter(|bill| bill.is_shared());
        match (self.ticket.state, shared) {
            (TicketState::RungUp, _) => self.bar_of_paid(),
            (state, Some(bill)) if state.is_open() => self.bar_of_bill(bill),
            (state, None) if state.is_open() => match self.still_to_do() {
                Some((place, words)) => self.bar_to(place, &words),
                None => self.bar_to_pay(),
            },
            _ => html! {},
        }
    }

    /// What comes before the money, with its place on the page.
    fn still_to_do(&self) -> Option<(&'static str, String)> {
        let (texts, ticket) = (self.texts, &self.ticket);
        if ticket.unticked() > 0 {
            Some(("#parts", say!(texts, "bar-tick", n = ticket.unticked())))
        } else if self.must_tell() {
            Some(("#told", say!(texts, "bar-tell")))
        } else if !ticket.forbidden().is_empty() || !ticket.unconfirmed().is_empty() {
            Some(("#told", say!(texts, "bar-hazards")))
        } else if ticket.sum_doubt.is_some() || !ticket.quote.is_plausible() {
            Some(("#till", say!(texts, "bar-sum")))
        } else {
            None
        }
    }

    /// The sum, which every bar has; and what the page's script tells whoever listens when it changes.
    fn bar_sum(&self, words: &str) -> Markup {
        html! {
            span.to-do data-tells { (words) }
            strong { (self.money(self.ticket.quote.total)) }
        }
    }

    fn bar_to(&self, place: &str, words: &str) -> Markup {
        html! {
            a.bar href=(place) data-key="next" {
                span.which { (self.ticket.number) }
                (self.bar_sum(words))
            }
        }
    }

    fn bar_of_bill(&self, bill: &Bill) -> Markup {
        match self.still_to_do() {
            Some((place, words)) => self.bar_to(place, &words),
            None => self.bar_to(&format!("/bills/{}", bill.id), &say!(self.texts, "sum-to-bill")),
        }
    }

    fn bar_to_pay(&self) -> Markup {
        let ticket = &self.ticket;
        let total = ticket.quote.total;
        let cash = cash_total(&ticket.rules, total).unwrap_or(total);
        html! {
            form.bar method="post" action=(self.action("ring-up")) data-key="next" aria-label=(say!(self.texts, "bar-pay")) {
                input type="hidden" name="total" value=(total);
                p.sum-of { (self.bar_sum(&say!(self.texts, "bar-ready"))) }
                @for way in &self.catalog().table.till.ways_to_pay {
                    button name="tender" value=(way.name()) {
                        (way_words(self.texts, way))
                        @if *way == Tender::Cash && cash != total { " " strong { (self.money(cash)) } }
                    }
                }
            }
        }
    }

    fn bar_of_paid(&self) -> Markup {
        html! {
            form.bar method="post" action=(self.action("hand-over")) data-key="next" {
                p.sum-of {
                    span.to-do data-tells { (say!(self.texts, "bar-paid")) }
                    strong { (self.money(self.ticket.charged.unwrap_or(self.ticket.quote.total))) }
                }
                button { (say!(self.texts, "sum-hand-over")) }
            }
        }
    }
}
