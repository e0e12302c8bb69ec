//! The board for any screen or old phone: who is called to a seat, and how long a guest waits. It needs no PIN, tells numbers and
//! nothing else, and renews itself; without its script the browser asks anew.

use std::sync::Arc;

use axum::{
    Router,
    extract::State,
    response::{Html, IntoResponse, Response},
    routing::get,
};
use maud::{DOCTYPE, Markup, html};

use crate::{
    desk::{assets::VERSION, kiosk_interface::waiting_news, refusal::Refusal, state::DeskState},
    lang::{Lang, Texts, say},
    link::wire::WaitingNews,
    waiting::{WaitRange, minutes_shown},
};

/// Numbers shown at once, so that each can be read from four metres.
const MOST_CALLED: usize = 6;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/board", get(board)).route("/board/now", get(now))
}

/// A range of minutes as it is told to guests.
pub(super) fn minutes(texts: &Texts, range: WaitRange) -> String {
    told(texts, minutes_shown(range))
}

fn told(texts: &Texts, (from, to): (u32, u32)) -> String {
    match (from, to) {
        (_, 0) => say!(texts, "waiting-no-wait"),
        (0, to) => say!(texts, "waiting-up-to", to = to),
        (from, to) => say!(texts, "waiting-from-to", from = from, to = to),
    }
}

async fn board(State(desk): State<Arc<DeskState>>) -> Result<Response, Refusal> {
    let news = waiting_news(&desk).await?;
    let version = VERSION.as_str();
    let page = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                noscript { meta http-equiv="refresh" content="10"; }
                title { (say!(Texts::of(Lang::En), "waiting-board")) " · " (desk.catalog.loaded().catalog.table.name) }
                link rel="icon" href="/assets/desk/icon.svg" type="image/svg+xml";
                link rel="stylesheet" href={ "/assets/desk/desk.css?v=" (version) };
                script src={ "/assets/desk/board.js?v=" (version) } defer {}
            }
            body.board data-silent=(in_all("waiting-board-silent")) { (content(&news)) }
        }
    };
    Ok(Html(page.into_string()).into_response())
}

/// What the board's script puts in place of what it shows.
async fn now(State(desk): State<Arc<DeskState>>) -> Result<Response, Refusal> {
    let news = waiting_news(&desk).await?;
    Ok(Html(content(&news).into_string()).into_response())
}

/// A text in all languages, for a script that knows none.
fn in_all(key: &str) -> String {
    Lang::ALL.map(|lang| Texts::of(lang).get(key)).join(" · ")
}

/// Who is called, in figures that need no language; the words in all of them.
fn content(news: &WaitingNews) -> Markup {
    let count = news.called.len().clamp(1, MOST_CALLED);
    html! {
        main #main {
            div.called.{ "n" (count) } role="status" {
                // The last called stand first, since they are looked for.
                @for number in news.called.iter().rev().take(MOST_CALLED) { span.number { (number) } }
                @if news.called.is_empty() { span.number.none aria-hidden="true" { "–" } }
            }
            div.words {
                @for lang in Lang::ALL {
                    @let texts = Texts::of(lang);
                    p lang=(lang.code()) {
                        strong { @if news.called.is_empty() { (say!(texts, "waiting-board-none")) } @else { (say!(texts, "waiting-board-come")) } }
                        @if let Some(range) = news.minutes { " " span { (say!(texts, "waiting-board-new", wait = told(texts, range))) } }
                    }
                }
            }
            p.alone #silent role="alert" hidden {}
        }
    }
}
