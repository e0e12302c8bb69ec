//! How the pages say things: times, lengths, wearers, states.

use std::borrow::Cow;

use jiff::{Timestamp, Unit, tz::TimeZone};
use maud::{Markup, html};
use rust_decimal::{Decimal, prelude::FromPrimitive};

use crate::{
    catalog::{Catalog, Loaded, Tray},
    caution::CautionCode,
    craft::{BaseKind, Finish, Length, Wearer},
    desk::ledger_words::{ledger_words, number_words},
    lang::{Lang, Texts, say},
    ledger::{Count, LedgerError},
    link::wire::in_address,
    money::Currency,
    quoting::excerpt,
    ticket::{NumberError, State},
};

/// Who the piece is for.
pub(super) fn wearer(texts: &Texts, wearer: Wearer) -> String {
    texts.get(&format!("for-{}", wearer.code()))
}

/// How long ago, roughly; the page's script keeps it up to date, and on paper stands the time of day.
pub(super) fn ago(texts: &Texts, then: Timestamp, now: Timestamp) -> Markup {
    let minutes = now.duration_since(then).as_secs().max(0) / 60;
    let words = match minutes {
        0 => say!(texts, "ago-now"),
        1..60 => say!(texts, "script-minutes", n = minutes),
        _ => say!(texts, "script-hours", h = minutes / 60, n = minutes % 60),
    };
    html! { time datetime=(then.round(Unit::Second).unwrap_or(then)) data-clock=(clock(texts, then, now)) { (words) } }
}

/// The time of day, or with its date when it was another day, in this machine's time zone.
pub(super) fn clock(texts: &Texts, then: Timestamp, now: Timestamp) -> String {
    let (then, now) = (then.to_zoned_datetime(TimeZone::system()), now.to_zoned_datetime(TimeZone::system()));
    let time = then.strftime("%H:%M").to_string();
    if then.date() == now.date() { time } else { format!("{} {time}", then.strftime(day_shape(texts))) }
}

/// The day, in this machine's time zone.
pub(super) fn day(texts: &Texts, then: Timestamp) -> String {
    then.to_zoned_datetime(TimeZone::system()).strftime(day_shape(texts)).to_string()
}

/// How a language writes a day in figures. Source: CLDR, the medium and short dates of es, fr and de; in English the form of
/// ISO 8601, which readers of both American and British dates take for the same day.
const fn day_shape(texts: &Texts) -> &'static str {
    match texts.lang {
        Lang::En => "%Y-%m-%d",
        Lang::Es | Lang::Fr => "%d/%m/%Y",
        Lang::De => "%d.%m.%Y",
    }
}

/// A length both ways: `24 in · 61 cm`.
pub(super) fn length(texts: &Texts, length: Length) -> String {
    let figure = |value: f64, digits: u32| {
        let figure = Decimal::from_f64(value).unwrap_or_default().round_dp(digits).normalize();
        texts.lang.number(figure)
    };
    say!(texts, "length-both", inches = figure(length.inches(), 1), cm = figure(length.mm() / 10.0, 0))
}

/// An amount with its currency. In English as the ledger and the terminal write it.
pub(super) fn money(texts: &Texts, amount: Decimal, currency: Currency) -> String {
    match texts.lang {
        Lang::En => currency.plain(amount),
        other => other.money(amount, currency),
    }
}

/// How many can still be had, in words.
pub(super) fn free(texts: &Texts, count: Count) -> String {
    match count.free() {
        0 if count.held > 0 => say!(texts, "free-all-held"),
        0 => say!(texts, "free-none"),
        n => say!(texts, "free-some", n = n),
    }
}

/// The name of a part for people; its id where the catalogue does not have it any more.
pub(super) fn part_name<'a>(texts: &Texts, catalog: &'a Catalog, id: &str) -> Cow<'a, str> {
    let drop = catalog.drop_kind(id).map(|kind| kind.name.as_str());
    let own = drop.or_else(|| catalog.base(id).map(|base| base.name.as_str()));
    own.map_or_else(|| Cow::Owned(excerpt(id)), |own| Cow::Borrowed(catalog.called(texts.lang.code(), id, own)))
}

/// The name of one piece for people: of an assortment, that it is one from its compartment.
pub(super) fn piece_name<'a>(texts: &Texts, catalog: &'a Catalog, id: &str) -> Cow<'a, str> {
    match catalog.drop_kind(id) {
        Some(kind) => texts.piece_name(catalog, kind),
        None => part_name(texts, catalog, id),
    }
}

/// What a tray is called.
pub(super) fn tray_name<'a>(texts: &Texts, catalog: &'a Catalog, tray: &'a Tray) -> &'a str {
    catalog.called(texts.lang.code(), &tray.letter.to_string(), &tray.name)
}

/// A hazard by its name.
pub(super) fn hazard(texts: &Texts, code: CautionCode) -> String {
    texts.get(&format!("hazard-{}", code.code()))
}

/// Why something that was typed is no ticket's number.
pub(super) fn no_number(texts: &Texts, error: &NumberError) -> String {
    sentence(&number_words(texts, error))
}

/// Why the ledger refuses, with names in place of ids.
pub(super) fn trouble(texts: &Texts, error: &LedgerError, catalog: &Catalog) -> String {
    match error {
        LedgerError::NoneLeft(id) => say!(texts, "none-left-touch", name = part_name(texts, catalog, id)),
        other => sentence(&ledger_words(texts, other)),
    }
}

/// With a capital and a full stop.
pub(in crate::desk) fn sentence(words: &str) -> String {
    stopped(&capital(words))
}

/// With a full stop, where nothing else ends it.
pub(super) fn stopped(words: &str) -> String {
    let stop = if words.ends_with(['.', '!', '?']) { "" } else { "." };
    format!("{words}{stop}")
}

/// With a capital.
pub(super) fn capital(words: &str) -> String {
    let mut chars = words.chars();
    let first = chars.next().map(|c| c.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}", chars.as_str())
}

/// A drop's picture, which tells nothing that its name beside it does not.
pub(super) fn picture(texts: &Texts, loaded: &Loaded, id: &str) -> Markup {
    let file = loaded.catalog.drop_kind(id).map(|kind| kind.picture.as_str());
    html! {
        @if let Some(file) = file.filter(|file| loaded.pictures.contains_key(*file)) {
            (picture_file(loaded, file))
        } @else {
            span.drop.none { (say!(texts, "no-picture")) }
        }
    }
}

/// A picture of the catalogue by its file's name, where there is one.
pub(super) fn picture_file(loaded: &Loaded, file: &str) -> Markup {
    html! {
        @if let Some(picture) = loaded.pictures.get(file) {
            img.drop src={ "/pictures/" (in_address(file)) "?v=" (&picture.sha256[..16]) } alt="" loading="lazy";
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

/// The state in a word.
pub(super) fn state_word(texts: &Texts, state: State) -> String {
    texts.get(&format!("state-{}", state.code()))
}

/// The state in a word and a sign.
pub(super) fn state(texts: &Texts, state: State) -> Markup {
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
            (state_word(texts, state))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_read_well() {
        let texts = Texts::of(Lang::En);
        let in_english = |mm: f64| length(texts, Length::from_mm(mm)).replace('\u{a0}', " ");
        assert_eq!(in_english(609.6), "24 in · 61 cm");
        assert_eq!(in_english(610.0), "24 in · 61 cm");
        assert_eq!(in_english(444.5), "17.5 in · 44 cm");
        assert_eq!(length(Texts::of(Lang::De), Length::from_mm(444.5)), "44\u{a0}cm\u{a0}·\u{a0}17,5\u{a0}in");
        assert_eq!(say!(texts, "count-drops", n = 1), "1 drop");
        assert_eq!(say!(texts, "count-drops", n = 0), "0 drops");
        assert_eq!(sentence("a ticket that is sent"), "A ticket that is sent.");
        assert_eq!(free(texts, Count { on_hand: 2, held: 2 }), "all held");
    }

    /// Every code has its words in every language: a key stands for itself where there is none.
    #[test]
    fn no_code_is_without_words() {
        for texts in Lang::ALL.map(Texts::of) {
            let states = State::ALL.map(|one| state_word(texts, one));
            let wearers = Wearer::ANSWERS.into_iter().chain([Wearer::Unknown]).map(|one| wearer(texts, one));
            let hazards = CautionCode::ALL.map(|one| hazard(texts, one));
            for words in states.into_iter().chain(wearers).chain(hazards) {
                assert!(!["state-", "for-", "hazard-"].iter().any(|key| words.starts_with(key)), "{words}");
            }
        }
        let english = Texts::of(Lang::En);
        assert!(State::ALL.iter().all(|one| state_word(english, *one) == one.word()), "as the terminal says it");
        assert!(CautionCode::ALL.iter().all(|one| hazard(english, *one) == one.words()), "as the terminal says it");
    }

    #[test]
    fn days_are_written_as_the_language_has_them() {
        let then: Timestamp = "2026-05-01T12:00:00Z".parse().unwrap();
        let days = Lang::ALL.map(|lang| day(Texts::of(lang), then));
        assert_eq!(days, ["2026-05-01", "01/05/2026", "01/05/2026", "01.05.2026"]);
    }

    #[test]
    fn a_clock_that_went_back_is_no_trouble() {
        let texts = Texts::of(Lang::En);
        let now: Timestamp = "2026-05-01T10:00:00Z".parse().unwrap();
        let later: Timestamp = "2026-05-01T11:00:00Z".parse().unwrap();
        assert!(ago(texts, later, now).into_string().contains("just now"));
        assert!(ago(texts, now, later).into_string().replace('\u{a0}', " ").contains("1 h 0 min ago"));
    }
}
