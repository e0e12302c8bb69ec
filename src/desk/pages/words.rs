//! How the pages say things: times, lengths, wearers, states.

use std::borrow::Cow;

use jiff::{Timestamp, tz::TimeZone};
use maud::{Markup, html};

use crate::{
    catalog::{Catalog, Loaded},
    craft::{BaseKind, Finish, Length, Wearer},
    ledger::{Count, LedgerError},
    link::wire::in_address,
    quoting::excerpt,
    ticket::State,
};

/// Who the piece is for.
pub(super) const fn wearer(wearer: Wearer) -> &'static str {
    match wearer {
        Wearer::Under3 => "for under 3",
        Wearer::From3To5 => "for 3 to 5 years",
        Wearer::From6To12 => "for 6 to 12 years",
        Wearer::From13 => "for 13 or older",
        Wearer::Unknown => "wearer not asked",
    }
}

/// How long ago, roughly; the page's script keeps it up to date.
pub(super) fn ago(then: Timestamp, now: Timestamp) -> Markup {
    let seconds = now.duration_since(then).as_secs().max(0);
    let words = match seconds / 60 {
        0 => "just now".to_owned(),
        minutes @ 1..60 => format!("{minutes} min ago"),
        minutes => format!("{} h {} min ago", minutes / 60, minutes % 60),
    };
    html! { time datetime=(then) { (words) } }
}

/// The time of day, or with its date when it was another day, in this machine's time zone.
pub(super) fn clock(then: Timestamp, now: Timestamp) -> String {
    let (then, now) = (then.to_zoned_datetime(TimeZone::system()), now.to_zoned_datetime(TimeZone::system()));
    let shape = if then.date() == now.date() { "%H:%M" } else { "%Y-%m-%d %H:%M" };
    then.strftime(shape).to_string()
}

/// The day, in this machine's time zone.
pub(super) fn day(then: Timestamp) -> String {
    then.to_zoned_datetime(TimeZone::system()).strftime("%Y-%m-%d").to_string()
}

/// A length both ways: `24 in · 61 cm`.
pub(super) fn length(length: Length) -> String {
    let inches = format!("{:.1}", length.inches());
    format!("{} in · {:.0} cm", inches.trim_end_matches(".0"), length.mm() / 10.0)
}

/// One or many: `1 drop`, `3 drops`.
pub(super) fn count(n: usize, one: &str) -> String {
    if n == 1 { format!("1 {one}") } else { format!("{n} {one}s") }
}

/// How many can still be had, in words.
pub(super) fn free(count: Count) -> String {
    match count.free() {
        0 if count.held > 0 => "all held".to_owned(),
        0 => "sold out".to_owned(),
        n => format!("{n} free"),
    }
}

/// The name of a part for people; its id where the catalogue does not have it any more.
pub(super) fn part_name<'a>(catalog: &'a Catalog, id: &str) -> Cow<'a, str> {
    let drop = catalog.drop_kind(id).map(|kind| kind.name.as_str());
    let name = drop.or_else(|| catalog.base(id).map(|base| base.name.as_str()));
    name.map_or_else(|| Cow::Owned(excerpt(id)), Cow::Borrowed)
}

/// Why the ledger refuses, with names in place of ids.
pub(super) fn trouble(error: &LedgerError, catalog: &Catalog) -> String {
    match error {
        LedgerError::NoneLeft(id) => {
            format!(
                "The count says that no “{}” is left. If it lies before you, touch “It is here”.",
                part_name(catalog, id)
            )
        }
        other => sentence(&other.to_string()),
    }
}

/// With a capital and a full stop.
pub(in crate::desk) fn sentence(words: &str) -> String {
    let stop = if words.ends_with(['.', '!', '?']) { "" } else { "." };
    format!("{}{stop}", capital(words))
}

/// With a capital.
pub(super) fn capital(words: &str) -> String {
    let mut chars = words.chars();
    let first = chars.next().map(|c| c.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}", chars.as_str())
}

/// A drop's picture.
pub(super) fn picture(loaded: &Loaded, id: &str) -> Markup {
    let kind = loaded.catalog.drop_kind(id);
    let found = kind.and_then(|kind| Some((kind, loaded.pictures.get(&kind.picture)?)));
    html! {
        @if let Some((kind, picture)) = found {
            img.drop src={ "/pictures/" (in_address(&kind.picture)) "?v=" (&picture.sha256[..16]) } alt=(kind.name) loading="lazy";
        } @else {
            span.drop.none { "no picture" }
        }
    }
}

/// A sign for a base, in the colours of its finish.
pub(super) fn base_sign(kind: &BaseKind, finish: Finish) -> Markup {
    let tones = finish.tones();
    let colour = |[r, g, b]: [u8; 3]| format!("#{r:02x}{g:02x}{b:02x}");
    html! {
        svg.drop.sign viewBox="0 0 48 48" aria-hidden="true" fill="none" stroke=(colour(tones.body)) {
            @match kind {
                BaseKind::Necklace(_) => {
                    path d="M7 6c0 46 34 46 34 0" stroke-width="5" stroke=(colour(tones.shade)) {}
                    path d="M7 6c0 46 34 46 34 0" stroke-width="3" stroke-dasharray="5 2.4" {}
                }
                BaseKind::Bangle(_) => {
                    circle cx="24" cy="24" r="17" stroke-width="6" stroke=(colour(tones.shade)) {}
                    circle cx="24" cy="24" r="17" stroke-width="3.5" {}
                }
            }
        }
    }
}

/// The state in a word and a sign.
pub(super) fn state(state: State) -> Markup {
    let drawing = match state {
        State::Sent => "M5 4h10l4 5v11H5zM8 12h8M8 16h6",
        State::Called => "M4 10v4h4l6 5V5L8 10zM17 9c1.6 2 1.6 4 0 6",
        State::Checked => "M4 13l5 5L20 6",
        State::RungUp => "M12 3a9 9 0 1 0 .01 0zM12 7v10M9 9.5h5M9 14h5",
        State::HandedOver => "M4 15c5-2 6 3 11 1l5-4M6 11V5h9v6",
        State::LetGo => "M6 6l12 12M18 6L6 18",
        State::TakenBack => "M9 6L4 11l5 5M4 11h9a5 5 0 0 1 0 10h-3",
    };
    html! {
        span class={ "state " (state.code()) } {
            svg viewBox="0 0 24 24" aria-hidden="true" { path d=(drawing) {} }
            (state.word())
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_read_well() {
        assert_eq!(length(Length::from_inches(24.0)), "24 in · 61 cm");
        assert_eq!(length(Length::from_mm(610.0)), "24 in · 61 cm");
        assert_eq!(length(Length::from_inches(17.5)), "17.5 in · 44 cm");
        assert_eq!((count(1, "drop"), count(0, "drop")), ("1 drop".to_owned(), "0 drops".to_owned()));
        assert_eq!(sentence("a ticket that is sent"), "A ticket that is sent.");
        assert_eq!(free(Count { on_hand: 2, held: 2 }), "all held");
    }

    #[test]
    fn a_clock_that_went_back_is_no_trouble() {
        let now: Timestamp = "2026-05-01T10:00:00Z".parse().unwrap();
        let later: Timestamp = "2026-05-01T11:00:00Z".parse().unwrap();
        assert!(ago(later, now).into_string().contains("just now"));
        assert!(ago(now, later).into_string().contains("1 h 0 min ago"));
    }
}
