//! The sum, and what comes next: why the money can't be taken yet, how it is paid, handing over.

use maud::{Markup, html};

use super::{view::View, which_sum};
use crate::{
    desk::pages::words,
    money::{TaxRule, Tender, cash_total},
    ticket::State as TicketState,
};

impl View {
    /// The sum with the step that comes next.
    pub(super) fn sums(&self) -> Markup {
        let ticket = &self.ticket;
        let quote = &ticket.quote;
        let tax_word = match ticket.rules.tax {
            TaxRule::Included { .. } => "Tax, contained",
            TaxRule::Added { .. } | TaxRule::None => "Tax",
        };
        html! {
            section.card.till #till aria-label="The sum" {
                dl.sums {
                    dt { "Subtotal" } dd { (self.money(quote.subtotal)) }
                    @if !quote.discount.is_zero() { dt { "Discount" } dd { "−" (self.money(quote.discount)) } }
                    @if !quote.tax.is_zero() { dt { (tax_word) } dd { (self.money(quote.tax)) } }
                    dt.total { "Total" } dd.total data-total { (self.money(quote.total)) }
                }
                @if let (None, Some(today)) = (ticket.sum_doubt, ticket.total_by_catalog) {
                    p.faint { "Prices changed since the guest saw this sum: the piece as sent would be " (self.money(today))
                        " now. The guest pays what was on the screen." }
                }
                (self.next_step())
            }
        }
    }

    fn next_step(&self) -> Markup {
        let ticket = &self.ticket;
        match (ticket.state, &ticket.tender, ticket.charged) {
            (TicketState::RungUp, tender, charged) => html! {
                p.paid { "Paid " (self.money(charged.unwrap_or(ticket.quote.total))) " " (tender.as_ref().map_or_else(String::new, Tender::words)) "." }
                form method="post" action=(self.action("hand-over")) { button.main.wide { "Handed over" } }
            },
            (TicketState::HandedOver, tender, charged) => html! {
                p.paid { "Paid " (self.money(charged.unwrap_or(ticket.quote.total))) " " (tender.as_ref().map_or_else(String::new, Tender::words))
                    " and handed over." }
            },
            (TicketState::LetGo, ..) => html! { p { "This ticket came to nothing; its drops are free again." } },
            (TicketState::TakenBack, ..) => html! { p { "This piece was paid and taken back." } },
            (TicketState::Sent | TicketState::Called | TicketState::Checked, ..) => self.ring_up(),
        }
    }

    /// Why the money can't be taken yet.
    fn not_yet(&self) -> Option<String> {
        let ticket = &self.ticket;
        if !ticket.quote.is_plausible() {
            return Some("No table takes such a sum. Let the ticket go.".to_owned());
        }
        if ticket.sum_doubt.is_some() {
            return Some("Say first what is charged.".to_owned());
        }
        let mut open = Vec::new();
        if ticket.unticked() > 0 {
            open.push(format!("tick off {}", words::count(ticket.unticked(), "more part")));
        }
        if self.must_tell() {
            open.push("tell the guest of the cautions".to_owned());
        }
        if !ticket.forbidden().is_empty() {
            open.push("take off what may not be sold".to_owned());
        } else if !ticket.unconfirmed().is_empty() {
            let names: Vec<String> = ticket.unconfirmed().iter().map(|code| code.words()).collect();
            let names = names.join(", ");
            open.push(format!("change the piece or its wearer, or confirm as sold for a grown-up: {names}"));
        }
        (!open.is_empty()).then(|| words::sentence(&format!("{} first", open.join(" and "))))
    }

    fn ring_up(&self) -> Markup {
        let ticket = &self.ticket;
        let total = ticket.quote.total;
        let cash = cash_total(&ticket.rules, total).unwrap_or(total);
        let not_yet = self.not_yet();
        html! {
            (which_sum::question(ticket))
            form method="post" action=(self.action("ring-up")) {
                input type="hidden" name="total" value=(total);
                div.row.pay {
                    button.main name="tender" value="cash" disabled[not_yet.is_some()] {
                        "Cash " strong { (self.money(cash)) }
                    }
                    button.main name="tender" value="card" disabled[not_yet.is_some()] {
                        "Card " strong { (self.money(total)) }
                    }
                }
                @if cash != total { p.faint { "Cash is rounded to the nearest " (self.money(ticket.rules.cash_step)) "." } }
                @if let Some(reason) = not_yet { p.reason { (reason) } }
            }
            p.aside { a.quiet.button href=(self.action("let-go")) { "Let the ticket go" } }
        }
    }
}
