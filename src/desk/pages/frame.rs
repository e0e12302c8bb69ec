//! What all pages share: head, navigation, what every page has to say first.

use std::collections::BTreeMap;

use axum::response::Html;
use jiff::Timestamp;
use maud::{DOCTYPE, Markup, html};

use super::paper;
use crate::{
    desk::{
        assets::VERSION,
        fragments::{Fragments, RenewingPage},
        state::DeskState,
    },
    disk,
    lang::{Lang, Texts, say},
    machine::Battery,
};

/// Where the page belongs in the navigation.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Tab {
    /// The queue and single tickets.
    Tickets,
    /// Counts and the catalogue.
    Trays,
    /// Sums and the end of the show.
    Show,
    /// Before and after a show.
    Bench,
    /// Paired tablets.
    Kiosks,
    /// None of them.
    Nowhere,
}

/// The tabs with their addresses and the keys of their words.
const TABS: [(Tab, &str, &str); 5] = [
    (Tab::Tickets, "/tickets", "tab-tickets"),
    (Tab::Trays, "/trays", "tab-trays"),
    (Tab::Show, "/show", "tab-show"),
    (Tab::Bench, "/bench", "tab-bench"),
    (Tab::Kiosks, "/kiosks", "tab-kiosks"),
];

/// Words that the page's script says, each under its name there.
const OF_THE_SCRIPT: [(&str, &str); 18] = [
    ("silent", "script-silent"),
    ("waiting", "script-waiting"),
    ("lost", "script-lost"),
    ("unsure", "script-unsure"),
    ("again", "script-again"),
    ("leave", "script-leave"),
    ("signedOut", "script-signed-out"),
    ("enter", "script-enter"),
    ("fiveDigits", "script-five-digits"),
    ("wrongDigit", "script-wrong-digit"),
    ("justNow", "ago-now"),
    ("minutes", "script-minutes"),
    ("hours", "script-hours"),
    ("newAbove", "script-new-above"),
    ("newBelow", "script-new-below"),
    ("newTicket", "script-new-ticket"),
    ("newTickets", "script-new-tickets"),
    ("queueGrew", "script-more-waiting"),
];

/// A page of somebody who is signed in, in their language.
pub(super) fn page(desk: &DeskState, texts: &Texts, tab: Tab, title: &str, main: &Markup) -> RenewingPage {
    let main = html! { main #main { (banners(desk, texts, tab)) (main) } };
    let fragments = Fragments::cut(&main.0);
    let name = &desk.catalog.loaded().catalog.table.name;
    let body = html! {
        header.top {
            nav aria-label=(say!(texts, "pages")) {
                @for (one, address, key) in TABS {
                    a href=(address) aria-current=[(one == tab).then_some("page")] { (texts.get(key)) }
                }
            }
            // Here the page's script says when the desk does not answer.
            div.told #line role="status" hidden {}
            // And here, for whoever listens, what has changed on the page.
            p.unseen #live role="status" aria-live="polite" {}
        }
        (main)
        footer.bottom {
            span { (name) }
            (languages(texts))
            form method="post" action="/sign-out" { button.quiet { (say!(texts, "sign-out")) } }
        }
    };
    let has = fragments.as_ref().map(Fragments::list).unwrap_or_default();
    RenewingPage { html: document(texts, title, name, Some((&has, desk.clock.now())), &body), fragments }
}

/// What every page says before its own.
fn banners(desk: &DeskState, texts: &Texts, tab: Tab) -> Markup {
    let mistakes = desk.catalog.mistakes().map_or(0, |mistakes| mistakes.0.len());
    let not_taken = desk.tablets.not_taken();
    html! {
        @if desk.practice.is_on() {
            p.banner.practice #practice role="status" {
                strong { (say!(texts, "practice-on")) } " "
                @if tab == Tab::Show { (say!(texts, "practice-ends-below")) }
                @else { a href="/show" { (say!(texts, "practice-end-there")) } }
            }
        }
        @if desk.practice.was_cut_short() {
            div.banner #cut-short role="status" {
                p { (say!(texts, "practice-cut-short")) }
                form method="post" action="/practice/seen" { button.quiet { (say!(texts, "understood")) } }
            }
        }
        @if mistakes > 0 {
            p.banner role="status" {
                (say!(texts, "catalogue-mistakes", n = mistakes)) " "
                a href="/trays#mistakes" { (say!(texts, "see-mistakes")) }
            }
        }
        @if not_taken > 0 && tab != Tab::Kiosks {
            p.banner role="status" {
                (say!(texts, "tickets-not-taken", n = not_taken)) " "
                a href="/kiosks" { (say!(texts, "see-not-taken")) }
            }
        }
        @if let Some(battery) = Battery::of_this_machine().filter(|battery| battery.is_low()) {
            p.banner role="status" { (say!(texts, "battery-low-here", n = battery.percent)) }
        }
        @for (digit, battery) in desk.tablets.nearly_empty() {
            p.banner role="status" { (say!(texts, "battery-low-tablet", digit = digit, n = battery.percent)) }
        }
        (paper::banners(desk, texts))
        @if disk::is_nearly_full(&desk.data_dir) {
            p.banner role="status" {
                (say!(texts, "disk-nearly-full-here"))
            }
        }
    }
}

/// A page for somebody who is not signed in.
pub(in crate::desk) fn plain_page(texts: &Texts, title: &str, main: &Markup) -> Html<String> {
    let body = html! {
        main #main.narrow { (main) }
        footer.bottom.narrow { (languages(texts)) }
    };
    Html(document(texts, title, "", None, &body))
}

/// A button for each language, in its own words.
fn languages(texts: &Texts) -> Markup {
    html! {
        form.languages method="post" action="/language" {
            div.row.wraps role="group" aria-label=(say!(texts, "languages")) {
                @for lang in Lang::ALL {
                    button.quiet name="language" value=(lang.code()) lang=(lang.code()) aria-pressed=(lang == texts.lang) {
                        (lang.own_name())
                    }
                }
            }
        }
    }
}

/// What the script says, in the page's language.
fn words_of_the_script(texts: &Texts) -> String {
    // What a place holds is known only to the script: the place stays, as `{what}`.
    let places = ["time", "what", "typed", "n", "h"].map(|name| (name, format!("{{{name}}}").into()));
    let words: BTreeMap<&str, String> =
        OF_THE_SCRIPT.iter().map(|(name, key)| (*name, texts.with(key, &places))).collect();
    serde_json::to_string(&words).unwrap_or_default()
}

/// A page as a whole; one that renews itself says what it has, and what the desk’s clock shows, from which its times count.
fn document(texts: &Texts, title: &str, name: &str, live: Option<(&str, Timestamp)>, body: &Markup) -> String {
    let version = VERSION.as_str();
    let page = html! {
        (DOCTYPE)
        html lang=(texts.lang.code()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="theme-color" content="#5B2245";
                title { (title) @if !name.is_empty() { " · " (name) } }
                link rel="icon" href="/assets/desk/icon.svg" type="image/svg+xml";
                link rel="stylesheet" href={ "/assets/desk/desk.css?v=" (version) };
                script src={ "/assets/desk/desk.js?v=" (version) } defer {}
            }
            body data-words=(words_of_the_script(texts)) data-live=[live.map(|_| "yes")] data-has=[live.map(|live| live.0)] data-now=[live.map(|live| live.1)] {
                (body)
            }
        }
    };
    page.into_string()
}
