//! Two people on one ticket: each sees that the other has it open, and what the other changed before the own act counts.

use std::ops::RangeInclusive;

use maud::{Markup, html};

use super::view::View;
use crate::{
    desk::{pages::words, signed_in::name_of},
    lang::say,
    ledger::Event,
};

/// Whether somebody else made an entry than who made the `own` ones. What the desk or a tablet enters by itself is nobody's.
pub(super) fn is_by_another(event: &Event, own: &[RangeInclusive<i64>]) -> bool {
    event.by.is_some() && !own.iter().any(|own| own.contains(&event.seq))
}

impl View {
    /// Who else has the ticket open. The page tells with each act which entry was the last that it shows.
    pub(super) fn together(&self) -> Markup {
        let texts = self.texts;
        let words = |name: &String| {
            if *name == self.own_name {
                say!(texts, "together-own")
            } else {
                say!(texts, "together-other", name = name_of(texts, name))
            }
        };
        html! {
            div.company role="status" data-key="company" data-seen=(self.history.last().map_or(0, |event| event.seq)) {
                @for name in &self.company { p { (words(name)) } }
            }
        }
    }

    /// What others did after entry `since`, apart from the reader's `own` entries.
    pub(super) fn changed(&self, since: i64, own: &[RangeInclusive<i64>]) -> Markup {
        let texts = self.texts;
        let others = |event: &&Event| event.seq > since && is_by_another(event, own);
        html! {
            div.trouble role="alert" {
                p { (say!(texts, "together-changed")) }
                ul {
                    @for event in self.history.iter().filter(others) {
                        li {
                            (words::clock(texts, event.at, self.now)) " " (self.happened(event))
                            @if let Some(by) = &event.by { " " (say!(texts, "history-by", name = name_of(texts, by))) }
                        }
                    }
                }
                p { (say!(texts, "together-look-again")) }
            }
        }
    }
}
