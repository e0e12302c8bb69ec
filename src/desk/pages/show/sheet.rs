//! What the pages of a running and of a closed show share: what it is, its sums, its cash, what was sold.

use std::collections::BTreeMap;

use maud::{Markup, html};
use rust_decimal::Decimal;

use crate::{
    bench::{SoldCosts, sold_costs},
    catalog::Catalog,
    craft::Sort,
    desk::{
        pages::words::{self, money},
        seller::Seller,
        state::DeskState,
    },
    lang::{Texts, say},
    ledger::{AboutShow, CloseOut, PartThen, Role, ShowEnd, ShowKind, SoldLine},
    money::{Currency, Reward, TaxRule},
};

/// A show with everything that its sheet tells.
pub(super) struct Sheet<'a> {
    pub texts: &'static Texts,
    pub sums: &'a CloseOut,
    pub currency: Currency,
    pub about: &'a AboutShow,
    /// What was noted when it was closed; the running one has nothing of it yet.
    pub end: Option<&'a ShowEnd>,
    /// What the host earns.
    pub reward: Option<&'a Reward>,
    pub catalog: &'a Catalog,
    /// What is in everything that was sold; none where it is not known, and for a helper.
    pub costs: Option<SoldCosts>,
}

/// What is in everything that was sold, for the seller alone; none where the workshop's file is not there or can't be read.
pub(super) fn costs(desk: &DeskState, seller: &Seller, catalog: &Catalog, sums: &CloseOut) -> Option<SoldCosts> {
    if seller.role != Role::Seller {
        return None;
    }
    sold_costs(catalog, desk.catalog.workshop(catalog).ok()?.as_ref(), sums)
}

/// An amount, where it could be made out.
pub(super) fn sum_words(texts: &Texts, currency: Currency, amount: Option<Decimal>) -> String {
    amount.map_or_else(|| say!(texts, "sums-too-large"), |amount| money(texts, amount, currency))
}

/// What a part was called when it was noted, translated where it is still called so.
pub(super) fn name_then(texts: &Texts, catalog: &Catalog, id: &str, noted: &str) -> String {
    let (drop, base) = (catalog.drop_kind(id), catalog.base(id));
    let now = drop.map(|kind| &kind.name).or_else(|| base.map(|base| &base.name));
    let is_same = now.is_some_and(|now| now == noted);
    if is_same { words::part_name(texts, catalog, id).into_owned() } else { noted.to_owned() }
}

/// What kind of event it is.
pub(super) fn kind_words(texts: &Texts, kind: ShowKind) -> String {
    texts.get(&format!("show-kind-{}", kind.code()))
}

/// A show's name: its number, and where it is.
pub(super) fn name_of(texts: &Texts, show: i64, about: &AboutShow) -> String {
    match &about.place {
        _ if about.kind == Some(ShowKind::Practice) => say!(texts, "show-practice"),
        Some(place) => say!(texts, "show-name-at", show = show, place = place.as_str()),
        None => say!(texts, "show-name", show = show),
    }
}

/// What a show is, in a line; nothing where nobody told.
pub(super) fn about_line(texts: &Texts, about: &AboutShow, currency: Currency) -> Option<String> {
    let kind = about.kind.map(|kind| words::capital(&kind_words(texts, kind)));
    let tax = about.tax.map(|tax| match tax {
        TaxRule::None => say!(texts, "show-no-tax"),
        TaxRule::Added { percent } | TaxRule::Included { percent } => {
            say!(texts, "show-tax", percent = texts.lang.number(percent.normalize()))
        }
    });
    let amount = |amount| money(texts, amount, currency);
    let float = about.float.map(|float| say!(texts, "show-float", amount = amount(float)));
    let fee = about.fee.map(|fee| say!(texts, "show-fee", amount = amount(fee)));
    let host = about.host.as_ref().map(|host| say!(texts, "show-host", host = host.as_str()));
    let told: Vec<String> = [kind, tax, float, fee, host].into_iter().flatten().collect();
    (!told.is_empty()).then(|| told.join(" · "))
}

/// The cash before and since the first sale, as rows of a list.
pub(super) fn cash_before(texts: &Texts, float: Option<Decimal>, moved: Decimal, currency: Currency) -> Markup {
    let float = float.map_or_else(|| say!(texts, "about-not-told"), |float| money(texts, float, currency));
    html! {
        dt { (say!(texts, "cash-before")) } dd { (float) }
        dt { (say!(texts, "cash-moved")) } dd { (money(texts, moved, currency)) }
    }
}

impl Sheet<'_> {
    /// What a part was: as it was noted, or as the catalogue has it now.
    fn part(&self, id: &str) -> PartThen {
        if let Some(then) = self.end.and_then(|end| end.parts.get(id)) {
            return PartThen { name: name_then(self.texts, self.catalog, id, &then.name), ..then.clone() };
        }
        let kind = self.catalog.drop_kind(id);
        PartThen {
            name: words::part_name(self.texts, self.catalog, id).into_owned(),
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

    fn money(&self, amount: Decimal) -> String {
        money(self.texts, amount, self.currency)
    }

    fn sum_words(&self, amount: Option<Decimal>) -> String {
        sum_words(self.texts, self.currency, amount)
    }

    fn sums(&self) -> Markup {
        let (texts, sums) = (self.texts, self.sums);
        html! {
            section.card aria-label=(say!(texts, "sums")) data-key="sums" {
                dl.sums {
                    (self.tickets())
                    (self.by_way())
                    dt { (say!(texts, "sums-tax")) } dd { (self.money(sums.tax)) }
                    @for (rate, at) in sums.tax_by_rate.rates() {
                        dt.under { (self.at_rate(rate, at.net)) } dd { (self.money(at.tax)) }
                    }
                    @if !sums.discounts.is_zero() {
                        dt { (say!(texts, "sums-discounts")) } dd { (self.money(sums.discounts)) }
                        @for (reason, amount) in &sums.given { dt.under { (reason) } dd { (self.money(*amount)) } }
                    }
                    @if sums.taken_back.times > 0 {
                        dt { (say!(texts, "sums-back", n = sums.taken_back.times)) }
                        dd { (self.money(sums.taken_back.totals)) }
                    }
                    @if sums.cash_rounding() != Some(Decimal::ZERO) {
                        dt { (say!(texts, "sums-rounding")) } dd { (self.sum_words(sums.cash_rounding())) }
                    }
                    dt.total { (say!(texts, "sums-taken")) } dd.total { (self.sum_words(sums.taken())) }
                    (self.other_shows())
                }
                @for one in &sums.set_apart {
                    p.grave {
                        (say!(texts, "sums-set-apart", number = one.number.to_string(), charged = one.charged.to_string()))
                    }
                }
            }
        }
    }

    fn tickets(&self) -> Markup {
        let (texts, sums) = (self.texts, self.sums);
        html! {
            dt { (say!(texts, "sums-rung-up")) } dd { (sums.sold) }
            dt { (say!(texts, "sums-let-go")) }
            dd {
                @if sums.let_go_now > 0 {
                    (say!(texts, "sums-let-go-closing", n = sums.let_go, closing = sums.let_go_now))
                } @else { (sums.let_go) }
            }
        }
    }

    fn by_way(&self) -> Markup {
        let (texts, sums) = (self.texts, self.sums);
        html! {
            dt { (say!(texts, "sums-cash")) } dd { (self.money(sums.cash)) }
            dt { (say!(texts, "sums-card")) } dd { (self.money(sums.card)) }
            @for (way, amount) in &sums.other_ways {
                dt { (say!(texts, "sums-way", way = way.as_str())) } dd { (self.money(*amount)) }
            }
            @if !sums.paid_out.is_zero() { dt { (say!(texts, "sums-paid-out")) } dd { (self.money(sums.paid_out)) } }
            @if !sums.owing.is_zero() { dt { (say!(texts, "sums-owing")) } dd { (self.money(sums.owing)) } }
        }
    }

    fn at_rate(&self, rate: Decimal, net: Decimal) -> String {
        say!(self.texts, "sums-rate", rate = self.texts.lang.number(rate), net = self.money(net))
    }

    /// What belongs to earlier shows, or to a later one.
    fn other_shows(&self) -> Markup {
        let (texts, sums) = (self.texts, self.sums);
        html! {
            @if sums.late.sold > 0 {
                dt { (say!(texts, "sums-late")) }
                dd { (say!(texts, "sums-late-tickets", n = sums.late.sold, amount = self.money(sums.late.taken))) }
            }
            @if sums.prepaid_kept > 0 {
                dt { (say!(texts, "sums-kept-open")) } dd { (say!(texts, "count-tickets", n = sums.prepaid_kept)) }
            }
            @if sums.late.let_go > 0 {
                dt { (say!(texts, "sums-let-go-earlier")) } dd { (sums.late.let_go) }
            }
        }
    }

    /// The cash that should be there, and the cash that is.
    fn cash(&self) -> Markup {
        let Some(end) = self.end else { return html! {} };
        let texts = self.texts;
        let counted = end.counted.map_or_else(|| say!(texts, "cash-not-counted"), |counted| self.money(counted));
        html! {
            section.card aria-label=(say!(texts, "cash-title")) data-key="cash" {
                h2 { (say!(texts, "cash-title")) }
                dl.sums {
                    (cash_before(texts, end.about.float, self.sums.cash, self.currency))
                    dt { (say!(texts, "cash-should-be")) } dd { (self.sum_words(end.should_be(self.sums))) }
                    dt.total { (say!(texts, "cash-counted")) } dd.total { (counted) }
                    @if end.counted.is_some() { (self.difference(end.difference(self.sums))) }
                }
            }
        }
    }

    fn difference(&self, difference: Option<Decimal>) -> Markup {
        let texts = self.texts;
        html! {
            @match difference {
                Some(none) if none.is_zero() => {
                    dt.good { (say!(texts, "cash-agrees")) } dd.good { (self.money(none)) }
                },
                Some(less) if less.is_sign_negative() => {
                    dt.grave { (say!(texts, "cash-missing")) } dd.grave { (self.money(less.abs())) }
                },
                Some(more) => { dt.grave { (say!(texts, "cash-too-much")) } dd.grave { (self.money(more)) } },
                None => { dt { (say!(texts, "cash-difference")) } dd { (self.sum_words(None)) } },
            }
        }
    }

    /// What is left for the maker, as far as it is known.
    fn earned(&self) -> Markup {
        if self.about.fee.is_none() && self.reward.is_none() && self.costs.is_none() {
            return html! {};
        }
        let (texts, fee) = (self.texts, self.about.fee.unwrap_or_default());
        let reward = match self.reward {
            Some(Reward::Amount(amount)) => *amount,
            _ => Decimal::ZERO,
        };
        let net = self.sums.totals.checked_sub(self.sums.tax);
        let costs = self.costs.clone().unwrap_or_default();
        let left = net.and_then(|net| costs.left_of(net, fee, reward));
        // With a cost that is not known, what is left is more than the profit.
        let is_profit = self.costs.is_some() && costs.without_cost == 0;
        html! {
            section.card aria-label=(say!(texts, "earned")) data-key="earned" {
                h2 { (say!(texts, "earned-title")) }
                dl.sums {
                    dt { (say!(texts, "earned-sold")) } dd { (self.sum_words(net)) }
                    @if self.costs.is_some() { dt { (say!(texts, "after-parts")) } dd { (self.cost_words(costs.parts)) } }
                    @if !fee.is_zero() { dt { (say!(texts, "earned-fee")) } dd { (self.money(-fee)) } }
                    @if let Some(reward) = self.reward {
                        dt { (say!(texts, "earned-reward")) } dd { (self.reward_words(reward)) }
                    }
                    dt.total { @if is_profit { (say!(texts, "earned-profit")) } @else { (say!(texts, "earned-left")) } }
                    dd.total { (left.map_or_else(|| self.sum_words(None), |left| self.money(self.rounded(left)))) }
                }
                @if is_profit {
                    p.faint { (say!(texts, "earned-profit-hint")) }
                } @else {
                    @if costs.without_cost > 0 { p.grave { (say!(texts, "after-without-cost", n = costs.without_cost)) } }
                    p.faint { (say!(texts, "earned-hint")) }
                }
            }
        }
    }

    /// What a cost takes from the sum: a unit's cost has more digits than money has.
    fn cost_words(&self, cost: Decimal) -> String {
        self.money(self.rounded(-cost))
    }

    fn rounded(&self, amount: Decimal) -> Decimal {
        amount.round_dp(self.currency.digits)
    }

    fn reward_words(&self, reward: &Reward) -> String {
        match reward {
            Reward::Amount(amount) => self.money(-amount),
            Reward::Pieces { count, up_to: None } => say!(self.texts, "count-free-pieces", n = *count),
            Reward::Pieces { count, up_to: Some(up_to) } => {
                say!(self.texts, "earned-pieces-up-to", n = *count, amount = self.money(*up_to))
            }
        }
    }

    /// Goods without a home.
    fn goods(&self) -> Markup {
        let texts = self.texts;
        html! {
            @if !self.sums.goods.is_empty() {
                section.card aria-label=(say!(texts, "bill-goods")) data-key="goods" {
                    h2 { (say!(texts, "bill-goods")) }
                    table {
                        thead { tr { th { (say!(texts, "sold-what")) } (self.sold_and_marked()) } }
                        tbody {
                            @for (name, line) in &self.sums.goods {
                                tr { td { (name) } td.figure { (line.count) } td.figure { (self.money(line.marked)) } }
                            }
                        }
                    }
                }
            }
        }
    }

    /// The headings of how many and for how much.
    fn sold_and_marked(&self) -> Markup {
        html! {
            th.figure { (say!(self.texts, "sold")) } th.figure { (say!(self.texts, "sold-marked")) }
        }
    }

    fn sold(&self) -> Markup {
        let texts = self.texts;
        let mut lines: Vec<(PartThen, &String, &SoldLine)> =
            self.sums.parts.iter().map(|(id, line)| (self.part(id), id, line)).collect();
        // Tray by tray, as one walks along the table; bases come first.
        lines.sort_by(|a, b| a.0.home.cmp(&b.0.home).then_with(|| a.1.cmp(b.1)));
        let back = &self.sums.taken_back.parts;
        let left = |id: &str| self.end.and_then(|end| end.left.get(id)).map(u32::to_string).unwrap_or_default();
        html! {
            @if !lines.is_empty() {
                section.card aria-label=(say!(texts, "sold")) data-key="sold" {
                    h2 { (say!(texts, "sold-title")) }
                    table {
                        thead { tr {
                            th { (say!(texts, "sold-home")) } th { (say!(texts, "sold-part")) }
                            th.figure { (say!(texts, "sold")) }
                            @if !back.is_empty() { th.figure { (say!(texts, "sold-back")) } }
                            @if self.end.is_some() { th.figure { (say!(texts, "sold-left")) } }
                            th.figure { (say!(texts, "sold-marked")) }
                        } }
                        tbody {
                            @for (part, id, line) in &lines {
                                tr data-key=(id) {
                                    td { (part.home.map(|home| home.to_string()).unwrap_or_default()) }
                                    td { (part.name) }
                                    td.figure { (line.count) }
                                    @if !back.is_empty() { td.figure { (back.get(*id).map_or(0, |back| back.count)) } }
                                    @if self.end.is_some() { td.figure { (left(id)) } }
                                    td.figure { (self.money(line.marked)) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    fn by_sort(&self) -> Markup {
        let texts = self.texts;
        let mut sorts: BTreeMap<Option<Sort>, SoldLine> = BTreeMap::new();
        for (id, line) in &self.sums.parts {
            let sum = sorts.entry(self.part(id).sort).or_default();
            sum.count += line.count;
            sum.marked = sum.marked.saturating_add(line.marked);
        }
        let word = |sort: &Option<Sort>| texts.get(&format!("sold-sort-{}", sort.map_or("base", Sort::name)));
        html! {
            @if !sorts.is_empty() {
                section.card aria-label=(say!(texts, "sold-by-sort")) data-key="sorts" {
                    h2 { (say!(texts, "sold-by-sort-title")) }
                    table {
                        thead { tr { th { (say!(texts, "sold-sort")) } (self.sold_and_marked()) } }
                        tbody {
                            @for (sort, line) in &sorts {
                                tr {
                                    td { (word(sort)) }
                                    td.figure { (line.count) }
                                    td.figure { (self.money(line.marked)) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}
