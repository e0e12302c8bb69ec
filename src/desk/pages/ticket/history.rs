//! What happened to a ticket so far, in words, and the other tickets with its number.

use maud::{Markup, html};
use serde::de::DeserializeOwned;

use super::view::View;
use crate::{
    caution::CautionCode,
    craft::{Home, Wearer},
    desk::{pages::words, signed_in::name_of},
    lang::say,
    ledger::{Charge, Event, Given, Listed, Part, SELLER},
    money::{Package, PlainLine, Reduction, Tender},
};

impl View {
    /// Numbers begin anew with every show.
    pub(super) fn same_number(&self) -> Markup {
        let texts = self.texts;
        let words = |other: &Listed| {
            say!(texts, "history-other", show = other.show, state = words::state_word(texts, other.state))
        };
        html! {
            @if !self.others.is_empty() {
                details.past data-key="others" {
                    summary { (say!(texts, "history-others")) }
                    ul {
                        @for other in &self.others { li { a href={ "/tickets/" (other.id) } { (words(other)) } } }
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
                summary { (say!(self.texts, "history-title")) }
                ol {
                    @for event in &self.history {
                        li {
                            span.faint { (words::clock(self.texts, event.at, self.now)) } " " (self.happened(event))
                            @if let Some(by) = event.by.as_ref().filter(|_| is_told) { " " (say!(self.texts, "history-by", name = name_of(self.texts, by))) }
                        }
                    }
                }
            }
        }
    }

    /// One entry in words. An entry of a kind that this version does not know is told by its name.
    pub(super) fn happened(&self, event: &Event) -> String {
        let texts = self.texts;
        match event.kind.as_str() {
            "sent" => say!(texts, "history-sent"),
            "opened_by_hand" => say!(texts, "history-opened"),
            "all_ticked" => say!(texts, "history-all-ticked"),
            "called" => say!(texts, "history-called"),
            "judged" => say!(texts, "history-judged"),
            "told" if event.body == true => say!(texts, "history-told"),
            "told" => say!(texts, "history-told-not"),
            "rung_up" => match read::<Tender>(event) {
                Some(way) => say!(texts, "history-rung-up", way = way.name(), name = way.name()),
                None => say!(texts, "history-rung-up-so"),
            },
            "handed_over" => say!(texts, "history-handed-over"),
            "let_go" => say!(texts, "history-let-go"),
            "workbook" => say!(texts, "history-workbook"),
            "hold_ended" => say!(texts, "history-hold-ended"),
            "hold_shortened" => say!(texts, "history-hold-shortened"),
            other => self
                .of_parts(event)
                .or_else(|| self.of_wearer(event))
                .or_else(|| self.of_price(event))
                .or_else(|| self.of_return(event))
                .unwrap_or_else(|| other.replace('_', " ")),
        }
    }

    /// What happened to base, drops and length.
    fn of_parts(&self, event: &Event) -> Option<String> {
        let texts = self.texts;
        let line_name =
            |at: usize| self.ticket.lines.get(at).map(|line| self.name(&line.id).into_owned()).unwrap_or_default();
        let part = || match read(event) {
            Some((Part::Line(at), found)) => (line_name(at), found),
            Some((Part::Base, found)) => (self.name(&self.ticket.piece.base).into_owned(), found),
            None => (String::new(), false),
        };
        Some(match event.kind.as_str() {
            "added" => match read::<(String, bool)>(event) {
                Some((id, true)) => say!(texts, "history-added-counted", name = self.name(&id)),
                Some((id, false)) => say!(texts, "history-added", name = self.name(&id)),
                None => say!(texts, "history-added-one"),
            },
            "base_changed" => say!(texts, "history-base", name = self.name(event.body.as_str().unwrap_or_default())),
            "ticked" => match part() {
                (name, true) => say!(texts, "history-ticked-counted", name = name),
                (name, false) => say!(texts, "history-ticked", name = name),
            },
            "unticked" => say!(texts, "history-unticked", name = part().0),
            "swapped" => match read::<(usize, String)>(event) {
                Some((_, to)) => say!(texts, "history-swapped", name = self.name(&to)),
                None => say!(texts, "history-swapped-one"),
            },
            "removed" => match read(event) {
                Some(at) => say!(texts, "history-removed", name = line_name(at)),
                None => say!(texts, "history-removed-one"),
            },
            "length" => match read(event) {
                Some(length) => say!(texts, "history-length", length = words::length(texts, length)),
                None => say!(texts, "history-length-other"),
            },
            _ => return None,
        })
    }

    /// What was said of the wearer, and sold for a grown-up.
    fn of_wearer(&self, event: &Event) -> Option<String> {
        let texts = self.texts;
        let hazard = |code| words::hazard(texts, code);
        Some(match event.kind.as_str() {
            "wearer" => match read(event) {
                Some(Wearer::Unknown) => say!(texts, "history-wearer-unknown"),
                Some(one) => say!(texts, "history-wearer", wearer = words::wearer(texts, one)),
                None => say!(texts, "history-wearer-other"),
            },
            "sold_for_grown_up" => match read::<(CautionCode, bool)>(event) {
                Some((code, true)) => say!(texts, "history-grown-up", hazard = hazard(code)),
                Some((code, false)) => say!(texts, "history-grown-up-not", hazard = hazard(code)),
                None => say!(texts, "history-grown-up-one"),
            },
            _ => return None,
        })
    }

    /// What happened to the price.
    fn of_price(&self, event: &Event) -> Option<String> {
        let texts = self.texts;
        Some(match event.kind.as_str() {
            "sum_confirmed" => match read::<Charge>(event) {
                Some(Charge::Today) => say!(texts, "history-sum-today"),
                Some(Charge::AsSeen) | None => say!(texts, "history-sum-seen"),
            },
            "reduced" => match read::<Option<Given>>(event) {
                Some(Some(given)) => self.reduced(&given),
                Some(None) => say!(texts, "history-reduced-not"),
                None => say!(texts, "history-reduced-one"),
            },
            "package" => match read::<Option<Package>>(event) {
                Some(Some(package)) => say!(texts, "history-package", name = package.name),
                Some(None) | None => say!(texts, "history-package-none"),
            },
            "plain_added" => match read::<PlainLine>(event) {
                Some(line) => say!(texts, "history-plain", name = line.words),
                None => say!(texts, "history-plain-one"),
            },
            "plain_removed" => say!(texts, "history-plain-off"),
            _ => return None,
        })
    }

    /// What was taken off, and why.
    fn reduced(&self, given: &Given) -> String {
        let (texts, reason) = (self.texts, given.reason.as_str());
        match &given.reduction {
            Reduction::Percent(percent) => {
                let percent = texts.lang.number(percent.normalize());
                say!(texts, "history-reduced-percent", percent = percent, reason = reason)
            }
            Reduction::Amount(amount) => {
                say!(texts, "history-reduced-amount", amount = self.money(*amount), reason = reason)
            }
            Reduction::ToSum(sum) => say!(texts, "history-reduced-to", amount = self.money(*sum), reason = reason),
        }
    }

    /// What came back.
    fn of_return(&self, event: &Event) -> Option<String> {
        let texts = self.texts;
        Some(match event.kind.as_str() {
            "taken_back" => match read::<(bool, String)>(event) {
                Some((true, reason)) => say!(texts, "history-taken-back-home", reason = reason),
                Some((false, reason)) => say!(texts, "history-taken-back-gone", reason = reason),
                None => say!(texts, "history-taken-back"),
            },
            "line_taken_back" => match read::<(usize, String, Home, bool, String)>(event) {
                Some((_, id, home, true, reason)) => {
                    let home = home.to_string();
                    say!(texts, "history-line-back-home", name = self.name(&id), home = home, reason = reason)
                }
                Some((_, id, _, false, reason)) => {
                    say!(texts, "history-line-back-gone", name = self.name(&id), reason = reason)
                }
                None => say!(texts, "history-line-back"),
            },
            _ => return None,
        })
    }
}

/// What an entry holds; nothing where it is of another shape than this version writes.
fn read<T: DeserializeOwned>(event: &Event) -> Option<T> {
    serde_json::from_value(event.body.clone()).ok()
}
