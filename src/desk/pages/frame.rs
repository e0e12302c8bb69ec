//! What all pages share: head, navigation, what every page has to say first.

use axum::response::Html;
use jiff::Timestamp;
use maud::{DOCTYPE, Markup, html};

use crate::{
    desk::{
        assets::VERSION,
        fragments::{Fragments, RenewingPage},
        state::DeskState,
    },
    disk,
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
    /// Paired tablets.
    Kiosks,
}

const TABS: [(Tab, &str, &str); 4] = [
    (Tab::Tickets, "/tickets", "Tickets"),
    (Tab::Trays, "/trays", "Trays"),
    (Tab::Show, "/show", "Show"),
    (Tab::Kiosks, "/kiosks", "Kiosks"),
];

/// A page of the signed-in seller.
pub(super) fn page(desk: &DeskState, tab: Tab, title: &str, main: &Markup) -> RenewingPage {
    let main = html! { main #main { (banners(desk, tab)) (main) } };
    let fragments = Fragments::cut(&main.0);
    let name = &desk.catalog.loaded().catalog.table.name;
    let body = html! {
        header.top {
            nav aria-label="Pages" {
                @for (one, address, word) in TABS {
                    a href=(address) aria-current=[(one == tab).then_some("page")] { (word) }
                }
            }
            // Here the page's script says when the desk does not answer.
            div.told #line role="status" hidden {}
        }
        (main)
        footer.bottom {
            span { (name) }
            form method="post" action="/sign-out" { button.quiet { "Sign out" } }
        }
    };
    let has = fragments.as_ref().map(Fragments::list).unwrap_or_default();
    RenewingPage { html: document(title, name, Some((&has, desk.clock.now())), &body), fragments }
}

/// What every page says before its own.
fn banners(desk: &DeskState, tab: Tab) -> Markup {
    let mistakes = desk.catalog.mistakes().map_or(0, |mistakes| mistakes.0.len());
    let not_taken = desk.tablets.not_taken();
    html! {
        @if desk.practice.is_on() {
            p.banner.practice #practice role="status" {
                strong { "Practice: nothing counts." } " "
                @if tab == Tab::Show { "It ends below." } @else { a href="/show" { "End it on the Show page" } }
            }
        }
        @if desk.practice.was_cut_short() {
            div.banner #cut-short role="status" {
                p { "The desk was ended while somebody practised. What was practised is thrown away; everything else is as it was." }
                form method="post" action="/practice/seen" { button.quiet { "Understood" } }
            }
        }
        @if mistakes > 0 {
            p.banner role="status" {
                "The catalogue has " (super::words::count(mistakes, "mistake")) "; the last good one is in use. "
                a href="/trays#mistakes" { "See what is wrong" }
            }
        }
        @if not_taken > 0 && tab != Tab::Kiosks {
            p.banner role="status" {
                (super::words::count(not_taken, "ticket")) " on the tablets "
                @if not_taken == 1 { "was" } @else { "were" } " not taken. "
                a href="/kiosks" { "See which, and take them in" }
            }
        }
        @if disk::is_nearly_full(&desk.data_dir) {
            p.banner role="status" {
                "This computer's disk is nearly full. Make room soon: with a full disk no ticket can be entered."
            }
        }
    }
}

/// A page for somebody who is not signed in.
pub(in crate::desk) fn plain_page(title: &str, main: &Markup) -> Html<String> {
    Html(document(title, "", None, &html! { main #main.narrow { (main) } }))
}

/// A page as a whole; one that renews itself says what it has, and what the desk’s clock shows, from which its times count.
fn document(title: &str, name: &str, live: Option<(&str, Timestamp)>, body: &Markup) -> String {
    let version = VERSION.as_str();
    let page = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="theme-color" content="#5B2245";
                title { (title) @if !name.is_empty() { " · " (name) } }
                link rel="icon" href="/assets/desk/icon.svg" type="image/svg+xml";
                link rel="stylesheet" href={ "/assets/desk/desk.css?v=" (version) };
                script src={ "/assets/desk/desk.js?v=" (version) } defer {}
            }
            body data-live=[live.map(|_| "yes")] data-has=[live.map(|live| live.0)] data-now=[live.map(|live| live.1)] {
                (body)
            }
        }
    };
    page.into_string()
}
