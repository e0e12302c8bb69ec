//! What is on a bill: pieces, those that are gifts apart, and goods without a home; and what can be put onto it.

use maud::{Markup, html};
use rust_decimal::Decimal;

use super::view::View;
use crate::{
    desk::pages::{queue::thumbnail, words},
    lang::say,
    ledger::Ticket,
    ticket::State,
};

impl View {
    /// The pieces; where some are gifts, those apart with a sum of their own.
    pub(super) fn pieces(&self) -> Markup {
        let (gifts, own): (Vec<&Ticket>, Vec<&Ticket>) = self.tickets.iter().partition(|ticket| self.is_gift(ticket));
        let worth = gifts.iter().map(|gift| gift.quote.total).sum();
        html! {
            @if !own.is_empty() { ul.lines { @for ticket in own { (self.piece(ticket)) } } }
            @if !gifts.is_empty() {
                h2 { (say!(self.texts, "bill-gifts")) " " span.tally { (self.money(worth)) } }
                ul.lines { @for ticket in gifts { (self.piece(ticket)) } }
            }
        }
    }

    fn is_gift(&self, ticket: &Ticket) -> bool {
        self.bill.tickets.iter().any(|on| on.id == ticket.id && on.gift)
    }

    fn piece(&self, ticket: &Ticket) -> Markup {
        let (texts, gift, number) = (self.texts, self.is_gift(ticket), ticket.number.to_string());
        html! {
            li.line.billed data-key=(ticket.id) .off[ticket.state == State::TakenBack || ticket.state == State::LetGo] {
                a href={ "/tickets/" (ticket.id) } aria-label=(say!(texts, "bill-to-ticket", number = number.as_str())) {
                    (thumbnail(ticket, &self.loaded))
                }
                div.what {
                    strong { a href={ "/tickets/" (ticket.id) } { (number) } }
                    p { (say!(texts, "count-drops", n = ticket.piece.drops.len())) " · " (words::state(texts, ticket.state)) }
                    @if let (true, Some(why)) = (ticket.state.is_open(), self.waits_for(ticket)) { p.grave { (why) } }
                }
                span.figure { (self.money(ticket.quote.total)) }
                div.acts {
                    form method="post" action=(self.action("gift")) data-repeats {
                        input type="hidden" name="ticket" value=(ticket.id);
                        button.quiet name="gift" value=(u8::from(!gift)) aria-pressed=(gift) {
                            (if gift { say!(texts, "bill-no-gift") } else { say!(texts, "bill-gift") })
                        }
                    }
                    @if ticket.state.is_open() && !ticket.prepaid {
                        form method="post" action=(self.action("off")) {
                            input type="hidden" name="ticket" value=(ticket.id);
                            button.quiet aria-label=(say!(texts, "bill-ticket-off", number = number.as_str())) { "×" }
                        }
                    }
                    @if ticket.state.is_sold() {
                        a.button.quiet href={ (self.action("take-back")) "?ticket=" (ticket.id) } { (say!(texts, "bill-take-back")) }
                    }
                }
            }
        }
    }

    /// What has to be done with a ticket before it can be paid.
    fn waits_for(&self, ticket: &Ticket) -> Option<String> {
        if ticket.unticked() > 0 {
            Some(say!(self.texts, "bill-parts-to-tick", n = ticket.unticked()))
        } else if !ticket.verdict.cautions.is_empty() && !ticket.told {
            Some(say!(self.texts, "bill-tell-cautions"))
        } else if ticket.sum_doubt.is_some() {
            Some(say!(self.texts, "bill-say-sum"))
        } else if !ticket.forbidden().is_empty() || !ticket.unconfirmed().is_empty() {
            Some(say!(self.texts, "bill-not-for-wearer"))
        } else {
            None
        }
    }

    /// Goods without a home.
    pub(super) fn goods(&self) -> Markup {
        let texts = self.texts;
        html! {
            @if self.bill.live_goods().next().is_some() {
                h2 { (say!(texts, "bill-goods")) }
                ul.lines {
                    @for (at, goods) in self.bill.live_goods() {
                        li.line.billed data-key={ "goods-" (at) } {
                            div.what { strong { (goods.line.words) } }
                            span.figure { (self.money(goods.line.price)) }
                            div.acts {
                                @if goods.sold.is_some() {
                                    a.button.quiet href={ (self.action("take-back")) "?goods=" (at) } {
                                        (say!(texts, "bill-take-back"))
                                    }
                                } @else {
                                    form method="post" action={ (self.action("goods")) "/" (at) "/off" } {
                                        button.quiet aria-label=(say!(texts, "bill-goods-off", words = goods.line.words.as_str())) { "×" }
                                    }
                                }
                            }
                        }
                    }
                }
            }
            @if self.tickets.is_empty() && self.bill.live_goods().next().is_none() {
                p.faint { (say!(texts, "bill-empty")) }
            }
        }
    }

    /// What can be put onto it.
    pub(super) fn more(&self) -> Markup {
        let texts = self.texts;
        html! {
            section.card data-key="more" aria-label=(say!(texts, "bill-more")) {
                form.length method="post" action=(self.action("ticket")) {
                    label for="number" { (say!(texts, "bill-add-ticket")) }
                    div.row {
                        input #number name="number" inputmode="numeric" autocomplete="off" placeholder="3-042-6" maxlength="120" required;
                        button { (say!(texts, "bill-add")) }
                    }
                }
                form.length method="post" action=(self.action("goods")) {
                    p.label { (say!(texts, "bill-add-goods")) }
                    div.row {
                        input.amount-of name="words" aria-label=(say!(texts, "bill-goods-what"))
                            placeholder=(say!(texts, "bill-goods-example")) maxlength="80" required;
                        input.amount name="price" aria-label=(say!(texts, "bill-goods-price")) inputmode="decimal"
                            placeholder=(self.money(Decimal::TWO)) maxlength="12" required;
                        button { (say!(texts, "bill-add")) }
                    }
                }
            }
        }
    }
}
