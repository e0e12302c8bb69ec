//! Money that moved for a bill, and what was put right afterwards.

use maud::{Markup, html};
use rust_decimal::Decimal;

use super::view::View;
use crate::{
    desk::{
        pages::{
            paying::{paid_words, way_words},
            words,
        },
        signed_in::name_of,
    },
    lang::say,
    ledger::{Corrected, Correction, Payment, Why},
};

impl View {
    pub(super) fn past(&self) -> Markup {
        let (texts, bill) = (self.texts, &self.bill);
        html! {
            @if !bill.payments.is_empty() {
                section.card data-key="payments" aria-label=(say!(texts, "bill-payments")) {
                    h2 { (say!(texts, "bill-money")) }
                    ol.lines { @for (at, payment) in bill.payments.iter().enumerate() { (self.payment(at, payment)) } }
                }
            }
            @if !bill.corrections.is_empty() {
                section.card data-key="corrections" aria-label=(say!(texts, "bill-put-right")) {
                    h2 { (say!(texts, "bill-put-right")) }
                    ol.lines { @for one in &bill.corrections { (self.correction(one)) } }
                }
            }
        }
    }

    fn payment(&self, at: usize, payment: &Payment) -> Markup {
        let texts = self.texts;
        let can_be_wrong = !self.bill.is_corrected(at);
        html! {
            li.money data-key={ "payment-" (at) } {
                p {
                    strong { (signed(&self.money(payment.amount.abs()), payment.amount)) } " " (paid_words(texts, &payment.tender))
                    ", " (self.why(payment.why)) ", " (words::ago(texts, payment.at, self.now))
                    @if let Some(name) = &payment.by { ", " (name_of(texts, name)) }
                    @if payment.show != self.bill.show { ", " (say!(texts, "bill-in-show", show = payment.show)) }
                }
                @if can_be_wrong {
                    details {
                        summary { (say!(texts, "bill-other-way")) }
                        form.length method="post" action=(self.action("other-way")) {
                            input type="hidden" name="payment" value=(at);
                            input name="reason" aria-label=(say!(texts, "bill-why")) placeholder=(say!(texts, "bill-why")) maxlength="80"
                                value=(say!(texts, "bill-wrong-button")) required;
                            div.row {
                                @for way in self.catalog().table.till.ways_to_pay.iter().filter(|way| **way != payment.tender) {
                                    button.quiet name="tender" value=(way.name()) { (way_words(texts, way)) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    fn why(&self, why: Why) -> String {
        match why {
            Why::Sale => say!(self.texts, "bill-why-sale"),
            Why::Part => say!(self.texts, "bill-why-part"),
            Why::PaidOut => say!(self.texts, "bill-why-paid-out"),
            Why::NotThisWay { .. } => say!(self.texts, "bill-why-not-this-way"),
            Why::ThisWay { .. } => say!(self.texts, "bill-why-this-way"),
        }
    }

    /// What was put right, in a sentence.
    fn corrected(&self, what: Corrected) -> String {
        let texts = self.texts;
        match what {
            Corrected::Ticket(id) => match self.tickets.iter().find(|ticket| ticket.id == id) {
                Some(ticket) => say!(texts, "bill-piece-back", number = ticket.number.to_string()),
                None => say!(texts, "bill-some-piece-back"),
            },
            Corrected::Line { ticket, at } => {
                let line = self.tickets.iter().find(|one| one.id == ticket).and_then(|one| one.lines.get(at));
                match line.map(|line| words::capital(&words::piece_name(texts, self.catalog(), &line.id))) {
                    Some(name) => say!(texts, "bill-part-back", name = name),
                    None => say!(texts, "bill-some-drop-back"),
                }
            }
            Corrected::Goods(at) => match self.bill.goods.get(at) {
                Some(goods) => say!(texts, "bill-part-back", name = words::capital(&goods.line.words)),
                None => say!(texts, "bill-some-goods-back"),
            },
            Corrected::Payment(_) => say!(texts, "bill-way-put-right"),
        }
    }

    fn correction(&self, one: &Correction) -> Markup {
        let texts = self.texts;
        let of_parts = matches!(one.what, Corrected::Ticket(_) | Corrected::Line { .. });
        html! {
            li.money {
                p {
                    strong { (self.corrected(one.what)) } " "
                    @if !one.worth.is_zero() { (signed(&self.money(one.worth.abs()), -one.worth)) ". " }
                    (say!(texts, "bill-because", reason = one.reason.as_str())) " "
                    @if of_parts && one.parts_home { (say!(texts, "bill-parts-home")) " " }
                    @if of_parts && !one.parts_home { (say!(texts, "bill-parts-gone")) " " }
                    span.faint {
                        (words::ago(texts, one.at, self.now))
                        @if let Some(name) = &one.by { ", " (name_of(texts, name)) }
                    }
                }
            }
        }
    }
}

fn signed(amount: &str, of: Decimal) -> String {
    if of.is_sign_negative() && !of.is_zero() { format!("−{amount}") } else { amount.to_owned() }
}
