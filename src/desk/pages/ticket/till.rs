//! The sum, and what comes next: why the money can't be taken yet, how it is paid, handing over.

use maud::{Markup, html};

use super::{view::View, which_sum};
use crate::{
    desk::pages::{
        paying::{change_words, given_buttons, way_words},
        words,
    },
    lang::{Lang, Texts, say},
    ledger::{Bill, BillSum, Payment},
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
                    @for line in &quote.plain { dt { (line.words) } dd { (self.money(line.price)) } }
                    @if let Some(package) = &ticket.package { dt { (package.name) } dd { (self.money(package.price)) } }
                    @if !quote.discount.is_zero() {
                        dt { @match &ticket.given { Some(given) => { "Taken off, " (given.reason) } None => { "Discount" } } }
                        dd { "−" (self.money(quote.discount)) }
                    }
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
        match self.ticket.state {
            TicketState::RungUp => html! {
                (self.paid("."))
                form method="post" action=(self.action("hand-over")) { button.main.wide { "Handed over" } }
                (self.to_bill("Refund or exchange"))
            },
            TicketState::HandedOver => html! {
                (self.paid(" and handed over."))
                (self.to_bill("Refund or exchange"))
            },
            TicketState::LetGo => html! { p { "This ticket came to nothing; its drops are free again." } },
            TicketState::TakenBack => html! {
                p { "This piece was paid and taken back." }
                (self.to_bill("To its bill"))
            },
            TicketState::Sent | TicketState::Called | TicketState::Checked => match &self.bill {
                Some((bill, sum)) if bill.is_shared() => self.on_bill(bill, sum),
                _ => self.ring_up(),
            },
        }
    }

    /// How it was paid, with the change that is due.
    fn paid(&self, end: &str) -> Markup {
        let ticket = &self.ticket;
        let last: Option<&Payment> = self.bill.as_ref().and_then(|(bill, _)| bill.payments.last());
        html! {
            @match &ticket.tender {
                Some(tender) => {
                    p.paid { "Paid " (self.money(ticket.charged.unwrap_or(ticket.quote.total))) " " (tender.words()) (end) }
                    @if let Some(last) = last { (change_words(Texts::of(Lang::En), ticket.quote.currency, last)) }
                }
                None => { p.paid { "Paid, " (self.money(ticket.quote.total)) " on its bill" (end) } }
            }
        }
    }

    /// It is paid together with other things.
    fn on_bill(&self, bill: &Bill, sum: &BillSum) -> Markup {
        html! {
            @if let Some(reason) = self.not_yet() { p.reason { (reason) } }
            p {
                a.button.main.wide href={ "/bills/" (bill.id) } {
                    "Bill " (bill.number) ", " (bill.rules.currency.plain(sum.left)) " left"
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
        let ticket = &self.ticket;
        if !ticket.quote.is_plausible() {
            return Some("No table takes such a sum. Let the ticket go.".to_owned());
        }
        if ticket.sum_doubt.is_some() {
            return Some("Say first what is charged.".to_owned());
        }
        let mut open = Vec::new();
        if ticket.unticked() > 0 {
            open.push(format!("tick off {}", say!(Texts::of(Lang::En), "count-more-parts", n = ticket.unticked())));
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
        let ways = &self.catalog().table.till.ways_to_pay;
        html! {
            (which_sum::question(ticket))
            form method="post" action=(self.action("ring-up")) {
                input type="hidden" name="total" value=(total);
                div.row.pay {
                    @for way in ways {
                        button.main name="tender" value=(way.name()) disabled[not_yet.is_some()] {
                            (way_words(Texts::of(Lang::En), way)) " " strong { (self.money(if *way == Tender::Cash { cash } else { total })) }
                        }
                    }
                }
                @if cash != total { p.faint { "Cash is rounded to the nearest " (self.money(ticket.rules.cash_step)) "." } }
            }
            @if let Some(reason) = &not_yet { p.reason { (reason) } }
            @if not_yet.is_none() && ways.contains(&Tender::Cash) {
                form.given method="post" action=(self.action("ring-up")) {
                    input type="hidden" name="total" value=(total);
                    input type="hidden" name="tender" value="cash";
                    p.label { "Or the cash that is given" }
                    (given_buttons(Texts::of(Lang::En), ticket.quote.currency, cash))
                }
            }
            (self.to_bill("Together with others, in parts, deposit"))
            (self.letting_go())
        }
    }

    fn letting_go(&self) -> Markup {
        html! { p.aside { a.button.quiet href=(self.action("let-go")) { "Let the ticket go" } } }
    }
}
