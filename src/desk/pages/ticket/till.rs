//! The sum, and what comes next: why the money can't be taken yet, how it is paid, handing over.

use maud::{Markup, html};

use super::view::View;
use crate::{
    desk::pages::{
        paying::{change_words, given_buttons, way_words},
        words,
    },
    lang::say,
    ledger::{Bill, BillSum, Payment},
    money::{TaxRule, Tender, cash_total},
    ticket::State as TicketState,
};

impl View {
    /// The sum with the step that comes next.
    pub(super) fn sums(&self) -> Markup {
        let (texts, ticket) = (self.texts, &self.ticket);
        let quote = &ticket.quote;
        let tax = match ticket.rules.tax {
            TaxRule::Included { .. } => say!(texts, "sum-tax-inside"),
            TaxRule::Added { .. } | TaxRule::None => say!(texts, "sum-tax"),
        };
        let discount = match &ticket.given {
            Some(given) => say!(texts, "sum-taken-off", reason = given.reason.as_str()),
            None => say!(texts, "sum-discount"),
        };
        html! {
            section.card.till #till aria-label=(say!(texts, "sum-title")) {
                dl.sums {
                    dt { (say!(texts, "sum-subtotal")) } dd { (self.money(quote.subtotal)) }
                    @for line in &quote.plain { dt { (line.words) } dd { (self.money(line.price)) } }
                    @if let Some(package) = &ticket.package { dt { (package.name) } dd { (self.money(package.price)) } }
                    @if !quote.discount.is_zero() { dt { (discount) } dd { "−" (self.money(quote.discount)) } }
                    @if !quote.tax.is_zero() { dt { (tax) } dd { (self.money(quote.tax)) } }
                    dt.total { (say!(texts, "sum-total")) } dd.total data-total { (self.money(quote.total)) }
                }
                @if let (None, Some(today)) = (ticket.sum_doubt, ticket.total_by_catalog) {
                    p.faint { (say!(texts, "sum-prices-changed", sum = self.money(today))) }
                }
                (self.next_step())
            }
        }
    }

    fn next_step(&self) -> Markup {
        let texts = self.texts;
        match self.ticket.state {
            TicketState::RungUp => html! {
                (self.paid(false))
                form method="post" action=(self.action("hand-over")) { button.main.wide { (say!(texts, "sum-hand-over")) } }
                (self.to_bill(&say!(texts, "sum-refund")))
            },
            TicketState::HandedOver => html! {
                (self.paid(true))
                (self.to_bill(&say!(texts, "sum-refund")))
            },
            TicketState::LetGo => html! { p { (say!(texts, "sum-let-go")) } },
            TicketState::TakenBack => html! {
                p { (say!(texts, "sum-taken-back")) }
                @if self.ticket.cut_to_length { p.faint { (say!(texts, "table-cuts-taken-back")) } }
                (self.to_bill(&say!(texts, "sum-to-bill")))
            },
            TicketState::Sent | TicketState::Called | TicketState::Checked => match &self.bill {
                Some((bill, sum)) if bill.is_shared() => self.on_bill(bill, sum),
                _ => self.ring_up(),
            },
        }
    }

    /// How it was paid, with the change that is due; and whether it was handed over since.
    fn paid(&self, is_over: bool) -> Markup {
        let (texts, ticket) = (self.texts, &self.ticket);
        let last: Option<&Payment> = self.bill.as_ref().and_then(|(bill, _)| bill.payments.last());
        let words = match (&ticket.tender, is_over) {
            (Some(way), _) => {
                let sum = self.money(ticket.charged.unwrap_or(ticket.quote.total));
                let key = if is_over { "sum-paid-over" } else { "sum-paid" };
                texts.with(key, &[("way", way.name().into()), ("name", way.name().into()), ("sum", sum.into())])
            }
            (None, false) => say!(texts, "sum-paid-on-bill", sum = self.money(ticket.quote.total)),
            (None, true) => say!(texts, "sum-paid-on-bill-over", sum = self.money(ticket.quote.total)),
        };
        html! {
            p.paid { (words) }
            @if let (Some(_), Some(last)) = (&ticket.tender, last) { (change_words(texts, ticket.quote.currency, last)) }
        }
    }

    /// It is paid together with other things.
    fn on_bill(&self, bill: &Bill, sum: &BillSum) -> Markup {
        let left = words::money(self.texts, sum.left, bill.rules.currency);
        html! {
            @if let Some(reason) = self.not_yet() { p.reason { (reason) } }
            p {
                a.button.main.wide href={ "/bills/" (bill.id) } {
                    (say!(self.texts, "sum-bill-left", number = bill.number.to_string(), sum = left))
                }
            }
            (self.letting_go())
        }
    }

    /// The way to its bill, which is begun where there is none.
    fn to_bill(&self, what: &str) -> Markup {
        html! { form.aside method="post" action=(self.action("bill")) { button.quiet { (what) } } }
    }

    /// Why the money can't be taken yet.
    fn not_yet(&self) -> Option<String> {
        let (texts, ticket) = (self.texts, &self.ticket);
        if !ticket.quote.is_plausible() {
            return Some(say!(texts, "sum-implausible"));
        }
        if ticket.sum_doubt.is_some() {
            return Some(say!(texts, "sum-say-charged"));
        }
        let mut open = Vec::new();
        if ticket.unticked() > 0 {
            open.push(say!(texts, "first-tick", n = ticket.unticked()));
        }
        if self.must_tell() {
            open.push(say!(texts, "first-tell"));
        }
        if !ticket.forbidden().is_empty() {
            open.push(say!(texts, "first-take-off"));
        } else if !ticket.unconfirmed().is_empty() {
            let names: Vec<String> = ticket.unconfirmed().iter().map(|code| words::hazard(texts, *code)).collect();
            open.push(say!(texts, "first-confirm", hazards = names.join(", ")));
        }
        let all = open.into_iter().reduce(|one, other| say!(texts, "sum-and", one = one, other = other))?;
        Some(words::capital(&say!(texts, "sum-first", what = all)))
    }

    fn ring_up(&self) -> Markup {
        let (texts, ticket) = (self.texts, &self.ticket);
        let total = ticket.quote.total;
        let cash = cash_total(&ticket.rules, total).unwrap_or(total);
        let not_yet = self.not_yet();
        let ways = &self.catalog().table.till.ways_to_pay;
        html! {
            (self.which_sum())
            form method="post" action=(self.action("ring-up")) {
                input type="hidden" name="total" value=(total);
                div.row.pay {
                    @for way in ways {
                        button.main name="tender" value=(way.name()) disabled[not_yet.is_some()] {
                            (way_words(texts, way)) " " strong { (self.money(if *way == Tender::Cash { cash } else { total })) }
                        }
                    }
                }
                @if cash != total {
                    p.faint { (say!(texts, "sum-cash-rounded", step = self.money(ticket.rules.cash_step))) }
                }
            }
            @if let Some(reason) = &not_yet { p.reason { (reason) } }
            @if not_yet.is_none() && ways.contains(&Tender::Cash) {
                form.given method="post" action=(self.action("ring-up")) {
                    input type="hidden" name="total" value=(total);
                    input type="hidden" name="tender" value="cash";
                    p.label { (say!(texts, "sum-given")) }
                    (given_buttons(texts, ticket.quote.currency, cash))
                }
            }
            (self.to_bill(&say!(texts, "sum-together")))
            (self.letting_go())
        }
    }

    fn letting_go(&self) -> Markup {
        html! { p.aside { a.button.quiet href=(self.action("let-go")) { (say!(self.texts, "let-go-do")) } } }
    }
}
