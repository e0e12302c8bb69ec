//! What every till shows and reads: the table's ways to pay, amounts, cash that was given and the change.

use maud::{Markup, html};
use rust_decimal::Decimal;

use crate::{
    desk::{refusal::Refusal, state::DeskState},
    ledger::Payment,
    money::{AmountError, Currency, Tender, change, given_suggestions, parse_price},
    quoting::quoted,
};

/// The way to pay called `name`, if the table takes it.
pub(super) fn way_called(desk: &DeskState, name: &str) -> Result<Tender, Refusal> {
    let ways = &desk.catalog.loaded().catalog.table.till.ways_to_pay;
    let way = Tender::called(name);
    if ways.contains(&way) {
        return Ok(way);
    }
    let known: Vec<&str> = ways.iter().map(Tender::name).collect();
    Err(Refusal::bad(format!("{} is no way to pay here; send one of {}", quoted(name), known.join(", "))))
}

/// An amount as somebody types it: with a point or a comma, in the table's currency; none where nothing is typed.
pub(super) fn amount_of(desk: &DeskState, typed: &str) -> Result<Option<Decimal>, Refusal> {
    let currency = desk.catalog.loaded().catalog.table.prices.currency;
    match amount_in(currency, typed) {
        None => Ok(None),
        Some(Ok(amount)) => Ok(Some(amount)),
        Some(Err(error)) => Err(Refusal::bad(error.to_string())),
    }
}

fn amount_in(currency: Currency, typed: &str) -> Option<Result<Decimal, AmountError>> {
    let typed = typed.trim();
    (!typed.is_empty()).then(|| typed_price(currency, typed))
}

/// A price as somebody types it, with a point or a comma.
pub(super) fn typed_price(currency: Currency, typed: &str) -> Result<Decimal, AmountError> {
    parse_price(&with_point(typed), currency)
}

/// A number as somebody types it, with a point for a comma.
pub(super) fn with_point(typed: &str) -> String {
    typed.trim().replacen(',', ".", 1)
}

/// The sign that stands for a way to pay, so that it is known at a glance.
pub(super) fn way_words(way: &Tender) -> String {
    match way {
        Tender::Cash => "Cash".to_owned(),
        Tender::Card => "Card".to_owned(),
        Tender::Named(name) => name.clone(),
    }
}

/// Buttons for the cash that is usually given for `due`, each of which is the whole answer.
pub(super) fn given_buttons(currency: Currency, due: Decimal) -> Markup {
    let usual: Vec<Decimal> = given_suggestions(due, currency).into_iter().filter(|given| *given > due).collect();
    html! {
        @if !usual.is_empty() {
            div.keypad.notes role="group" aria-label="Cash given" {
                @for given in usual {
                    button.quiet name="given" value=(given) { (currency.plain(given)) }
                }
            }
        }
    }
}

/// What the guest gets back, and in which notes and coins.
pub(super) fn change_words(currency: Currency, payment: &Payment) -> Markup {
    let back = payment.change().filter(|back| *back > Decimal::ZERO);
    let pieces = payment.given.and_then(|given| change(payment.amount, given, currency).ok());
    html! {
        @if let (Some(back), Some(given)) = (back, payment.given) {
            p.change-due data-change=(back) {
                "Given " (currency.plain(given)) ", change " strong.big { (currency.plain(back)) }
            }
            @if let Some(pieces) = pieces {
                p.faint {
                    @for (n, (worth, count)) in pieces.pieces.iter().enumerate() {
                        @if n > 0 { " · " }
                        (count) " × " (currency.plain(*worth))
                    }
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_are_read_as_they_are_typed() {
        let usd = Currency::from_code("USD").unwrap();
        let read = |text| amount_in(usd, text).map(|found| found.ok());
        assert_eq!(read(""), None);
        assert_eq!(read(" 8,50 "), Some(Some(Decimal::new(850, 2))));
        assert_eq!(read("8.5"), Some(Some(Decimal::new(85, 1))));
        for wrong in ["0", "-1", "8.505", "1,000.00", "eight"] {
            assert_eq!(read(wrong), Some(None), "{wrong}");
        }
    }
}
