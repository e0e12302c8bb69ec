//! The cautions on a ticket's page: what to tell the guest, and the way to sell a piece that is not for its wearer.

use std::borrow::Cow;

use maud::{Markup, html};

use super::view::{View, tick_sign};
use crate::{
    caution::Hazard,
    craft::Wearer,
    desk::pages::{caution_signs, words},
    lang::say,
};

impl View {
    /// What the guest has to be told, a card for each hazard.
    pub(super) fn cautions(&self) -> Markup {
        let (texts, ticket) = (self.texts, &self.ticket);
        if ticket.verdict.cautions.is_empty() {
            return html! {
                section.card aria-label=(say!(texts, "told-cautions")) {
                    h2 { (say!(texts, "told-cautions")) }
                    p { (say!(texts, "caution-none")) }
                    p.faint { (say!(texts, "caution-deferral")) }
                }
            };
        }
        html! {
            section.card #told aria-label=(say!(texts, "told-cautions")) {
                h2 { (say!(texts, "told-title")) }
                @if !ticket.verdict.suitable { (self.not_suitable()) }
                ul.cautions {
                    @for hazard in ticket.verdict.hazards() { (self.hazard(&hazard)) }
                }
                p.faint {
                    @if ticket.grown_up_confirmed { (say!(texts, "told-read-at-kiosk")) " " }
                    (say!(texts, "caution-deferral"))
                }
                @if self.open() {
                    form method="post" action=(self.action("told")) data-repeats {
                        @if ticket.told {
                            button.wide.done data-switch name="told" value="0" aria-pressed="true" { (tick_sign()) (say!(texts, "told-done")) }
                        } @else {
                            button.wide data-switch name="told" value="1" aria-pressed="false" { (say!(texts, "told-done")) }
                        }
                    }
                } @else if ticket.told {
                    p.good { (tick_sign()) " " (say!(texts, "told-was")) }
                }
            }
        }
    }

    /// That the piece is not for its wearer, and what of this table is.
    fn not_suitable(&self) -> Markup {
        let (texts, wearer) = (self.texts, self.ticket.piece.wearer);
        let forbidden = self.ticket.verdict.is_forbidden();
        html! {
            p.grave {
                strong {
                    @if forbidden { (say!(texts, "told-forbidden-piece")) }
                    @else if wearer == Wearer::Unknown { (say!(texts, "told-not-everyone")) }
                    @else { (say!(texts, "told-not-suitable", wearer = words::wearer(texts, wearer))) }
                }
            }
            @if self.open() && wearer != Wearer::Unknown && !forbidden {
                p { (say!(texts, "told-change-or-confirm")) " " (self.suiting(wearer)) }
            }
        }
    }

    /// What on this table suits the wearer and can be had, by name.
    fn suiting(&self, wearer: Wearer) -> String {
        let (texts, catalog) = (self.texts, self.catalog());
        let left = |id: &str| self.counts.get(id).is_some_and(|count| count.free() > 0);
        let drops = catalog.drops.iter().filter(|kind| left(&kind.id) && catalog.suits(kind, wearer));
        let bases = catalog.bases.iter().filter(|base| left(&base.id) && catalog.base_suits(base, wearer));
        let ids = bases.map(|base| base.id.as_str()).chain(drops.map(|kind| kind.id.as_str()));
        let names: Vec<Cow<'_, str>> = ids.map(|id| self.name(id)).collect();
        match names.len() {
            0 => say!(texts, "told-suits-nothing"),
            1..=6 => say!(texts, "told-suits", names = names.join(", ")),
            more => say!(texts, "told-suits-more", names = names[..5].join(", "), n = more - 5),
        }
    }

    /// One hazard: the parts it is about, what to say, and where it speaks against the piece, the way to sell it all the
    /// same.
    fn hazard(&self, hazard: &Hazard<'_>) -> Markup {
        let one = hazard.spokesman();
        let confirmed = self.ticket.confirmed.contains(&one.code);
        let texts = self.texts;
        let name = words::hazard(texts, one.code);
        let kind = one.drop.as_deref().and_then(|id| self.catalog().drop_kind(id));
        let base = self.catalog().base(&self.ticket.piece.base);
        let facts = kind.map(|kind| &kind.facts).or(base.map(|base| &base.facts));
        html! {
            li .grave-one[one.grave] {
                (caution_signs::of(one.code))
                div {
                    p.parts {
                        @if hazard.is_of_the_base() { span { (self.name(&self.ticket.piece.base)) } }
                        @for id in hazard.drops() {
                            span { (words::picture(texts, &self.loaded, id)) (self.name(id)) }
                        }
                    }
                    p { (texts.caution(one, self.catalog())) }
                    @if !one.seller.is_empty() {
                        p.seller { strong { (say!(texts, "seller-for-you")) " " } (texts.for_seller(one, facts)) }
                    }
                    p.faint { (texts.cited(one)) }
                    @if one.forbidden { p.grave { strong { (say!(texts, "told-never-sold")) } } }
                    @else if one.grave && self.open() {
                        form method="post" action=(self.action("confirm")) {
                            input type="hidden" name="code" value=(one.code.code());
                            @if confirmed {
                                button.wide.done name="on" value="0" aria-pressed="true" {
                                    (tick_sign()) (say!(texts, "told-grown-up", hazard = name))
                                }
                            } @else {
                                button.wide.quiet name="on" value="1" aria-pressed="false" {
                                    (say!(texts, "told-grown-up", hazard = name))
                                }
                            }
                        }
                    } @else if confirmed { p.good { (tick_sign()) " " (say!(texts, "told-grown-up-was", hazard = name)) } }
                }
            }
        }
    }
}
