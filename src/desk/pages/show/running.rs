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
    sheet::{Sheet, about_line, name_of},
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
    lang::{Lang, Texts},
    ledger::{AboutShow, ShowKind, ShowListed, reward_of},
    money::Currency,
};

/// Shows that are listed; those before them still have their pages.
const LISTED: usize = 200;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/show", get(running))
}

async fn running(State(desk): State<Arc<DeskState>>, _seller: Seller) -> Result<Response, Refusal> {
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
    let sheet =
        Sheet { sums: &sums, currency, about: &about, end: None, reward: reward.as_ref(), catalog: &loaded.catalog };
    let earlier: Vec<&ShowListed> = shows.iter().filter(|one| one.closed.is_some()).collect();
    let main = html! {
        h1 { (name_of("Show", show.id, &about)) }
        p.faint { "Running since " (words::clock(Texts::of(Lang::En), show.opened, desk.clock.now())) }
        @if desk.practice.is_on() { (practice::to_end()) }
        (what_it_is(&about, currency))
        (sheet.markup())
        div.row.ends {
            a.button.grave href="/show/close" { "Close the show" }
            @if !desk.practice.is_on() { a.button.quiet href="/practice" { "Practise" } }
        }
        @if !earlier.is_empty() {
            h2 #earlier { "Earlier shows" }
            ul.links.shows { @for one in earlier { li data-key={ "show-" (one.id) } { (listed(one)) } } }
        }
    };
    Ok(page(&desk, Tab::Show, "Show", &main).into_response())
}

/// A closed show on the list: its number, its place, its kind and its date.
fn listed(show: &ShowListed) -> Markup {
    html! {
        a href={ "/shows/" (show.id) } { (name_of("Show", show.id, &show.about)) }
        span.faint {
            @if let Some(kind) = show.about.kind { (kind.word()) ", " }
            (words::day(Texts::of(Lang::En), show.opened))
        }
    }
}

/// What the show is; where nobody told, the question.
fn what_it_is(about: &AboutShow, currency: Currency) -> Markup {
    html! {
        section.card aria-label="What it is" data-key="about" {
            @match about_line(about, currency) {
                Some(line) => {
                    p { (line) }
                    a.button.quiet href="/show/about" { "Change" }
                },
                None => {
                    h2 { "What is this show?" }
                    div.kinds {
                        @for kind in ShowKind::REAL {
                            a.button.quiet href={ "/show/about?kind=" (kind.code()) } { (words::capital(kind.word())) }
                        }
                    }
                    p.faint { "Place, tax, fee and float then belong to it. It runs without, too, at the table’s own tax." }
                },
            }
        }
    }
}
