//! Money that moved for a bill, and what was put right afterwards.

use maud::{Markup, html};
use rust_decimal::Decimal;

use super::view::View;
use crate::{
    desk::pages::{paying::way_words, words},
    lang::{Lang, Texts},
    ledger::{Corrected, Correction, Payment, Why},
};

impl View {
    pub(super) fn past(&self) -> Markup {
        let bill = &self.bill;
        html! {
            @if !bill.payments.is_empty() {
                section.card data-key="payments" aria-label="Payments" {
                    h2 { "Money" }
                    ol.lines { @for (at, payment) in bill.payments.iter().enumerate() { (self.payment(at, payment)) } }
                }
            }
            @if !bill.corrections.is_empty() {
                section.card data-key="corrections" aria-label="Put right" {
                    h2 { "Put right" }
                    ol.lines { @for one in &bill.corrections { (self.correction(one)) } }
                }
            }
        }
    }

    fn payment(&self, at: usize, payment: &Payment) -> Markup {
        let can_be_wrong = !self.bill.is_corrected(at);
        html! {
            li.money data-key={ "payment-" (at) } {
                p {
                    strong { (signed(&self.money(payment.amount.abs()), payment.amount)) } " " (payment.tender.words())
                    ", " (why(payment.why)) ", " (words::ago(Texts::of(Lang::En), payment.at, self.now))
                    @if let Some(name) = &payment.by { ", " (name) }
                    @if payment.show != self.bill.show { ", in show " (payment.show) }
                }
                @if can_be_wrong {
                    details {
                        summary { "It was in another way" }
                        form.length method="post" action=(self.action("other-way")) {
                            input type="hidden" name="payment" value=(at);
                            input name="reason" aria-label="Why" placeholder="Why" maxlength="80" value="touched the wrong button" required;
                            div.row {
                                @for way in self.catalog().table.till.ways_to_pay.iter().filter(|way| **way != payment.tender) {
                                    button.quiet name="tender" value=(way.name()) { (way_words(way)) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    fn correction(&self, one: &Correction) -> Markup {
        let what = match one.what {
            Corrected::Ticket(id) => match self.tickets.iter().find(|ticket| ticket.id == id) {
                Some(ticket) => format!("piece {} taken back", ticket.number),
                None => "a piece taken back".to_owned(),
            },
            Corrected::Line { ticket, at } => {
                let line = self.tickets.iter().find(|one| one.id == ticket).and_then(|one| one.lines.get(at));
                let name =
                    line.map(|line| words::part_name(Texts::of(Lang::En), self.catalog(), &line.id).into_owned());
                format!("{} taken back", name.as_deref().unwrap_or("a drop"))
            }
            Corrected::Goods(at) => {
                let goods = self.bill.goods.get(at).map(|goods| goods.line.words.as_str());
                format!("{} taken back", goods.unwrap_or("goods"))
            }
            Corrected::Payment(_) => "the way to pay put right".to_owned(),
        };
        html! {
            li.money {
                p {
                    strong { (words::sentence(&what)) } " "
                    @if !one.worth.is_zero() { (signed(&self.money(one.worth.abs()), -one.worth)) ". " }
                    "Because of: " (one.reason) ". "
                    @if matches!(one.what, Corrected::Ticket(_) | Corrected::Line { .. }) {
                        @if one.parts_home { "The parts are in their homes again. " } @else { "The parts are gone. " }
                    }
                    span.faint {
                        (words::ago(Texts::of(Lang::En), one.at, self.now))
                        @if let Some(name) = &one.by { ", " (name) }
                    }
                }
            }
        }
    }
}

fn signed(amount: &str, of: Decimal) -> String {
    if of.is_sign_negative() && !of.is_zero() { format!("−{amount}") } else { amount.to_owned() }
}

const fn why(why: Why) -> &'static str {
    match why {
        Why::Sale => "paid",
        Why::Part => "a part of it",
        Why::PaidOut => "paid out",
        Why::NotThisWay { .. } => "taken out again: it was in another way",
        Why::ThisWay { .. } => "put right",
    }
}
