//! What is on a bill: pieces, those that are gifts apart, and goods without a home; and what can be put onto it.

use maud::{Markup, html};
use rust_decimal::Decimal;

use super::view::View;
use crate::{
    desk::{
        gallery::PortraitSize,
        pages::{queue::portrait_address, words},
    },
    lang::{Lang, Texts, say},
    ledger::Ticket,
    ticket::State,
};

impl View {
    /// The pieces; where some are gifts, those apart with a sum of their own.
    pub(super) fn pieces(&self) -> Markup {
        let (gifts, own): (Vec<&Ticket>, Vec<&Ticket>) = self.tickets.iter().partition(|ticket| self.is_gift(ticket));
        html! {
            @if !own.is_empty() { ul.lines { @for ticket in own { (self.piece(ticket)) } } }
            @if !gifts.is_empty() {
                h2 { "Gifts, wrapped apart " span.tally { (self.money(gifts.iter().map(|gift| gift.quote.total).sum())) } }
                ul.lines { @for ticket in gifts { (self.piece(ticket)) } }
            }
        }
    }

    fn is_gift(&self, ticket: &Ticket) -> bool {
        self.bill.tickets.iter().any(|on| on.id == ticket.id && on.gift)
    }

    fn piece(&self, ticket: &Ticket) -> Markup {
        let gift = self.is_gift(ticket);
        let (width, height) = PortraitSize::Small.px();
        html! {
            li.line.billed data-key=(ticket.id) .off[ticket.state == State::TakenBack || ticket.state == State::LetGo] {
                a href={ "/tickets/" (ticket.id) } aria-label={ "to ticket " (ticket.number) } {
                    img.portrait src=(portrait_address(ticket, &self.loaded, PortraitSize::Small)) width=(width) height=(height)
                        alt="" loading="lazy";
                }
                div.what {
                    strong { a href={ "/tickets/" (ticket.id) } { (ticket.number) } }
                    p { (say!(Texts::of(Lang::En), "count-drops", n = ticket.piece.drops.len())) " · " (words::state(Texts::of(Lang::En), ticket.state)) }
                    @if let (true, Some(why)) = (ticket.state.is_open(), self.waits_for(ticket)) { p.grave { (why) } }
                }
                span.figure { (self.money(ticket.quote.total)) }
                div.acts {
                    form method="post" action=(self.action("gift")) data-repeats {
                        input type="hidden" name="ticket" value=(ticket.id);
                        button.quiet name="gift" value=(u8::from(!gift)) aria-pressed=(gift) { @if gift { "No gift" } @else { "Gift" } }
                    }
                    @if ticket.state.is_open() && !ticket.prepaid {
                        form method="post" action=(self.action("off")) {
                            input type="hidden" name="ticket" value=(ticket.id);
                            button.quiet aria-label={ "take " (ticket.number) " off the bill" } { "×" }
                        }
                    }
                    @if ticket.state.is_sold() {
                        a.button.quiet href={ (self.action("take-back")) "?ticket=" (ticket.id) } { "Take back" }
                    }
                }
            }
        }
    }

    /// What has to be done with a ticket before it can be paid.
    fn waits_for(&self, ticket: &Ticket) -> Option<String> {
        if ticket.unticked() > 0 {
            Some(format!("{} to tick off", say!(Texts::of(Lang::En), "count-parts", n = ticket.unticked())))
        } else if !ticket.verdict.cautions.is_empty() && !ticket.told {
            Some("tell the guest of the cautions".to_owned())
        } else if ticket.sum_doubt.is_some() {
            Some("say what is charged".to_owned())
        } else if !ticket.forbidden().is_empty() || !ticket.unconfirmed().is_empty() {
            Some("not for this wearer yet".to_owned())
        } else {
            None
        }
    }

    /// Goods without a home.
    pub(super) fn goods(&self) -> Markup {
        html! {
            @if self.bill.live_goods().next().is_some() {
                h2 { "Other goods" }
                ul.lines {
                    @for (at, goods) in self.bill.live_goods() {
                        li.line.billed data-key={ "goods-" (at) } {
                                            div.what { strong { (goods.line.words) } }
                            span.figure { (self.money(goods.line.price)) }
                            div.acts {
                                @if goods.sold.is_some() {
                                    a.button.quiet href={ (self.action("take-back")) "?goods=" (at) } { "Take back" }
                                } @else {
                                    form method="post" action={ (self.action("goods")) "/" (at) "/off" } {
                                        button.quiet aria-label={ "take off " (goods.line.words) } { "×" }
                                    }
                                }
                            }
                        }
                    }
                }
            }
            @if self.tickets.is_empty() && self.bill.live_goods().next().is_none() {
                p.faint { "Nothing is on it yet: add a ticket by its number, or goods with their price." }
            }
        }
    }

    /// What can be put onto it.
    pub(super) fn more(&self) -> Markup {
        html! {
            section.card data-key="more" aria-label="Add to the bill" {
                form.length method="post" action=(self.action("ticket")) {
                    label for="number" { "Add a ticket, by its number" }
                    div.row {
                        input #number name="number" inputmode="numeric" autocomplete="off" placeholder="3-042-6" maxlength="20" required;
                        button { "Add" }
                    }
                }
                form.length method="post" action=(self.action("goods")) {
                    p.label { "Add goods without a home" }
                    div.row {
                        input.amount-of name="words" aria-label="What it is" placeholder="Gift box" maxlength="80" required;
                        input.amount name="price" aria-label="Its price" inputmode="decimal" placeholder=(self.money(Decimal::TWO))
                            maxlength="12" required;
                        button { "Add" }
                    }
                }
            }
        }
    }
}
