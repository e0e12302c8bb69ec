//! What was counted and why it differed, as the ledger has it, the newest first.

use maud::{Markup, html};

use super::view::{Shown, reason_word};
use crate::{
    desk::{pages::words, signed_in::name_of},
    lang::say,
    ledger::{Counted, CountingEntry, Said},
};

/// The last entries.
pub(super) fn told(shown: &Shown<'_>, entries: &[CountingEntry]) -> Markup {
    let texts = shown.texts;
    html! {
        @if !entries.is_empty() {
            details.card #counted-before {
                summary { (say!(texts, "count-entries")) }
                ul {
                    @for entry in entries {
                        li {
                            (words::clock(texts, entry.at, shown.now))
                            @if let Some(by) = &entry.by { " " (name_of(texts, by)) } ": "
                            (in_words(shown, &entry.said))
                        }
                    }
                }
            }
        }
    }
}

fn in_words(shown: &Shown<'_>, said: &Said) -> String {
    let texts = shown.texts;
    match said {
        Said::Counted(all) => all.iter().map(|one| counted(shown, one)).collect::<Vec<_>>().join("; "),
        Said::Explained(part, reason, many) | Said::Changed(part, reason, many) => {
            let reason = reason_word(texts, *reason);
            say!(texts, "count-told-reason", name = shown.name(part), n = *many, reason = reason)
        }
        Said::Stray(part, many, found) => {
            say!(texts, "count-told-stray", name = shown.name(part), n = *many, found = *found)
        }
    }
}

fn counted(shown: &Shown<'_>, one: &Counted) -> String {
    let texts = shown.texts;
    let name = shown.name(&one.line.part);
    let found = one.line.counted.map(|counted| match one.difference {
        0 => say!(texts, "count-told", name = name.as_str(), n = counted),
        more if more > 0 => say!(texts, "count-told-more", name = name.as_str(), n = counted, by = more),
        fewer => say!(texts, "count-told-fewer", name = name.as_str(), n = counted, by = -fewer),
    });
    let refilled = (one.line.refilled > 0)
        .then(|| say!(texts, "count-told-refilled", name = name.as_str(), n = one.line.refilled));
    found.into_iter().chain(refilled).collect::<Vec<_>>().join("; ")
}
