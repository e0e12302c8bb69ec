//! What happened to a ticket so far, in words, and the other tickets with its number.

use maud::{Markup, html};

use super::view::View;
use crate::{
    caution::CautionCode,
    craft::{Home, Wearer},
    desk::pages::words,
    lang::{Lang, Texts},
    ledger::{Charge, Event, Given, Part, SELLER},
    money::{Package, PlainLine, Reduction, Tender},
};

impl View {
    /// Numbers begin anew with every show.
    pub(super) fn same_number(&self) -> Markup {
        html! {
            @if !self.others.is_empty() {
                details.past data-key="others" {
                    summary { "Other tickets with this number" }
                    ul {
                        @for other in &self.others {
                            li { a href={ "/tickets/" (other.id) } { "of show " (other.show) ", " (other.state.word()) } }
                        }
                    }
                }
            }
        }
    }

    /// Every entry of the ledger about the ticket; and where several work here, or worked on it, whose it is.
    pub(super) fn past(&self) -> Markup {
        let is_told = !self.alone || self.history.iter().any(|event| event.by.as_ref().is_some_and(|by| by != SELLER));
        html! {
            details.past data-key="past" {
                summary { "What happened so far" }
                ol {
                    @for event in &self.history {
                        li {
                            span.faint { (words::clock(Texts::of(Lang::En), event.at, self.now)) } " " (self.happened(event))
                            @if let Some(by) = event.by.as_ref().filter(|_| is_told) { " – by " (by) }
                        }
                    }
                }
            }
        }
    }

    /// One entry in words. An entry of a kind that this version does not know is told by its name.
    fn happened(&self, event: &Event) -> String {
        let name = |id: &str| words::part_name(Texts::of(Lang::En), self.catalog(), id).into_owned();
        let line_name = |at: usize| self.ticket.lines.get(at).map(|line| name(&line.id)).unwrap_or_default();
        let part = |body: &serde_json::Value| match serde_json::from_value(body.clone()) {
            Ok((Part::Line(at), found)) => (line_name(at), found),
            Ok((Part::Base, found)) => (name(&self.ticket.piece.base), found),
            Err(_) => (String::new(), false),
        };
        match event.kind.as_str() {
            "sent" => "sent by the guest".to_owned(),
            "opened_by_hand" => "opened at the desk, for a piece threaded by hand".to_owned(),
            "all_ticked" => "all ticked off".to_owned(),
            "added" => match serde_json::from_value::<(String, bool)>(event.body.clone()) {
                Ok((id, true)) => format!("{} added, one more counted", name(&id)),
                Ok((id, false)) => format!("{} added", name(&id)),
                Err(_) => "a drop added".to_owned(),
            },
            "base_changed" => format!("base changed to {}", name(event.body.as_str().unwrap_or_default())),
            "called" => "called".to_owned(),
            "ticked" => match part(&event.body) {
                (name, true) => format!("{name}: ticked off, one more counted"),
                (name, false) => format!("{name}: ticked off"),
            },
            "unticked" => format!("{}: tick taken back", part(&event.body).0),
            "swapped" => match serde_json::from_value::<(usize, String)>(event.body.clone()) {
                Ok((_, to)) => format!("a drop swapped for {}", name(&to)),
                Err(_) => "a drop swapped".to_owned(),
            },
            "removed" => match serde_json::from_value(event.body.clone()) {
                Ok(at) => format!("{}: taken off", line_name(at)),
                Err(_) => "a drop taken off".to_owned(),
            },
            "length" => match serde_json::from_value(event.body.clone()) {
                Ok(length) => format!("made {}", words::length(Texts::of(Lang::En), length)),
                Err(_) => "another length".to_owned(),
            },
            "judged" => "the catalogue changed, and with it the cautions".to_owned(),
            "wearer" => match serde_json::from_value(event.body.clone()) {
                Ok(Wearer::Unknown) => "nobody knows who it is for".to_owned(),
                Ok(one) => format!("it is {}", words::wearer(Texts::of(Lang::En), one)),
                Err(_) => "for somebody else".to_owned(),
            },
            "sold_for_grown_up" => match serde_json::from_value::<(CautionCode, bool)>(event.body.clone()) {
                Ok((code, true)) => format!("sold for a grown-up: {}", code.words()),
                Ok((code, false)) => format!("not sold for a grown-up after all: {}", code.words()),
                Err(_) => "sold for a grown-up".to_owned(),
            },
            "sum_confirmed" => match serde_json::from_value::<Charge>(event.body.clone()) {
                Ok(Charge::Today) => "today’s prices are charged".to_owned(),
                Ok(Charge::AsSeen) | Err(_) => "the sum that the guest saw is charged".to_owned(),
            },
            "told" if event.body == true => "the guest was told of the cautions".to_owned(),
            "told" => "not told of the cautions after all".to_owned(),
            "rung_up" => match serde_json::from_value::<Tender>(event.body.clone()) {
                Ok(tender) => format!("rung up, paid {}", tender.words()),
                Err(_) => "rung up".to_owned(),
            },
            "handed_over" => "handed over".to_owned(),
            "let_go" => "let go".to_owned(),
            "hold_ended" => "what was not ticked off is not held any more: it waited too long".to_owned(),
            "hold_shortened" => "held no longer than usual: it came while the clock was ahead".to_owned(),
            other => self.of_price(event).unwrap_or_else(|| other.replace('_', " ")),
        }
    }

    /// What happened to the price, and what was taken back.
    fn of_price(&self, event: &Event) -> Option<String> {
        let name = |id: &str| words::part_name(Texts::of(Lang::En), self.catalog(), id).into_owned();
        Some(match event.kind.as_str() {
            "reduced" => match serde_json::from_value::<Option<Given>>(event.body.clone()) {
                Ok(Some(given)) => format!("{}, {}", reduced(&given.reduction), given.reason),
                Ok(None) => "nothing taken off by hand any more".to_owned(),
                Err(_) => "something taken off by hand".to_owned(),
            },
            "package" => match serde_json::from_value::<Option<Package>>(event.body.clone()) {
                Ok(Some(package)) => format!("package: {}", package.name),
                Ok(None) | Err(_) => "no package".to_owned(),
            },
            "plain_added" => match serde_json::from_value::<PlainLine>(event.body.clone()) {
                Ok(line) => format!("{} added, without a home", line.words),
                Err(_) => "something without a home added".to_owned(),
            },
            "plain_removed" => "something without a home taken off".to_owned(),
            "taken_back" => match serde_json::from_value::<(bool, String)>(event.body.clone()) {
                Ok((true, reason)) => format!("taken back, the parts are in their homes: {reason}"),
                Ok((false, reason)) => format!("taken back, the parts are gone: {reason}"),
                Err(_) => "taken back".to_owned(),
            },
            "line_taken_back" => {
                match serde_json::from_value::<(usize, String, Home, bool, String)>(event.body.clone()) {
                    Ok((_, id, home, true, reason)) => format!("{} taken back into {home}: {reason}", name(&id)),
                    Ok((_, id, _, false, reason)) => format!("{} taken back, and gone: {reason}", name(&id)),
                    Err(_) => "a drop taken back".to_owned(),
                }
            }
            _ => return None,
        })
    }
}

/// What was taken off, in words.
fn reduced(reduction: &Reduction) -> String {
    match reduction {
        Reduction::Percent(percent) => format!("{} % taken off", percent.normalize()),
        Reduction::Amount(amount) => format!("{amount} taken off"),
        Reduction::ToSum(sum) => format!("down to {sum}"),
    }
}
