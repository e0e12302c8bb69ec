//! The cautions on a ticket's page: what to tell the guest, and the way to sell a piece that is not for its wearer.

use maud::{Markup, html};

use super::view::{View, tick_sign};
use crate::{
    caution::{DEFERRAL, Hazard},
    craft::Wearer,
    desk::pages::{caution_signs, words},
    lang::{Lang, Texts},
};

impl View {
    /// What the guest has to be told, a card for each hazard.
    pub(super) fn cautions(&self) -> Markup {
        let ticket = &self.ticket;
        if ticket.verdict.cautions.is_empty() {
            return html! {
                section.card aria-label="Cautions" {
                    h2 { "Cautions" }
                    p { "Nothing to be careful about was found." }
                    p.faint { (DEFERRAL) }
                }
            };
        }
        html! {
            section.card #told aria-label="Cautions" {
                h2 { "Tell the guest" }
                @if !ticket.verdict.suitable { (self.not_suitable()) }
                ul.cautions {
                    @for hazard in ticket.verdict.hazards() { (self.hazard(&hazard)) }
                }
                p.faint {
                    @if ticket.grown_up_confirmed { "A grown-up confirmed at the kiosk that they had read them. " }
                    (DEFERRAL)
                }
                @if self.open() {
                    form method="post" action=(self.action("told")) data-repeats {
                        @if ticket.told {
                            button.wide.done data-switch name="told" value="0" aria-pressed="true" { (tick_sign()) "The guest was told" }
                        } @else {
                            button.wide data-switch name="told" value="1" aria-pressed="false" { "The guest was told" }
                        }
                    }
                } @else if ticket.told {
                    p.good { (tick_sign()) " The guest was told." }
                }
            }
        }
    }

    /// That the piece is not for its wearer, and what of this table is.
    fn not_suitable(&self) -> Markup {
        let wearer = self.ticket.piece.wearer;
        let forbidden = self.ticket.verdict.is_forbidden();
        html! {
            p.grave {
                strong {
                    @if forbidden { "A part of this piece may not be sold to anybody. Take it off the piece." }
                    @else if wearer == Wearer::Unknown {
                        "This piece does not suit everyone, and nobody said who it is for."
                    } @else { "This piece is not suitable: " (words::wearer(Texts::of(Lang::En), wearer)) "." }
                }
            }
            @if self.open() && wearer != Wearer::Unknown && !forbidden {
                p {
                    "Change the piece or who it is for, or confirm each hazard below by its name: it is then sold for a \
                     grown-up, and the ledger keeps that. "
                    (self.suiting(wearer))
                }
            }
        }
    }

    /// What on this table suits the wearer and can be had, by name.
    fn suiting(&self, wearer: Wearer) -> String {
        let catalog = self.catalog();
        let left = |id: &str| self.counts.get(id).is_some_and(|count| count.free() > 0);
        let drops = catalog.drops.iter().filter(|kind| left(&kind.id) && catalog.suits(kind, wearer));
        let bases = catalog.bases.iter().filter(|base| left(&base.id) && catalog.base_suits(base, wearer));
        let names: Vec<&str> =
            bases.map(|base| base.name.as_str()).chain(drops.map(|kind| kind.name.as_str())).collect();
        match names.len() {
            0 => "Nothing on this table suits.".to_owned(),
            1..=6 => format!("On this table suit: {}.", names.join(", ")),
            more => format!("On this table suit: {} and {} more.", names[..5].join(", "), more - 5),
        }
    }

    /// One hazard: the parts it is about, what to say, and where it speaks against the piece, the way to sell it all the
    /// same.
    fn hazard(&self, hazard: &Hazard<'_>) -> Markup {
        let one = hazard.spokesman();
        let confirmed = self.ticket.confirmed.contains(&one.code);
        let name = one.code.words();
        html! {
            li .grave-one[one.grave] {
                (caution_signs::of(one.code))
                div {
                    p.parts {
                        @if hazard.is_of_the_base() { span { (words::part_name(Texts::of(Lang::En), self.catalog(), &self.ticket.piece.base)) } }
                        @for id in hazard.drops() {
                            span { (words::picture(Texts::of(Lang::En), &self.loaded, id)) (words::part_name(Texts::of(Lang::En), self.catalog(), id)) }
                        }
                    }
                    p { (one.text) }
                    @if !one.seller.is_empty() { p.seller { strong { "For you: " } (one.seller) } }
                    p.faint { (one.cited()) }
                    @if one.forbidden { p.grave { strong { "It may not be sold to anybody." } } }
                    @else if one.grave && self.open() {
                        form method="post" action=(self.action("confirm")) {
                            input type="hidden" name="code" value=(one.code.code());
                            @if confirmed {
                                button.wide.done name="on" value="0" aria-pressed="true" {
                                    (tick_sign()) "Sold for a grown-up: " (name)
                                }
                            } @else {
                                button.wide.quiet name="on" value="1" aria-pressed="false" {
                                    "Sold for a grown-up: " (name)
                                }
                            }
                        }
                    } @else if confirmed { p.good { (tick_sign()) " Sold for a grown-up: " (name) "." } }
                }
            }
        }
    }
}
