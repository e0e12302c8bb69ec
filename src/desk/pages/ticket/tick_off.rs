//! The parts of a piece in the order of their trays, each with its tick.

use maud::{Markup, html};

use super::view::{View, tick_sign};
use crate::{
    desk::pages::words,
    lang::{Lang, Texts},
    ledger::{Part, TicketLine},
};

impl View {
    /// The list to tick off.
    pub(super) fn lines(&self) -> Markup {
        let ticket = &self.ticket;
        let mut walk: Vec<(usize, &TicketLine)> = ticket.live_lines().collect();
        walk.sort_by_key(|(at, line)| (line.home, *at));
        html! {
            section.card aria-label="Tick off" data-key="parts" {
                h2 { "Tick off " span.tally { (ticket.piece.drops.len() + 1 - ticket.unticked()) " of " (ticket.piece.drops.len() + 1) } }
                @if self.open() && ticket.unticked() > 1 {
                    form method="post" action=(self.action("all-here")) data-repeats { button.main.wide { "All here" } }
                }
                ol.lines {
                    (self.base_line())
                    @for (at, line) in walk { (self.line(at, line)) }
                    @for line in ticket.lines.iter().filter(|line| line.removed) {
                        li.line.off {
                            (words::picture(Texts::of(Lang::En), &self.loaded, &line.id))
                            div.what { s { (words::part_name(Texts::of(Lang::En), self.catalog(), &line.id)) } p.faint { "taken off" } }
                        }
                    }
                }
            }
        }
    }

    /// Another drop onto the piece, by its home; another base under it.
    pub(super) fn more(&self) -> Markup {
        let bases = &self.catalog().bases;
        let now = &self.ticket.piece.base;
        html! {
            @if self.open() {
                section.card data-key="more" aria-label="Change the piece" {
                    form.length #add method="post" action=(self.action("add")) {
                        label for="home" { "Add a drop, by its home" }
                        div.row {
                            input #home name="home" autocomplete="off" autocapitalize="characters" spellcheck="false"
                                placeholder="B3" maxlength="8" required;
                            button { "Add" }
                        }
                    }
                    form.length #other-base method="post" action=(self.action("base")) data-repeats {
                        label for="other" { "Base; the drops stay" }
                        div.row {
                            select #other name="base" data-submits {
                                @if self.catalog().base(now).is_none() { option value=(now) selected { (now) } }
                                @for base in bases {
                                    option value=(base.id) selected[base.id == *now] { (base.name) " · " (self.money(base.price)) }
                                }
                            }
                            button.no-script { "Set" }
                        }
                    }
                }
            }
        }
    }

    fn base_line(&self) -> Markup {
        let ticket = &self.ticket;
        let base = self.catalog().base(&ticket.piece.base);
        html! {
            li.line #base .ticked[ticket.base_ticked] {
                @if let Some(base) = base { (words::base_sign(&base.kind, base.finish)) }
                div.what {
                    strong { (words::part_name(Texts::of(Lang::En), self.catalog(), &ticket.piece.base)) }
                    p {
                        (self.money(ticket.quote.base.price))
                        @if let Some(length) = ticket.piece.length { " · " (words::length(Texts::of(Lang::En), length)) }
                    }
                }
                span.home { "base" }
                (self.tick(Part::Base, &ticket.piece.base, ticket.base_ticked, ticket.base_held))
            }
        }
    }

    fn line(&self, at: usize, line: &TicketLine) -> Markup {
        html! {
            li.line id={ "line-" (at) } .ticked[line.ticked] {
                (words::picture(Texts::of(Lang::En), &self.loaded, &line.id))
                div.what {
                    strong { (words::part_name(Texts::of(Lang::En), self.catalog(), &line.id)) }
                    @if let Some(before) = &line.instead_of {
                        p.faint { "instead of " (words::part_name(Texts::of(Lang::En), self.catalog(), before)) }
                    }
                    p.cost {
                        (self.money(line.price))
                        @if self.open() && !line.ticked {
                            a.missing href={ (self.action("missing")) "/" (at) } { "Missing?" }
                        }
                    }
                }
                span.home { (line.home) }
                (self.tick(Part::Line(at), &line.id, line.ticked, line.held))
            }
        }
    }

    /// The big tick; where the count says that none is left, the question instead.
    fn tick(&self, part: Part, id: &str, ticked: bool, held: bool) -> Markup {
        let name = words::part_name(Texts::of(Lang::En), self.catalog(), id);
        let field = match part {
            Part::Base => "base".to_owned(),
            Part::Line(at) => at.to_string(),
        };
        let none_left = !held && !ticked && self.counts.get(id).is_none_or(|count| count.free() == 0);
        html! {
            @if !self.open() {
                @if ticked { span.tick.done role="img" aria-label="ticked off" { (tick_sign()) } }
            } @else {
                // Counting one more is not the same when it is said twice.
                form.tick-form method="post" action=(self.action("tick")) data-repeats[!none_left] {
                    input type="hidden" name="part" value=(field);
                    @if none_left {
                        input type="hidden" name="found" value="1";
                        button.tick.ask name="on" value="1" aria-label={ (name) " is here: count one more" } {
                            "It is here: count one more"
                        }
                        p.grave { "The count says none is left." }
                    } @else if ticked {
                        button.tick.done data-switch name="on" value="0" aria-pressed="true" aria-label={ (name) ", ticked off" } { (tick_sign()) }
                    } @else {
                        button.tick data-switch name="on" value="1" aria-pressed="false" aria-label={ "tick off " (name) } { (tick_sign()) }
                    }
                }
            }
        }
    }
}
