//! What every till shows and reads: the table's ways to pay, amounts, cash that was given and the change.

use maud::{Markup, html};
use rust_decimal::Decimal;

use super::{
    inset::{HERE, inset},
    typed::{typed_price, unless_empty},
    words::money,
};
use crate::{
    desk::{money_words::amount_message, refusal::Refusal, state::DeskState},
    lang::{Texts, message, say},
    ledger::Payment,
    money::{Currency, Tender, change, given_suggestions},
    quoting::excerpt,
};

/// The way to pay called `name`, if the table takes it.
pub(super) fn way_called(desk: &DeskState, name: &str) -> Result<Tender, Refusal> {
    let ways = &desk.catalog.loaded().catalog.table.till.ways_to_pay;
    let way = Tender::called(name);
    if ways.contains(&way) {
        return Ok(way);
    }
    let known: Vec<&str> = ways.iter().map(Tender::name).collect();
    Err(Refusal::wrong(message!("refused-way", name = excerpt(name), ways = known.join(", "))))
}

/// An amount as somebody types it, in the table's currency; none where nothing is typed.
pub(super) fn amount_of(desk: &DeskState, typed: &str) -> Result<Option<Decimal>, Refusal> {
    let currency = desk.catalog.loaded().catalog.table.prices.currency;
    unless_empty(typed, |typed| typed_price(currency, typed)).map_err(|error| Refusal::wrong(amount_message(&error)))
}

/// The word that stands for a way to pay, so that it is known at a glance.
pub(super) fn way_words(texts: &Texts, way: &Tender) -> String {
    match way {
        Tender::Cash => say!(texts, "way-cash"),
        Tender::Card => say!(texts, "way-card"),
        Tender::Named(name) => name.clone(),
    }
}

/// How something was paid, in words that go on after an amount.
pub(super) fn paid_words(texts: &Texts, way: &Tender) -> String {
    match way {
        Tender::Cash => say!(texts, "paid-in-cash"),
        Tender::Card => say!(texts, "paid-by-card"),
        Tender::Named(name) => say!(texts, "paid-by-way", way = name.as_str()),
    }
}

/// Buttons for the cash that is usually given for `due`, each of which is the whole answer.
pub(super) fn given_buttons(texts: &Texts, currency: Currency, due: Decimal) -> Markup {
    let usual: Vec<Decimal> = given_suggestions(due, currency).into_iter().filter(|given| *given > due).collect();
    html! {
        @if !usual.is_empty() {
            div.keypad.notes role="group" aria-label=(say!(texts, "cash-given")) {
                @for given in usual {
                    button.quiet name="given" value=(given) { (money(texts, given, currency)) }
                }
            }
        }
    }
}

/// What the guest gets back, and in which notes and coins.
pub(super) fn change_words(texts: &Texts, currency: Currency, payment: &Payment) -> Markup {
    let back = payment.change().filter(|back| *back > Decimal::ZERO);
    let pieces = payment.given.and_then(|given| change(payment.amount, given, currency).ok());
    let money = |amount| money(texts, amount, currency);
    html! {
        @if let (Some(back), Some(given)) = (back, payment.given) {
            p.change-due data-change=(back) {
                (inset(&say!(texts, "change-due", given = money(given), change = HERE), &html! { strong.big { (money(back)) } }))
            }
            @if let Some(pieces) = pieces {
                p.faint {
                    @for (n, (worth, count)) in pieces.pieces.iter().enumerate() {
                        @if n > 0 { " · " }
                        (count) " × " (money(*worth))
                    }
                }
            }
        }
    }
}
