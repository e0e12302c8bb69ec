//! The running show, and the list of all.

use std::sync::Arc;

use axum::{
    Router,
    extract::State,
    response::{IntoResponse, Response},
    routing::get,
};
use maud::{Markup, html};

use super::{
    practice,
    sheet::{Sheet, about_line, costs, kind_words, name_of},
};
use crate::{
    desk::{
        pages::{
            frame::{Tab, page},
            words,
        },
        refusal::Refusal,
        seller::Seller,
        state::DeskState,
    },
    lang::{Texts, say},
    ledger::{AboutShow, ShowKind, ShowListed, reward_of},
    money::Currency,
};

/// Shows that are listed; those before them still have their pages.
const LISTED: usize = 200;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/show", get(running))
}

async fn running(State(desk): State<Arc<DeskState>>, seller: Seller) -> Result<Response, Refusal> {
    let texts = seller.texts;
    let (show, about, sums, shows) = desk
        .ledger
        .look(|ledger| {
            let show = ledger.show()?;
            Ok((ledger.about_show(show.id)?, ledger.so_far()?, ledger.shows(LISTED)?, show))
        })
        .await
        .map(|(about, sums, shows, show)| (show, about, sums, shows))?;
    let loaded = desk.catalog.loaded();
    let currency = sums.currency.unwrap_or(loaded.catalog.table.prices.currency);
    let table = &loaded.catalog.table;
    let reward = table.till.reward.as_ref().and_then(|rule| reward_of(&about, &sums, rule, &table.prices));
    let sheet = Sheet {
        texts,
        sums: &sums,
        currency,
        about: &about,
        end: None,
        reward: reward.as_ref(),
        catalog: &loaded.catalog,
        costs: costs(&desk, &seller, &loaded.catalog, &sums),
    };
    let since = words::clock(texts, show.opened, desk.clock.now());
    let earlier: Vec<&ShowListed> = shows.iter().filter(|one| one.closed.is_some()).collect();
    let main = html! {
        h1 { (name_of(texts, show.id, &about)) }
        p.faint { (say!(texts, "show-since", when = since)) }
        @if desk.practice.is_on() { (practice::to_end(texts)) }
        (what_it_is(texts, &about, currency))
        (sheet.markup())
        div.row.ends {
            a.button.grave href="/show/close" { (say!(texts, "show-close")) }
            @if !desk.practice.is_on() { a.button.quiet href="/practice" { (say!(texts, "show-practise")) } }
        }
        @if !earlier.is_empty() {
            h2 #earlier { (say!(texts, "show-earlier")) }
            ul.links.shows { @for one in earlier { li data-key={ "show-" (one.id) } { (listed(texts, one)) } } }
        }
    };
    Ok(page(&desk, texts, Tab::Show, &say!(texts, "show-title"), &main).into_response())
}

/// A closed show on the list: its number, its place, its kind and its date.
fn listed(texts: &Texts, show: &ShowListed) -> Markup {
    html! {
        a href={ "/shows/" (show.id) } { (name_of(texts, show.id, &show.about)) }
        span.faint {
            @if let Some(kind) = show.about.kind { (kind_words(texts, kind)) ", " }
            (words::day(texts, show.opened))
        }
    }
}

/// What the show is; where nobody told, the question.
fn what_it_is(texts: &Texts, about: &AboutShow, currency: Currency) -> Markup {
    html! {
        section.card aria-label=(say!(texts, "show-what-it-is")) data-key="about" {
            @match about_line(texts, about, currency) {
                Some(line) => {
                    p { (line) }
                    a.button.quiet href="/show/about" { (say!(texts, "show-change")) }
                },
                None => {
                    h2 { (say!(texts, "show-which")) }
                    div.kinds {
                        @for kind in ShowKind::REAL {
                            a.button.quiet href={ "/show/about?kind=" (kind.code()) } { (words::capital(&kind_words(texts, kind))) }
                        }
                    }
                    p.faint { (say!(texts, "show-which-hint")) }
                },
            }
        }
    }
}
