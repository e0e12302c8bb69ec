//! The sum of a bill and how it is paid: all of it in one touch, in parts, with cash given; or paid out.

use maud::{Markup, html};
use rust_decimal::Decimal;

use super::view::View;
use crate::{
    desk::pages::{
        paying::{change_words, given_buttons, way_words},
        ticket::reduction_form,
    },
    lang::say,
    money::Tender,
};

impl View {
    pub(super) fn counter(&self) -> Markup {
        let (texts, sum) = (self.texts, &self.sum);
        let left = if sum.left.is_sign_negative() { say!(texts, "bill-to-pay-out") } else { say!(texts, "bill-left") };
        html! {
            section.card.till #till data-key="till" aria-label=(say!(texts, "bill-sum")) {
                dl.sums {
                    @if !sum.goods.discount.is_zero() {
                        dt { (self.taken_off()) }
                        dd { "−" (self.money(sum.goods.discount)) }
                    }
                    @if !sum.tax.is_zero() { dt { (say!(texts, "bill-tax")) } dd { (self.money(sum.tax)) } }
                    dt.total { (say!(texts, "bill-total")) } dd.total data-total { (self.money(sum.total)) }
                    @if !sum.settled.is_zero() {
                        dt { (say!(texts, "bill-so-far")) } dd { (self.money(sum.settled)) }
                        @if !self.is_settled() {
                            dt { strong { (left) } }
                            dd { strong data-left=(sum.left) { (self.money(sum.left.abs())) } }
                        }
                    }
                }
                @if self.is_settled() { (self.settled()) } @else { (self.ways()) }
            }
        }
    }

    fn taken_off(&self) -> String {
        match &self.bill.goods_given {
            Some(given) => say!(self.texts, "bill-taken-off-because", reason = given.reason.as_str()),
            None => say!(self.texts, "bill-taken-off"),
        }
    }

    fn settled(&self) -> Markup {
        html! {
            p.paid { (say!(self.texts, "bill-paid")) }
            @if let Some(last) = self.bill.payments.last() {
                (change_words(self.texts, self.bill.rules.currency, last))
            }
            p.aside { a.button.main.wide href="/tickets" { (say!(self.texts, "bill-next-guest")) } }
        }
    }

    /// What the form has to say of the bill as it was seen.
    fn seen(&self) -> Markup {
        html! {
            input type="hidden" name="left" value=(self.sum.left);
            input type="hidden" name="payments" value=(self.bill.payments.len());
        }
    }

    fn due(&self, way: &Tender) -> Decimal {
        self.bill.due(self.sum.left, way).unwrap_or(self.sum.left)
    }

    fn ways(&self) -> Markup {
        let (texts, currency) = (self.texts, self.bill.rules.currency);
        let ways = &self.catalog().table.till.ways_to_pay;
        let out = self.sum.left.is_sign_negative() && !self.sum.left.is_zero();
        html! {
            form method="post" action=(self.action("pay")) {
                (self.seen())
                @if out { p.label { (say!(texts, "bill-pay-out")) } }
                div.row.pay {
                    @for way in ways {
                        button.main name="tender" value=(way.name()) {
                            (way_words(texts, way)) " " strong { (self.money(self.due(way).abs())) }
                        }
                    }
                }
            }
            @if !out && !self.sum.left.is_zero() {
                @if ways.contains(&Tender::Cash) {
                    form.given method="post" action=(self.action("pay")) {
                        (self.seen())
                        input type="hidden" name="tender" value="cash";
                        p.label { (say!(texts, "bill-or-given")) }
                        (given_buttons(texts, currency, self.due(&Tender::Cash)))
                    }
                }
                (self.part(ways))
            }
            @if self.bill.live_goods().any(|(_, goods)| goods.sold.is_none()) {
                details.aside {
                    summary { (say!(texts, "bill-reduce-goods")) }
                    (reduction_form(texts, &self.action("reduce"), currency, self.sum.goods.total, self.bill.goods_given.is_some()))
                }
            }
        }
    }

    /// A part of it: a deposit, or the first of two ways.
    fn part(&self, ways: &[Tender]) -> Markup {
        html! {
            form.length.aside method="post" action=(self.action("pay")) {
                (self.seen())
                label for="part" { (say!(self.texts, "bill-or-part")) }
                div.row {
                    input.amount #part name="amount" inputmode="decimal" autocomplete="off" placeholder=(self.money(Decimal::TEN))
                        maxlength="12" required;
                    @for way in ways { button.quiet name="tender" value=(way.name()) { (way_words(self.texts, way)) } }
                }
            }
        }
    }
}
