//! What the pages of a running and of a closed show share: what it is, its sums, its cash, what was sold.

use std::collections::BTreeMap;

use maud::{Markup, html};
use rust_decimal::Decimal;

use crate::{
    catalog::Catalog,
    craft::Sort,
    desk::pages::words,
    lang::{Lang, Texts, say},
    ledger::{AboutShow, CloseOut, PartThen, ShowEnd, ShowKind, SoldLine},
    money::{Currency, Reward, TaxRule},
};

/// A show with everything that its sheet tells.
pub(super) struct Sheet<'a> {
    pub sums: &'a CloseOut,
    pub currency: Currency,
    pub about: &'a AboutShow,
    /// What was noted when it was closed; the running one has nothing of it yet.
    pub end: Option<&'a ShowEnd>,
    /// What the host earns.
    pub reward: Option<&'a Reward>,
    pub catalog: &'a Catalog,
}

/// An amount, where it could be made out.
pub(super) fn plain(currency: Currency, amount: Option<Decimal>) -> String {
    amount.map_or_else(|| "too large to be added".to_owned(), |amount| currency.plain(amount))
}

/// A show's name: its number after the word `show`, and where it is.
pub(super) fn name_of(word: &str, show: i64, about: &AboutShow) -> String {
    match &about.place {
        _ if about.kind == Some(ShowKind::Practice) => "Practice".to_owned(),
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
            name: words::part_name(Texts::of(Lang::En), self.catalog, id).into_owned(),
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
            (self.goods())
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
                    @if !sums.paid_out.is_zero() { dt { "Of this paid out again" } dd { (currency.plain(sums.paid_out)) } }
                    @if !sums.owing.is_zero() { dt { "Paid for what is not sold yet" } dd { (currency.plain(sums.owing)) } }
                    dt { "Tax in it" } dd { (currency.plain(sums.tax)) }
                    @for (rate, at) in sums.tax_by_rate.rates() {
                        dt.under { (rate) " % on " (currency.plain(at.net)) } dd { (currency.plain(at.tax)) }
                    }
                    @if !sums.discounts.is_zero() {
                        dt { "Discounts and reductions given" } dd { (currency.plain(sums.discounts)) }
                        @for (reason, amount) in &sums.given { dt.under { (reason) } dd { (currency.plain(*amount)) } }
                    }
                    @if sums.taken_back.times > 0 {
                        dt { "Taken back, " (say!(Texts::of(Lang::En), "count-times", n = sums.taken_back.times as usize)) }
                        dd { (currency.plain(sums.taken_back.totals)) }
                    }
                    @if sums.cash_rounding() != Some(Decimal::ZERO) {
                        dt { "Cash rounding" } dd { (plain(currency, sums.cash_rounding())) }
                    }
                    dt.total { "Taken" } dd.total { (plain(currency, sums.taken())) }
                    @if sums.late.sold > 0 {
                        dt { "Of this late, from earlier shows" }
                        dd { (say!(Texts::of(Lang::En), "count-tickets", n = sums.late.sold as usize)) ", " (currency.plain(sums.late.taken)) }
                    }
                    @if sums.prepaid_kept > 0 {
                        dt { "Kept open, a part of them is paid" } dd { (say!(Texts::of(Lang::En), "count-tickets", n = sums.prepaid_kept as usize)) }
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
                    dt { "Came in, less what went out" } dd { (currency.plain(self.sums.cash)) }
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
        if self.about.fee.is_none() && self.reward.is_none() {
            return html! {};
        }
        let (currency, fee) = (self.currency, self.about.fee.unwrap_or_default());
        let reward = match self.reward {
            Some(Reward::Amount(amount)) => *amount,
            _ => Decimal::ZERO,
        };
        let net = self.sums.totals.checked_sub(self.sums.tax);
        let left = net.and_then(|net| net.checked_sub(fee)?.checked_sub(reward));
        html! {
            section.card aria-label="What is left" data-key="earned" {
                h2 { "After tax, fee and reward" }
                dl.sums {
                    dt { "Sold, without the tax" } dd { (plain(currency, net)) }
                    @if !fee.is_zero() { dt { "Stall fee" } dd { (currency.plain(-fee)) } }
                    @match self.reward {
                        Some(Reward::Amount(amount)) => { dt { "The host’s reward" } dd { (currency.plain(-amount)) } },
                        Some(Reward::Pieces { count, up_to }) => {
                            dt { "The host’s reward" }
                            dd {
                                (say!(Texts::of(Lang::En), "count-free-pieces", n = *count as usize))
                                @if let Some(up_to) = up_to { ", up to " (currency.plain(*up_to)) " each" }
                            }
                        },
                        None => {},
                    }
                    dt.total { "Left" } dd.total { (plain(currency, left)) }
                }
                p.faint { "The costs of the parts are not known, so this is not the profit." }
            }
        }
    }

    /// Goods without a home.
    fn goods(&self) -> Markup {
        html! {
            @if !self.sums.goods.is_empty() {
                section.card aria-label="Other goods" data-key="goods" {
                    h2 { "Other goods" }
                    table {
                        thead { tr { th { "What" } th.figure { "Sold" } th.figure { "As marked" } } }
                        tbody {
                            @for (name, line) in &self.sums.goods {
                                tr { td { (name) } td.figure { (line.count) } td.figure { (self.currency.plain(line.marked)) } }
                            }
                        }
                    }
                }
            }
        }
    }

    fn sold(&self) -> Markup {
        let mut lines: Vec<(PartThen, &String, &SoldLine)> =
            self.sums.parts.iter().map(|(id, line)| (self.part(id), id, line)).collect();
        // Tray by tray, as one walks along the table; bases come first.
        lines.sort_by(|a, b| a.0.home.cmp(&b.0.home).then_with(|| a.1.cmp(b.1)));
        let back = &self.sums.taken_back.parts;
        let left = |id: &str| self.end.and_then(|end| end.left.get(id)).map(u32::to_string).unwrap_or_default();
        html! {
            @if !lines.is_empty() {
                section.card aria-label="Sold" data-key="sold" {
                    h2 { "Sold, by home" }
                    table {
                        thead { tr {
                            th { "Home" } th { "Part" } th.figure { "Sold" }
                            @if !back.is_empty() { th.figure { "Back" } }
                            @if self.end.is_some() { th.figure { "Left" } }
                            th.figure { "As marked" }
                        } }
                        tbody {
                            @for (part, id, line) in &lines {
                                tr data-key=(id) {
                                    td { (part.home.map(|home| home.to_string()).unwrap_or_default()) }
                                    td { (part.name) }
                                    td.figure { (line.count) }
                                    @if !back.is_empty() { td.figure { (back.get(*id).map_or(0, |back| back.count)) } }
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
