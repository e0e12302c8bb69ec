//! What the seller may do to the price by hand: packages, a reduction with its reason, lines for what has no home.

use maud::{Markup, html};
use rust_decimal::Decimal;

use super::view::View;
use crate::{
    desk::pages::words,
    lang::{Texts, say},
    money::Currency,
};

/// The keys of why something is taken off, as it is said most; common practice, no source.
const REASONS: [&str; 5] =
    ["price-reason-friend", "price-reason-flaw", "price-reason-several", "price-reason-host", "price-reason-round"];

impl View {
    /// The forms for the price, folded away until somebody needs them.
    pub(super) fn price(&self) -> Markup {
        let ticket = &self.ticket;
        html! {
            @if self.open() {
                details.card #price data-key="price" {
                    summary { (say!(self.texts, "price-title")) }
                    (self.packages())
                    (reduction_form(self.texts, &self.action("reduce"), ticket.quote.currency, ticket.quote.total, ticket.given.is_some()))
                    (self.without_home())
                }
            }
        }
    }

    fn packages(&self) -> Markup {
        let texts = self.texts;
        let packages = &self.catalog().table.till.packages;
        let taken = self.ticket.package.as_ref();
        html! {
            @if !packages.is_empty() || taken.is_some() {
                form.length method="post" action=(self.action("package")) data-repeats {
                    p.label { (say!(texts, "price-package")) }
                    div.keypad.notes {
                        @for package in packages {
                            button.quiet name="package" value=(package.name) aria-pressed=(Some(package) == taken)
                                .chosen[Some(package) == taken] {
                                (say!(texts, "price-package-of", name = package.name.as_str(), n = package.drops, price = self.money(package.price)))
                            }
                        }
                        @if taken.is_some() { button.quiet name="package" value="" { (say!(texts, "price-no-package")) } }
                    }
                }
            }
        }
    }

    /// What hangs on the piece and has no home.
    fn without_home(&self) -> Markup {
        let texts = self.texts;
        html! {
            form.length #plain method="post" action=(self.action("plain")) {
                p.label { (say!(texts, "price-without-home")) }
                div.row {
                    input.amount-of name="words" aria-label=(say!(texts, "price-what")) placeholder=(say!(texts, "price-what")) maxlength="80" required;
                    input.amount name="price" aria-label=(say!(texts, "price-its-price")) inputmode="decimal"
                        placeholder=(self.money(Decimal::ZERO)) maxlength="12" required;
                    button { (say!(texts, "price-add")) }
                }
            }
            @for (at, line) in self.ticket.plain.iter().enumerate() {
                form.row.plain-line method="post" action={ (self.action("plain")) "/" (at) "/off" } data-key={ "plain-" (at) } {
                    span { (line.words) " · " (self.money(line.price)) }
                    button.quiet aria-label=(say!(texts, "price-off", name = line.words.as_str())) { "×" }
                }
            }
        }
    }
}

/// The form that takes something off: to a round sum in one touch, percent, or an amount; all with one reason.
pub(in crate::desk::pages) fn reduction_form(
    texts: &Texts,
    action: &str,
    currency: Currency,
    total: Decimal,
    is_reduced: bool,
) -> Markup {
    html! {
        form.length #reduce method="post" action=(action) {
            label for="reason" { (say!(texts, "price-because")) }
            input #reason name="reason" list="reasons" maxlength="80" value=(texts.get(REASONS[0])) required;
            datalist #reasons { @for reason in REASONS { option value=(texts.get(reason)) {} } }
            div.keypad.notes {
                @for round in round_sums(currency, total) {
                    button.quiet name="to" value=(round) { (say!(texts, "price-to", sum = words::money(texts, round, currency))) }
                }
            }
            div.row {
                input.amount name="percent" aria-label=(say!(texts, "price-percent")) inputmode="decimal" placeholder="10" maxlength="6";
                button name="how" value="percent" { (say!(texts, "price-percent-off")) }
                input.amount name="amount" aria-label=(say!(texts, "price-amount")) inputmode="decimal" placeholder=(words::money(texts, Decimal::TWO, currency)) maxlength="12";
                button name="how" value="amount" { (say!(texts, "price-amount-off")) }
            }
            @if is_reduced { button.quiet name="how" value="none" formnovalidate { (say!(texts, "price-nothing-off")) } }
        }
    }
}

/// The round sums below `total` that are asked for most: the next whole one, the next five, the next ten of the largest coins'
/// worth. Common practice, no source.
fn round_sums(currency: Currency, total: Decimal) -> Vec<Decimal> {
    // A whole unit is what prices are rounded to: 1 dollar, 100 yen.
    let unit = if currency.digits == 0 { Decimal::ONE_HUNDRED } else { Decimal::ONE };
    let mut sums: Vec<Decimal> = [unit, unit * Decimal::from(5), unit * Decimal::TEN]
        .into_iter()
        .map(|step| (total / step).trunc() * step)
        .filter(|sum| *sum > Decimal::ZERO && *sum < total)
        .collect();
    sums.dedup();
    sums
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn round_sums_lie_below_the_total() {
        let usd = Currency::from_code("USD").unwrap();
        let yen = Currency::from_code("JPY").unwrap();
        let of = |currency, total: &str| -> Vec<String> {
            round_sums(currency, total.parse().unwrap()).iter().map(|sum| sum.normalize().to_string()).collect()
        };
        assert_eq!(of(usd, "23.50"), ["23", "20"]);
        assert_eq!(of(usd, "27.10"), ["27", "25", "20"]);
        assert_eq!(of(usd, "20"), Vec::<String>::new(), "it is round already");
        assert_eq!(of(usd, "0.50"), Vec::<String>::new());
        assert_eq!(of(yen, "2340"), ["2300", "2000"]);
    }
}
