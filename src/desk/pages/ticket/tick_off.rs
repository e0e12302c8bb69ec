//! The parts of a piece in the order of their trays: each picture is the button that ticks it off.

use maud::{Markup, html};

use super::view::{View, tick_sign};
use crate::{
    desk::pages::words,
    lang::say,
    ledger::{Part, TicketLine},
};

/// A part as its tile shows it.
struct Tile<'a> {
    part: Part,
    id: &'a str,
    picture: Markup,
    /// Where it lives, in big letters.
    home: String,
    price: String,
    /// What stands under its name.
    more: Option<String>,
    ticked: bool,
    held: bool,
}

impl View {
    /// The parts to tick off.
    pub(super) fn lines(&self) -> Markup {
        let (texts, ticket) = (self.texts, &self.ticket);
        let mut walk: Vec<(usize, &TicketLine)> = ticket.live_lines().collect();
        walk.sort_by_key(|(at, line)| (line.home, *at));
        let all = ticket.piece.drops.len() + 1;
        html! {
            section.card #parts aria-label=(say!(texts, "tick-title")) {
                div.head {
                    h2 { (say!(texts, "tick-title")) " "
                        span.tally { (say!(texts, "tick-tally", done = all - ticket.unticked(), all = all)) } }
                    @if self.open() && ticket.unticked() > 1 {
                        form method="post" action=(self.action("all-here")) data-repeats {
                            button { (say!(texts, "tick-all")) }
                        }
                    }
                }
                ol.parts {
                    (self.tile("base", &self.base_tile()))
                    @for (at, line) in walk { (self.tile(&format!("line-{at}"), &self.line_tile(at, line))) }
                    @for line in ticket.lines.iter().filter(|line| line.removed) {
                        li.part.off {
                            div.face {
                                (words::picture(texts, &self.loaded, &line.id))
                                s.name { (self.name(&line.id)) }
                            }
                            p.under { span.faint { (say!(texts, "tick-taken-off")) } }
                        }
                    }
                }
            }
        }
    }

    fn base_tile(&self) -> Tile<'_> {
        let (texts, ticket) = (self.texts, &self.ticket);
        let base = self.catalog().base(&ticket.piece.base);
        Tile {
            part: Part::Base,
            id: &ticket.piece.base,
            picture: html! { @if let Some(base) = base { (words::base_sign(&base.kind, base.finish)) } },
            home: say!(texts, "tick-base"),
            price: self.money(ticket.quote.base.price),
            more: None,
            ticked: ticket.base_ticked,
            held: ticket.base_held || ticket.cut_to_length,
        }
    }

    fn line_tile<'a>(&self, at: usize, line: &'a TicketLine) -> Tile<'a> {
        let texts = self.texts;
        Tile {
            part: Part::Line(at),
            id: &line.id,
            picture: words::picture(texts, &self.loaded, &line.id),
            home: line.home.to_string(),
            price: self.money(line.price),
            more: line.instead_of.as_ref().map(|before| say!(texts, "tick-instead", name = self.name(before))),
            ticked: line.ticked,
            held: line.held,
        }
    }

    fn tile(&self, place: &str, tile: &Tile<'_>) -> Markup {
        let texts = self.texts;
        let none_left =
            self.open() && !tile.held && !tile.ticked && self.counts.get(tile.id).is_none_or(|count| count.free() == 0);
        html! {
            li.part id=(place) .ticked[tile.ticked] .asks[none_left] {
                @if none_left { (self.asked(tile)) } @else { (self.tick(tile)) }
                p.under {
                    span { (tile.price) }
                    @if let (Part::Line(at), true) = (tile.part, self.open() && !tile.ticked) {
                        a.missing href={ (self.action("missing")) "/" (at) }
                            aria-label=(say!(texts, "tick-missing-of", name = self.name(tile.id))) { (say!(texts, "tick-missing")) }
                    } @else if let (Part::Base, Some(length)) = (tile.part, self.ticket.piece.length) {
                        span.faint { (words::length(texts, length)) }
                    }
                }
            }
        }
    }

    /// The picture as a button, and over it the tick once it is done.
    fn tick(&self, tile: &Tile<'_>) -> Markup {
        let texts = self.texts;
        html! {
            @if !self.open() {
                div.tick.done[tile.ticked] {
                    @if tile.ticked { span.box role="img" aria-label=(say!(texts, "tick-sign")) { (tick_sign()) } }
                    (self.face(tile))
                }
            } @else {
                form.tick-form method="post" action=(self.action("tick")) data-repeats {
                    input type="hidden" name="part" value=(field(tile.part));
                    @if tile.ticked {
                        button.tick.done data-switch name="on" value="0" aria-pressed="true" {
                            span.box { (tick_sign()) }
                            (self.face(tile))
                            span.unseen { ". " (say!(texts, "tick-title")) }
                        }
                    } @else {
                        button.tick data-switch name="on" value="1" aria-pressed="false" {
                            span.box {}
                            (self.face(tile))
                            span.unseen { ". " (say!(texts, "tick-title")) }
                        }
                    }
                }
            }
        }
    }

    fn face(&self, tile: &Tile<'_>) -> Markup {
        html! {
            span.home { (tile.home) } " "
            (tile.picture)
            span.name { (self.name(tile.id)) @if let Some(more) = &tile.more { " " small { (more) } } }
        }
    }

    /// Where the count says that none is left, the question.
    fn asked(&self, tile: &Tile<'_>) -> Markup {
        let (texts, name) = (self.texts, self.name(tile.id));
        html! {
            // Counting one more is not the same when it is said twice.
            form.tick-form method="post" action=(self.action("tick")) {
                input type="hidden" name="part" value=(field(tile.part));
                input type="hidden" name="found" value="1";
                div.face { (self.face(tile)) }
                div {
                    p.grave { (say!(texts, "tick-none-left")) }
                    button.tick.ask name="on" value="1" aria-label={ (say!(texts, "tick-here")) ", " (name) } {
                        (say!(texts, "tick-here"))
                    }
                }
            }
        }
    }
}

/// How a form names a part.
fn field(part: Part) -> String {
    match part {
        Part::Base => "base".to_owned(),
        Part::Line(at) => at.to_string(),
    }
}
