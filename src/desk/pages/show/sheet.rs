//! What the pages of a running and of a closed show share: what it is, its sums, its cash, what was sold.

use std::collections::BTreeMap;

use maud::{Markup, html};
use rust_decimal::Decimal;

use super::super::words;
use crate::{
    catalog::Catalog,
    craft::Sort,
    ledger::{AboutShow, CloseOut, PartThen, ShowEnd, SoldLine},
    money::{Currency, TaxRule},
};

/// A show with everything that its sheet tells.
pub(super) struct Sheet<'a> {
    pub sums: &'a CloseOut,
    pub currency: Currency,
    pub about: &'a AboutShow,
    /// What was noted when it was closed; the running one has nothing of it yet.
    pub end: Option<&'a ShowEnd>,
    pub catalog: &'a Catalog,
}

/// An amount, where it could be made out.
pub(super) fn plain(currency: Currency, amount: Option<Decimal>) -> String {
    amount.map_or_else(|| "too large to be added".to_owned(), |amount| currency.plain(amount))
}

/// A show's name: its number after the word `show`, and where it is.
pub(super) fn name_of(word: &str, show: i64, about: &AboutShow) -> String {
    match &about.place {
        Some(place) => format!("{word} {show}, {place}"),
        None => format!("{word} {show}"),
    }
}

/// What a show is, in a line; nothing where nobody told.
pub(super) fn about_line(about: &AboutShow, currency: Currency) -> Option<String> {
    let kind = about.kind.map(|kind| words::capital(kind.word()));
    let tax = about.tax.map(|tax| match tax {
        TaxRule::None => "no tax here".to_owned(),
        TaxRule::Added { percent } | TaxRule::Included { percent } => format!("{} % tax here", percent.normalize()),
    });
    let amount =
        |words: &str, amount: Option<Decimal>| amount.map(|amount| format!("{words} {}", currency.plain(amount)));
    let host = about.host.as_ref().map(|host| format!("host: {host}"));
    let all = [kind, tax, amount("float", about.float), amount("stall fee", about.fee), host];
    let told: Vec<String> = all.into_iter().flatten().collect();
    (!told.is_empty()).then(|| told.join(" · "))
}

impl Sheet<'_> {
    /// What a part was: as it was noted, or as the catalogue has it now.
    fn part(&self, id: &str) -> PartThen {
        if let Some(then) = self.end.and_then(|end| end.parts.get(id)) {
            return then.clone();
        }
        let kind = self.catalog.drop_kind(id);
        PartThen {
            name: words::part_name(self.catalog, id).into_owned(),
            home: kind.map(|kind| kind.home),
            sort: kind.map(|kind| kind.sort),
        }
    }

    /// All of it.
    pub(super) fn markup(&self) -> Markup {
        html! {
            (self.sums())
            (self.cash())
            (self.earned())
            (self.sold())
            (self.by_sort())
        }
    }

    fn sums(&self) -> Markup {
        let (sums, currency) = (self.sums, self.currency);
        html! {
            section.card aria-label="Sums" data-key="sums" {
                dl.sums {
                    dt { "Tickets rung up" } dd { (sums.sold) }
                    dt { "Let go" }
                    dd { (sums.let_go) @if sums.let_go_now > 0 { ", " (sums.let_go_now) " of them at closing" } }
                    dt { "In cash" } dd { (currency.plain(sums.cash)) }
                    dt { "By card" } dd { (currency.plain(sums.card)) }
                    @for (way, amount) in &sums.other_ways { dt { "By " (way) } dd { (currency.plain(*amount)) } }
                    dt { "Tax in it" } dd { (currency.plain(sums.tax)) }
                    @if !sums.discounts.is_zero() { dt { "Discounts given" } dd { (currency.plain(sums.discounts)) } }
                    @if sums.cash_rounding() != Some(Decimal::ZERO) {
                        dt { "Cash rounding" } dd { (plain(currency, sums.cash_rounding())) }
                    }
                    dt.total { "Taken" } dd.total { (plain(currency, sums.taken())) }
                    @if sums.late.sold > 0 {
                        dt { "Of this late, from earlier shows" }
                        dd { (words::count(sums.late.sold as usize, "ticket")) ", " (currency.plain(sums.late.taken)) }
                    }
                    @if sums.late.let_go > 0 {
                        dt { "Let go, from earlier shows" } dd { (sums.late.let_go) }
                    }
                }
                @for one in &sums.set_apart {
                    p.grave {
                        "Ticket " (one.number) " was charged " (one.charged) ", which is in none of these sums: it is in another "
                        "currency, or no table takes as much."
                    }
                }
            }
        }
    }

    /// The cash that should be there, and the cash that is.
    fn cash(&self) -> Markup {
        let Some(end) = self.end else { return html! {} };
        let currency = self.currency;
        html! {
            section.card aria-label="Cash" data-key="cash" {
                h2 { "Cash" }
                dl.sums {
                    dt { "In the box before the first sale" }
                    dd { @match end.about.float { Some(float) => (currency.plain(float)), None => "not told" } }
                    dt { "Came in" } dd { (currency.plain(self.sums.cash)) }
                    dt { "Should be there" } dd { (plain(currency, end.should_be(self.sums))) }
                    @match end.counted {
                        Some(counted) => {
                            dt.total { "Counted" } dd.total { (currency.plain(counted)) }
                            @match end.difference(self.sums) {
                                Some(none) if none.is_zero() => { dt.good { "It agrees" } dd.good { (currency.plain(none)) } },
                                Some(less) if less.is_sign_negative() => {
                                    dt.grave { "Missing" } dd.grave { (currency.plain(less.abs())) }
                                },
                                Some(more) => { dt.grave { "Too much" } dd.grave { (currency.plain(more)) } },
                                None => { dt { "Difference" } dd { (plain(currency, None)) } },
                            }
                        },
                        None => { dt.total { "Counted" } dd.total { "not counted" } },
                    }
                }
            }
        }
    }

    /// What is left for the maker, as far as it is known.
    fn earned(&self) -> Markup {
        let Some(fee) = self.about.fee else { return html! {} };
        let left = self.sums.taken().and_then(|taken| taken.checked_sub(self.sums.tax)?.checked_sub(fee));
        html! {
            section.card aria-label="What is left" data-key="earned" {
                h2 { "After tax and fee" }
                dl.sums {
                    dt { "Taken, without the tax" }
                    dd { (plain(self.currency, self.sums.taken().and_then(|taken| taken.checked_sub(self.sums.tax)))) }
                    dt { "Stall fee" } dd { (self.currency.plain(-fee)) }
                    dt.total { "Left" } dd.total { (plain(self.currency, left)) }
                }
                p.faint { "The costs of the parts are not known, so this is not the profit." }
            }
        }
    }

    fn sold(&self) -> Markup {
        let mut lines: Vec<(PartThen, &String, &SoldLine)> =
            self.sums.parts.iter().map(|(id, line)| (self.part(id), id, line)).collect();
        // Tray by tray, as one walks along the table; bases come first.
        lines.sort_by(|a, b| a.0.home.cmp(&b.0.home).then_with(|| a.1.cmp(b.1)));
        let left = |id: &str| self.end.and_then(|end| end.left.get(id)).map(u32::to_string).unwrap_or_default();
        html! {
            @if !lines.is_empty() {
                section.card aria-label="Sold" data-key="sold" {
                    h2 { "Sold, by home" }
                    table {
                        thead { tr {
                            th { "Home" } th { "Part" } th.figure { "Sold" }
                            @if self.end.is_some() { th.figure { "Left" } }
                            th.figure { "As marked" }
                        } }
                        tbody {
                            @for (part, id, line) in &lines {
                                tr data-key=(id) {
                                    td { (part.home.map(|home| home.to_string()).unwrap_or_default()) }
                                    td { (part.name) }
                                    td.figure { (line.count) }
                                    @if self.end.is_some() { td.figure { (left(id)) } }
                                    td.figure { (self.currency.plain(line.marked)) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    fn by_sort(&self) -> Markup {
        let mut sorts: BTreeMap<Option<Sort>, SoldLine> = BTreeMap::new();
        for (id, line) in &self.sums.parts {
            let sum = sorts.entry(self.part(id).sort).or_default();
            sum.count += line.count;
            sum.marked = sum.marked.saturating_add(line.marked);
        }
        let word = |sort: Option<Sort>| sort.map_or("base", Sort::word);
        html! {
            @if !sorts.is_empty() {
                section.card aria-label="Sold by sort" data-key="sorts" {
                    h2 { "Sold, by sort" }
                    table {
                        thead { tr { th { "Sort" } th.figure { "Sold" } th.figure { "As marked" } } }
                        tbody {
                            @for (sort, line) in &sorts {
                                tr {
                                    td { (word(*sort)) }
                                    td.figure { (line.count) }
                                    td.figure { (self.currency.plain(line.marked)) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}
