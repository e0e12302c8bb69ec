//! The form of a new sale: base, wearer and drops so far, the sum, and every tray with its pictures.

use std::{borrow::Cow, collections::BTreeMap};

use maud::{Markup, html};
use rust_decimal::Decimal;

use super::Draft;
use crate::{
    catalog::{Loaded, PieceError},
    craft::Wearer,
    desk::pages::{
        lengths::{choices, made_in},
        words,
    },
    lang::{Texts, say},
    ledger::{Count, LedgerError},
    money::Quote,
};

/// What the page is drawn from.
pub(super) struct View<'a> {
    pub(super) texts: &'static Texts,
    pub(super) loaded: &'a Loaded,
    pub(super) counts: &'a BTreeMap<String, Count>,
    pub(super) draft: &'a Draft<'a>,
    pub(super) sum: Result<Quote, PieceError>,
}

impl View<'_> {
    pub(super) fn content(&self, trouble: Option<(&str, bool)>) -> Markup {
        let texts = self.texts;
        let unknown = self.draft.unknown_words(texts);
        let words = trouble.map(|(words, _)| words).or(unknown.as_deref());
        let asks_count = trouble.is_some_and(|(_, is_count)| is_count);
        html! {
            h1 { (say!(texts, "sale-title")) }
            @if let Some(words) = words { p.trouble role="alert" { (words) } }
            form.new-sale method="get" action="/new" data-in-place {
                input type="hidden" name="id" value=(self.draft.id);
                div.bench {
                    section.card.so-far aria-label=(say!(texts, "ticket-piece")) {
                        (self.bases())
                        (self.lengths())
                        (self.wearers())
                        (self.so_far())
                        (self.typed())
                        (self.sum(asks_count))
                    }
                    div.work { (self.trays()) }
                }
                @if !asks_count { (self.foot()) }
            }
            form.card.find method="get" action="/new" {
                label for="from" { (say!(texts, "sale-begin-with")) }
                div.row {
                    input #from name="from" inputmode="numeric" autocomplete="off" placeholder="3-042-6" maxlength="120" required;
                    button.quiet { (say!(texts, "sale-take")) }
                }
            }
            form.aside method="post" action="/bills" {
                input type="hidden" name="id" value=(self.draft.id);
                button.quiet { (say!(texts, "sale-only-goods")) }
            }
        }
    }

    fn bases(&self) -> Markup {
        let texts = self.texts;
        html! {
            label for="base" { (say!(texts, "sale-base")) }
            div.row {
                select #base name="base" data-submits {
                    @for base in &self.loaded.catalog.bases {
                        option value=(base.id) selected[base.id == self.draft.base] {
                            (self.name(&base.id)) " · " (self.money(base.price)) " · " (self.left(&base.id))
                        }
                    }
                }
                button.no-script { (say!(texts, "sale-take")) }
            }
        }
    }

    /// How long the chain is; every length costs the same.
    fn lengths(&self) -> Markup {
        let (texts, base) = (self.texts, self.loaded.catalog.base(self.draft.base));
        html! {
            @if let (Some(base), Some(length)) = (base, self.draft.length) {
                label for="length" { (say!(texts, "ticket-length-free")) }
                div.row {
                    select #length name="length" data-submits { (choices(texts, &made_in(base), length)) }
                    button.no-script { (say!(texts, "sale-take")) }
                }
            }
        }
    }

    /// Who it is for, in one touch.
    fn wearers(&self) -> Markup {
        html! {
            input type="hidden" name="wearer" value=(self.draft.wearer.code());
            p.label #for-whom { (say!(self.texts, "sale-who")) }
            div.for-whom role="group" aria-labelledby="for-whom" {
                @for one in Wearer::ANSWERS {
                    button name="for" value=(one.code()) aria-pressed=(one == self.draft.wearer)
                        .chosen[one == self.draft.wearer] { (self.texts.get(&format!("sale-who-{}", one.code()))) }
                }
            }
        }
    }

    /// The drops so far, each with a way to take it off again.
    fn so_far(&self) -> Markup {
        let texts = self.texts;
        html! {
            ol.lines.chosen-drops {
                @for (at, kind) in self.draft.drops() {
                    li.line data-key={ (at) "-" (kind.id) } {
                        (words::picture(self.texts, self.loaded, &kind.id))
                        div.what { strong { (self.name(&kind.id)) } p { (self.money(kind.price)) } }
                        span.home { (kind.home) }
                        button.quiet name="off" value=(at) aria-label=(say!(texts, "price-off", name = self.name(&kind.id))) { "×" }
                    }
                }
            }
            @if self.draft.homes.is_empty() { p.faint { (say!(texts, "sale-none-yet")) } }
        }
    }

    /// The homes as text, and keys for them: the table's own letters and numbers.
    fn typed(&self) -> Markup {
        let texts = self.texts;
        html! {
            label for="homes" { (say!(texts, "sale-homes")) }
            div.row {
                input #homes name="homes" value=(self.draft.typed()) autocomplete="off" autocapitalize="characters"
                    spellcheck="false" placeholder="B3 B3 C10" maxlength="1200";
                // The first button is the one that Enter presses.
                button { (say!(texts, "sale-read")) }
            }
            div.keypad data-keypad="homes" hidden {
                @for tray in &self.loaded.catalog.trays { button.key type="button" data-key={ "letter-" (tray.letter) } { (tray.letter) } }
                @for digit in (1..=9).chain([0]) { button.key type="button" data-key={ "digit-" (digit) } { (digit) } }
                button.key type="button" data-key="rub-out" aria-label=(say!(texts, "sale-rub-out")) { "⌫" }
            }
        }
    }

    fn sum(&self, asks_count: bool) -> Markup {
        let texts = self.texts;
        html! {
            dl.sums {
                @match &self.sum {
                    Ok(quote) => {
                        @if !quote.discount.is_zero() { dt { (say!(texts, "sum-discount")) } dd { "−" (self.money(quote.discount)) } }
                        @if !quote.tax.is_zero() { dt { (say!(texts, "sum-tax")) } dd { (self.money(quote.tax)) } }
                        dt.total { (say!(texts, "sum-total")) } dd.total data-total { (self.money(quote.total)) }
                    }
                    Err(error) => {
                        dt { (say!(texts, "sale-no-sum")) }
                        dd { (words::trouble(texts, &LedgerError::from(error.clone()), &self.loaded.catalog)) }
                    }
                }
            }
            @if asks_count {
                button.main.wide formmethod="post" name="found" value="1" { (say!(texts, "sale-here")) }
            } @else {
                button.main.wide formmethod="post" disabled[self.sum.is_err()] { (say!(texts, "sale-to-till")) }
            }
        }
    }

    /// At the foot of a phone, while the trays fill its screen.
    fn foot(&self) -> Markup {
        html! {
            button.bar formmethod="post" disabled[self.sum.is_err()] {
                span { (say!(self.texts, "count-drops", n = self.draft.drops().count())) }
                span { (say!(self.texts, "sale-to-till")) }
                strong { @if let Ok(quote) = &self.sum { (self.money(quote.total)) } }
            }
        }
    }

    /// Every tray with its pictures, as they lie.
    fn trays(&self) -> Markup {
        let (texts, catalog) = (self.texts, &self.loaded.catalog);
        html! {
            @for tray in &self.loaded.catalog.trays {
                section.choices aria-label=(say!(texts, "sale-tray", letter = tray.letter.to_string())) {
                    h2 { span.letter { (tray.letter) } " " (words::tray_name(texts, catalog, tray)) }
                    div.by-picture {
                        @for (home, id) in tray.compartments() {
                            @if let Some(kind) = id.and_then(|id| self.loaded.catalog.drop_kind(id)) {
                                button.pick name="add" value=(home) aria-label={ (self.name(&kind.id)) ", " (home) ", " (self.money(kind.price)) } {
                                    (words::picture(self.texts, self.loaded, &kind.id))
                                    span.home { (home) }
                                    span { (self.money(kind.price)) }
                                    @if self.counts.get(&kind.id).is_none_or(|count| count.free() == 0) { span.faint { (say!(texts, "sale-none-left")) } }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    fn left(&self, id: &str) -> String {
        self.counts
            .get(id)
            .map_or_else(|| say!(self.texts, "sale-not-counted"), |count| words::free(self.texts, *count))
    }

    fn name(&self, id: &str) -> Cow<'_, str> {
        words::piece_name(self.texts, &self.loaded.catalog, id)
    }

    fn money(&self, amount: Decimal) -> String {
        words::money(self.texts, amount, self.loaded.catalog.table.prices.currency)
    }
}
